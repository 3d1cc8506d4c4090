package loopwright.diagnosis.plan;

import java.util.OptionalInt;

/**
 * What following a policy costs, by going through every course it may take.
 *
 * @param minutes expected minutes to the end
 * @param checks expected number of checks
 * @param mostChecks most checks on any course
 * @param open chance that it comes to a stop before the search has ended
 */
public record Evaluation(double minutes, double checks, int mostChecks, double open) {

  private static final Evaluation ENDED = new Evaluation(0, 0, 0, 0);
  private static final Evaluation STUCK = new Evaluation(0, 0, 0, 1);

  /** Follows a policy from a state. */
  public static Evaluation of(PlanProblem problem, PlanState state, Policy policy) {
    OptionalInt next = policy.next(problem, state);
    if (next.isEmpty()) {
      return Groups.ended(problem, state) ? ENDED : STUCK;
    }
    int check = next.getAsInt();
    double minutes = problem.costs().minutes(check, state.setup());
    double checks = 1;
    int most = 0;
    double open = 0;
    for (PlanState.Branch branch : state.split(problem, check)) {
      Evaluation rest = of(problem, branch.state(), policy);
      minutes += branch.chance() * rest.minutes();
      checks += branch.chance() * rest.checks();
      most = Math.max(most, rest.mostChecks());
      open += branch.chance() * rest.open();
    }
    return new Evaluation(minutes, checks, most + 1, open);
  }
}
