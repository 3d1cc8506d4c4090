package loopwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Reading;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;

/**
 * The ways to compare with. Walking and halving read volts to the grounded post along the loop. A
 * point before the load tells "farther on" while it is inside the healthy band, a point behind it
 * while it is outside; so one search finds the span where the volts are lost, the load itself
 * included. Where that span is a relay they go on along its coil's loop. They end with a span
 * between two points, without telling the pieces in it apart; it is kept whether that span holds
 * the failed part at all.
 */
final class Plain {

  /**
   * What a way takes.
   *
   * @param found parts in the spans it ends with
   */
  record Cost(int checks, double minutes, List<String> found) {
    Cost plus(Cost other) {
      List<String> all = new ArrayList<>(found);
      all.addAll(other.found);
      return new Cost(checks + other.checks, minutes + other.minutes, all);
    }

    static final Cost NONE = new Cost(0, 0, List.of());
  }

  private final Vehicle vehicle;
  private final Network network;
  private final Diagnosis diagnosis;
  private final Function<Check, Reading.Value> taker;
  private Optional<Check> last = Optional.empty();

  Plain(
      Vehicle vehicle, Network network, Diagnosis diagnosis, Function<Check, Reading.Value> taker) {
    this.vehicle = vehicle;
    this.network = network;
    this.diagnosis = diagnosis;
    this.taker = taker;
  }

  /** From the battery along the loop, point by point. */
  Cost walking() {
    last = Optional.empty();
    return diagnosis.loop().map(l -> along(l, false)).orElse(Cost.NONE);
  }

  /** The middle of what is left, by number of points. */
  Cost halving() {
    last = Optional.empty();
    return diagnosis.loop().map(l -> along(l, true)).orElse(Cost.NONE);
  }

  private Cost along(Loop loop, boolean halve) {
    List<Place> places = places(loop);
    List<String> parts = loop.pieces().stream().map(Loop.Piece::part).toList();
    int load = parts.indexOf(loop.title());
    Cost cost = Cost.NONE;
    int low = -1;
    int high = places.size();
    while (high - low > 1) {
      int at = halve ? (low + high) / 2 : low + 1;
      Step step = read(places.get(at).point());
      cost = cost.plus(step.cost());
      boolean beforeLoad = places.get(at).number() <= load;
      if (step.good() == beforeLoad) {
        low = at;
      } else {
        high = at;
      }
    }
    int from = low < 0 ? 0 : places.get(low).number();
    int to = high < places.size() ? places.get(high).number() : parts.size();
    List<String> span = parts.subList(Math.min(from, to), to);
    cost = cost.plus(new Cost(0, 0, span));
    for (Loop branch : loop.branches()) {
      if (span.contains(branch.title())) {
        cost = cost.plus(along(branch, halve));
      }
    }
    return cost;
  }

  private record Step(boolean good, Cost cost) {}

  private Step read(TerminalRef point) {
    Check check =
        Check.measure(CheckKind.VOLTS, point, vehicle.groundedPost(), diagnosis.complaint().on());
    double minutes = diagnosis.minutes(check, last);
    last = Optional.of(check);
    boolean good = diagnosis.healthyGives(new Reading(1, check, taker.apply(check)));
    return new Step(good, new Cost(1, minutes, List.of()));
  }

  /** A point that can be reached, with the number of its node on the loop. */
  private record Place(TerminalRef point, int number) {}

  private List<Place> places(Loop loop) {
    List<Place> places = new ArrayList<>();
    for (int n = 0; n < loop.nodes().size(); n++) {
      List<TerminalRef> there =
          network.terminals(loop.nodes().get(n)).stream()
              .filter(t -> vehicle.access(t).reachable())
              .toList();
      if (!there.isEmpty() && !there.contains(vehicle.groundedPost())) {
        places.add(new Place(there.get(0), n));
      }
    }
    return places;
  }

  // ---- bounds -----------------------------------------------------------------------------------

  /** Entropy in bits of the failed part before any check, the complaint known. */
  static double entropy(Findings first) {
    double bits = 0;
    double sum = 0;
    for (Findings.PartBelief p : first.parts()) {
      sum += p.belief();
    }
    for (Findings.PartBelief p : first.parts()) {
      double share = p.belief() / sum;
      bits -= share <= 0 ? 0 : share * Math.log(share) / Math.log(2);
    }
    return bits;
  }

  /**
   * What somebody takes who knows the failure and only has to convince the program: the cheapest
   * single admitted check that isolates it; failing that, greedily the check that lifts the true
   * part most, again and again.
   *
   * @return empty if even so the failure is not isolated within so many checks
   */
  Optional<Cost> allKnowing(String truePart, int most) {
    List<Reading> readings = new ArrayList<>();
    last = Optional.empty();
    Cost cost = Cost.NONE;
    Findings now = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
    for (int n = 0; n < most; n++) {
      double best = -1;
      double cheapest = Double.MAX_VALUE;
      Optional<Reading> bestReading = Optional.empty();
      Optional<Reading> ending = Optional.empty();
      for (Findings.Proposal p : now.ranked()) {
        double minutes = diagnosis.minutes(p.check(), last);
        if (p.bits() < 0.01 || minutes >= cheapest) {
          continue;
        }
        Reading reading = new Reading(n + 1, p.check(), taker.apply(p.check()));
        List<Reading> with = new ArrayList<>(readings);
        with.add(reading);
        Findings after = diagnosis.findings(with, Diagnosis.Circumstances.NONE);
        if (after.status() == Findings.Status.ISOLATED && after.group().contains(truePart)) {
          cheapest = minutes;
          ending = Optional.of(reading);
        }
        double belief =
            after.parts().stream()
                .filter(x -> x.part().equals(truePart))
                .mapToDouble(Findings.PartBelief::belief)
                .findFirst()
                .orElse(0);
        double worth = belief / (1 + 0.02 * minutes);
        if (worth > best) {
          best = worth;
          bestReading = Optional.of(reading);
        }
      }
      Optional<Reading> chosen = ending.or(() -> Optional.empty());
      if (chosen.isEmpty()) {
        chosen = bestReading;
      }
      if (chosen.isEmpty()) {
        return Optional.empty();
      }
      Reading r = chosen.get();
      cost = cost.plus(new Cost(1, diagnosis.minutes(r.check(), last), List.of()));
      if (ending.isPresent()) {
        return Optional.of(cost);
      }
      last = Optional.of(r.check());
      readings.add(r);
      now = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
    }
    return Optional.empty();
  }
}
