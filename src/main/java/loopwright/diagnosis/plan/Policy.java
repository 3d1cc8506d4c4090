package loopwright.diagnosis.plan;

import java.util.OptionalInt;

/** A rule for what to do next in a search. */
public interface Policy {

  /**
   * The next check; empty if the search has ended, or if no check that is left tells anything.
   *
   * @param problem the search
   * @param state where it stands
   */
  OptionalInt next(PlanProblem problem, PlanState state);
}
