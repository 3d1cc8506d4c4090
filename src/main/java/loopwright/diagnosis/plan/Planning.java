package loopwright.diagnosis.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The planner for live use: exact where the search is small enough, else rollout. */
public final class Planning implements Policy {

  /** States that an exact search may take before rollout is used: some ten milliseconds. */
  private static final int LIVE_BUDGET = 1_500;

  /** Most hypotheses with which an exact search is begun at all. */
  private static final int EXACT_HYPOTHESES = 32;

  private final Exact exact = new Exact(LIVE_BUDGET);
  private final Rollout rollout = new Rollout();

  @Override
  public OptionalInt next(PlanProblem problem, PlanState state) {
    List<Choice> ranked = rank(problem, state);
    return ranked.isEmpty() ? OptionalInt.empty() : OptionalInt.of(ranked.get(0).check());
  }

  /**
   * All checks that tell something, the best first. Empty if the search has ended, or if no check
   * tells anything.
   */
  public List<Choice> rank(PlanProblem problem, PlanState state) {
    if (state.live.length <= EXACT_HYPOTHESES) {
      Optional<List<Choice>> best = exact.rank(problem, state);
      if (best.isPresent()) {
        return best.get();
      }
    }
    return rollout.rank(problem, state);
  }
}
