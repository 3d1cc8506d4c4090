package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import loopwright.evidence.Bench;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.published.Csv;
import org.junit.jupiter.api.Test;

/**
 * Circuits whose answer is known in closed form. Ids in quotes are rows of
 * published/published-methods.csv, which names the source of each; the other values say theirs.
 *
 * <p>Two things of the model are no part of a closed form, and the tolerances allow for them: an
 * ideal source is a battery of {@link #IDEAL} ohms, and every node leaks to ground through a
 * gigaohm, which takes R / 1e9 of the volts of a node that sees R ohms.
 */
class ClosedFormsTest {

  private static final double IDEAL = 1e-7;
  private static final double LEAK_OHMS = 1e9;

  @Test
  void dividerHalvesAsItsResistancesSay() {
    // BAT 12.6 V -- top -- RA 1 Mohm -- mid -- RB 2.2 Mohm -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RA", 1e6, "top", "mid")
            .resistor("RB", 2.2e6, "mid", "0")
            .solve();
    double expected = Csv.method("net.div.open");
    double seen = 1e6 * 2.2e6 / 3.2e6;
    // The leak is known, so the whole answer is: 8.6625 V behind 687.5 kohm into 1 Gohm.
    assertThat(s.volts("mid")).isEqualTo(expected * LEAK_OHMS / (LEAK_OHMS + seen), within(1e-9));
    assertThat(s.volts("mid")).isEqualTo(expected, within(expected * seen / LEAK_OHMS * 1.01));
  }

  @Test
  void seriesAndParallelResistancesShareVoltsAndAmperes() {
    // BAT 12 V -- top -- R2 2 ohm -- mid -- (R6 6 ohm | R3 3 ohm) -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12, IDEAL, "top")
            .resistor("R2", 2, "top", "mid")
            .resistor("R6", 6, "mid", "0")
            .resistor("R3", 3, "mid", "0")
            .solve();
    assertThat(s.volts("mid")).isEqualTo(Csv.method("net.sp.v"), within(1e-6));
    assertThat(s.amps("R6")).isEqualTo(Csv.method("net.sp.i6"), within(1e-6));
    assertThat(s.amps("R3")).isEqualTo(Csv.method("net.sp.i3"), within(1e-6));
    assertThat(12 / s.amps("R2")).isEqualTo(Csv.method("net.sp.req"), within(1e-6));
  }

  @Test
  void ladderOfEqualSectionsGivesFibonacciVolts() {
    // BAT 34 V -- in -1- n1 -1- n2 -1- n3 -1- n4, and 1 ohm from each n to ground
    Rig rig = Rig.of(24).battery(34, IDEAL, "in");
    String before = "in";
    for (int k = 1; k <= 4; k++) {
      rig.resistor("S" + k, 1, before, "n" + k).resistor("P" + k, 1, "n" + k, "0");
      before = "n" + k;
    }
    Rig.Solved s = rig.solve();
    String[] expected = Csv.methodText("net.unit.nodes").split(" ");
    for (int k = 1; k <= 4; k++) {
      // 21 A through 1e-7 ohm of source: 2.1e-6 V missing at most.
      assertThat(s.volts("n" + k)).isEqualTo(Double.parseDouble(expected[k]), within(3e-6));
    }
    assertThat(34 / s.amps("S1")).isEqualTo(Csv.method("net.unit.rin"), within(1e-6));
  }

  @Test
  void ladderOfRAndTwoRHalvesAtEachStep() {
    // BAT 8 V -- n1 -1k- n2 -1k- n3 -1k- n4, 2 kohm from each to ground, 2 kohm more at n4
    Rig rig = Rig.of(12).battery(8, IDEAL, "n1").resistor("P1", 2000, "n1", "0");
    for (int k = 2; k <= 4; k++) {
      rig.resistor("S" + k, 1000, "n" + (k - 1), "n" + k).resistor("P" + k, 2000, "n" + k, "0");
    }
    Rig.Solved s = rig.resistor("E", 2000, "n4", "0").solve();
    String[] expected = Csv.methodText("net.r2r.nodes").split(" ");
    for (int k = 1; k <= 4; k++) {
      assertThat(s.volts("n" + k)).isEqualTo(Double.parseDouble(expected[k - 1]), within(4e-5));
    }
    assertThat(8 / (s.amps("S2") + s.amps("P1")))
        .isEqualTo(Csv.method("net.r2r.rin"), within(2e-3));
  }

  /** BAT -- s; s -RSA- a -RA0- ground; s -RSB- b -RB0- ground; a -RG- b. */
  private static Rig bridge(double volts, double sa, double a0, double sb, double b0, double g) {
    return Rig.of(12)
        .battery(volts, IDEAL, "s")
        .resistor("RSA", sa, "s", "a")
        .resistor("RA0", a0, "a", "0")
        .resistor("RSB", sb, "s", "b")
        .resistor("RB0", b0, "b", "0")
        .resistor("RG", g, "a", "b");
  }

  @Test
  void wheatstoneBridgeBalancedAndNot() {
    Rig.Solved balanced = bridge(10, 100, 200, 150, 300, 50).solve();
    assertThat(balanced.volts("a")).isEqualTo(Csv.method("net.wb0.va"), within(2e-6));
    assertThat(balanced.volts("b")).isEqualTo(Csv.method("net.wb0.vb"), within(2e-6));
    assertThat(balanced.amps("RG")).isEqualTo(Csv.method("net.wb0.ig"), within(1e-8));

    Rig.Solved tilted = bridge(12, 1000, 2000, 3000, 1500, 5000).solve();
    assertThat(tilted.volts("a")).isEqualTo(Csv.method("net.wb1.va"), within(2e-5));
    assertThat(tilted.volts("b")).isEqualTo(Csv.method("net.wb1.vb"), within(2e-5));
    assertThat(tilted.amps("RG")).isEqualTo(Csv.method("net.wb1.ig"), within(1e-8));

    Rig.Solved third = bridge(10, 100, 200, 200, 100, 100).solve();
    assertThat(third.volts("a")).isEqualTo(Csv.method("net.wb2.va"), within(2e-6));
    assertThat(third.volts("b")).isEqualTo(Csv.method("net.wb2.vb"), within(2e-6));
    assertThat(third.amps("RG")).isEqualTo(Csv.method("net.wb2.ig"), within(1e-7));
    assertThat(10 / (third.amps("RSA") + third.amps("RSB")))
        .isEqualTo(Csv.method("net.wb2.req"), within(1e-4));
  }

  @Test
  void twoSourcesInParallelShareTheLoad() {
    // (BAT 12.6 V, 10 mohm | GEN 14.4 V, 50 mohm) -- bus -- LOAD 0.6 ohm -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, 0.01, "bus")
            .part(
                "GEN",
                new PartSpec.Battery(Optional.of(exactly(14.4)), Optional.of(exactly(0.05))),
                "bus",
                "0")
            .resistor("LOAD", 0.6, "bus", "0")
            .solve();
    assertThat(s.volts("bus")).isEqualTo(Csv.method("net.mil.v"), within(1e-9));
    assertThat(s.amps("BAT", "cell")).isEqualTo(Csv.method("net.mil.ib"), within(1e-7));
    assertThat(-s.amps("GEN", "cell")).isEqualTo(Csv.method("net.mil.ia"), within(1e-7));
  }

  @Test
  void cubeOfEqualResistorsShowsItsThreeKnownResistances() {
    // Corners 0 to 7 by bits, 1 ohm along each edge; corner 0 is ground; the battery hangs alone.
    Rig rig = Rig.of(12).battery(12, 1, "live");
    for (int from = 0; from < 8; from++) {
      for (int bit = 1; bit < 8; bit <<= 1) {
        if ((from & bit) == 0) {
          rig.resistor("R" + from + (from | bit), 1, "" + from, "" + (from | bit));
        }
      }
    }
    Rig.Solved s = rig.solve();
    assertThat(s.point().ohmsSeen(s.node("1"), s.node("0")))
        .isEqualTo(Csv.method("net.cube.edge"), within(1e-7));
    assertThat(s.point().ohmsSeen(s.node("3"), s.node("0")))
        .isEqualTo(Csv.method("net.cube.face"), within(1e-7));
    assertThat(s.point().ohmsSeen(s.node("7"), s.node("0")))
        .isEqualTo(Csv.method("net.cube.body"), within(1e-7));
  }

  @Test
  void returnCurrentDividesOverParallelGrounds() {
    // BAT 12.6 V -- top -- RL 2 ohm -- frame -- (GA 0.5 ohm | GB 0.1 ohm) -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RL", 2, "top", "frame")
            .resistor("GA", 0.5, "frame", "0")
            .resistor("GB", 0.1, "frame", "0")
            .solve();
    // By hand: 0.5 | 0.1 = 1/12 ohm; 12.6 V over 2 1/12 ohm = 6.048 A; 0.504 V on the frame.
    assertThat(s.volts("frame")).isEqualTo(0.504, within(1e-6));
    assertThat(s.amps("GA")).isEqualTo(1.008, within(1e-6));
    assertThat(s.amps("GB")).isEqualTo(5.04, within(1e-5));
  }

  // ---- rank-one changes -------------------------------------------------------------------

  /** 12 V behind 1 ohm is 12 A into node 1 with 1 S to ground; 1 ohm each 1-2, 2-0, 2-3, 3-0. */
  private static Rig threeNodes(boolean third) {
    Rig rig =
        Rig.of(12)
            .battery(12, 1, "1")
            .resistor("R12", 1, "1", "2")
            .resistor("R20", 1, "2", "0")
            .resistor("R23", 1, "2", "3");
    return third ? rig.resistor("R30", 1, "3", "0") : rig;
  }

  @Test
  void rankOneChangesGiveThePublishedVolts() {
    Rig rig = threeNodes(true);
    Network network = rig.network();
    Solver solver = Solver.lowRank(network, Setting.REST);
    Variant healthy = Variant.healthy(network);
    int r12 = network.element("R12", "element").orElseThrow();
    Element old = network.elements().get(r12);

    check(rig.solved(solver, healthy, Setting.REST), 7.5, 3.0, 1.5);
    Element bridge =
        new Element.Resistor(
            "B",
            "bridge",
            network.requireNode(rig.terminal("1")),
            network.requireNode(rig.terminal("3")),
            Spread.exactly(1));
    check(
        rig.solved(solver, healthy.with(List.of(new Change.Add(bridge))), Setting.REST),
        Csv.method("sm.bridge13.v1"),
        Csv.method("sm.bridge13.v2"),
        Csv.method("sm.bridge13.v3"));
    check(
        rig.solved(solver, healthy.with(List.of(new Change.Remove(r12))), Setting.REST),
        Csv.method("sm.open12.v1"),
        Csv.method("sm.open12.v2"),
        Csv.method("sm.open12.v3"));
    Element weak = new Element.Resistor("R12", "element", old.a(), old.b(), Spread.exactly(10));
    check(
        rig.solved(solver, healthy.with(List.of(new Change.Replace(r12, weak))), Setting.REST),
        Csv.method("sm.weak12.v1"),
        Csv.method("sm.weak12.v2"),
        Csv.method("sm.weak12.v3"));
    assertThat(solver.fallbackShare()).as("well-conditioned changes need no fresh factor").isZero();
  }

  @Test
  void aChangeThatLeavesANodeFloatingGivesItNoVoltsOfItsOwn() {
    Rig rig = threeNodes(false);
    Network network = rig.network();
    Solver solver = Solver.lowRank(network, Setting.REST);
    int r23 = network.element("R23", "element").orElseThrow();
    Rig.Solved s =
        rig.solved(
            solver, Variant.healthy(network).with(List.of(new Change.Remove(r23))), Setting.REST);
    // "sm.float": the denominator is 0, the bare update has no answer. Here node 3 hangs on its
    // leak of a gigaohm: 0 V, as far as the picoampere that an answer may leave over allows.
    assertThat(Csv.method("sm.float.den")).isZero();
    assertThat(s.volts("3")).isEqualTo(0, within(1e-3));
    assertThat(s.volts("1")).isEqualTo(8, within(1e-7));
    assertThat(s.volts("2")).isEqualTo(4, within(1e-7));
  }

  private static void check(Rig.Solved s, double v1, double v2, double v3) {
    // Leaks of 1e-9 S beside conductances of 1 S: 12 V times 1e-9 times a few.
    assertThat(s.volts("1")).isEqualTo(v1, within(1e-7));
    assertThat(s.volts("2")).isEqualTo(v2, within(1e-7));
    assertThat(s.volts("3")).isEqualTo(v3, within(1e-7));
  }

  // ---- lamps ------------------------------------------------------------------------------

  @Test
  void filamentCurrentFollowsTheHandbookExponent() {
    // BAT 6 V -- top -- L1 21 W at 12 V -- ground
    Rig.Solved s = Rig.of(12).battery(6, IDEAL, "top").lamp("L1", 21, 12, "top", "0").solve();
    assertThat(s.amps("L1", "filament")).isEqualTo(Csv.method("lamp.half.i"), within(1e-6));
    Rig.Solved rated = Rig.of(12).battery(12, IDEAL, "top").lamp("L1", 21, 12, "top", "0").solve();
    assertThat(12 / rated.amps("L1", "filament")).isEqualTo(Csv.method("lamp.r21"), within(1e-6));
  }

  @Test
  void twoLampsInSeriesThroughALostGround() {
    // BAT 12 V -- top -- LS 21 W -- mid -- LT 5 W -- ground (both 12 V types)
    Rig.Solved s =
        Rig.of(12)
            .battery(12, IDEAL, "top")
            .lamp("LS", 21, 12, "top", "mid")
            .lamp("LT", 5, 12, "mid", "0")
            .solve();
    assertThat(s.volts("top", "mid")).isEqualTo(Csv.method("lamp.ser.v21"), within(1e-6));
    assertThat(s.volts("mid")).isEqualTo(Csv.method("lamp.ser.v5"), within(1e-6));
    assertThat(s.amps("LS", "filament")).isEqualTo(Csv.method("lamp.ser.i"), within(1e-7));
    // Once more by bisection on the middle node: the currents through both must be equal.
    double mid = root(v -> amps(21, 12 - v) - amps(5, v), 0, 12);
    assertThat(s.volts("mid")).isEqualTo(mid, within(1e-6));
  }

  @Test
  void lostGroundFeedsBackThroughTheOtherLamps() {
    // BAT 12 V -- top -- LS 21 W -- body -- LT 5 W -- feed -- (LA | LB | LC 5 W each) -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12, IDEAL, "top")
            .lamp("LS", 21, 12, "top", "body")
            .lamp("LT", 5, 12, "feed", "body")
            .lamp("LA", 5, 12, "feed", "0")
            .lamp("LB", 5, 12, "feed", "0")
            .lamp("LC", 5, 12, "feed", "0")
            .solve();
    assertThat(s.amps("LS", "filament")).isEqualTo(Csv.method("lamp.par.i"), within(1e-7));
    assertThat(s.volts("top", "body")).isEqualTo(Csv.method("lamp.par.v21"), within(1e-6));
    assertThat(s.volts("body", "feed")).isEqualTo(Csv.method("lamp.par.v5"), within(1e-6));
    assertThat(s.volts("feed")).isEqualTo(Csv.method("lamp.par.v3x5"), within(1e-6));
  }

  @Test
  void dimLampIsNoWorseThanItsColdFilament() {
    // BAT 12.6 V -- top -- RS 1000 ohm -- in -- L1 21 W at 12 V -- ground
    Rig rig =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 1000, "top", "in")
            .lamp("L1", 21, 12, "in", "0");
    Rig.Solved s = rig.solve();
    // Cold: a thirteenth of 12 V squared over 21 W (typical-values.csv, lamp coldRatio).
    double cold = 144.0 / 21 / 13;
    // By the power law alone 12.6 mA would flow at 1.5 mV: 0.12 ohm, less than the cold filament.
    assertThat(s.volts("in")).isEqualTo(12.6 * cold / (1000 + cold), within(1e-7));
    assertThat(s.amps("L1", "filament")).isLessThan(amps(21, s.volts("in")));
  }

  @Test
  void filamentLawIsContinuousAndRisingAtTheColdFloor() {
    // Property of the law itself, over a sweep: no jump, never falling, odd in the volts.
    double cold = 144.0 / 21 / 13;
    double last = 0;
    for (double v = 1e-6; v < 20; v *= 1.01) {
      double i = Laws.filamentAmps(v, 12, 1.75, cold);
      assertThat(i).isGreaterThan(last).isLessThanOrEqualTo(v / cold * (1 + 1e-12));
      assertThat(Laws.filamentAmps(-v, 12, 1.75, cold)).isEqualTo(-i);
      assertThat(i - last).isLessThan(0.011 * i + 2e-6 / cold);
      last = i;
    }
  }

  /** Power law of the handbook, cold floor left out: currents in lamps that glow. */
  private static double amps(double watts, double volts) {
    return watts / 12 * Math.pow(volts / 12, 0.55);
  }

  private static double root(DoubleUnaryOperator falling, double low, double high) {
    for (int i = 0; i < 200; i++) {
      double mid = (low + high) / 2;
      if (falling.applyAsDouble(mid) > 0) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  @Test
  void threeUnlikeLampsInARowAgreeWithBisection() {
    // BAT E -- a -- LA -- b -- LB -- c -- LC -- ground, seeded watts and volts
    Random random = new Random(7);
    for (int run = 0; run < 50; run++) {
      double e = 10 + 5 * random.nextDouble();
      double[] watts = {
        5 + 55 * random.nextDouble(), 5 + 55 * random.nextDouble(), 5 + 55 * random.nextDouble()
      };
      Rig.Solved s =
          Rig.of(12)
              .battery(e, IDEAL, "a")
              .lamp("LA", watts[0], 12, "a", "b")
              .lamp("LB", watts[1], 12, "b", "c")
              .lamp("LC", watts[2], 12, "c", "0")
              .solve();
      // Bisection on the current: the volts of the three must add up to the battery's.
      double amps =
          root(i -> e - volts(watts[0], i) - volts(watts[1], i) - volts(watts[2], i), 0, 20);
      assertThat(s.amps("LA", "filament")).isEqualTo(amps, within(1e-6));
      assertThat(s.volts("c")).isEqualTo(volts(watts[2], amps), within(1e-5));
    }
  }

  /** Inverse of the lamp law with its cold floor: volts at a current. */
  private static double volts(double watts, double amps) {
    double cold = 144 / watts / 13;
    return Math.max(amps * cold, 12 * Math.pow(amps * 12 / watts, 1 / 0.55));
  }

  // ---- junctions --------------------------------------------------------------------------

  @Test
  void ledTakesItsCurrentThroughASeriesResistorAndNothingBackwards() {
    // BAT 12.6 V -- top -- RS 470 ohm -- in -- D1 LED 2.0 V, 15 mA at 12.6 V -- ground
    PartSpec led = new PartSpec.Led(Optional.of(exactly(2.0)), exactly(0.015));
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 470, "top", "in")
            .part("D1", led, "in", "0")
            .solve();
    // By hand: its own resistance is (12.6 - 2.0) / 0.015 = 706.67 ohm; 10.6 V over 1176.67 ohm.
    double amps = 10.6 / (470 + 10.6 / 0.015);
    assertThat(s.amps("RS")).isEqualTo(amps, within(2e-8));
    assertThat(s.volts("in")).isEqualTo(12.6 - 470 * amps, within(1e-5));

    Rig.Solved backwards =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 470, "top", "in")
            .part("D1", led, "0", "in")
            .solve();
    // 1 nS of blocked junction and 1 nS of leak: 25 nA.
    assertThat(backwards.amps("RS")).isEqualTo(0, within(3e-8));
    assertThat(backwards.volts("in")).isEqualTo(12.6, within(2e-5));
  }

  @Test
  void diodesInSeriesAndParallelFindTheirState() {
    // BAT 12.6 V -- top -- RS 100 ohm -- a; a -- D1 0.65 V -- b -- D2 0.65 V -- ground;
    // a -- D3 LED 2.0 V -- ground: it must stay dark, since 1.3 V and a bit stands on a.
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 100, "top", "a")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.65))), "a", "b")
            .part("D2", new PartSpec.Diode(Optional.of(exactly(0.65))), "b", "0")
            .part("D3", new PartSpec.Led(Optional.of(exactly(2.0)), exactly(0.015)), "a", "0")
            .solve();
    // By hand: (12.6 - 1.3) V over 100 ohm and twice 0.05 ohm (typical-values.csv, diode onOhms).
    double amps = 11.3 / 100.1;
    assertThat(s.amps("RS")).isEqualTo(amps, within(1e-7));
    assertThat(s.volts("a")).isEqualTo(1.3 + 0.1 * amps, within(1e-6));
    assertThat(s.amps("D3", "junction")).isEqualTo(0, within(1e-8));
  }

  // ---- fuse, motor, battery, positive ground ------------------------------------------------

  @Test
  void shortAtTheEndOfAWireGivesThePublishedCurrentAndBlowsTheFuseForGood() {
    // BAT 12.6 V, 10 mohm -- top -- F1 -- feed -- RW 0.234 ohm (6 m of 0.5 mm2 at 39 mohm/m)
    // -- end -- switch S1 -- ground: the switch is the short.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 10, 1e-6, "top", "feed")
            .resistor("RW", 0.234, "feed", "end")
            .onOff("S1", 1e-6, "end", "0");
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    int link = network.element("F1", "link").orElseThrow();
    Solver solver = Solver.full(network);
    OperatingPoint blown = solver.solve(healthy, Rig.setting("S1=on"));
    assertThat(blown.history().blown().get(link)).isTrue();
    assertThat(blown.volts(network.requireNode(rig.terminal("end")))).isEqualTo(0, within(1e-6));

    // It stays open when the short is gone, and across it stand the battery's volts.
    OperatingPoint after =
        solver.solve(healthy, Setting.REST, Values.typical(healthy), blown.history());
    assertThat(after.history().blown().get(link)).isTrue();
    assertThat(after.amps(link)).isZero();
    assertThat(after.across(link)).isEqualTo(12.6, within(1e-6));

    // With a fuse that stands anything the current is the published one.
    Rig.Solved holds =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 100, 1e-6, "top", "feed")
            .resistor("RW", 0.234, "feed", "end")
            .onOff("S1", 1e-6, "end", "0")
            .solve("S1=on");
    assertThat(holds.amps("RW")).isEqualTo(Csv.method("fuse.39.i"), within(1e-3));
  }

  @Test
  void fuseStandsJustBelowItsLimitAndOpensJustAbove() {
    // BAT 12.6 V -- top -- F1 10 A -- feed -- RL -- ground. The limit is 1.25 times the rating
    // (typical-values.csv, fuse-blow-multiple).
    for (double share : new double[] {0.999, 1.001}) {
      Rig.Solved s =
          Rig.of(12)
              .battery(12.6, IDEAL, "top")
              .fuse("F1", 10, 1e-6, "top", "feed")
              .resistor("RL", 12.6 / (12.5 * share), "feed", "0")
              .solve();
      assertThat(s.point().history().blown().isEmpty()).isEqualTo(share < 1);
    }
  }

  @Test
  void onlyTheMostOverloadedFuseInARowBlows() {
    // BAT 12.6 V -- top -- F1 50 A -- a -- F2 10 A -- b -- RS 0.1 ohm -- ground
    Rig.Solved s =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 50, 1e-4, "top", "a")
            .fuse("F2", 10, 1e-4, "a", "b")
            .resistor("RS", 0.1, "b", "0")
            .solve();
    int f1 = s.network().element("F1", "link").orElseThrow();
    int f2 = s.network().element("F2", "link").orElseThrow();
    assertThat(s.point().history().blown().get(f2)).isTrue();
    assertThat(s.point().history().blown().get(f1)).isFalse();
    assertThat(s.volts("a")).isEqualTo(12.6, within(1e-6));
  }

  @Test
  void motorRunsOnGoodVoltsAndStandsBehindAResistance() {
    // BAT 12.6 V -- top -- RS -- in -- M1 5 A running, 20 A stalled (at 12.6 V) -- ground
    PartSpec motor = new PartSpec.Motor(exactly(5), Optional.of(exactly(20)));
    double run = 12.6 / 5;
    double stall = 12.6 / 20;
    Rig.Solved runs =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 0.1, "top", "in")
            .part("M1", motor, "in", "0")
            .solve();
    assertThat(runs.volts("in")).isEqualTo(12.6 * run / (0.1 + run), within(1e-6));
    // It starts at 0.3 of 12 V = 3.6 V (typical-values.csv, motor startShare): behind 5 ohm a
    // stalled winding never gets that.
    Rig.Solved stands =
        Rig.of(12)
            .battery(12.6, IDEAL, "top")
            .resistor("RS", 5, "top", "in")
            .part("M1", motor, "in", "0")
            .solve();
    assertThat(stands.volts("in")).isEqualTo(12.6 * stall / (5 + stall), within(1e-6));
    int winding = stands.network().element("M1", "winding").orElseThrow();
    assertThat(runs.point().running(winding)).isTrue();
    assertThat(stands.point().running(winding)).isFalse();
  }

  @Test
  void batterySagsByItsInternalResistance() {
    // BAT 12.6 V, 7 mohm -- top -- RL 0.063 ohm -- ground: 180 A, 1.26 V lost inside (by hand)
    Rig.Solved s = Rig.of(12).battery(12.6, 0.007, "top").resistor("RL", 0.063, "top", "0").solve();
    assertThat(s.volts("top")).isEqualTo(11.34, within(1e-7));
    assertThat(s.amps("RL")).isEqualTo(180, within(1e-5));
  }

  @Test
  void onAPositiveGroundVehicleEveryVoltIsNegative() {
    // BAT -6.3 V -- feed -- F1 -- a -- RW 0.1 ohm -- b -- L1 25 W at 6 V -- c -- RG 0.05 ohm --
    // ground (the positive post)
    Rig rig =
        Rig.positiveGround(6)
            .battery(6.3, 0.004, "feed")
            .fuse("F1", 10, 0.01, "feed", "a")
            .resistor("RW", 0.1, "a", "b")
            .lamp("L1", 25, 6, "b", "c")
            .resistor("RG", 0.05, "c", "0");
    Rig.Solved s = rig.solve();
    Rig.Solved mirror =
        Rig.of(6)
            .battery(6.3, 0.004, "feed")
            .fuse("F1", 10, 0.01, "feed", "a")
            .resistor("RW", 0.1, "a", "b")
            .lamp("L1", 25, 6, "b", "c")
            .resistor("RG", 0.05, "c", "0")
            .solve();
    for (String node : List.of("feed", "a", "b", "c")) {
      assertThat(s.volts(node)).isNegative();
      assertThat(s.volts(node)).isEqualTo(-mirror.volts(node), within(1e-9));
    }
    assertThat(s.volts("feed")).isLessThan(s.volts("b"));
    assertThat(s.volts("b")).isLessThan(s.volts("c"));
  }

  @Test
  void wireOhmsAreResistivityTimesLengthOverArea() {
    // BAT -- top -- W1 100 m of 1 mm2 -- in -- RL -- ground
    Rig rig =
        Rig.of(12)
            .battery(12, IDEAL, "top")
            .part(
                "W1",
                new PartSpec.Wire(
                    PartKind.WIRE,
                    new loopwright.model.TerminalRef("BAT", "pos"),
                    new loopwright.model.TerminalRef("RL", "in"),
                    loopwright.model.WireSize.parse("1 mm2"),
                    exactly(100),
                    Optional.of(exactly(0.001)),
                    "",
                    ""))
            .resistor("RL", 1, "in", "0");
    Network network = rig.network();
    Element.Resistor wire =
        (Element.Resistor) network.elements().get(network.element("W1", "conductor").orElseThrow());
    // IEC 60028: 0.017241 ohm mm2/m at 20 C; stranding 1.05 (typical-values.csv); two ends.
    assertThat(wire.ohms().typical()).isEqualTo(0.017241 * 100 * 1.05 + 0.002, within(1e-9));
    // Hot: 60 C at 0.00393 per C is a factor of 1.157 (physical.csv), stranding 1.08.
    assertThat(wire.ohms().high()).isEqualTo(0.017241 * 100 * 1.08 * 1.1572 + 0.002, within(1e-9));
    assertThat(Bench.KNOWLEDGE.typicals().constant("copper-resistivity").typical())
        .isEqualTo(0.017241);
  }
}
