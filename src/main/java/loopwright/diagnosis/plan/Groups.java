package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Pieces that no check tells apart, in one state of a search. Two pieces are alike if each
 * hypothesis held against one of them has its match, which no check tells from it, among those held
 * against the other. A group is formed by complete linkage: each of its pieces is alike to every
 * other.
 */
public final class Groups {

  private final PlanProblem problem;
  private final PlanState state;

  /** Pieces held, likeliest first. */
  private final int[] pieces;

  private final double[] mass;
  private final int[][] members;

  /** Sorts the hypotheses of a state by piece. */
  public Groups(PlanProblem problem, PlanState state) {
    this.problem = problem;
    this.state = state;
    int[] count = new int[problem.pieces()];
    double[] sum = new double[problem.pieces()];
    // What is too unlikely to matter to the end doesn't part a group either.
    double ignored = (1 - problem.end().sure()) / (2 * state.live.length);
    for (int i = 0; i < state.live.length; i++) {
      int piece = problem.piece(state.live[i]);
      sum[piece] += state.weight[i];
      if (state.weight[i] > ignored) {
        count[piece]++;
      }
    }
    Integer[] order = new Integer[count.length];
    int n = 0;
    for (int p = 0; p < count.length; p++) {
      if (sum[p] > 0) {
        order[n++] = p;
      }
    }
    Integer[] held = Arrays.copyOf(order, n);
    Arrays.sort(held, (a, b) -> Double.compare(sum[b], sum[a]));
    pieces = new int[n];
    mass = new double[n];
    members = new int[n][];
    int[] at = new int[problem.pieces()];
    for (int k = 0; k < n; k++) {
      pieces[k] = held[k];
      mass[k] = sum[held[k]];
      members[k] = new int[count[held[k]]];
      at[held[k]] = k;
    }
    int[] filled = new int[n];
    for (int i = 0; i < state.live.length; i++) {
      if (state.weight[i] > ignored) {
        int k = at[problem.piece(state.live[i])];
        members[k][filled[k]++] = state.live[i];
      }
    }
  }

  /** Number of pieces held. */
  public int pieces() {
    return pieces.length;
  }

  /**
   * The piece or group that holds the belief, likeliest piece first; empty while the search goes
   * on.
   */
  public int[] answer() {
    double open = 1 - problem.end().sure() + 1e-9;
    int[] group = new int[pieces.length];
    int size = 0;
    for (int k = 0; k < pieces.length; k++) {
      boolean joins = true;
      for (int g = 0; g < size && joins; g++) {
        joins = alike(group[g], k);
      }
      if (joins) {
        group[size++] = k;
      } else {
        open -= mass[k];
        if (open < 0) {
          return new int[0];
        }
      }
    }
    int[] answer = new int[size];
    for (int g = 0; g < size; g++) {
      answer[g] = pieces[group[g]];
    }
    return answer;
  }

  /** Whether one piece or group holds the belief in a state. */
  public static boolean ended(PlanProblem problem, PlanState state) {
    return state.live.length <= 1
        || !clearlyOpen(problem, state) && new Groups(problem, state).answer().length > 0;
  }

  /**
   * A quick look that settles most states: the likeliest piece is too unlikely by itself, and the
   * second likeliest is told from it and too likely to be neglected.
   */
  private static boolean clearlyOpen(PlanProblem problem, PlanState state) {
    double[] sum = new double[problem.pieces()];
    for (int i = 0; i < state.live.length; i++) {
      sum[problem.piece(state.live[i])] += state.weight[i];
    }
    int first = 0;
    for (int p = 1; p < sum.length; p++) {
      first = sum[p] > sum[first] ? p : first;
    }
    int second = first == 0 ? sum.length - 1 : 0;
    for (int p = 0; p < sum.length; p++) {
      second = p != first && sum[p] > sum[second] ? p : second;
    }
    double open = 1 - problem.end().sure() + 1e-9;
    if (second == first || sum[second] <= open) {
      return false;
    }
    // One hypothesis that counts and has no match on the other side is enough.
    double ignored = (1 - problem.end().sure()) / (2 * state.live.length);
    for (int i = 0; i < state.live.length; i++) {
      int h = state.live[i];
      int piece = problem.piece(h);
      if ((piece == first || piece == second) && state.weight[i] > ignored) {
        int other = piece == first ? second : first;
        boolean matched = false;
        for (int k = 0; k < state.live.length && !matched; k++) {
          matched =
              problem.piece(state.live[k]) == other
                  && state.weight[k] > ignored
                  && problem.alike(h, state.live[k]);
        }
        if (!matched) {
          return true;
        }
      }
    }
    return false;
  }

  /** All pieces held, in groups, likeliest first. */
  public List<List<Integer>> all() {
    List<List<Integer>> inside = new ArrayList<>();
    for (int k = 0; k < pieces.length; k++) {
      List<Integer> home = new ArrayList<>();
      for (List<Integer> group : inside) {
        int candidate = k;
        if (group.stream().allMatch(g -> alike(g, candidate))) {
          home = group;
          break;
        }
      }
      if (home.isEmpty()) {
        inside.add(home);
      }
      home.add(k);
    }
    return inside.stream().map(g -> g.stream().map(k -> pieces[k]).toList()).toList();
  }

  /** For each hypothesis of the problem the number of its piece's group; 0 for pieces not held. */
  int[] labels() {
    int[] byPiece = new int[problem.pieces()];
    List<List<Integer>> groups = all();
    for (int g = 0; g < groups.size(); g++) {
      for (int piece : groups.get(g)) {
        byPiece[piece] = g;
      }
    }
    int[] labels = new int[problem.hypotheses()];
    for (int h = 0; h < labels.length; h++) {
      labels[h] = byPiece[problem.piece(h)];
    }
    return labels;
  }

  private boolean alike(int a, int b) {
    return matched(members[a], members[b]) && matched(members[b], members[a]);
  }

  private boolean matched(int[] these, int[] among) {
    for (int h : these) {
      boolean found = false;
      for (int k = 0; k < among.length && !found; k++) {
        found = problem.alike(h, among[k]);
      }
      if (!found) {
        return false;
      }
    }
    return true;
  }
}
