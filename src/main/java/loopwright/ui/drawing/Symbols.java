package loopwright.ui.drawing;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.shape.Arc;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;
import javafx.scene.text.Text;
import loopwright.casework.LoopView;
import loopwright.ui.drawing.LoopPlan.Box;

/**
 * The symbols of parts, drawn after IEC 60617, lying on a line that runs from the left edge of
 * their box to the right edge at half its height.
 */
final class Symbols {
  private final double em;
  private final Box box;
  private final double lineY;
  private final List<Node> nodes = new ArrayList<>();

  private Symbols(double em, Box box) {
    this.em = em;
    this.box = box;
    this.lineY = box.y() + box.height() / 2;
  }

  /**
   * The shapes of a piece's symbol.
   *
   * @param piece the piece
   * @param box where, in em
   * @param em pixels of one em
   */
  static List<Node> of(LoopView.PieceView piece, Box box, double em) {
    Symbols s = new Symbols(em, box);
    switch (piece.kind()) {
      case WIRE -> s.line(box.x(), s.lineY, box.right(), s.lineY);
      case STRAP -> s.strap();
      case FUSE -> s.fuse();
      case SWITCH -> s.contact();
      case RELAY -> {
        if (piece
            .in()
            .map(
                t ->
                    t.terminal().startsWith("8")
                        && t.terminal().length() == 2
                        && !t.terminal().equals("87"))
            .orElse(false)) {
          s.coil();
        } else {
          s.contact();
        }
      }
      case LAMP, DUAL_LAMP -> s.lamp();
      case LED -> s.led();
      case DIODE -> s.diode();
      case MOTOR -> s.motor();
      case HEATER -> s.heater();
      case SOLENOID -> s.coil();
      case HORN -> s.horn();
      case ELECTRONICS -> s.block();
      case SENDER -> s.sender();
      case DRIVER -> s.driver();
      case CONNECTOR -> s.connector();
      case SPLICE -> s.splice();
      case GROUND -> s.ground();
      case BODY -> s.body();
      case BATTERY -> s.cell();
    }
    return s.nodes;
  }

  private double mid() {
    return box.centreX();
  }

  private void add(Shape shape, String... classes) {
    shape.getStyleClass().add("symbol");
    shape.getStyleClass().addAll(classes);
    nodes.add(shape);
  }

  private void line(double x1, double y1, double x2, double y2) {
    add(new Line(x1 * em, y1 * em, x2 * em, y2 * em));
  }

  private void rectangle(double x, double y, double w, double h) {
    add(new Rectangle(x * em, y * em, w * em, h * em), "symbol-body");
  }

  private void circle(double x, double y, double r, String kind) {
    add(new Circle(x * em, y * em, r * em), kind);
  }

  private void leads(double half) {
    line(box.x(), lineY, mid() - half, lineY);
    line(mid() + half, lineY, box.right(), lineY);
  }

  private void strap() {
    double y = 0.14;
    line(box.x(), lineY - y, box.right(), lineY - y);
    line(box.x(), lineY + y, box.right(), lineY + y);
    double step = box.width() / 4;
    for (int i = 0; i < 4; i++) {
      double x = box.x() + i * step;
      line(x, lineY + y, x + step, lineY - y);
    }
  }

  private void fuse() {
    rectangle(mid() - 0.9, lineY - 0.36, 1.8, 0.72);
    line(box.x(), lineY, box.right(), lineY);
  }

  private void contact() {
    leads(0.6);
    circle(mid() - 0.6, lineY, 0.13, "symbol-dot");
    circle(mid() + 0.6, lineY, 0.13, "symbol-dot");
    line(mid() - 0.6, lineY, mid() + 0.5, lineY - 0.62);
  }

  private void coil() {
    leads(0.5);
    double h = box.height() * 0.38;
    rectangle(mid() - 0.5, lineY - h, 1, 2 * h);
  }

  private void lamp() {
    leads(0.75);
    circle(mid(), lineY, 0.75, "symbol-body");
    double d = 0.75 * Math.sqrt(0.5);
    line(mid() - d, lineY - d, mid() + d, lineY + d);
    line(mid() - d, lineY + d, mid() + d, lineY - d);
  }

  private void triangle() {
    Polygon p =
        new Polygon(
            (mid() - 0.45) * em,
            (lineY - 0.5) * em,
            (mid() - 0.45) * em,
            (lineY + 0.5) * em,
            (mid() + 0.45) * em,
            lineY * em);
    add(p, "symbol-body");
    line(mid() + 0.45, lineY - 0.5, mid() + 0.45, lineY + 0.5);
  }

  private void diode() {
    leads(0.45);
    triangle();
  }

  private void led() {
    diode();
    for (double shift : new double[] {0, 0.4}) {
      double x = mid() + shift;
      double y = lineY - 0.55;
      line(x, y, x + 0.35, y - 0.35);
      line(x + 0.35, y - 0.35, x + 0.12, y - 0.32);
      line(x + 0.35, y - 0.35, x + 0.32, y - 0.12);
    }
  }

  private void motor() {
    leads(0.8);
    circle(mid(), lineY, 0.8, "symbol-body");
    letter("M");
  }

  private void letter(String letter) {
    Text text = new Text(letter);
    text.getStyleClass().addAll("symbol-letter", "drawing-text");
    text.setStyle("-fx-font-size: " + 0.95 * em + "px;");
    text.setX((mid() - 0.38) * em);
    text.setY((lineY + 0.34) * em);
    nodes.add(text);
  }

  private void heater() {
    leads(0.95);
    rectangle(mid() - 0.95, lineY - 0.36, 1.9, 0.72);
    for (double x : new double[] {-0.475, 0, 0.475}) {
      line(mid() + x, lineY - 0.36, mid() + x, lineY + 0.36);
    }
  }

  private void horn() {
    leads(0.6);
    rectangle(mid() - 0.6, lineY - 0.4, 0.6, 0.8);
    Polygon bell =
        new Polygon(
            mid() * em,
            (lineY - 0.3) * em,
            (mid() + 0.6) * em,
            (lineY - 0.8) * em,
            (mid() + 0.6) * em,
            (lineY + 0.8) * em,
            mid() * em,
            (lineY + 0.3) * em);
    add(bell, "symbol-body");
  }

  private void block() {
    leads(0.8);
    rectangle(mid() - 0.8, lineY - 0.75, 1.6, 1.5);
    Polyline wave =
        new Polyline(
            (mid() - 0.5) * em,
            (lineY + 0.3) * em,
            (mid() - 0.2) * em,
            (lineY + 0.3) * em,
            (mid() - 0.2) * em,
            (lineY - 0.3) * em,
            (mid() + 0.2) * em,
            (lineY - 0.3) * em,
            (mid() + 0.2) * em,
            (lineY + 0.3) * em,
            (mid() + 0.5) * em,
            (lineY + 0.3) * em);
    add(wave);
  }

  private void sender() {
    leads(0.9);
    rectangle(mid() - 0.9, lineY - 0.34, 1.8, 0.68);
    line(mid() - 0.7, lineY + 0.75, mid() + 0.7, lineY - 0.75);
    line(mid() + 0.7, lineY - 0.75, mid() + 0.38, lineY - 0.66);
    line(mid() + 0.7, lineY - 0.75, mid() + 0.6, lineY - 0.42);
  }

  private void driver() {
    leads(0.7);
    rectangle(mid() - 0.7, lineY - 0.75, 1.4, 1.5);
    line(mid() - 0.35, lineY - 0.45, mid() - 0.35, lineY + 0.45);
    line(mid() - 0.35, lineY - 0.15, mid() + 0.35, lineY - 0.5);
    line(mid() - 0.35, lineY + 0.15, mid() + 0.35, lineY + 0.5);
  }

  private void connector() {
    line(box.x(), lineY, mid() - 0.35, lineY);
    line(mid() + 0.35, lineY, box.right(), lineY);
    add(new Rectangle((mid() + 0.02) * em, (lineY - 0.15) * em, 0.55 * em, 0.3 * em), "symbol-dot");
    Arc socket = new Arc(mid() * em, lineY * em, 0.35 * em, 0.42 * em, 90, 180);
    socket.setType(ArcType.OPEN);
    add(socket, "symbol-open");
  }

  private void splice() {
    line(box.x(), lineY, box.right(), lineY);
    circle(mid(), lineY, 0.22, "symbol-dot");
  }

  private void ground() {
    line(box.x(), lineY, box.right(), lineY);
    circle(mid(), lineY, 0.2, "symbol-dot");
    line(mid(), lineY, mid(), lineY + 0.45);
    for (int i = 0; i < 3; i++) {
      double half = 0.6 - 0.2 * i;
      double y = lineY + 0.45 + 0.22 * i;
      line(mid() - half, y, mid() + half, y);
    }
  }

  private void body() {
    Line bar = new Line(box.x() * em, lineY * em, box.right() * em, lineY * em);
    add(bar, "symbol-thick");
    for (int i = 0; i < 4; i++) {
      double x = mid() - 0.7 + 0.45 * i;
      line(x, lineY, x - 0.3, lineY + 0.45);
    }
  }

  private void cell() {
    line(box.x(), lineY, mid() - 0.2, lineY);
    line(mid() + 0.2, lineY, box.right(), lineY);
    line(mid() - 0.2, lineY - 0.75, mid() - 0.2, lineY + 0.75);
    line(mid() + 0.2, lineY - 0.38, mid() + 0.2, lineY + 0.38);
  }
}
