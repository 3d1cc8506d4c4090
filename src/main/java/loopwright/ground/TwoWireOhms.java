package loopwright.ground;

import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Spread;

/**
 * What the two leads of a meter on ohms can show of a ground: the leads and the last digit hide
 * milliohms. Touching the leads together first gives what is to be taken off.
 *
 * @param own resistance that the ground should have, in ohms
 * @param limit greatest resistance it may have, in ohms
 * @param meter the meter
 */
public record TwoWireOhms(Spread own, double limit, MeterSpec meter) {

  /** Least and greatest value on the display with the leads held together, in ohms. */
  public double[] zero() {
    Spread ohms = meter.leadOhms();
    return new double[] {
      Math.max(0, ohms.low() - meter.error(MeterFunction.OHMS, ohms.low())),
      ohms.high() + meter.error(MeterFunction.OHMS, ohms.high())
    };
  }

  /**
   * Resistance that a ground must have beyond the leads for the difference of two readings to show
   * for certain that there is any, in ohms: both readings may be off by the meter's error.
   */
  public double shows() {
    return meter.error(MeterFunction.OHMS, meter.leadOhms().typical())
        + meter.error(MeterFunction.OHMS, meter.leadOhms().typical() + own.high());
  }

  /** Whether a reading could ever show that the ground keeps its limit. */
  public boolean canPass() {
    return shows() < limit;
  }

  /**
   * Judges the two readings.
   *
   * @param zero ohms with the leads held together
   * @param zeroStep one digit of its last place, in ohms
   * @param shown ohms across the ground; infinite for OL
   * @param step one digit of its last place, in ohms
   */
  public Shown judge(double zero, double zeroStep, double shown, double step) {
    if (Double.isInfinite(shown)) {
      double full = meter.fullScale(MeterFunction.OHMS);
      return new Shown(full, Double.POSITIVE_INFINITY, Judgement.Verdict.BAD);
    }
    double error =
        meter.error(MeterFunction.OHMS, zero, zeroStep)
            + meter.error(MeterFunction.OHMS, shown, step);
    double low = Math.max(0, shown - zero - error);
    double high = Math.max(0, shown - zero + error);
    Judgement.Verdict verdict =
        low > limit
            ? Judgement.Verdict.BAD
            : high < limit ? Judgement.Verdict.GOOD : Judgement.Verdict.CANT_TELL;
    return new Shown(low, high, verdict);
  }

  /**
   * What two readings leave.
   *
   * @param lowOhms least resistance, in ohms
   * @param highOhms greatest; infinite for OL
   * @param verdict whether the limit is kept
   */
  public record Shown(double lowOhms, double highOhms, Judgement.Verdict verdict) {}
}
