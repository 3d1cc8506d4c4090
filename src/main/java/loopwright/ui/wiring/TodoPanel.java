package loopwright.ui.wiring;

import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.Parts;

/** What keeps the vehicle from being solved; Enter or a click goes there. */
final class TodoPanel extends VBox {
  private final ListView<VehicleCheck.Finding> list = new ListView<>();

  TodoPanel(WiringViewModel model, GridViewModel grid) {
    setId("todo");
    getStyleClass().add("panel-body");
    Label head = Parts.text("", "muted");
    list.setId("todo-list");
    list.setItems(model.findings());
    list.getStyleClass().add("found-list");
    list.setCellFactory(
        l -> FatCell.words(l, f -> Texts.of("wiring.todo.line", f.object(), f.what())));
    list.setPlaceholder(Parts.text(Texts.of("wiring.todo.none"), "muted"));
    list.setAccessibleText(Texts.of("wiring.todo.head"));
    VBox.setVgrow(list, Priority.ALWAYS);
    Runnable go =
        () -> {
          VehicleCheck.Finding chosen = list.getSelectionModel().getSelectedItem();
          if (chosen != null) {
            Places.of(chosen, model.vehicleProperty().get())
                .ifPresent(p -> grid.go(p.id(), p.column()));
          }
        };
    list.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            go.run();
            e.consume();
          }
        });
    list.setOnMouseClicked(e -> go.run());
    Runnable count =
        () ->
            head.setText(
                Texts.of(model.findings().isEmpty() ? "wiring.todo.good" : "wiring.todo.head"));
    model.findings().addListener((ListChangeListener<VehicleCheck.Finding>) c -> count.run());
    count.run();
    getChildren().addAll(head, list);
  }

  void takeFocus() {
    list.requestFocus();
    if (list.getSelectionModel().isEmpty()) {
      list.getSelectionModel().select(0);
    }
  }
}
