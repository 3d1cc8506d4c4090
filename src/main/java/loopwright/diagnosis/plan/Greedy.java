package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Most information per minute. Where no check tells anything about the pieces by itself, the one
 * that tells most about the hypotheses.
 */
public final class Greedy implements Policy {

  /** Information in bits that counts as none: it is lost in rounding. */
  static final double NONE = 1e-9;

  /** Bits by which outcomes must differ for a check to be thought of again further on. */
  private static final double DULL = 1e-3;

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
    if (Groups.ended(problem, state)) {
      return OptionalInt.empty();
    }
    Optional<Choice> choice = following(problem, state, new BitSet());
    return choice.isEmpty() ? OptionalInt.empty() : OptionalInt.of(choice.get().check());
  }

  /**
   * The next check in a search that is known not to have ended.
   *
   * @param dull is given the checks that tell next to nothing from here on
   */
  Optional<Choice> following(PlanProblem problem, PlanState state, BitSet dull) {
    Optional<Choice> choice = best(problem, state, Information.aboutGroups(problem, state), dull);
    return choice.isPresent()
        ? choice
        : best(problem, state, Information.aboutHypotheses(problem, state), new BitSet());
  }

  private Optional<Choice> best(
      PlanProblem problem, PlanState state, Information information, BitSet dull) {
    int best = -1;
    double bestBits = 0;
    double bestMinutes = 1;
    double most = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < problem.checks(); c++) {
      if (state.made(c)) {
        continue;
      }
      double minutes = problem.costs().minutes(c, state.setup());
      double atMost = information.differs(c) + NONE;
      if (atMost < DULL) {
        dull.set(c);
      }
      if (ties.better(atMost / minutes, most)) {
        double bits = information.bits(c);
        if (bits > NONE && ties.better(bits / minutes, most)) {
          best = c;
          bestBits = bits;
          bestMinutes = minutes;
          most = bits / minutes;
        }
      }
    }
    return best < 0
        ? Optional.empty()
        : Optional.of(new Choice(best, bestMinutes, bestBits, OptionalDouble.empty()));
  }

  /** All checks that tell something, the best first; empty if the search has ended. */
  public List<Choice> rank(PlanProblem problem, PlanState state) {
    if (Groups.ended(problem, state)) {
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
