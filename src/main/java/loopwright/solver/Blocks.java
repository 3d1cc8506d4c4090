package loopwright.solver;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Blocks of a graph: sets of edges any two of which lie on a common ring. Where blocks meet they
 * share one node, so a current in one can't return through another (Hopcroft and Tarjan 1973, from
 * memory).
 */
public final class Blocks {

  private Blocks() {}

  /**
   * Numbers the blocks.
   *
   * @param nodes number of nodes
   * @param a one end of each edge
   * @param b the other end
   * @return for each edge the number of its block; -1 for an edge with both ends on one node
   */
  public static int[] of(int nodes, int[] a, int[] b) {
    int m = a.length;
    int[] first = new int[nodes];
    Arrays.fill(first, -1);
    int[] next = new int[2 * m];
    for (int k = 0; k < m; k++) {
      next[2 * k] = first[a[k]];
      first[a[k]] = 2 * k;
      next[2 * k + 1] = first[b[k]];
      first[b[k]] = 2 * k + 1;
    }
    int[] block = new int[m];
    Arrays.fill(block, -1);
    int[] order = new int[nodes];
    int[] reach = new int[nodes];
    int[] by = new int[nodes];
    int[] at = first.clone();
    boolean[] used = new boolean[m];
    Deque<Integer> path = new ArrayDeque<>();
    Deque<Integer> edges = new ArrayDeque<>();
    int clock = 0;
    int blocks = 0;
    for (int start = 0; start < nodes; start++) {
      if (order[start] != 0) {
        continue;
      }
      order[start] = ++clock;
      reach[start] = clock;
      by[start] = -1;
      path.push(start);
      while (!path.isEmpty()) {
        int node = path.peek();
        int half = at[node];
        if (half >= 0) {
          at[node] = next[half];
          int edge = half / 2;
          int other = half % 2 == 0 ? b[edge] : a[edge];
          if (used[edge] || other == node) {
            continue;
          }
          used[edge] = true;
          edges.push(edge);
          if (order[other] == 0) {
            order[other] = ++clock;
            reach[other] = clock;
            by[other] = edge;
            path.push(other);
          } else {
            reach[node] = Math.min(reach[node], order[other]);
          }
          continue;
        }
        path.pop();
        if (path.isEmpty()) {
          continue;
        }
        int parent = path.peek();
        reach[parent] = Math.min(reach[parent], reach[node]);
        if (reach[node] >= order[parent]) {
          int edge;
          do {
            edge = edges.pop();
            block[edge] = blocks;
          } while (edge != by[node]);
          blocks++;
        }
      }
    }
    return block;
  }

  /** The node that stands for all that were joined with this one. */
  static int root(int[] joint, int node) {
    int root = node;
    while (joint[root] != root) {
      root = joint[root];
    }
    for (int i = node; joint[i] != root && i != root; ) {
      int up = joint[i];
      joint[i] = root;
      i = up;
    }
    return root;
  }
}
