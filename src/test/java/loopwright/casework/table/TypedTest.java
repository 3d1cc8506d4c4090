package loopwright.casework.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.io.VehicleFile;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.Language;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTest {
  private static final Vehicle NOTHING =
      new Vehicle("new", "New", 12, GroundedPole.NEGATIVE, List.of(), List.of(), List.of(), "");

  private static Vehicle demo(String name) {
    return VehicleFile.read(Path.of("demo-data", "vehicles", name + ".json")).orThrow();
  }

  private static Map<Column, String> cells(Object... columnsAndTexts) {
    Map<Column, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < columnsAndTexts.length; i += 2) {
      cells.put((Column) columnsAndTexts[i], (String) columnsAndTexts[i + 1]);
    }
    return cells;
  }

  private static Vehicle with(Vehicle vehicle, Table table, Optional<String> row, Object... cells)
      throws Problem {
    Typed typed = Typed.on(vehicle, table, "test", List.of(new Typed.Entry(row, cells(cells))));
    assertThat(typed.bad()).isEmpty();
    return typed.make(vehicle).vehicle();
  }

  private static Vehicle added(Vehicle vehicle, Table table, Object... cells) throws Problem {
    return with(vehicle, table, Optional.empty(), cells);
  }

  private static String refused(Vehicle vehicle, Table table, String row, Column at, String text) {
    Typed typed =
        Typed.on(
            vehicle, table, "test", List.of(new Typed.Entry(Optional.of(row), Map.of(at, text))));
    assertThat(typed.bad()).as(text).hasSize(1);
    assertThat(typed.bad().get(0).column()).isEqualTo(at);
    assertThatThrownBy(() -> typed.make(vehicle)).isInstanceOf(Problem.class);
    return typed.bad().get(0).problem().accepted();
  }

  /** What stands in a cell can be typed there again and changes nothing. */
  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyTextShownReadsBackTheSame(String name) {
    Vehicle vehicle = demo(name);
    Rows rows = new Rows(vehicle);
    int cells = 0;
    for (Table table : Table.values()) {
      for (Rows.Row row : rows.of(table)) {
        for (int i = 1; i < table.columns().size(); i++) {
          Column column = table.columns().get(i);
          Draft draft = new Draft(vehicle);
          String text = row.cells().get(i);
          if (text.isEmpty() && table.rule(column).required(draft, row.id())) {
            continue;
          }
          try {
            table.rule(column).set(draft, row.id(), text);
          } catch (Problem e) {
            boolean none = text.isEmpty();
            assertThat(none).as(row.id() + " " + column + ": " + e.getMessage()).isFalse();
          }
          assertThat(new Rows(draft.vehicle()).of(table))
              .as(row.id() + " " + column + " '" + text + "'")
              .contains(row);
          assertThat(draft.vehicle().parts())
              .as(row.id() + " " + column)
              .isEqualTo(vehicle.parts());
          assertThat(draft.vehicle().circuits()).isEqualTo(vehicle.circuits());
          cells++;
        }
      }
    }
    assertThat(cells).isGreaterThan(300);
  }

  @ParameterizedTest
  @EnumSource(PartKind.class)
  void everyKindOfPartStandsInATable(PartKind kind) {
    assertThat(Table.of(kind).kinds()).contains(kind);
    assertThat(Blanks.of(kind).kind()).isEqualTo(kind);
  }

  /** Battery, fuse, switch, lamp, stud and frame with four wires: the README's trailer, typed. */
  @Test
  void aVehicleThatHoldsTogetherIsTypedFromNothing() throws Problem {
    Vehicle v = added(NOTHING, Table.SUPPLY, Column.ID, "BATT", Column.KIND, "battery");
    v = added(v, Table.SUPPLY, Column.ID, "FRAME", Column.KIND, "body");
    v = added(v, Table.FUSES, Column.AMPS, "10");
    v = added(v, Table.SWITCHES, Column.NAME, "lamp switch");
    v = added(v, Table.LOADS, Column.ID, "L1", Column.KIND, "lamp", Column.WATTS, "55 W");
    v = added(v, Table.GROUNDS, Column.TOUCHES, "FRAME");
    v = added(v, Table.WIRES, wire("BATT.pos", "F1.feed", "14 AWG", "30 cm"));
    v = added(v, Table.WIRES, wire("F1 load", "S1.in", "16", "2"));
    v = added(v, Table.WIRES, wire("S1.out", "L1.in", "16", "about 4"));
    v = added(v, Table.WIRES, wire("L1.out", "G1.lug", "16", "1.5-2.5 ft"));
    v = added(v, Table.WIRES, wire("FRAME", "BATT.neg", "16 mm2", "0.4", Column.KIND, "strap"));
    v =
        added(
            v, Table.CIRCUITS, Column.NAME, "Work lamp", Column.LOADS, "l1", Column.ON, "S1 = on");

    assertThat(VehicleCheck.check(v)).isEmpty();
    assertThat(v.requirePart("W3").spec())
        .isInstanceOfSatisfying(
            PartSpec.Wire.class,
            w -> {
              assertThat(w.metres()).isEqualTo(Estimate.between(2.8, 4, 5.2));
              assertThat(w.from()).isEqualTo(new TerminalRef("S1", "out"));
            });
    assertThat(v.joins())
        .containsExactly(
            List.of(new TerminalRef("FRAME", "metal"), new TerminalRef("G1", "metal")));
    assertThat(v.circuits())
        .containsExactly(
            new Circuit("C1", "Work lamp", List.of(LoadRef.of("L1")), Map.of("S1", "on"), ""));
  }

  private static Object[] wire(String from, String to, String size, String metres, Object... more) {
    List<Object> all =
        new ArrayList<>(
            List.of(Column.FROM, from, Column.TO, to, Column.SIZE, size, Column.METRES, metres));
    all.addAll(List.of(more));
    return all.toArray();
  }

  @Test
  void whatIsMissingFromANewRowIsNamed() {
    Typed typed =
        Typed.on(
            demo("pumper"),
            Table.WIRES,
            "test",
            List.of(new Typed.Entry(Optional.empty(), cells(Column.FROM, "F1.load"))));
    assertThat(typed.bad().stream().map(Typed.Bad::column))
        .containsExactly(Column.TO, Column.SIZE, Column.METRES);
  }

  /** Limits are those of the check of a vehicle, so they are the same in files and tables. */
  @ParameterizedTest
  @CsvSource({
    "FUSES, F3, AMPS, -5, 0.1 to 500 A",
    "FUSES, F3, AMPS, ten, the one number printed on it",
    "FUSES, F3, AMPS, 7-8, the one number printed on it",
    "WIRES, W9, METRES, 150 m, more than 0 and at most 100 m",
    "WIRES, W9, METRES, 'two, or so', a length",
    "WIRES, W9, METRES, '1,200', a comma before three digits can be read two ways",
    "WIRES, W9, SIZE, 80 AWG, 4/0 to 40 AWG",
    "WIRES, W9, FROM, nowhere, a part of the vehicle and its terminal",
    "WIRES, W9, FROM, F3, 'one of its terminals feed, load'",
    "WIRES, W9, FROM, '', needed",
    "WIRES, W9, ID, W 9, letters",
    "WIRES, W9, ID, W8, there is a part of this id already",
    "LOADS, L5, AMPS, 5, 'empty on a lamp, which has no such value'",
    "RELAYS, KM, SUPPRESSION, zener, 'one of none, resistor'",
    "CIRCUITS, beacon, ON, KEY=start-up, one of the positions of KEY",
    "CIRCUITS, beacon, ON, KEY, controls with the positions",
    "GROUNDS, G4, TOUCHES, elsewhere: FRAME, 'one of its terminals lug, metal'",
  })
  void whatCantBeTakenIsToldWithTheLimit(
      Table table, String row, Column column, String text, String accepted) {
    assertThat(refused(demo("pumper"), table, row, column, text)).contains(accepted);
  }

  @Test
  void wattsOfALoadThatHasAmpsAreToldInAmps() throws Problem {
    Vehicle v =
        added(demo("pumper"), Table.LOADS, Column.ID, "H9", Column.KIND, "horn", Column.AMPS, "5");
    assertThat(refused(v, Table.LOADS, "H9", Column.AMPS, "55 W"))
        .isEqualTo("amperes; 55 W at 12 V are about 4.6");
  }

  @Test
  void anotherKindKeepsWhatBothHave() throws Problem {
    Vehicle v =
        added(NOTHING, Table.LOADS, Column.ID, "L1", Column.KIND, "lamp", Column.WATTS, "55");
    v = with(v, Table.LOADS, Optional.of("L1"), Column.KIND, "motor");
    assertThat(v.requirePart("L1").spec())
        .isEqualTo(
            new PartSpec.Motor(
                new Estimate(4.6, Optional.of(new Spread(3.22, 4.6, 5.98))), Optional.empty()));
  }

  @Test
  void twoFilamentsHaveTheirNames() throws Problem {
    Vehicle v =
        added(NOTHING, Table.LOADS, Column.KIND, "dual", Column.WATTS, "low about 55, high 60");
    assertThat(v.requirePart("L1").spec())
        .isEqualTo(
            new PartSpec.DualLamp(
                "low",
                Estimate.between(38.5, 55, 71.5),
                "high",
                Estimate.of(60),
                Optional.empty()));
  }

  @Test
  void anIdTypedAnewIsARenameEverywhere() throws Problem {
    Vehicle v = with(demo("pumper"), Table.FUSES, Optional.of("F3"), Column.ID, "F33");
    assertThat(v.part("F3")).isEmpty();
    assertThat(VehicleCheck.check(v)).isEmpty();
  }

  @Test
  void oneBadCellOfManyTakesNothing() {
    Vehicle v = demo("pumper");
    Typed typed =
        Typed.on(
            v,
            Table.FUSES,
            "test",
            List.of(
                new Typed.Entry(Optional.of("F3"), Map.of(Column.AMPS, "15")),
                new Typed.Entry(Optional.of("F4"), Map.of(Column.AMPS, "much")),
                new Typed.Entry(Optional.empty(), Map.of(Column.NAME, "spare"))));
    assertThat(typed.bad())
        .extracting(Typed.Bad::entry, Typed.Bad::column)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(1, Column.AMPS),
            org.assertj.core.groups.Tuple.tuple(2, Column.AMPS));
    assertThatThrownBy(() -> typed.make(v)).isInstanceOf(Problem.class);
  }

  @Test
  void cellsSpeakGermanAndTakeBothLanguages() throws Problem {
    Vehicle pumper = demo("pumper");
    Language.use(Language.GERMAN);
    try {
      for (String word : List.of("Wechsler", "wechs", "changeover")) {
        Vehicle relay = with(pumper, Table.RELAYS, Optional.of("K2"), Column.CONTACTS, word);
        assertThat(new Rows(relay).of(Table.RELAYS).toString()).contains("Wechsler");
      }
      Vehicle lit = added(NOTHING, Table.LOADS, Column.KIND, "Heizung", Column.AMPS, "5,5");
      assertThat(lit.parts().get(0).kind()).isEqualTo(PartKind.HEATER);
      assertThat(refused(pumper, Table.LOADS, "L5", Column.KIND, "Gurke"))
          .startsWith("eins von Lampe, Zweifadenlampe, LED");
    } finally {
      Language.use(Language.ENGLISH);
    }
  }
}
