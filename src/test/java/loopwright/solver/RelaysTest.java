package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import org.junit.jupiter.api.Test;

/**
 * Relays: 85 ohm coil, pull-in at 6.5 V, drop-out at 3.5 V (the usual 12 V row of
 * typical-values.csv, common practice but for the coil, which is from a data sheet).
 */
class RelaysTest {

  private static final double COIL = 85;

  private static PartSpec.Relay relay(boolean changeover, PartSpec.Suppression suppression) {
    return new PartSpec.Relay(
        changeover,
        Optional.of(exactly(COIL)),
        Optional.of(exactly(6.5)),
        Optional.of(exactly(3.5)),
        Optional.of(exactly(0.005)),
        suppression,
        Optional.empty());
  }

  private static final PartSpec.Relay PLAIN = relay(false, PartSpec.Suppression.NONE);

  /**
   * BAT 12.6 V -- top; top -- RS -- 86 coil 85 -- ground; top -- 30 contact 87 -- load -- ground.
   */
  private static Rig coilBehind(double ohms) {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .resistor("RS", ohms, "top", "86")
        .part("K1", PLAIN, "86", "0", "top", "load")
        .resistor("RL", 10, "load", "0");
  }

  private static List<OperatingPoint> states(Rig rig, String... on) {
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    return Solver.full(network)
        .states(healthy, Rig.setting(on), Values.typical(healthy), History.NONE);
  }

  @Test
  void coilAbovePullInClosesAndBelowDropOutOpens() {
    // 12.6 V through 50 ohm and 85 ohm: 7.9 V on the coil, above 6.5 V.
    List<OperatingPoint> strong = states(coilBehind(50));
    assertThat(strong).hasSize(1);
    assertThat(strong.get(0).pulledIn().isEmpty()).isFalse();
    // Through 300 ohm: 2.8 V, below 3.5 V.
    List<OperatingPoint> weak = states(coilBehind(300));
    assertThat(weak).hasSize(1);
    assertThat(weak.get(0).pulledIn().isEmpty()).isTrue();
  }

  @Test
  void betweenDropOutAndPullInThereAreTwoSteadyStates() {
    // Through 130 ohm: 4.98 V on the coil: it does not pull in, but it stays in.
    Rig rig = coilBehind(130);
    List<OperatingPoint> both = states(rig);
    assertThat(both).hasSize(2);
    int load = rig.network().requireNode(rig.terminal("load"));
    assertThat(both.get(0).volts(load)).isEqualTo(0, within(1e-6));
    assertThat(both.get(1).volts(load)).isEqualTo(12.6, within(0.1));
    assertThat(both).allMatch(p -> p.ending() == OperatingPoint.Ending.STEADY);
  }

  @Test
  void thresholdsActAtTheirVeryVolts() {
    // Coil straight on a battery just below and above 6.5 V and 3.5 V.
    for (double volts : new double[] {6.49, 6.51, 3.49, 3.51}) {
      Rig rig =
          Rig.of(12)
              .battery(volts, 1e-6, "top")
              .part("K1", PLAIN, "top", "0", "top", "load")
              .resistor("RL", 10, "load", "0");
      List<OperatingPoint> found = states(rig);
      boolean closesFromRest = !found.get(0).pulledIn().isEmpty();
      boolean staysClosed = !found.get(found.size() - 1).pulledIn().isEmpty();
      assertThat(closesFromRest).as("pulls in at %s V", volts).isEqualTo(volts > 6.5);
      assertThat(staysClosed).as("stays in at %s V", volts).isEqualTo(volts > 3.5);
    }
  }

  @Test
  void coilFedThroughItsOwnRestContactBuzzes() {
    // BAT -- 30 -- 87a -- 86 coil 85 -- ground: pulled in it takes its own feed away
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("K1", relay(true, PartSpec.Suppression.NONE), "coil", "0", "top", "spare", "coil")
            .resistor("RL", 10, "spare", "0");
    Network network = rig.network();
    OperatingPoint point = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
    assertThat(point.ending()).isEqualTo(OperatingPoint.Ending.BUZZING);
    assertThat(point.buzzing()).containsExactly("K1");
    OperatingPoint low =
        Solver.lowRank(network, Setting.REST).solve(Variant.healthy(network), Setting.REST);
    assertThat(low.ending()).isEqualTo(OperatingPoint.Ending.BUZZING);
    assertThat(low.buzzing()).containsExactly("K1");
  }

  @Test
  void ofTwoRelaysOnlyTheOneThatBuzzesIsNamed() {
    // As before, with a sound relay K2 whose coil lies straight on the battery
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("K2", PLAIN, "top", "0", "top", "two")
            .resistor("R2", 10, "two", "0")
            .part("K1", relay(true, PartSpec.Suppression.NONE), "coil", "0", "top", "spare", "coil")
            .resistor("RL", 10, "spare", "0");
    Network network = rig.network();
    OperatingPoint point = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
    assertThat(point.buzzing()).containsExactly("K1");
    assertThat(point.pulledIn(network.element("K2", "coil").orElseThrow())).isTrue();
  }

  @Test
  void crossCoupledRelaysEndInOneStateInsteadOfChasingEachOther() {
    // BAT -- K1 30-87a -- K2 coil -- ground, BAT -- K2 30-87a -- K1 coil -- ground: each takes the
    // other's feed; moved together they chase each other for ever, moved singly one wins.
    PartSpec.Relay changeover = relay(true, PartSpec.Suppression.NONE);
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("K1", changeover, "c1", "0", "top", "n1", "c2")
            .part("K2", changeover, "c2", "0", "top", "n2", "c1")
            .resistor("R1", 10, "n1", "0")
            .resistor("R2", 10, "n2", "0");
    Network network = rig.network();
    OperatingPoint point = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
    assertThat(point.ending()).isEqualTo(OperatingPoint.Ending.STEADY);
    assertThat(point.pulledIn().cardinality()).isEqualTo(1);
  }

  @Test
  void backfeedThroughALampHoldsARelayIn() {
    // BAT -- S1 -- 86 coil 85 -- ground; BAT -- 30 contact 87 -- load -- ground;
    // load -- L1 10 W lamp -- 86: once in, the lamp feeds the coil with S1 open
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.008, "top", "86")
            .part("K1", PLAIN, "86", "0", "top", "load")
            .resistor("RL", 10, "load", "0")
            .lamp("L1", 10, 12, "load", "86");
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    Solver solver = Solver.full(network);
    Values values = Values.typical(healthy);
    OperatingPoint rest = solver.solve(healthy, Setting.REST);
    assertThat(rest.pulledIn().isEmpty()).isTrue();
    OperatingPoint on = solver.solve(healthy, Rig.setting("S1=on"));
    assertThat(on.pulledIn().isEmpty()).isFalse();
    OperatingPoint offAgain =
        solver.solve(healthy, Setting.REST, values, History.NONE, on.pulledIn());
    assertThat(offAgain.pulledIn().isEmpty()).as("stays in after S1 is off").isFalse();
    assertThat(offAgain.volts(network.requireNode(rig.terminal("load")))).isGreaterThan(12);
    assertThat(solver.states(healthy, Setting.REST, values, History.NONE)).hasSize(2);
  }

  @Test
  void relayThatOnlyHoldsItselfInIsNotSaidToPullIn() {
    // BAT -- S1 -- R1 1 ohm -- 86 coil 85 -- ground; BAT -- 30 contact 87 -- load; load -- RH
    // 1 ohm -- 86: with R1 broken the contact could hold the coil, but nothing pulls it in.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.008, "top", "s")
            .resistor("R1", 1, "s", "86")
            .part("K1", PLAIN, "86", "0", "top", "load")
            .resistor("RL", 10, "load", "0")
            .resistor("RH", 1, "load", "86");
    Network network = rig.network();
    Setting on = Rig.setting("S1=on");
    int coil = network.element("K1", "coil").orElseThrow();
    Variant broken =
        Variant.healthy(network)
            .with(List.of(new Change.Remove(network.element("R1", "element").orElseThrow())));
    for (Solver solver : List.of(Solver.full(network), Solver.lowRank(network, on))) {
      assertThat(solver.solve(Variant.healthy(network), on).pulledIn(coil)).isTrue();
      assertThat(solver.solve(broken, on).pulledIn(coil)).isFalse();
      assertThat(solver.states(broken, on, Values.typical(broken), History.NONE)).hasSize(2);
    }
  }

  /** BAT -- F1 5 A -- S1 -- 86 coil 85 -- ground, with a diode across the coil; 87 feeds a load. */
  private static Rig suppressed(PartSpec.Suppression suppression) {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .fuse("F1", 5, 0.015, "top", "fused")
        .onOff("S1", 0.008, "fused", "86")
        .part("K1", relay(false, suppression), "86", "0", "top", "load")
        .resistor("RL", 10, "load", "0");
  }

  @Test
  void suppressionDiodeFittedBackwardsBlowsItsFuse() {
    Rig rig = suppressed(PartSpec.Suppression.DIODE_CATHODE_86);
    Network network = rig.network();
    int link = network.element("F1", "link").orElseThrow();
    Solver solver = Solver.full(network);
    Setting on = Rig.setting("S1=on");
    OperatingPoint sound = solver.solve(Variant.healthy(network), on);
    assertThat(sound.history().blown().isEmpty()).isTrue();
    assertThat(sound.amps(link)).isEqualTo(12.6 / COIL, within(1e-3));

    Part part = network.vehicle().requirePart("K1");
    Failure backwards =
        Failure.of(network, part, Bench.KNOWLEDGE.faults()).stream()
            .filter(f -> f.name().equals("diode-backwards"))
            .findFirst()
            .orElseThrow();
    Variant failed = Variant.healthy(network).with(backwards.changes(network, Spread.exactly(0)));
    for (Solver s : List.of(solver, Solver.lowRank(network, on))) {
      OperatingPoint point = s.solve(failed, on);
      assertThat(point.history().blown().get(link)).isTrue();
      assertThat(point.pulledIn().isEmpty()).isTrue();
      assertThat(point.volts(network.requireNode(rig.terminal("86")))).isEqualTo(0, within(0.02));
    }
    // Built the wrong way round from the beginning it is the same.
    Rig.Solved built = suppressed(PartSpec.Suppression.DIODE_CATHODE_85).solve("S1=on");
    assertThat(built.point().history().blown().get(link)).isTrue();
  }

  @Test
  void coilBurntThroughHasVoltsButDoesNotPull() {
    Rig rig = coilBehind(50);
    Network network = rig.network();
    int coil = network.element("K1", "coil").orElseThrow();
    Variant burnt = Variant.healthy(network).with(List.of(new Change.Remove(coil)));
    OperatingPoint point = Solver.full(network).solve(burnt, Setting.REST);
    assertThat(point.volts(network.requireNode(rig.terminal("86")))).isEqualTo(12.6, within(1e-5));
    assertThat(point.pulledIn(coil)).isFalse();
  }

  @Test
  void changeoverContactLeavesRestWhenTheCoilPulls() {
    // BAT -- S1 -- coil; 30 on the battery, RA on 87, RB on 87a
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.008, "top", "86")
            .part("K1", relay(true, PartSpec.Suppression.RESISTOR), "86", "0", "top", "a", "b")
            .resistor("RA", 10, "a", "0")
            .resistor("RB", 10, "b", "0");
    Rig.Solved rest = rig.solve();
    assertThat(rest.volts("a")).isEqualTo(0, within(1e-6));
    assertThat(rest.volts("b")).isEqualTo(12.6, within(0.03));
    Rig.Solved on = rig.solve("S1=on");
    assertThat(on.volts("a")).isEqualTo(12.6, within(0.03));
    assertThat(on.volts("b")).isEqualTo(0, within(1e-6));
    // The parallel resistor of 560 ohm (typical-values.csv) takes its share beside the coil.
    assertThat(on.amps("S1", "contact:in-out"))
        .isEqualTo(on.volts("86") * (1 / COIL + 1 / 560.0), within(1e-6));
  }
}
