package loopwright.ui.explain;

import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.HBox;
import loopwright.casework.explain.Explained.Moved;
import loopwright.casework.explain.Explained.Stop;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** A slider that stands at one of a few stops; left and right move it. */
final class StopSlider extends Slider {
  private final List<Stop> stops;
  private final Label where = Parts.text("", "explain-stop");
  private final HBox row;

  StopSlider(Moved control, Consumer<String> moved) {
    super(0, control.stops().size() - 1, control.stop());
    stops = control.stops();
    setId("explain-" + control.id());
    getStyleClass().add("explain-slider");
    setMajorTickUnit(1);
    setMinorTickCount(0);
    setBlockIncrement(1);
    setSnapToTicks(true);
    setShowTickMarks(true);
    row = Parts.row("explain-control", Parts.text(control.name(), "explain-name"), this, where);
    show(control);
    valueProperty().addListener(o -> moved.accept(at().id()));
  }

  private Stop at() {
    return stops.get((int) Math.round(getValue()));
  }

  /** The slider between its name and where it stands. */
  HBox row() {
    return row;
  }

  /** Says where the control stands; the slider itself may be on its way elsewhere already. */
  void show(Moved control) {
    String text = control.stops().get(control.stop()).text();
    where.setText(text);
    setAccessibleText(Texts.of("explain.figure", control.name(), text));
  }
}
