package loopwright.ui.snapshot;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
import javafx.scene.shape.Shape;
import javafx.scene.text.Text;

/**
 * Contrast of what a scene really shows, by WCAG 2.2: "contrast ratio" and "relative luminance" as
 * defined there. Each text, and each stroke of a drawing, is held against what was painted last
 * under its middle. What is switched off or out of sight is left out, as 1.4.3 and 1.4.11 allow.
 */
public final class Contrast {
  /** Pixels beside a stroke's bounds. */
  private static final double BESIDE = 2;

  private final double leastForText;
  private final double leastForStrokes;
  private final Set<String> found = new LinkedHashSet<>();
  private final List<Painted> painted = new ArrayList<>();

  /** Something painted over a place; none where it can't be told, for instance a hatching. */
  private record Painted(Node node, Color colour, Bounds within) {
    boolean covers(Point2D place) {
      // Asked of everything for each text: what lies elsewhere must cost nothing.
      if (!within.contains(place)) {
        return false;
      }
      Point2D local = node.sceneToLocal(place);
      return local != null
          && inSight(node, place)
          && (node instanceof Shape
              ? node.contains(local)
              : node.getLayoutBounds().contains(local));
    }
  }

  private Contrast(double leastForText, double leastForStrokes) {
    this.leastForText = leastForText;
    this.leastForStrokes = leastForStrokes;
  }

  /**
   * What stands out too little; on the window's thread only.
   *
   * @param text least ratio of text
   * @param strokes least ratio of strokes within drawings
   */
  public static Set<String> tooLittle(Scene scene, double text, double strokes) {
    Contrast contrast = new Contrast(text, strokes);
    contrast.walk(scene.getRoot(), false);
    return contrast.found;
  }

  private void walk(Node node, boolean drawing) {
    if (!node.isVisible() || node.isDisabled() || node.getOpacity() == 0) {
      return;
    }
    boolean inDrawing = drawing || node.getStyleClass().contains("loop-canvas");
    if (node instanceof Text text) {
      if (!text.getText().isBlank()) {
        judge(text);
      }
    } else if (node instanceof Shape shape) {
      if (inDrawing && shape.getStroke() != null) {
        judgeStroke(shape);
      }
      paint(shape, shape.getFill());
    } else if (node instanceof Region region && region.getBackground() != null) {
      for (BackgroundFill fill : region.getBackground().getFills()) {
        paint(region, fill.getFill());
      }
    }
    if (node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        walk(child, inDrawing);
      }
    }
  }

  private void paint(Node node, Paint paint) {
    if (paint instanceof Color colour && colour.getOpacity() > 0) {
      painted.add(new Painted(node, colour, node.localToScene(node.getLayoutBounds())));
    }
  }

  private void judge(Text text) {
    if (text.getFill() instanceof Color colour && inSight(text, middle(text))) {
      Color ground = under(middle(text));
      double ratio = ratio(over(colour, ground), ground);
      if (ratio < leastForText) {
        tell(ratio, text.getText(), text, colour, ground);
      }
    }
  }

  /** A stroke may cross what has its own colour; it must stand out from something round it. */
  private void judgeStroke(Shape shape) {
    if (!(shape.getStroke() instanceof Color colour) || !inSight(shape, middle(shape))) {
      return;
    }
    Bounds b = shape.localToScene(shape.getLayoutBounds());
    List<Color> round =
        Stream.of(
                middle(shape),
                new Point2D(b.getMinX() - BESIDE, b.getMinY() - BESIDE),
                new Point2D(b.getMaxX() + BESIDE, b.getMinY() - BESIDE),
                new Point2D(b.getMinX() - BESIDE, b.getMaxY() + BESIDE),
                new Point2D(b.getMaxX() + BESIDE, b.getMaxY() + BESIDE))
            .map(this::under)
            .toList();
    List<Color> like =
        round.stream().filter(g -> ratio(over(colour, g), g) < leastForStrokes).toList();
    if (like.size() == round.size()) {
      Color ground = like.get(0);
      tell(ratio(over(colour, ground), ground), "stroke", shape, colour, ground);
    }
  }

  private void tell(double ratio, String what, Shape shape, Color colour, Color ground) {
    found.add(
        String.format(
            Locale.ROOT,
            "%.2f: %s %s %s on %s in %s",
            ratio,
            what,
            shape.getStyleClass(),
            colour,
            ground,
            shape.getParent().getStyleClass()));
  }

  private static Point2D middle(Node node) {
    Bounds bounds = node.getLayoutBounds();
    return node.localToScene(bounds.getCenterX(), bounds.getCenterY());
  }

  /** What lies there, one colour over the other. */
  private Color under(Point2D place) {
    return painted.stream()
        .filter(p -> p.covers(place))
        .map(Painted::colour)
        .reduce(Color.WHITE, (below, above) -> over(above, below));
  }

  private static boolean inSight(Node node, Point2D place) {
    for (Node n = node; n != null; n = n.getParent()) {
      if (n.getClip() != null && !n.getClip().getBoundsInParent().contains(n.sceneToLocal(place))) {
        return false;
      }
    }
    Scene scene = node.getScene();
    return place.getX() >= 0
        && place.getY() >= 0
        && place.getX() <= scene.getWidth()
        && place.getY() <= scene.getHeight();
  }

  private static Color over(Color front, Color back) {
    return back.interpolate(
        new Color(front.getRed(), front.getGreen(), front.getBlue(), 1), front.getOpacity());
  }

  /** Contrast ratio, 1 to 21. */
  public static double ratio(Color one, Color other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  /** Relative luminance, 0 to 1. */
  public static double luminance(Color c) {
    return 0.2126 * linear(c.getRed())
        + 0.7152 * linear(c.getGreen())
        + 0.0722 * linear(c.getBlue());
  }

  private static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
