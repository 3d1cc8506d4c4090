package loopwright.paper;

/**
 * How long a blade fuse takes to open, by how many times its rating flows: a band, since makers
 * differ. Operating-time table of ISO 8820-3:2010, types C and F (from memory); between its rows
 * straight on double logarithmic paper, as such curves are drawn.
 */
final class FuseTimes {
  private static final double[] TIMES = {1.10, 1.35, 1.60, 2.00, 3.50, 6.00};
  private static final double[] LEAST = {360_000, 0.75, 0.25, 0.15, 0.04, 0.02};
  private static final double[] MOST = {Double.POSITIVE_INFINITY, 1800, 50, 5, 0.5, 0.1};

  private FuseTimes() {}

  /**
   * The longest it may take, in seconds.
   *
   * @param times current over the rating
   * @return infinite below 1.35 times
   */
  static double longest(double times) {
    return times < TIMES[1] ? Double.POSITIVE_INFINITY : at(times, MOST);
  }

  /** The least it may take, in seconds; 100 hours up to 1.1 times the rating. */
  static double least(double times) {
    return at(Math.max(times, TIMES[0]), LEAST);
  }

  private static double at(double times, double[] seconds) {
    int last = TIMES.length - 1;
    if (times >= TIMES[last]) {
      // Beyond the table the same heat melts it: time falls with the square of the current.
      double ratio = TIMES[last] / times;
      return seconds[last] * ratio * ratio;
    }
    int i = 0;
    while (times >= TIMES[i + 1]) {
      i++;
    }
    double share = Math.log(times / TIMES[i]) / Math.log(TIMES[i + 1] / TIMES[i]);
    return Math.exp(
        Math.log(seconds[i]) + share * (Math.log(seconds[i + 1]) - Math.log(seconds[i])));
  }
}
