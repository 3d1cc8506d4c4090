package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import loopwright.model.Spread;

/**
 * What the belief amounts to part by part: how likely each has failed, alone or with another, which
 * pairs are believed, and which parts form the answer where no check tells them apart.
 */
final class PartShares {

  /** Belief in pairs from which a suspect that can't explain the readings alone is listed again. */
  private static final double WITH_ANOTHER = 0.01;

  /** What may be left to the unlisted rest when no check is left to ask. */
  private static final double UNLISTED_MARGIN = 0.04;

  /** Belief at which a group of inseparable parts is complete. */
  private static final double WHOLE_GROUP = 0.9995;

  /** Belief below which a part no longer joins a group that is sure without it. */
  private static final double LONE_CHANCE = 0.0005;

  private final Map<Hypothesis, Double> belief;
  private final List<Hypothesis> ordered;
  private final Predicate<Hypothesis> held;
  private final Set<SuspectId> cleared;
  private final List<Findings.PartBelief> parts;
  private final List<Findings.PairBelief> together;

  /**
   * Sums up.
   *
   * @param cleared suspects that can't explain the readings alone
   * @param held whether a single hypothesis can explain each reading
   */
  PartShares(Belief belief, Set<SuspectId> cleared, Predicate<Hypothesis> held) {
    this.belief = belief.of();
    this.held = held;
    this.ordered = belief.of().keySet().stream().sorted(Hypothesis.ORDER).toList();
    this.cleared = new TreeSet<>(cleared);
    this.cleared.removeAll(withAnother());
    this.parts = partBeliefs();
    this.together = pairBeliefs();
  }

  /** Suspected parts, strongest first. */
  List<Findings.PartBelief> parts() {
    return parts;
  }

  /** Pairs of parts that have failed at once, strongest first. */
  List<Findings.PairBelief> together() {
    return together;
  }

  /** Cleared suspects, without those that two failures at once bring back into view. */
  Set<SuspectId> cleared() {
    return cleared;
  }

  /** Whether it is sure which two parts have failed. */
  boolean bothSure() {
    return !together.isEmpty() && together.get(0).belief() >= Diagnosis.SURE;
  }

  /** Chance that one of these parts has failed; that both have if they are sure to have. */
  double holds(List<String> group) {
    return bothSure() && together.get(0).parts().equals(group)
        ? together.get(0).belief()
        : ordered.stream()
            .filter(h -> h.parts().stream().anyMatch(group::contains))
            .mapToDouble(belief::get)
            .sum();
  }

  /** Parts that together hold the belief: to be asked where no check is worth its minutes. */
  List<String> inseparable() {
    Map<Hypothesis, String> leads = Belief.leads(belief);
    Map<String, Double> shares = new TreeMap<>();
    ordered.stream()
        .filter(h -> !h.parts().isEmpty())
        .forEach(h -> shares.merge(leads.get(h), belief.get(h), Double::sum));
    List<String> strongest = new ArrayList<>(shares.keySet());
    strongest.sort(Comparator.comparingDouble((String part) -> -shares.get(part)));
    List<String> group = new ArrayList<>();
    double sum = 0;
    for (String part : strongest) {
      if (sum >= WHOLE_GROUP || (sum >= Diagnosis.SURE && shares.get(part) < LONE_CHANCE)) {
        break;
      }
      group.add(part);
      sum += shares.get(part);
    }
    return sum >= Diagnosis.SURE - UNLISTED_MARGIN ? group : List.of();
  }

  private Set<SuspectId> withAnother() {
    Map<SuspectId, Double> sums = new TreeMap<>();
    ordered.stream()
        .filter(Hypothesis::pair)
        .forEach(
            h -> h.singles().forEach(one -> sums.merge(one.suspect(), belief.get(h), Double::sum)));
    sums.values().removeIf(sum -> sum < WITH_ANOTHER);
    return sums.keySet();
  }

  private List<Findings.PairBelief> pairBeliefs() {
    Map<List<String>, Double> sums = new LinkedHashMap<>();
    ordered.stream()
        .filter(Hypothesis::pair)
        .forEach(h -> sums.merge(h.parts().stream().sorted().toList(), belief.get(h), Double::sum));
    return sums.entrySet().stream()
        .filter(e -> e.getValue() >= WITH_ANOTHER)
        .map(e -> new Findings.PairBelief(e.getKey(), e.getValue()))
        .sorted(Comparator.comparingDouble(Findings.PairBelief::belief).reversed())
        .toList();
  }

  private List<Findings.PartBelief> partBeliefs() {
    Map<String, Map<SuspectId, List<Hypothesis>>> byPart = new TreeMap<>();
    for (Hypothesis h : ordered) {
      for (Hypothesis one : h.singles()) {
        if (!one.parts().isEmpty() && !cleared.contains(one.suspect())) {
          byPart
              .computeIfAbsent(one.part(), k -> new TreeMap<>())
              .computeIfAbsent(one.suspect(), k -> new ArrayList<>())
              .add(h);
        }
      }
    }
    List<Findings.PartBelief> all = new ArrayList<>();
    byPart.forEach(
        (part, suspects) -> {
          List<Findings.ModeBelief> modes = new ArrayList<>();
          suspects.forEach((id, ways) -> modes.add(mode(part, id, ways)));
          modes.sort(
              Comparator.comparingDouble(Findings.ModeBelief::belief)
                  .reversed()
                  .thenComparing(Findings.ModeBelief::suspect));
          double total = modes.stream().mapToDouble(Findings.ModeBelief::belief).sum();
          all.add(new Findings.PartBelief(part, total, modes));
        });
    all.sort(
        Comparator.comparingDouble(Findings.PartBelief::belief)
            .reversed()
            .thenComparing(Findings.PartBelief::part));
    return all;
  }

  /** One failure mode of a part, with what is left of its range. */
  private Findings.ModeBelief mode(String part, SuspectId suspect, List<Hypothesis> ways) {
    double sum = 0;
    double low = Double.MAX_VALUE;
    double high = 0;
    double most = 0;
    double typical = 0;
    for (Hypothesis h : ways) {
      double b = belief.get(h);
      sum += b;
      Optional<Spread> cell = h.of(part).orElseThrow().cell();
      if (cell.isPresent() && (h.pair() ? b >= WITH_ANOTHER : held.test(h))) {
        low = Math.min(low, cell.get().low());
        high = Math.max(high, cell.get().high());
        if (b >= most) {
          most = b;
          typical = cell.get().typical();
        }
      }
    }
    return new Findings.ModeBelief(
        suspect,
        ways.get(0).of(part).orElseThrow().failures().get(0).mode().title(),
        sum,
        high > 0 ? Optional.of(new Spread(low, typical, high)) : Optional.empty());
  }
}
