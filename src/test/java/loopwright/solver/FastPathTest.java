package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import org.junit.jupiter.api.Test;

/**
 * Starting from the healthy state against searching from rest, on rigs in which relays, motors and
 * fuses hang on each other: every single failure, every element gone, and values far from usual.
 */
class FastPathTest {

  private static PartSpec relay(boolean changeover, double pullIn, double dropOut) {
    return new PartSpec.Relay(
        changeover,
        Optional.of(exactly(85)),
        Optional.of(exactly(pullIn)),
        Optional.of(exactly(dropOut)),
        Optional.of(exactly(0.005)),
        PartSpec.Suppression.DIODE_CATHODE_86,
        Optional.empty());
  }

  private static Rig base() {
    return Rig.of(12)
        .battery(12.6, 0.01, "live")
        .fuse("F1", 10, 0.01, "live", "top")
        .onOff("S1", 0.01, "top", "s");
  }

  /** S1 -- R1 -- K1 coil; K1 -- load, and back through RH to its own coil. */
  private static Rig selfHeld() {
    return base()
        .resistor("R1", 1, "s", "86")
        .part("K1", relay(false, 6.5, 3.5), "86", "0", "top", "load")
        .resistor("RL", 10, "load", "0")
        .resistor("RH", 1, "load", "86");
  }

  /** S1 -- K1 coil; K1 -- K2 coil; K2 -- K3 coil and lamp; K3's rest contact -- heater. */
  private static Rig chain() {
    return base()
        .part("K1", relay(false, 6.5, 3.5), "s", "0", "top", "a")
        .resistor("RA", 40, "a", "0")
        .part("K2", relay(false, 6.5, 3.5), "a", "0", "top", "b")
        .lamp("L1", 21, 12, "b", "0")
        .part("K3", relay(true, 6.5, 3.5), "b", "0", "top", "c", "d")
        .resistor("RC", 20, "c", "0")
        .resistor("RD", 20, "d", "0");
  }

  /** S1 -- RS -- motor, and a relay beside it that puts a heater beside the motor. */
  private static Rig motor() {
    return base()
        .resistor("RS", 0.3, "s", "in")
        .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "in", "0")
        .part("K1", relay(false, 6.5, 3.5), "in", "0", "in", "h")
        .resistor("RH", 4, "h", "0");
  }

  private static List<Variant> variants(Network network) {
    List<Variant> all = new ArrayList<>();
    Variant healthy = Variant.healthy(network);
    for (Part part : network.vehicle().parts()) {
      for (Failure f : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
        Spread range = f.continuum().orElse(Spread.exactly(0));
        for (double ohms : new double[] {range.low(), 3}) {
          all.add(healthy.with(f.changes(network, Spread.exactly(ohms))));
        }
      }
    }
    for (int e = 0; e < healthy.size(); e++) {
      all.add(healthy.with(List.of(new Change.Remove(e))));
    }
    return all;
  }

  private static void same(String what, OperatingPoint p, OperatingPoint q) {
    assertThat(p.ending()).as(what).isEqualTo(q.ending());
    if (p.ending() == OperatingPoint.Ending.BUZZING) {
      assertThat(p.buzzing()).as(what).isEqualTo(q.buzzing());
      return;
    }
    assertThat(p.pulledIn()).as(what).isEqualTo(q.pulledIn());
    assertThat(p.history()).as(what).isEqualTo(q.history());
    for (int e = 0; e < p.variant().size(); e++) {
      assertThat(p.running(e)).as(what).isEqualTo(q.running(e));
      // A few nanovolts through milliohms.
      assertThat(p.amps(e)).as(what + ", element " + e).isEqualTo(q.amps(e), within(1e-4));
    }
    for (int node = 0; node < 4; node++) {
      double seen = q.ohmsSeen(node, node - 1);
      if (seen < 1e5) {
        assertThat(p.ohmsSeen(node, node - 1)).as(what).isEqualTo(seen, within(1e-5 * seen + 1e-7));
      }
    }
  }

  @Test
  void everyFailureEndsAsFromRest() {
    int pulled = 0;
    int blown = 0;
    for (Rig rig : List.of(selfHeld(), chain(), motor())) {
      Network network = rig.network();
      Solver full = Solver.full(network);
      for (Setting setting : List.of(Setting.REST, Rig.setting("S1=on"))) {
        Solver low = Solver.lowRank(network, setting);
        int number = 0;
        for (Variant variant : variants(network)) {
          OperatingPoint q = full.solve(variant, setting);
          same("variant " + number++ + " in " + setting, low.solve(variant, setting), q);
          pulled += q.pulledIn().cardinality();
          blown += q.history().blown().cardinality();
        }
        for (int e = 0; e < network.elements().size(); e++) {
          Variant healthy = Variant.healthy(network);
          for (double factor : new double[] {0.2, 5}) {
            Values values = Values.typical(healthy);
            for (int k = 0; k < values.count(e); k++) {
              Values one = values.copy();
              one.set(e, k, one.get(e, k) * factor);
              same(
                  "element " + e + " value " + k + " x " + factor + " in " + setting,
                  low.solve(healthy, setting, one, History.NONE),
                  full.solve(healthy, setting, one, History.NONE));
            }
          }
        }
      }
    }
    assertThat(pulled).isPositive();
    assertThat(blown).isPositive();
  }

  @Test
  void whatHadBlownBeforeIsNotMadeWhole() {
    Network network = chain().network();
    Setting on = Rig.setting("S1=on");
    Solver low = Solver.lowRank(network, on);
    int link = network.element("F1", "link").orElseThrow();
    java.util.BitSet set = new java.util.BitSet();
    set.set(link);
    Variant healthy = Variant.healthy(network);
    OperatingPoint point = low.solve(healthy, on, Values.typical(healthy), new History(set));
    assertThat(point.history().hasBlown(link)).isTrue();
    assertThat(point.pulledIn().isEmpty()).isTrue();
    assertThat(point.amps(link)).isZero();
  }

  @Test
  void aPlainHealthySolveNeedsNoFreshFactor() {
    Network network = base().resistor("R1", 1, "s", "in").lamp("L1", 21, 12, "in", "0").network();
    Setting on = Rig.setting("S1=on");
    Solver low = Solver.lowRank(network, on);
    assertThat(low.fallbackShare()).isZero();
    low.solve(Variant.healthy(network), on);
    assertThat(low.fallbackShare()).isZero();
    assertThat(Solver.full(network).fallbackShare()).isEqualTo(1);
    // Relays that are followed from rest cut off what lies behind their contacts: the answer is
    // refined, not factored anew.
    Solver relays = Solver.lowRank(chain().network(), on);
    relays.solve(Variant.healthy(relays.network()), on);
    assertThat(relays.fallbackShare()).isZero();
  }

  @Test
  void manyChangesAtOnceGiveTheSameAsSolvingAnew() {
    // A ladder of 40 rungs, of which some, and then too many for a low rank, are other ones.
    Rig rig = Rig.of(12).battery(12.6, 0.01, "n0");
    for (int k = 0; k < 40; k++) {
      rig.resistor("S" + k, 1 + k % 3, "n" + k, "n" + (k + 1));
      rig.resistor("P" + k, 20 + k, "n" + (k + 1), "0");
    }
    Network network = rig.network();
    Solver low = Solver.lowRank(network, Setting.REST);
    Solver full = Solver.full(network);
    for (int count : new int[] {1, 7, 15, 16, 17, 24, 25, 40}) {
      List<Change> changes = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        int e = network.element("P" + k, "element").orElseThrow();
        Element old = network.elements().get(e);
        changes.add(
            k % 4 == 0
                ? new Change.Remove(e)
                : new Change.Replace(
                    e,
                    k % 4 == 1
                        // Between other nodes, which takes the old one out and puts another in.
                        ? old.between(old.a(), 0)
                        : new Element.Resistor(
                            "P" + k, "element", old.a(), old.b(), Spread.exactly(5))));
      }
      Variant variant = Variant.healthy(network).with(changes);
      same(count + " changes", low.solve(variant, Setting.REST), full.solve(variant, Setting.REST));
    }
  }

  /** Derivatives by every value of a rig against differences of fresh solves. */
  @Test
  void slopesOfJunctionsMotorsAndRelaysAreThoseOfDifferences() {
    for (Rig rig :
        List.of(
            selfHeld(),
            chain(),
            motor(),
            Rig.of(12)
                .battery(12.6, 0.01, "top")
                .part("D1", new PartSpec.Diode(Optional.of(exactly(0.7))), "top", "n")
                .onOff("S1", 0.01, "n", "out")
                .resistor("RL", 5, "out", "0")
                .lamp("L1", 10, 12, "n", "x")
                .resistor("RX", 200, "x", "0"))) {
      Network network = rig.network();
      Variant healthy = Variant.healthy(network);
      Setting on = Rig.setting("S1=on");
      Solver full = Solver.full(network);
      OperatingPoint point = full.solve(healthy, on);
      for (int red = 0; red < network.nodes() - Network.SPARES; red++) {
        double[][] slopes = point.sensitivities(red, Network.REFERENCE);
        for (int e = 0; e < healthy.size(); e++) {
          for (int k = 0; k < slopes[e].length; k++) {
            double at = point.values().get(e, k);
            OperatingPoint up = at(full, point, e, k, at * 1.0001);
            OperatingPoint down = at(full, point, e, k, at * 0.9999);
            double numeric = (up.volts(red) - down.volts(red)) / 0.0002;
            assertThat(slopes[e][k] * at)
                .as("%s value %d at node %d", network.elements().get(e), k, red)
                .isEqualTo(numeric, within(2e-4 + 1e-3 * Math.abs(numeric)));
          }
        }
      }
    }
  }

  private static OperatingPoint at(
      Solver solver, OperatingPoint point, int e, int k, double value) {
    Values values = point.values().copy();
    values.set(e, k, value);
    return solver.solve(
        point.variant(), point.setting(), values, point.history(), point.pulledIn());
  }

  /** BAT 12.6 V -- RS 1 ohm -- in: motor, and a relay that puts a heater beside it. */
  private static OperatingPoint loaded(double heater) {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 1e-6, "top")
            .resistor("RS", 1, "top", "in")
            .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "in", "0")
            .part("K1", relay(false, 6.5, 0.5), "in", "0", "in", "h")
            .resistor("RH", heater, "h", "0");
    Network network = rig.network();
    return Solver.full(network).solve(Variant.healthy(network), Setting.REST);
  }

  @Test
  void aRunningMotorRunsOnDownToHalfOfWhatStartsIt() {
    // It starts at 2.4 V, the usual share of 0.2, and has 9.6 V; then the relay loads it.
    // 3.15 ohm beside 0.2 leave 2.0 V, beside 0.1 only 1.1 V.
    for (double heater : new double[] {0.2, 0.1}) {
      OperatingPoint point = loaded(heater);
      int winding = 2;
      assertThat(point.variant().element(winding)).isInstanceOf(Element.Motor.class);
      assertThat(point.pulledIn().cardinality()).isEqualTo(1);
      assertThat(point.running(winding)).as("beside %s ohm", heater).isEqualTo(heater > 0.15);
    }
  }

  @Test
  void ofTwoFusesInARowTheMoreOverloadedOneGoes() {
    // 12.6 V over 1 ohm: 12.6 A through a fuse of 5 A and one of 8 A.
    for (boolean smallFirst : new boolean[] {true, false}) {
      Rig rig =
          Rig.of(12)
              .battery(12.6, 0.01, "top")
              .fuse("F1", smallFirst ? 5 : 8, 0.01, "top", "mid")
              .fuse("F2", smallFirst ? 8 : 5, 0.01, "mid", "out")
              .resistor("RL", 1, "out", "0");
      Network network = rig.network();
      OperatingPoint point = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
      assertThat(point.history().hasBlown(network.element("F1", "link").orElseThrow()))
          .isEqualTo(smallFirst);
      assertThat(point.history().hasBlown(network.element("F2", "link").orElseThrow()))
          .isEqualTo(!smallFirst);
    }
  }
}
