package loopwright.casework.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.io.VehicleFile;
import loopwright.io.VehicleFiles;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkpieceTest {
  @TempDir Path folder;

  private static Vehicle vehicle(String name) {
    return VehicleFile.read(Path.of("demo-data", "vehicles", name + ".json")).orThrow();
  }

  private static <T> T any(List<T> list, Random random) {
    return list.get(random.nextInt(list.size()));
  }

  private static Edit any(Vehicle v, Random random, int step) {
    Part part = any(v.parts(), random);
    return switch (random.nextInt(9)) {
      case 0 -> PartEdits.label(part.id(), "label " + step);
      case 1 -> PartEdits.name(part.id(), "name " + step);
      case 2 -> PartEdits.remove(part.id());
      case 3 -> PartEdits.rename(part.id(), "X" + step);
      case 4 -> CircuitEdits.duplicate(any(v.circuits(), random).id(), "again " + step);
      case 5 ->
          CircuitEdits.moveToFuse(
              any(v.circuits(), random).id(),
              any(v.parts().stream().filter(p -> p.kind() == PartKind.FUSE).toList(), random).id());
      case 6 -> PartEdits.spec(part.id(), new PartSpec.Fuse(7.5, Optional.empty()));
      case 7 ->
          PartEdits.add(wire("N" + step, any(v.terminals(), random), any(v.terminals(), random)));
      default -> {
        TerminalRef at = any(v.terminals(), random);
        yield PartEdits.access(at, new Access(step, "reach " + step, true));
      }
    };
  }

  private static Part wire(String id, TerminalRef from, TerminalRef to) {
    return Part.of(
        id,
        "new wire",
        new PartSpec.Wire(
            PartKind.WIRE,
            from,
            to,
            WireSize.parse("1.5 mm2"),
            Estimate.of(1),
            Optional.empty(),
            "",
            ""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void whateverIsDoneIsUndoneAndDoneAgain(String name) {
    Vehicle start = vehicle(name);
    int made = 0;
    for (int seed = 0; seed < 5; seed++) {
      Random random = new Random(seed);
      Workpiece work = new Workpiece(start);
      List<Vehicle> states = new ArrayList<>(List.of(start));
      for (int step = 0; step < 30; step++) {
        Vehicle before = work.vehicle();
        try {
          Change change = work.make(any(before, random, step));
          states.add(work.vehicle());
          assertThat(change.parts()).containsAll(changedParts(before, work.vehicle()));
          made++;
        } catch (Problem e) {
          assertThat(work.vehicle()).as(e.getMessage()).isSameAs(before);
        }
      }
      Vehicle end = work.vehicle();
      for (int i = states.size() - 2; i >= 0; i--) {
        assertThat(work.undo()).isPresent();
        assertThat(work.vehicle()).isEqualTo(states.get(i));
      }
      assertThat(work.undo()).isEmpty();
      assertThat(work.unsaved()).isFalse();
      assertThat(VehicleFile.text(work.vehicle())).isEqualTo(VehicleFile.text(start));
      while (work.redo().isPresent()) {
        continue;
      }
      assertThat(work.vehicle()).isEqualTo(end);
    }
    assertThat(made).as("edits that could be made").isGreaterThan(75);
  }

  /** Ids of parts that are not the same in both, counted another way than the program does. */
  private static Set<String> changedParts(Vehicle before, Vehicle after) {
    Map<String, Part> old = new HashMap<>();
    before.parts().forEach(p -> old.put(p.id(), p));
    Set<String> changed = new TreeSet<>();
    for (Part part : after.parts()) {
      if (!part.equals(old.remove(part.id()))) {
        changed.add(part.id());
      }
    }
    changed.addAll(old.keySet());
    return changed;
  }

  @Test
  void aNewEditEndsWhatCouldBeDoneAgain() throws Problem {
    Workpiece work = new Workpiece(vehicle("motorcycle"));
    work.make(PartEdits.label("F2", "a"));
    work.undo();
    assertThat(work.redoTitle()).contains("label F2");
    work.make(PartEdits.label("F3", "b"));
    assertThat(work.redoTitle()).isEmpty();
    assertThat(work.undoTitle()).contains("label F3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void aVehicleRenamedThroughoutSolvesTheSame(String name) throws Problem {
    Vehicle start = vehicle(name);
    Workpiece work = new Workpiece(start);
    Map<String, String> ids = new HashMap<>();
    for (int i = 0; i < start.parts().size(); i++) {
      String id = start.parts().get(i).id();
      ids.put(id, "R" + i + "_");
      work.make(PartEdits.rename(id, ids.get(id)));
    }
    assertThat(VehicleCheck.check(work.vehicle())).isEmpty();
    assertThat(work.vehicle().parts())
        .extracting(Part::id)
        .containsExactlyElementsOf(ids(start, ids));
    for (int c = 0; c < start.circuits().size(); c++) {
      OperatingPoint was = point(start, start.circuits().get(c));
      OperatingPoint is = point(work.vehicle(), work.vehicle().circuits().get(c));
      Network a = was.variant().base();
      Network b = is.variant().base();
      for (TerminalRef at : start.terminals()) {
        TerminalRef renamed = new TerminalRef(ids.get(at.part()), at.terminal());
        assertThat(is.volts(b.requireNode(renamed)))
            .as(start.circuits().get(c).id() + " " + at)
            .isCloseTo(was.volts(a.requireNode(at)), within(1e-9));
      }
    }
  }

  private static List<String> ids(Vehicle vehicle, Map<String, String> renamed) {
    return vehicle.parts().stream().map(p -> renamed.get(p.id())).toList();
  }

  private static OperatingPoint point(Vehicle vehicle, Circuit circuit) {
    Network network = Network.of(vehicle, Bench.KNOWLEDGE.typicals());
    return Solver.full(network).solve(Variant.healthy(network), circuit.onSetting());
  }

  /** The vehicle with fuses that bear twice the lamps: whether they do is told, not solved here. */
  private static Vehicle unblown(Vehicle v) {
    List<Part> parts = new ArrayList<>(v.parts());
    parts.replaceAll(
        p ->
            p.spec() instanceof PartSpec.Fuse f ? p.withSpec(new PartSpec.Fuse(500, f.ohms())) : p);
    return v.with(parts, v.joins(), v.circuits());
  }

  /** Amperes through a load, however they flow. */
  private static double amps(OperatingPoint point, LoadRef load) {
    return Math.abs(
        point.amps(
            point
                .variant()
                .base()
                .element(load.part(), load.filament().map(f -> "filament:" + f).orElse(""))
                .orElseGet(() -> point.variant().base().elementsOf(load.part()).get(0))));
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyCircuitCanBeDuplicatedAndTheCopyWorks(String name) throws Problem {
    Vehicle start = vehicle(name);
    for (Circuit circuit : start.circuits()) {
      Workpiece work = new Workpiece(start);
      Change change = work.make(CircuitEdits.duplicate(circuit.id(), "Second"));
      assertThat(VehicleCheck.check(work.vehicle())).as(circuit.id()).isEmpty();
      assertThat(work.vehicle().parts()).as("old parts stay").containsAll(start.parts());
      Circuit copy = work.vehicle().circuits().get(start.circuits().size());
      assertThat(copy.name()).isEqualTo("Second");
      assertThat(change.circuits()).containsExactly(copy.id());
      OperatingPoint point = point(unblown(work.vehicle()), copy);
      OperatingPoint was = point(unblown(start), circuit);
      for (int i = 0; i < copy.loads().size(); i++) {
        LoadRef load = copy.loads().get(i);
        assertThat(start.part(load.part())).as("a load of its own").isEmpty();
        double before = amps(was, circuit.loads().get(i));
        assertThat(amps(point, load))
            .as(circuit.id() + " " + load + " takes about what the first does")
            .isCloseTo(before, within(0.2 * before + 1e-3));
      }
    }
  }

  @Test
  void aCircuitMovedToAnotherFuseDependsOnThatOne() throws Problem {
    int moved = 0;
    for (String name : List.of("pumper", "truck", "motorcycle")) {
      Vehicle start = vehicle(name);
      List<Part> fuses = start.parts().stream().filter(p -> p.kind() == PartKind.FUSE).toList();
      for (Circuit circuit : start.circuits()) {
        for (Part fuse : fuses) {
          Workpiece work = new Workpiece(start);
          List<String> told;
          try {
            told = work.make(CircuitEdits.moveToFuse(circuit.id(), fuse.id())).told();
          } catch (Problem e) {
            assertThat(work.unsaved()).isFalse();
            continue;
          }
          if (!VehicleCheck.check(work.vehicle()).isEmpty()) {
            // Fed by a fuse that has no feed while the circuit is on, which is told.
            assertThat(VehicleCheck.check(work.vehicle()))
                .allMatch(f -> f.message().contains(" feed"));
            continue;
          }
          if (told.stream().anyMatch(t -> t.contains("has no feed of its own"))) {
            continue;
          }
          moved++;
          Circuit after = work.vehicle().circuit(circuit.id()).orElseThrow();
          OperatingPoint whole = point(work.vehicle(), after);
          Vehicle v = work.vehicle();
          Network network = Network.of(v, Bench.KNOWLEDGE.typicals());
          OperatingPoint pulled =
              Solver.full(network)
                  .solve(Variant.healthy(network), after.onSetting().without(fuse.id()));
          LoadRef load = after.loads().get(0);
          double amps = amps(whole, load);
          assertThat(amps).as(name + " " + circuit.id() + " " + fuse.id()).isGreaterThan(0.001);
          assertThat(amps(pulled, load))
              .as(name + " " + circuit.id() + " without " + fuse.id())
              .isLessThan(0.5 * amps);
        }
      }
    }
    assertThat(moved).as("moves that left a whole vehicle").isGreaterThan(20);
  }

  @Test
  void aMoveToAStrongerFuseIsWarnedOf() throws Problem {
    Workpiece work = new Workpiece(vehicle("motorcycle"));
    Change change = work.make(CircuitEdits.moveToFuse("ignition", "F2"));
    assertThat(change.told()).anyMatch(t -> t.contains("rated higher than"));
  }

  /**
   *
   *
   * <pre>
   * BATT.pos - W1 - BUS - F1 - W2 - S1.in, where W3 goes on to L2; S1.out - W4 - L1
   *                 BUS - F2 (free)
   * </pre>
   */
  private static Vehicle sharedStud() {
    String json =
        """
        {"format": "loopwright-vehicle", "version": 1, "id": "cart", "name": "Cart",
         "system_volts": 12, "grounded": "negative",
         "parts": [
          {"id": "BATT", "kind": "battery"},
          {"id": "BUS", "kind": "splice", "legs": ["a", "b", "c"]},
          {"id": "F1", "kind": "fuse", "amps": 10},
          {"id": "F2", "kind": "fuse", "amps": 10, "spare": ["load"]},
          {"id": "S1", "kind": "switch", "positions": ["off", "on"], "terminals": ["in", "out"],
           "contacts": [{"between": ["in", "out"], "closed_in": ["on"]}]},
          {"id": "L1", "kind": "lamp", "watts": 21}, {"id": "L2", "kind": "lamp", "watts": 5},
          {"id": "W1", "kind": "wire", "from": "BATT.pos", "to": "BUS.a", "size": "4 mm2", "metres": 1},
          {"id": "W2", "kind": "wire", "from": "F1.load", "to": "S1.in", "size": "1 mm2", "metres": 1},
          {"id": "W3", "kind": "wire", "from": "S1.in", "to": "L2.in", "size": "1 mm2", "metres": 1},
          {"id": "W4", "kind": "wire", "from": "S1.out", "to": "L1.in", "size": "1 mm2", "metres": 1},
          {"id": "W5", "kind": "wire", "from": "L1.out", "to": "BATT.neg", "size": "1 mm2", "metres": 1},
          {"id": "W6", "kind": "wire", "from": "L2.out", "to": "BATT.neg", "size": "1 mm2", "metres": 1}],
         "joins": [["BUS.b", "F1.feed"], ["BUS.c", "F2.feed"]],
         "circuits": [{"id": "work", "name": "Work", "loads": ["L1"], "on": {"S1": "on"}},
                      {"id": "side", "name": "Side", "loads": ["L2"]}]}
        """;
    return VehicleFile.read(json, "cart").orThrow();
  }

  @Test
  void twoFusesAreNeverBridgedByAMove() throws Problem {
    Workpiece work = new Workpiece(sharedStud());
    assertThatThrownBy(() -> work.make(CircuitEdits.moveToFuse("work", "F2")))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("S1.in");
    work.make(CircuitEdits.moveToFuse("side", "F2"));
    assertThat(VehicleCheck.check(work.vehicle())).isEmpty();
    PartSpec.Wire side = (PartSpec.Wire) work.vehicle().requirePart("W3").spec();
    assertThat(side.from()).isEqualTo(TerminalRef.parse("F2.load"));
    assertThat(work.vehicle().requirePart("F2").spare()).isEmpty();
    Change change = work.make(CircuitEdits.moveToFuse("work", "F2"));
    assertThat(change.told()).contains("F1 feeds nothing any more");
    assertThat(work.vehicle().requirePart("F1").spare()).containsExactly("load");
    assertThat(VehicleCheck.check(work.vehicle())).isEmpty();
  }

  @Test
  void aCopyOfWhatCarriesOthersFeedIsPutOnTheSameStud() throws Problem {
    Workpiece work = new Workpiece(sharedStud());
    work.make(CircuitEdits.duplicate("work", "Second"));
    assertThat(VehicleCheck.check(work.vehicle())).isEmpty();
    assertThat(work.vehicle().joins())
        .contains(List.of(TerminalRef.parse("S1.in"), TerminalRef.parse("S2.in")));
    assertThat(work.vehicle().circuit("work2").orElseThrow().on()).isEqualTo(Map.of("S2", "on"));
  }

  @Test
  void whatGoesWithARemovedPartIsTold() throws Problem {
    Workpiece work = new Workpiece(vehicle("motorcycle"));
    Change change = work.make(PartEdits.remove("H1"));
    assertThat(work.vehicle().circuit("horn")).isEmpty();
    assertThat(change.told())
        .anyMatch(t -> t.contains("ended on it"))
        .anyMatch(t -> t.contains("(horn) has no load left"));
    assertThat(change.circuits()).contains("horn");
    assertThat(VehicleCheck.check(work.vehicle())).as("the switch now hangs free").isNotEmpty();
  }

  @Test
  void aBrokenVehicleIsSavedOpenedAndMended() throws Exception {
    Workpiece work = new Workpiece(vehicle("tractor"));
    work.make(PartEdits.remove(work.vehicle().battery().id()));
    List<VehicleCheck.Finding> findings = VehicleCheck.check(work.vehicle());
    assertThat(findings).isNotEmpty();
    Path file = folder.resolve("tractor.json");
    try (VehicleStore.Opened opened = new VehicleFiles().create(file, vehicle("tractor"))) {
      opened.save(work.vehicle());
      work.saved(opened.vehicle());
      assertThat(work.unsaved()).isFalse();
    }
    try (VehicleStore.Opened opened = new VehicleFiles().open(file)) {
      assertThat(VehicleCheck.check(opened.vehicle())).isEqualTo(findings);
      work.undo();
      opened.save(work.vehicle());
    }
    assertThat(VehicleFile.read(file).orThrow()).isEqualTo(vehicle("tractor"));
  }

  @Test
  void editsThatCannotBeMadeSayWhatIsAccepted() {
    Workpiece work = new Workpiece(vehicle("motorcycle"));
    for (Edit edit :
        List.of(
            PartEdits.rename("F2", "F3"),
            PartEdits.rename("F2", "my fuse"),
            PartEdits.rename("F2", ""),
            PartEdits.rename("none", "F9"),
            PartEdits.remove("none"),
            PartEdits.renameLoom("none", "other"),
            CircuitEdits.duplicate("none", "x"),
            CircuitEdits.moveToFuse("horn", "H1"),
            CircuitEdits.moveToFuse("horn", "F3"))) {
      assertThatThrownBy(() -> work.make(edit)).isInstanceOf(Problem.class);
    }
    assertThat(work.unsaved()).isFalse();
    assertThat(work.undo()).isEmpty();
  }

  @Test
  void nameVoltsAndGroundedPostAreTakenBackToo() throws Problem {
    Vehicle start = vehicle("motorcycle");
    Workpiece work = new Workpiece(start);
    work.make(VehicleEdits.name("Yard motorcycle"));
    Change change = work.make(VehicleEdits.supply(6, GroundedPole.POSITIVE));
    assertThat(change.told()).hasSize(2);
    Vehicle after = work.vehicle();
    assertThat(after)
        .isEqualTo(start.withName("Yard motorcycle").withSupply(6, GroundedPole.POSITIVE));
    assertThat(work.unsaved()).isTrue();
    work.undo();
    assertThat(work.vehicle()).isEqualTo(start.withName("Yard motorcycle"));
    work.undo();
    assertThat(work.vehicle()).isEqualTo(start);
    work.redo();
    work.redo();
    assertThat(work.vehicle()).isEqualTo(after);
    assertThatThrownBy(() -> work.make(VehicleEdits.name(" "))).isInstanceOf(Problem.class);
  }

  @Test
  void aLoomIsRenamedOnAllItsWires() throws Problem {
    Workpiece work = new Workpiece(vehicle("motorcycle"));
    work.make(PartEdits.renameLoom("tail", "rear"));
    assertThat(VehicleFile.text(work.vehicle()))
        .contains("\"loom\":\"rear\"")
        .doesNotContain("\"loom\":\"tail\"");
  }

  @Test
  void wordsFindPartsAndCircuits() {
    Vehicle v = vehicle("motorcycle");
    assertThat(Finder.find(v, "horn").get(0).id()).isEqualTo("horn");
    assertThat(Finder.find(v, "fuse HEADLAMP"))
        .first()
        .extracting(Finder.Found::id)
        .isEqualTo("F2");
    assertThat(Finder.find(v, "f2").get(0).id()).isEqualTo("F2");
    assertThat(Finder.find(v, "SIGNAL")).extracting(Finder.Found::id).contains("F3");
    assertThat(Finder.find(v, "  ")).isEmpty();
    assertThat(Finder.find(v, "no such thing")).isEmpty();
  }

  @Test
  void tenThousandEditsAreAllTakenBack() throws Problem {
    Vehicle start = vehicle("pumper");
    Workpiece work = new Workpiece(start);
    for (int i = 0; i < 10_000; i++) {
      work.make(PartEdits.label("F1", "label " + i));
    }
    int undone = 0;
    while (work.undo().isPresent()) {
      undone++;
    }
    assertThat(undone).isEqualTo(10_000);
    assertThat(work.vehicle()).isEqualTo(start);
  }
}
