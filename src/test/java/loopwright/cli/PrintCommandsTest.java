package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrintCommandsTest {
  @TempDir Path folder;
  private TestWorld world;

  @BeforeEach
  void freshWorld() {
    world = new TestWorld(new MemoryStore());
  }

  private static boolean pdf(Path file) throws IOException {
    return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).startsWith("%PDF-");
  }

  @Test
  void theMakingListIsWrittenAsPdfAndAsTables() throws IOException {
    Path paper = folder.resolve("making.pdf");
    assertThat(world.run("making", "pumper", "--out", paper.toString())).isZero();
    assertThat(pdf(paper)).isTrue();
    assertThat(world.outText()).contains("Written: " + paper);

    Path table = folder.resolve("cut.csv");
    assertThat(
            world.run(
                "making",
                "pumper",
                "--out",
                table.toString(),
                "--table",
                "cutting",
                "--paper",
                "letter"))
        .isZero();
    assertThat(Files.readString(table)).startsWith("Wire,Colour,Size,Cut m,From,");
  }

  @Test
  void withoutAFileTheTableIsPrinted() {
    assertThat(world.run("making", "pumper")).isZero();
    assertThat(world.outText()).startsWith("Group,What,Quantity,Unit,For,Note\n");
    assertThat(world.run("labels", "pumper")).isZero();
    assertThat(world.outText()).contains("For a,Label,This end,Far end\n");
  }

  @Test
  void theAllowanceIsTakenAndBounded() {
    assertThat(world.run("making", "pumper", "--table", "cutting", "--more", "101")).isEqualTo(2);
    assertThat(world.errText()).contains("1.01");
    assertThat(world.run("making", "pumper", "--table", "cutting", "--more", "0", "--ends", "0"))
        .isZero();
  }

  @Test
  void labelsAreWrittenAsSheets() throws IOException {
    Path paper = folder.resolve("labels.PDF");
    assertThat(world.run("labels", "pumper", "--out", paper.toString())).isZero();
    assertThat(pdf(paper)).isTrue();
  }

  @Test
  void whatCantBeWrittenIsSaid() {
    Path odd = folder.resolve("making.doc");
    assertThat(world.run("making", "pumper", "--out", odd.toString())).isEqualTo(2);
    assertThat(world.errText()).contains("must end in .pdf or");
    Path nowhere = folder.resolve("no").resolve("making.pdf");
    assertThat(world.run("making", "pumper", "--out", nowhere.toString())).isEqualTo(1);
    assertThat(world.errText()).contains("making list cannot be written");
    assertThat(world.run("labels", "cart", "--out", odd.toString())).isEqualTo(3);
    assertThat(odd).doesNotExist();
  }

  @Test
  void circuitsAreDrawnAllOrThoseNamed() throws IOException {
    Path paper = folder.resolve("drawings.pdf");
    assertThat(world.run("drawings", "pumper", "--out", paper.toString())).isZero();
    assertThat(pdf(paper)).isTrue();
    long all = Files.size(paper);
    String first = world.vehicle.circuits().get(0).id();
    assertThat(world.run("drawings", "pumper", "--circuit", first, "--out", paper.toString()))
        .isZero();
    assertThat(Files.size(paper)).isLessThanOrEqualTo(all);
    assertThat(world.run("drawings", "pumper", "--circuit", "nil", "--out", paper.toString()))
        .isEqualTo(2);
    assertThat(world.errText()).contains("'nil'").contains(first);
    assertThat(world.run("drawings", "pumper")).isEqualTo(2);
    assertThat(world.errText()).contains("--out FILE.pdf");
  }

  @Test
  void thePaperCheckIsPrintedAndStillSaysWhetherAnythingIsWrong() throws IOException {
    int judged = world.run("check", "pumper");
    Path paper = folder.resolve("check.pdf");
    assertThat(world.run("check", "pumper", "--out", paper.toString())).isEqualTo(judged);
    assertThat(pdf(paper)).isTrue();
    assertThat(world.run("check", "pumper", "--out", folder.resolve("a.csv").toString()))
        .isEqualTo(2);
  }

  @Test
  void theOrderOfChecksIsShownOrPrinted() throws IOException {
    assertThat(world.run("card", "pumper", "beacon")).isZero();
    assertThat(world.outText()).contains("CAREFUL", "GOOD", "I READ", "go to 2");
    Path paper = folder.resolve("card.pdf");
    assertThat(world.run("card", "pumper", "beacon", "--out", paper.toString())).isZero();
    assertThat(pdf(paper)).isTrue();
    assertThat(world.run("card", "pumper", "nil")).isEqualTo(2);
    assertThat(world.run("card", "pumper")).isEqualTo(2);
  }
}
