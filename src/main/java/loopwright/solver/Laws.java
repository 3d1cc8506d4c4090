package loopwright.solver;

/** The law of each element: current against volts, linearised at a point. */
final class Laws {

  /**
   * Conductance of a junction that does not conduct, in siemens. From memory: silicon leaks less.
   */
  static final double BLOCKED = 1e-9;

  /** Current of a filament grows with this power of the volts. */
  static final double FILAMENT_EXPONENT = 0.55;

  private Laws() {}

  /**
   * Filament current in amperes. Below the volts at which the power law would need less than the
   * cold resistance, the cold resistance rules.
   */
  static double filamentAmps(double volts, double ratedVolts, double ratedAmps, double coldOhms) {
    double v = Math.abs(volts);
    if (surelyCold(v, ratedVolts, ratedAmps, coldOhms)) {
      return volts / coldOhms;
    }
    double i = Math.min(v / coldOhms, ratedAmps * Math.pow(v / ratedVolts, FILAMENT_EXPONENT));
    return Math.signum(volts) * i;
  }

  /** Slope of the filament current in siemens. */
  static double filamentSlope(double volts, double ratedVolts, double ratedAmps, double coldOhms) {
    double v = Math.abs(volts);
    if (surelyCold(v, ratedVolts, ratedAmps, coldOhms)) {
      return 1 / coldOhms;
    }
    double hot = ratedAmps * Math.pow(v / ratedVolts, FILAMENT_EXPONENT);
    if (v / coldOhms <= hot) {
      return 1 / coldOhms;
    }
    return FILAMENT_EXPONENT * hot / v;
  }

  /**
   * Whether the cold resistance rules without working out a power: it does below (cold / hot
   * resistance)^(1 / (1 - 0.55)) of the rated volts, which is 1.3e-3 for a twentieth.
   */
  private static boolean surelyCold(double v, double ratedVolts, double ratedAmps, double cold) {
    return v <= 1e-3 * ratedVolts && cold * ratedAmps >= 0.05 * ratedVolts;
  }

  /** How the current of an element from a to b changes with each of its values, volts held. */
  static double[] slopes(Element element, OperatingPoint point, int e) {
    Values values = point.values();
    double v = point.across(e);
    if (element instanceof Element.Cell) {
      double ohms = values.get(e, 1);
      return new double[] {-1 / ohms, -(v - values.get(e, 0)) / (ohms * ohms)};
    }
    if (element instanceof Element.Filament f) {
      double amps = values.get(e, 0);
      double cold = values.get(e, 1);
      double i = filamentAmps(v, f.ratedVolts(), amps, cold);
      boolean coldRules =
          Math.abs(v) / cold <= amps * Math.pow(Math.abs(v) / f.ratedVolts(), FILAMENT_EXPONENT);
      return coldRules ? new double[] {0, -i / cold} : new double[] {i / amps, 0};
    }
    if (element instanceof Element.Junction) {
      double forward = values.get(e, 0);
      double ohms = values.get(e, 1);
      if (v <= forward) {
        return new double[] {0, 0};
      }
      return new double[] {-1 / ohms, -(v - forward) / (ohms * ohms)};
    }
    if (element instanceof Element.Motor) {
      int k = point.running(e) ? 0 : 1;
      double[] slopes = new double[3];
      double ohms = values.get(e, k);
      slopes[k] = -v / (ohms * ohms);
      return slopes;
    }
    double[] slopes = new double[values.count(e)];
    double ohms = values.get(e, 0);
    slopes[0] = -v / (ohms * ohms);
    return slopes;
  }
}
