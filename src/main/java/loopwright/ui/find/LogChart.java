package loopwright.ui.find;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import loopwright.casework.LogWords;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;
import loopwright.ui.widget.Parts;

/**
 * One check read again and again, over time: what is healthy as a band, each reading as a dot, and
 * as a cross where it isn't as in health.
 */
final class LogChart extends Region {
  private static final double EMS = 6;
  private static final double MARK = 0.35;

  /** Room at the edges, so that marks aren't cut. */
  private static final double EDGE = 0.5;

  private final ReadingLog log;
  private final ReadingLog.Scale scale;
  private final Label top;
  private final Label bottom;
  private final Label from;
  private final Label to;
  private final Rectangle healthy = new Rectangle();
  private final Polyline line = new Polyline();

  /**
   * Draws a log.
   *
   * @param scale its scale
   */
  LogChart(ReadingLog log, ReadingLog.Scale scale, LogWords words) {
    this.log = log;
    this.scale = scale;
    setId("log-chart");
    getStyleClass().add("log-chart");
    setAccessibleText(String.join(" ", words.of(log)));
    this.top = Parts.line(log.words(scale.high()), "log-end");
    this.bottom = Parts.line(log.words(scale.low()), "log-end");
    this.from = Parts.line(words.time(log.first().at()), "log-end");
    this.to = Parts.line(words.time(log.last().at()), "log-end");
    healthy.getStyleClass().add("log-healthy");
    line.getStyleClass().add("log-line");
  }

  @Override
  protected double computePrefHeight(double width) {
    return EMS * em();
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefWidth(double height) {
    return 0;
  }

  private double em() {
    return top.getFont().getSize();
  }

  @Override
  protected void layoutChildren() {
    double labels = Math.max(top.prefWidth(-1), bottom.prefWidth(-1)) + EDGE * em();
    double foot = from.prefHeight(-1);
    double left = labels + EDGE * em();
    double width = Math.max(1, getWidth() - left - EDGE * em());
    double height = Math.max(1, getHeight() - foot - EDGE * em());
    List<Node> all = new ArrayList<>(List.of(healthy, line));
    log.first()
        .healthy()
        .ifPresent(
            band -> {
              double high = y(band.high(), height);
              healthy.setX(labels);
              healthy.setY(high);
              healthy.setWidth(getWidth() - labels);
              healthy.setHeight(Math.max(2, y(band.low(), height) - high));
            });
    line.getPoints().clear();
    double before = Double.NaN;
    for (ReadingView reading : log.readings()) {
      if (reading.number().isEmpty()) {
        continue;
      }
      double x = left + share(reading) * width;
      double y = y(reading.number().get(), height);
      if (!Double.isNaN(before)) {
        line.getPoints().addAll(x, before);
      }
      line.getPoints().addAll(x, y);
      before = y;
      mark(all, reading.fits(), x, y);
    }
    all.addAll(List.of(top, bottom, from, to));
    getChildren().setAll(all);
    all.forEach(Node::applyCss);
    place(top, 0, y(scale.high(), height) - EDGE * em());
    place(bottom, 0, y(scale.low(), height) - top.prefHeight(-1) + EDGE * em());
    place(from, labels, getHeight() - foot);
    place(to, getWidth() - to.prefWidth(-1), getHeight() - foot);
  }

  private static void place(Label label, double x, double y) {
    label.resizeRelocate(x, y, label.prefWidth(-1), label.prefHeight(-1));
  }

  private void mark(List<Node> all, boolean fits, double x, double y) {
    double r = MARK * em();
    if (fits) {
      Circle dot = new Circle(x, y, r);
      dot.getStyleClass().add("log-good");
      all.add(dot);
      return;
    }
    for (int way : new int[] {1, -1}) {
      Line stroke = new Line(x - r, y - way * r, x + r, y + way * r);
      stroke.getStyleClass().add("log-bad");
      all.add(stroke);
    }
  }

  private double y(double value, double height) {
    return EDGE * em() + (1 - scale.of(value)) * (height - EDGE * em());
  }

  /** Where its time lies between the first and the last. */
  private double share(ReadingView reading) {
    double whole = Duration.between(log.first().at(), log.last().at()).toMillis();
    double since = Duration.between(log.first().at(), reading.at()).toMillis();
    return whole > 0 ? Math.max(0, Math.min(1, since / whole)) : 0.5;
  }
}
