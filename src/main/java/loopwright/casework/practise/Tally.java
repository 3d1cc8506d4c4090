package loopwright.casework.practise;

/**
 * How often something was said rightly and wrongly.
 *
 * @param right times, at least 0
 * @param wrong times, at least 0
 */
public record Tally(int right, int wrong) {
  /** Nothing was said. */
  static final Tally NONE = new Tally(0, 0);

  /** Both together. */
  Tally plus(Tally other) {
    return new Tally(right + other.right, wrong + other.wrong);
  }
}
