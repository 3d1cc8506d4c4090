package loopwright.ui.drawing;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.shape.Arc;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Shape;
import javafx.scene.text.Text;
import loopwright.casework.LoopView;
import loopwright.casework.drawing.PartSymbol;
import loopwright.ui.drawing.LoopPlan.Box;

/** Turns the symbols of parts into shapes of the window. */
final class Symbols {
  private final double em;
  private final double x;
  private final double y;

  private Symbols(double em, Box box) {
    this.em = em;
    this.x = box.centreX();
    this.y = box.y() + box.height() / 2;
  }

  /**
   * The shapes of a piece's symbol.
   *
   * @param piece the piece
   * @param box where, in em
   * @param em pixels of one em
   */
  static List<Node> of(LoopView.PieceView piece, Box box, double em) {
    Symbols place = new Symbols(em, box);
    return PartSymbol.of(piece, box.width(), box.height()).stream().map(place::node).toList();
  }

  private Node node(PartSymbol.Shape shape) {
    if (shape instanceof PartSymbol.Lines lines) {
      return lines(lines);
    }
    if (shape instanceof PartSymbol.Circle c) {
      Circle circle = new Circle((x + c.x()) * em, (y + c.y()) * em, c.radius() * em);
      return styled(circle, c.ink());
    }
    if (shape instanceof PartSymbol.LeftHalf h) {
      Arc arc =
          new Arc((x + h.x()) * em, (y + h.y()) * em, h.radiusX() * em, h.radiusY() * em, 90, 180);
      arc.setType(ArcType.OPEN);
      return styled(arc, PartSymbol.Ink.LINE);
    }
    return letter((PartSymbol.Letter) shape);
  }

  private Node lines(PartSymbol.Lines lines) {
    double[] points = new double[lines.points().size()];
    for (int i = 0; i < points.length; i++) {
      points[i] = ((i % 2 == 0 ? x : y) + lines.points().get(i)) * em;
    }
    return styled(lines.closed() ? new Polygon(points) : new Polyline(points), lines.ink());
  }

  private static Shape styled(Shape shape, PartSymbol.Ink ink) {
    shape.getStyleClass().add("symbol");
    switch (ink) {
      case LINE -> {}
      case THICK -> shape.getStyleClass().add("symbol-thick");
      case BODY -> shape.getStyleClass().add("symbol-body");
      case DOT -> shape.getStyleClass().add("symbol-dot");
    }
    return shape;
  }

  private Node letter(PartSymbol.Letter letter) {
    Text text = new Text(letter.text());
    text.getStyleClass().addAll("symbol-letter", "drawing-text");
    text.setStyle("-fx-font-size: " + 0.95 * em + "px;");
    text.setX((x + letter.x() - 0.38) * em);
    text.setY((y + letter.y() + 0.34) * em);
    return text;
  }
}
