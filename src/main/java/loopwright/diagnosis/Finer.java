package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Looks at the strongest cells of resistance ranges more closely. What a circuit shows bends within
 * a cell, most of all for a short that drags the battery down; one mean with one spread then
 * explains a reading worse than the cell does. Cut into finer ones, and their likelihoods added up
 * by their shares, the cell is judged as it is.
 */
final class Finer {

  /** Most cells that are looked at closely at a time. */
  private static final int MOST = 12;

  /** Belief below which a cell is not worth it. */
  private static final double WORTH = 1e-6;

  private final Workbench bench;
  private final Likelihood likelihood;
  private final ToDoubleFunction<Hypothesis> causes;
  private final Kept<Hypothesis, List<Share>> cut = Kept.byIdentity();

  /**
   * One part of a cell.
   *
   * @param hypothesis the part
   * @param share its share of the cell's chance, once the complaint is known
   */
  private record Share(Hypothesis hypothesis, double share) {}

  /**
   * For one complaint.
   *
   * @param causes chance that a hypothesis causes the complaint
   */
  Finer(Workbench bench, Likelihood likelihood, ToDoubleFunction<Hypothesis> causes) {
    this.bench = bench;
    this.likelihood = likelihood;
    this.causes = causes;
  }

  /** The cells worth a closer look, strongest first. */
  static List<Hypothesis> worthIt(Map<Hypothesis, Double> belief) {
    return strongest(belief, MOST);
  }

  /** Cells that may be worth it after the next reading. */
  static List<Hypothesis> mayBeWorthIt(Map<Hypothesis, Double> belief) {
    return strongest(belief, 4 * MOST);
  }

  private static List<Hypothesis> strongest(Map<Hypothesis, Double> belief, int most) {
    return belief.entrySet().stream()
        .filter(e -> e.getKey().cell().isPresent() && e.getValue() > WORTH)
        .sorted(
            Comparator.comparingDouble((Map.Entry<Hypothesis, Double> e) -> -e.getValue())
                .thenComparing(e -> e.getKey().suspect())
                .thenComparingDouble(e -> e.getKey().cell().orElseThrow().low()))
        .limit(most)
        .map(Map.Entry::getKey)
        .toList();
  }

  private List<Share> shares(Hypothesis h) {
    return cut.get(
        h,
        k -> {
          List<Share> shares = new ArrayList<>();
          double sum = 0;
          for (Hypothesis part : bench.finer(h)) {
            double chance = causes.applyAsDouble(part);
            if (chance > 0) {
              shares.add(new Share(part, chance));
              sum += chance;
            }
          }
          double all = sum;
          shares.replaceAll(s -> new Share(s.hypothesis(), s.share() / all));
          return List.copyOf(shares);
        });
  }

  /** Works out beforehand what the parts of a cell show in a check. */
  void prepare(Hypothesis h, Check check) {
    shares(h).forEach(s -> likelihood.prepare(s.hypothesis(), check));
  }

  /** Likelihood of the readings under a cell: its parts' by their shares. */
  Likelihood.Result of(Hypothesis h, List<Reading> readings) {
    List<Share> shares = shares(h);
    if (shares.isEmpty()) {
      return likelihood.of(h, readings);
    }
    double[] logs = new double[shares.size()];
    List<Likelihood.Result> results = new ArrayList<>();
    double top = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < logs.length; i++) {
      results.add(likelihood.of(shares.get(i).hypothesis(), readings));
      logs[i] = Math.log(shares.get(i).share()) + results.get(i).log();
      top = Math.max(top, logs[i]);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - top);
    }
    double[] odd = new double[readings.size()];
    List<Likelihood.Part> parts = new ArrayList<>();
    for (int i = 0; i < logs.length; i++) {
      double weight = Math.exp(logs[i] - top) / sum;
      double[] own = results.get(i).odd();
      double[] settles = results.get(i).parts().get(0).odd();
      parts.add(new Likelihood.Part(shares.get(i).hypothesis(), weight, settles));
      for (int k = 0; k < odd.length; k++) {
        odd[k] += weight * own[k];
      }
    }
    return new Likelihood.Result(top + Math.log(sum), odd, parts);
  }
}
