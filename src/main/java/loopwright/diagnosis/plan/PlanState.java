package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Where a search stands: what is believed after the checks so far, which were made, and how the
 * work place stands. A check is made once; asking again is not a second witness. Immutable.
 */
public final class PlanState {

  /** Share of the belief below which a hypothesis is dropped for good. */
  private static final double GONE = 1e-9;

  /**
   * What follows from one outcome.
   *
   * @param outcome its number
   * @param chance how likely it is
   * @param state where the search stands then
   */
  public record Branch(int outcome, double chance, PlanState state) {}

  final int[] live;
  final double[] weight;
  private final Setup setup;
  private final BitSet made;

  private PlanState(int[] live, double[] weight, Setup setup, BitSet made) {
    this.live = live;
    this.weight = weight;
    this.setup = setup;
    this.made = made;
  }

  /** The state before any check, from where the costs start. */
  public static PlanState start(PlanProblem problem) {
    return start(problem, problem.costs().start());
  }

  /** The state before any check, with the work place as given. */
  public static PlanState start(PlanProblem problem, Setup setup) {
    int[] live = new int[problem.hypotheses()];
    double[] weight = new double[live.length];
    int n = 0;
    for (int h = 0; h < live.length; h++) {
      if (problem.chance(h) > 0) {
        live[n] = h;
        weight[n++] = problem.chance(h);
      }
    }
    return new PlanState(
        Arrays.copyOf(live, n), Arrays.copyOf(weight, n), setup, new BitSet(problem.checks()));
  }

  /** Belief in a hypothesis. */
  public double chance(int hypothesis) {
    for (int i = 0; i < live.length; i++) {
      if (live[i] == hypothesis) {
        return weight[i];
      }
    }
    return 0;
  }

  /** Hypotheses that are still held. */
  public int[] held() {
    return live.clone();
  }

  /** How the work place stands. */
  public Setup setup() {
    return setup;
  }

  /** Whether the check was made. */
  public boolean made(int check) {
    return made.get(check);
  }

  /** The checks made. */
  BitSet made() {
    return (BitSet) made.clone();
  }

  /** Whether the check may show different outcomes under the hypotheses held. */
  boolean tells(PlanProblem problem, int check) {
    Outcomes outcomes = problem.check(check);
    for (int i = 1; i < live.length; i++) {
      if (!outcomes.same(live[0], live[i])) {
        return true;
      }
    }
    return false;
  }

  /** The states after a check, with the chance of each; outcomes that can't occur are left out. */
  public List<Branch> split(PlanProblem problem, int check) {
    return split(problem, check, 0, GONE, made);
  }

  /**
   * The same, but without outcomes below a chance, the others making up for them, and without
   * hypotheses that are very unlikely after the outcome.
   *
   * @param least chance from which an outcome counts
   * @param gone belief up to which a hypothesis is dropped
   * @param before checks that need not be thought of again, besides this one
   */
  List<Branch> split(PlanProblem problem, int check, double least, double gone, BitSet before) {
    Outcomes outcomes = problem.check(check);
    int count = outcomes.count();
    double[] sum = new double[count];
    int[] size = new int[count];
    for (int i = 0; i < live.length; i++) {
      int to = outcomes.to(live[i]);
      for (int k = outcomes.from(live[i]); k < to; k++) {
        int o = outcomes.outcomeAt(k);
        sum[o] += weight[i] * outcomes.chanceAt(k);
        size[o]++;
      }
    }
    double kept = 0;
    for (int o = 0; o < count; o++) {
      if (size[o] > 0 && sum[o] >= least) {
        kept += sum[o];
      } else {
        size[o] = 0;
      }
    }
    int[][] lives = new int[count][];
    double[][] weights = new double[count][];
    for (int o = 0; o < count; o++) {
      lives[o] = new int[size[o]];
      weights[o] = new double[size[o]];
    }
    int[] filled = new int[count];
    for (int i = 0; i < live.length; i++) {
      int to = outcomes.to(live[i]);
      for (int k = outcomes.from(live[i]); k < to; k++) {
        int o = outcomes.outcomeAt(k);
        double w = weight[i] * outcomes.chanceAt(k);
        if (size[o] > 0 && w > gone * sum[o]) {
          lives[o][filled[o]] = live[i];
          weights[o][filled[o]++] = w / sum[o];
        }
      }
    }
    Setup next = problem.costs().after(check, setup);
    BitSet after = (BitSet) before.clone();
    after.set(check);
    List<Branch> branches = new ArrayList<>();
    for (int o = 0; o < count; o++) {
      if (filled[o] > 0) {
        int[] l = filled[o] == size[o] ? lives[o] : Arrays.copyOf(lives[o], filled[o]);
        double[] w = filled[o] == size[o] ? weights[o] : Arrays.copyOf(weights[o], filled[o]);
        branches.add(new Branch(o, sum[o] / kept, new PlanState(l, w, next, after)));
      }
    }
    return branches;
  }
}
