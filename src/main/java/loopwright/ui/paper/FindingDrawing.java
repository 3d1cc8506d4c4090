package loopwright.ui.paper;

import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.widget.Parts;

/** The circuit that the chosen finding's part lies in, with the part marked. */
final class FindingDrawing extends StackPane {

  FindingDrawing(PaperViewModel model, ReadOnlyDoubleProperty em) {
    setId("paper-drawing");
    getStyleClass().addAll("card", "drawing-card");
    LoopDrawing drawing = new LoopDrawing();
    drawing.emProperty().bind(em);
    Label none = Parts.text(Texts.of("paper.noDrawing"), "muted");
    none.visibleProperty().bind(model.loopProperty().isEqualTo(Optional.empty()));
    none.managedProperty().bind(none.visibleProperty());
    drawing.visibleProperty().bind(none.visibleProperty().not());
    drawing.managedProperty().bind(drawing.visibleProperty());
    model
        .loopProperty()
        .addListener(
            (o, was, is) -> {
              drawing.loopProperty().set(is);
              drawing.markedProperty().set(model.target());
            });
    setMinWidth(0);
    getChildren().addAll(drawing, none);
  }
}
