package loopwright.ui.drawing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.LoopView;

/**
 * A loop laid out: where everything goes, in em from the top left corner. Made by {@link
 * LoopLayout}.
 *
 * @param title what runs in the loop
 * @param titleLines the same in its place, at the left above the line
 * @param width width of the whole drawing
 * @param height height of the whole drawing
 * @param lineY height of the line on which the pieces lie
 * @param battery where the battery stands
 * @param pieces the pieces drawn, in order
 * @param folds runs of pieces folded away
 * @param nodes the nodes drawn, in order
 * @param ticks marks of the volts axis
 * @param railY height of the 0 V rail
 * @param rows other loops that act on this one, each on a row above
 */
public record LoopPlan(
    String title,
    List<Label> titleLines,
    double width,
    double height,
    double lineY,
    Box battery,
    List<Piece> pieces,
    List<Fold> folds,
    List<Node> nodes,
    List<Tick> ticks,
    double railY,
    List<Row> rows) {

  /** The pieces of the main row, then those of the others. */
  public Stream<Piece> allPieces() {
    return Stream.concat(pieces.stream(), rows.stream().flatMap(r -> r.pieces().stream()));
  }

  /** A rectangle. */
  public record Box(double x, double y, double width, double height) {
    /** Right edge. */
    public double right() {
      return x + width;
    }

    /** Bottom edge. */
    public double bottom() {
      return y + height;
    }

    /** Middle across. */
    public double centreX() {
      return x + width / 2;
    }

    /** How far a point lies outside; 0 inside. */
    public double distance(double px, double py) {
      return Math.hypot(
          Math.max(0, Math.max(x - px, px - right())),
          Math.max(0, Math.max(y - py, py - bottom())));
    }

    /** Whether the two share more than an edge. */
    public boolean overlaps(Box other) {
      double slack = 1e-6;
      return x < other.right() - slack
          && other.x < right() - slack
          && y < other.bottom() - slack
          && other.y < bottom() - slack;
    }
  }

  /** A line of text in its place. */
  public record Label(String text, Box box) {}

  /**
   * A piece in its place.
   *
   * @param index its index in the loop
   * @param view what is known of it
   * @param cell the column it fills, from node to node
   * @param id its id, above the line
   * @param name its name, below the line; none for wires
   * @param symbol where its symbol is drawn
   */
  public record Piece(
      int index, LoopView.PieceView view, Box cell, Label id, List<Label> name, Box symbol) {}

  /**
   * Pieces folded away.
   *
   * @param from index of the first
   * @param to index after the last
   * @param cell the column of the fold
   * @param label how many
   */
  public record Fold(int from, int to, Box cell, Label label) {}

  /** A meter lead. */
  public enum Lead {
    RED,
    BLACK
  }

  /**
   * A node in its place.
   *
   * @param index its index in the loop
   * @param view what is known of it
   * @param x its place across
   * @param band the healthy band in the staircase
   * @param lead the lead that belongs here now
   * @param leadBox where the lead's mark is drawn
   * @param points measured points
   * @param value the latest measured value, under the rail
   */
  public record Node(
      int index,
      LoopView.Stair view,
      double x,
      Box band,
      Optional<Lead> lead,
      Box leadBox,
      List<Point> points,
      Optional<Label> value) {}

  /** A measured point of the staircase. */
  public record Point(int reading, double volts, double y) {}

  /** A mark of the volts axis. */
  public record Tick(double volts, double y, Label label) {}

  /**
   * Another loop on a row of its own.
   *
   * @param title what runs in it
   * @param titleLines the title in its place
   * @param lineY height of its line
   * @param pieces its pieces
   * @param nodes its nodes across
   * @param link the dashed link to the main row; empty if it acts on nothing drawn
   */
  public record Row(
      String title,
      List<Label> titleLines,
      double lineY,
      List<Piece> pieces,
      List<RowNode> nodes,
      Optional<Link> link) {}

  /** A node of a row. */
  public record RowNode(int index, LoopView.Stair view, double x) {}

  /**
   * The dashed line from what moves to what it moves.
   *
   * @param fromX where it leaves the row
   * @param fromY height where it leaves the row
   * @param toX where it meets the main row
   * @param toY height where it meets the main row
   */
  public record Link(double fromX, double fromY, double toX, double toY) {}
}
