package loopwright.diagnosis;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What people call a load by its share of its full power: on, dim or off, with a blur between. */
final class Brightness {

  // Shares of the full power. Below a fifth of its power a lamp gives a hundredth of its light
  // (light goes with the 3.4th power of the volts, power with the 1.6th), which by day is dark.
  private static final double OFF_BELOW = 0.04;
  private static final double DIM_ABOVE = 0.25;
  private static final double DIM_BELOW = 0.70;
  private static final double ON_ABOVE = 0.95;

  private Brightness() {}

  /**
   * Chances of each answer.
   *
   * @param levels shares of the full power: the typical one first, which counts twice
   */
  static Prediction.Sight of(List<Double> levels) {
    double on = 0;
    double dim = 0;
    double off = 0;
    for (int p = 0; p < levels.size(); p++) {
      double level = levels.get(p);
      double o = 1 - rises(level, OFF_BELOW, DIM_ABOVE);
      double l = rises(level, DIM_BELOW, ON_ABOVE);
      double weight = p == 0 ? 2 : 1;
      off += weight * o;
      on += weight * l;
      dim += weight * Math.max(0, 1 - o - l);
    }
    Map<Seen, Double> chances = new EnumMap<>(Seen.class);
    double sum = on + dim + off;
    chances.put(Seen.ON, blur(on / sum, 3));
    chances.put(Seen.DIM, blur(dim / sum, 3));
    chances.put(Seen.OFF, blur(off / sum, 3));
    return new Prediction.Sight(chances);
  }

  /** Whether nobody would call a load of this share lit. */
  static boolean dark(double level) {
    return level < OFF_BELOW;
  }

  private static double rises(double x, double from, double to) {
    return Math.min(1, Math.max(0, (x - from) / (to - from)));
  }

  private static double blur(double chance, int answers) {
    return chance * (1 - Predictor.MISNAMED) + Predictor.MISNAMED / answers;
  }
}
