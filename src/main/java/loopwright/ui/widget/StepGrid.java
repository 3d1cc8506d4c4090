package loopwright.ui.widget;

import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.PointView;
import loopwright.ui.Texts;

/** What hands do, in its order: a word for each step and what is done beside it. */
public final class StepGrid extends GridPane {

  /** An empty grid. */
  public StepGrid() {
    getStyleClass().add("step-grid");
    ColumnConstraints word = new ColumnConstraints();
    word.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints rest = new ColumnConstraints();
    rest.setHgrow(Priority.ALWAYS);
    getColumnConstraints().addAll(word, rest);
  }

  /**
   * Adds a step.
   *
   * @param key of the word
   */
  public void step(String key, Node what) {
    Label word = Parts.line(Texts.of(key), "step-word");
    GridPane.setValignment(word, VPos.TOP);
    addRow(getRowCount(), word, what);
  }

  /**
   * Adds where a lead goes.
   *
   * @param mark of the lead
   */
  public void point(String key, Label mark, PointView point) {
    VBox what = Parts.column("step-box", Parts.text(point.title(), "step-value"));
    String where = where(point);
    if (!where.isEmpty()) {
      what.getChildren().add(Parts.text(where, "step-where"));
    }
    HBox.setHgrow(what, Priority.ALWAYS);
    step(key, Parts.row("entry-line", mark, what));
  }

  /** How a lead gets at a point, and the label there; may be empty. */
  public static String where(PointView point) {
    if (point.label().isEmpty()) {
      return point.how();
    }
    return point.how().isEmpty()
        ? Texts.of("point.label", point.label())
        : Texts.of("point.howLabel", point.how(), point.label());
  }
}
