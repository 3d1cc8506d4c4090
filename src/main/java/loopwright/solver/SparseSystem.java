package loopwright.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * A symmetric positive definite conductance matrix, ordered by least degree and factored by EJML's
 * sparse Cholesky. Where the non-zeros lie is worked out once; each factorisation then only puts in
 * numbers.
 *
 * <p>Every node has a leak of {@link #LEAK} to the reference: dirt and damp do that on a vehicle,
 * and it gives a floating network a definite answer.
 */
final class SparseSystem {

  /** Leak of a node to the body in siemens: a gigaohm of dirt. Common practice, not critical. */
  static final double LEAK = 1e-9;

  private final int n;
  private final int[] place;
  private final int[] diagonal;
  private int count;
  private int[] atA;
  private int[] atB;
  private int[] atAb;
  private int[] atBa;
  private final DMatrixSparseCSC matrix;
  private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
      LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);
  private final DMatrixRMaj rhs;
  private final DMatrixRMaj answer;
  private boolean locked;

  /**
   * Lays out the matrix of a network.
   *
   * @param place place of each node in the order of elimination
   * @param a node at one end of each element, negative for the reference
   * @param b node at the other end
   */
  SparseSystem(int[] place, int[] a, int[] b) {
    this.n = place.length;
    this.count = a.length;
    this.place = place;
    this.rhs = new DMatrixRMaj(n, 1);
    this.answer = new DMatrixRMaj(n, 1);
    List<TreeSet<Integer>> columns = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      columns.add(new TreeSet<>(Set.of(i)));
    }
    int entries = n;
    for (int e = 0; e < count; e++) {
      if (a[e] >= 0 && b[e] >= 0 && a[e] != b[e]) {
        entries += columns.get(place[b[e]]).add(place[a[e]]) ? 1 : 0;
        entries += columns.get(place[a[e]]).add(place[b[e]]) ? 1 : 0;
      }
    }
    matrix = new DMatrixSparseCSC(n, n, entries);
    int next = 0;
    for (int col = 0; col < n; col++) {
      matrix.col_idx[col] = next;
      for (int row : columns.get(col)) {
        matrix.nz_rows[next++] = row;
      }
    }
    matrix.col_idx[n] = next;
    matrix.nz_length = next;
    matrix.indicesSorted = true;
    diagonal = new int[n];
    for (int i = 0; i < n; i++) {
      diagonal[i] = entry(i, i);
    }
    if (!aim(a, b)) {
      throw new IllegalStateException("the layout misses an entry of its own elements");
    }
  }

  /**
   * Points the elements of another network with the same nodes at their entries.
   *
   * @return false if one of them lies outside this layout; nothing has changed then
   */
  boolean aim(int[] a, int[] b) {
    int m = a.length;
    int[] newA = new int[m];
    int[] newB = new int[m];
    int[] newAb = new int[m];
    int[] newBa = new int[m];
    for (int e = 0; e < m; e++) {
      boolean loop = a[e] == b[e];
      newA[e] = loop || a[e] < 0 ? -1 : diagonal[place[a[e]]];
      newB[e] = loop || b[e] < 0 ? -1 : diagonal[place[b[e]]];
      boolean both = !loop && a[e] >= 0 && b[e] >= 0;
      newAb[e] = both ? entry(place[a[e]], place[b[e]]) : -1;
      newBa[e] = both ? entry(place[b[e]], place[a[e]]) : -1;
      if (both && (newAb[e] < 0 || newBa[e] < 0)) {
        return false;
      }
    }
    count = m;
    atA = newA;
    atB = newB;
    atAb = newAb;
    atBa = newBa;
    return true;
  }

  /** Place of an entry in the matrix; negative where there is none. */
  private int entry(int row, int col) {
    return Arrays.binarySearch(matrix.nz_rows, matrix.col_idx[col], matrix.col_idx[col + 1], row);
  }

  /**
   * Factors the matrix of these conductances.
   *
   * @param siemens conductance by element
   * @throws IllegalStateException if it isn't positive definite, which a network of positive
   *     resistances always is
   */
  void factor(double[] siemens) {
    double[] values = matrix.nz_values;
    Arrays.fill(values, 0, matrix.nz_length, 0);
    for (int i = 0; i < n; i++) {
      values[diagonal[i]] = LEAK;
    }
    for (int e = 0; e < count; e++) {
      double g = siemens[e];
      if (g == 0) {
        continue;
      }
      if (atA[e] >= 0) {
        values[atA[e]] += g;
      }
      if (atB[e] >= 0) {
        values[atB[e]] += g;
      }
      if (atAb[e] >= 0) {
        values[atAb[e]] -= g;
        values[atBa[e]] -= g;
      }
    }
    if (!solver.setA(matrix)) {
      throw new IllegalStateException("conductance matrix of " + n + " nodes is not definite");
    }
    if (!locked) {
      solver.setStructureLocked(true);
      locked = true;
    }
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
   *
   * @return place of each node in the order
   */
  static int[] leastDegreeOrder(int n, int[] a, int[] b) {
    List<Set<Integer>> near = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      near.add(new HashSet<>());
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
    int next = 0;
    while (!queue.isEmpty()) {
      int node = (int) (queue.pollFirst() & 0xffffffffL);
      place[node] = next++;
      Set<Integer> around = near.get(node);
      for (int i : around) {
        Set<Integer> mine = near.get(i);
        queue.remove(key(mine.size(), i));
        mine.remove(node);
        for (int j : around) {
          if (j != i) {
            mine.add(j);
          }
        }
        queue.add(key(mine.size(), i));
      }
      near.set(node, Set.of());
    }
    return place;
  }

  private static long key(int degree, int node) {
    return ((long) degree << 32) | node;
  }
}
