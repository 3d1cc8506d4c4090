package loopwright.casework.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;

/** The mapping step, what a list would leave wanting, and pinouts. */
class WireSheetTest {
  private final Vehicle trailer = Trailer.vehicle();

  @Test
  void columnsCanBeOverruled() {
    WireSheet sheet =
        WireSheet.read("id;a;b;size;length;note\nW7;F3.load;L1.in;16 AWG;1 m;behind rail\n", "l");
    Mapping<WireColumn> guess = sheet.guess();
    assertThat(sheet.preview(trailer, guess).applied()).isEmpty();
    Mapping<WireColumn> said =
        guess
            .with(WireColumn.FROM, guess.find("A").orElseThrow())
            .with(WireColumn.TO, guess.find("3").orElseThrow());
    WirePreview preview = sheet.preview(trailer, said);
    assertThat(preview.applied()).isPresent();
    assertThat(preview.remarks())
        .anyMatch(r -> r.startsWith("Notes left out"))
        .anyMatch(r -> r.contains(": 6."));
    assertThat(preview.rows().get(0).wire().where()).isEmpty();

    WirePreview noted = sheet.preview(trailer, said.with(WireColumn.WHERE, 6));
    assertThat(noted.rows().get(0).wire().where()).isEqualTo("behind rail");
    assertThat(noted.mapping().at(WireColumn.NOTE)).isEmpty();
    assertThat(sheet.preview(trailer, said.without(WireColumn.NOTE)).remarks())
        .anyMatch(r -> r.equals("Columns not read: note."));
    assertThat(guess.find("7")).isEmpty();
    assertThatThrownBy(() -> guess.with(WireColumn.FROM, 7))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void whatIsTakenInACertainWayIsSaid() {
    WireSheet sheet = WireSheet.read("from,to,size,length,price\nF3.load,L1.in,16 AWG,2,9\n", "l");
    assertThat(sheet.preview(trailer, sheet.guess()).remarks())
        .containsExactly(
            "Columns not read: price.",
            "Lengths without a unit, taken as metres: 1.",
            "Rows without a wire's name, known by their ends or given the next free one: 1.",
            "Wires of the vehicle that the list doesn't name stay as they are: 6.");
  }

  @Test
  void aGroundPointThatComesWithTheListIsBoltedToTheBody() {
    WireSheet sheet = WireSheet.read("wire,from,to,size,length\nW5,L1.out,G2,16 AWG,0.3 m\n", "l");
    WirePreview preview = sheet.preview(trailer, sheet.guess(), EnumSet.of(Leniency.ADD_PARTS));
    assertThat(preview.added().get(0).told()).startsWith("G2: added as a ground on FRAME.");
    assertThat(preview.applied().orElseThrow().joins())
        .containsExactly(
            List.of(new TerminalRef("G2", "metal"), new TerminalRef("FRAME", "metal")));
    assertThat(preview.wanting()).as("the lamp's loop is whole").isEmpty();
  }

  @Test
  void aMovedWireThatOpensACircuitIsTold() {
    WireSheet sheet = WireSheet.read("wire,to\nW4,FRAME.metal\n", "l");
    WirePreview preview = sheet.preview(trailer, sheet.guess());
    assertThat(preview.applied()).isPresent();
    assertThat(preview.wanting().stream().map(VehicleCheck.Finding::message))
        .anyMatch(m -> m.contains("L1"));
  }

  @Test
  void anEmptyCellClearsWhatCanBeEmptyAndAMissingColumnKeeps() {
    WireSheet sheet = WireSheet.read("wire,colour,size\nW2,,\n", "l");
    WirePreview preview = sheet.preview(trailer, sheet.guess());
    assertThat(preview.rows().get(0).changes())
        .containsExactly(new WirePreview.Change(WireColumn.COLOUR, "red/white", ""));
  }

  @Test
  void pinoutIsWrittenAsTheVehicleHasIt() {
    assertThat(PinSheet.text(trailer, Set.of("C1")))
        .isEqualTo(
            "connector,cavity,wire in,wire out,colour\n"
                + "C1,1,W3,W4,\"green, green/black\"\nC1,2,,,\n");
    assertThat(PinSheet.text(trailer, Set.of("C9")).lines()).hasSize(1);
  }

  @Test
  void pinsThatDifferAreListed() {
    PinPreview preview =
        pins("Plug;Pin;Wire label in;Wire label out;Colour\nC1;1;LP;W2;green + Green-Black\n");
    assertThat(preview.defects()).isEmpty();
    assertThat(preview.agreeing()).isZero();
    assertThat(preview.differences().stream().map(PinPreview.Difference::message))
        .containsExactly(
            "C1 cavity 1, wire out: the list says W2, the vehicle W4 [line 2, column 4]; W2 doesn't"
                + " end on C1; say its ends in the wire list; the list puts W4 nowhere; say its ends"
                + " in the wire list",
            "C1 cavity 2 is not in the list");
  }

  @Test
  void aWireTooFewOrAtTwoCavitiesDiffers() {
    PinPreview preview = pins("cavity,in,out,colour\n1,W3,,green\n2,W3,-,\n");
    assertThat(
            preview.differences().stream().map(d -> d.line() + "," + d.column() + " " + d.what()))
        .containsExactly("2,3 WIRE_OUT", "3,2 WIRE_IN");
  }

  @Test
  void pinsThatAreNoneAreDefects() {
    PinPreview preview =
        pins(
            "connector,cavity,wire in,wire out\nC2,1,W3,W4\nC1,9,W3,W4\nC1,1,W3,W4x\nC1,1,W3,W4\n"
                + "F3,1,,\n");
    assertThat(preview.defects().stream().map(d -> d.line() + "," + d.column()))
        .containsExactly("2,1", "3,2", "4,4", "5,2", "6,1");
    assertThat(preview.defects().get(0).message()).contains("did you mean \"C1\"");
    assertThat(preview.defects().get(2).message()).contains("did you mean \"W4\"");
  }

  private PinPreview pins(String text) {
    PinSheet sheet = PinSheet.read(text, "pins.csv");
    return sheet.preview(trailer, sheet.guess());
  }

  @Test
  void wiresChangedOverBetweenCavitiesAreMovedAndNothingElse() {
    PinPreview preview = pins("cavity;wire in;wire out;colour\n1;;W4;GN-BK\n2;W3;;green\n");
    assertThat(preview.differences()).hasSize(2).allMatch(d -> d.open().isEmpty());
    Vehicle after = preview.applied().orElseThrow();
    assertThat(after.requirePart("W3").spec())
        .isInstanceOfSatisfying(PartSpec.Wire.class, w -> assertThat(w.to()).hasToString("C1.2a"));
    assertThat(after.requirePart("W4")).isEqualTo(trailer.requirePart("W4"));
    assertThat(after.requirePart("C1").spare()).containsExactlyInAnyOrder("1a", "2b");
    assertThat(preview.wanting().stream().map(VehicleCheck.Finding::message))
        .as("the lamp's feed is open now")
        .anyMatch(m -> m.contains("L1"));
    assertThat(PinSheet.text(after, Set.of())).contains("C1,1,,W4,green/black\nC1,2,W3,,green");
  }

  @Test
  void oneColourForOneWireIsTakenAndOneForTwoIsAsked() {
    PinPreview one = pins("cavity;in;colour\n1;W3;red + blue\n");
    assertThat(one.differences().get(0).open()).isEmpty();
    Vehicle after = one.applied().orElseThrow();
    assertThat(((PartSpec.Wire) after.requirePart("W3").spec()).colour()).isEqualTo("red");
    assertThat(((PartSpec.Wire) after.requirePart("W4").spec()).colour()).isEqualTo("blue");
    PinPreview three = pins("cavity;in;colour\n1;W3;red + blue + white\n");
    assertThat(three.differences().get(0).message()).contains("which of the wires W3 and W4");
    assertThat(three.applied()).isEmpty();
  }

  @Test
  void aListMayBeTakenForOneConnectorAlone() {
    PinSheet sheet =
        PinSheet.read("connector,cavity,wire in\nC1,1,W3\nC1,2,\nC2,1,W9\nF3,1,\n", "pins");
    PinPreview all = sheet.preview(trailer, sheet.guess());
    assertThat(all.defects()).hasSize(2);
    PinSheet mixed = PinSheet.read("connector,cavity,wire in\nC1,1,W3\nC1,2,\n", "pins");
    assertThat(mixed.preview(trailer, mixed.guess(), Set.of("C1")).agreeing()).isEqualTo(2);
    assertThat(mixed.preview(trailer, mixed.guess(), Set.of("C7")).remarks())
        .containsExactly("Rows about other connectors left out: 2.");
  }
}
