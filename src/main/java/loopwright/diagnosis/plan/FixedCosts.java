package loopwright.diagnosis.plan;

/** Minutes that don't depend on what was done before. */
record FixedCosts(double[] all) implements Costs {

  private enum Always implements Setup {
    SAME
  }

  @Override
  public Setup start() {
    return Always.SAME;
  }

  @Override
  public double minutes(int check, Setup setup) {
    return all[check];
  }

  @Override
  public Setup after(int check, Setup setup) {
    return setup;
  }

  @Override
  public double leastMinutes(int check) {
    return all[check];
  }
}
