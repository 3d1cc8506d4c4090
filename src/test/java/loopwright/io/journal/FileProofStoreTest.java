package loopwright.io.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProofStore;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.generated.Killed;
import loopwright.io.wire.SchemaCheck;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileProofStoreTest {
  private static final Instant AT = Instant.parse("2024-05-17T18:04:05.123Z");

  @TempDir Path folder;

  private static OwnCheck ohms() {
    return new OwnCheck(
        CheckKind.OHMS,
        Optional.of(new TerminalRef("F3", "load")),
        Optional.of(new TerminalRef("BATT", "neg")),
        Optional.empty(),
        Setting.of(Map.of("S5", "on")).without("BATT"));
  }

  private static OwnCheck look() {
    return new OwnCheck(
        CheckKind.LOOK, Optional.empty(), Optional.empty(), Optional.of("L1"), Setting.REST);
  }

  private static TreeMap<String, String> prints() {
    return new TreeMap<>(Map.of("F3", "1c291ca3", "W\u00fc/1", "00ff00ff"));
  }

  /** One of each kind of event, with each kind of answer. */
  static List<ProofEvent> everyKind() {
    return List.of(
        new ProofEvent.Passed(AT, "@supply"),
        new ProofEvent.Begun(
            AT.plusSeconds(1),
            "beacon",
            new FirstPower(Optional.of(7.5), new TreeSet<>(Set.of("F5", "K3"))),
            prints()),
        new ProofEvent.Confirmed(AT.plusSeconds(2), "beacon", "fuse-size", true),
        new ProofEvent.Checked(
            AT.plusSeconds(3), "beacon", "ohms", ohms(), new Answer.Text("1,3 k\u03a9")),
        new ProofEvent.Checked(
            AT.plusSeconds(4), "beacon", "off", look(), new Answer.Saw(Seen.OFF)),
        new ProofEvent.Checked(
            AT.plusSeconds(5),
            "beacon",
            "ohms",
            ohms(),
            new Answer.Within(new Band(0.3, Double.POSITIVE_INFINITY, Band.Unit.OHM))),
        new ProofEvent.Failed(AT.plusSeconds(6), "beacon", "ohms", "20240517-pumper-beacon"),
        new ProofEvent.Passed(AT.plusSeconds(7), "oil-lamp"),
        new ProofEvent.GroundProved(
            AT.plusSeconds(8),
            "G1",
            ohms(),
            new Answer.Text("3.1 mV"),
            ProofEvent.Verdict.CANT_TELL,
            0.0004,
            Double.POSITIVE_INFINITY,
            prints()));
  }

  private static final ProofEvent MORE = new ProofEvent.Passed(AT.plusSeconds(60), "horn");

  private Path write(List<ProofEvent> events) throws Problem {
    ProofStore store = new FileProofStore(folder);
    for (ProofEvent event : events) {
      store.append("pumper", event);
    }
    return folder.resolve("pumper.proof.jsonl");
  }

  @Test
  void everyKindOfEventIsTried() {
    assertThat(everyKind().stream().map(Object::getClass).collect(Collectors.toSet()))
        .isEqualTo(Set.of(ProofEvent.class.getPermittedSubclasses()));
  }

  @Test
  void everyKindOfEventComesBackAsItWas() throws Problem {
    write(everyKind());
    ProofStore.Kept kept = new FileProofStore(folder).read("pumper");
    assertThat(kept.events()).isEqualTo(everyKind());
    assertThat(kept.missing()).isEmpty();
  }

  @Test
  void everyLineFitsTheSchema() throws Exception {
    List<String> lines = Files.readAllLines(write(everyKind()));
    assertThat(lines).hasSameSizeAs(everyKind());
    for (String line : lines) {
      assertThat(SchemaCheck.PROOF.defects(line)).as(line).isEmpty();
    }
    assertThat(SchemaCheck.PROOF.defects(lines.get(1).replace("\"begun\"", "\"eaten\"")))
        .isNotEmpty();
  }

  @Test
  void aVehicleThatWasNeverProvenHasNothingAndNoFileIsMade() throws Problem {
    assertThat(new FileProofStore(folder.resolve("none")).read("pumper").events()).isEmpty();
    assertThat(folder.resolve("none")).doesNotExist();
  }

  /** Cut at any byte, a journal holds the events whose lines are whole and goes on from there. */
  @Test
  void aJournalCutAtAnyByteKeepsItsWholeLinesAndGoesOn() throws Exception {
    List<ProofEvent> events = everyKind();
    byte[] whole = Files.readAllBytes(write(events));
    List<Integer> ends = new ArrayList<>();
    for (int i = 0; i < whole.length; i++) {
      if (whole[i] == '\n') {
        ends.add(i);
      }
    }
    FileProofStore store = new FileProofStore(folder);
    Path file = folder.resolve("cut.proof.jsonl");
    for (int cut = 0; cut <= whole.length; cut++) {
      Files.write(file, Arrays.copyOf(whole, cut));
      int at = cut;
      int kept = (int) ends.stream().filter(e -> e <= at).count();
      ProofStore.Kept loaded = store.read("cut");
      assertThat(loaded.events()).as("cut at %d", cut).isEqualTo(events.subList(0, kept));
      boolean clean = cut == 0 || ends.contains(cut) || ends.contains(cut - 1);
      assertThat(loaded.missing().isEmpty())
          .as("cut at %d: %s", cut, loaded.missing())
          .isEqualTo(clean);
      store.append("cut", MORE);
      ProofStore.Kept again = store.read("cut");
      assertThat(again.events()).hasSize(kept + 1).endsWith(MORE);
      assertThat(again.missing()).as("mended for good").isEmpty();
    }
  }

  @Test
  void vehiclesWithAnyIdHaveFilesOfTheirOwn() throws Exception {
    FileProofStore store = new FileProofStore(folder);
    List<String> ids =
        List.of(
            "pumper", "p\u00fcmper", "p\u00f6mper", "p/mper", "../pumper", "-x", "*".repeat(40));
    for (String id : ids) {
      store.append(id, new ProofEvent.Passed(AT, "of " + id));
    }
    for (String id : ids) {
      assertThat(store.read(id).events())
          .as(id)
          .containsExactly(new ProofEvent.Passed(AT, "of " + id));
    }
    try (var files = Files.list(folder)) {
      assertThat(files).hasSize(ids.size());
    }
  }

  @Test
  void aDamagedLineIsToldInPlainWords() throws Exception {
    Path file = write(everyKind());
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.set(2, lines.get(2).replace("true", "false"));
    Files.write(file, lines);
    ProofStore.Kept kept = new FileProofStore(folder).read("pumper");
    assertThat(kept.missing())
        .contains("Line 3 can't be read (its check sum does not hold)")
        .contains("Entry 3 is missing");
    assertThat(kept.events()).hasSize(everyKind().size() - 1);
  }

  @Test
  void aFolderThatIsAFileSaysSo() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(() -> new FileProofStore(file).append("pumper", MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("proofs folder")
        .hasMessageContaining("a file where a folder is needed");
  }

  @Test
  void proofsInADeepFolderKeepTheirOrderWhateverTheClockSays() throws Exception {
    Path deep = folder;
    for (int i = 0; i < 12; i++) {
      deep = deep.resolve("сарай 倉庫 مرآب " + "x".repeat(40) + i);
    }
    List<ProofEvent> events =
        List.of(
            new ProofEvent.Passed(AT, "звук"),
            new ProofEvent.Passed(Instant.parse("2019-01-01T00:00:00Z"), "喇叭"),
            new ProofEvent.Passed(Instant.EPOCH, "بوق"),
            new ProofEvent.Passed(AT, "🚒"));
    for (ProofEvent event : events) {
      new FileProofStore(deep).append("消防車 №2", event);
    }
    assertThat(new FileProofStore(deep).read("消防車 №2")).isEqualTo(new ProofStore.Kept(events, ""));
  }

  @Test
  void aProofThatFillsTheDiskDoesNotCountAndTheNextOneDoes() throws Exception {
    BadDisk disk = new BadDisk();
    FileProofStore store = new FileProofStore(folder, disk);
    disk.goodWrites = 0;
    assertThatThrownBy(() -> store.append("pumper", MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("the disk is full")
        .hasMessageContaining("does not count");
    assertThat(store.read("pumper").events()).isEmpty();
    disk.goodWrites = 2;
    store.append("pumper", everyKind().get(0));
    store.append("pumper", everyKind().get(1));
    assertThatThrownBy(() -> store.append("pumper", MORE)).isInstanceOf(Problem.class);
    disk.goodWrites = 99;
    disk.goodForces = 0;
    assertThatThrownBy(() -> store.append("pumper", MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("Input/output error");
    assertThat(store.read("pumper").events()).isEqualTo(everyKind().subList(0, 2));
    store.append("pumper", MORE);
    assertThat(new FileProofStore(folder).read("pumper"))
        .isEqualTo(new ProofStore.Kept(List.of(everyKind().get(0), everyKind().get(1), MORE), ""));
  }

  @Test
  void proofsOnAReadOnlyDiskCanBeLookedAtAndTakeNothing() throws Exception {
    write(everyKind());
    BadDisk disk = new BadDisk();
    disk.readOnly = true;
    FileProofStore store = new FileProofStore(folder, disk);
    assertThat(store.read("pumper").events()).isEqualTo(everyKind());
    assertThatThrownBy(() -> store.append("pumper", MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("the disk is read-only");
    assertThatThrownBy(() -> store.append("tractor", MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("may not write there");
    assertThat(store.read("pumper").events()).isEqualTo(everyKind());
    assertThat(store.read("tractor").events()).isEmpty();
  }

  /** Two programs prove circuits of one vehicle: each waits for the other's line to be written. */
  @Test
  void whatTwoProgramsProveAtOnceIsAllKept() throws Exception {
    int each = 100;
    List<Process> programs = new ArrayList<>();
    for (String name : List.of("left", "right")) {
      programs.add(Killed.program(Prover.class, folder.toString(), name, String.valueOf(each)));
    }
    for (Process program : programs) {
      program.getInputStream().readAllBytes();
      assertThat(program.waitFor()).as("nothing was refused").isZero();
    }
    ProofStore.Kept kept = new FileProofStore(folder).read("pumper");
    assertThat(kept.missing()).isEmpty();
    assertThat(kept.events()).hasSize(2 * each);
    for (String name : List.of("left", "right")) {
      assertThat(kept.events())
          .filteredOn(e -> ((ProofEvent.Passed) e).subject().startsWith(name))
          .isEqualTo(IntStream.range(0, each).mapToObj(i -> Prover.proof(name, i)).toList());
    }
  }

  @Test
  void aJournalThatAnotherProgramDoesNotLetGoIsToldAndLeftWhole() throws Exception {
    Path file = write(everyKind());
    FileProofStore store = new FileProofStore(folder);
    try (FileChannel other = FileChannel.open(file, StandardOpenOption.WRITE)) {
      FileLock lock = other.lock();
      Process program = Killed.program(Prover.class, folder.toString(), "late", "1");
      assertThat(new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
          .contains("it is open in another program; close it there first");
      assertThat(program.waitFor()).isEqualTo(1);
      lock.release();
    }
    assertThat(store.read("pumper").events()).isEqualTo(everyKind());
    store.append("pumper", MORE);
    assertThat(store.read("pumper").events()).endsWith(MORE);
  }

  @Test
  void aProgramKilledAtAnyMomentKeepsEveryProofItTold() throws Exception {
    Random dice = new Random(1_972);
    int proven = 0;
    for (int kill = 0; kill < Killed.times(); kill++) {
      Path proofs = folder.resolve("kill-" + kill);
      List<String> arguments = List.of(proofs.toString(), "circuit", "1000");
      int told = Killed.after(Prover.class, arguments, List.of(), 60, dice).size();
      ProofStore store = new FileProofStore(proofs);
      ProofStore.Kept kept = store.read("pumper");
      assertThat(kept.events()).as("kill %d", kill).hasSizeGreaterThanOrEqualTo(told);
      for (int i = 0; i < kept.events().size(); i++) {
        assertThat(kept.events().get(i)).isEqualTo(Prover.proof("circuit", i));
      }
      assertThat(kept.missing()).matches("|The last line was cut off while it was written .*");
      store.append("pumper", MORE);
      assertThat(store.read("pumper").events()).hasSize(kept.events().size() + 1).endsWith(MORE);
      proven += told;
    }
    System.out.printf("%d kills: %d proofs told, none lost%n", Killed.times(), proven);
  }

  /** The program that is killed: proves one circuit after the other, and tells when it has. */
  static final class Prover {
    private Prover() {}

    static ProofEvent proof(String name, int i) {
      return new ProofEvent.Passed(AT.plusSeconds(i), name + "-" + i);
    }

    public static void main(String[] args) {
      ProofStore store = new FileProofStore(Path.of(args[0]));
      try {
        for (int i = 0; i < Integer.parseInt(args[2]); i++) {
          store.append("pumper", proof(args[1], i));
          System.out.println(i);
          System.out.flush();
        }
      } catch (Problem e) {
        System.out.println(e.getMessage());
        System.exit(1);
      }
    }
  }
}
