package loopwright.casework.pattern;

import java.util.List;
import loopwright.knowledge.WireFuses;
import loopwright.model.WireSize;

/** The ratings and sizes that shops sell. */
final class Sizes {

  /**
   * Ratings of blade fuses to 30 A (ISO 8820-3, SAE J1284) and of bolted ones above (common
   * practice), in amperes.
   */
  private static final List<Double> FUSES =
      List.of(2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 70.0, 100.0);

  /** Ratings of contacts, in amperes. Common practice. */
  private static final List<Double> CONTACTS = List.of(5.0, 10.0, 16.0, 20.0, 30.0, 40.0, 70.0);

  /** Share of its rating at which a fuse may work all the time. Common practice. */
  static final double WORKING_SHARE = 0.8;

  /** A lamp rated at 12 V takes so much more at 12.6 V: 1.05 to the power of 0.55. */
  static final double FULL_BATTERY = 1.03;

  /** Thinner wires break by shaking before they melt; in square millimetres. Common practice. */
  private static final double THINNEST = 0.75;

  private Sizes() {}

  /** The smallest fuse that carries a load with a fifth of its rating to spare. */
  static double fuse(double amps) {
    return atLeast(FUSES, amps * FULL_BATTERY / WORKING_SHARE);
  }

  /** The smallest contact rating that carries a load with a quarter to spare. */
  static double contact(double amps) {
    return atLeast(CONTACTS, amps * 1.25);
  }

  private static double atLeast(List<Double> ratings, double amps) {
    return ratings.stream()
        .filter(r -> r >= amps - 1e-9)
        .findFirst()
        .orElse(ratings.get(ratings.size() - 1));
  }

  /** The sizes of a unit, thinnest first. */
  private static List<WireSize> ladder(WireSize.Unit unit) {
    return WireSize.sold(unit).filter(s -> s.mm2() >= THINNEST).toList();
  }

  /** The thinnest size that a fuse protects; the thinnest of all without one. */
  static WireSize forFuse(WireFuses table, WireSize.Unit unit, double fuse) {
    List<WireSize> ladder = ladder(unit);
    return ladder.stream()
        .filter(s -> table.greatest(s.mm2()).orElse(0) >= fuse)
        .findFirst()
        .orElse(ladder.get(ladder.size() - 1));
  }

  /** The thinnest size with at least so much copper; the thickest of all if there is none. */
  static WireSize atLeast(WireSize.Unit unit, double mm2) {
    List<WireSize> ladder = ladder(unit);
    return ladder.stream()
        .filter(s -> s.mm2() >= mm2 * 0.999)
        .findFirst()
        .orElse(ladder.get(ladder.size() - 1));
  }
}
