package loopwright.ground;

import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;

/**
 * What a reading of the volts that a ground loses says about it.
 *
 * @param verdict whether it keeps its limit
 * @param why what stands in the way of telling
 * @param lowVolts least volts that the meter's error leaves
 * @param highVolts greatest
 * @param lowOhms least resistance that the reading leaves, in ohms
 * @param highOhms greatest; infinite where nothing limits it
 * @param turned whether the sign says that the leads were changed over, which does no harm
 */
public record Judgement(
    Verdict verdict,
    Why why,
    double lowVolts,
    double highVolts,
    double lowOhms,
    double highOhms,
    boolean turned) {

  /** Whether the limit is kept. */
  public enum Verdict {
    GOOD,
    BAD,
    CANT_TELL
  }

  /** What stands in the way of telling. */
  public enum Why {
    /** Nothing: it is told. */
    TOLD,
    /** Even a sound ground loses more: no current flows, or both leads touch the same metal. */
    NO_CURRENT,
    /** The last digit is too coarse; a lower range of the same meter shows more. */
    LOWER_RANGE,
    /** The meter itself is too coarse for so little; a greater current would lift the drop. */
    GREATER_LOAD,
    /** The reading lies so near the limit that what isn't known of the current decides. */
    NEAR_LIMIT
  }

  /**
   * Judges a reading.
   *
   * @param proof how it was taken
   * @param meter the meter
   * @param shown the volts on the display
   * @param step one digit of the last place shown, in volts
   */
  public static Judgement of(DropProof proof, MeterSpec meter, double shown, double step) {
    double error = meter.error(MeterFunction.VOLTS_DC, shown, step);
    double size = Math.abs(shown);
    double low = Math.max(0, size - error);
    double high = size + error;
    Verdict verdict =
        high < proof.goodBelow() || (exact(proof) && high <= proof.goodBelow())
            ? Verdict.GOOD
            : low > proof.badAbove() ? Verdict.BAD : Verdict.CANT_TELL;
    Why why = verdict == Verdict.CANT_TELL ? why(proof, meter, size, error) : Why.TOLD;
    if (high < proof.healthy().low()) {
      verdict = Verdict.CANT_TELL;
      why = Why.NO_CURRENT;
    }
    return new Judgement(
        verdict,
        why,
        low,
        high,
        proof.bounds().leastOhms(low),
        proof.bounds().mostOhms(high),
        shown < 0);
  }

  /** Whether volts are held against volts, so that just the limit is still kept. */
  private static boolean exact(DropProof proof) {
    return proof.limit().measure() == Limit.Measure.VOLTS;
  }

  private static Why why(DropProof proof, MeterSpec meter, double size, double error) {
    if (error > COARSER * meter.error(MeterFunction.VOLTS_DC, size)) {
      return Why.LOWER_RANGE;
    }
    boolean near = size >= proof.goodBelow() && size <= proof.badAbove();
    return near ? Why.NEAR_LIMIT : Why.GREATER_LOAD;
  }

  /** Times the error of the lowest range from which a reading counts as taken on a higher one. */
  private static final double COARSER = 1.5;
}
