package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.meter.MeterSpec;

/**
 * Where readings lie against the bands of the suspects. A reading is out only if no value inside
 * the spreads, with the meter's greatest error on top, explains it: a guard band in the sense of
 * JCGM 106:2012.
 */
final class Clearing {

  private final Predictor predictor;
  private final MeterSpec meter;

  Clearing(Predictor predictor, MeterSpec meter) {
    this.predictor = predictor;
    this.meter = meter;
  }

  /** Where one reading lies against one hypothesis. */
  Fact.Standing standing(Hypothesis h, Reading reading) {
    if (h.unlisted()) {
      return Fact.Standing.IN;
    }
    if (reading.value() instanceof Reading.Value.Sight) {
      // What people call a sight is too soft to clear anything by itself; belief takes it in.
      return Fact.Standing.IN;
    }
    Fact.Standing byReach = standing(predictor.possible(h, reading.check()), reading);
    if (byReach != Fact.Standing.OUT) {
      return byReach;
    }
    // The quick band is no proof. Only what lies outside of bounds that hold for all values counts
    // as out; where no bounds are found the suspect is held.
    if (beyond(predictor.coarse(h, reading.check()), reading)) {
      return Fact.Standing.OUT;
    }
    return predictor
        .outer(h, reading.check())
        .map(band -> standing(band, reading))
        .orElse(Fact.Standing.EDGE);
  }

  /**
   * The bounds by which a reading rules a hypothesis out, the meter's error left out; empty unless
   * it does.
   */
  Optional<Predictor.Possible> bounds(Hypothesis h, Reading reading) {
    if (standing(h, reading) != Fact.Standing.OUT) {
      return Optional.empty();
    }
    Optional<Predictor.Possible> coarse = predictor.coarse(h, reading.check());
    return beyond(coarse, reading) ? coarse : predictor.outer(h, reading.check());
  }

  /**
   * Whether a reading is unusual for a hypothesis by the quick band and its corners. Enough to say
   * that something is amiss, never to clear anything: use {@link #standing} for that.
   */
  boolean odd(Hypothesis h, Reading reading) {
    if (h.unlisted() || reading.value() instanceof Reading.Value.Sight) {
      return false;
    }
    return standing(predictor.possibleAtCorners(h, reading.check()), reading) == Fact.Standing.OUT;
  }

  private Fact.Standing standing(Predictor.Possible band, Reading reading) {
    if (reading.value() instanceof Reading.Value.OverRange) {
      return Double.isInfinite(band.high()) ? Fact.Standing.IN : Fact.Standing.OUT;
    }
    double low;
    double high;
    double guard;
    if (reading.value() instanceof Reading.Value.Number n) {
      low = n.value();
      high = n.value();
      guard = guard(reading.check(), n.value(), n.step());
    } else {
      Reading.Value.Between b = (Reading.Value.Between) reading.value();
      low = b.low();
      high = b.high();
      guard =
          Math.max(
              guard(reading.check(), Double.isInfinite(low) ? 0 : low, 0),
              guard(reading.check(), Double.isInfinite(high) ? 0 : high, 0));
    }
    if (high < band.low() - guard || low > band.high() + guard) {
      return Fact.Standing.OUT;
    }
    if (high < band.low() || low > band.high()) {
      return Fact.Standing.EDGE;
    }
    return Fact.Standing.IN;
  }

  /** The meter's greatest error at a shown value, and half of what rounding by hand may hide. */
  private double guard(Check check, double shown, double step) {
    MeterSpec.Range range = meter.rangeFor(Workbench.function(check), shown);
    return range.error(shown) + Math.max(0, step - range.step()) / 2 + step / 2;
  }

  /** Works out on all processors where the readings lie, so that {@link #standing} knows. */
  private void makeReady(Collection<Hypothesis> hypotheses, List<Reading> readings) {
    hypotheses.parallelStream().forEach(h -> readings.forEach(r -> standing(h, r)));
  }

  private boolean beyond(Optional<Predictor.Possible> band, Reading reading) {
    return band.isPresent() && standing(band.get(), reading) == Fact.Standing.OUT;
  }

  /**
   * Margins of all suspects: for a resistance range, the readings that together rule out every cell
   * of it.
   */
  List<Fact.Margin> margins(
      Collection<Hypothesis> hypotheses, List<Reading> readings, Set<SuspectId> shownGood) {
    makeReady(hypotheses, readings);
    Map<SuspectId, List<Hypothesis>> bySuspect = new LinkedHashMap<>();
    for (Hypothesis h : hypotheses) {
      if (!h.unlisted()) {
        bySuspect.computeIfAbsent(h.suspect(), k -> new ArrayList<>()).add(h);
      }
    }
    List<Fact.Margin> margins = new ArrayList<>();
    bySuspect.forEach(
        (suspect, cells) -> {
          List<Set<Integer>> outs = new ArrayList<>();
          Set<Integer> edges = new TreeSet<>();
          boolean all = true;
          for (Hypothesis cell : cells) {
            Set<Integer> out = new TreeSet<>();
            for (Reading reading : readings) {
              Fact.Standing s = standing(cell, reading);
              if (s == Fact.Standing.OUT) {
                out.add(reading.id());
              } else if (s == Fact.Standing.EDGE) {
                edges.add(reading.id());
              }
            }
            all &= !out.isEmpty();
            outs.add(out);
          }
          if (all) {
            margins.add(
                new Fact.Margin(
                    suspect, cover(outs), Fact.Standing.OUT, shownGood.contains(suspect)));
          } else if (shownGood.contains(suspect)) {
            margins.add(new Fact.Margin(suspect, directIds(readings), Fact.Standing.IN, true));
          } else if (!edges.isEmpty()) {
            margins.add(new Fact.Margin(suspect, edges, Fact.Standing.EDGE, false));
          }
        });
    return margins;
  }

  /** Suspects each of whose cells lies out of bounds by two different checks. */
  Set<SuspectId> outTwice(Collection<Hypothesis> hypotheses, List<Reading> readings) {
    Set<SuspectId> twice = new TreeSet<>();
    Set<SuspectId> not = new TreeSet<>();
    for (Hypothesis h : hypotheses) {
      if (h.unlisted() || not.contains(h.suspect())) {
        continue;
      }
      long checks =
          readings.stream()
              .filter(r -> standing(h, r) == Fact.Standing.OUT)
              .map(Reading::check)
              .distinct()
              .limit(2)
              .count();
      (checks == 2 ? twice : not).add(h.suspect());
    }
    twice.removeAll(not);
    return twice;
  }

  private static Set<Integer> directIds(List<Reading> readings) {
    Set<Integer> ids = new TreeSet<>();
    readings.stream().filter(r -> r.check().acrossPart().isPresent()).forEach(r -> ids.add(r.id()));
    return ids;
  }

  /** A small set of readings that has one in common with each set; the same in every order. */
  private static Set<Integer> cover(List<Set<Integer>> outs) {
    List<Set<Integer>> left = new ArrayList<>(outs);
    Set<Integer> chosen = new TreeSet<>();
    while (!left.isEmpty()) {
      Map<Integer, Integer> counts = new LinkedHashMap<>();
      for (Set<Integer> set : left) {
        for (int id : set) {
          counts.merge(id, 1, Integer::sum);
        }
      }
      int best =
          counts.entrySet().stream()
              .max(
                  Map.Entry.<Integer, Integer>comparingByValue()
                      .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
              .orElseThrow()
              .getKey();
      chosen.add(best);
      left.removeIf(set -> set.contains(best));
    }
    return chosen;
  }
}
