package loopwright.solver;

import java.util.List;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;

/** The meter as a part: what it would show between two nodes, before its own error. */
public final class Meters {

  /** Below this resistance seen by the leads, the meter's loading is a plain divider. */
  private static final double STIFF_OHMS = 1e5;

  /**
   * Greatest ohms reported for OL, in full scales. A display that shows no number tells nothing of
   * how far beyond its range the ohms are, and numbers of any size only cost digits.
   */
  private static final double OPEN_SCALES = 2;

  private Meters() {}

  /**
   * What the display would show if the meter had no error.
   *
   * @param value volts or ohms; for OL no more than twice the largest number it can show
   * @param overRange whether the display shows OL instead
   * @param point the operating point with the meter in place
   * @param red node under the red lead
   * @param black node under the black lead
   * @param slope change of the value with the volts between the leads; 0 where OL is shown
   */
  public record Shown(
      double value, boolean overRange, OperatingPoint point, int red, int black, double slope) {}

  /** Volts from red to black at a solved point, the meter's own resistance in place. */
  public static Shown volts(
      Solver solver, OperatingPoint point, int red, int black, MeterSpec meter) {
    double open = point.volts(red, black);
    double seen = point.ohmsSeen(red, black);
    if (seen < STIFF_OHMS && !starves(point, Math.abs(open) / meter.inputOhms())) {
      double share = meter.inputOhms() / (meter.inputOhms() + seen);
      return new Shown(open * share, false, point, red, black, share);
    }
    Element load =
        new Element.Resistor("meter", "input", red, black, Spread.exactly(meter.inputOhms()));
    Variant loaded = point.variant().with(List.of(new Change.Add(load)));
    OperatingPoint with =
        solver.solve(
            loaded,
            point.setting(),
            point.values().extended(loaded),
            point.history(),
            point.pulledIn());
    return new Shown(with.volts(red, black), false, with, red, black, 1);
  }

  /**
   * Whether some junction conducts so little that the meter's own current could take all of it: it
   * would block then, and what the network shows to a small test current says nothing.
   */
  private static boolean starves(OperatingPoint point, double meterAmps) {
    for (int e = 0; e < point.variant().size(); e++) {
      if (point.variant().element(e) instanceof Element.Junction
          && point.siemens(e) > 2 * Laws.BLOCKED
          && Math.abs(point.amps(e)) < STARVED * meterAmps) {
        return true;
      }
    }
    return false;
  }

  /** Times the meter's current below which a junction counts as starved by it. */
  private static final double STARVED = 100;

  /**
   * Volts across a resistor of 1 ohm in the battery's grounded lead, red on the lead's end of it,
   * at the state that a solved point comes to with it.
   */
  public static Shown inGroundedLead(Solver solver, OperatingPoint point) {
    Variant through = GroundedLead.resistor(point.variant());
    OperatingPoint with =
        solver.solve(
            through,
            point.setting(),
            point.values().extended(through),
            point.history(),
            point.pulledIn());
    int post = GroundedLead.post(point.variant());
    double volts = with.volts(Network.REFERENCE, post);
    return new Shown(volts, false, with, Network.REFERENCE, post, 1);
  }

  /**
   * What a function that drives its own current shows between red and black.
   *
   * @param function ohms or the diode test
   * @param leadOhms resistance of the leads, which only ohms show
   */
  public static Shown driven(
      MeterFunction function,
      Solver solver,
      Variant variant,
      Setting setting,
      Values values,
      History history,
      int red,
      int black,
      MeterSpec meter,
      double leadOhms) {
    return switch (function) {
      case OHMS -> ohms(solver, variant, setting, values, history, red, black, meter, leadOhms);
      case DIODE -> diode(solver, variant, setting, values, history, red, black, meter);
      case VOLTS_DC ->
          throw new IllegalArgumentException("a meter on volts drives no current of its own");
    };
  }

  /** The meter's own source between its leads, as an element of the network. */
  static Element source(int red, int black, double volts, double ohms) {
    return new Element.Cell(
        "meter", "source", red, black, Spread.exactly(volts), Spread.exactly(ohms));
  }

  private static OperatingPoint driven(
      Solver solver,
      Variant variant,
      Setting setting,
      Values values,
      History history,
      Element source) {
    Variant loaded = variant.with(List.of(new Change.Add(source)));
    return solver.solve(loaded, setting, values.extended(loaded), history);
  }

  /**
   * The diode test between red and black: about a milliampere from red to black, and the volts that
   * this takes. OL is reported as the source's open volts.
   */
  public static Shown diode(
      Solver solver,
      Variant variant,
      Setting setting,
      Values values,
      History history,
      int red,
      int black,
      MeterSpec meter) {
    Element source = source(red, black, MeterSpec.DIODE_VOLTS, MeterSpec.DIODE_OHMS);
    OperatingPoint point = driven(solver, variant, setting, values, history, source);
    double volts = point.volts(red, black);
    boolean overRange = volts > meter.fullScale(MeterFunction.DIODE);
    return overRange
        ? new Shown(MeterSpec.DIODE_VOLTS, true, point, red, black, 0)
        : new Shown(volts, false, point, red, black, 1);
  }

  /**
   * Ohms between red and black: the meter's test source in place, volts over amperes, leads
   * included. The battery is expected to be apart in the setting; if it isn't, the result is as
   * wrong as a real meter's.
   */
  public static Shown ohms(
      Solver solver,
      Variant variant,
      Setting setting,
      Values values,
      History history,
      int red,
      int black,
      MeterSpec meter,
      double leadOhms) {
    Element source = source(red, black, meter.testVolts(), meter.testOhms());
    OperatingPoint point = driven(solver, variant, setting, values, history, source);
    double volts = point.volts(red, black);
    double rest = meter.testVolts() - volts;
    double amps = rest / meter.testOhms();
    double open = OPEN_SCALES * meter.fullScale(MeterFunction.OHMS);
    if (!(amps > 0)) {
      // No current at all, or foreign volts that drive it back.
      return new Shown(open, true, point, red, black, 0);
    }
    double ohms = volts / amps + leadOhms;
    // OL stays OL: a display that shows no number has no slope, and a nearly idle source would
    // make one of any size.
    boolean overRange = ohms > meter.fullScale(MeterFunction.OHMS);
    double slope = overRange ? 0 : meter.testOhms() * meter.testVolts() / (rest * rest);
    return new Shown(Math.min(ohms, open), overRange, point, red, black, slope);
  }
}
