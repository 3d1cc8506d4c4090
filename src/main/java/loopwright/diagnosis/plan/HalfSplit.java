package loopwright.diagnosis.plan;

import java.util.OptionalInt;

/**
 * Splits the pieces still suspected most evenly by their number, whatever their chances and the
 * minutes: the workshop's half-split. For comparison.
 */
public final class HalfSplit implements Policy {

  private final Ties ties;

  /** Half-split; on a loop of an odd number of pieces, ties to the first leave the smaller half. */
  public HalfSplit(Ties ties) {
    this.ties = ties;
  }

  @Override
  public OptionalInt next(PlanProblem problem, PlanState state) {
    if (Groups.ended(problem, state)) {
      return OptionalInt.empty();
    }
    int best = -1;
    double fewest = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < problem.checks(); c++) {
      if (!state.made(c) && state.tells(problem, c)) {
        int largest = 0;
        for (PlanState.Branch branch : state.split(problem, c)) {
          largest = Math.max(largest, new Groups(problem, branch.state()).pieces());
        }
        if (ties.better(-largest, fewest)) {
          best = c;
          fewest = -largest;
        }
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }
}
