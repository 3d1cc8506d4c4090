package loopwright.diagnosis.plan;

/** Which of several checks that are equally good is taken. */
public enum Ties {
  /** The one with the lowest number. */
  FIRST,
  /** The one with the highest number. */
  LAST;

  /** Scores that differ by less than this part of them are equal. */
  private static final double EQUAL = 1e-12;

  /** Whether a score takes the place of the best one before it, in rising order of checks. */
  boolean better(double score, double best) {
    if (Double.isInfinite(best)) {
      return true;
    }
    double margin = EQUAL * Math.max(1, Math.abs(best));
    return this == FIRST ? score > best + margin : score > best - margin;
  }
}
