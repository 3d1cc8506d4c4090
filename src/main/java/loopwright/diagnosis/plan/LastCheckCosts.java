package loopwright.diagnosis.plan;

/**
 * Minutes that depend on the check made just before: where the leads are and what is switched on.
 * Each pair of checks is asked for once, when it is first needed.
 */
public final class LastCheckCosts implements Costs {

  /** Minutes of a check straight after another. */
  @FunctionalInterface
  public interface Following {
    /**
     * Minutes; above 0.
     *
     * @param check the check
     * @param before the check made before it
     */
    double minutes(int check, int before);
  }

  private enum First implements Setup {
    NOTHING_YET
  }

  private record After(int check) implements Setup {}

  private final double[] first;
  private final Following following;
  private final double[][] known;

  /**
   * Puts costs together.
   *
   * @param first minutes of each check if it is made next, as things stand now
   * @param following minutes of each check straight after another
   */
  public LastCheckCosts(double[] first, Following following) {
    for (int c = 0; c < first.length; c++) {
      requirePositive(c, first[c]);
    }
    this.first = first.clone();
    this.following = following;
    this.known = new double[first.length][first.length];
  }

  private static double requirePositive(int check, double minutes) {
    if (!(minutes > 0)) {
      throw new IllegalArgumentException(
          "check " + check + " takes " + minutes + " min; must be above 0");
    }
    return minutes;
  }

  @Override
  public Setup start() {
    return First.NOTHING_YET;
  }

  @Override
  public double minutes(int check, Setup setup) {
    if (!(setup instanceof After after)) {
      return first[check];
    }
    double[] row = known[after.check()];
    if (row[check] == 0) {
      row[check] = requirePositive(check, following.minutes(check, after.check()));
    }
    return row[check];
  }

  @Override
  public Setup after(int check, Setup setup) {
    return new After(check);
  }
}
