package loopwright.diagnosis;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoublePredicate;

/**
 * Gets ready, while a person takes a check, what its reading will be held against. It only fills
 * tables that are filled anyway once they are asked for, so findings don't depend on how far it
 * got.
 */
final class Ahead {

  /** Hypotheses that are worked on between two questions whether to go on. */
  private static final int AT_A_TIME = 16;

  private final Predictor predictor;
  private final Finer finer;
  private final List<Hypothesis> listed;

  Ahead(Predictor predictor, Finer finer, List<Hypothesis> inPlay) {
    this.predictor = predictor;
    this.finer = finer;
    this.listed = inPlay.stream().filter(h -> !h.unlisted()).toList();
  }

  /**
   * Works on every listed hypothesis, on all processors.
   *
   * @param goOn told the share that is done; false ends it
   * @return whether all was done
   */
  boolean each(Consumer<Hypothesis> work, DoublePredicate goOn) {
    return each(listed, work, goOn);
  }

  private static boolean each(
      List<Hypothesis> all, Consumer<Hypothesis> work, DoublePredicate goOn) {
    for (int from = 0; from < all.size(); from += AT_A_TIME) {
      int to = Math.min(all.size(), from + AT_A_TIME);
      all.subList(from, to).parallelStream().forEach(work);
      if (!goOn.test((double) to / all.size())) {
        return false;
      }
    }
    return true;
  }

  /** Hypotheses that the planner may look at after the reading. */
  private List<Hypothesis> strongest(Map<Hypothesis, Double> belief) {
    return listed.stream()
        .sorted(Comparator.comparingDouble(h -> -belief.getOrDefault(h, 0.0)))
        .limit(STRONGEST)
        .toList();
  }

  /** How many of them. */
  private static final int STRONGEST = 100;

  /**
   * Fills the tables that a reading of a check asks for, the likeliest to be needed first.
   *
   * @param belief what is believed now, which says where a closer look will be worth it
   * @param next checks that may come after it
   * @param goOn asked now and then; false ends it early
   */
  void prepare(
      Check check, Map<Hypothesis, Double> belief, Collection<Check> next, BooleanSupplier goOn) {
    DoublePredicate on = share -> goOn.getAsBoolean();
    List<Hypothesis> strong = Finer.mayBeWorthIt(belief);
    boolean metered = check.kind().metered();
    boolean done =
        each(listed, h -> predictor.exact(h, check), on)
            && (!metered || each(listed, h -> predictor.possible(h, check), on))
            && each(strong, h -> finer.prepare(h, check), on)
            && each(strongest(belief), h -> next.forEach(c -> predictor.predict(h, c)), on);
    // Bounds of the whole setting come first: they clear most, and serve every reading in it.
    if (done && metered && each(listed, h -> predictor.coarse(h, check), on)) {
      each(listed, h -> predictor.outer(h, check), on);
    }
  }
}
