package loopwright.diagnosis;

/** Told while something long is worked out; may be asked to give up. */
@FunctionalInterface
public interface Step {

  /**
   * So much is done.
   *
   * @param share 0 to 1
   * @return false to give up
   */
  boolean done(double share);

  /** Never gives up, tells nobody. */
  Step SILENT = share -> true;
}
