package loopwright.report;

import java.util.List;
import loopwright.casework.drawing.PartSymbol;

/** Puts the symbols of parts on a page. */
final class Symbols {
  private static final double THICK = 3;

  private Symbols() {}

  /**
   * Draws a symbol.
   *
   * @param x its middle across
   * @param y its middle down
   * @param em points of one em
   * @param width of its lines in points
   */
  static void draw(
      Leaf leaf, List<PartSymbol.Shape> shapes, double x, double y, double em, double width) {
    for (PartSymbol.Shape shape : shapes) {
      if (shape instanceof PartSymbol.Lines lines) {
        double[] points = new double[lines.points().size()];
        for (int i = 0; i < points.length; i++) {
          points[i] = (i % 2 == 0 ? x : y) + lines.points().get(i) * em;
        }
        switch (lines.ink()) {
          case DOT -> leaf.filled(points);
          case THICK -> leaf.lines(THICK * width, false, points);
          case LINE, BODY -> leaf.lines(width, lines.closed(), points);
        }
      } else if (shape instanceof PartSymbol.Circle c) {
        double line = c.ink() == PartSymbol.Ink.DOT ? 0 : width;
        leaf.circle(x + c.x() * em, y + c.y() * em, c.radius() * em, line);
      } else if (shape instanceof PartSymbol.LeftHalf h) {
        leaf.leftHalf(x + h.x() * em, y + h.y() * em, h.radiusX() * em, h.radiusY() * em, width);
      } else if (shape instanceof PartSymbol.Letter l) {
        double top = y + l.y() * em - em * Typeface.LEADING / 2;
        leaf.textMiddle(l.text(), Typeface.BOLD, em, x + l.x() * em, top);
      }
    }
  }
}
