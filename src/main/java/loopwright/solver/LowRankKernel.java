package loopwright.solver;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Solves changed networks by low-rank changes of one factorisation: with base matrix G, changed
 * branches U and their differences D, v = v0 - Z (I + D U'Z)^-1 D U' v0, where Z = G^-1 U and v0 =
 * G^-1 i (Woodbury; Householder 1957; Bandler and Salama 1985, from memory).
 *
 * <p>Each answer is put back into Kirchhoff's current law; where it doesn't hold to {@link
 * Balance#TOLERANCE} of the currents that meet at a node, the whole matrix is factored instead.
 * That happens where a change cuts off a part of the network, since the base then says nearly
 * nothing of the cut part.
 */
final class LowRankKernel implements Kernel {

  /**
   * Changes above which factoring the sparse matrix anew costs less than the dense small one: the
   * former grows with the nodes, the latter with the cube of the changes. Measured on 215 nodes.
   */
  static final int MOST_CHANGES = 24;

  private final Network network;
  private final SparseSystem base;
  private final double[] baseSiemens;
  private final double[] baseOffset;
  private final double[] baseVolts;
  private final int[] baseA;
  private final int[] baseB;
  private final Map<Long, double[]> columns = new HashMap<>();
  private final FullKernel full;

  private Variant variant;
  private double[] siemens;
  private int[] lively;
  private int rank;
  private double[][] z;
  private int[] ua;
  private int[] ub;
  private double[] d;
  private LinearSolverDense<DMatrixRMaj> small;
  private boolean fullLoaded;
  private Variant tooFar;
  private long fallbacks;
  private long solves;

  /**
   * Factors the base once.
   *
   * @param healthy the base
   * @param point the operating point that changes start from
   * @param full factors what is changed too much
   */
  LowRankKernel(Variant healthy, OperatingPoint point, FullKernel full) {
    this.network = healthy.base();
    int count = healthy.size();
    baseA = new int[count];
    baseB = new int[count];
    for (int e = 0; e < count; e++) {
      baseA[e] = healthy.element(e).a();
      baseB[e] = healthy.element(e).b();
    }
    baseSiemens = point.siemensCopy(count);
    base = new SparseSystem(network.order(), baseA, baseB);
    base.factor(baseSiemens);
    baseOffset = point.offsetCopy(count);
    baseVolts = base.solve(OperatingPoint.offsetAmps(healthy, baseOffset, network.nodes()));
    this.full = full;
  }

  private double[] baseColumn(int into, int outOf) {
    return columns.computeIfAbsent(
        ((long) into << 32) | (outOf & 0xffffffffL),
        k -> {
          double[] amps = new double[network.nodes()];
          if (into >= 0) {
            amps[into] += 1;
          }
          if (outOf >= 0) {
            amps[outOf] -= 1;
          }
          return base.solve(amps);
        });
  }

  @Override
  public void load(Variant variant, double[] siemens, int[] lively) {
    this.variant = variant;
    this.siemens = siemens;
    this.lively = lively;
    fullLoaded = false;
    if (variant == tooFar) {
      loadFull();
      return;
    }
    tooFar = null;
    int[] a = new int[16];
    int[] b = new int[16];
    double[] delta = new double[16];
    int k = 0;
    int common = baseSiemens.length;
    for (int e : lively) {
      Element element = variant.element(e);
      if (k + 2 > a.length) {
        a = Arrays.copyOf(a, 2 * a.length);
        b = Arrays.copyOf(b, 2 * b.length);
        delta = Arrays.copyOf(delta, 2 * delta.length);
      }
      if (e < common && element.a() == baseA[e] && element.b() == baseB[e]) {
        double change = siemens[e] - baseSiemens[e];
        if (Math.abs(change) > 1e-13 * baseSiemens[e]) {
          a[k] = element.a();
          b[k] = element.b();
          delta[k++] = change;
        }
        continue;
      }
      if (e < common && baseSiemens[e] != 0) {
        a[k] = baseA[e];
        b[k] = baseB[e];
        delta[k++] = -baseSiemens[e];
      }
      if (siemens[e] != 0) {
        a[k] = element.a();
        b[k] = element.b();
        delta[k++] = siemens[e];
      }
    }
    rank = k;
    ua = a;
    ub = b;
    d = delta;
    if (k > MOST_CHANGES) {
      loadFull();
      return;
    }
    z = new double[k][];
    for (int i = 0; i < k; i++) {
      z[i] = baseColumn(a[i], b[i]);
    }
    if (k > 0) {
      DMatrixRMaj m = new DMatrixRMaj(k, k);
      for (int i = 0; i < k; i++) {
        for (int j = 0; j < k; j++) {
          m.data[i * k + j] = d[i] * across(z[j], a[i], b[i]) + (i == j ? 1 : 0);
        }
      }
      small = LinearSolverFactory_DDRM.lu(k);
      if (!small.setA(m)) {
        loadFull();
      }
    }
  }

  private void loadFull() {
    if (!fullLoaded) {
      full.load(variant, siemens, lively);
      fullLoaded = true;
      fallbacks++;
    }
  }

  private static double at(double[] volts, int node) {
    return node >= 0 ? volts[node] : 0;
  }

  private static double across(double[] volts, int a, int b) {
    return at(volts, a) - at(volts, b);
  }

  @Override
  public boolean holds(double[] loaded) {
    return loaded == siemens;
  }

  @Override
  public double[] solve(double[] offset) {
    solves++;
    return fullLoaded ? full.solve(offset) : changed(unchanged(offset));
  }

  /** Volts of the base with these offsets: those with its own, and what the differences add. */
  private double[] unchanged(double[] offset) {
    double[] volts = baseVolts.clone();
    int count = 0;
    for (int e : lively) {
      Element element = variant.element(e);
      double before = e < baseOffset.length ? baseOffset[e] : 0;
      boolean same = e < baseA.length && element.a() == baseA[e] && element.b() == baseB[e];
      if (same ? offset[e] == before : offset[e] == 0 && before == 0) {
        continue;
      }
      if (++count > MOST_CHANGES) {
        return base.solve(OperatingPoint.offsetAmps(variant, offset, volts.length));
      }
      if (same) {
        add(before - offset[e], baseColumn(element.a(), element.b()), volts);
      } else {
        add(-offset[e], baseColumn(element.a(), element.b()), volts);
        if (before != 0) {
          add(before, baseColumn(baseA[e], baseB[e]), volts);
        }
      }
    }
    return volts;
  }

  private static void add(double factor, double[] column, double[] volts) {
    for (int i = 0; i < volts.length; i++) {
      volts[i] += factor * column[i];
    }
  }

  @Override
  public void factorAnew() {
    tooFar = variant;
    loadFull();
  }

  @Override
  public double[] column(int into, int outOf) {
    if (fullLoaded) {
      return full.column(into, outOf);
    }
    double[] volts = changed(baseColumn(into, outOf).clone());
    double[] amps = new double[network.nodes()];
    if (into >= 0) {
      amps[into] += 1;
    }
    if (outOf >= 0) {
      amps[outOf] -= 1;
    }
    if (!meets(volts, amps)) {
      loadFull();
      return full.column(into, outOf);
    }
    return volts;
  }

  private double[] changed(double[] v0) {
    if (rank == 0) {
      return v0;
    }
    DMatrixRMaj right = new DMatrixRMaj(rank, 1);
    for (int i = 0; i < rank; i++) {
      right.data[i] = d[i] * across(v0, ua[i], ub[i]);
    }
    DMatrixRMaj w = new DMatrixRMaj(rank, 1);
    small.solve(right, w);
    for (int i = 0; i < rank; i++) {
      double wi = w.data[i];
      if (wi != 0) {
        add(-wi, z[i], v0);
      }
    }
    return v0;
  }

  @Override
  public boolean addsUp(double[] volts, double[] offset) {
    return fullLoaded || meets(volts, OperatingPoint.offsetAmps(variant, offset, volts.length));
  }

  /**
   * Whether volts answer to Kirchhoff's current law with these currents into the nodes. What is
   * left over is solved for and added to them first, as often as that may help.
   */
  private boolean meets(double[] volts, double[] amps) {
    double allowed = 1;
    Balance balance = Balance.of(variant, siemens, volts, amps);
    for (int again = 0; !(balance.worst() <= allowed); again++) {
      if (again == MOST_REFINED) {
        return false;
      }
      add(1, changed(base.solve(balance.left())), volts);
      balance = Balance.of(variant, siemens, volts, amps);
      // What had to be refined hangs on a part that is cut off, where a trifle of current makes
      // volts: it has to be better than what was right at once.
      allowed = REFINED;
    }
    return true;
  }

  /** Share of {@link Balance#TOLERANCE} that a refined answer may leave over. */
  private static final double REFINED = 0.02;

  /** Most times that an answer is refined before the matrix is factored anew. */
  private static final int MOST_REFINED = 3;

  /** How many linear steps had to factor anew. */
  long fallbacks() {
    return fallbacks;
  }

  /** How many linear systems were solved. */
  long solves() {
    return solves;
  }
}
