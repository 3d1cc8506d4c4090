package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Optional;
import loopwright.casework.record.Journals;
import loopwright.diagnosis.ComplaintKind;
import loopwright.io.wire.SchemaCheck;
import loopwright.knowledge.Context;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CliTest {
  private final MemoryStore store = new MemoryStore();

  @Test
  void optionsMakeTheCase() {
    TestWorld world = new TestWorld(store);
    assertThat(
            world.run(
                "find",
                "pumper",
                "--circuit",
                "beacon",
                "--kind",
                "blows-its-fuse",
                "--load",
                "L1",
                "--context",
                "after-work",
                "--meter",
                "old"))
        .isZero();
    assertThat(world.desk.asked.circuit()).isEqualTo("beacon");
    assertThat(world.desk.asked.kind()).isEqualTo(ComplaintKind.BLOWS_FUSE);
    assertThat(world.desk.asked.load()).isEqualTo(Optional.of("L1"));
    assertThat(world.desk.asked.context()).isEqualTo(Context.AFTER_WORK);
    assertThat(world.desk.asked.meter()).isEqualTo("old");
    assertThat(world.desk.asked.vehicleName()).isEqualTo("pumper");
  }

  @Test
  void whatIsLeftOutHasItsUsualValue() {
    TestWorld world = new TestWorld(store);
    world.run("find", "pumper", "--complaint", "beacon dead");
    assertThat(world.desk.asked.context()).isEqualTo(Context.IN_SERVICE);
    assertThat(world.desk.asked.meter()).isEqualTo("basic");
    assertThat(world.desk.asked.load()).isEmpty();
    assertThat(world.errText()).as("progress goes to the log").contains("Working out the circuit");
    assertThat(world.outText()).doesNotContain("Working out the circuit");
  }

  @Test
  void aGivenKindTakesThePlaceOfTheWordsOwn() {
    TestWorld world = new TestWorld(store);
    world.run("find", "pumper", "--complaint", "beacon dead", "--kind", "dim");
    assertThat(world.desk.asked.kind()).isEqualTo(ComplaintKind.DIM);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2|find pumper --complaint headlamps_odd|a circuit and what it does",
        "2|find pumper --circuit horn --kind dead|circuit 'horn'",
        "2|find pumper --circuit beacon --kind d|drains the battery",
        "2|find pumper --complaint x --context yesterday|fresh-build",
        "2|find|VEHICLE",
        "2|find --colour|Unknown option",
        "2|dance|Unmatched argument",
        "2||find, cases, ready, practise, vehicle, new, add, check, prove, ground, wires, making, labels, drawings, card, good-readings or explain",
        "3|find lorry --complaint x|lorry",
        "4|find --resume nothing|nothing",
        "4|find pumper --resume nothing|nothing"
      })
  void whatCannotBeBegunIsToldOnTheLogWithItsExitCode(int code, String args, String said) {
    TestWorld world = new TestWorld(store);
    String[] words = args == null || args.isBlank() ? new String[0] : args.split(" ");
    assertThat(world.run(words)).isEqualTo(code);
    assertThat(world.errText()).contains(said);
    assertThat(world.outText()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2|find pumper --jsonl",
        "2|find pumper --complaint nonsense --jsonl",
        "3|find lorry --complaint x --jsonl",
        "4|find pumper --resume nothing --jsonl"
      })
  void aProgramIsToldInALineWhyNothingBegan(int code, String args) {
    TestWorld world = new TestWorld(store);
    assertThat(world.run(args.split(" "))).isEqualTo(code);
    assertThat(world.outLines()).hasSize(1);
    assertThat(world.outLines().get(0)).contains("\"type\":\"problem\"");
    assertThat(SchemaCheck.FROM_PROGRAM.defects(world.outLines().get(0))).isEmpty();
  }

  /** Looked for, shown, printed, exported, and a photo put to it. */
  @Test
  void aKeptCaseIsFoundShownPrintedAndExported(@TempDir Path folder) throws Exception {
    store.cases.put("stud", new ArrayList<>(Journals.begun("stud").stud().journal().events()));
    store.cases.put("horn", new ArrayList<>(Journals.begun("horn").journal().events()));
    assertThat(run("cases", "stud", "proven"))
        .startsWith("stud: Beacon dead - Light pumper")
        .contains("mended and proven, 2 readings, pumper")
        .doesNotContain("horn:");
    assertThat(run("cases", "--part", "G4")).contains("- read: 12.7 V").contains("- found: ground");
    assertThat(run("cases", "--since", "2030-01-01")).contains("None of 2 cases fits.");
    assertThat(run("cases", "--show", "stud")).contains("Result: mended and proven");
    Path pdf = folder.resolve("stud.pdf");
    assertThat(run("cases", "--print", "stud", "--out", pdf.toString()))
        .contains("Written: " + pdf);
    assertThat(Files.readString(pdf, StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
    Path csv = folder.resolve("all.csv");
    run("cases", "--out", csv.toString());
    assertThat(Files.readString(csv)).startsWith("case,opened,vehicle,").contains("\nhorn,");
    Path json = folder.resolve("all.json");
    run("cases", "stud", "--out", json.toString());
    assertThat(Files.readString(json)).contains("loopwright-case-export").doesNotContain("horn");
    run("cases", "--photo", "a/lug.jpg", "--to", "stud", "--caption", "paint");
    assertThat(run("cases", "--show", "stud")).contains("Photo: paint (photos/lug.jpg)");
  }

  private String run(String... args) {
    TestWorld world = new TestWorld(store);
    assertThat(world.run(args)).as(world.errText()).isZero();
    return world.outText();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4|cases --show none",
        "4|cases --print none --out x.pdf",
        "2|cases --photo x.jpg",
        "2|cases --out x.docx",
        "2|cases --since yesterday"
      })
  void whatCannotBeDoneWithACaseIsTold(int code, String args) {
    TestWorld world = new TestWorld(store);
    assertThat(world.run(args.split(" "))).isEqualTo(code);
    assertThat(world.errText()).isNotBlank();
  }

  @Test
  void keptCasesAreListed() {
    assertThat(new TestWorld(store).run("cases")).isZero();
    new TestWorld(store, "12.4").run("find", "pumper", "--complaint", "beacon dead");
    TestWorld world = new TestWorld(store);
    assertThat(world.run("cases")).isZero();
    assertThat(world.outText())
        .contains("beacon-1: beacon dead - pumper")
        .contains("2024-05-17 18:00, open, 1 reading, pumper");
    TestWorld empty = new TestWorld(new MemoryStore());
    empty.run("cases");
    assertThat(empty.outText()).contains("No cases are kept.");
  }

  @Test
  void aVehicleIsListedWithoutADesk() {
    TestWorld world = new TestWorld(store);
    assertThat(world.run("vehicle", "pumper")).isZero();
    assertThat(world.outText().replaceAll("\\s+", " "))
        .contains("Light pumper, 12 V, negative post grounded")
        .contains("beacon, Beacon: L1; works with S5 on")
        .contains("F3, fuse, beacon fuse")
        .contains("No defects found.");
    assertThat(world.desksMade).as("listing needs no rules or knowledge").isZero();
  }

  @Test
  void aVehiclesDefectsAreListed() {
    TestWorld world = new TestWorld(store);
    assertThat(world.run("vehicle", "lorry")).isEqualTo(3);
    assertThat(world.outText())
        .contains("- lorry: no such file and no demo vehicle")
        .contains("Demo vehicles: pumper.");
  }

  @Test
  void helpNamesTheExitCodes() {
    TestWorld world = new TestWorld(store);
    assertThat(world.run("find", "--help")).isZero();
    for (ExitCode code : ExitCode.values()) {
      assertThat(world.outText()).containsPattern("(?m)^\\s*" + code.number() + "\\s");
    }
    assertThat(world.outText()).contains("--jsonl").contains("--resume");
    TestWorld root = new TestWorld(store);
    root.run("--help");
    assertThat(root.outText()).contains("find").contains("cases").contains("vehicle");
  }
}
