package loopwright.ui.sheet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.sheet.SheetText;
import loopwright.ui.Texts;
import loopwright.ui.sheet.ListOutViewModel.Choice;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.WiringDesk;

/** Which list goes out, how it looks, and where to. */
final class ListOutView extends VBox {
  private final ListOutViewModel model;
  private final ListView<Choice> choices = new ListView<>();
  private final TextArea shown = new TextArea();
  private final TextField path = new TextField();
  private final Runnable leave;

  ListOutView(ListOutViewModel model, WiringDesk desk) {
    this.model = model;
    this.leave = () -> desk.close(Optional.empty());
    setId("list-out");
    getStyleClass().addAll("page", "sheet");
    choices.setId("list-out-choices");
    choices.getItems().setAll(model.choices());
    choices.getStyleClass().addAll("fat-list", "list-out-choices");
    choices.setAccessibleText(Texts.of("listOut.title"));
    choices.setCellFactory(list -> FatCell.words(list, Choice::title));
    shown.setEditable(false);
    shown.setFocusTraversable(false);
    shown.getStyleClass().add("sheet-text");
    HBox.setHgrow(shown, Priority.ALWAYS);
    shown.setMinWidth(0);
    HBox middle = new HBox(choices, shown);
    middle.getStyleClass().add("complaint-columns");
    VBox.setVgrow(middle, Priority.ALWAYS);
    path.setId("list-out-path");
    path.getStyleClass().add("search-field");
    path.setAccessibleText(Texts.of("listOut.path"));
    path.setMinWidth(0);
    HBox.setHgrow(path, Priority.ALWAYS);
    Label told = Parts.told(model.toldProperty());
    told.setId("list-out-told");
    KeyButton write =
        new KeyButton(Texts.of("listOut.write"), "Enter", this::write).styled("primary");
    KeyButton copy = new KeyButton(Texts.of("listOut.copy"), "Ctrl+C", this::copy).styled("option");
    KeyButton back = new KeyButton(Texts.of("sheet.leave"), "Esc", leave).styled("action");
    getChildren()
        .addAll(
            Parts.row(
                "page-head",
                Parts.line(Texts.of("listOut.title"), "page-title"),
                Parts.spring(),
                back),
            middle,
            Parts.row("choice-head", Parts.line(Texts.of("listOut.path"), "side-title"), path),
            told,
            Parts.row("primary-row", Parts.spring(), copy, write));
    for (KeyButton button : List.of(back, copy, write)) {
      button.setMinWidth(USE_PREF_SIZE);
    }
    choices.setMinHeight(0);
    middle.setMinHeight(0);
    choices.getSelectionModel().selectedItemProperty().addListener(o -> show());
    choices.getSelectionModel().select(0);
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
  }

  void takeFocus() {
    choices.requestFocus();
  }

  private Optional<Choice> chosen() {
    return Optional.ofNullable(choices.getSelectionModel().getSelectedItem());
  }

  private void show() {
    chosen()
        .ifPresent(
            c -> {
              shown.setText(model.text(c));
              path.setText(model.usualPath(c));
            });
  }

  private void write() {
    chosen().ifPresent(c -> model.write(c, path.getText()));
  }

  private void copy() {
    chosen()
        .ifPresent(
            c -> {
              Clipboard.getSystemClipboard()
                  .setContent(Map.of(DataFormat.PLAIN_TEXT, SheetText.tabbed(model.text(c))));
              model.copied(c);
            });
  }

  private void pressed(KeyEvent e) {
    boolean inPath = getScene().getFocusOwner() == path && !path.getSelectedText().isEmpty();
    if (e.getCode() == KeyCode.ENTER) {
      write();
    } else if (e.isShortcutDown() && e.getCode() == KeyCode.C && !inPath) {
      copy();
    } else if (e.getCode() == KeyCode.ESCAPE) {
      // Here, since a list keeps Escape to itself.
      leave.run();
    } else {
      return;
    }
    e.consume();
  }
}
