package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loopwright.meter.MeterSpec;

/**
 * Readings of a check that was read again and again while a contact came and went, taken at values
 * it only passed through. A loose contact has any resistance from moment to moment, while a failure
 * as it is reckoned with has one. So of the values that aren't as in health the one seen most often
 * counts, and of two seen as often the one further from health: there the contact was as bad as it
 * gets, which tells best where it is. Our own estimate.
 */
final class Passing {
  private final HealthyBands bands;
  private final MeterSpec meter;

  Passing(HealthyBands bands, MeterSpec meter) {
    this.bands = bands;
    this.meter = meter;
  }

  /**
   * Numbers of the readings that were only passed through.
   *
   * @param readings readings of a case about what works sometimes
   */
  Set<Integer> of(List<Reading> readings) {
    Map<Check, List<Reading>> again = new LinkedHashMap<>();
    for (Reading r : readings) {
      if (r.check().kind().metered() && !(r.value() instanceof Reading.Value.Between)) {
        again.computeIfAbsent(r.check(), c -> new ArrayList<>()).add(r);
      }
    }
    Set<Integer> passing = new TreeSet<>();
    again.forEach(
        (check, taken) -> {
          if (taken.size() > 1) {
            passing.addAll(of(check, taken));
          }
        });
    return passing;
  }

  private Set<Integer> of(Check check, List<Reading> taken) {
    double[] healthy = bands.band(check);
    List<Reading> failing = taken.stream().filter(r -> beyond(r, healthy) > 0).toList();
    List<Reading> counts = List.of();
    for (Reading r : failing) {
      List<Reading> state = failing.stream().filter(o -> agree(r, o)).toList();
      boolean oftener = state.size() > counts.size();
      boolean further =
          state.size() == counts.size() && beyond(r, healthy) > beyond(counts.get(0), healthy);
      if (oftener || further) {
        counts = state;
      }
    }
    Set<Integer> passing = new TreeSet<>();
    for (Reading r : failing) {
      if (!counts.contains(r)) {
        passing.add(r.id());
      }
    }
    return passing;
  }

  /** How far a value lies outside of health, in volts or ohms; none within. */
  private static double beyond(Reading r, double[] healthy) {
    double value = value(r);
    double half = r.value() instanceof Reading.Value.Number n ? n.step() / 2 : 0;
    if (Double.isInfinite(value)) {
      return Double.isInfinite(healthy[1]) ? 0 : value;
    }
    return Math.max(0, Math.max(healthy[0] - value, value - healthy[1]) - half);
  }

  /** Whether the meter could have shown both of one and the same value. */
  private boolean agree(Reading a, Reading b) {
    double x = value(a);
    double y = value(b);
    if (Double.isInfinite(x) || Double.isInfinite(y)) {
      return x == y;
    }
    return Math.abs(x - y) <= error(a) + error(b);
  }

  private double error(Reading r) {
    return r.value() instanceof Reading.Value.Number n
        ? meter.error(Workbench.function(r.check()), n.value(), n.step())
        : 0;
  }

  private static double value(Reading r) {
    return r.value() instanceof Reading.Value.Number n ? n.value() : Double.POSITIVE_INFINITY;
  }
}
