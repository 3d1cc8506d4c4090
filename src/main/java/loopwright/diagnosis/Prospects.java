package loopwright.diagnosis;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;

/**
 * What the suspects make likely before any reading, as shares of their chances: the parts that may
 * have failed, the fuses that may have blown, the loads that may have been woken, the fuses through
 * which a drain may flow.
 */
final class Prospects {

  /** Suspects that are looked at, the likeliest first. The rest hardly steers a choice. */
  private static final int MOST_SUSPECTS = 200;

  /** Current at rest that counts as a drain, in amperes. */
  private static final double DRAIN_AMPS = 0.02;

  private final Workbench bench;
  private final List<Hypothesis> hypotheses;
  private final Map<Hypothesis, Double> weights;
  private final double total;

  /**
   * Looks at suspects.
   *
   * @param weights chance of each, not necessarily adding up to 1
   */
  Prospects(Workbench bench, List<Hypothesis> all, Map<Hypothesis, Double> weights) {
    this.bench = bench;
    this.weights = weights;
    this.total = all.stream().mapToDouble(weights::get).sum();
    this.hypotheses =
        all.stream()
            .filter(h -> !h.parts().isEmpty())
            .sorted(Comparator.comparingDouble((Hypothesis h) -> -weights.get(h)))
            .toList();
  }

  /** Chance by part that it has failed. */
  Map<String, Double> parts() {
    Map<String, Double> shares = new LinkedHashMap<>();
    hypotheses.forEach(h -> shares.merge(h.part(), weights.get(h) / total, Double::sum));
    return shares;
  }

  /** Chance by fuse that it has blown for another part's failure. */
  Map<String, Double> blown() {
    Map<String, Double> shares = new LinkedHashMap<>();
    for (Hypothesis h : hypotheses) {
      h.history().blown().stream()
          .mapToObj(e -> bench.network().elements().get(e).part())
          .distinct()
          .filter(fuse -> !fuse.equals(h.part()))
          .forEach(fuse -> shares.merge(fuse, weights.get(h) / total, Double::sum));
    }
    return sorted(shares);
  }

  /** Settings besides the one complained of in which a fuse may have blown, the likeliest first. */
  List<Setting> spentIn(String fuse) {
    Map<Setting, Double> shares = new LinkedHashMap<>();
    for (Hypothesis h : hypotheses) {
      h.spentIn()
          .filter(setting -> bench.blown(h.history(), fuse))
          .ifPresent(setting -> shares.merge(setting, weights.get(h) / total, Double::sum));
    }
    return sorted(shares).keySet().stream().limit(MOST_ELSEWHERE).toList();
  }

  /** Other settings that are tried for a fuse: each is a lamp in its place more. */
  private static final int MOST_ELSEWHERE = 2;

  /** Chance by load that it is woken, while the circuit complained of is on. */
  Map<LoadRef, Double> woken(Complaint complaint) {
    Map<LoadRef, Double> shares = new LinkedHashMap<>();
    for (Hypothesis h : likeliest()) {
      for (Circuit circuit : bench.vehicle().circuits()) {
        for (LoadRef load : circuit.loads()) {
          if (!load.equals(complaint.load()) && bench.wakes(h, complaint.on(), load)) {
            shares.merge(load, weights.get(h) / total, Double::sum);
          }
        }
      }
    }
    return sorted(shares);
  }

  /** Chance by fuse that a drain at rest flows through it. */
  Map<String, Double> drained() {
    Map<String, Double> shares = new LinkedHashMap<>();
    OperatingPoint sound = bench.point(bench.healthy(), Setting.REST);
    for (Hypothesis h : likeliest()) {
      OperatingPoint point = bench.point(h, Setting.REST);
      for (Part part : bench.vehicle().parts()) {
        if (part.kind() == PartKind.FUSE) {
          for (int e : bench.network().elementsOf(part.id())) {
            if (bench.network().elements().get(e) instanceof Element.Link
                && Math.abs(point.amps(e)) > Math.abs(sound.amps(e)) + DRAIN_AMPS) {
              shares.merge(part.id(), weights.get(h) / total, Double::sum);
            }
          }
        }
      }
    }
    return sorted(shares);
  }

  private List<Hypothesis> likeliest() {
    return hypotheses.subList(0, Math.min(MOST_SUSPECTS, hypotheses.size()));
  }

  private static <K> Map<K, Double> sorted(Map<K, Double> shares) {
    Map<K, Double> result = new LinkedHashMap<>();
    shares.entrySet().stream()
        .sorted(
            Map.Entry.<K, Double>comparingByValue()
                .reversed()
                .thenComparing(e -> e.getKey().toString()))
        .forEach(e -> result.put(e.getKey(), e.getValue()));
    return result;
  }
}
