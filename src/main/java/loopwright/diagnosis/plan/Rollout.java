package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Rollout of the greedy plan: for each of the most promising checks the expected minutes to the
 * end, if that check is done next and the greedy plan is followed from there; the least wins. It
 * sees the courses to their end and so finds what a greedy choice costs later, at a price that
 * stays small on large searches. Where few hypotheses are left on a course, the second best by
 * information per minute is followed up as well.
 *
 * <p>Method: rollout of a base policy (Tesauro and Galperin 1996; Bertsekas, Tsitsiklis and Wu
 * 1997; from memory). Courses that are unlikely, and those beyond the states that may be looked at,
 * are estimated, and hypotheses too unlikely to bear on the end are dropped.
 */
public final class Rollout implements Policy {

  /**
   * How much is looked at.
   *
   * @param candidates checks that are tried next, the best by information per minute; above 0
   * @param width checks that are tried on a course on which few hypotheses are left; above 0
   * @param few how many hypotheses are few; 0 for none. Without sure outcomes the work doubles with
   *     each check that is left for them
   * @param states states that are looked at for each check tried; what is open beyond is estimated;
   *     above 0
   * @param leastBranch chance of a course below which the rest of it is estimated; from 0 to below
   *     1
   */
  public record Effort(int candidates, int width, int few, int states, double leastBranch) {
    /** Everything the greedy plan leads to: for small searches and for comparison. */
    public static final Effort WHOLE = new Effort(Integer.MAX_VALUE, 1, 0, Integer.MAX_VALUE, 0);

    /** Some ten milliseconds with 60 checks, 300 hypotheses and 24 outcomes that overlap. */
    public static final Effort LIVE = new Effort(8, 3, 5, 600, 0.001);

    /** For outcomes that are sure, so that no set of hypotheses is worked out twice. */
    public static final Effort LIVE_SURE = new Effort(12, 3, 12, 4_000, 0.002);

    /** Checks the bounds. */
    public Effort {
      require(candidates > 0, "candidates", candidates, "above 0");
      require(width > 0, "width", width, "above 0");
      require(few >= 0, "few", few, "0 or more");
      require(states > 0, "states", states, "above 0");
      require(
          leastBranch >= 0 && leastBranch < 1, "least branch", leastBranch, "from 0 to below 1");
    }

    private static void require(boolean holds, String what, double value, String bounds) {
      if (!holds) {
        throw new IllegalArgumentException(what + " is " + value + "; must be " + bounds);
      }
    }
  }

  private final Effort blurred;
  private final Effort sharp;
  private final Greedy greedy = new Greedy();

  /** Rollout with the effort for live use. */
  public Rollout() {
    this.blurred = Effort.LIVE;
    this.sharp = Effort.LIVE_SURE;
  }

  /** Rollout with one effort for all searches. */
  public Rollout(Effort effort) {
    this.blurred = effort;
    this.sharp = effort;
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
      if (tried.size() < run.effort.candidates() && !covered(problem, state, c, tried)) {
        double minutes = run.first(state, c);
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
    private final Effort effort;
    private final double gone;
    private final Map<Key, Double> known = new HashMap<>();
    private int looked;

    Run(PlanProblem problem) {
      this.problem = problem;
      this.sure = problem.sure();
      this.effort = sure ? sharp : blurred;
      this.gone = (1 - problem.end().sure()) / (40 * problem.hypotheses());
    }

    /** Expected minutes with this check next, its outcomes as they are. */
    double first(PlanState state, Choice choice) {
      looked = 0;
      List<PlanState.Branch> branches =
          state.split(problem, choice.check(), effort.leastBranch() / 10, gone, state.made());
      return after(branches, choice.minutes(), choice.worth(), 1);
    }

    private double after(
        List<PlanState.Branch> branches, double minutes, double rate, double chance) {
      double sum = minutes;
      for (PlanState.Branch b : branches) {
        sum += b.chance() * rest(b.state(), rate, chance * b.chance());
      }
      return sum;
    }

    private double rest(PlanState state, double rate, double chance) {
      if (Groups.ended(problem, state)) {
        return 0;
      }
      if (++looked > effort.states() || chance < effort.leastBranch()) {
        // What is still open, at the rate at which it was told so far.
        return Information.aboutGroups(problem, state).entropy() / rate;
      }
      if (!sure) {
        return best(state, chance);
      }
      Key key = new Key(Arrays.stream(state.live).boxed().toList(), state.setup());
      Double before = known.get(key);
      if (before == null) {
        before = best(state, chance);
        known.put(key, before);
      }
      return before;
    }

    /** The greedy plan, or where few hypotheses are left the best of several. */
    private double best(PlanState state, double chance) {
      if (state.live.length > effort.few()) {
        return followed(state, chance);
      }
      List<Choice> ranked = greedy.rank(problem, state);
      double least = ranked.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
      for (Choice c : ranked.subList(0, Math.min(effort.width(), ranked.size()))) {
        List<PlanState.Branch> branches =
            state.split(problem, c.check(), effort.leastBranch() / 10, gone, state.made());
        least = Math.min(least, after(branches, c.minutes(), c.worth(), chance));
      }
      return least;
    }

    private double followed(PlanState state, double chance) {
      BitSet spent = state.made();
      Optional<Choice> next = greedy.following(problem, state, spent);
      if (next.isEmpty()) {
        return 0;
      }
      Choice choice = next.get();
      List<PlanState.Branch> branches =
          state.split(problem, choice.check(), effort.leastBranch() / 10, gone, spent);
      return after(branches, choice.minutes(), choice.worth(), chance);
    }
  }
}
