package loopwright.solver;

import java.util.List;
import loopwright.model.PartKind;
import loopwright.model.Spread;
import loopwright.model.Typicals;

/**
 * A filament lamp on two leads, put where a fuse was or between a post and its lead. It lets a
 * short glow instead of burning: in front of a short it takes the whole supply and is bright, and
 * its cold resistance is low enough that little in series with it shows.
 *
 * @param ratedVolts volts at which it has its rated power
 * @param watts rated power in watts
 * @param amps its rated current in amperes
 * @param coldOhms its resistance when cold, in ohms
 */
public record TestLamp(double ratedVolts, double watts, Spread amps, Spread coldOhms) {

  /** Name of the lamp as a part of a solved network. */
  public static final String PART = "test-lamp";

  /**
   * The lamp that goes in a fuse's place: 21 W, which is a stop or turn lamp's bulb and at hand on
   * any vehicle; 5 W at 6 V, where 21 W would draw as much as the fuses carry. Common practice.
   *
   * @param systemVolts 6, 12 or 24
   */
  public static TestLamp forFuse(int systemVolts, Typicals typicals) {
    return of(systemVolts, fuseWatts(systemVolts), typicals);
  }

  /** Watts of the lamp that goes in a fuse's place. */
  public static int fuseWatts(int systemVolts) {
    return systemVolts <= 6 ? 5 : 21;
  }

  /** Watts of the lamp that goes into the battery's grounded lead. */
  public static final int DRAIN_WATTS = 5;

  /**
   * The lamp that goes into the battery's grounded lead to watch a drain: 5 W, dim from some tenth
   * of an ampere. Common practice.
   *
   * @param systemVolts 6, 12 or 24
   */
  public static TestLamp forDrain(int systemVolts, Typicals typicals) {
    return of(systemVolts, DRAIN_WATTS, typicals);
  }

  private static TestLamp of(int systemVolts, double watts, Typicals typicals) {
    Spread amps = Spread.around(watts / systemVolts, typicals.relative(PartKind.LAMP, "watts"));
    Spread ratio = typicals.usual(PartKind.LAMP, "coldRatio", systemVolts);
    return new TestLamp(
        systemVolts, watts, amps, Element.Filament.coldOhms(systemVolts, amps, ratio));
  }

  /**
   * The network with this lamp in the place of a fuse link, the fuse out. The lamp has the last
   * number.
   *
   * @param link number of the fuse's link in the base network
   */
  public Variant inPlaceOf(Variant variant, int link) {
    Element old = variant.element(link);
    return variant.with(
        List.of(new Change.Remove(link), new Change.Add(filament(old.a(), old.b()))));
  }

  /**
   * The network with this lamp between the battery's grounded post and its lead. Volts against the
   * post mean nothing then: only the lamp's own are to be used. The lamp has the last number.
   */
  public Variant inGroundedLead(Variant variant) {
    return GroundedLead.with(variant, post -> filament(post, Network.REFERENCE));
  }

  /** The share of the power that the whole supply would give it, at a solved point; 0 and up. */
  public double level(OperatingPoint point, double supplyVolts) {
    int lamp = point.variant().size() - 1;
    double full =
        supplyVolts
            * Laws.filamentAmps(supplyVolts, ratedVolts, amps.typical(), coldOhms.typical());
    return Math.abs(point.across(lamp) * point.amps(lamp)) / full;
  }

  private Element filament(int a, int b) {
    return new Element.Filament(PART, "filament", a, b, ratedVolts, amps, coldOhms);
  }
}
