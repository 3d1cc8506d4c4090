package loopwright.casework.list;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Outside diameters of vehicle wire, for sleeves: the greatest for thin-walled insulation by ISO
 * 6722-1 (from memory; above 35 mm2 usual battery cable). Old wire is thicker.
 */
final class Insulated {
  private record Size(double mm2, double outside) {}

  private static final List<Size> SIZES =
      List.of(
          new Size(0.35, 1.4),
          new Size(0.5, 1.6),
          new Size(0.75, 1.9),
          new Size(1, 2.1),
          new Size(1.5, 2.4),
          new Size(2.5, 3.0),
          new Size(4, 3.7),
          new Size(6, 4.3),
          new Size(10, 6.0),
          new Size(16, 7.2),
          new Size(25, 8.7),
          new Size(35, 10.4),
          new Size(50, 12.5),
          new Size(70, 14.5),
          new Size(95, 17),
          new Size(120, 19));

  /**
   * Shrink sleeve as it is sold, diameters in mm before shrinking (common practice: inch sizes).
   */
  private static final double[] SLEEVES = {1.6, 2.4, 3.2, 4.8, 6.4, 9.5, 12.7, 19.1, 25.4, 38.1};

  /** How much wider than the wire a sleeve must be to pass over the crimp (common practice). */
  private static final double OVER_CRIMP = 1.4;

  /** How much of a round bundle is air: its diameter over the root of the sum of squares. */
  private static final double LOOSE = 1.2;

  private Insulated() {}

  /** Outside diameter in mm of a wire: that of the next listed size at least as big. */
  static double outside(double mm2) {
    return SIZES.stream()
        .filter(s -> s.mm2() >= mm2 * 0.99)
        .mapToDouble(Size::outside)
        .findFirst()
        .orElseGet(() -> SIZES.get(SIZES.size() - 1).outside() * Math.sqrt(mm2 / 120));
  }

  /** Diameter in mm, before shrinking, of the sleeve for the end of a wire. */
  static double sleeve(double mm2) {
    double least = OVER_CRIMP * outside(mm2);
    return DoubleStream.of(SLEEVES)
        .filter(s -> s >= least)
        .findFirst()
        .orElse(SLEEVES[SLEEVES.length - 1]);
  }

  /**
   * Diameter in mm of a bundle: 1.2 times the root of the sum of squares (common practice), at
   * least the two thickest side by side.
   */
  static double bundle(List<Double> mm2) {
    double[] each = mm2.stream().mapToDouble(Insulated::outside).sorted().toArray();
    double thickest = each.length == 0 ? 0 : each[each.length - 1];
    double next = each.length < 2 ? 0 : each[each.length - 2];
    double loose =
        each.length < 2 ? 0 : LOOSE * Math.sqrt(DoubleStream.of(each).map(d -> d * d).sum());
    return Math.max(thickest + next, loose);
  }
}
