package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The least expected minutes that any plan can reach, by searching all of them. Each set of
 * hypotheses with each setup is worked out once (dynamic programming over the sets that remain),
 * and a check is given up as soon as a lower bound shows that it can't be the best.
 *
 * <p>Only for checks that show one sure outcome under each hypothesis, at most {@value
 * #MOST_HYPOTHESES} hypotheses, and as many states as the budget allows; anything larger is refused
 * with an empty answer.
 */
public final class Exact {

  /** Most hypotheses, after those alike in all checks are taken as one. */
  public static final int MOST_HYPOTHESES = 64;

  /** States that are worked out at most unless said otherwise: about a second's work. */
  public static final int USUAL_BUDGET = 200_000;

  private final int budget;

  /** An exact search with the usual budget. */
  public Exact() {
    this(USUAL_BUDGET);
  }

  /**
   * An exact search.
   *
   * @param budget states that are worked out at most; above 0
   */
  public Exact(int budget) {
    if (budget <= 0) {
      throw new IllegalArgumentException("budget is " + budget + " states; must be above 0");
    }
    this.budget = budget;
  }

  /**
   * Least expected minutes to the end; empty if the search is too large or has outcomes that are
   * not sure.
   */
  public OptionalDouble minutes(PlanProblem problem, PlanState state) {
    return search(problem, state)
        .map(
            s -> {
              try {
                return OptionalDouble.of(s.value(state));
              } catch (TooLarge e) {
                return OptionalDouble.empty();
              }
            })
        .orElse(OptionalDouble.empty());
  }

  /**
   * All checks that tell something with the least expected minutes if they are done next, the best
   * first; an empty list if the search has ended, and no answer if it is too large or has outcomes
   * that are not sure.
   */
  public Optional<List<Choice>> rank(PlanProblem problem, PlanState state) {
    Optional<Search> search = search(problem, state);
    if (search.isEmpty()) {
      return Optional.empty();
    }
    try {
      List<Choice> choices = new ArrayList<>();
      for (Choice c : new Greedy().rank(problem, state)) {
        double minutes = c.minutes();
        for (PlanState.Branch b : state.split(problem, c.check())) {
          minutes += b.chance() * search.get().value(b.state());
        }
        choices.add(new Choice(c.check(), c.minutes(), c.bits(), OptionalDouble.of(minutes)));
      }
      // Minutes that differ by rounding only keep the greedy order.
      choices.sort(
          Comparator.comparingLong(c -> Math.round(c.expectedMinutes().orElseThrow() * 1e9)));
      return Optional.of(choices);
    } catch (TooLarge e) {
      return Optional.empty();
    }
  }

  private Optional<Search> search(PlanProblem problem, PlanState state) {
    return state.live.length <= MOST_HYPOTHESES && problem.sure()
        ? Optional.of(new Search(problem, state, budget))
        : Optional.empty();
  }

  /** Says that the budget is spent; never leaves this class. */
  private static final class TooLarge extends RuntimeException {
    private static final long serialVersionUID = 1L;

    TooLarge() {
      super("more states than the budget allows", null, false, false);
    }
  }

  private record Key(long held, Setup setup) {}

  /** One search with what it has worked out so far. */
  private static final class Search {
    private final PlanProblem problem;
    private final int budget;
    private final Map<Key, Double> known = new HashMap<>();
    private final int[] bit;

    /** For each hypothesis its component: hypotheses that may end up in one group share it. */
    private final int[] component;

    Search(PlanProblem problem, PlanState state, int budget) {
      this.problem = problem;
      this.budget = budget;
      this.bit = new int[problem.hypotheses()];
      for (int i = 0; i < state.live.length; i++) {
        bit[state.live[i]] = i;
      }
      this.component = components(state);
    }

    private int[] components(PlanState state) {
      int[] of = new int[problem.hypotheses()];
      for (int h : state.live) {
        of[h] = h;
      }
      boolean changed = true;
      while (changed) {
        changed = false;
        for (int a : state.live) {
          for (int b : state.live) {
            boolean linked = problem.piece(a) == problem.piece(b) || problem.alike(a, b);
            if (linked && of[a] < of[b]) {
              of[b] = of[a];
              changed = true;
            }
          }
        }
      }
      return of;
    }

    double value(PlanState state) {
      if (Groups.ended(problem, state)) {
        return 0;
      }
      long held = 0;
      for (int h : state.live) {
        held |= 1L << bit[h];
      }
      Key key = new Key(held, state.setup());
      Double before = known.get(key);
      if (before != null) {
        return before;
      }
      if (known.size() >= budget) {
        throw new TooLarge();
      }
      double best = Double.POSITIVE_INFINITY;
      for (Choice choice : new Greedy().rank(problem, state)) {
        best = Math.min(best, tried(state, choice.check(), choice.minutes(), best));
      }
      // Where nothing that is left tells anything the search is over, with more than one suspect.
      double value = Double.isInfinite(best) ? 0 : best;
      known.put(key, value);
      return value;
    }

    /** Minutes with this check next, or some number above the best if it can't be better. */
    private double tried(PlanState state, int check, double minutes, double best) {
      if (minutes >= best) {
        return minutes;
      }
      List<PlanState.Branch> branches = state.split(problem, check);
      double sum = minutes;
      double[] least = new double[branches.size()];
      for (int b = 0; b < least.length; b++) {
        least[b] = branches.get(b).chance() * least(branches.get(b).state());
        sum += least[b];
      }
      for (int b = 0; b < least.length && sum < best; b++) {
        sum += branches.get(b).chance() * value(branches.get(b).state()) - least[b];
      }
      return sum;
    }

    /**
     * A lower bound: what must be told at the end, over the most that any check can tell in its
     * least minutes.
     */
    private double least(PlanState state) {
      if (Groups.ended(problem, state)) {
        return 0;
      }
      double[] sum = new double[problem.hypotheses()];
      for (int i = 0; i < state.live.length; i++) {
        sum[component[state.live[i]]] += state.weight[i];
      }
      // Only where each course ends with certainty must all of it be told.
      double bits = problem.end().sure() == 1 ? Information.entropy(sum) : 0;
      double rate = 0;
      double single = Double.POSITIVE_INFINITY;
      for (int c = 0; c < problem.checks(); c++) {
        int kinds = kinds(state, problem.check(c));
        if (kinds > 1) {
          double minutes = problem.costs().leastMinutes(c);
          single = Math.min(single, minutes);
          rate = Math.max(rate, Math.log(kinds) / Math.log(2) / minutes);
        }
      }
      return Double.isInfinite(single) || single <= 0 ? 0 : Math.max(single, bits / rate);
    }

    private static int kinds(PlanState state, Outcomes outcomes) {
      BitSet seen = new BitSet(outcomes.count());
      for (int h : state.live) {
        seen.set(outcomes.outcomeAt(outcomes.from(h)));
      }
      return seen.cardinality();
    }
  }
}
