package loopwright.casework.list;

import java.math.BigDecimal;
import java.math.RoundingMode;
import loopwright.model.Estimate;
import loopwright.model.Spread;

/**
 * What is cut and bought beyond the length that runs in the vehicle.
 *
 * @param share of a wire's length, 0 to 1: bends, and a route that turns out longer than measured
 * @param metresAnEnd at each end, 0 to 2 m: dressing, stripping, and one terminal made anew
 */
public record Allowance(double share, double metresAnEnd) {
  /** Ten percent and 0.15 m at each end (common practice). */
  public static final Allowance USUAL = new Allowance(0.10, 0.15);

  /** Rejects what is out of bounds. */
  public Allowance {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("allowance must be a share of 0 to 1, not " + share);
    }
    if (!(metresAnEnd >= 0 && metresAnEnd <= 2)) {
      throw new IllegalArgumentException(
          "allowance at an end must be 0 to 2 m, not " + metresAnEnd);
    }
  }

  /** The length a wire is reckoned with: the upper end where it is known only within limits. */
  static double reckoned(Estimate metres) {
    return metres.limits().map(Spread::high).orElse(metres.about());
  }

  /** The length to cut in metres, up to the next full centimetre. */
  double cut(Estimate metres) {
    BigDecimal exact =
        BigDecimal.valueOf(reckoned(metres))
            .multiply(BigDecimal.ONE.add(BigDecimal.valueOf(share)))
            .add(BigDecimal.valueOf(metresAnEnd).multiply(BigDecimal.valueOf(2)));
    return exact.setScale(2, RoundingMode.CEILING).doubleValue();
  }
}
