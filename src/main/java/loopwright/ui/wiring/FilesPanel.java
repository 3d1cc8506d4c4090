package loopwright.ui.wiring;

import javafx.beans.Observable;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.edit.UnsavedWork;
import loopwright.casework.edit.VehicleStore.Version;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The vehicle's file: save it, save it elsewhere, open another one, earlier versions. */
final class FilesPanel extends VBox {
  private final WiringFile file;
  private final Label name = Parts.text("", "case-title");
  private final ListView<Object> earlier = new ListView<>();
  private final FlowPane over = new FlowPane();

  FilesPanel(WiringFile file, WiringActions actions) {
    this.file = file;
    setId("files");
    getStyleClass().add("panel-body");
    FlowPane buttons = new FlowPane();
    buttons.getStyleClass().add("actions");
    buttons
        .getChildren()
        .addAll(
            button("wiring.save", "Ctrl+S", actions::save),
            button("wiring.saveAs", "Ctrl+Shift+S", actions::saveAs),
            button("wiring.open", "Ctrl+O", actions::open));
    over.getChildren().add(button("wiring.saveOver", "Ctrl+Alt+S", file::saveOver));
    over.managedProperty().bind(over.visibleProperty());
    over.visibleProperty().bind(file.mayOverwriteProperty());
    earlier.setId("earlier");
    earlier.getStyleClass().add("found-list");
    earlier.setAccessibleText(Texts.of("wiring.earlier"));
    earlier.setCellFactory(l -> FatCell.words(l, FilesPanel::words));
    earlier.setPlaceholder(Parts.text(Texts.of("wiring.earlier.none"), "muted"));
    earlier.addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    VBox.setVgrow(earlier, Priority.ALWAYS);
    FlowPane head = new FlowPane();
    head.getStyleClass().add("actions");
    head.getChildren()
        .addAll(
            Parts.line(Texts.of("wiring.earlier"), "side-title"),
            button("wiring.earlier.look", "L", this::look),
            button("wiring.earlier.restore", "Enter", this::take),
            button("wiring.earlier.forget", "Del", this::forget));
    file.nameProperty().addListener((Observable o) -> show());
    file.openedProperty().addListener((Observable o) -> show());
    file.versions().addListener((ListChangeListener<Version>) c -> show());
    file.kept().addListener((ListChangeListener<UnsavedWork.Kept>) c -> show());
    getChildren().addAll(name, buttons, over, head, earlier);
    show();
  }

  private static KeyButton button(String key, String cap, Runnable action) {
    return new KeyButton(Texts.of(key), cap, action).styled("wide");
  }

  private void show() {
    name.setText(
        file.openedProperty().get().isPresent()
            ? file.name()
            : Texts.of("wiring.noFile", file.name()));
    int at = earlier.getSelectionModel().getSelectedIndex();
    earlier.getItems().setAll(file.kept());
    earlier.getItems().addAll(file.versions());
    earlier.getSelectionModel().select(Math.max(0, at));
  }

  void takeFocus() {
    earlier.requestFocus();
  }

  private void pressed(KeyEvent e) {
    boolean handled = true;
    switch (e.getCode()) {
      case L -> look();
      case ENTER -> take();
      case DELETE -> forget();
      default -> handled = false;
    }
    if (handled && !e.isShortcutDown()) {
      e.consume();
    }
  }

  private void look() {
    if (earlier.getSelectionModel().getSelectedItem() instanceof Version version) {
      file.look(version);
    }
  }

  private void take() {
    Object chosen = earlier.getSelectionModel().getSelectedItem();
    if (chosen instanceof Version version) {
      file.restore(version);
    } else if (chosen instanceof UnsavedWork.Kept kept) {
      file.takeUp(kept);
    }
  }

  private void forget() {
    if (earlier.getSelectionModel().getSelectedItem() instanceof UnsavedWork.Kept kept) {
      file.forget(kept);
    }
  }

  /** A version, or unsaved work, in words. */
  private static String words(Object item) {
    if (item instanceof Version v) {
      return Texts.of(
          "wiring.earlier.version",
          Integer.toString(v.number()),
          WiringFile.time(v.at()),
          Long.toString(Math.round(v.bytes() / 1000.0)));
    }
    UnsavedWork.Kept kept = (UnsavedWork.Kept) item;
    return Texts.of("wiring.earlier.kept", kept.name(), WiringFile.time(kept.at()));
  }
}
