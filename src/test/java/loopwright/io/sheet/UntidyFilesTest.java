package loopwright.io.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.sheet.CellDefect;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.Mapping;
import loopwright.casework.sheet.PinPreview;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.SheetColumn;
import loopwright.casework.sheet.SheetStore;
import loopwright.casework.sheet.Trailer;
import loopwright.casework.sheet.WirePreview;
import loopwright.casework.sheet.WireSheet;
import loopwright.io.VehicleFile;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Untidy lists as files, invented, each against the same small trailer. What must come of a file
 * stands beside it: what it may leave open, the columns as guessed, each row as taken, each defect
 * by line and column, what is said of the rest, and what the vehicle would lack. Each was held
 * against its list line by line (own judgement); nothing else may come of it.
 */
class UntidyFilesTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "untidy");

  static Stream<Path> lists() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList().stream();
    }
  }

  @Test
  void thereAreTwentyAtLeast() throws IOException {
    assertThat(lists().count()).isGreaterThanOrEqualTo(20);
  }

  @ParameterizedTest
  @MethodSource("lists")
  void whatComesOfAFileIsWhatStandsBesideIt(Path file) throws Exception {
    Path beside = Path.of(file.toString().replace(".csv", ".expected"));
    List<String> expected = Files.readAllLines(beside);
    List<String> told = new ArrayList<>();
    expected.stream().filter(l -> l.startsWith("allow: ") || l.equals("pins")).forEach(told::add);
    SheetStore.Read read = new SheetFiles().read(file);
    read.remark().ifPresent(r -> told.add("said: " + r.replace(read.name(), "FILE")));
    Vehicle before = Trailer.vehicle();
    if (told.contains("pins")) {
      pins(read, before, told);
    } else {
      wires(read, before, leniency(told), told);
    }
    String actual = String.join("\n", told) + "\n";
    Path seen = Path.of("target", "untidy", beside.getFileName().toString());
    Files.createDirectories(seen.getParent());
    Files.writeString(seen, actual);
    assertThat(actual).isEqualTo(String.join("\n", expected) + "\n");
  }

  private static Set<Leniency> leniency(List<String> told) {
    Set<Leniency> all = EnumSet.noneOf(Leniency.class);
    for (String line : told) {
      if (line.startsWith("allow: ")) {
        List<String> words = List.of(line.substring("allow: ".length()).split(" "));
        Arrays.stream(Leniency.values()).filter(l -> words.contains(l.word())).forEach(all::add);
      }
    }
    return all;
  }

  private static void wires(
      SheetStore.Read read, Vehicle before, Set<Leniency> leniency, List<String> told) {
    WireSheet sheet = WireSheet.read(read.text(), read.name());
    WirePreview preview = sheet.preview(before, sheet.guess(), leniency);
    told.add("columns: " + columns(preview.mapping()));
    preview.rows().forEach(r -> told.add(row(r)));
    preview.added().forEach(a -> told.add("added: line " + a.line() + ", " + a.told()));
    ends(read, preview.defects(), preview.remarks(), preview.wanting(), told);
    assertThat(preview.applied().isPresent())
        .as("all or nothing")
        .isEqualTo(preview.defects().isEmpty());
    preview.applied().ifPresent(after -> whole(preview, before, after));
  }

  /** Every row is in the vehicle as shown, and all else is as before. */
  private static void whole(WirePreview preview, Vehicle before, Vehicle after) {
    List<Part> come = new ArrayList<>();
    preview.rows().forEach(r -> come.add(r.wire()));
    preview.added().forEach(a -> come.add(a.part()));
    List<String> ids = come.stream().map(Part::id).toList();
    List<Part> others = before.parts().stream().filter(p -> !ids.contains(p.id())).toList();
    assertThat(after.parts()).containsAll(come).containsAll(others);
    assertThat(after.parts()).hasSize(come.size() + others.size());
    if (preview.wanting().isEmpty()) {
      String json = VehicleFile.text(after);
      assertThat(VehicleFile.read(json, "after.json").orThrow()).isEqualTo(after);
    }
  }

  private static void pins(SheetStore.Read read, Vehicle before, List<String> told) {
    PinSheet sheet = PinSheet.read(read.text(), read.name());
    PinPreview preview = sheet.preview(before, sheet.guess());
    told.add("columns: " + columns(preview.mapping()));
    told.add("agreeing: " + preview.agreeing());
    preview.differences().forEach(d -> told.add("differs: " + d.message()));
    ends(read, preview.defects(), preview.remarks(), preview.wanting(), told);
    preview
        .applied()
        .ifPresent(
            after -> {
              PinPreview again = sheet.preview(after, sheet.guess());
              assertThat(again.differences()).allMatch(d -> d.line() == 0);
            });
  }

  private static void ends(
      SheetStore.Read read,
      List<CellDefect> defects,
      List<String> remarks,
      List<VehicleCheck.Finding> wanting,
      List<String> told) {
    defects.forEach(
        d ->
            told.add(
                "defect: "
                    + d.line()
                    + ","
                    + d.column()
                    + " "
                    + d.message().replace(" [" + read.name(), " [FILE")));
    remarks.forEach(r -> told.add("said: " + r));
    wanting.forEach(w -> told.add("wanting: " + w.object() + ": " + w.what()));
  }

  private static <C extends Enum<C> & SheetColumn> String columns(Mapping<C> mapping) {
    return mapping.columns().entrySet().stream()
        .sorted(java.util.Map.Entry.comparingByValue())
        .map(e -> e.getValue() + "=" + e.getKey().word())
        .collect(Collectors.joining(", "));
  }

  private static String row(WirePreview.Row row) {
    PartSpec.Wire w = (PartSpec.Wire) row.wire().spec();
    String head = row.effect().word() + ": line " + row.line() + ", " + row.wire().id();
    String taken = row.taken().stream().map(t -> "; " + t).collect(Collectors.joining());
    return head
        + switch (row.effect()) {
          case NEW ->
              " "
                  + Stream.of(
                          w.from().toString(),
                          w.to().toString(),
                          w.size().toString(),
                          Said.text(w.metres()) + " m",
                          w.colour(),
                          w.loom(),
                          row.wire().name(),
                          row.wire().label(),
                          row.wire().where())
                      .filter(s -> !s.isEmpty())
                      .map(s -> s.replace("\n", "\\n"))
                      .collect(Collectors.joining(", "));
          case CHANGED ->
              row.changes().stream()
                  .map(c -> " " + c.column().word() + " " + c.before() + " > " + c.after())
                  .collect(Collectors.joining(";"));
          case UNCHANGED -> "";
        }
        + taken;
  }
}
