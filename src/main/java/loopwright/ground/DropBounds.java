package loopwright.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Enclosure;
import loopwright.solver.History;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * Which volts a side of the vehicle may lose if it has so many ohms, whatever all other values are
 * inside their spreads. For each choice of these the volts grow with the ohms, so that the bounds
 * turned round give the ohms that a reading leaves.
 */
public final class DropBounds {

  /** Ohms from which a side counts as open. */
  private static final double OPEN_OHMS = 1e6;

  /** Share by which bounds of ohms are let out for what the steps to them leave. */
  private static final double MARGIN = 1e-3;

  private static final int MOST_STEPS = 40;

  /**
   * Share by which volts are let out where other currents come in on the way: that these lift the
   * rest of the vehicle a little is not followed. Some tens of millivolts of the system's volts.
   */
  private static final double COMES_IN = 0.02;

  private record Way(Enclosure enclosure, Enclosure.Starts starts) {}

  private final Side side;
  private final List<Way> ways = new ArrayList<>();

  /**
   * Bounds for one side in one setting.
   *
   * @param seen the vehicle as it is seen to work
   * @param point how it stands with typical values
   */
  DropBounds(Side side, Variant seen, OperatingPoint point) {
    this.side = side;
    Set<Integer> inner = side.inner(seen.base());
    if (comesIn(inner, seen, point)) {
      // What comes in on the way passes some of the ohms: as if at the far end at most, at least
      // as if at the near one.
      add(seen.with(without(seen, inner, side.from())), point.setting());
      add(seen.with(without(seen, inner, side.to())), point.setting());
    } else {
      add(seen.with(without(seen, inner, side.to())), point.setting());
    }
  }

  /** Amperes from which a current counts that comes in on the way. */
  private static final double FLOWS = 1e-6;

  private boolean comesIn(Set<Integer> inner, Variant seen, OperatingPoint point) {
    for (int e = 0; e < seen.size(); e++) {
      Element element = seen.element(e);
      if (!side.elements().contains(e)
          && (inner.contains(element.a()) || inner.contains(element.b()))
          && Math.abs(point.amps(e)) > FLOWS) {
        return true;
      }
    }
    return false;
  }

  /** The side taken out, and all that ends inside it ends at one of its ends. */
  private List<Change> without(Variant seen, Set<Integer> inner, int end) {
    List<Change> changes = new ArrayList<>();
    for (int e = 0; e < seen.size(); e++) {
      Element element = seen.element(e);
      if (side.elements().contains(e)) {
        changes.add(new Change.Remove(e));
      } else if (inner.contains(element.a()) || inner.contains(element.b())) {
        int a = inner.contains(element.a()) ? end : element.a();
        int b = inner.contains(element.b()) ? end : element.b();
        changes.add(new Change.Replace(e, element.between(a, b)));
      }
    }
    return changes;
  }

  private void add(Variant without, Setting setting) {
    // A milliohm is a sound ground.
    Element sound =
        new Element.Resistor("side", "joint", side.from(), side.to(), Spread.exactly(1e-3));
    Variant with = without.with(List.of(new Change.Add(sound)));
    List<OperatingPoint> points =
        Solver.full(with.base()).states(with, setting, Values.typical(with), History.NONE);
    ways.add(
        new Way(
            new Enclosure(without, setting), Enclosure.Starts.of(points, List.of(History.NONE))));
  }

  /** What the volts are lost in. */
  public Side side() {
    return side;
  }

  /** Whether other currents come in between the leads, so that the bounds are a little wider. */
  public boolean comesIn() {
    return ways.size() > 1;
  }

  /**
   * Least and greatest volts lost, their sign left out; empty where none were found.
   *
   * @param ohms resistance of the side in ohms, above 0
   */
  public Optional<double[]> volts(double ohms) {
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (Way way : ways) {
      Optional<Enclosure.Bounds> found =
          way.enclosure().volts(way.starts(), side.from(), side.to(), ohms);
      if (found.isEmpty()) {
        return Optional.empty();
      }
      double[] sizes = DropProofs.sizes(found.get().low(), found.get().high());
      low = Math.min(low, sizes[0]);
      high = Math.max(high, sizes[1]);
    }
    double out = comesIn() ? COMES_IN : 0;
    return Optional.of(new double[] {low * (1 - out), high * (1 + out)});
  }

  /** Least ohms with which so many volts can be lost; 0 where none were found. */
  double leastOhms(double volts) {
    return volts <= 0 ? 0 : turned(volts, 1) * (1 - MARGIN);
  }

  /** Greatest ohms with which so few volts can be lost; infinite where there is no end to them. */
  double mostOhms(double volts) {
    double ohms = volts <= 0 ? 0 : turned(volts, 0) * (1 + MARGIN);
    return comesIn() && ohms > STRAYS ? Double.POSITIVE_INFINITY : ohms;
  }

  /**
   * Ohms from which current that came in on the way may leave it again through lamps that are off:
   * a cold filament has an ohm or so. Then there is no telling how much passed all of it.
   */
  private static final double STRAYS = 0.1;

  /**
   * Ohms at which one end of the band of volts is just so high. The side's current falls slowly
   * with its ohms, so a few steps from the current at the last guess do; then the last of them are
   * tried in between.
   */
  private double turned(double volts, int end) {
    double below = 0;
    double above = Double.POSITIVE_INFINITY;
    double ohms = 1e-3;
    for (int i = 0; i < MOST_STEPS; i++) {
      Optional<double[]> band = volts(ohms);
      if (band.isEmpty()) {
        return end == 0 ? Double.POSITIVE_INFINITY : below;
      }
      double at = band.get()[end];
      if (at < volts) {
        below = ohms;
      } else {
        above = ohms;
      }
      boolean closed = above < Double.POSITIVE_INFINITY && above - below <= MARGIN / 2 * above;
      if (below > OPEN_OHMS || closed) {
        break;
      }
      double guess = at > 0 ? ohms * volts / at : ohms * 10;
      // Steps that land just beyond close the bracket from both sides.
      guess *= at < volts ? 1 + MARGIN / 4 : 1 - MARGIN / 4;
      boolean inside = guess > below && guess < above;
      ohms = inside ? guess : Double.isInfinite(above) ? ohms * 10 : Math.sqrt(below * above);
      if (ohms == 0) {
        ohms = above / 10;
      }
    }
    return end == 0 ? (below > OPEN_OHMS ? Double.POSITIVE_INFINITY : above) : below;
  }
}
