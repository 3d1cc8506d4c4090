package loopwright.casework;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.SuspectId;

/** The results that a check may have, as a person tells them apart, with what each would leave. */
final class OutcomeViews {
  private final Words words;

  OutcomeViews(Words words) {
    this.words = words;
  }

  /**
   * One result.
   *
   * @param shown how it is shown
   * @param parts chance of each part after it, strongest first
   */
  record Result(CheckView.OutcomeView shown, Map<String, Double> parts) {}

  /** The results of a check as they are shown, most likely first. */
  List<CheckView.OutcomeView> views(Check check, List<Findings.Outcome> outcomes) {
    return results(check, outcomes).stream().map(Result::shown).toList();
  }

  /** The results of a check with all that each would leave, most likely first. */
  List<Result> results(Check check, List<Findings.Outcome> outcomes) {
    List<Result> list = new ArrayList<>();
    for (Findings.Outcome o : merged(outcomes)) {
      List<String> leaves =
          o.parts().entrySet().stream()
              .filter(e -> e.getValue() > 0.03 && !e.getKey().equals(SuspectId.NONE))
              .limit(6)
              .map(e -> words.part(e.getKey()))
              .toList();
      Optional<Band> band = Optional.empty();
      String text;
      if (o.seen().isPresent()) {
        text = words.seen(check, o.seen().get());
      } else {
        text = words.outcome(check, o.low(), o.high());
        band = Optional.of(new Band(o.low(), o.high(), Figures.unit(check)));
      }
      list.add(
          new Result(
              new CheckView.OutcomeView(text, band, o.seen(), o.chance(), leaves), o.parts()));
    }
    list.sort(Comparator.comparingDouble((Result r) -> r.shown().chance()).reversed());
    return list;
  }

  /** Neighbouring results that leave the same suspects are one result to a person. */
  private static List<Findings.Outcome> merged(List<Findings.Outcome> outcomes) {
    List<Findings.Outcome> result = new ArrayList<>();
    for (Findings.Outcome o : outcomes) {
      if (!result.isEmpty() && o.seen().isEmpty()) {
        Findings.Outcome before = result.get(result.size() - 1);
        if (before.high() == o.low() && alike(before, o)) {
          double chance = before.chance() + o.chance();
          Map<String, Double> parts = new LinkedHashMap<>();
          before
              .parts()
              .forEach((k, v) -> parts.merge(k, v * before.chance() / chance, Double::sum));
          o.parts().forEach((k, v) -> parts.merge(k, v * o.chance() / chance, Double::sum));
          result.set(
              result.size() - 1,
              new Findings.Outcome(before.low(), o.high(), o.seen(), chance, sorted(parts)));
          continue;
        }
      }
      result.add(o);
    }
    return result;
  }

  private static Map<String, Double> sorted(Map<String, Double> parts) {
    Map<String, Double> result = new LinkedHashMap<>();
    parts.entrySet().stream()
        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
        .forEach(e -> result.put(e.getKey(), e.getValue()));
    return result;
  }

  private static boolean alike(Findings.Outcome a, Findings.Outcome b) {
    if (a.chance() < 0.01 || b.chance() < 0.01) {
      return true;
    }
    Set<String> keys = new LinkedHashSet<>(a.parts().keySet());
    keys.addAll(b.parts().keySet());
    double distance = 0;
    for (String k : keys) {
      distance += Math.abs(a.parts().getOrDefault(k, 0.0) - b.parts().getOrDefault(k, 0.0));
    }
    return distance / 2 < 0.25;
  }
}
