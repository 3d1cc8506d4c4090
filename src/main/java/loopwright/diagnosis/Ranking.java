package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Ranks the checks that the rules admit by what they are expected to tell per minute.
 *
 * <p>All of them are looked at quickly first. What the readings so far have settled is left out of
 * that, so a quick look promises too much, hardly ever too little: the best are looked at again
 * with it until the best of all has been, and until it is known whether any is worth asking.
 */
final class Ranking {

  /** Least information, in bits, for which a check is worth its minutes. */
  static final double WORTH_ASKING = 0.02;

  /** Belief below which a hypothesis no longer counts in planning. */
  private static final double NEGLIGIBLE = 1e-5;

  /** Share of the belief that planning looks at: the rest is too unlikely to steer by. */
  private static final double PLANNED_MASS = 0.998;

  /** Hypotheses that the quick look takes in at least. */
  private static final int QUICK_HYPOTHESES = 40;

  /** Most checks that are looked at again after one reading. */
  private static final int MOST_LOOKED_AT_AGAIN = 40;

  private static final double PROOF_MINUTES = 0.4;

  /** Time to read what is asked and to think, besides the work itself. Our own estimate. */
  private static final double ASKING_MINUTES = 0.3;

  private final Planner planner;
  private final Likelihood likelihood;
  private final CheckSource source;
  private final CaseFacts told;
  private final Vehicle vehicle;

  Ranking(
      Planner planner, Likelihood likelihood, CheckSource source, CaseFacts told, Vehicle vehicle) {
    this.planner = planner;
    this.likelihood = likelihood;
    this.source = source;
    this.told = told;
    this.vehicle = vehicle;
  }

  /** One admitted check: asked for directly, or after its proof of 0.00 V. */
  private record Admitted(Check check, boolean afterProof, double minutes, double preference) {

    Findings.Proposal proposal(List<Findings.Outcome> outcomes) {
      double bits = Planner.bits(outcomes);
      double worth = bits / (minutes + ASKING_MINUTES) * preference;
      if (afterProof) {
        Check proof =
            Check.measure(
                CheckKind.VOLTS,
                check.red().orElseThrow(),
                check.black().orElseThrow(),
                check.setting());
        return new Findings.Proposal(proof, bits, minutes, worth, List.of(), Optional.of(check));
      }
      return new Findings.Proposal(check, bits, minutes, worth, outcomes, Optional.empty());
    }
  }

  private static final Comparator<Findings.Proposal> BEST_FIRST =
      Comparator.comparingDouble(Findings.Proposal::worth)
          .reversed()
          .thenComparing(p -> p.check().id());

  /**
   * Admitted checks, best first.
   *
   * @param belief chance of each hypothesis
   * @param evidence how well each explains the readings
   * @param byId all candidates
   */
  List<Findings.Proposal> rank(
      Map<Hypothesis, Double> belief,
      Map<Hypothesis, Likelihood.Result> evidence,
      List<Conclusion> conclusions,
      Map<String, Check> byId,
      Diagnosis.Circumstances circumstances,
      List<Reading> readings) {
    List<Planner.Weighted> weighted = heaviest(belief, QUICK_HYPOTHESES);
    Planner.Forecast quick = planner.quick(batteryShare(readings));
    Map<Findings.Proposal, Admitted> admitted = new IdentityHashMap<>();
    PriorityQueue<Findings.Proposal> queue = new PriorityQueue<>(BEST_FIRST);
    List<Admitted> all = admitted(conclusions, byId, circumstances, readings);
    List<Findings.Proposal> promises =
        all.parallelStream()
            .map(a -> a.proposal(planner.outcomes(weighted, a.check(), quick)))
            .toList();
    for (int i = 0; i < all.size(); i++) {
      admitted.put(promises.get(i), all.get(i));
      queue.add(promises.get(i));
    }
    boolean numbers = numbers(readings);
    List<Findings.Proposal> settled = new ArrayList<>();
    if (numbers) {
      List<Planner.Weighted> few = heaviest(belief, 0);
      Planner.Forecast close = close(evidence, readings);
      boolean asks = false;
      double best = Double.NEGATIVE_INFINITY;
      for (int again = 0; again < MOST_LOOKED_AT_AGAIN && !queue.isEmpty(); again++) {
        Findings.Proposal next = queue.peek();
        if (asks && next.worth() <= best || next.bits() < WORTH_ASKING) {
          break;
        }
        queue.remove();
        Admitted a = admitted.get(next);
        Findings.Proposal closer =
            a.check().kind().metered() ? a.proposal(planner.outcomes(few, a.check(), close)) : next;
        settled.add(closer);
        if (closer.bits() >= WORTH_ASKING) {
          asks = true;
          best = Math.max(best, closer.worth());
        }
      }
    }
    List<Findings.Proposal> ranked = new ArrayList<>(settled);
    ranked.addAll(queue);
    ranked.sort(BEST_FIRST);
    return new ArrayList<>(SwapChoice.worthwhile(ranked));
  }

  private static boolean numbers(List<Reading> readings) {
    return readings.stream().anyMatch(r -> r.value() instanceof Reading.Value.Number);
  }

  /**
   * One check, admitted or not, in the light of the readings.
   *
   * @param belief chance of each hypothesis
   * @param evidence how well each explains the readings
   */
  Findings.Proposal appraise(
      Check check,
      Map<Hypothesis, Double> belief,
      Map<Hypothesis, Likelihood.Result> evidence,
      Diagnosis.Circumstances circumstances,
      List<Reading> readings) {
    boolean close = numbers(readings);
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            heaviest(belief, close ? 0 : QUICK_HYPOTHESES),
            check,
            close ? close(evidence, readings) : planner.quick(batteryShare(readings)));
    double minutes = source.minutes(check, circumstances.last());
    return new Admitted(check, false, minutes, 1).proposal(outcomes);
  }

  /**
   * How far the results of a check would differ from health's for each part that may still have
   * failed: from 0 for the same to 1 for none in common (total variation distance), over the
   * results that checks are ranked by. What readings have settled of the vehicle's values is left
   * out, since that is no one thing for health and for a failure.
   *
   * @param belief chance of each hypothesis
   */
  Map<String, Double> shows(
      Check check, Map<Hypothesis, Double> belief, Hypothesis health, List<Reading> readings) {
    List<Planner.Weighted> weighted = new ArrayList<>(heaviest(belief, QUICK_HYPOTHESES));
    weighted.removeIf(w -> w.part().equals(SuspectId.NONE));
    weighted.add(new Planner.Weighted(health, 1));
    List<Findings.Outcome> outcomes =
        planner.outcomes(weighted, check, planner.quick(batteryShare(readings)));
    Map<String, Double> all = new LinkedHashMap<>();
    outcomes.forEach(o -> o.parts().forEach((p, s) -> all.merge(p, s * o.chance(), Double::sum)));
    Map<String, Double> shows = new LinkedHashMap<>();
    all.forEach((part, mass) -> shows.put(part, 1.0));
    for (Findings.Outcome o : outcomes) {
      double healthy = share(o, SuspectId.NONE, all);
      shows.replaceAll((part, apart) -> apart - Math.min(healthy, share(o, part, all)));
    }
    shows.remove(SuspectId.NONE);
    return shows;
  }

  /** How likely a result is where this part has failed. */
  private static double share(Findings.Outcome o, String part, Map<String, Double> all) {
    return o.chance() * o.parts().getOrDefault(part, 0.0) / all.get(part);
  }

  /** What to expect in the light of the readings, put together from finer parts where there are. */
  private Planner.Forecast close(
      Map<Hypothesis, Likelihood.Result> evidence, List<Reading> readings) {
    Map<Hypothesis, Likelihood.Expectation> expectations = new IdentityHashMap<>();
    return (h, check) -> {
      double sum = 0;
      double mean = 0;
      double square = 0;
      for (Likelihood.Part part : evidence.get(h).parts()) {
        if (part.weight() < NEGLIGIBLE_PART) {
          continue;
        }
        Prediction.Numeric n =
            expectations
                .computeIfAbsent(
                    part.hypothesis(), k -> likelihood.new Expectation(k, readings, part.odd()))
                .of(check);
        sum += part.weight();
        mean += part.weight() * n.mean();
        square += part.weight() * (n.mean() * n.mean() + n.sd() * n.sd());
      }
      mean /= sum;
      square /= sum;
      return new Prediction.Numeric(mean, Math.sqrt(Math.max(1e-12, square - mean * mean)), 0);
    };
  }

  /** Weight below which a finer part is left out of what to expect. */
  private static final double NEGLIGIBLE_PART = 1e-3;

  /** The strongest hypotheses that hold nearly all of the belief, and at least so many. */
  private static List<Planner.Weighted> heaviest(Map<Hypothesis, Double> belief, int least) {
    List<Planner.Weighted> weighted = new ArrayList<>();
    Map<Hypothesis, String> leads = Belief.leads(belief);
    belief.forEach(
        (h, b) -> {
          if (b > NEGLIGIBLE && !h.unlisted()) {
            weighted.add(new Planner.Weighted(h, b, leads.get(h)));
          }
        });
    weighted.sort(
        Comparator.comparingDouble(Planner.Weighted::belief)
            .reversed()
            .thenComparing(Planner.Weighted::hypothesis, Hypothesis.ORDER));
    double total = weighted.stream().mapToDouble(Planner.Weighted::belief).sum();
    double mass = 0;
    int count = 0;
    while (count < weighted.size() && (mass < PLANNED_MASS * total || count < least)) {
      mass += weighted.get(count++).belief();
    }
    return weighted.subList(0, count);
  }

  private List<Admitted> admitted(
      List<Conclusion> conclusions,
      Map<String, Check> byId,
      Diagnosis.Circumstances circumstances,
      List<Reading> readings) {
    Set<String> allowed = new LinkedHashSet<>();
    Set<String> forbidden = new LinkedHashSet<>();
    Map<String, Double> preference = new HashMap<>();
    for (Conclusion c : conclusions) {
      if (c instanceof Conclusion.AllowedBy a) {
        allowed.add(a.check());
      } else if (c instanceof Conclusion.ForbiddenBy f) {
        forbidden.add(f.check());
      } else if (c instanceof Conclusion.PreferredBy p) {
        preference.merge(p.check(), p.weight(), (x, y) -> x * y);
      }
    }
    Set<String> taken = new LinkedHashSet<>();
    readings.forEach(r -> taken.add(r.check().id()));
    List<Admitted> all = new ArrayList<>();
    byId.forEach(
        (id, check) -> {
          if (taken.contains(id) || circumstances.refused().contains(id)) {
            return;
          }
          boolean direct = allowed.contains(id) && !forbidden.contains(id);
          String supposed = id + CaseFacts.SUPPOSED;
          boolean afterProof =
              !direct && allowed.contains(supposed) && !forbidden.contains(supposed);
          if (direct || afterProof) {
            double minutes = source.minutes(check, circumstances.last());
            all.add(
                new Admitted(
                    check,
                    afterProof,
                    minutes + (afterProof ? PROOF_MINUTES : 0),
                    preference.getOrDefault(direct ? id : supposed, 1.0)));
          }
        });
    return all;
  }

  /** How much of the battery's spread is still open once its volts have been read. */
  private double batteryShare(List<Reading> readings) {
    TerminalRef feed = vehicle.feedPost();
    TerminalRef post = vehicle.groundedPost();
    boolean read =
        readings.stream()
            .anyMatch(
                r ->
                    r.check().red().filter(feed::equals).isPresent()
                        && r.check().black().filter(post::equals).isPresent()
                        && told.powered(r.check().setting()));
    return read ? 0.15 : 1;
  }
}
