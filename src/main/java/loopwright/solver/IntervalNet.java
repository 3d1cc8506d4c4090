package loopwright.solver;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A small network whose values are known only within limits, everything that can stand two ways
 * standing fast. All its laws grow with the volts, so each choice of values has exactly one
 * solution, and it moves steadily with the values. A box that holds the solution of the middle and
 * that the interval iteration maps into its own inside holds the solutions of all choices: on the
 * way from the middle to any other choice the solution would have to cross the box's edge, where it
 * cannot be (after Krawczyk 1969; for structures Neumaier and Pownuk 2007; both from memory).
 *
 * <p>An edge obeys i = (v - E) / r, or the filament's law. Its departure from the middle of its
 * limits is put into the network as a current J, which is both (g - g0) (v - E) - g0 (E - E0) and
 * -g0 ((r - r0) i + (E - E0)): the first is narrow for loads, the second for what is small in its
 * loop, and J lies in both. For a filament the slope between the middle and any other volts stands
 * in for g; near the knee where it begins to glow also its chord v / i. Sums are not rounded
 * outward; boxes are widened by far more than rounding.
 */
final class IntervalNet {

  /** Steps in which a box must have been mapped into itself. */
  private static final int MOST_STEPS = 80;

  /** Steps of narrowing after that. */
  private static final int NARROWING = 5;

  /** Factor by which a box that hardly grows any more is widened. */
  private static final double GROWTH = 1.02;

  /** Relative growth in one step below which a box hardly grows. */
  private static final double NEARLY = 0.002;

  /** Times the volts at which a filament begins to glow, below which its chord is looked at. */
  private static final double NEAR_KNEE = 6;

  /** Steps after which growth must fall from step to step. */
  private static final int PATIENCE = 8;

  /** Share of the growth of the step before above which growth doesn't fall. */
  private static final double TIRING = 0.99;

  /** Volts below which growth doesn't matter. */
  private static final double SMALL = 1e-6;

  /** Floor of each box in volts or amperes, against rounding. */
  private static final double ROUNDING = 1e-10;

  /** Volts or amperes at which the iteration has plainly run away. */
  private static final double RUNAWAY = 1e5;

  /** Halvings of a value's limits when no box is found. */
  private static final int MOST_HALVINGS = 3;

  final int nodes;
  final int edges;
  final int[] a;
  final int[] b;
  final double[] rLow;
  final double[] rHigh;
  final double[] eLow;
  final double[] eHigh;
  final double[] ratedVolts;
  final double[] ampsLow;
  final double[] ampsHigh;
  final double[] leak;

  // The middle.
  private double[] g0;
  private double[] r0;
  private double[] e0;
  private double[] v0;
  private double[] i0;
  private boolean[] chord;
  private double[][] green;
  private double[] x0;
  private DMatrixRMaj inverse;

  // What was worked out.
  private Optional<Box> box;
  private Optional<Box> adjoint;
  private int adjointOf;

  /**
   * Makes an empty net.
   *
   * @param nodes number of nodes besides the reference, which is -1
   * @param edges number of edges
   */
  IntervalNet(int nodes, int edges) {
    this.nodes = nodes;
    this.edges = edges;
    a = new int[edges];
    b = new int[edges];
    rLow = new double[edges];
    rHigh = new double[edges];
    eLow = new double[edges];
    eHigh = new double[edges];
    ratedVolts = new double[edges];
    ampsLow = new double[edges];
    ampsHigh = new double[edges];
    leak = new double[nodes];
  }

  private IntervalNet(IntervalNet other) {
    nodes = other.nodes;
    edges = other.edges;
    a = other.a;
    b = other.b;
    leak = other.leak;
    ratedVolts = other.ratedVolts;
    rLow = other.rLow.clone();
    rHigh = other.rHigh.clone();
    eLow = other.eLow.clone();
    eHigh = other.eHigh.clone();
    ampsLow = other.ampsLow.clone();
    ampsHigh = other.ampsHigh.clone();
  }

  /** Limits of volts and amperes of every edge. */
  record Box(double[] vLow, double[] vHigh, double[] iLow, double[] iHigh) {

    double mostAmps(int e) {
      return Math.max(Math.abs(iLow[e]), Math.abs(iHigh[e]));
    }

    double leastAmps(int e) {
      return least(iLow[e], iHigh[e]);
    }

    private static double least(double low, double high) {
      return low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
    }
  }

  /** Whether this edge obeys the filament's law: r is its cold resistance, amps the rated ones. */
  private boolean filament(int e) {
    return ratedVolts[e] > 0;
  }

  // ---- the middle ---------------------------------------------------------------------------

  private void middle() {
    if (green != null) {
      return;
    }
    g0 = new double[edges];
    r0 = new double[edges];
    e0 = new double[edges];
    v0 = new double[edges];
    i0 = new double[edges];
    chord = new boolean[edges];
    for (int e = 0; e < edges; e++) {
      e0[e] = (eLow[e] + eHigh[e]) / 2;
      g0[e] = 1 / Math.sqrt(rLow[e] * rHigh[e]);
    }
    solveMiddle();
    for (int e = 0; e < edges; e++) {
      if (filament(e)) {
        chord[e] = Math.abs(v0[e]) < NEAR_KNEE * knee(e);
        if (chord[e]) {
          g0[e] = 1 / Math.sqrt(leastChord(e, v0[e], v0[e]) * mostChord(e, v0[e], v0[e]));
        }
        continue;
      }
      boolean byAmps = g0[e] * green[e][e] > 0.5;
      g0[e] = byAmps ? 2 / (rLow[e] + rHigh[e]) : (1 / rLow[e] + 1 / rHigh[e]) / 2;
    }
    solveMiddle();
    recentre();
  }

  /**
   * Puts the slope of each filament into the middle of what it may become, as a few steps show it.
   * The middle's volts and amperes stay as they are.
   */
  private void recentre() {
    for (int e = 0; e < edges; e++) {
      r0[e] = 1 / g0[e];
    }
    double[][] seen = new double[2][];
    enclose(v0, i0, null, PROBING, seen);
    boolean any = false;
    for (int e = 0; e < edges; e++) {
      if (filament(e)) {
        double low = v0[e] + Math.min(0, seen[0][e]);
        double high = v0[e] + Math.max(0, seen[1][e]);
        g0[e] =
            chord[e]
                ? (1 / mostChord(e, low, high) + 1 / leastChord(e, low, high)) / 2
                : (leastSlope(e, low, high) + mostSlope(e, low, high)) / 2;
        r0[e] = 1 / g0[e];
        any = true;
      }
    }
    if (any) {
      invert();
    }
  }

  /** Steps after which the slopes of filaments are looked at. */
  private static final int PROBING = 5;

  /** Solves the middle with the present conductances, filaments closing in step by step. */
  private void solveMiddle() {
    double[] offset = new double[edges];
    boolean bent = false;
    for (int step = 0; step < 60; step++) {
      for (int e = 0; e < edges; e++) {
        if (chord[e]) {
          offset[e] = 0;
        } else if (filament(e)) {
          bent = true;
          double amps = (ampsLow[e] + ampsHigh[e]) / 2;
          double cold = (rLow[e] + rHigh[e]) / 2;
          double v = step == 0 && v0[e] == 0 ? ratedVolts[e] : v0[e];
          g0[e] = Laws.filamentSlope(v, ratedVolts[e], amps, cold);
          offset[e] = Laws.filamentAmps(v, ratedVolts[e], amps, cold) - g0[e] * v;
        } else {
          offset[e] = -g0[e] * e0[e];
        }
      }
      double[] x = solve(offset);
      x0 = x;
      double change = 0;
      for (int e = 0; e < edges; e++) {
        double v = at(x, a[e]) - at(x, b[e]);
        change = Math.max(change, Math.abs(v - v0[e]));
        v0[e] = v;
        i0[e] = g0[e] * v + offset[e];
      }
      if (!bent || (step > 0 && change < 1e-11)) {
        break;
      }
    }
    invert();
  }

  private static double at(double[] x, int node) {
    return node >= 0 ? x[node] : 0;
  }

  /** Volts of the nodes for these offsets at the present slopes. */
  private double[] solve(double[] offset) {
    DMatrixRMaj amps = new DMatrixRMaj(nodes, 1);
    for (int e = 0; e < edges; e++) {
      if (a[e] >= 0) {
        amps.add(a[e], 0, -offset[e]);
      }
      if (b[e] >= 0) {
        amps.add(b[e], 0, offset[e]);
      }
    }
    DMatrixRMaj x = new DMatrixRMaj(nodes, 1);
    if (nodes > 0) {
      LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(nodes);
      if (!solver.setA(matrix())) {
        throw new ArithmeticException("nodal matrix of a reduced network is singular");
      }
      solver.solve(amps, x);
    }
    return x.data;
  }

  private DMatrixRMaj matrix() {
    DMatrixRMaj k = new DMatrixRMaj(nodes, nodes);
    for (int i = 0; i < nodes; i++) {
      k.set(i, i, leak[i]);
    }
    for (int e = 0; e < edges; e++) {
      stamp(k, a[e], b[e], g0[e]);
    }
    return k;
  }

  /** Inverts the nodal matrix and keeps the volts of all edges per ampere along each. */
  private void invert() {
    inverse = new DMatrixRMaj(nodes, nodes);
    if (nodes > 0 && !CommonOps_DDRM.invertSPD(matrix(), inverse)) {
      throw new ArithmeticException("nodal matrix of a reduced network is singular");
    }
    green = new double[edges][edges];
    for (int e = 0; e < edges; e++) {
      for (int f = 0; f <= e; f++) {
        double z =
            in(inverse, a[e], a[f])
                - in(inverse, a[e], b[f])
                - in(inverse, b[e], a[f])
                + in(inverse, b[e], b[f]);
        green[e][f] = z;
        green[f][e] = z;
      }
    }
  }

  private static double in(DMatrixRMaj m, int i, int j) {
    return i < 0 || j < 0 ? 0 : m.unsafe_get(i, j);
  }

  private static void stamp(DMatrixRMaj k, int i, int j, double g) {
    if (i >= 0) {
      k.add(i, i, g);
    }
    if (j >= 0) {
      k.add(j, j, g);
    }
    if (i >= 0 && j >= 0) {
      k.add(i, j, -g);
      k.add(j, i, -g);
    }
  }

  // ---- boxes ----------------------------------------------------------------------------------

  /** Limits of all volts and amperes; empty if none were found. */
  Optional<Box> box() {
    if (box == null) {
      middle();
      box = enclose(v0, i0, null, MOST_STEPS, new double[2][]);
    }
    return box;
  }

  /**
   * Limits of all volts and amperes, wide ones where the iteration from the middle finds none: no
   * volts in a passive network exceed those of all sources together, and what the map makes of a
   * box that holds every solution holds them too.
   */
  Box anyBox() {
    Optional<Box> closer = box();
    if (closer.isPresent()) {
      return closer.get();
    }
    if (wide == null) {
      wide = narrowed();
    }
    return wide;
  }

  private Box wide;

  /** Steps in which the widest box is narrowed. */
  private static final int NARROWING_FROM_AFAR = 40;

  private Box narrowed() {
    double most = sources();
    double[][] d = new double[4][edges];
    for (int e = 0; e < edges; e++) {
      d[0][e] = -most - v0[e];
      d[1][e] = most - v0[e];
      double amps =
          filament(e)
              ? Laws.filamentAmps(most, ratedVolts[e], ampsHigh[e], rLow[e])
              : (most + Math.max(Math.abs(eLow[e]), Math.abs(eHigh[e]))) / rLow[e];
      d[2][e] = -amps - i0[e];
      d[3][e] = amps - i0[e];
    }
    double[] low = new double[edges];
    double[] high = new double[edges];
    double[][] next = new double[4][edges];
    for (int step = 0; step < NARROWING_FROM_AFAR; step++) {
      for (int e = 0; e < edges; e++) {
        source(e, v0, i0, d[0], d[1], d[2], d[3], null, low, high);
      }
      map(low, high, next);
      double shrink = 0;
      for (int e = 0; e < edges; e++) {
        double before = d[1][e] - d[0][e];
        for (int k = 0; k < 4; k += 2) {
          double l = Math.max(d[k][e], next[k][e] - ROUNDING);
          double h = Math.min(d[k + 1][e], next[k + 1][e] + ROUNDING);
          if (l <= h) {
            d[k][e] = l;
            d[k + 1][e] = h;
          }
        }
        shrink = Math.max(shrink, 1 - (d[1][e] - d[0][e]) / (before + SMALL));
      }
      if (shrink < 0.01) {
        break;
      }
    }
    for (int e = 0; e < edges; e++) {
      d[0][e] += v0[e];
      d[1][e] += v0[e];
      d[2][e] += i0[e];
      d[3][e] += i0[e];
    }
    return new Box(d[0], d[1], d[2], d[3]);
  }

  /**
   * Limits of the volts of every node against the reference, and the ohms it shows there in the
   * middle.
   *
   * @param low least volts
   * @param high greatest volts
   * @param ohms ohms to the reference
   */
  record NodeVolts(double[] low, double[] high, double[] ohms) {}

  /** The volts of all nodes that go with a box. */
  NodeVolts nodeVolts(Box within) {
    double[] low = new double[edges];
    double[] high = new double[edges];
    double[][] d = new double[4][edges];
    for (int e = 0; e < edges; e++) {
      d[0][e] = within.vLow()[e] - v0[e];
      d[1][e] = within.vHigh()[e] - v0[e];
      d[2][e] = within.iLow()[e] - i0[e];
      d[3][e] = within.iHigh()[e] - i0[e];
    }
    for (int e = 0; e < edges; e++) {
      source(e, v0, i0, d[0], d[1], d[2], d[3], null, low, high);
    }
    NodeVolts volts = new NodeVolts(new double[nodes], new double[nodes], new double[nodes]);
    for (int i = 0; i < nodes; i++) {
      double l = x0[i] - ROUNDING;
      double h = x0[i] + ROUNDING;
      for (int f = 0; f < edges; f++) {
        double z = in(inverse, i, b[f]) - in(inverse, i, a[f]);
        l += z >= 0 ? z * low[f] : z * high[f];
        h += z >= 0 ? z * high[f] : z * low[f];
      }
      volts.low[i] = l;
      volts.high[i] = h;
      volts.ohms[i] = inverse.unsafe_get(i, i);
    }
    return volts;
  }

  /** Limits of what one ampere into an edge's first end and out of its second does to all edges. */
  private Optional<Box> adjoint(int edge, Box primal) {
    if (adjoint == null || adjointOf != edge) {
      double[] v = new double[edges];
      double[] i = new double[edges];
      for (int e = 0; e < edges; e++) {
        v[e] = green[e][edge];
        i[e] = g0[e] * v[e];
      }
      adjoint = enclose(v, i, primal, MOST_STEPS, new double[2][]);
      adjointOf = edge;
    }
    return adjoint;
  }

  /**
   * Iterates from the middle; with a primal box given, the linearised network around it.
   *
   * @param seen where the departures of the volts are put that were reached
   */
  private Optional<Box> enclose(
      double[] vMid, double[] iMid, Box primal, int steps, double[][] seen) {
    double[] dvLow = new double[edges];
    double[] dvHigh = new double[edges];
    double[] diLow = new double[edges];
    double[] diHigh = new double[edges];
    double[] low = new double[edges];
    double[] high = new double[edges];
    double[][] next = new double[4][edges];
    boolean inside = false;
    int narrowed = 0;
    double grew = Double.POSITIVE_INFINITY;
    seen[0] = dvLow;
    seen[1] = dvHigh;
    for (int step = 0; step < steps; step++) {
      for (int e = 0; e < edges; e++) {
        source(e, vMid, iMid, dvLow, dvHigh, diLow, diHigh, primal, low, high);
      }
      map(low, high, next);
      if (primal == null) {
        clip(vMid, next);
      }
      boolean within = step > 0;
      double growth = 0;
      double shrink = 0;
      for (int e = 0; e < edges; e++) {
        within &=
            next[0][e] > dvLow[e]
                && next[1][e] < dvHigh[e]
                && next[2][e] > diLow[e]
                && next[3][e] < diHigh[e];
        double before = dvHigh[e] - dvLow[e];
        double after = next[1][e] - next[0][e];
        growth = Math.max(growth, (after - before) / (before + SMALL));
        shrink = Math.max(shrink, (before - after) / (before + SMALL));
        if (after > RUNAWAY || next[3][e] - next[2][e] > RUNAWAY) {
          return Optional.empty();
        }
      }
      if (!within && step > PATIENCE && growth > NEARLY && growth > TIRING * grew) {
        return Optional.empty();
      }
      grew = growth;
      if (inside && !within) {
        break;
      }
      inside |= within;
      // Near its resting place the box is widened a little, to see it mapped into itself.
      double wider = !inside && growth < NEARLY ? GROWTH : 1;
      for (int e = 0; e < edges; e++) {
        dvLow[e] = wider * next[0][e] - ROUNDING;
        dvHigh[e] = wider * next[1][e] + ROUNDING;
        diLow[e] = wider * next[2][e] - ROUNDING;
        diHigh[e] = wider * next[3][e] + ROUNDING;
      }
      if (inside) {
        narrowed++;
        if (narrowed > NARROWING || shrink < 0.01) {
          break;
        }
      }
    }
    if (!inside) {
      return Optional.empty();
    }
    for (int e = 0; e < edges; e++) {
      dvLow[e] += vMid[e];
      dvHigh[e] += vMid[e];
      diLow[e] += iMid[e];
      diHigh[e] += iMid[e];
    }
    return Optional.of(new Box(dvLow, dvHigh, diLow, diHigh));
  }

  /** No volts in a passive network exceed those of all sources together. */
  private void clip(double[] vMid, double[][] next) {
    double most = sources();
    for (int e = 0; e < edges; e++) {
      next[0][e] = Math.max(next[0][e], -most - vMid[e]);
      next[1][e] = Math.min(next[1][e], most - vMid[e]);
    }
  }

  /** Volts of all sources together. */
  private double sources() {
    double most = 0;
    for (int e = 0; e < edges; e++) {
      most += Math.max(Math.abs(eLow[e]), Math.abs(eHigh[e]));
    }
    return most;
  }

  /** The current J that an edge's departure from its middle stands for. */
  private void source(
      int e,
      double[] vMid,
      double[] iMid,
      double[] dvLow,
      double[] dvHigh,
      double[] diLow,
      double[] diHigh,
      Box primal,
      double[] low,
      double[] high) {
    boolean linearised = primal != null;
    double leastOhms = rLow[e];
    double mostOhms = rHigh[e];
    low[e] = Double.NEGATIVE_INFINITY;
    high[e] = Double.POSITIVE_INFINITY;
    if (filament(e)) {
      double vLow = linearised ? primal.vLow()[e] : vMid[e] + Math.min(0, dvLow[e]);
      double vHigh = linearised ? primal.vHigh()[e] : vMid[e] + Math.max(0, dvHigh[e]);
      double sLow = leastSlope(e, vLow, vHigh);
      double sHigh = mostSlope(e, vLow, vHigh);
      if (linearised) {
        leastOhms = 1 / sHigh;
        mostOhms = 1 / sLow;
      } else {
        double one = Laws.filamentAmps(vMid[e], ratedVolts[e], ampsLow[e], rHigh[e]) - iMid[e];
        double two = Laws.filamentAmps(vMid[e], ratedVolts[e], ampsHigh[e], rLow[e]) - iMid[e];
        product(sLow - g0[e], sHigh - g0[e], dvLow[e], dvHigh[e], e, low, high);
        low[e] += Math.min(one, two);
        high[e] += Math.max(one, two);
        if (!chord[e]) {
          return;
        }
        leastOhms = leastChord(e, vLow, vHigh);
        mostOhms = mostChord(e, vLow, vHigh);
      }
    }
    double sourceLow = linearised ? 0 : eLow[e];
    double sourceHigh = linearised ? 0 : eHigh[e];
    double deLow = linearised ? 0 : eLow[e] - e0[e];
    double deHigh = linearised ? 0 : eHigh[e] - e0[e];
    double l = low[e];
    double h = high[e];
    product(
        leastOhms - r0[e], mostOhms - r0[e], iMid[e] + diLow[e], iMid[e] + diHigh[e], e, low, high);
    double byAmpsLow = -g0[e] * (high[e] + deHigh);
    double byAmpsHigh = -g0[e] * (low[e] + deLow);
    product(
        1 / mostOhms - g0[e],
        1 / leastOhms - g0[e],
        vMid[e] + dvLow[e] - sourceHigh,
        vMid[e] + dvHigh[e] - sourceLow,
        e,
        low,
        high);
    // What the middle's own amperes differ from its slope through zero.
    double shift = filament(e) && !linearised ? g0[e] * vMid[e] - iMid[e] : 0;
    low[e] = Math.max(Math.max(l, byAmpsLow + shift), low[e] - g0[e] * deHigh + shift);
    high[e] = Math.min(Math.min(h, byAmpsHigh + shift), high[e] - g0[e] * deLow + shift);
    if (low[e] > high[e]) {
      // The same number twice, but for rounding.
      double mid = (low[e] + high[e]) / 2;
      low[e] = mid;
      high[e] = mid;
    }
  }

  private static void product(
      double xLow, double xHigh, double yLow, double yHigh, int e, double[] low, double[] high) {
    double p = xLow * yLow;
    double q = xLow * yHigh;
    double r = xHigh * yLow;
    double s = xHigh * yHigh;
    low[e] = Math.min(Math.min(p, q), Math.min(r, s));
    high[e] = Math.max(Math.max(p, q), Math.max(r, s));
  }

  /** dv = -G J and di = g0 dv + J, by middle and reach of each J. */
  private void map(double[] low, double[] high, double[][] next) {
    double[] middle = new double[edges];
    double[] reach = new double[edges];
    for (int f = 0; f < edges; f++) {
      middle[f] = (low[f] + high[f]) / 2;
      reach[f] = (high[f] - low[f]) / 2;
    }
    for (int e = 0; e < edges; e++) {
      double[] row = green[e];
      double m = 0;
      double r = 0;
      for (int f = 0; f < edges; f++) {
        m -= row[f] * middle[f];
        r += Math.abs(row[f]) * reach[f];
      }
      next[0][e] = m - r;
      next[1][e] = m + r;
      double own = g0[e] * row[e];
      double mi = middle[e] + g0[e] * m;
      double ri = g0[e] * r + (Math.abs(1 - own) - own) * reach[e];
      next[2][e] = mi - ri;
      next[3][e] = mi + ri;
    }
  }

  /** Volts at which a filament begins to glow: below, its cold resistance rules. */
  private double knee(int e) {
    double cold = (rLow[e] + rHigh[e]) / 2;
    double amps = (ampsLow[e] + ampsHigh[e]) / 2;
    return ratedVolts[e] * Math.pow(cold * amps / ratedVolts[e], 1 / (1 - Laws.FILAMENT_EXPONENT));
  }

  private double leastChord(int e, double vLow, double vHigh) {
    return Math.max(rLow[e], hotChord(e, Box.least(vLow, vHigh), ampsHigh[e]));
  }

  private double mostChord(int e, double vLow, double vHigh) {
    return Math.max(rHigh[e], hotChord(e, Math.max(Math.abs(vLow), Math.abs(vHigh)), ampsLow[e]));
  }

  /** Volts over amperes of a glowing filament. */
  private double hotChord(int e, double volts, double amps) {
    return volts == 0
        ? 0
        : volts / (amps * Math.pow(volts / ratedVolts[e], Laws.FILAMENT_EXPONENT));
  }

  private double mostSlope(int e, double vLow, double vHigh) {
    double least = Box.least(vLow, vHigh);
    double hot = ampsHigh[e] * Math.pow(least / ratedVolts[e], Laws.FILAMENT_EXPONENT);
    if (least / rHigh[e] <= hot) {
      return 1 / rLow[e];
    }
    return Laws.FILAMENT_EXPONENT * hot / least;
  }

  private double leastSlope(int e, double vLow, double vHigh) {
    double most = Math.max(Math.abs(vLow), Math.abs(vHigh));
    if (most == 0) {
      return 1 / rHigh[e];
    }
    double hot = ampsLow[e] * Math.pow(most / ratedVolts[e], Laws.FILAMENT_EXPONENT);
    return Math.min(1 / rHigh[e], Laws.FILAMENT_EXPONENT * hot / most);
  }

  // ---- extremes -------------------------------------------------------------------------------

  /**
   * Limits of the volts across one edge. Values along which these volts are seen to only grow or
   * only fall are put at their ends, and the rest is enclosed again; where all are, the limits are
   * exact.
   *
   * @return least and greatest volts; empty if no limits were found
   */
  Optional<double[]> volts(int edge) {
    double low = extreme(edge, true, 0);
    double high = Double.isNaN(low) ? low : extreme(edge, false, 0);
    return Double.isNaN(low) || Double.isNaN(high)
        ? Optional.empty()
        : Optional.of(new double[] {low, high});
  }

  private double extreme(int edge, boolean lowest, int halvings) {
    Optional<Box> all = box();
    if (all.isEmpty()) {
      double closer = halved(edge, lowest, halvings);
      return !Double.isNaN(closer)
          ? closer
          : lowest ? anyBox().vLow()[edge] : anyBox().vHigh()[edge];
    }
    double bound = lowest ? all.get().vLow()[edge] : all.get().vHigh()[edge];
    if (!open()) {
      return bound;
    }
    Optional<Box> slopes = adjoint(edge, all.get());
    if (slopes.isEmpty()) {
      return bound;
    }
    IntervalNet corner = new IntervalNet(this);
    if (!corner.settle(all.get(), slopes.get(), lowest)) {
      return bound;
    }
    double closer = corner.extreme(edge, lowest, halvings);
    if (Double.isNaN(closer)) {
      return bound;
    }
    return lowest ? Math.max(bound, closer) : Math.min(bound, closer);
  }

  /** Whether any value is still open. */
  private boolean open() {
    for (int e = 0; e < edges; e++) {
      if (rHigh[e] > rLow[e] || eHigh[e] > eLow[e] || ampsHigh[e] > ampsLow[e]) {
        return true;
      }
    }
    return false;
  }

  /** Puts every value at the end that its slope names, where its sign is sure; true if any. */
  private boolean settle(Box box, Box adjoint, boolean lowest) {
    boolean any = false;
    for (int e = 0; e < edges; e++) {
      int z = sign(adjoint.vLow()[e], adjoint.vHigh()[e]);
      if (filament(e)) {
        // Volts change by -z di/dp: more rated amps let more through, more cold ohms less.
        int v = sign(box.vLow()[e], box.vHigh()[e]);
        if (z * v != 0) {
          any |= end(ampsLow, ampsHigh, e, (-z * v > 0) != lowest);
          any |= end(rLow, rHigh, e, (z * v > 0) != lowest);
        }
        continue;
      }
      int i = sign(box.iLow()[e], box.iHigh()[e]);
      if (z * i != 0) {
        any |= end(rLow, rHigh, e, (z * i > 0) != lowest);
      }
      if (z != 0) {
        any |= end(eLow, eHigh, e, (z > 0) != lowest);
      }
    }
    return any;
  }

  private static int sign(double low, double high) {
    return low > 0 ? 1 : high < 0 ? -1 : 0;
  }

  private static boolean end(double[] low, double[] high, int e, boolean atHigh) {
    if (low[e] == high[e]) {
      return false;
    }
    if (atHigh) {
      low[e] = high[e];
    } else {
      high[e] = low[e];
    }
    return true;
  }

  /** Halves the limits of the widest resistance and takes the farther of both halves. */
  private double halved(int edge, boolean lowest, int halvings) {
    if (halvings >= MOST_HALVINGS) {
      return Double.NaN;
    }
    int widest = -1;
    double most = 1.05;
    for (int e = 0; e < edges; e++) {
      double share = Math.min(1, Math.max(1e-3, g0[e] * green[e][e]));
      double width = Math.pow(rHigh[e] / rLow[e], Math.min(share, 1 - share) + 0.01);
      if (width > most) {
        most = width;
        widest = e;
      }
    }
    if (widest < 0) {
      return Double.NaN;
    }
    double cut = Math.sqrt(rLow[widest] * rHigh[widest]);
    IntervalNet lower = new IntervalNet(this);
    lower.rHigh[widest] = cut;
    IntervalNet upper = new IntervalNet(this);
    upper.rLow[widest] = cut;
    double one = lower.extreme(edge, lowest, halvings + 1);
    double two = upper.extreme(edge, lowest, halvings + 1);
    return lowest ? Math.min(one, two) : Math.max(one, two);
  }
}
