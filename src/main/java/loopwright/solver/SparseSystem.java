package loopwright.solver;

import java.util.Arrays;
import java.util.TreeSet;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * A symmetric positive definite conductance matrix, ordered by least degree and factored by EJML's
 * sparse Cholesky.
 *
 * <p>Every node has a leak of {@link #LEAK} to the reference: dirt and damp do that on a vehicle,
 * and it gives a floating network a definite answer.
 */
final class SparseSystem {

  /** Leak of a node to the body in siemens: a gigaohm of dirt. Common practice, not critical. */
  static final double LEAK = 1e-9;

  private final int n;
  private final int[] place;
  private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
      LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
  private final DMatrixRMaj rhs;
  private final DMatrixRMaj answer;

  /** Prepares an order for networks with these ends of elements. */
  SparseSystem(int n, int[] a, int[] b) {
    this.n = n;
    this.place = leastDegreeOrder(n, a, b);
    this.rhs = new DMatrixRMaj(n, 1);
    this.answer = new DMatrixRMaj(n, 1);
  }

  /**
   * Factors the matrix of these conductances.
   *
   * @throws IllegalStateException if it isn't positive definite, which a network of positive
   *     resistances always is
   */
  void factor(int count, int[] a, int[] b, double[] siemens) {
    DMatrixSparseTriplet t = new DMatrixSparseTriplet(n, n, 4 * count + n);
    double[] diagonal = new double[n];
    Arrays.fill(diagonal, LEAK);
    for (int e = 0; e < count; e++) {
      double g = siemens[e];
      if (g == 0 || a[e] == b[e]) {
        continue;
      }
      if (a[e] >= 0) {
        diagonal[a[e]] += g;
      }
      if (b[e] >= 0) {
        diagonal[b[e]] += g;
      }
      if (a[e] >= 0 && b[e] >= 0) {
        t.addItem(place[a[e]], place[b[e]], -g);
        t.addItem(place[b[e]], place[a[e]], -g);
      }
    }
    for (int i = 0; i < n; i++) {
      t.addItem(place[i], place[i], diagonal[i]);
    }
    DMatrixSparseCSC csc = DConvertMatrixStruct.convert(t, (DMatrixSparseCSC) null);
    csc.sortIndices(null);
    DMatrixSparseCSC summed = sumDuplicates(csc);
    if (!solver.setA(summed)) {
      throw new IllegalStateException("conductance matrix of " + n + " nodes is not definite");
    }
  }

  /** Parallel elements give several entries for one place: adds them up. Columns are sorted. */
  private static DMatrixSparseCSC sumDuplicates(DMatrixSparseCSC m) {
    DMatrixSparseCSC out = new DMatrixSparseCSC(m.numRows, m.numCols, m.nz_length);
    int next = 0;
    for (int col = 0; col < m.numCols; col++) {
      out.col_idx[col] = next;
      for (int k = m.col_idx[col]; k < m.col_idx[col + 1]; k++) {
        if (next > out.col_idx[col] && out.nz_rows[next - 1] == m.nz_rows[k]) {
          out.nz_values[next - 1] += m.nz_values[k];
        } else {
          out.nz_rows[next] = m.nz_rows[k];
          out.nz_values[next] = m.nz_values[k];
          next++;
        }
      }
    }
    out.col_idx[m.numCols] = next;
    out.nz_length = next;
    out.indicesSorted = true;
    return out;
  }

  /** Solves for currents into nodes. */
  double[] solve(double[] amps) {
    for (int i = 0; i < n; i++) {
      rhs.data[place[i]] = amps[i];
    }
    solver.solve(rhs, answer);
    double[] volts = new double[n];
    for (int i = 0; i < n; i++) {
      volts[i] = answer.data[place[i]];
    }
    return volts;
  }

  /**
   * Greedy least-degree order (Tinney and Walker 1967, scheme 2, from memory): the node with the
   * fewest neighbours goes first, its neighbours are joined.
   */
  private static int[] leastDegreeOrder(int n, int[] a, int[] b) {
    java.util.List<java.util.Set<Integer>> near = new java.util.ArrayList<>();
    for (int i = 0; i < n; i++) {
      near.add(new java.util.HashSet<>());
    }
    for (int e = 0; e < a.length; e++) {
      if (a[e] >= 0 && b[e] >= 0 && a[e] != b[e]) {
        near.get(a[e]).add(b[e]);
        near.get(b[e]).add(a[e]);
      }
    }
    TreeSet<Long> queue = new TreeSet<>();
    for (int i = 0; i < n; i++) {
      queue.add(key(near.get(i).size(), i));
    }
    int[] place = new int[n];
    boolean[] done = new boolean[n];
    int next = 0;
    while (!queue.isEmpty()) {
      int node = (int) (queue.pollFirst() & 0xffffffffL);
      place[node] = next++;
      done[node] = true;
      java.util.Set<Integer> around = near.get(node);
      for (int i : around) {
        java.util.Set<Integer> mine = near.get(i);
        queue.remove(key(mine.size(), i));
        mine.remove(node);
        for (int j : around) {
          if (j != i) {
            mine.add(j);
          }
        }
        queue.add(key(mine.size(), i));
      }
      near.set(node, java.util.Set.of());
    }
    return place;
  }

  private static long key(int degree, int node) {
    return ((long) degree << 32) | node;
  }
}
