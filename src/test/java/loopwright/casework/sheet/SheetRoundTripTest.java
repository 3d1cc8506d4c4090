package loopwright.casework.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.io.VehicleFile;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lists out and in again. */
class SheetRoundTripTest {
  static Stream<Path> demoVehicles() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("demo-data", "vehicles"))) {
      List<Path> all = files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
      assertThat(all).hasSize(4);
      return all.stream();
    }
  }

  private static Vehicle withParts(Vehicle v, List<Part> parts) {
    return new Vehicle(
        v.id(), v.name(), v.systemVolts(), v.grounded(), parts, v.joins(), v.circuits(), v.note());
  }

  private static Vehicle bare(Vehicle v) {
    return withParts(
        v, v.parts().stream().filter(p -> !(p.spec() instanceof PartSpec.Wire)).toList());
  }

  private static WirePreview preview(String text, Vehicle vehicle) {
    WireSheet sheet = WireSheet.read(text, "list.csv");
    return sheet.preview(vehicle, sheet.guess());
  }

  @ParameterizedTest
  @MethodSource("demoVehicles")
  void wiresComeBackIntoAVehicleWithoutThem(Path file) {
    Vehicle vehicle = VehicleFile.read(file).orThrow();
    WirePreview preview = preview(WireSheet.text(vehicle), bare(vehicle));
    assertThat(preview.defects()).isEmpty();
    assertThat(preview.applied()).contains(vehicle);
    assertThat(preview.wanting()).isEmpty();
    assertThat(preview.count(WirePreview.Effect.NEW)).isEqualTo(preview.rows().size());
  }

  @ParameterizedTest
  @MethodSource("demoVehicles")
  void aListOfItsOwnChangesNothing(Path file) {
    Vehicle vehicle = VehicleFile.read(file).orThrow();
    WirePreview preview = preview(WireSheet.text(vehicle), vehicle);
    assertThat(preview.applied()).contains(vehicle);
    assertThat(preview.count(WirePreview.Effect.UNCHANGED)).isEqualTo(preview.rows().size());
    assertThat(preview.remarks()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("demoVehicles")
  void everyPinComesBack(Path file) {
    Vehicle vehicle = VehicleFile.read(file).orThrow();
    String text = PinSheet.text(vehicle, Set.of());
    PinSheet sheet = PinSheet.read(text, "pins.csv");
    PinPreview preview = sheet.preview(vehicle, sheet.guess());
    assertThat(preview.defects()).isEmpty();
    assertThat(preview.differences()).isEmpty();
    assertThat(preview.agreeing()).isEqualTo((int) text.lines().count() - 1).isPositive();
  }

  @Test
  void neitherWrittenNorCopiedIsACellAFormula() {
    String row = SheetText.line(List.of("=1+1", "'@x", "-", "a=b"));
    assertThat(row).isEqualTo("'=1+1,''@x,-,a=b\n");
    assertThat(SheetText.tabbed(row)).isEqualTo("'=1+1\t''@x\t-\ta=b\n");
    assertThat(SheetText.cut(row, ',').rows().get(0).cells())
        .containsExactly("=1+1", "'@x", "-", "a=b");
  }

  @Test
  void wordsAndNumbersThatNeedCareComeBack() {
    Vehicle trailer = Trailer.vehicle();
    Part odd =
        new Part(
            "#1",
            " \"feed\", first; \nsecond line ",
            "// no remark",
            new PartSpec.Wire(
                PartKind.STRAP,
                new TerminalRef("F3", "load"),
                new TerminalRef("L1", "in"),
                new WireSize(WireSize.Unit.AWG, -1),
                Estimate.between(0.1, 0.30000000000000004, 1.0 / 3),
                Optional.of(Estimate.of(1e-4)),
                "red, white",
                "\tloom"),
            java.util.Map.of(),
            Optional.of(0.1),
            Optional.of(12.5),
            Set.of(),
            "sep=;");
    List<Part> parts = new java.util.ArrayList<>(trailer.parts());
    parts.add(2, odd);
    Vehicle vehicle = withParts(trailer, parts);
    assertThat(preview(WireSheet.text(vehicle), bare(vehicle)).applied()).contains(vehicle);
  }
}
