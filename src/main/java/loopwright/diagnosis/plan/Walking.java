package loopwright.diagnosis.plan;

import java.util.OptionalInt;

/**
 * Makes the checks in a fixed order, as somebody who walks along the loop from the battery. Checks
 * that can't tell anything any more are passed over. For comparison.
 */
public final class Walking implements Policy {

  private final int[] order;

  /**
   * Walks.
   *
   * @param order numbers of the checks, first to last; checks not in it are never made
   */
  public Walking(int... order) {
    this.order = order.clone();
  }

  @Override
  public OptionalInt next(PlanProblem problem, PlanState state) {
    if (Groups.ended(problem, state)) {
      return OptionalInt.empty();
    }
    for (int c : order) {
      if (!state.made(c) && state.tells(problem, c)) {
        return OptionalInt.of(c);
      }
    }
    return OptionalInt.empty();
  }
}
