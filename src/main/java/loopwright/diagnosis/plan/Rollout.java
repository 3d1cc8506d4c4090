package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Rollout of the greedy plan: for each of the most promising checks the expected minutes to the
 * end, if that check is done next and the greedy plan is followed from there; the least wins. It
 * sees the courses to their end and so finds what a greedy choice costs later, at a price that
 * stays small on large searches.
 *
 * <p>Method: rollout of a base policy (Tesauro and Galperin 1996; Bertsekas, Tsitsiklis and Wu
 * 1997; from memory).
 */
public final class Rollout implements Policy {

  /**
   * How much is looked at.
   *
   * @param candidates checks that are tried next, the best by information per minute; above 0
   * @param depth checks after that; what is open beyond is estimated; above 0
   * @param leastBranch chance of a course below which the rest of it is estimated; from 0 to below
   *     1
   */
  public record Effort(int candidates, int depth, double leastBranch) {
    /** Everything: for small searches and for comparison. */
    public static final Effort WHOLE = new Effort(Integer.MAX_VALUE, Integer.MAX_VALUE, 0);

    /** Some ten milliseconds with 60 checks and 300 hypotheses. */
    public static final Effort LIVE = new Effort(12, 12, 0.002);

    /** Checks the bounds. */
    public Effort {
      if (candidates <= 0 || depth <= 0 || !(leastBranch >= 0 && leastBranch < 1)) {
        throw new IllegalArgumentException(
            "candidates "
                + candidates
                + " and depth "
                + depth
                + " must be above 0, least branch "
                + leastBranch
                + " from 0 to below 1");
      }
    }
  }

  private final Effort effort;
  private final Greedy greedy = new Greedy();

  /** Rollout with the effort for live use. */
  public Rollout() {
    this(Effort.LIVE);
  }

  /** Rollout. */
  public Rollout(Effort effort) {
    this.effort = effort;
  }

  @Override
  public OptionalInt next(PlanProblem problem, PlanState state) {
    List<Choice> ranked = rank(problem, state);
    return ranked.isEmpty() ? OptionalInt.empty() : OptionalInt.of(ranked.get(0).check());
  }

  /**
   * All checks that tell something, the best first: those tried by their expected minutes to the
   * end, then the others, without such minutes, by information per minute. Empty if the search has
   * ended.
   */
  public List<Choice> rank(PlanProblem problem, PlanState state) {
    List<Choice> ranked = greedy.rank(problem, state);
    Run run = new Run(problem);
    List<Choice> tried = new ArrayList<>();
    List<Choice> others = new ArrayList<>();
    for (Choice c : ranked) {
      if (tried.size() < effort.candidates() && !covered(problem, state, c, tried)) {
        double minutes = run.through(state, c.check(), c.minutes(), 1, 0);
        tried.add(new Choice(c.check(), c.minutes(), c.bits(), OptionalDouble.of(minutes)));
      } else {
        others.add(c);
      }
    }
    // Minutes that differ by rounding only keep the greedy order.
    tried.sort(Comparator.comparingLong(c -> Math.round(c.expectedMinutes().orElseThrow() * 1e9)));
    tried.addAll(others);
    return tried;
  }

  /** Whether a check that was tried tells the very same and leaves the work place the same. */
  private static boolean covered(
      PlanProblem problem, PlanState state, Choice choice, List<Choice> tried) {
    Costs costs = problem.costs();
    for (Choice t : tried) {
      if (Math.abs(t.bits() - choice.bits()) < 1e-12
          && t.minutes() <= choice.minutes()
          && costs
              .after(t.check(), state.setup())
              .equals(costs.after(choice.check(), state.setup()))
          && sameRows(problem, state, t.check(), choice.check())) {
        return true;
      }
    }
    return false;
  }

  private static boolean sameRows(PlanProblem problem, PlanState state, int a, int b) {
    Outcomes x = problem.check(a);
    Outcomes y = problem.check(b);
    for (int h : state.live) {
      if (x.to(h) - x.from(h) != y.to(h) - y.from(h)) {
        return false;
      }
      for (int k = 0; k < x.to(h) - x.from(h); k++) {
        if (x.outcomeAt(x.from(h) + k) != y.outcomeAt(y.from(h) + k)
            || x.chanceAt(x.from(h) + k) != y.chanceAt(y.from(h) + k)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Hypotheses held and how the work place stands: all that matters where outcomes are sure. */
  private record Key(List<Integer> held, Setup setup) {}

  /** One ranking, with what it has worked out so far. */
  private final class Run {
    private final PlanProblem problem;
    private final boolean sure;
    private final Map<Key, Double> known = new HashMap<>();

    Run(PlanProblem problem) {
      this.problem = problem;
      this.sure = problem.sure();
    }

    double through(PlanState state, int check, double minutes, double chance, int depth) {
      double sum = minutes;
      for (PlanState.Branch b : state.split(problem, check, effort.leastBranch() / 10)) {
        sum += b.chance() * rest(b.state(), chance * b.chance(), depth + 1);
      }
      return sum;
    }

    private double rest(PlanState state, double chance, int depth) {
      if (new Groups(problem, state).ended()) {
        return 0;
      }
      if (depth > effort.depth() || chance < effort.leastBranch()) {
        return estimate(state);
      }
      if (!sure) {
        return followed(state, chance, depth);
      }
      Key key = new Key(Arrays.stream(state.live).boxed().toList(), state.setup());
      Double before = known.get(key);
      if (before == null) {
        before = followed(state, chance, depth);
        known.put(key, before);
      }
      return before;
    }

    private double followed(PlanState state, double chance, int depth) {
      OptionalInt next = greedy.next(problem, state);
      if (next.isEmpty()) {
        return 0;
      }
      int check = next.getAsInt();
      double minutes = problem.costs().minutes(check, state.setup());
      return through(state, check, minutes, chance, depth);
    }

    /** What is still open, at the rate of the check that tells most in a minute. */
    private double estimate(PlanState state) {
      List<Choice> choices = greedy.rank(problem, state);
      if (choices.isEmpty()) {
        return 0;
      }
      double open = Information.aboutGroups(problem, state).entropy();
      Choice best = choices.get(0);
      return Math.max(best.minutes(), open / best.worth());
    }
  }
}
