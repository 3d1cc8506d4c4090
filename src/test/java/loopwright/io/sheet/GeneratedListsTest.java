package loopwright.io.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.sheet.CellDefect;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.PinPreview;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.SheetStore;
import loopwright.casework.sheet.Trailer;
import loopwright.casework.sheet.WirePreview;
import loopwright.casework.sheet.WireSheet;
import loopwright.generated.Generated;
import loopwright.io.VehicleFile;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spoilt wire lists and pinouts: refused with their defects, or what comes of them can be. */
class GeneratedListsTest {
  private static final Vehicle BEFORE = Trailer.vehicle();

  @TempDir Path folder;

  @Test
  void lists() throws IOException {
    List<byte[]> seeds = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("src", "test", "resources", "untidy"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".csv")).sorted().toList()) {
        seeds.add(Files.readAllBytes(file));
      }
    }
    Path file = folder.resolve("spoilt.csv");
    // Each is read three times, and cut at four signs each time.
    Generated.run(
        "wire lists",
        Generated.share(),
        seeds,
        4 * Generated.MOST_BYTES,
        bytes -> {
          Files.write(file, bytes);
          SheetStore.Read read;
          try {
            read = new SheetFiles().read(file);
          } catch (Problem e) {
            assertThat(e.getMessage()).isNotBlank();
            return false;
          }
          return wires(read, Set.of()) | wires(read, EnumSet.allOf(Leniency.class)) | pins(read);
        });
  }

  /** Each of these once took minutes, or all memory. */
  @ParameterizedTest
  @CsvSource({
    "'name,from,to,', 'n,', 100000, 'row: has more than 200 cells [wide.csv, line 1]'",
    "'name,from,to\nW1,', 'n,', 100000, 'row: has more than 200 cells [wide.csv, line 2]'",
    "'name,from,to\n', 'W1,F3.load,S1.in\n', 400000,"
        + " 'list: has more than 1,000,000 cells [wide.csv]'"
  })
  void whatNoListNeedsIsRefusedByName(String begins, String more, int times, String told) {
    String text = begins + more.repeat(times);
    WireSheet wires = WireSheet.read(text, "wide.csv");
    assertThat(wires.preview(BEFORE, wires.guess()).defects())
        .extracting(CellDefect::message)
        .containsExactly(told);
    PinSheet pins = PinSheet.read(text, "wide.csv");
    assertThat(pins.preview(BEFORE, pins.guess()).defects())
        .extracting(CellDefect::message)
        .contains(told);
  }

  @Test
  void emptyCellsBehindTheLastAreNoMatter() {
    String row = ",".repeat(16_000) + "\n";
    WireSheet sheet = WireSheet.read("from,to,length" + row + "L1.out,BATT.neg,1" + row, "a.csv");
    assertThat(sheet.preview(BEFORE, sheet.guess()).defects())
        .extracting(CellDefect::message)
        .noneMatch(m -> m.contains("200 cells"));
  }

  private static boolean wires(SheetStore.Read read, Set<Leniency> leniency) {
    WireSheet sheet = WireSheet.read(read.text(), read.name());
    WirePreview preview = sheet.preview(BEFORE, sheet.guess(), leniency);
    preview.defects().forEach(d -> assertThat(d.message()).isNotBlank());
    assertThat(preview.applied().isPresent()).isEqualTo(preview.defects().isEmpty());
    return holds(preview.applied(), preview.wanting());
  }

  private static boolean pins(SheetStore.Read read) {
    PinSheet sheet = PinSheet.read(read.text(), read.name());
    PinPreview preview = sheet.preview(BEFORE, sheet.guess());
    return holds(preview.applied(), preview.wanting());
  }

  /** What is said to be whole is, and comes back from its file; what wants something is a draft. */
  private static boolean holds(Optional<Vehicle> applied, List<VehicleCheck.Finding> wanting) {
    applied.ifPresent(
        after -> {
          assertThat(VehicleCheck.check(after).isEmpty()).isEqualTo(wanting.isEmpty());
          if (wanting.isEmpty()) {
            String json = VehicleFile.text(after);
            assertThat(VehicleFile.read(json, "after.json").orThrow()).isEqualTo(after);
          }
        });
    return applied.isPresent() && wanting.isEmpty();
  }
}
