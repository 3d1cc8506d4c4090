package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Belief over hypotheses, and the chance of each reading to be a slip.
 *
 * @param of chance by hypothesis; empty if every listed one is cleared
 * @param odd chance of a slip by reading number
 */
record Belief(Map<Hypothesis, Double> of, Map<Integer, Double> odd) {

  /**
   * Weighs hypotheses.
   *
   * @param held those that are not cleared
   * @param weights chance of each before any reading, not necessarily adding up to 1; one without
   *     any is left out
   * @param evidence how well each explains the readings
   */
  static Belief weigh(
      List<Hypothesis> held,
      ToDoubleFunction<Hypothesis> weights,
      Map<Hypothesis, Likelihood.Result> evidence,
      List<Reading> readings) {
    List<Hypothesis> weighed = new ArrayList<>();
    List<Double> logs = new ArrayList<>();
    double top = Double.NEGATIVE_INFINITY;
    boolean listed = false;
    for (Hypothesis h : held) {
      double weight = weights.applyAsDouble(h);
      if (weight <= 0) {
        continue;
      }
      double log = Math.log(weight) + evidence.get(h).log();
      weighed.add(h);
      logs.add(log);
      top = Math.max(top, log);
      listed |= !h.unlisted();
    }
    Map<Hypothesis, Double> belief = new IdentityHashMap<>();
    Map<Integer, Double> odd = new LinkedHashMap<>();
    if (!listed) {
      return new Belief(belief, odd);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - top);
    }
    double[] slips = new double[readings.size()];
    for (int i = 0; i < weighed.size(); i++) {
      double b = Math.exp(logs.get(i) - top) / sum;
      belief.put(weighed.get(i), b);
      double[] each = evidence.get(weighed.get(i)).odd();
      for (int k = 0; k < slips.length; k++) {
        slips[k] += b * each[k];
      }
    }
    for (int k = 0; k < slips.length; k++) {
      odd.put(readings.get(k).id(), slips[k]);
    }
    return new Belief(belief, odd);
  }

  /** Chance of a hypothesis; 0 for one that is not held. */
  double of(Hypothesis h) {
    return of.getOrDefault(h, 0.0);
  }

  /** Chance that it is something no table lists. */
  double unlisted() {
    return of.entrySet().stream()
        .filter(e -> e.getKey().unlisted())
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  /** Chance that nothing has failed. */
  double healthy() {
    return of.entrySet().stream()
        .filter(e -> e.getKey().suspect().equals(SuspectId.HEALTHY))
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  /** Chance by part that it has failed, alone or with another. */
  private static Map<String, Double> byPart(Map<Hypothesis, Double> belief) {
    Map<String, Double> sums = new LinkedHashMap<>();
    belief.entrySet().stream()
        .sorted(Map.Entry.comparingByKey(Hypothesis.ORDER))
        .forEach(e -> e.getKey().parts().forEach(p -> sums.merge(p, e.getValue(), Double::sum)));
    return sums;
  }

  /**
   * The part that each hypothesis speaks for: of two that have failed the one that is suspected
   * more, all things considered. Whoever mends that one has mended one culprit.
   */
  static Map<Hypothesis, String> leads(Map<Hypothesis, Double> belief) {
    Map<String, Double> sums = byPart(belief);
    Map<Hypothesis, String> leads = new IdentityHashMap<>();
    for (Hypothesis h : belief.keySet()) {
      leads.put(
          h,
          h.parts().stream()
              .max(Comparator.comparingDouble((String p) -> sums.get(p)).thenComparing(p -> p))
              .orElse(SuspectId.NONE));
    }
    return leads;
  }
}
