package loopwright.ui.wiring;

import java.io.File;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** A question in the place of the panel: type, choose with the arrows, Enter. */
final class AskPanel extends VBox {
  private final Ask ask;
  private final Runnable done;
  private final TextField field = new TextField();
  private final ListView<Ask.Option> list = new ListView<>();

  AskPanel(Ask ask, Runnable done) {
    this.ask = ask;
    this.done = done;
    setId("ask");
    getStyleClass().add("panel-body");
    field.setId("ask-field");
    field.setText(ask.text());
    field.getStyleClass().add("search-field");
    field.setAccessibleText(ask.question());
    KeyButton take = new KeyButton(Texts.of("wiring.ask.take"), "Enter", this::take).styled("wide");
    KeyButton leave = new KeyButton(Texts.of("wiring.ask.leave"), "Esc", done).styled("wide");
    FlowPane buttons = new FlowPane(take, leave);
    buttons.getStyleClass().add("actions");
    if (ask.sort() == Ask.Sort.FILE) {
      buttons
          .getChildren()
          .add(0, new KeyButton(Texts.of("wiring.ask.pick"), "Ctrl+O", this::pick).styled("wide"));
    }
    getChildren().addAll(Parts.text(ask.question(), "question"), field, buttons);
    if (ask.options().isPresent()) {
      list.setId("ask-list");
      list.getStyleClass().add("found-list");
      list.setFocusTraversable(false);
      list.setCellFactory(l -> FatCell.words(l, Ask.Option::words));
      VBox.setVgrow(list, Priority.ALWAYS);
      getChildren().add(list);
      field.textProperty().addListener(o -> narrow());
      narrow();
    }
    take.disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> ask.options().isEmpty() && field.getText().isBlank(), field.textProperty()));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    list.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            take();
          }
        });
  }

  void takeFocus() {
    field.requestFocus();
    field.selectAll();
  }

  private void narrow() {
    list.getItems().setAll(ask.options().orElseThrow().apply(field.getText().strip()));
    list.getSelectionModel().select(0);
  }

  private void pressed(KeyEvent e) {
    boolean handled = true;
    switch (e.getCode()) {
      case ENTER -> take();
      case ESCAPE -> done.run();
      case O -> {
        handled = e.isShortcutDown() && ask.sort() == Ask.Sort.FILE;
        if (handled) {
          pick();
        }
      }
      case UP -> choose(-1);
      case DOWN -> choose(1);
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  private void pick() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(ask.question());
    Optional.ofNullable(chooser.showOpenDialog(getScene().getWindow()))
        .map(File::getPath)
        .ifPresent(field::setText);
  }

  private void choose(int by) {
    int at = list.getSelectionModel().getSelectedIndex() + by;
    list.getSelectionModel().select(Math.max(0, Math.min(list.getItems().size() - 1, at)));
    list.scrollTo(list.getSelectionModel().getSelectedIndex());
  }

  private void take() {
    Ask.Option chosen = list.getSelectionModel().getSelectedItem();
    if (ask.options().isEmpty() ? field.getText().isBlank() : chosen == null) {
      return;
    }
    String answer = chosen == null ? field.getText().strip() : chosen.key();
    done.run();
    ask.answer().accept(answer);
  }
}
