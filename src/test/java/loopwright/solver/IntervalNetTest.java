package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Bounds of small networks against closed forms, and against a plain second way: every corner of
 * the values' box, and draws inside it, solved by elimination and bisection written out here.
 */
class IntervalNetTest {

  private static final int REF = -1;

  /** Rounding that the boxes themselves allow for, with a few sums of it. */
  private static final double SAME = 1e-7;

  private static IntervalNet net(int nodes, int edges) {
    IntervalNet net = new IntervalNet(nodes, edges);
    java.util.Arrays.fill(net.leak, 1e-9);
    return net;
  }

  private static void resistor(IntervalNet net, int e, int a, int b, double low, double high) {
    net.a[e] = a;
    net.b[e] = b;
    net.rLow[e] = low;
    net.rHigh[e] = high;
  }

  private static void source(IntervalNet net, int e, int a, int b, double[] volts, double[] ohms) {
    resistor(net, e, a, b, ohms[0], ohms[1]);
    net.eLow[e] = volts[0];
    net.eHigh[e] = volts[1];
  }

  private static void lamp(
      IntervalNet net, int e, int a, int b, double rated, double[] amps, double[] cold) {
    resistor(net, e, a, b, cold[0], cold[1]);
    net.ratedVolts[e] = rated;
    net.ampsLow[e] = amps[0];
    net.ampsHigh[e] = amps[1];
  }

  private static double[] of(double low, double high) {
    return new double[] {low, high};
  }

  // ---- the plain second way -------------------------------------------------------------------

  /** One choice of values: ohms, source volts and rated amperes of each edge. */
  private record Choice(double[] r, double[] e, double[] amps) {}

  private static double current(IntervalNet net, Choice c, int e, double v) {
    if (net.ratedVolts[e] > 0) {
      double size = Math.abs(v);
      double hot = c.amps()[e] * Math.pow(size / net.ratedVolts[e], 0.55);
      return Math.signum(v) * Math.min(size / c.r()[e], hot);
    }
    return (v - c.e()[e]) / c.r()[e];
  }

  /** Volts of the nodes: Newton with the slope by differences, from everything at rest. */
  private static double[] solve(IntervalNet net, Choice c) {
    int n = net.nodes;
    double[] x = new double[n];
    for (int step = 0; step < 200; step++) {
      double[][] m = new double[n][n + 1];
      for (int i = 0; i < n; i++) {
        m[i][i] = net.leak[i];
        m[i][n] = -net.leak[i] * x[i];
      }
      for (int e = 0; e < net.edges; e++) {
        int a = net.a[e];
        int b = net.b[e];
        double v = (a < 0 ? 0 : x[a]) - (b < 0 ? 0 : x[b]);
        double i = current(net, c, e, v);
        double h = 1e-6 * Math.max(1e-3, Math.abs(v));
        double g = (current(net, c, e, v + h) - current(net, c, e, v - h)) / (2 * h);
        if (a >= 0) {
          m[a][a] += g;
          m[a][n] -= i;
        }
        if (b >= 0) {
          m[b][b] += g;
          m[b][n] += i;
        }
        if (a >= 0 && b >= 0) {
          m[a][b] -= g;
          m[b][a] -= g;
        }
      }
      double moved = 0;
      double[] dx = eliminate(m);
      for (int i = 0; i < n; i++) {
        x[i] += dx[i];
        moved = Math.max(moved, Math.abs(dx[i]));
      }
      if (moved < 1e-12) {
        break;
      }
    }
    return x;
  }

  private static double[] eliminate(double[][] m) {
    int n = m.length;
    for (int k = 0; k < n; k++) {
      for (int i = k + 1; i < n; i++) {
        double f = m[i][k] / m[k][k];
        for (int j = k; j <= n; j++) {
          m[i][j] -= f * m[k][j];
        }
      }
    }
    double[] x = new double[n];
    for (int i = n - 1; i >= 0; i--) {
      double s = m[i][n];
      for (int j = i + 1; j < n; j++) {
        s -= m[i][j] * x[j];
      }
      x[i] = s / m[i][i];
    }
    return x;
  }

  /** Every corner up to 2^10 of them, otherwise random ones, and some draws inside. */
  private static List<Choice> choices(IntervalNet net, Random random) {
    List<double[]> rows = new ArrayList<>();
    List<Integer> open = new ArrayList<>();
    double[][] lows = {net.rLow, net.eLow, net.ampsLow};
    double[][] highs = {net.rHigh, net.eHigh, net.ampsHigh};
    for (int k = 0; k < 3; k++) {
      for (int e = 0; e < net.edges; e++) {
        if (highs[k][e] > lows[k][e]) {
          open.add(3 * e + k);
        }
      }
    }
    int corners = open.size() <= 10 ? 1 << open.size() : 400;
    for (int c = 0; c < corners + 60; c++) {
      double[] row = new double[open.size()];
      for (int k = 0; k < row.length; k++) {
        row[k] =
            c >= corners
                ? random.nextDouble()
                : open.size() <= 10 ? (c >> k) & 1 : random.nextInt(2);
      }
      rows.add(row);
    }
    List<Choice> all = new ArrayList<>();
    for (double[] row : rows) {
      double[][] at = {net.rLow.clone(), net.eLow.clone(), net.ampsLow.clone()};
      for (int k = 0; k < row.length; k++) {
        int kind = open.get(k) % 3;
        int e = open.get(k) / 3;
        at[kind][e] = lows[kind][e] + row[k] * (highs[kind][e] - lows[kind][e]);
      }
      all.add(new Choice(at[0], at[1], at[2]));
    }
    return all;
  }

  private static double across(IntervalNet net, double[] x, int e) {
    return (net.a[e] < 0 ? 0 : x[net.a[e]]) - (net.b[e] < 0 ? 0 : x[net.b[e]]);
  }

  /** Asserts that a box holds all of these choices; returns how far inside it they reach. */
  private static double[][] holds(
      String what, IntervalNet net, IntervalNet.Box box, Random random) {
    double[][] hull = new double[4][net.edges];
    java.util.Arrays.fill(hull[0], Double.POSITIVE_INFINITY);
    java.util.Arrays.fill(hull[1], Double.NEGATIVE_INFINITY);
    java.util.Arrays.fill(hull[2], Double.POSITIVE_INFINITY);
    java.util.Arrays.fill(hull[3], Double.NEGATIVE_INFINITY);
    for (Choice c : choices(net, random)) {
      double[] x = solve(net, c);
      for (int e = 0; e < net.edges; e++) {
        double v = across(net, x, e);
        double i = current(net, c, e, v);
        hull[0][e] = Math.min(hull[0][e], v);
        hull[1][e] = Math.max(hull[1][e], v);
        hull[2][e] = Math.min(hull[2][e], i);
        hull[3][e] = Math.max(hull[3][e], i);
        if (box != null) {
          double slack = SAME * Math.max(1, Math.abs(i));
          assertThat(v)
              .as("%s: volts of edge %d", what, e)
              .isBetween(box.vLow()[e] - SAME, box.vHigh()[e] + SAME);
          assertThat(i)
              .as("%s: amperes of edge %d", what, e)
              .isBetween(box.iLow()[e] - slack, box.iHigh()[e] + slack);
        }
      }
    }
    return hull;
  }

  // ---- closed forms ---------------------------------------------------------------------------

  /** 12 to 13 V behind 0.1 ohm -- mid -- 2 to 4 ohm, then 5 to 6 ohm to ground. */
  private static IntervalNet divider() {
    IntervalNet net = net(2, 3);
    source(net, 0, 0, REF, of(12, 13), of(0.1, 0.1));
    resistor(net, 1, 0, 1, 2, 4);
    resistor(net, 2, 1, REF, 5, 6);
    return net;
  }

  @Test
  void aDividersLimitsAreThoseOfItsCorners() {
    double[] lower = divider().volts(2).orElseThrow();
    assertThat(lower[0]).isEqualTo(12 * 5 / 9.1, within(1e-6));
    assertThat(lower[1]).isEqualTo(13 * 6 / 8.1, within(1e-6));
    double[] upper = divider().volts(1).orElseThrow();
    assertThat(upper[0]).isEqualTo(12 * 2 / 8.1, within(1e-6));
    assertThat(upper[1]).isEqualTo(13 * 4 / 9.1, within(1e-6));
  }

  @Test
  void currentsOfADividerLieInItsBox() {
    IntervalNet.Box box = divider().box().orElseThrow();
    // From 12 / 10.1 to 13 / 7.1 A; the source gives them, so its own count as negative.
    for (int e = 1; e < 3; e++) {
      assertThat(box.iLow()[e]).isBetween(0.8 * 12 / 10.1, 12 / 10.1);
      assertThat(box.iHigh()[e]).isBetween(13 / 7.1, 1.2 * 13 / 7.1);
    }
    assertThat(box.leastAmps(0)).isEqualTo(-box.iHigh()[0]).isLessThan(12 / 10.1);
    assertThat(box.mostAmps(0)).isEqualTo(-box.iLow()[0]).isGreaterThan(13 / 7.1);
  }

  @Test
  void anEdgeThatMayCarryNothingHasNoLeastVolts() {
    IntervalNet.Box box = new IntervalNet.Box(of(-2, -1), of(3, -0.5), of(-4, 0), of(0.5, 2));
    assertThat(box.leastAmps(0)).isZero();
    assertThat(box.mostAmps(0)).isEqualTo(4);
    assertThat(box.leastAmps(1)).isZero();
  }

  @Test
  void turningAnEdgeRoundTurnsItsLimitsRound() {
    IntervalNet turned = divider();
    turned.a[2] = REF;
    turned.b[2] = 1;
    double[] there = divider().volts(2).orElseThrow();
    double[] back = turned.volts(2).orElseThrow();
    assertThat(back[0]).isEqualTo(-there[1], within(1e-9));
    assertThat(back[1]).isEqualTo(-there[0], within(1e-9));
  }

  @Test
  void exactValuesGiveOnePoint() {
    // 12 V -- 1 ohm -- 0 -- 3 ohm -- 1 -- 2 ohm -- ground: 2 A.
    IntervalNet net = net(2, 3);
    source(net, 0, 0, REF, of(12, 12), of(1, 1));
    resistor(net, 1, 0, 1, 3, 3);
    resistor(net, 2, 1, REF, 2, 2);
    double[] v = net.volts(2).orElseThrow();
    assertThat(v[0]).isEqualTo(4, within(1e-7));
    assertThat(v[1]).isEqualTo(4, within(1e-7));
    IntervalNet.NodeVolts nodes = net.nodeVolts(net.box().orElseThrow());
    assertThat(nodes.low()[0]).isEqualTo(10, within(1e-7));
    assertThat(nodes.high()[0]).isEqualTo(10, within(1e-7));
    assertThat(nodes.low()[1]).isEqualTo(4, within(1e-7));
    // 1 beside 5 ohm, and 2 beside 4.
    assertThat(nodes.ohms()[0]).isEqualTo(5 / 6.0, within(1e-7));
    assertThat(nodes.ohms()[1]).isEqualTo(8 / 6.0, within(1e-7));
  }

  @Test
  void ofTwoSourcesEachLiftsTheBusByItsShare() {
    // 12 to 12.6 V behind 0.02, 13.5 to 14.5 V behind 0.08 to 0.1 ohm, 1 ohm load
    IntervalNet net = net(1, 3);
    source(net, 0, 0, REF, of(12, 12.6), of(0.02, 0.02));
    source(net, 1, 0, REF, of(13.5, 14.5), of(0.08, 0.1));
    resistor(net, 2, 0, REF, 1, 1);
    double[] v = net.volts(2).orElseThrow();
    double low = (12 / 0.02 + 13.5 / 0.1) / (1 / 0.02 + 1 / 0.1 + 1);
    double high = (12.6 / 0.02 + 14.5 / 0.08) / (1 / 0.02 + 1 / 0.08 + 1);
    assertThat(v[0]).isEqualTo(low, within(1e-6));
    assertThat(v[1]).isEqualTo(high, within(1e-6));
  }

  @Test
  void aBridgeWhoseCurrentMayRunEitherWayHasLimitsOnBothSides() {
    // A nearly balanced bridge: the sign of its middle is open.
    IntervalNet net = net(3, 6);
    source(net, 0, 0, REF, of(12, 12), of(0.01, 0.01));
    resistor(net, 1, 0, 1, 9, 11);
    resistor(net, 2, 1, REF, 10, 10);
    resistor(net, 3, 0, 2, 9, 11);
    resistor(net, 4, 2, REF, 10, 10);
    resistor(net, 5, 1, 2, 5, 50);
    double[] v = net.volts(5).orElseThrow();
    double[][] hull = holds("bridge", net, net.box().orElseThrow(), new Random(3));
    assertThat(v[0]).isLessThanOrEqualTo(hull[0][5] + SAME);
    assertThat(v[1]).isGreaterThanOrEqualTo(hull[1][5] - SAME);
    assertThat(v[0]).isEqualTo(-v[1], within(1e-6));
    assertThat(v[1] - v[0]).isLessThan(1.5 * (hull[1][5] - hull[0][5]));
  }

  @Test
  void withoutASourceNothingFlows() {
    IntervalNet net = net(1, 2);
    resistor(net, 0, 0, REF, 1, 2);
    resistor(net, 1, 0, REF, 3, 5);
    double[] v = net.volts(0).orElseThrow();
    assertThat(v[0]).isEqualTo(0, within(1e-6));
    assertThat(v[1]).isEqualTo(0, within(1e-6));
  }

  @Test
  void wideLimitsOfAJointAreStillEnclosed() {
    // A joint of 1 to 20 ohm in front of a load of 5 to 7.
    IntervalNet net = net(2, 3);
    source(net, 0, 0, REF, of(12.2, 12.75), of(0.004, 0.02));
    resistor(net, 1, 0, 1, 1, 20);
    resistor(net, 2, 1, REF, 5, 7);
    double[] v = net.volts(2).orElseThrow();
    double low = 12.2 * 5 / 25.02;
    double high = 12.75 * 7 / 8.004;
    assertThat(v[0]).isBetween(low - 0.6, low + SAME);
    assertThat(v[1]).isBetween(high - SAME, high + 0.6);
    holds("wide joint", net, net.anyBox(), new Random(4));
  }

  /** 12.5 V behind 0.01 ohm -- joint -- lamp of 12 V -- ground. */
  private static IntervalNet lampBehind(double[] joint) {
    IntervalNet net = net(2, 3);
    source(net, 0, 0, REF, of(12.2, 12.75), of(0.01, 0.01));
    resistor(net, 1, 0, 1, joint[0], joint[1]);
    lamp(net, 2, 1, REF, 12, of(1.6, 1.95), of(0.42, 0.75));
    return net;
  }

  /** Volts of the lamp by bisection of its own law. */
  private static double lampVolts(double volts, double ohms, double amps, double cold) {
    double low = 0;
    double high = volts;
    for (int k = 0; k < 100; k++) {
      double v = (low + high) / 2;
      double i = Math.min(v / cold, amps * Math.pow(v / 12, 0.55));
      if (v + ohms * i < volts) {
        low = v;
      } else {
        high = v;
      }
    }
    return low;
  }

  @Test
  void aBrightLampsLimitsAreThoseOfItsCorners() {
    double[] v = lampBehind(of(0.2, 0.3)).volts(2).orElseThrow();
    assertThat(v[0]).isEqualTo(lampVolts(12.2, 0.31, 1.95, 0.42), within(1e-5));
    assertThat(v[1]).isEqualTo(lampVolts(12.75, 0.21, 1.6, 0.75), within(1e-5));
  }

  @Test
  void aLampBehindAHighResistanceStaysColdAndIsEnclosedToo() {
    // Behind 400 to 600 ohm it doesn't glow: its cold ohms rule.
    double[] v = lampBehind(of(400, 600)).volts(2).orElseThrow();
    double low = 12.2 * 0.42 / 600.43;
    double high = 12.75 * 0.75 / 400.76;
    assertThat(low).isEqualTo(lampVolts(12.2, 600.01, 1.95, 0.42), within(1e-9));
    assertThat(v[0]).isEqualTo(low, within(1e-7));
    assertThat(v[1]).isEqualTo(high, within(1e-7));
  }

  @Test
  void aLampNearTheVoltsAtWhichItBeginsToGlowIsEnclosed() {
    for (double ohms : new double[] {6, 9, 14, 20}) {
      IntervalNet net = lampBehind(of(ohms, 1.1 * ohms));
      double[] v = net.volts(2).orElseThrow();
      double low = lampVolts(12.2, 1.1 * ohms + 0.01, 1.95, 0.42);
      double high = lampVolts(12.75, ohms + 0.01, 1.6, 0.75);
      assertThat(v[0]).as("behind %s ohm", ohms).isEqualTo(low, within(1e-6));
      assertThat(v[1]).as("behind %s ohm", ohms).isEqualTo(high, within(1e-6));
      holds("lamp behind " + ohms, net, net.anyBox(), new Random(5));
    }
  }

  // ---- made-up networks -------------------------------------------------------------------------

  /** A chain from the source through every node to ground, with bridges across. */
  private static IntervalNet made(Random random, double widest, boolean lamps) {
    int nodes = 2 + random.nextInt(4);
    int extra = random.nextInt(nodes);
    IntervalNet net = net(nodes, 1 + nodes + extra);
    double volts = 6 + 18 * random.nextDouble();
    source(
        net,
        0,
        random.nextBoolean() ? 0 : REF,
        0,
        of(volts, volts * (1 + 0.08 * random.nextDouble())),
        of(0.01, 0.01 + 0.03 * random.nextDouble()));
    if (net.a[0] == 0) {
      net.b[0] = REF;
    }
    for (int k = 0; k < nodes + extra; k++) {
      int from = k < nodes ? k : random.nextInt(nodes);
      int to = k == nodes - 1 ? REF : k < nodes ? k + 1 : random.nextInt(nodes + 1) - 1;
      if (from == to) {
        to = REF;
      }
      if (random.nextBoolean()) {
        int swap = from;
        from = to;
        to = swap;
      }
      if (lamps && random.nextInt(4) == 0) {
        double amps = 0.3 + 2 * random.nextDouble();
        double cold = volts / amps / 13;
        lamp(net, k + 1, from, to, volts, of(amps, 1.15 * amps), of(0.9 * cold, 1.2 * cold));
      } else {
        double ohms = Math.pow(10, -1 + 3 * random.nextDouble());
        resistor(
            net,
            k + 1,
            from,
            to,
            ohms,
            random.nextInt(3) == 0 ? ohms : ohms * (1 + (widest - 1) * random.nextDouble()));
      }
    }
    return net;
  }

  /** How much wider limits are than what was drawn, for all edges and nodes of many networks. */
  private static final class Widths {
    final List<Double> volts = new ArrayList<>();
    final List<Double> boxVolts = new ArrayList<>();
    final List<Double> boxAmps = new ArrayList<>();
    final List<Double> nodes = new ArrayList<>();
    int found;

    static void add(List<Double> to, double low, double high, double least, double most) {
      if (most - least > 1e-3) {
        to.add((high - low) / (most - least));
      }
    }

    static double at(List<Double> ratios, double share) {
      return ratios.stream().sorted().toList().get((int) (share * (ratios.size() - 1)));
    }

    static String text(List<Double> r) {
      return String.format("%.4f, %.4f, %.3f", at(r, 0.5), at(r, 0.9), at(r, 1));
    }

    @Override
    public String toString() {
      return "edges "
          + text(volts)
          + "; boxes "
          + text(boxVolts)
          + " V, "
          + text(boxAmps)
          + " A; nodes "
          + text(nodes);
    }
  }

  private static Widths widths(int runs, long seed, double widest, boolean lamps) {
    Random random = new Random(seed);
    Widths widths = new Widths();
    for (int run = 0; run < runs; run++) {
      IntervalNet net = made(random, widest, lamps);
      String what = "run " + run;
      IntervalNet.Box box = net.anyBox();
      double[][] hull = holds(what, net, box, random);
      widths.found += net.box().isPresent() ? 1 : 0;
      IntervalNet.NodeVolts nodes = net.nodeVolts(box);
      double[] least = new double[net.nodes];
      double[] most = new double[net.nodes];
      java.util.Arrays.fill(least, Double.POSITIVE_INFINITY);
      java.util.Arrays.fill(most, Double.NEGATIVE_INFINITY);
      for (Choice c : choices(net, random)) {
        double[] x = solve(net, c);
        for (int i = 0; i < net.nodes; i++) {
          assertThat(x[i])
              .as("%s: node %d", what, i)
              .isBetween(nodes.low()[i] - SAME, nodes.high()[i] + SAME);
          least[i] = Math.min(least[i], x[i]);
          most[i] = Math.max(most[i], x[i]);
        }
      }
      for (int i = 0; i < net.nodes; i++) {
        Widths.add(widths.nodes, nodes.low()[i], nodes.high()[i], least[i], most[i]);
      }
      for (int e = 0; e < net.edges; e++) {
        double[] v = net.volts(e).orElseThrow();
        assertThat(v[0]).as("%s edge %d", what, e).isLessThanOrEqualTo(hull[0][e] + SAME);
        assertThat(v[1]).as("%s edge %d", what, e).isGreaterThanOrEqualTo(hull[1][e] - SAME);
        Widths.add(widths.volts, v[0], v[1], hull[0][e], hull[1][e]);
        Widths.add(widths.boxVolts, box.vLow()[e], box.vHigh()[e], hull[0][e], hull[1][e]);
        Widths.add(widths.boxAmps, box.iLow()[e], box.iHigh()[e], hull[2][e], hull[3][e]);
      }
    }
    System.out.printf(
        "interval nets, values up to x %.1f%s: box in %d of %d; width over what was drawn, median,"
            + " 90 %%, worst: %s%n",
        widest, lamps ? ", lamps" : "", widths.found, runs, widths);
    return widths;
  }

  // How tight the limits are is our own regression: a little above what was measured.

  private static void tight(List<Double> ratios, double median, double ninety) {
    assertThat(Widths.at(ratios, 0.5)).isLessThan(median);
    assertThat(Widths.at(ratios, 0.9)).isLessThan(ninety);
  }

  @Test
  void narrowLinearNetworksAreEnclosedToTheirVeryCorners() {
    Widths widths = widths(60, 11, 1.2, false);
    assertThat(widths.found).isEqualTo(60);
    tight(widths.volts, 1.0001, 1.0001);
    tight(widths.boxVolts, 1.02, 1.06);
    tight(widths.boxAmps, 1.025, 1.06);
    tight(widths.nodes, 1.012, 1.05);
  }

  @Test
  void wideLinearNetworksAreEnclosed() {
    Widths widths = widths(40, 12, 4, false);
    tight(widths.volts, 1.0001, 1.0001);
    tight(widths.boxVolts, 1.12, 1.5);
    tight(widths.boxAmps, 1.08, 1.45);
    tight(widths.nodes, 1.09, 1.45);
  }

  @Test
  void veryWideLinearNetworksAreEnclosedIfNotTightly() {
    Widths widths = widths(30, 14, 400, false);
    assertThat(widths.found).isLessThan(30);
    tight(widths.volts, 2.2, 6);
    tight(widths.boxAmps, 2.7, 14);
    tight(widths.nodes, 2.4, 8.2);
  }

  @Test
  void networksWithLampsAreEnclosed() {
    Widths widths = widths(40, 13, 1.2, true);
    tight(widths.volts, 1.0001, 1.15);
    tight(widths.boxVolts, 1.08, 1.18);
    tight(widths.boxAmps, 1.09, 1.19);
    tight(widths.nodes, 1.05, 1.17);
  }

  @Test
  void wideNetworksWithLampsAreEnclosed() {
    Widths widths = widths(30, 15, 8, true);
    tight(widths.volts, 1.005, 2.9);
    tight(widths.boxVolts, 1.28, 3.5);
    tight(widths.boxAmps, 1.42, 5.6);
    tight(widths.nodes, 1.17, 3.3);
  }

  @Test
  void withoutABoxNoVoltsExceedThoseOfAllSources() {
    IntervalNet net = net(2, 3);
    source(net, 0, 0, REF, of(12, 12.75), of(0.004, 0.02));
    resistor(net, 1, 0, 1, 0.01, 3000);
    resistor(net, 2, 1, REF, 0.5, 70);
    assertThat(net.box()).isEmpty();
    IntervalNet.Box box = net.anyBox();
    holds("no box", net, box, new Random(7));
    for (int e = 0; e < 3; e++) {
      assertThat(box.vLow()[e]).isGreaterThanOrEqualTo(-12.75 - SAME);
      assertThat(box.vHigh()[e]).isLessThanOrEqualTo(12.75 + SAME);
    }
    assertThat(net.anyBox()).isSameAs(box);
  }
}
