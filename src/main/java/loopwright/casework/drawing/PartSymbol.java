package loopwright.casework.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import loopwright.casework.LoopView;

/**
 * The symbol of a part after IEC 60617, lying on a line that runs from left to right through its
 * middle. Lengths are in em; 0, 0 is the middle, y grows downwards.
 */
public final class PartSymbol {

  /** How a shape is drawn. */
  public enum Ink {
    /** A line. */
    LINE,
    /** A thick line. */
    THICK,
    /** An outline; where the ground has a colour, filled with it. */
    BODY,
    /** An area filled with ink. */
    DOT
  }

  /** A piece of a symbol. */
  public sealed interface Shape {}

  /**
   * Lines from point to point, closed where the ink is that of an area.
   *
   * @param points x, y, x, y and so on
   */
  public record Lines(Ink ink, List<Double> points) implements Shape {
    /** Copies the list. */
    public Lines {
      points = List.copyOf(points);
    }

    /** Whether the last point is joined to the first. */
    public boolean closed() {
      return ink == Ink.BODY || ink == Ink.DOT;
    }
  }

  /** A circle round a point. */
  public record Circle(Ink ink, double x, double y, double radius) implements Shape {}

  /** The left half of an ellipse round a point. */
  public record LeftHalf(double x, double y, double radiusX, double radiusY) implements Shape {}

  /** A letter round a point. */
  public record Letter(String text, double x, double y) implements Shape {}

  private final double left;
  private final double right;
  private final double top;
  private final List<Shape> shapes = new ArrayList<>();

  private PartSymbol(double width, double height) {
    this.left = -width / 2;
    this.right = width / 2;
    this.top = -height / 2;
  }

  /**
   * The shapes of a piece's symbol.
   *
   * @param piece the piece
   * @param width of the line it lies on, in em; 1.9 or more but for wires and splices
   * @param height of the room it has, in em
   */
  public static List<Shape> of(LoopView.PieceView piece, double width, double height) {
    PartSymbol s = new PartSymbol(width, height);
    switch (piece.kind()) {
      case WIRE -> s.line(s.left, 0, s.right, 0);
      case STRAP -> s.strap();
      case FUSE -> s.fuse();
      case SWITCH -> s.contact();
      case RELAY -> {
        if (coil(piece)) {
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
    return List.copyOf(s.shapes);
  }

  /** Whether a relay lies in the loop with its coil: 85 and 86 by DIN 72552. */
  private static boolean coil(LoopView.PieceView relay) {
    return relay
        .in()
        .map(t -> t.terminal().equals("85") || t.terminal().equals("86"))
        .orElse(false);
  }

  private void line(double x1, double y1, double x2, double y2) {
    lines(Ink.LINE, x1, y1, x2, y2);
  }

  private void lines(Ink ink, double... points) {
    shapes.add(new Lines(ink, Arrays.stream(points).boxed().toList()));
  }

  private void rectangle(Ink ink, double x, double y, double width, double height) {
    lines(ink, x, y, x + width, y, x + width, y + height, x, y + height);
  }

  private void circle(Ink ink, double x, double y, double radius) {
    shapes.add(new Circle(ink, x, y, radius));
  }

  private void leads(double half) {
    line(left, 0, -half, 0);
    line(half, 0, right, 0);
  }

  private void strap() {
    double y = 0.14;
    line(left, -y, right, -y);
    line(left, y, right, y);
    double step = (right - left) / 4;
    for (int i = 0; i < 4; i++) {
      double x = left + i * step;
      line(x, y, x + step, -y);
    }
  }

  private void fuse() {
    rectangle(Ink.BODY, -0.9, -0.36, 1.8, 0.72);
    line(left, 0, right, 0);
  }

  private void contact() {
    leads(0.6);
    circle(Ink.DOT, -0.6, 0, 0.13);
    circle(Ink.DOT, 0.6, 0, 0.13);
    line(-0.6, 0, 0.5, -0.62);
  }

  private void coil() {
    leads(0.5);
    double h = -0.76 * top;
    rectangle(Ink.BODY, -0.5, -h, 1, 2 * h);
  }

  private void lamp() {
    leads(0.75);
    circle(Ink.BODY, 0, 0, 0.75);
    double d = 0.75 * Math.sqrt(0.5);
    line(-d, -d, d, d);
    line(-d, d, d, -d);
  }

  private void diode() {
    leads(0.45);
    lines(Ink.BODY, -0.45, -0.5, -0.45, 0.5, 0.45, 0);
    line(0.45, -0.5, 0.45, 0.5);
  }

  private void led() {
    diode();
    for (double x : new double[] {0, 0.4}) {
      double y = -0.55;
      line(x, y, x + 0.35, y - 0.35);
      line(x + 0.35, y - 0.35, x + 0.12, y - 0.32);
      line(x + 0.35, y - 0.35, x + 0.32, y - 0.12);
    }
  }

  private void motor() {
    leads(0.8);
    circle(Ink.BODY, 0, 0, 0.8);
    shapes.add(new Letter("M", 0, 0));
  }

  private void heater() {
    leads(0.95);
    rectangle(Ink.BODY, -0.95, -0.36, 1.9, 0.72);
    for (double x : new double[] {-0.475, 0, 0.475}) {
      line(x, -0.36, x, 0.36);
    }
  }

  private void horn() {
    leads(0.6);
    rectangle(Ink.BODY, -0.6, -0.4, 0.6, 0.8);
    lines(Ink.BODY, 0, -0.3, 0.6, -0.8, 0.6, 0.8, 0, 0.3);
  }

  private void block() {
    leads(0.8);
    rectangle(Ink.BODY, -0.8, -0.75, 1.6, 1.5);
    lines(Ink.LINE, -0.5, 0.3, -0.2, 0.3, -0.2, -0.3, 0.2, -0.3, 0.2, 0.3, 0.5, 0.3);
  }

  private void sender() {
    leads(0.9);
    rectangle(Ink.BODY, -0.9, -0.34, 1.8, 0.68);
    line(-0.7, 0.75, 0.7, -0.75);
    line(0.7, -0.75, 0.38, -0.66);
    line(0.7, -0.75, 0.6, -0.42);
  }

  private void driver() {
    leads(0.7);
    rectangle(Ink.BODY, -0.7, -0.75, 1.4, 1.5);
    line(-0.35, -0.45, -0.35, 0.45);
    line(-0.35, -0.15, 0.35, -0.5);
    line(-0.35, 0.15, 0.35, 0.5);
  }

  private void connector() {
    leads(0.35);
    rectangle(Ink.DOT, 0.02, -0.15, 0.55, 0.3);
    shapes.add(new LeftHalf(0, 0, 0.35, 0.42));
  }

  private void splice() {
    line(left, 0, right, 0);
    circle(Ink.DOT, 0, 0, 0.22);
  }

  private void ground() {
    line(left, 0, right, 0);
    circle(Ink.DOT, 0, 0, 0.2);
    line(0, 0, 0, 0.45);
    for (int i = 0; i < 3; i++) {
      double half = 0.6 - 0.2 * i;
      double y = 0.45 + 0.22 * i;
      line(-half, y, half, y);
    }
  }

  private void body() {
    lines(Ink.THICK, left, 0, right, 0);
    for (int i = 0; i < 4; i++) {
      double x = -0.7 + 0.45 * i;
      line(x, 0, x - 0.3, 0.45);
    }
  }

  private void cell() {
    leads(0.2);
    line(-0.2, -0.75, -0.2, 0.75);
    line(0.2, -0.38, 0.2, 0.38);
  }
}
