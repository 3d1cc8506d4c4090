package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import loopwright.ui.lists.Prints;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrintFilesTest {
  private static final Clock DAY =
      Clock.fixed(Instant.parse("2024-05-17T20:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  @Test
  void everySheetBecomesAFileNamedAfterTheVehicle() throws Exception {
    PrintFiles prints = new PrintFiles(new Engine(folder.resolve("data")), DAY);
    Vehicle tractor = Bench.vehicle("tractor");
    Prints.Plan plan = new Prints.Plan(tractor, 70, Optional.of("tail"));
    for (Prints.Sheet sheet : Prints.Sheet.values()) {
      Path file = prints.write(plan, sheet, Prints.Paper.LETTER, folder);
      assertThat(file).hasParent(folder.toAbsolutePath());
      String name = file.getFileName().toString();
      String begin = Files.readString(file, StandardCharsets.ISO_8859_1).substring(0, 5);
      assertThat(name).startsWith("tractor-");
      assertThat(begin).isEqualTo(name.endsWith(".pdf") ? "%PDF-" : begin);
      assertThat(name.endsWith(".csv"))
          .isEqualTo(sheet == Prints.Sheet.BUYING || sheet == Prints.Sheet.CUTTING);
      assertThat(name.contains("tail")).isEqualTo(sheet == Prints.Sheet.ORDER);
    }
    Vehicle bare = tractor.with(tractor.parts(), tractor.joins(), List.of());
    assertThatThrownBy(
            () ->
                prints.write(
                    new Prints.Plan(bare, 70, Optional.empty()),
                    Prints.Sheet.DRAWINGS,
                    Prints.Paper.A4,
                    folder))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("no circuits");
  }
}
