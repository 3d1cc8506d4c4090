package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.knowledge.Effect;
import loopwright.knowledge.FaultMode;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** What each failure mode does to a rig, against the circuit worked out by hand. */
class FailureTest {

  private static final Spread NOTHING = Spread.exactly(0);

  /** A rig with one part failed. */
  private record Failed(Rig rig, Network network, Failure failure, Variant variant) {
    double volts(String node, String... on) {
      return point(on).volts(network.requireNode(rig.terminal(node)));
    }

    OperatingPoint point(String... on) {
      return Solver.full(network).solve(variant, Rig.setting(on));
    }

    int element(String part, String role) {
      return network.element(part, role).orElseThrow();
    }
  }

  private static Failed failed(Rig rig, String part, String name, double added) {
    Network network = rig.network();
    Failure failure =
        failures(network, part).stream()
            .filter(f -> f.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new AssertionError(name + " of " + names(network, part)));
    List<Change> changes = failure.changes(network, Spread.exactly(added));
    return new Failed(rig, network, failure, Variant.healthy(network).with(changes));
  }

  private static List<Failure> failures(Network network, String part) {
    return Failure.of(network, network.vehicle().requirePart(part), Bench.KNOWLEDGE.faults());
  }

  private static List<String> names(Network network, String part) {
    return failures(network, part).stream().map(Failure::name).toList();
  }

  /** BAT 12 V, 0.1 ohm -- top -- F1 10 A 0.01 ohm -- in -- L1 -- ground. */
  private static Rig lamp() {
    return Rig.of(12)
        .battery(12, 0.1, "top")
        .fuse("F1", 10, 0.01, "top", "in")
        .lamp("L1", 21, 12, "in", "0");
  }

  @Test
  void anOpenFuseLeavesNothingBehindIt() {
    Failed f = failed(lamp(), "F1", "blown", 0);
    assertThat(f.volts("in")).isEqualTo(0, within(1e-6));
    assertThat(f.volts("top")).isEqualTo(12, within(1e-6));
    assertThat(f.failure().continuum()).isEmpty();
    assertThat(f.failure().bridges()).isFalse();
  }

  @Test
  void burntClipsAddTheirOhmsToTheFuse() {
    // 12 V over 0.1 + 0.01 + 2 ohm in front of a plain 4 ohm
    Rig rig =
        Rig.of(12)
            .battery(12, 0.1, "top")
            .fuse("F1", 10, 0.01, "top", "in")
            .resistor("RL", 4, "in", "0");
    Failed f = failed(rig, "F1", "high-resistance", 2);
    assertThat(f.volts("in")).isEqualTo(12 * 4 / 6.11, within(1e-6));
    Element.Link link = (Element.Link) f.variant().element(f.element("F1", "link"));
    Element.Link sound = (Element.Link) f.network().elements().get(f.element("F1", "link"));
    assertThat(link.blowsAt()).isEqualTo(sound.blowsAt());
    // The tables: 0.03 ohm to 30 kohm, its middle on a log scale.
    assertThat(f.failure().continuum()).contains(new Spread(0.03, 30, 30_000));
  }

  @Test
  void aFuseOfASmallerRatingBlowsSooner() {
    Failed f = failed(lamp(), "F1", "wrong-rating", 0);
    Element.Link link = (Element.Link) f.variant().element(f.element("F1", "link"));
    // 10 A times 1.1 to 1.35, times 0.1 to 0.75; typical 1.25 x 0.4.
    assertThat(link.blowsAt().low()).isEqualTo(1.1, within(1e-9));
    assertThat(link.blowsAt().typical()).isEqualTo(5, within(1e-9));
    assertThat(link.blowsAt().high()).isEqualTo(10 * 1.35 * 0.75, within(1e-9));
  }

  @Test
  void aCorrodedSocketIsAResistorInFrontOfTheFilament() {
    Failed f = failed(lamp(), "L1", "high-resistance", 3);
    OperatingPoint point = f.point();
    int filament = f.element("L1", "filament");
    double amps = point.amps(filament);
    assertThat(12 - point.volts(f.network().requireNode(f.rig().terminal("in"))))
        .isEqualTo(0.11 * amps, within(1e-6));
    // The filament keeps its own law, behind 3.11 ohm in all.
    assertThat(point.across(filament)).isEqualTo(12 - 3.11 * amps, within(1e-6));
    assertThat(amps).isEqualTo(1.75 * Math.pow(point.across(filament) / 12, 0.55), within(1e-6));
  }

  @Test
  void aWrongLampTakesItsShareOfTheCurrent() {
    Failed small = failed(lamp(), "L1", "wrong-lamp", 0);
    Element.Filament f =
        (Element.Filament) small.variant().element(small.element("L1", "filament"));
    Element.Filament old =
        (Element.Filament) small.network().elements().get(small.element("L1", "filament"));
    assertThat(f.amps().typical()).isEqualTo(1.75 * 0.35, within(1e-9));
    assertThat(f.amps().low()).isEqualTo(1.75 * 0.1, within(1e-9));
    assertThat(f.amps().high()).isEqualTo(1.75 * 0.7, within(1e-9));
    // A smaller lamp has more ohms when cold.
    assertThat(f.coldOhms().typical()).isEqualTo(old.coldOhms().typical() / 0.35, within(1e-9));
    assertThat(f.coldOhms().low()).isEqualTo(old.coldOhms().low() / 0.7, within(1e-9));
    assertThat(f.coldOhms().high()).isEqualTo(old.coldOhms().high() / 0.1, within(1e-9));
  }

  @Test
  void aShortAcrossALampTakesItsPlace() {
    Failed f = failed(lamp(), "L1", "shorted", 0.05);
    // 12 V over 0.1 + 0.01 + 0.05 ohm: 75 A, and the fuse of 10 A goes.
    assertThat(f.point().history().blown().cardinality()).isEqualTo(1);
    assertThat(f.failure().bridges()).isTrue();
    assertThat(f.failure().continuum()).contains(new Spread(0.001, 0.05, 1));
    Element bridge = f.variant().element(f.variant().size() - 1);
    assertThat(bridge).isInstanceOf(Element.Resistor.class);
    assertThat(bridge.values()).containsExactly(Spread.exactly(0.05));
  }

  @Test
  void aWeakOrFlatBatteryDropsItsVolts() {
    Rig rig = Rig.of(12).battery(12, 0.1, "top").resistor("RL", 3.9, "top", "0");
    Failed weak = failed(rig, "BAT", "weak", 2);
    assertThat(weak.volts("top")).isEqualTo(12 * 3.9 / 6, within(1e-6));
    Failed flat = failed(rig, "BAT", "flat", 0);
    assertThat(flat.volts("top")).isEqualTo(0.8 * 12 * 3.9 / 4, within(1e-6));
    Element.Cell cell = (Element.Cell) flat.variant().element(flat.element("BAT", "cell"));
    assertThat(cell.volts().low()).isEqualTo(3.6, within(1e-9));
    assertThat(cell.volts().high()).isEqualTo(12 * 0.955, within(1e-9));
    assertThat(failed(rig, "BAT", "open", 0).volts("top")).isEqualTo(0, within(1e-6));
  }

  /** BAT -- top -- S1 -- in -- RL 4 ohm -- ground. */
  private static Rig switched() {
    return Rig.of(12)
        .battery(12, 0.1, "top")
        .onOff("S1", 0.01, "top", "in")
        .resistor("RL", 4, "in", "0");
  }

  @Test
  void aSwitchSticksOpenOrClosedOrWears() {
    assertThat(failed(switched(), "S1", "stuck-open:contact:in-out", 0).volts("in", "S1=on"))
        .isEqualTo(0, within(1e-6));
    Failed closed = failed(switched(), "S1", "stuck-closed:contact:in-out", 0);
    assertThat(closed.volts("in")).isEqualTo(12 * 4 / 4.11, within(1e-6));
    Failed worn = failed(switched(), "S1", "worn-contact:contact:in-out", 1);
    assertThat(worn.volts("in", "S1=on")).isEqualTo(12 * 4 / 5.11, within(1e-6));
    assertThat(worn.volts("in")).isEqualTo(0, within(1e-6));
  }

  private static PartSpec.Relay relay(boolean changeover, PartSpec.Suppression suppression) {
    return new PartSpec.Relay(
        changeover,
        Optional.of(exactly(85)),
        Optional.of(exactly(6.5)),
        Optional.of(exactly(3.5)),
        Optional.of(exactly(0.005)),
        suppression,
        Optional.empty());
  }

  /** BAT -- top; S1 feeds 86; 85 on ground; top -- 30, 87 -- load 10 ohm. */
  private static Rig relayed(PartSpec.Suppression suppression) {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .onOff("S1", 0.01, "top", "86")
        .part("K1", relay(false, suppression), "86", "0", "top", "load")
        .resistor("RL", 10, "load", "0");
  }

  @Test
  void aRelayFailsInItsCoilOrItsContact() {
    Rig rig = relayed(PartSpec.Suppression.NONE);
    assertThat(failed(rig, "K1", "coil-open", 0).volts("load", "S1=on")).isEqualTo(0, within(1e-6));
    assertThat(failed(rig, "K1", "stuck-open:contact:87", 0).volts("load", "S1=on"))
        .isEqualTo(0, within(1e-6));
    assertThat(failed(rig, "K1", "stuck-closed", 0).volts("load")).isGreaterThan(12.5);
    assertThat(failed(rig, "K1", "unseated", 0).volts("load", "S1=on")).isEqualTo(0, within(1e-6));
    Failed worn = failed(rig, "K1", "worn-contact:contact:87", 2);
    assertThat(worn.volts("load", "S1=on")).isEqualTo(12.6 * 10 / 12.015, within(0.01));
    Failed shorted = failed(rig, "K1", "coil-shorted", 0);
    Element.Coil coil = (Element.Coil) shorted.variant().element(shorted.element("K1", "coil"));
    assertThat(coil.ohms()).isEqualTo(new Spread(0.05, 0.5, 8));
    assertThat(coil.pullInVolts()).isEqualTo(Spread.exactly(6.5));
  }

  @Test
  void changedOverContactsOfARelayExchangeTheirNodes() {
    // With 30 and 87 changed over the load still gets its volts through the closed contact.
    Failed f = failed(relayed(PartSpec.Suppression.NONE), "K1", "swapped-30-87", 0);
    Element sound = f.network().elements().get(f.element("K1", "contact:87"));
    Element now = f.variant().element(f.element("K1", "contact:87"));
    assertThat(now.a()).isEqualTo(sound.b());
    assertThat(now.b()).isEqualTo(sound.a());
    assertThat(f.variant().element(f.element("K1", "coil")))
        .isEqualTo(f.network().elements().get(f.element("K1", "coil")));
    assertThat(f.volts("load", "S1=on")).isGreaterThan(12.5);
  }

  @Test
  void onlyARelayWithADiodeOrARestContactHasTheirFailures() {
    List<String> plain = names(relayed(PartSpec.Suppression.NONE).network(), "K1");
    assertThat(plain)
        .contains("coil-open", "stuck-open:contact:87")
        .doesNotContain("diode-open", "diode-backwards", "swapped-85-86", "swapped-87-87a");
    assertThat(names(relayed(PartSpec.Suppression.RESISTOR).network(), "K1"))
        .doesNotContain("diode-open", "diode-shorted", "swapped-85-86");
    for (PartSpec.Suppression diode :
        List.of(PartSpec.Suppression.DIODE_CATHODE_85, PartSpec.Suppression.DIODE_CATHODE_86)) {
      assertThat(names(relayed(diode).network(), "K1"))
          .contains("diode-open", "diode-shorted", "diode-backwards", "swapped-85-86");
    }
    Rig changeover =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("K1", relay(true, PartSpec.Suppression.NONE), "top", "0", "top", "a", "b")
            .resistor("RA", 10, "a", "0")
            .resistor("RB", 10, "b", "0");
    assertThat(names(changeover.network(), "K1"))
        .contains("swapped-87-87a", "stuck-open:contact:87a", "worn-contact:contact:87a");
    Failed swapped = failed(changeover, "K1", "swapped-87-87a", 0);
    // Pulled in, 30 leads to 87, where now the wire of 87a ends.
    assertThat(swapped.volts("a")).isEqualTo(0, within(1e-6));
    assertThat(swapped.volts("b")).isGreaterThan(12.5);
  }

  @Test
  void aDiodeAcrossACoilShortsItWhenTurnedRoundOrWhenTheCoilIs() {
    // Cathode on 86, which is fed: sound, it blocks; turned round, it takes all the current.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "live")
            .fuse("F1", 5, 0.01, "live", "top")
            .onOff("S1", 0.01, "top", "86")
            .part("K1", relay(false, PartSpec.Suppression.DIODE_CATHODE_86), "86", "0", "live", "l")
            .resistor("RL", 10, "l", "0");
    Network network = rig.network();
    OperatingPoint sound =
        Solver.full(network).solve(Variant.healthy(network), Rig.setting("S1=on"));
    assertThat(sound.history().blown().isEmpty()).isTrue();
    for (String mode : List.of("diode-backwards", "diode-shorted", "swapped-85-86")) {
      assertThat(failed(rig, "K1", mode, 0).point("S1=on").history().blown().cardinality())
          .as(mode)
          .isEqualTo(1);
    }
    assertThat(failed(rig, "K1", "diode-open", 0).point("S1=on").history().blown().isEmpty())
        .isTrue();
  }

  @Test
  void aSeizedMotorNeverStarts() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "top", "0");
    Failed f = failed(rig, "M1", "seized", 0);
    OperatingPoint point = f.point();
    int winding = f.element("M1", "winding");
    assertThat(point.running(winding)).isFalse();
    // 12.6 V / 16 A standing.
    assertThat(point.amps(winding)).isEqualTo(12.6 / (12.6 / 16 + 0.01), within(1e-6));
    Failed shorted = failed(rig, "M1", "coil-shorted", 0);
    assertThat(shorted.variant().element(winding)).isInstanceOf(Element.Resistor.class);
    assertThat(shorted.point().amps(winding)).isEqualTo(12.6 / 0.06, within(1e-4));
    Failed stiff = failed(rig, "M1", "high-resistance", 2);
    assertThat(stiff.point().amps(winding)).isEqualTo(12.6 / (3.15 + 2.01), within(1e-6));
  }

  @Test
  void aDiodeTurnedRoundBlocks() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.7))), "top", "out")
            .resistor("RL", 10, "out", "0");
    assertThat(failed(rig, "D1", "diode-backwards", 0).volts("out")).isLessThan(1e-6);
    assertThat(failed(rig, "D1", "diode-open", 0).volts("out")).isLessThan(1e-6);
    // A shorted one is a plain 0.05 ohm.
    assertThat(failed(rig, "D1", "diode-shorted", 0).volts("out"))
        .isEqualTo(12.6 * 10 / 10.06, within(1e-6));
  }

  @Test
  void ofADualLampEachFilamentFailsAloneAndTheGroundForBoth() {
    Rig rig =
        Rig.of(12)
            .battery(12, 0.01, "top")
            .onOff("S1", 0.01, "top", "t")
            .part(
                "L1",
                new PartSpec.DualLamp("tail", exactly(5), "stop", exactly(21), Optional.of(12.0)),
                "t",
                "top",
                "0");
    Network network = rig.network();
    assertThat(names(network, "L1"))
        .contains("burnt-out:filament:tail", "burnt-out:filament:stop", "ground-lost");
    Failed f = failed(rig, "L1", "burnt-out:filament:stop", 0);
    OperatingPoint point = f.point("S1=on");
    assertThat(point.amps(f.element("L1", "filament:stop"))).isEqualTo(0, within(1e-9));
    assertThat(point.amps(f.element("L1", "filament:tail"))).isEqualTo(5 / 12.0, within(0.01));
    Failed lost = failed(rig, "L1", "ground-lost", 0);
    assertThat(lost.point("S1=on").amps(f.element("L1", "common"))).isEqualTo(0, within(1e-9));
  }

  // ---- wires ----------------------------------------------------------------------------------

  private static Part wire(String id, String from, String to, double metres, String loom) {
    return Part.of(
        id,
        id,
        new PartSpec.Wire(
            PartKind.WIRE,
            TerminalRef.parse(from),
            TerminalRef.parse(to),
            loopwright.model.WireSize.parse("18 AWG"),
            loopwright.model.Estimate.of(metres),
            Optional.empty(),
            "",
            loom));
  }

  /**
   * BAT.pos -- W1 -- RA.in, W2 -- RB.in, W3 -- RC.in, all 10 ohm to BODY, which W4 ties to BAT.neg.
   * W1, W2 and W3 run in one loom, W4 in none.
   */
  private static Network loom(boolean body) {
    List<Part> parts =
        new java.util.ArrayList<>(
            List.of(
                Part.of(
                    "BAT",
                    "BAT",
                    new PartSpec.Battery(Optional.of(exactly(12.6)), Optional.of(exactly(0.01)))),
                Part.of("RA", "RA", new PartSpec.Sender(Spread.exactly(10))),
                Part.of("RB", "RB", new PartSpec.Sender(Spread.exactly(10))),
                Part.of("RC", "RC", new PartSpec.Sender(Spread.exactly(10))),
                wire("W1", "BAT.pos", "RA.in", 2, "loom"),
                wire("W2", "BAT.pos", "RB.in", 3, "loom"),
                wire("W3", "BAT.pos", "RC.in", 4, "loom")));
    List<TerminalRef> ground =
        new java.util.ArrayList<>(
            List.of(
                TerminalRef.parse("RA.out"),
                TerminalRef.parse("RB.out"),
                TerminalRef.parse("RC.out")));
    if (body) {
      parts.add(Part.of("BODY", "BODY", new PartSpec.Body()));
      parts.add(wire("W4", "BODY.metal", "BAT.neg", 1, ""));
      ground.add(TerminalRef.parse("BODY.metal"));
    } else {
      ground.add(TerminalRef.parse("BAT.neg"));
    }
    return Network.of(
        new Vehicle(
            "v",
            "v",
            12,
            loopwright.model.GroundedPole.NEGATIVE,
            parts,
            List.of(ground),
            List.of(),
            ""),
        Bench.KNOWLEDGE.typicals());
  }

  @Test
  void aWireMayTouchEachLaterWireOfItsLoomOnce() {
    Network network = loom(true);
    assertThat(names(network, "W1"))
        .contains("short-to-neighbour:W2", "short-to-neighbour:W3")
        .doesNotContain("short-to-neighbour:W1", "short-to-neighbour:W4");
    assertThat(names(network, "W2"))
        .contains("short-to-neighbour:W3")
        .doesNotContain("short-to-neighbour:W1");
    assertThat(names(network, "W4")).noneMatch(n -> n.startsWith("short-to-neighbour"));
    Failure touch =
        failures(network, "W1").stream()
            .filter(f -> f.name().equals("short-to-neighbour:W2"))
            .findFirst()
            .orElseThrow();
    assertThat(touch.continuum()).isEmpty();
    List<Change> changes = touch.changes(network, NOTHING);
    Element bridge = ((Change.Add) changes.get(0)).element();
    assertThat(Set.of(bridge.a(), bridge.b()))
        .isEqualTo(
            Set.of(
                network.requireNode(TerminalRef.parse("RA.in")),
                network.requireNode(TerminalRef.parse("RB.in"))));
    assertThat(bridge.values()[0]).isEqualTo(new Spread(0.001, 0.05, 1));
  }

  @Test
  void aWireShortsToTheBodyOrToTheBatterysFeedPost() {
    for (boolean body : new boolean[] {true, false}) {
      Network network = loom(body);
      int ground = body ? network.requireNode(TerminalRef.parse("BODY.metal")) : Network.REFERENCE;
      for (Failure f : failures(network, "W1")) {
        if (f.name().startsWith("short-to-ground") || f.name().startsWith("short-to-feed")) {
          Element bridge = ((Change.Add) f.changes(network, Spread.exactly(0.2)).get(0)).element();
          assertThat(bridge.a()).isEqualTo(network.requireNode(TerminalRef.parse("RA.in")));
          assertThat(bridge.b())
              .as(f.name())
              .isEqualTo(
                  f.name().startsWith("short-to-ground")
                      ? ground
                      : network.requireNode(TerminalRef.parse("BAT.pos")));
          assertThat(bridge.values()[0]).isEqualTo(Spread.exactly(0.2));
        }
      }
    }
  }

  @Test
  void ratesGoWithMetresAndContactsAndNeverBeyondCertainty() {
    Network network = loom(true);
    Map<String, Failure> one =
        failures(network, "W1").stream()
            .collect(java.util.stream.Collectors.toMap(Failure::name, f -> f));
    Map<String, Failure> other =
        failures(network, "W3").stream()
            .collect(java.util.stream.Collectors.toMap(Failure::name, f -> f));
    // 2 m and 4 m; two ends each.
    Context context = Context.IN_SERVICE;
    assertThat(one.get("open").count()).isEqualTo(2);
    assertThat(other.get("open").rate(context))
        .isEqualTo(2 * one.get("open").rate(context), within(1e-15));
    assertThat(one.get("unseated").count()).isEqualTo(2);
    assertThat(other.get("unseated").count()).isEqualTo(2);
    FaultMode mode = one.get("open").mode();
    assertThat(new Failure(one.get("open").part(), "open", mode, List.of(), 1e9).rate(context))
        .isEqualTo(1);
  }

  @Test
  void aRoleThatAPartDoesNotHaveIsNamedInTheError() {
    Network network = lamp().network();
    Part fuse = network.vehicle().requirePart("F1");
    FaultMode mode = failures(network, "F1").get(0).mode();
    Failure wrong = new Failure(fuse, "x", mode, List.of(new Effect.Open("coil")), 1);
    assertThatThrownBy(() -> wrong.changes(network, NOTHING))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("F1")
        .hasMessageContaining("coil");
    Failure stuck = new Failure(fuse, "x", mode, List.of(new Effect.Stuck("link", true)), 1);
    assertThatThrownBy(() -> stuck.changes(network, NOTHING))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("cannot stick");
  }

  @Test
  void everyFailureOfEveryKindChangesSomething() {
    for (Rig rig : List.of(lamp(), switched(), relayed(PartSpec.Suppression.DIODE_CATHODE_85))) {
      Network network = rig.network();
      for (Part part : network.vehicle().parts()) {
        for (Failure f : failures(network, part.id())) {
          Variant v = Variant.healthy(network).with(f.changes(network, Spread.exactly(1)));
          assertThat(v.different()).as(part.id() + " " + f.name()).isNotEmpty();
          assertThat(
                  Arrays.stream(v.different()).allMatch(e -> v.element(e).part().equals(part.id())))
              .as(part.id() + " " + f.name())
              .isTrue();
        }
      }
    }
  }
}
