package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Most information per minute. Where no check tells anything about the pieces by itself, the one
 * that tells most about the hypotheses.
 */
public final class Greedy implements Policy {

  /** Information in bits that counts as none: it is lost in rounding. */
  static final double NONE = 1e-9;

  private final Ties ties;

  /** Greedy choice, ties to the first. */
  public Greedy() {
    this(Ties.FIRST);
  }

  /** Greedy choice. */
  public Greedy(Ties ties) {
    this.ties = ties;
  }

  @Override
  public OptionalInt next(PlanProblem problem, PlanState state) {
    if (new Groups(problem, state).ended()) {
      return OptionalInt.empty();
    }
    int check = best(problem, state, Information.aboutGroups(problem, state));
    if (check < 0) {
      check = best(problem, state, Information.aboutHypotheses(problem, state));
    }
    return check < 0 ? OptionalInt.empty() : OptionalInt.of(check);
  }

  private int best(PlanProblem problem, PlanState state, Information information) {
    int best = -1;
    double most = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < problem.checks(); c++) {
      if (state.made(c)) {
        continue;
      }
      double bits = information.bits(c);
      if (bits > NONE) {
        double worth = bits / problem.costs().minutes(c, state.setup());
        if (ties.better(worth, most)) {
          best = c;
          most = worth;
        }
      }
    }
    return best;
  }

  /** All checks that tell something, the best first; empty if the search has ended. */
  public List<Choice> rank(PlanProblem problem, PlanState state) {
    if (new Groups(problem, state).ended()) {
      return List.of();
    }
    List<Choice> choices = choices(problem, state, Information.aboutGroups(problem, state));
    return choices.isEmpty()
        ? choices(problem, state, Information.aboutHypotheses(problem, state))
        : choices;
  }

  private static List<Choice> choices(
      PlanProblem problem, PlanState state, Information information) {
    List<Choice> choices = new ArrayList<>();
    for (int c = 0; c < problem.checks(); c++) {
      if (!state.made(c)) {
        double bits = information.bits(c);
        if (bits > NONE) {
          double minutes = problem.costs().minutes(c, state.setup());
          choices.add(new Choice(c, minutes, bits, OptionalDouble.empty()));
        }
      }
    }
    choices.sort(Comparator.comparingDouble(Choice::worth).reversed());
    return choices;
  }
}
