package loopwright.casework.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Workpiece;
import loopwright.evidence.Bench;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns as edits of vehicles there are, and the values they choose. */
class PatternEditsTest {
  private static final Basis BASIS = PatternsTest.BASIS;

  private static Pattern pattern(String id) {
    return Patterns.find(id).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "pumper,lamp-relay",
    "pumper,flasher",
    "pumper,fan-driver",
    "pumper,clock-horn",
    "tractor,lamp-switch",
    "tractor,horn",
    "tractor,brake-turn",
    "truck,lamp-relay",
    "truck,headlamps",
    "truck,starter",
    "motorcycle,horn",
    "motorcycle,fuel-pump",
    "motorcycle,lamp-switch"
  })
  void itGoesIntoAVehicleThatIsThereAndIsTakenBackAsAWhole(String name, String id) throws Problem {
    Vehicle before = Bench.vehicle(name);
    Workpiece piece = new Workpiece(before);
    Change change = piece.make(pattern(id).edit(BASIS, Map.of("name", "extra")));
    Vehicle after = piece.vehicle();
    assertThat(VehicleCheck.check(after)).isEmpty();
    assertThat(change.circuits()).isNotEmpty();
    Set<String> ids = new HashSet<>();
    after.parts().forEach(p -> assertThat(ids.add(p.id())).as(p.id()).isTrue());
    // Nothing of the old wiring is lost, and bars are all that changed of it.
    for (Part part : before.parts()) {
      Part now = after.requirePart(part.id());
      if (!now.equals(part)) {
        assertThat(now.kind()).as(part.title()).isIn(PartKind.SPLICE, PartKind.CONNECTOR);
      }
    }
    piece.undo();
    assertThat(piece.vehicle()).isEqualTo(before);
  }

  @Test
  void barsAndGroundsOfTheVehicleAreShared() throws Problem {
    Outcome outcome =
        pattern("lamp-relay")
            .plan(Bench.vehicle("pumper"), BASIS, Map.of("name", "rear floods", "feed", "hot"));
    Vehicle after = outcome.vehicle();
    Part fuse = named(after, "rear floods fuse");
    // BB is the pumper's bar that is always live, BS the one behind its main relay.
    assertThat(after.joins())
        .anyMatch(
            j ->
                j.stream().anyMatch(t -> t.part().equals(fuse.id()))
                    && j.stream().anyMatch(t -> t.part().equals("BB")));
    Part coil = named(after, "relay coil fuse, key on");
    assertThat(after.joins())
        .anyMatch(
            j ->
                j.stream().anyMatch(t -> t.part().equals(coil.id()))
                    && j.stream().anyMatch(t -> t.part().equals("BS")));
    // A second relay shares the coils' fuse.
    Outcome second =
        pattern("lamp-relay").plan(after, BASIS, Map.of("name", "front floods", "feed", "hot"));
    assertThat(
            second.vehicle().parts().stream()
                .filter(p -> p.name().equals("relay coil fuse, key on")))
        .hasSize(1);
    assertThat(second.vehicle().circuit("front-floods")).isPresent();
  }

  private static Part named(Vehicle vehicle, String name) {
    return vehicle.parts().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  /**
   * Fuse by 80 % of its rating (common practice), wire by the rows of the table of wires and fuses:
   * AWG rows FAA AC 43.13-1B, Table 11-3; metric rows common practice.
   */
  @ParameterizedTest
  @CsvSource({
    // watts, fuse, thinnest AWG by the table, thinnest mm2 by the table
    "20,3,18 AWG,0.75 mm2",
    "60,7.5,18 AWG,0.75 mm2",
    "90,10,18 AWG,1 mm2",
    "130,15,14 AWG,1.5 mm2",
    "180,20,12 AWG,2.5 mm2"
  })
  void fuseAndWireFollowTheTables(String watts, double fuse, String awg, String mm2)
      throws Problem {
    for (WireSize.Unit unit : WireSize.Unit.values()) {
      NewVehicle rig =
          new NewVehicle(
              "rig",
              12,
              GroundedPole.NEGATIVE,
              NewVehicle.Key.NONE,
              NewVehicle.Return.BODY,
              unit,
              List.of(
                  new NewVehicle.Row(
                      "lamp-switch",
                      // So short that the volts lost ask for nothing more.
                      Map.of("power", watts + " W", "to-switch", "0.1", "to-load", "0.1"))));
      Vehicle vehicle = rig.make(BASIS).vehicle();
      assertThat(((PartSpec.Fuse) named(vehicle, "work lamp fuse").spec()).amps()).isEqualTo(fuse);
      assertThat(((PartSpec.Wire) named(vehicle, "work lamp feed").spec()).size().toString())
          .isEqualTo(unit == WireSize.Unit.AWG ? awg : mm2);
    }
  }

  @Test
  void aLongWayAsksForAThickerWireAndSaysSo() throws Problem {
    Vehicle base =
        new NewVehicle(
                "rig",
                12,
                GroundedPole.NEGATIVE,
                NewVehicle.Key.NONE,
                NewVehicle.Return.BODY,
                WireSize.Unit.MM2,
                List.of())
            .make(BASIS)
            .vehicle();
    Outcome near = pattern("lamp-switch").plan(base, BASIS, Map.of("to-load", "0.5 m"));
    Outcome far = pattern("lamp-switch").plan(base, BASIS, Map.of("to-load", "9"));
    assertThat(mm2(far)).isGreaterThan(2 * mm2(near));
    assertThat(far.added())
        .anyMatch(a -> a.title().startsWith("work lamp feed") && a.source().contains("Thicker"));
    assertThat(near.added())
        .anyMatch(a -> a.title().startsWith("work lamp feed") && !a.source().contains("Thicker"));
    assertThat(far.told()).anyMatch(t -> t.contains("0.50 V usual"));
    PartSpec.Wire wire = (PartSpec.Wire) named(far.vehicle(), "work lamp feed").spec();
    assertThat(wire.metres().limits().orElseThrow().low()).isEqualTo(7.65);
    assertThat(wire.metres().limits().orElseThrow().high()).isEqualTo(10.35);
  }

  private static double mm2(Outcome outcome) {
    return ((PartSpec.Wire) named(outcome.vehicle(), "work lamp feed").spec()).size().mm2();
  }

  @Test
  void tooFewVoltsAreToldWhereThickerWireDoesNotHelp() throws Problem {
    Vehicle base =
        new NewVehicle(
                "rig",
                6,
                GroundedPole.POSITIVE,
                NewVehicle.Key.SWITCH,
                NewVehicle.Return.BODY,
                WireSize.Unit.MM2,
                List.of())
            .make(BASIS)
            .vehicle();
    Outcome outcome =
        pattern("headlamps").plan(base, BASIS, Map.of("relays", "no", "main-power", "50"));
    assertThat(outcome.told()).anyMatch(t -> t.contains("thicker wire alone doesn't help"));
  }

  @Test
  void answersThatDoNotFitAreRefusedWithWhatIsAccepted() {
    Vehicle pumper = Bench.vehicle("pumper");
    refused(pumper, "lamp-switch", Map.of("power", "900 W"), "0.01 to 16 A");
    refused(pumper, "lamp-switch", Map.of("power", "bright"), "a number of W");
    refused(pumper, "lamp-switch", Map.of("count", "2.5"), "1 to 4");
    refused(pumper, "lamp-switch", Map.of("count", "4", "power", "60"), "wants a relay");
    refused(pumper, "lamp-switch", Map.of("to-load", "0"), "0.1 to 30 m");
    refused(pumper, "lamp-switch", Map.of("feed", "sun"), "one of key, hot");
    refused(pumper, "lamp-switch", Map.of("colour", "red"), "one of its questions");
    refused(pumper, "lamp-switch", Map.of("name", "x".repeat(41)), "1 to 40 letters");
    refused(pumper, "lamp-relay", Map.of("power", "15 A", "count", "4"), "at most 40 A");
    refused(pumper, "main-relay", Map.of(), "without a fuse block");
    refused(
        Bench.vehicle("tractor"),
        "trailer-socket",
        Map.of("stop", "no", "tail", "no"),
        "at least one circuit");
  }

  private static void refused(
      Vehicle vehicle, String id, Map<String, String> answers, String accepted) {
    assertThatThrownBy(() -> pattern(id).plan(vehicle, BASIS, answers))
        .isInstanceOf(Problem.class)
        .hasMessageContaining(accepted);
  }

  @Test
  void everyValueSaysWhereItComesFrom() throws Problem {
    for (Pattern pattern : Patterns.all()) {
      Outcome outcome =
          PatternsTest.with(
              pattern.id(),
              12,
              GroundedPole.NEGATIVE,
              NewVehicle.Key.RELAY,
              NewVehicle.Return.BODY,
              WireSize.Unit.AWG);
      assertThat(outcome.added()).allMatch(a -> !a.source().isBlank() && !a.value().isBlank());
      Questionnaire asked = pattern.questionnaire(outcome.vehicle(), BASIS);
      for (Question question : asked.questions(Map.of())) {
        asked.check(question, question.usual());
      }
    }
  }

  @Test
  void theCoilsDiodeBlocksWhicheverPostIsGrounded() throws Problem {
    for (GroundedPole pole : GroundedPole.values()) {
      Vehicle vehicle =
          PatternsTest.with(
                  "fan-driver",
                  12,
                  pole,
                  NewVehicle.Key.RELAY,
                  NewVehicle.Return.BODY,
                  WireSize.Unit.MM2)
              .vehicle();
      PartSpec.Relay relay = (PartSpec.Relay) named(vehicle, "radiator fan relay").spec();
      assertThat(relay.suppression())
          .isEqualTo(
              pole == GroundedPole.NEGATIVE
                  ? PartSpec.Suppression.DIODE_CATHODE_86
                  : PartSpec.Suppression.DIODE_CATHODE_85);
    }
  }
}
