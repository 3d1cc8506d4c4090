package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loopwright.evidence.Bench;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Estimate;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import org.junit.jupiter.api.Test;

/**
 * Outer bounds on small rigs: against closed forms where there are any, and on made-up circuits
 * against corners and draws that are solved one by one, with relays, motors, junctions and fuses
 * that may stand either way.
 */
class EnclosureTest {

  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  /** Leaks of a gigaohm a node and the meter's own load, on nodes of at most some 100 ohm. */
  private static final double SAME = 2e-3;

  private static Rig uncertain(Rig rig, String id, double low, double high, String a, String b) {
    return rig.part(id, new PartSpec.Sender(new Spread(low, Math.sqrt(low * high), high)), a, b);
  }

  private static Estimate between(double low, double high) {
    return Estimate.between(low, (low + high) / 2, high);
  }

  /** A rig with the questions put to it. */
  private record Asked(Rig rig, Network network, Variant variant, Setting setting) {
    static Asked of(Rig rig, Setting setting) {
      Network network = rig.network();
      return new Asked(rig, network, Variant.healthy(network), setting);
    }

    Asked with(Change... changes) {
      return new Asked(rig, network, variant.with(List.of(changes)), setting);
    }

    int node(String name) {
      return network.requireNode(rig.terminal(name));
    }

    OperatingPoint point(Values values) {
      return Solver.full(network).solve(variant, setting, values, History.NONE);
    }

    Enclosure.Starts starts() {
      return Enclosure.Starts.of(List.of(point(Values.typical(variant))), List.of(History.NONE));
    }

    Enclosure enclosure() {
      return new Enclosure(variant, setting);
    }

    Optional<Enclosure.Bounds> volts(String red, String black) {
      return enclosure().volts(starts(), node(red), node(black), METER.inputOhms());
    }

    Optional<Enclosure.Bounds> surveyed(String red, String black) {
      return enclosure()
          .survey(starts())
          .flatMap(s -> s.volts(node(red), node(black), METER.inputOhms()));
    }

    Optional<Enclosure.Bounds> ohms(String red, String black) {
      return enclosure().ohms(starts(), node(red), node(black), METER);
    }

    Set<History> histories() {
      return enclosure().histories(starts()).orElseThrow();
    }
  }

  private static void isAbout(Enclosure.Bounds bounds, double low, double high) {
    assertThat(bounds.low()).as("least of %s", bounds).isBetween(low - SAME, low + 1e-9);
    assertThat(bounds.high()).as("greatest of %s", bounds).isBetween(high - 1e-9, high + SAME);
  }

  /** What the meter's 10 Mohm and the leaks take at most, on nodes of some ohms. */
  private static final double TAKEN = 2e-5;

  private static void holds(Enclosure.Bounds bounds, double low, double high, double slack) {
    holds(bounds, low, high, slack, TAKEN);
  }

  private static void holds(
      Enclosure.Bounds bounds, double low, double high, double slack, double taken) {
    assertThat(bounds.low()).as("least of %s", bounds).isBetween(low - slack, low + taken);
    assertThat(bounds.high()).as("greatest of %s", bounds).isBetween(high - taken, high + slack);
  }

  // ---- closed forms ---------------------------------------------------------------------------

  /** BAT 12 to 13 V, 0.1 ohm -- top -- RA 2 to 4 ohm -- mid -- RB 5 to 6 ohm -- ground. */
  private static Rig divider() {
    Rig rig = Rig.of(12).battery(between(12, 13), exactly(0.1), "top");
    uncertain(rig, "RA", 2, 4, "top", "mid");
    return uncertain(rig, "RB", 5, 6, "mid", "0");
  }

  @Test
  void aDividersBoundsAreThoseOfItsCorners() {
    Asked asked = Asked.of(divider(), Setting.REST);
    double low = 12 * 5 / 9.1;
    double high = 13 * 6 / 8.1;
    holds(asked.volts("mid", "0").orElseThrow(), low, high, 1e-4);
    holds(asked.volts("0", "mid").orElseThrow(), -high, -low, 1e-4);
    holds(asked.volts("top", "mid").orElseThrow(), 12 * 2 / 8.1, 13 * 4 / 9.1, 1e-4);
  }

  @Test
  void aSurveyOfAllNodesHoldsTheBoundsOfEachPair() {
    Asked asked = Asked.of(divider(), Setting.REST);
    for (String[] pair :
        new String[][] {{"mid", "0"}, {"top", "mid"}, {"top", "0"}, {"0", "mid"}}) {
      Enclosure.Bounds close = asked.volts(pair[0], pair[1]).orElseThrow();
      Enclosure.Bounds wide = asked.surveyed(pair[0], pair[1]).orElseThrow();
      assertThat(wide.low()).isBetween(close.low() - 2, close.low() + 1e-9);
      assertThat(wide.high()).isBetween(close.high() - 1e-9, close.high() + 2);
    }
  }

  @Test
  void onAPositiveGroundVehicleTheBoundsAreThoseBelowNothing() {
    Rig rig = Rig.positiveGround(6).battery(between(6.1, 6.3), exactly(0.02), "top");
    uncertain(rig, "RA", 1, 2, "top", "mid");
    uncertain(rig, "RB", 3, 4, "mid", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    holds(asked.volts("mid", "0").orElseThrow(), -6.3 * 4 / 5.02, -6.1 * 3 / 5.02, 1e-4);
  }

  @Test
  void anIdleBranchHasTheVoltsOfTheNodeItHangsOn() {
    // mid -- RC 3 ohm -- tail -- RD 5 ohm -- end, nothing beyond: no current, no drop
    Rig rig = divider().resistor("RC", 3, "mid", "tail").resistor("RD", 5, "tail", "end");
    Asked asked = Asked.of(rig, Setting.REST);
    holds(asked.volts("end", "0").orElseThrow(), 12 * 5 / 9.1, 13 * 6 / 8.1, 1e-4);
    Enclosure.Bounds none = asked.volts("mid", "end").orElseThrow();
    holds(none, 0, 0, 1e-3);
    Enclosure.Bounds wide = asked.surveyed("end", "0").orElseThrow();
    Enclosure.Bounds ofMid = asked.surveyed("mid", "0").orElseThrow();
    assertThat(wide.low()).isEqualTo(ofMid.low(), within(1e-3));
    assertThat(wide.high()).isEqualTo(ofMid.high(), within(1e-3));
  }

  @Test
  void aNodeBetweenJoinedResistancesHasItsShare() {
    // top -- R1 1 -- a -- R2 2 -- b -- R3 3 -- c -- R4 4 to 5 -- ground: they become one edge.
    Rig rig = Rig.of(12).battery(12.5, 0.5, "top");
    rig.resistor("R1", 1, "top", "a").resistor("R2", 2, "a", "b").resistor("R3", 3, "b", "c");
    uncertain(rig, "R4", 4, 5, "c", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    double least = 12.5 / 11.5;
    double most = 12.5 / 10.5;
    Enclosure.Bounds c = asked.surveyed("c", "0").orElseThrow();
    holds(c, 4 * most, 5 * least, 0.6);
    Enclosure.Bounds b = asked.surveyed("b", "0").orElseThrow();
    holds(b, 7 * most, 8 * least, 0.6);
    Enclosure.Bounds a = asked.surveyed("a", "b").orElseThrow();
    holds(a, 2 * least, 2 * most, 0.5);
    holds(asked.volts("a", "b").orElseThrow(), 2 * least, 2 * most, 1e-4);
    holds(asked.volts("b", "0").orElseThrow(), 7 * most, 8 * least, 1e-4);
  }

  @Test
  void twoWaysSideBySideCountAsOne() {
    // top -- (R1 2 -- a -- R2 2 | R3 2 -- b -- R4 6) -- mid -- R5 3 to 5 -- ground
    Rig rig = Rig.of(12).battery(12, 0.01, "top");
    rig.resistor("R1", 2, "top", "a").resistor("R2", 2, "a", "mid");
    rig.resistor("R3", 2, "top", "b").resistor("R4", 6, "b", "mid");
    uncertain(rig, "R5", 3, 5, "mid", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    double beside = 1 / (1 / 4.0 + 1 / 8.0);
    double least = 12 / (beside + 5.01);
    double most = 12 / (beside + 3.01);
    holds(asked.volts("mid", "0").orElseThrow(), 3 * most, 5 * least, 1e-4);
    holds(asked.surveyed("mid", "0").orElseThrow(), 3 * most, 5 * least, 0.6);
    // A third of the current through the upper way's 4 ohm, half of whose volts lie at a.
    holds(asked.volts("top", "a").orElseThrow(), beside * least / 2, beside * most / 2, 1e-4);
    holds(asked.volts("a", "b").orElseThrow(), -beside * most / 4, -beside * least / 4, 1e-4);
    // One edge stands for all of it, and which share of it lies at a can't be told any more.
    assertThat(asked.surveyed("top", "a")).isEmpty();
  }

  @Test
  void nodesOnTwoWaysSideBySideHaveTheirShareOfBoth() {
    // As before, but with a lamp at mid too: the two ways stay an edge of their own.
    for (int turned = 0; turned < 16; turned++) {
      Rig rig = Rig.of(12).battery(12, 0.01, "top");
      Object[][] pieces = {
        {"R1", 1.0, "top", "a"},
        {"R2", 3.0, "a", "mid"},
        {"R4", 6.0, "mid", "b"},
        {"R3", 2.0, "b", "top"}
      };
      for (int k = 0; k < 4; k++) {
        Object[] piece = pieces[(k + turned) % 4];
        boolean flip = (turned >> k & 1) == 1;
        rig.resistor(
            (String) piece[0],
            (Double) piece[1],
            (String) piece[flip ? 3 : 2],
            (String) piece[flip ? 2 : 3]);
      }
      uncertain(rig, "R5", 3, 5, "mid", "0").lamp("L1", 5, 12, "mid", "0");
      Asked asked = Asked.of(rig, Setting.REST);
      int heater = asked.network().element("R5", "element").orElseThrow();
      for (String[] pair : new String[][] {{"top", "a"}, {"b", "mid"}, {"a", "b"}, {"b", "0"}}) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double ohms : new double[] {3, 5}) {
          Values values = Values.typical(asked.variant());
          values.set(heater, 0, ohms);
          double v = asked.point(values).volts(asked.node(pair[0]), asked.node(pair[1]));
          low = Math.min(low, v);
          high = Math.max(high, v);
        }
        holds(asked.surveyed(pair[0], pair[1]).orElseThrow(), low, high, 1.5);
        holds(asked.volts(pair[0], pair[1]).orElseThrow(), low, high, 0.02);
      }
    }
  }

  @Test
  void aCutOffNodeCannotBeSurveyedButIsBounded() {
    // top -- S1 open -- out -- RL 10 ohm -- ground: out lies on ground; loose has nothing at all
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.01, "top", "out")
            .resistor("RL", 10, "out", "0")
            .onOff("S2", 0.01, "top", "loose")
            .resistor("RX", 10, "loose", "end");
    Asked asked = Asked.of(rig, Setting.REST);
    isAbout(asked.volts("out", "0").orElseThrow(), 0, 0);
    isAbout(asked.surveyed("out", "0").orElseThrow(), 0, 0);
    assertThat(asked.surveyed("end", "0")).isEmpty();
    isAbout(asked.volts("end", "0").orElseThrow(), 0, 0);
    Asked on = Asked.of(rig, Rig.setting("S1=on"));
    holds(on.volts("out", "0").orElseThrow(), 12.6 * 10 / 10.02, 12.6 * 10 / 10.02, 1e-4);
  }

  @Test
  void aHighResistanceInFrontOfTheMeterIsBoundedWithItsLoad() {
    // top -- RH 1 to 5 Mohm -- end: 10 Mohm of meter against it; too soft for a survey
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top");
    uncertain(rig, "RH", 1e6, 5e6, "top", "end").resistor("RE", 1e9, "end", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    double beside = 1 / (1e-7 + 1e-9);
    Enclosure.Bounds bounds = asked.volts("end", "0").orElseThrow();
    // Each node's own leak of a gigaohm takes up to 0.5 % of these volts.
    holds(bounds, 12.6 * beside / (beside + 5e6), 12.6 * beside / (beside + 1e6), 0.06, 0.06);
    assertThat(asked.surveyed("end", "0")).isEmpty();
  }

  // ---- ohms -----------------------------------------------------------------------------------

  @Test
  void ohmsWithTheBatteryApartCountTheLeads() {
    Asked asked = Asked.of(divider(), Setting.REST.without("BAT"));
    Spread leads = METER.leadOhms();
    holds(asked.ohms("top", "0").orElseThrow(), 7 + leads.low(), 10 + leads.high(), 1e-3);
    holds(asked.ohms("mid", "top").orElseThrow(), 2 + leads.low(), 4 + leads.high(), 1e-3);
  }

  @Test
  void anOpenWayIsOverRangeForCertain() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.01, "top", "out")
            .resistor("RL", 10, "out", "end");
    Asked asked = Asked.of(rig, Setting.REST.without("BAT"));
    Enclosure.Bounds bounds = asked.ohms("end", "0").orElseThrow();
    assertThat(bounds.high()).isInfinite();
    assertThat(bounds.low()).isEqualTo(METER.fullScale(MeterFunction.OHMS));
  }

  @Test
  void ohmsThatMayLieBeyondTheRangeMayBeOverRange() {
    double full = METER.fullScale(MeterFunction.OHMS);
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top");
    uncertain(rig, "RH", full / 2, 2 * full, "top", "0");
    Enclosure.Bounds bounds =
        Asked.of(rig, Setting.REST.without("BAT")).ohms("top", "0").orElseThrow();
    assertThat(bounds.high()).isInfinite();
    // A gigaohm beside it, and another at the node of the lead.
    assertThat(bounds.low()).isBetween(0.48 * full, 0.5 * full + 1);
  }

  @Test
  void aDiodeInTheWayOfTheTestSourceMayConductOrNot() {
    // 0.5 V of test volts or so against 0.3 to 0.5 V of junction: either way.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("D1", new PartSpec.Diode(Optional.of(between(0.1, 2))), "top", "mid")
            .resistor("R1", 100, "mid", "0");
    Enclosure.Bounds forward =
        Asked.of(rig, Setting.REST.without("BAT")).ohms("top", "0").orElseThrow();
    assertThat(forward.low()).isBetween(100.0, 2_000.0);
    assertThat(forward.high()).isInfinite();
    Enclosure.Bounds back =
        Asked.of(rig, Setting.REST.without("BAT")).ohms("0", "top").orElseThrow();
    assertThat(back.low()).isEqualTo(METER.fullScale(MeterFunction.OHMS));
  }

  // ---- what may stand either way ----------------------------------------------------------------

  private static PartSpec.Relay relay(boolean changeover, Estimate pullIn, Estimate dropOut) {
    return new PartSpec.Relay(
        changeover,
        Optional.of(exactly(85)),
        Optional.of(pullIn),
        Optional.of(dropOut),
        Optional.of(exactly(0.005)),
        PartSpec.Suppression.NONE,
        Optional.empty());
  }

  /** BAT 12.6 V -- RS -- 86 coil 85 ohm 85 -- ground; BAT -- 30 contact 87 -- load 10 ohm. */
  private static Asked coilBehind(double low, double high) {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top");
    uncertain(rig, "RS", low, high, "top", "86");
    rig.part("K1", relay(false, between(6, 7), between(3, 4)), "86", "0", "top", "load")
        .resistor("RL", 10, "load", "0");
    return Asked.of(rig, Setting.REST);
  }

  @Test
  void aRelayThatSurelyPullsInFeedsItsLoad() {
    // 12.6 V x 85 / (85 + 40) = 8.6 V at least, above the 7 V of any such relay.
    Enclosure.Bounds bounds = coilBehind(20, 40).volts("load", "0").orElseThrow();
    // The coil's 0.1 A takes a millivolt off.
    double full = 12.6 * 10 / 10.015;
    holds(bounds, full, full, 2e-3, 2e-3);
  }

  @Test
  void aRelayThatSurelyDoesNotPullInFeedsNothing() {
    // 12.6 V x 85 / (85 + 150) = 4.6 V at most, below the 6 V of any such relay.
    isAbout(coilBehind(150, 200).volts("load", "0").orElseThrow(), 0, 0);
  }

  @Test
  void aRelayThatMayPullInMayFeedItsLoad() {
    // From 12.6 x 85 / 185 = 5.8 V to 12.6 x 85 / 145 = 7.4 V.
    Enclosure.Bounds bounds = coilBehind(60, 100).volts("load", "0").orElseThrow();
    holds(bounds, 0, 12.6 * 10 / 10.015, 2e-3, 2e-3);
    Enclosure.Bounds wide = coilBehind(60, 100).surveyed("load", "0").orElseThrow();
    assertThat(wide.low()).isLessThanOrEqualTo(0);
    assertThat(wide.high()).isGreaterThan(12.5);
  }

  @Test
  void aRelayThatIsInStaysInBetweenItsThresholds() {
    // Started from pulled in: 12.6 x 85 / 235 = 4.6 V, above the drop-out of 4, below pull-in.
    Asked asked = coilBehind(150, 160);
    BitSet in = new BitSet();
    in.set(asked.network().element("K1", "coil").orElseThrow());
    OperatingPoint held =
        Solver.full(asked.network())
            .solve(
                asked.variant(), Setting.REST, Values.typical(asked.variant()), History.NONE, in);
    Enclosure.Starts starts = Enclosure.Starts.of(List.of(held), List.of(History.NONE));
    Enclosure.Bounds bounds =
        asked
            .enclosure()
            .volts(starts, asked.node("load"), asked.node("0"), METER.inputOhms())
            .orElseThrow();
    assertThat(bounds.high()).isGreaterThan(12.5);
  }

  @Test
  void aBuzzingRelayGivesBothOfItsStates() {
    // Fed through its own rest contact: 87a -- coil; spare 87 -- load
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part(
                "K1", relay(true, between(6, 7), between(3, 4)), "coil", "0", "top", "load", "coil")
            .resistor("RL", 10, "load", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    assertThat(asked.point(Values.typical(asked.variant())).ending())
        .isEqualTo(OperatingPoint.Ending.BUZZING);
    Enclosure.Bounds bounds = asked.volts("load", "0").orElseThrow();
    assertThat(bounds.low()).isLessThanOrEqualTo(0);
    assertThat(bounds.high()).isGreaterThan(12.5);
  }

  @Test
  void aMotorThatMayNotStartIsBoundedStandingAndRunning() {
    // 12.6 V behind 4 to 8 ohm; running 3.15 ohm and more, standing a quarter or an eighth of it
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top");
    uncertain(rig, "RS", 4, 8, "top", "in")
        .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "in", "0");
    Asked asked = Asked.of(rig, Setting.REST);
    Enclosure.Bounds bounds = asked.volts("in", "0").orElseThrow();
    double runs = 12.6 / 4;
    double stands = 12.6 / 16;
    // The usual start share is 0.1 to 0.35 of 12 V: 1.2 to 4.2 V; standing it sees at most 2.1 V.
    assertThat(bounds.low()).isLessThanOrEqualTo(12.6 * stands / (stands + 8.01) + 1e-6);
    assertThat(bounds.high()).isGreaterThanOrEqualTo(12.6 * runs / (runs + 4.01) - 1e-6);
    assertThat(bounds.low()).isGreaterThan(1.0);
    assertThat(bounds.high()).isLessThan(6.5);
  }

  @Test
  void aMotorStraightOnTheBatteryRuns() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.5, "top")
            .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "top", "0");
    Enclosure.Bounds bounds = Asked.of(rig, Setting.REST).volts("top", "0").orElseThrow();
    holds(bounds, 12.6 * 3.15 / 3.65, 12.6 * 3.15 / 3.65, 0.01);
  }

  @Test
  void aDiodeThatConductsDropsItsForwardVolts() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("D1", new PartSpec.Diode(Optional.of(between(0.6, 0.8))), "top", "out")
            .resistor("RL", 20, "out", "0")
            .part("D2", new PartSpec.Diode(Optional.of(between(0.6, 0.8))), "0", "back")
            .resistor("RB", 20, "back", "top");
    Asked asked = Asked.of(rig, Setting.REST);
    Enclosure.Bounds bounds = asked.volts("out", "0").orElseThrow();
    // The usual 0.01 to 0.2 ohm behind the junction.
    holds(bounds, (12.6 - 0.8) * 20 / 20.21, (12.6 - 0.6) * 20 / 20.02, 0.02);
    Enclosure.Bounds blocked = asked.volts("back", "0").orElseThrow();
    assertThat(blocked.low()).isEqualTo(blocked.high(), within(1e-3));
    assertThat(blocked.high()).isBetween(12.5, 12.6 + 1e-3);
  }

  /** BAT 12.6 V, 0.01 ohm -- F1 5 A, blows at 5.5 to 6.75 A -- RL -- ground. */
  private static Asked fused(double low, double high) {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").fuse("F1", 5, 0.02, "top", "out");
    return Asked.of(uncertain(rig, "RL", low, high, "out", "0"), Setting.REST);
  }

  private static History blown(Asked asked, String fuse) {
    BitSet set = new BitSet();
    set.set(asked.network().element(fuse, "link").orElseThrow());
    return new History(set);
  }

  @Test
  void aFuseHoldsBlowsOrMayDoEither() {
    // 12.6 V / 2.53 ohm = 5 A at most: less than the 5.5 A that it carries for ever.
    assertThat(fused(2.5, 3).histories()).containsExactly(History.NONE);
    // 12.6 V / 1.53 = 8.2 A at least.
    Asked surely = fused(1, 1.5);
    assertThat(surely.histories()).containsExactly(blown(surely, "F1"));
    isAbout(surely.volts("out", "0").orElseThrow(), 0, 0);
    // 12.6 / 2.23 = 5.65 A to 12.6 / 1.93 = 6.5 A.
    Asked maybe = fused(1.9, 2.2);
    assertThat(maybe.histories()).containsExactlyInAnyOrder(History.NONE, blown(maybe, "F1"));
    holds(maybe.volts("out", "0").orElseThrow(), 0, 12.6 * 2.2 / 2.23, 1e-3);
  }

  @Test
  void whatHasBlownBeforeStaysBlown() {
    Asked asked = fused(2.5, 3);
    Enclosure.Starts starts =
        Enclosure.Starts.of(
            List.of(asked.point(Values.typical(asked.variant()))), List.of(blown(asked, "F1")));
    assertThat(asked.enclosure().histories(starts).orElseThrow())
        .containsExactly(blown(asked, "F1"));
    isAbout(
        asked
            .enclosure()
            .volts(starts, asked.node("out"), asked.node("0"), METER.inputOhms())
            .orElseThrow(),
        0,
        0);
  }

  @Test
  void aFailuresOwnWideRangeIsBoundedPieceByPiece() {
    // A joint of 1 to 10 ohm in front of a lamp: no single box holds what that does to it.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .resistor("R1", 0.05, "top", "in")
            .lamp("L1", 21, 12, "in", "0");
    Asked healthy = Asked.of(rig, Setting.REST);
    int wire = healthy.network().element("R1", "element").orElseThrow();
    Element old = healthy.network().elements().get(wire);
    Asked failed =
        healthy.with(
            new Change.Replace(
                wire,
                new Element.Resistor("R1", "element", old.a(), old.b(), new Spread(1, 3, 10))));
    Enclosure.Bounds bounds = failed.volts("in", "0").orElseThrow();
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (double ohms : new double[] {1, 2, 3, 5, 7, 10}) {
      Values values = Values.typical(failed.variant());
      values.set(wire, 0, ohms);
      double v = failed.point(values).volts(failed.node("in"));
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    holds(bounds, low, high, 1.2);
    Enclosure.Bounds wide = failed.surveyed("in", "0").orElseThrow();
    assertThat(wide.low()).isLessThanOrEqualTo(low);
    assertThat(wide.high()).isGreaterThanOrEqualTo(high);
  }

  /**
   * BAT 12.6 V, 0.01 ohm -- joint -- bus; coils of 85 ohm from bus to ground that pull in at 11,
   * 9.1, 6.5 and 3.3 V; the first one's contact feeds a fuse and a load straight from BAT.
   */
  private static Asked busOfRelays(int relays, double load) {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").resistor("RJ", 1, "top", "bus");
    double[] pulls = {11, 9.1, 6.5, 3.3};
    for (int k = 0; k < relays; k++) {
      rig.part(
          "K" + k,
          relay(false, between(pulls[k] - 0.05, pulls[k] + 0.05), between(0.4, 0.6)),
          "bus",
          "0",
          "top",
          "out" + k);
      if (k > 0) {
        rig.resistor("RL" + k, 100, "out" + k, "0");
      }
    }
    rig.fuse("F0", 5, 0.01, "out0", "load").resistor("RL0", load, "load", "0");
    Asked sound = Asked.of(rig, Setting.REST);
    int joint = sound.network().element("RJ", "element").orElseThrow();
    Element old = sound.network().elements().get(joint);
    return sound.with(
        new Change.Replace(
            joint,
            new Element.Resistor("RJ", "element", old.a(), old.b(), new Spread(1, 10, 100))));
  }

  @Test
  void aRangeThatMovesManyRelaysIsHalvedUntilEachPartMovesFew() {
    // From 12.6 x 21.25 / 22.26 = 12.03 V on the bus down to 12.6 x 21.25 / 121.26 = 2.21 V.
    Asked asked = busOfRelays(4, 100);
    // The relays' loads take up to 0.5 A through the battery's 10 mohm.
    holds(
        asked.volts("bus", "0").orElseThrow(),
        12.6 * 21.25 / 121.26,
        12.6 * 21.25 / 22.26,
        0.01,
        0.01);
    Enclosure.Bounds load = asked.volts("load", "0").orElseThrow();
    holds(load, 0, 12.59, 0.02, 0.02);
    Enclosure.Bounds wide = asked.surveyed("bus", "0").orElseThrow();
    holds(wide, 12.6 * 21.25 / 121.26, 12.6 * 21.25 / 22.26, 3, 0.01);
    assertThat(asked.histories()).containsExactly(History.NONE);
  }

  @Test
  void aFuseThatBlowsInOnePartOfTheRangeOnlyMayHaveBlown() {
    // One ohm behind the first relay: 12.4 A through 5 A.
    Asked asked = busOfRelays(3, 1);
    assertThat(asked.histories()).containsExactlyInAnyOrder(History.NONE, blown(asked, "F0"));
  }

  @Test
  void aRelayBelowItsDropOutIsOutWhereverItWasTakenFrom() {
    // Pulled in at the start; behind 400 to 500 ohm its coil has 2.2 V at most.
    Asked strong = coilBehind(20, 40);
    OperatingPoint in = strong.point(Values.typical(strong.variant()));
    int series = strong.network().element("RS", "element").orElseThrow();
    Element old = strong.network().elements().get(series);
    Asked weak =
        strong.with(
            new Change.Replace(
                series,
                new Element.Resistor(
                    "RS", "element", old.a(), old.b(), new Spread(400, 450, 500))));
    Enclosure.Starts starts = Enclosure.Starts.of(List.of(in), List.of(History.NONE));
    Enclosure.Bounds bounds =
        weak.enclosure()
            .volts(starts, weak.node("load"), weak.node("0"), METER.inputOhms())
            .orElseThrow();
    isAbout(bounds, 0, 0);
  }

  /** BAT 12.6 V, 0.01 ohm -- RS -- in -- M1, running 3.15, standing 0.7875 ohm -- ground. */
  private static Asked motorBehind(double ohms) {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").resistor("RS", ohms, "top", "in");
    return Asked.of(
        rig.part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "in", "0"),
        Setting.REST);
  }

  @Test
  void aMotorWithHardlyAnyVoltsStands() {
    // 0.24 V: less than a quarter of the least 1.2 V that start one.
    double stands = 12.6 * 0.7875 / (40 + 0.7975);
    holds(motorBehind(40).volts("in", "0").orElseThrow(), stands, stands, 1e-3);
    // With 0.47 V it might still have been started before: both are possible.
    Enclosure.Bounds either = motorBehind(20).volts("in", "0").orElseThrow();
    holds(either, 12.6 * 0.7875 / 20.7975, 12.6 * 3.15 / 23.16, 1e-3);
  }

  @Test
  void everyNodeOfALongRowHasItsShareHoweverItsPiecesLie() {
    Random random = new Random(77);
    for (int run = 0; run < 12; run++) {
      int n = 3 + random.nextInt(5);
      double[] ohms = new double[n];
      List<Integer> order = new ArrayList<>();
      for (int k = 0; k < n; k++) {
        ohms[k] = 1 + random.nextInt(20);
        order.add(k);
      }
      java.util.Collections.shuffle(order, random);
      Rig rig = Rig.of(12).battery(12, 0.5, "n0");
      for (int k : order) {
        String a = "n" + k;
        String b = k == n - 1 ? "0" : "n" + (k + 1);
        boolean turned = random.nextBoolean();
        uncertain(rig, "R" + k, ohms[k], 1.02 * ohms[k], turned ? b : a, turned ? a : b);
      }
      Asked asked = Asked.of(rig, Setting.REST);
      double all = java.util.Arrays.stream(ohms).sum();
      double below = all;
      for (int k = 0; k < n; k++) {
        double above = all - below;
        Enclosure.Bounds bounds = asked.surveyed("n" + k, "0").orElseThrow();
        double low = 12 * below / (below + 1.02 * above + 0.5);
        double high = 12 * 1.02 * below / (1.02 * below + above + 0.5);
        holds(bounds, low, high, 0.5);
        if (k > 0) {
          double least = 12 * ohms[k - 1] / (ohms[k - 1] + 1.02 * (all - ohms[k - 1]) + 0.5);
          double most = 12 * 1.02 * ohms[k - 1] / (1.02 * ohms[k - 1] + all - ohms[k - 1] + 0.5);
          holds(asked.surveyed("n" + (k - 1), "n" + k).orElseThrow(), least, most, 0.3);
        }
        below -= ohms[k];
      }
    }
  }

  @Test
  void tooManyWaysToStandAreGivenUp() {
    // Eight relays each of which may pull in or not: 256 ways.
    Rig rig = Rig.of(12).battery(12.6, 0.001, "top");
    for (int k = 0; k < 8; k++) {
      uncertain(rig, "RS" + k, 60, 100, "top", "c" + k);
      rig.part("K" + k, relay(false, between(6, 7), between(3, 4)), "c" + k, "0", "top", "load" + k)
          .resistor("RL" + k, 10, "load" + k, "0");
    }
    Asked asked = Asked.of(rig, Setting.REST);
    assertThat(asked.volts("load0", "0")).isEmpty();
    assertThat(asked.enclosure().survey(asked.starts())).isEmpty();
    assertThat(asked.enclosure().histories(asked.starts())).isEmpty();
  }

  @Test
  void aRemovedElementIsAGap() {
    Asked asked = Asked.of(divider(), Setting.REST);
    Asked open =
        asked.with(new Change.Remove(asked.network().element("RA", "element").orElseThrow()));
    isAbout(open.volts("mid", "0").orElseThrow(), 0, 0);
    holds(open.volts("top", "mid").orElseThrow(), 12, 13, 1e-3);
  }

  // ---- made-up circuits -------------------------------------------------------------------------

  private static Rig made(Random random) {
    Rig rig = Rig.of(12).battery(between(12.2, 12.75), between(0.005, 0.02), "n1");
    int count = 3 + random.nextInt(4);
    int extra = 1 + random.nextInt(count);
    for (int k = 0; k < count - 1 + extra; k++) {
      int from = k < count - 1 ? k + 1 : random.nextInt(count);
      int to = k < count - 1 ? (k + 2) % count : random.nextInt(count);
      if (from == to) {
        continue;
      }
      String a = from == 0 ? "0" : "n" + from;
      String b = to == 0 ? "0" : "n" + to;
      double pick = random.nextDouble();
      if (pick < 0.55) {
        double ohms = Math.pow(10, -1 + 2.5 * random.nextDouble());
        uncertain(rig, "R" + k, ohms, ohms * (1 + 0.3 * random.nextDouble()), a, b);
      } else if (pick < 0.7) {
        double watts = 4 + 40 * random.nextDouble();
        rig.part("L" + k, new PartSpec.Lamp(Optional.of(12.0), between(watts, 1.1 * watts)), a, b);
      } else if (pick < 0.78) {
        rig.part("D" + k, new PartSpec.Diode(Optional.empty()), a, b);
      } else if (pick < 0.84) {
        rig.part("M" + k, new PartSpec.Motor(between(2, 2.4), Optional.empty()), a, b);
      } else if (pick < 0.92) {
        rig.part("F" + k, new PartSpec.Fuse(10, Optional.empty()), a, b);
      } else {
        String c = "n" + (1 + random.nextInt(count - 1));
        String d = "n" + (1 + random.nextInt(count - 1));
        boolean changeover = random.nextBoolean();
        PartSpec relay = relay(changeover, between(6, 7), between(3, 4));
        String[] at = changeover ? new String[] {a, b, c, d, "n1"} : new String[] {a, b, c, d};
        rig.part("K" + k, relay, at);
      }
    }
    return rig;
  }

  @Test
  void noDrawLiesOutsideTheBoundsOfAMadeUpCircuit() {
    Random random = new Random(2031);
    int asked = 0;
    int found = 0;
    int surveyed = 0;
    List<Double> ratios = new ArrayList<>();
    for (int run = 0; run < 60; run++) {
      Rig rig = made(random);
      Asked a = Asked.of(rig, Setting.REST);
      int nodes = a.network().nodes() - Network.SPARES;
      int red = random.nextInt(nodes);
      int black = random.nextInt(nodes + 1) - 1;
      if (red == black) {
        continue;
      }
      asked++;
      Enclosure.Starts starts = a.starts();
      Optional<Enclosure.Bounds> bounds =
          a.enclosure().volts(starts, red, black, METER.inputOhms());
      Optional<Enclosure.Bounds> wide =
          a.enclosure().survey(starts).flatMap(s -> s.volts(red, black, METER.inputOhms()));
      Optional<Set<History>> histories = a.enclosure().histories(starts);
      found += bounds.isPresent() ? 1 : 0;
      surveyed += wide.isPresent() ? 1 : 0;
      Solver full = Solver.full(a.network());
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int draw = 0; draw < 60; draw++) {
        Values values = Draws.of(a.variant(), random, draw % 4 > 0);
        OperatingPoint point = full.solve(a.variant(), Setting.REST, values, History.NONE);
        double shown = Meters.volts(full, point, red, black, METER).value();
        least = Math.min(least, shown);
        most = Math.max(most, shown);
        String what = "run " + run + " draw " + draw;
        bounds.ifPresent(
            b -> assertThat(shown).as(what).isBetween(b.low() - 1e-6, b.high() + 1e-6));
        wide.ifPresent(b -> assertThat(shown).as(what).isBetween(b.low() - 1e-6, b.high() + 1e-6));
        histories.ifPresent(h -> assertThat(h).as(what).contains(point.history()));
      }
      if (bounds.isPresent() && most - least > 0.02) {
        ratios.add((bounds.get().high() - bounds.get().low()) / (most - least));
      }
    }
    List<Double> sorted = ratios.stream().sorted().toList();
    double median = sorted.get(sorted.size() / 2);
    System.out.printf(
        "bounds of made-up circuits: %d of %d, survey %d; width over what was drawn: median %.3f%n",
        found, asked, surveyed, median);
    assertThat(found).isGreaterThan(asked / 2);
    assertThat(surveyed).isGreaterThan(asked / 3);
    assertThat(median).isLessThan(1.5);
  }
}
