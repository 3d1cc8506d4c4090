package loopwright.diagnosis.plan;

import java.util.Arrays;

/** How much a check is expected to tell, in bits, in one state of a search. */
public final class Information {

  private static final double LOG2 = Math.log(2);

  private final PlanProblem problem;
  private final PlanState state;
  private final int[] label;
  private final int labels;
  private final double before;
  private double[] joint = {};
  private double[] outcome = {};

  private Information(PlanProblem problem, PlanState state, int[] labelOf) {
    this.problem = problem;
    this.state = state;
    this.label = new int[state.live.length];
    int highest = 0;
    for (int h : state.live) {
      highest = Math.max(highest, labelOf[h]);
    }
    int[] local = new int[highest + 1];
    int n = 0;
    for (int i = 0; i < label.length; i++) {
      int l = labelOf[state.live[i]];
      if (local[l] == 0) {
        local[l] = ++n;
      }
      label[i] = local[l] - 1;
    }
    this.labels = n;
    double[] sum = new double[n];
    for (int i = 0; i < label.length; i++) {
      sum[label[i]] += state.weight[i];
    }
    this.before = plain(sum, n);
  }

  /** Information about which group of pieces is to blame. */
  public static Information aboutGroups(PlanProblem problem, PlanState state) {
    return new Information(problem, state, problem.labels());
  }

  /** Information about which hypothesis is true. */
  public static Information aboutHypotheses(PlanProblem problem, PlanState state) {
    int[] own = new int[problem.hypotheses()];
    Arrays.setAll(own, h -> h);
    return new Information(problem, state, own);
  }

  /** Entropy in bits before the check. */
  public double entropy() {
    return before;
  }

  /** Entropy in bits that a check leaves on average. */
  public double entropyAfter(int check) {
    return before - bits(check);
  }

  /**
   * How much the outcomes of a check differ, in bits: no less than the information that it is
   * expected to give, at a small part of the work.
   */
  double differs(int check) {
    Outcomes outcomes = problem.check(check);
    int count = outcomes.count();
    if (outcome.length < count) {
      outcome = new double[count];
    }
    for (int i = 0; i < label.length; i++) {
      int to = outcomes.to(state.live[i]);
      for (int k = outcomes.from(state.live[i]); k < to; k++) {
        outcome[outcomes.outcomeAt(k)] += state.weight[i] * outcomes.chanceAt(k);
      }
    }
    double bits = 0;
    for (int o = 0; o < count; o++) {
      bits += plainTerm(outcome[o]);
      outcome[o] = 0;
    }
    return bits;
  }

  /** Information in bits that a check is expected to give; 0 or more. */
  public double bits(int check) {
    Outcomes outcomes = problem.check(check);
    int count = outcomes.count();
    if (joint.length < count * labels) {
      joint = new double[count * labels];
    }
    if (outcome.length < count) {
      outcome = new double[count];
    }
    for (int i = 0; i < label.length; i++) {
      int to = outcomes.to(state.live[i]);
      for (int k = outcomes.from(state.live[i]); k < to; k++) {
        double p = state.weight[i] * outcomes.chanceAt(k);
        int o = outcomes.outcomeAt(k);
        joint[o * labels + label[i]] += p;
        outcome[o] += p;
      }
    }
    double bits = before;
    for (int o = 0; o < count; o++) {
      if (outcome[o] > 0) {
        bits += plainTerm(outcome[o]);
        for (int c = o * labels; c < (o + 1) * labels; c++) {
          if (joint[c] > 0) {
            bits -= plainTerm(joint[c]);
            joint[c] = 0;
          }
        }
        outcome[o] = 0;
      }
    }
    return Math.max(0, bits);
  }

  /** Entropy in bits of chances on any scale. */
  public static double entropy(double... chances) {
    double sum = Arrays.stream(chances).sum();
    double bits = 0;
    for (double c : chances) {
      bits += plainTerm(c / sum);
    }
    return bits;
  }

  private static double plain(double[] chances, int n) {
    double bits = 0;
    for (int i = 0; i < n; i++) {
      bits += plainTerm(chances[i]);
    }
    return bits;
  }

  private static double plainTerm(double p) {
    return p <= 0 ? 0 : -p * Math.log(p) / LOG2;
  }
}
