package loopwright.diagnosis.plan;

/** Minutes of work that checks take, which may depend on what was done before. */
public interface Costs {

  /** How things stand before the first check. */
  Setup start();

  /**
   * Minutes that a check takes from here; above 0. A preference among checks can be put in as a
   * factor.
   *
   * @param check number of the check
   * @param setup how things stand
   */
  double minutes(int check, Setup setup);

  /** How things stand after the check. */
  Setup after(int check, Setup setup);

  /**
   * Least minutes that a check can ever take, whatever was done before; what {@link Exact} reckons
   * with when it leaves out plans that can't be the best. 0 where nothing is known.
   */
  default double leastMinutes(int check) {
    return 0;
  }

  /** Minutes that never change. */
  static Costs fixed(double... minutes) {
    return new FixedCosts(minutes.clone());
  }
}
