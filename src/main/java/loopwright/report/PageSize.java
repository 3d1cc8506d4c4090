package loopwright.report;

/** The paper printed on. */
public enum PageSize {
  /** 210 by 297 mm (ISO 216). */
  A4(595.28, 841.89),
  /** 8.5 by 11 inches (ANSI/ASME Y14.1). */
  LETTER(612, 792);

  private final double narrow;
  private final double tall;

  PageSize(double narrow, double tall) {
    this.narrow = narrow;
    this.tall = tall;
  }

  /** Which way up a page is. */
  public enum Turn {
    UPRIGHT,
    ACROSS
  }

  /** Width in points. */
  double width(Turn turn) {
    return turn == Turn.UPRIGHT ? narrow : tall;
  }

  /** Height in points. */
  double height(Turn turn) {
    return turn == Turn.UPRIGHT ? tall : narrow;
  }
}
