package loopwright.ui.wiring;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.widget.Parts;

/** The drawing under the table; a click on a piece goes to its row. */
final class SketchPanel extends StackPane {
  private final LoopDrawing drawing = new LoopDrawing();

  SketchPanel(SketchViewModel model, ReadOnlyDoubleProperty em, Consumer<String> go) {
    setId("wiring-drawing");
    drawing.emProperty().bind(em);
    drawing.foldingProperty().set(LoopLayout.Folding.WHOLE);
    drawing.onPiece(go);
    model.loopProperty().addListener((o, was, is) -> drawing.loopProperty().set(is));
    model.markedProperty().addListener((o, was, is) -> drawing.markedProperty().set(is));
    Label why = Parts.text("", "muted");
    why.setId("wiring-no-drawing");
    why.textProperty().bind(model.whyProperty());
    why.visibleProperty().bind(model.whyProperty().isNotEmpty());
    getChildren().addAll(drawing, why);
  }
}
