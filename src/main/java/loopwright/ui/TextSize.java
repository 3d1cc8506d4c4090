package loopwright.ui;

/** How large text and everything measured by it is. */
public enum TextSize {
  NORMAL(100),
  LARGE(125),
  LARGER(150),
  LARGEST(200);

  /** Body text at 100 % in pixels. */
  private static final double BODY_PIXELS = 16;

  private final int percent;

  TextSize(int percent) {
    this.percent = percent;
  }

  /** Percent of the normal size. */
  public int percent() {
    return percent;
  }

  /** Size of body text in pixels; one em. */
  public double pixels() {
    return BODY_PIXELS * percent / 100;
  }

  /** The next size, from the largest back to normal. */
  public TextSize next() {
    return values()[(ordinal() + 1) % values().length];
  }

  /** The next larger size, or this one if there is none. */
  public TextSize larger() {
    return values()[Math.min(ordinal() + 1, values().length - 1)];
  }

  /** The next smaller size, or this one if there is none. */
  public TextSize smaller() {
    return values()[Math.max(ordinal() - 1, 0)];
  }
}
