package loopwright.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import loopwright.casework.Picture;

/** One page laid out: texts and lines in their places, all black. */
final class Leaf {

  /** What stands on a page. */
  sealed interface Mark {}

  /**
   * A line of text.
   *
   * @param text what the font can show of it
   * @param baseline height of its baseline
   * @param box all it takes up
   */
  record Text(String text, Typeface face, double size, double baseline, Box box) implements Mark {}

  /**
   * A line or outline, or an area filled black.
   *
   * @param steps from point to point
   * @param width line width in points; 0 where the path is filled
   * @param dash lengths of dash and gap; 0 for none
   */
  record Path(List<Step> steps, double width, double dash) implements Mark {
    Path {
      steps = List.copyOf(steps);
    }
  }

  /** A picture that fills a box. */
  record Photo(Picture picture, Box box) implements Mark {}

  /** A part of a path. */
  sealed interface Step {
    record Move(double x, double y) implements Step {}

    record Line(double x, double y) implements Step {}

    record Curve(double x1, double y1, double x2, double y2, double x, double y) implements Step {}

    record Close() implements Step {}
  }

  /** Where a quarter of a circle has its control points, as a share of the radius. */
  private static final double QUARTER = 0.5523;

  private final double width;
  private final double height;
  private final List<Mark> marks = new ArrayList<>();

  Leaf(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** A page of the same marks, to put more on. */
  Leaf copy() {
    Leaf copy = new Leaf(width, height);
    copy.marks.addAll(marks);
    return copy;
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  List<Mark> marks() {
    return Collections.unmodifiableList(marks);
  }

  /** The texts on the page. */
  List<Text> texts() {
    return marks.stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
  }

  /** The photos on the page. */
  List<Photo> photos() {
    return marks.stream().filter(Photo.class::isInstance).map(Photo.class::cast).toList();
  }

  /** Puts a text with its left end and the top of its line in place; says what its ink takes up. */
  Box text(String text, Typeface face, double size, double x, double top) {
    String plain = face.plain(text);
    Box box =
        new Box(
            x,
            top + size * (Typeface.ABOVE - Typeface.TALLEST),
            face.width(plain, size),
            size * (Typeface.TALLEST + Typeface.DEEPEST));
    if (!plain.isBlank()) {
      marks.add(new Text(plain, face, size, top + size * Typeface.ABOVE, box));
    }
    return box;
  }

  /** Puts a text with its right end in place. */
  Box textRight(String text, Typeface face, double size, double right, double top) {
    return text(text, face, size, right - face.width(text, size), top);
  }

  /** Puts a picture as large as it fits into a room, at its top and left; says where it is. */
  Box photo(Picture picture, Box room) {
    double scale = Math.min(room.width() / picture.width(), room.height() / picture.height());
    Box box = new Box(room.x(), room.y(), scale * picture.width(), scale * picture.height());
    marks.add(new Photo(picture, box));
    return box;
  }

  /** Puts a text round its middle. */
  Box textMiddle(String text, Typeface face, double size, double middle, double top) {
    return text(text, face, size, middle - face.width(text, size) / 2, top);
  }

  void line(double x1, double y1, double x2, double y2, double width) {
    dashed(x1, y1, x2, y2, width, 0);
  }

  void dashed(double x1, double y1, double x2, double y2, double width, double dash) {
    marks.add(new Path(List.of(new Step.Move(x1, y1), new Step.Line(x2, y2)), width, dash));
  }

  /** Lines from point to point: x, y, x, y and so on. */
  void lines(double width, boolean closed, double... points) {
    marks.add(new Path(steps(closed, points), width, 0));
  }

  /** An area filled black. */
  void filled(double... points) {
    marks.add(new Path(steps(true, points), 0, 0));
  }

  private static List<Step> steps(boolean closed, double... points) {
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i + 1 < points.length; i += 2) {
      steps.add(
          i == 0 ? new Step.Move(points[0], points[1]) : new Step.Line(points[i], points[i + 1]));
    }
    if (closed) {
      steps.add(new Step.Close());
    }
    return steps;
  }

  void rectangle(Box b, double width) {
    lines(width, true, b.x(), b.y(), b.right(), b.y(), b.right(), b.bottom(), b.x(), b.bottom());
  }

  void bar(Box b) {
    filled(b.x(), b.y(), b.right(), b.y(), b.right(), b.bottom(), b.x(), b.bottom());
  }

  /** A circle; filled where the line width is 0. */
  void circle(double x, double y, double r, double width) {
    double k = QUARTER * r;
    marks.add(
        new Path(
            List.of(
                new Step.Move(x + r, y),
                new Step.Curve(x + r, y + k, x + k, y + r, x, y + r),
                new Step.Curve(x - k, y + r, x - r, y + k, x - r, y),
                new Step.Curve(x - r, y - k, x - k, y - r, x, y - r),
                new Step.Curve(x + k, y - r, x + r, y - k, x + r, y),
                new Step.Close()),
            width,
            0));
  }

  /** The left half of an ellipse, from top to bottom. */
  void leftHalf(double x, double y, double rx, double ry, double width) {
    double kx = QUARTER * rx;
    double ky = QUARTER * ry;
    marks.add(
        new Path(
            List.of(
                new Step.Move(x, y - ry),
                new Step.Curve(x - kx, y - ry, x - rx, y - ky, x - rx, y),
                new Step.Curve(x - rx, y + ky, x - kx, y + ry, x, y + ry)),
            width,
            0));
  }
}
