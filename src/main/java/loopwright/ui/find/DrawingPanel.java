package loopwright.ui.find;

import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.Drops;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The loop of the case with the leads on it. */
final class DrawingPanel extends VBox {
  private final LoopDrawing drawing = new LoopDrawing();
  private final DropBar drops = new DropBar();

  DrawingPanel(CaseViewModel model, ReadOnlyDoubleProperty em) {
    setId("drawing");
    getStyleClass().addAll("card", "drawing-card");
    drawing.emProperty().bind(em);
    drawing.onClick(c -> model.pick(c.part(), c.points()));
    KeyButton fold =
        new KeyButton(
                Texts.of("drawing.whole"),
                CaseActions.DRAWING,
                () -> model.wholeLoopProperty().set(!model.wholeLoopProperty().get()))
            .styled("action", "small-action");
    fold.setMinWidth(Region.USE_PREF_SIZE);
    Label legend = Parts.text(Texts.of("drawing.legend"), "legend");
    legend.setMinWidth(0);
    VBox.setVgrow(drawing, Priority.ALWAYS);
    getChildren().addAll(drawing, drops, Parts.row("drawing-foot", fold, legend));
    Runnable show =
        () -> {
          drawing.loopProperty().set(java.util.Optional.of(model.loop()));
          drops.show(Drops.of(model.loop()));
          drawing.live(model.picks());
          drawing.redProperty().set(model.red());
          drawing.blackProperty().set(model.black());
          boolean whole = model.wholeLoopProperty().get();
          drawing
              .foldingProperty()
              .set(whole ? LoopLayout.Folding.WHOLE : LoopLayout.Folding.PART_IN_QUESTION);
          fold.setText(Texts.of(whole ? "drawing.part" : "drawing.whole"));
        };
    model.viewProperty().addListener(o -> show.run());
    model.doingProperty().addListener(o -> show.run());
    model.wholeLoopProperty().addListener(o -> show.run());
    model.own().redProperty().addListener(o -> show.run());
    model.own().blackProperty().addListener(o -> show.run());
    show.run();
  }

  LoopDrawing drawing() {
    return drawing;
  }
}
