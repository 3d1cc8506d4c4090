package loopwright.casework;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.model.Language;

/** Puts what a vehicle had before into the failure tables, and into words. */
final class OwnRates {
  /** Most finds that are told at once. */
  private static final int TOLD = 3;

  /** Least share of a find that is told. */
  private static final double TELLING = 0.5;

  private OwnRates() {}

  /** The tables with this vehicle's own rates. */
  static Knowledge rated(Knowledge knowledge, List<OwnRate> rates) {
    Map<String, Double> factors = new HashMap<>();
    rates.forEach(r -> factors.put(r.kind() + "/" + r.mode(), r.factor()));
    return factors.isEmpty()
        ? knowledge
        : knowledge.rated(mode -> factors.getOrDefault(mode.kind() + "/" + mode.mode(), 1.0));
  }

  /** What counts more often since it was found here before; empty if nothing does. */
  static String words(Knowledge knowledge, List<OwnRate> rates, Phrases phrases) {
    // One find shared among several modes is told of the likeliest.
    List<OwnRate> more =
        rates.stream().filter(r -> r.factor() > 1 && r.found() >= TELLING).toList();
    if (more.isEmpty()) {
      return "";
    }
    return phrases.say(
        "own-record",
        more.stream()
            .sorted(Comparator.comparingDouble(OwnRate::factor).reversed())
            .limit(TOLD)
            .map(r -> words(knowledge, r, phrases))
            .collect(Collectors.joining("; ")));
  }

  private static String words(Knowledge knowledge, OwnRate rate, Phrases phrases) {
    String title =
        knowledge.faults(rate.kind()).stream()
            .filter(mode -> mode.mode().equals(rate.mode()))
            .map(FaultMode::title)
            .findFirst()
            .orElse(rate.mode());
    return phrases.say(
        "own-record.rate",
        title,
        Language.marked(String.format(Locale.ROOT, "%.1f", rate.factor())),
        Math.max(1, Math.round(rate.found())));
  }
}
