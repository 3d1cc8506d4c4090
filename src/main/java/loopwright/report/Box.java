package loopwright.report;

/** A rectangle on a page in points, from the top left corner. */
record Box(double x, double y, double width, double height) {
  double right() {
    return x + width;
  }

  double bottom() {
    return y + height;
  }

  /** Whether the two share more than an edge. */
  boolean overlaps(Box other) {
    double slack = 1e-6;
    return x < other.right() - slack
        && other.x < right() - slack
        && y < other.bottom() - slack
        && other.y < bottom() - slack;
  }
}
