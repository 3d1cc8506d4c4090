package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.meter.MeterSpec;

/**
 * Ranks checks by what they are expected to tell about which part has failed, per minute of work.
 */
final class Planner {

  /** Most results that a number is sorted into. */
  private static final int MOST_BINS = 24;

  /** Standard deviations between two results that the meter tells apart. */
  private static final double APART = 3;

  /** Leads and the last digit in ohms: below that a log scale says nothing. */
  static final double FLOOR = 0.3;

  private final Predictor predictor;
  private final MeterSpec meter;

  Planner(Predictor predictor, MeterSpec meter) {
    this.predictor = predictor;
    this.meter = meter;
  }

  /**
   * A hypothesis with its present chance.
   *
   * @param hypothesis the hypothesis
   * @param belief its chance now
   * @param part the part it speaks for
   */
  record Weighted(Hypothesis hypothesis, double belief, String part) {
    /** Of a single failure: it speaks for its own part. */
    Weighted(Hypothesis hypothesis, double belief) {
      this(hypothesis, belief, hypothesis.part());
    }
  }

  /** What a meter check is expected to show under a hypothesis, the meter's own error included. */
  interface Forecast {
    /** Mean and standard deviation in volts or ohms. */
    Prediction.Numeric of(Hypothesis h, Check check);
  }

  /**
   * What to expect before any reading is looked at: cheap, and too wide for what readings have
   * already settled.
   *
   * @param batteryShare how much of the battery's spread is still open
   */
  Forecast quick(double batteryShare) {
    return (h, check) -> {
      Prediction.Numeric p = (Prediction.Numeric) predictor.predict(h, check);
      double error = meter.error(Workbench.function(check), p.mean()) / Math.sqrt(3);
      return new Prediction.Numeric(p.mean(), Math.hypot(p.sd(batteryShare), error), 0);
    };
  }

  /** Sorts the results of a check under the hypotheses. */
  List<Findings.Outcome> outcomes(List<Weighted> hypotheses, Check check, Forecast forecast) {
    if (!check.kind().metered()) {
      return sights(hypotheses, check);
    }
    int n = hypotheses.size();
    double[] mean = new double[n];
    double[] sd = new double[n];
    for (int i = 0; i < n; i++) {
      if (hypotheses.get(i).hypothesis().unlisted()) {
        mean[i] = Double.NaN;
        continue;
      }
      Prediction.Numeric p = forecast.of(hypotheses.get(i).hypothesis(), check);
      double m = p.mean();
      if (check.kind() == CheckKind.OHMS) {
        // Ohms run over eight decades: sort them on a log scale, OL at its end.
        double full = meter.fullScale(Workbench.function(check));
        double v = Math.min(Math.max(m, 0), 2 * full);
        mean[i] = Math.log(v + FLOOR);
        sd[i] = Math.min(1.5, p.sd() / (v + FLOOR));
        if (v > full) {
          sd[i] = 0.05;
        }
      } else {
        mean[i] = m;
        sd[i] = p.sd();
      }
      sd[i] = Math.max(sd[i], 1e-4);
    }
    double[] edges = edges(mean, sd, hypotheses);
    int bins = edges.length + 1;
    double[] chance = new double[bins];
    List<Map<String, Double>> parts = new ArrayList<>();
    for (int b = 0; b < bins; b++) {
      parts.add(new LinkedHashMap<>());
    }
    for (int i = 0; i < n; i++) {
      Weighted w = hypotheses.get(i);
      double before = 1;
      for (int b = 0; b < bins; b++) {
        double after;
        if (Double.isNaN(mean[i])) {
          after = 1 - (b + 1.0) / bins;
        } else {
          after = b == bins - 1 ? 0 : Normal.above((edges[b] - mean[i]) / sd[i]);
        }
        double p = w.belief() * (before - after);
        before = after;
        if (p > 1e-12) {
          chance[b] += p;
          parts.get(b).merge(w.part(), p, Double::sum);
        }
      }
    }
    List<Findings.Outcome> result = new ArrayList<>();
    for (int b = 0; b < bins; b++) {
      if (chance[b] > 1e-9) {
        double low = b == 0 ? Double.NEGATIVE_INFINITY : edges[b - 1];
        double high = b == bins - 1 ? Double.POSITIVE_INFINITY : edges[b];
        if (check.kind() == CheckKind.OHMS) {
          low = b == 0 ? 0 : Math.max(0, Math.exp(low) - FLOOR);
          high = b == bins - 1 ? high : Math.exp(high) - FLOOR;
        }
        result.add(
            new Findings.Outcome(
                low,
                high,
                java.util.Optional.empty(),
                chance[b],
                normalised(parts.get(b), chance[b])));
      }
    }
    return result;
  }

  /** Shares of a total, greatest first. */
  static Map<String, Double> normalised(Map<String, Double> parts, double total) {
    Map<String, Double> result = new LinkedHashMap<>();
    parts.entrySet().stream()
        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
        .forEach(e -> result.put(e.getKey(), e.getValue() / total));
    return result;
  }

  /** Values between which the meter tells results apart, and a few more inside wide stretches. */
  private static double[] edges(double[] mean, double[] sd, List<Weighted> hypotheses) {
    Integer[] order = new Integer[mean.length];
    int count = 0;
    for (int i = 0; i < mean.length; i++) {
      if (!Double.isNaN(mean[i]) && hypotheses.get(i).belief() > 1e-7) {
        order[count++] = i;
      }
    }
    Integer[] sorted = Arrays.copyOf(order, count);
    Arrays.sort(sorted, Comparator.comparingDouble(i -> mean[i]));
    List<Double> edges = new ArrayList<>();
    double reach = Double.NEGATIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < count; k++) {
      int i = sorted[k];
      double low = mean[i] - APART * sd[i];
      if (k > 0 && low > reach) {
        edges.add((low + reach) / 2);
        last = mean[i];
      } else if (k > 0 && mean[i] - last > 2 * APART * sd[i]) {
        int before = sorted[k - 1];
        edges.add((mean[i] + mean[before]) / 2);
        last = mean[i];
      } else if (k == 0) {
        last = mean[i];
      }
      reach = Math.max(reach, mean[i] + APART * sd[i]);
    }
    if (edges.size() > MOST_BINS) {
      List<Double> fewer = new ArrayList<>();
      for (int k = 0; k < MOST_BINS; k++) {
        fewer.add(edges.get(k * edges.size() / MOST_BINS));
      }
      edges = fewer;
    }
    return edges.stream().distinct().sorted().mapToDouble(Double::doubleValue).toArray();
  }

  private List<Findings.Outcome> sights(List<Weighted> hypotheses, Check check) {
    Map<Seen, Double> chance = new EnumMap<>(Seen.class);
    Map<Seen, Map<String, Double>> parts = new EnumMap<>(Seen.class);
    for (Weighted w : hypotheses) {
      if (w.hypothesis().unlisted()) {
        continue;
      }
      Prediction.Sight sight = (Prediction.Sight) predictor.predict(w.hypothesis(), check);
      sight
          .chances()
          .forEach(
              (seen, p) -> {
                chance.merge(seen, p * w.belief(), Double::sum);
                parts
                    .computeIfAbsent(seen, k -> new LinkedHashMap<>())
                    .merge(w.part(), p * w.belief(), Double::sum);
              });
    }
    List<Findings.Outcome> result = new ArrayList<>();
    chance.forEach(
        (seen, p) -> {
          if (p > 1e-9) {
            result.add(
                new Findings.Outcome(
                    0, 0, java.util.Optional.of(seen), p, normalised(parts.get(seen), p)));
          }
        });
    return result;
  }

  /** Expected information of results about the failed part, in bits. */
  static double bits(List<Findings.Outcome> outcomes) {
    Map<String, Double> marginal = new LinkedHashMap<>();
    double after = 0;
    double total = 0;
    for (Findings.Outcome o : outcomes) {
      total += o.chance();
      double h = 0;
      for (Map.Entry<String, Double> e : o.parts().entrySet()) {
        double p = e.getValue();
        h -= p * log2(p);
        marginal.merge(e.getKey(), p * o.chance(), Double::sum);
      }
      after += o.chance() * h;
    }
    double before = 0;
    for (double p : marginal.values()) {
      before -= p / total * log2(p / total);
    }
    return total > 0 ? Math.max(0, before - after / total) : 0;
  }

  private static double log2(double p) {
    return p <= 0 ? 0 : Math.log(p) / Math.log(2);
  }
}
