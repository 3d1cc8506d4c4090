package loopwright.io.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.zip.CRC32;
import loopwright.casework.Account;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CaseView;
import loopwright.casework.ClearedView;
import loopwright.casework.FindCase;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;
import loopwright.casework.OwnRate;
import loopwright.casework.Problem;
import loopwright.casework.Proposer;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.generated.Killed;
import loopwright.io.wire.SchemaCheck;
import loopwright.knowledge.Context;
import loopwright.model.Language;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileCaseStoreTest {
  private static final Instant AT = Instant.parse("2024-05-17T18:04:05.123Z");

  @TempDir Path folder;

  private static OwnCheck volts() {
    return new OwnCheck(
        CheckKind.VOLTS,
        Optional.of(new TerminalRef("F3", "load")),
        Optional.of(new TerminalRef("BATT", "neg")),
        Optional.empty(),
        Setting.of(Map.of("KEY", "on", "S5", "on")).without("J2"));
  }

  private static OwnCheck look() {
    return new OwnCheck(
        CheckKind.LOOK, Optional.empty(), Optional.empty(), Optional.of("L1"), Setting.REST);
  }

  private static Account account() {
    List<String> some = List.of("p\u00fcmper", "");
    return new Account(
        "Beacon dead",
        CaseView.Status.ISOLATED,
        6.5,
        List.of(new Account.Line(1, "F3.load", some, "12.4 V", "12 to 13 V", "kept")),
        List.of(new ClearedView("F3", "beacon fuse F3", List.of(1, 2), "12.4 V")),
        Optional.of(
            new Account.Fault(
                "stud G4",
                some,
                0.993,
                List.of(new Account.Cause("G4", PartKind.GROUND, "on-paint", 0.9)),
                some,
                some,
                some,
                some,
                List.of(),
                some)),
        Optional.of("G4"));
  }

  /** One of each kind of event, with each kind of answer. */
  static List<CaseEvent> everyKind() {
    return List.of(
        new CaseEvent.Opened(
            AT,
            "beacon-1",
            "shed/p\u00fcmper.json",
            "pumper",
            "beacon",
            Optional.of("L1"),
            ComplaintKind.BLOWS_FUSE,
            Context.AFTER_WORK,
            "basic",
            true,
            new FirstPower(Optional.of(7.5), new TreeSet<>(List.of("F5", "K3")))),
        new CaseEvent.Taken(AT.plusSeconds(1), 1, volts(), new Answer.Text("12,40 V \u03a9")),
        new CaseEvent.Taken(AT.plusSeconds(2), 2, look(), new Answer.Saw(Seen.SILENT)),
        new CaseEvent.Taken(
            AT.plusSeconds(3),
            3,
            volts(),
            new Answer.Within(new Band(0.1 + 0.2, Double.POSITIVE_INFINITY, Band.Unit.OHM))),
        new CaseEvent.Withdrawn(AT.plusSeconds(4), 2),
        new CaseEvent.Corrected(AT.plusSeconds(5), 1, new Answer.Text("x".repeat(500))),
        new CaseEvent.Refused(AT.plusSeconds(6), volts(), FindCase.Refusal.NEVER),
        new CaseEvent.Swapped(AT.plusSeconds(7), "K1", FindCase.Helped.NO),
        new CaseEvent.Repaired(AT.plusSeconds(8), "G4"),
        new CaseEvent.Undone(
            AT.plusSeconds(8),
            new CaseEvent.Refused(AT.plusSeconds(6), volts(), FindCase.Refusal.NEVER)),
        new CaseEvent.Warned(AT.plusSeconds(9), Warning.HEAT),
        new CaseEvent.Isolated(AT.plusSeconds(10)),
        new CaseEvent.Gone(AT.plusSeconds(11)),
        new CaseEvent.Proposing(AT.plusSeconds(11), Proposer.LEARNER),
        new CaseEvent.Settled(AT.plusSeconds(11), volts(), look(), Proposer.PROGRAM),
        new CaseEvent.Told(
            AT,
            new Account(
                "",
                CaseView.Status.HEALTHY,
                2,
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.of("G4"))),
        new CaseEvent.Weighed(
            AT, List.of(new OwnRate(PartKind.GROUND, "on-paint", 1.98, 0.12, 1.6))),
        new CaseEvent.Photographed(AT.plusSeconds(11), "photos/stud G4.jpg", ""),
        new CaseEvent.Stopped(AT.plusSeconds(12)));
  }

  private static final CaseEvent MORE = new CaseEvent.Repaired(AT.plusSeconds(60), "F3");

  private Path write(List<CaseEvent> events) throws Problem {
    try (CaseStore.Journal journal = new FileCaseStore(folder).create("beacon-1")) {
      for (CaseEvent event : events) {
        journal.append(event);
      }
    }
    return folder.resolve("beacon-1.case.jsonl");
  }

  @Test
  void everyKindOfEventComesBackAsItWas() throws Problem {
    write(everyKind());
    CaseStore.Loaded loaded = new FileCaseStore(folder).load("beacon-1");
    loaded.journal().close();
    assertThat(loaded.events()).isEqualTo(everyKind());
    assertThat(loaded.missing()).isEmpty();
  }

  @Test
  void aWholeAccountComesBackAsItWasAndFitsTheSchema() throws Exception {
    List<CaseEvent> events = List.of(everyKind().get(0), new CaseEvent.Told(AT, account()));
    String line = Files.readAllLines(write(events)).get(1);
    assertThat(new FileCaseStore(folder).read("beacon-1").events()).isEqualTo(events);
    assertThat(SchemaCheck.CASE.defects(line)).as(line).isEmpty();
  }

  /** Looked at while it is written: all that is on the disk, and the file stays open and locked. */
  @Test
  void aCaseThatIsOpenHereCanBeReadAndStaysOpen() throws Exception {
    FileCaseStore store = new FileCaseStore(folder);
    try (CaseStore.Journal journal = store.create("beacon-1")) {
      for (CaseEvent event : everyKind()) {
        journal.append(event);
        store.read("beacon-1");
      }
      assertThat(store.read("beacon-1").events()).isEqualTo(everyKind());
      assertThatThrownBy(() -> store.load("beacon-1")).hasMessageContaining("open already");
      journal.append(MORE);
    }
    assertThat(store.read("beacon-1").events()).endsWith(MORE);
  }

  @Test
  void aPhotoIsCopiedBesideTheCaseAndOnlyAPictureIs() throws Exception {
    Path photo = Files.write(folder.resolve("stud.jpg"), new byte[] {1, 2, 3});
    Path cases = folder.resolve("cases");
    try (CaseStore.Journal journal = new FileCaseStore(cases).create("beacon-1")) {
      String name = journal.photo(photo);
      assertThat(name).isEqualTo("photos/stud.jpg");
      assertThat(cases.resolve(name)).hasSameBinaryContentAs(photo);
      assertThatThrownBy(() -> journal.photo(folder.resolve("passwd")))
          .hasMessageContaining("a picture");
      assertThatThrownBy(() -> journal.photo(folder.resolve("missing.png")))
          .hasMessageContaining("can't be taken");
    }
  }

  @Test
  void everyLineFitsTheSchema() throws Exception {
    List<String> lines = Files.readAllLines(write(everyKind()));
    assertThat(lines).hasSameSizeAs(everyKind());
    for (String line : lines) {
      assertThat(SchemaCheck.CASE.defects(line)).as(line).isEmpty();
    }
    assertThat(SchemaCheck.CASE.defects(lines.get(1).replace("\"taken\"", "\"eaten\"")))
        .isNotEmpty();
    assertThat(SchemaCheck.CASE.defects(lines.get(1).replace("\"kind\"", "\"king\""))).isNotEmpty();
  }

  @Test
  void aJournalGoesOnWhereItWasLeft() throws Problem {
    write(everyKind());
    FileCaseStore store = new FileCaseStore(folder);
    try (CaseStore.Journal journal = store.load("beacon-1").journal()) {
      journal.append(MORE);
    }
    CaseStore.Loaded again = store.load("beacon-1");
    again.journal().close();
    assertThat(again.events()).hasSize(everyKind().size() + 1).endsWith(MORE);
    assertThat(again.missing()).isEmpty();
  }

  /**
   * Cut at any byte, a journal holds the events whose lines are whole and goes on from there; only
   * a case whose first line is gone can't be taken up.
   */
  @Test
  void aJournalCutAtAnyByteKeepsItsWholeLinesAndGoesOn() throws Exception {
    List<CaseEvent> events = everyKind();
    byte[] whole = Files.readAllBytes(write(events));
    List<Integer> ends = new ArrayList<>();
    for (int i = 0; i < whole.length; i++) {
      if (whole[i] == '\n') {
        ends.add(i);
      }
    }
    FileCaseStore store = new FileCaseStore(folder);
    Path file = folder.resolve("cut.case.jsonl");
    for (int cut = 0; cut <= whole.length; cut++) {
      Files.write(file, Arrays.copyOf(whole, cut));
      int at = cut;
      int kept = (int) ends.stream().filter(e -> e <= at).count();
      if (kept == 0) {
        Problem problem = catchThrowableOfType(Problem.class, () -> store.load("cut"));
        assertThat(problem).as("cut at %d", cut).isNotNull();
        assertThat(problem.getMessage()).contains("first entry");
        assertThat(Files.size(file)).as("left as it was").isEqualTo(cut);
        continue;
      }
      CaseStore.Loaded loaded = store.load("cut");
      assertThat(loaded.events()).as("cut at %d", cut).isEqualTo(events.subList(0, kept));
      boolean clean = ends.contains(cut) || ends.contains(cut - 1);
      assertThat(loaded.missing().isEmpty())
          .as("cut at %d: %s", cut, loaded.missing())
          .isEqualTo(clean);
      loaded.journal().append(MORE);
      loaded.journal().close();
      CaseStore.Loaded again = store.load("cut");
      again.journal().close();
      assertThat(again.events()).hasSize(kept + 1).startsWith(events.get(0)).endsWith(MORE);
      assertThat(again.missing()).as("mended for good").isEmpty();
    }
  }

  @Test
  void whatIsCutOffIsPutAside() throws Exception {
    Path file = write(everyKind());
    byte[] whole = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(whole, whole.length - 20));
    FileCaseStore store = new FileCaseStore(folder);
    for (int look = 1; look <= 2; look++) {
      CaseStore.Loaded looked = store.load("beacon-1");
      looked.journal().close();
      assertThat(looked.missing()).as("looking at it mends nothing").contains("cut off");
      assertThat(Files.size(file)).isEqualTo(whole.length - 20);
    }
    CaseStore.Loaded loaded = store.load("beacon-1");
    loaded.journal().append(MORE);
    loaded.journal().close();
    String aside = Files.readString(folder.resolve("beacon-1.cut-off"));
    assertThat(aside).startsWith("{\"crc\"").doesNotContain("\n");
    assertThat(new String(whole, java.nio.charset.StandardCharsets.UTF_8)).contains(aside);
  }

  /** No flipped bit passes for an event: what is read is what was written, and less is told. */
  @Test
  void aFlippedBitIsNeverReadAsSomethingElse() throws Exception {
    List<CaseEvent> events = everyKind().subList(0, 5);
    byte[] whole = Files.readAllBytes(write(events));
    FileCaseStore store = new FileCaseStore(folder);
    Path file = folder.resolve("flip.case.jsonl");
    int told = 0;
    for (int at = 0; at < whole.length; at++) {
      byte[] flipped = whole.clone();
      flipped[at] ^= (byte) (1 << (at % 8));
      Files.write(file, flipped);
      try {
        CaseStore.Loaded loaded = store.load("flip");
        loaded.journal().close();
        assertThat(events).as("bit flipped in byte %d", at).containsAll(loaded.events());
        assertThat(loaded.events().size()).as("byte %d", at).isLessThan(events.size());
        assertThat(loaded.missing()).as("byte %d", at).isNotEmpty();
        told++;
      } catch (Problem problem) {
        assertThat(problem.getMessage()).contains("first entry");
      }
    }
    assertThat(told).isGreaterThan(whole.length / 2);
  }

  @Test
  void aDamagedLineInTheMiddleIsToldByNumberAndStaysInTheFile() throws Exception {
    Path file = write(everyKind());
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.set(2, lines.get(2).replace("silent", "clicks"));
    lines.add(3, "a note that somebody wrote into the file");
    Files.write(file, lines);
    FileCaseStore store = new FileCaseStore(folder);
    CaseStore.Loaded loaded = store.load("beacon-1");
    loaded.journal().append(MORE);
    loaded.journal().close();
    assertThat(loaded.missing())
        .contains("Line 3 can't be read (its check sum does not hold)")
        .contains("Line 4 can't be read (")
        .contains("Entry 3 is missing")
        .contains("Entry 5 is about a reading that is missing");
    assertThat(loaded.events())
        .containsExactlyElementsOf(
            everyKind().stream()
                .filter(e -> !e.equals(everyKind().get(2)) && !(e instanceof CaseEvent.Withdrawn))
                .toList());
    assertThat(Files.readAllLines(file)).startsWith(lines.toArray(String[]::new));
  }

  @Test
  void aNumberBeyondAllMeasureSpoilsItsLineAlone() throws Exception {
    Path file = write(everyKind().subList(0, 1));
    String line =
        line("\"n\":2,\"v\":1,\"event\":{\"type\":\"withdrawn\",\"reading\":1e9999999990}}");
    Files.writeString(file, line + "\n", StandardOpenOption.APPEND);
    CaseStore.Read read = new FileCaseStore(folder).read("beacon-1");
    assertThat(read.events()).hasSize(1);
    assertThat(read.missing()).isEqualTo("Line 2 can't be read (not JSON) and is left out.");
  }

  private static String line(String body) {
    CRC32 crc = new CRC32();
    crc.update(body.getBytes(StandardCharsets.UTF_8));
    return String.format("{\"crc\":\"%08x\",%s", crc.getValue(), body);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "ENGLISH; Line 2 can't be read (its field event.reading is missing) and is left out."
            + " Line 3 can't be read (its field event.type can't be 'eaten') and is left out.",
        "GERMAN; Zeile 2 ist nicht lesbar (ihr Feld event.reading fehlt) und bleibt weg."
            + " Zeile 3 ist nicht lesbar (ihr Feld event.type kann nicht „eaten“ sein) und bleibt weg."
      })
  void whatALineLacksIsToldInTheLanguageInUse(Language language, String told) throws Exception {
    Path file = write(everyKind().subList(0, 1));
    String head = "\"n\":2,\"v\":1,\"event\":{\"at\":\"2024-05-01T10:00:00Z\",\"type\":";
    Files.writeString(
        file,
        line(head + "\"withdrawn\"}}") + "\n" + line(head + "\"eaten\"}}") + "\n",
        StandardOpenOption.APPEND);
    Language.use(language);
    try {
      assertThat(new FileCaseStore(folder).read("beacon-1").missing()).isEqualTo(told);
    } finally {
      Language.use(Language.ENGLISH);
    }
  }

  @Test
  void aFileOfAnotherVersionIsLeftAloneAndSaysSo() throws Exception {
    Path file = write(everyKind());
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    String body = lines.get(8).substring(18).replace("\"v\":1", "\"v\":5");
    lines.set(8, line(body));
    Files.write(file, lines);
    assertThatThrownBy(() -> new FileCaseStore(folder).load("beacon-1"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("version 5")
        .hasMessageContaining("Nothing was changed");
    assertThat(Files.readAllLines(file)).isEqualTo(lines);
  }

  @Test
  void aFileThatIsNoCaseIsToldAndLeftAlone() throws Exception {
    Files.writeString(folder.resolve("odd.case.jsonl"), "not a case\n\u0000\u0000\u0000");
    assertThatThrownBy(() -> new FileCaseStore(folder).load("odd"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("first entry");
    assertThat(Files.size(folder.resolve("odd.case.jsonl"))).isEqualTo(14);
  }

  @Test
  void aCaseNobodyKeptIsToldWithTheFolder() {
    assertThatThrownBy(() -> new FileCaseStore(folder).load("nothing"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("nothing")
        .hasMessageContaining(folder.toString());
  }

  @Test
  void anIdThatCouldLeaveTheFolderIsRefused() {
    for (String id : List.of("../out", "a/b", "", ".hidden", "a\\b", "x".repeat(101), "a\nb")) {
      assertThatThrownBy(() -> new FileCaseStore(folder).create(id))
          .as(id)
          .isInstanceOf(Problem.class)
          .hasMessageContaining("case id");
    }
  }

  @Test
  void anIdInUseIsNotOverwritten() throws Exception {
    Path file = write(everyKind());
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> new FileCaseStore(folder).create("beacon-1"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("already");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void casesAreListedNewestFirstAndOthersFilesNotAtAll() throws Exception {
    FileCaseStore store = new FileCaseStore(folder);
    assertThat(new FileCaseStore(folder.resolve("not-there")).ids()).isEmpty();
    long day = 0;
    for (String id : List.of("old", "new", "middle")) {
      try (CaseStore.Journal journal = store.create(id)) {
        journal.append(everyKind().get(0));
      }
    }
    for (String id : List.of("old", "middle", "new")) {
      Files.setLastModifiedTime(
          folder.resolve(id + ".case.jsonl"), FileTime.fromMillis(86_400_000L * ++day));
    }
    Files.writeString(folder.resolve("notes.txt"), "x");
    Files.createFile(folder.resolve("never-begun.case.jsonl"));
    assertThat(store.ids()).containsExactly("new", "middle", "old");
  }

  // Disks that fail.

  private List<CaseEvent> loaded() throws Problem {
    CaseStore.Loaded loaded = new FileCaseStore(folder).load("c");
    loaded.journal().close();
    assertThat(loaded.missing()).isEmpty();
    return loaded.events();
  }

  @Test
  void anEventThatFillsTheDiskDoesNotCountAndTheCaseGoesOn() throws Exception {
    BadDisk disk = new BadDisk();
    CaseEvent opened = everyKind().get(0);
    try (CaseStore.Journal journal = new FileCaseStore(folder, disk).create("c")) {
      journal.append(opened);
      disk.goodWrites = 0;
      assertThatThrownBy(() -> journal.append(everyKind().get(1)))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("the disk is full")
          .hasMessageContaining("does not count");
      // A second one fails too, and can't even take back its half line.
      disk.cutBack = 2;
      assertThatThrownBy(() -> journal.append(everyKind().get(1))).isInstanceOf(Problem.class);
      disk.cutBack = 0;
      disk.goodWrites = 99;
      journal.append(MORE);
    }
    assertThat(loaded()).containsExactly(opened, MORE);
  }

  @Test
  void anEventThatCannotBeForcedDoesNotCount() throws Exception {
    BadDisk disk = new BadDisk();
    CaseEvent opened = everyKind().get(0);
    try (CaseStore.Journal journal = new FileCaseStore(folder, disk).create("c")) {
      journal.append(opened);
      disk.goodForces = 0;
      assertThatThrownBy(() -> journal.append(everyKind().get(1)))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("Input/output error");
    }
    assertThat(loaded()).containsExactly(opened);
  }

  @Test
  void aFileClosedByAnInterruptIsOpenedAgain() throws Exception {
    BadDisk disk = new BadDisk();
    CaseEvent opened = everyKind().get(0);
    try (CaseStore.Journal journal = new FileCaseStore(folder, disk).create("c")) {
      journal.append(opened);
      disk.closeNext = true;
      assertThatThrownBy(() -> journal.append(everyKind().get(1))).isInstanceOf(Problem.class);
      journal.append(MORE);
    }
    assertThat(loaded()).containsExactly(opened, MORE);
  }

  @Test
  void anEventIsForcedToDiskBeforeItCounts() throws Exception {
    BadDisk disk = new BadDisk();
    try (CaseStore.Journal journal = new FileCaseStore(folder, disk).create("c")) {
      disk.goodForces = 2;
      journal.append(everyKind().get(0));
      journal.append(everyKind().get(1));
      assertThat(disk.goodForces).as("one force each").isZero();
    }
  }

  @Test
  void aFolderThatCannotBeWrittenSaysSo() throws Exception {
    BadDisk disk = new BadDisk();
    disk.readOnly = true;
    assertThatThrownBy(() -> new FileCaseStore(folder, disk).create("c"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("c.case.jsonl")
        .hasMessageContaining("may not write there");
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(() -> new FileCaseStore(file).create("c"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("a file where a folder is needed");
  }

  @Test
  void aCaseOnAReadOnlyDiskCanBeLookedAtButTakesNothing() throws Exception {
    write(everyKind());
    BadDisk disk = new BadDisk();
    disk.readOnly = true;
    CaseStore.Loaded loaded = new FileCaseStore(folder, disk).load("beacon-1");
    assertThat(loaded.events()).isEqualTo(everyKind());
    assertThatThrownBy(() -> loaded.journal().append(MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("the disk is read-only");
    loaded.journal().close();
  }

  // Two at once.

  @Test
  void aCaseOpenInThisProgramCannotBeOpenedTwice() throws Exception {
    write(everyKind());
    FileCaseStore store = new FileCaseStore(folder);
    try (CaseStore.Journal first = store.load("beacon-1").journal()) {
      assertThatThrownBy(() -> new FileCaseStore(folder).load("beacon-1"))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("open already");
      first.append(MORE);
    }
    store.load("beacon-1").journal().close();
  }

  @Test
  void aCaseOpenInAnotherProgramIsToldToTheSecond() throws Exception {
    Path file = write(everyKind());
    Process other = Killed.program(Holder.class, file.toString());
    try {
      assertThat(other.getInputStream().read()).as("the other program has it").isEqualTo('h');
      assertThatThrownBy(() -> new FileCaseStore(folder).load("beacon-1"))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("open in another program");
      assertThat(new FileCaseStore(folder).read("beacon-1").events()).isEqualTo(everyKind());
      other.getOutputStream().write('\n');
      other.getOutputStream().flush();
      assertThat(other.waitFor()).as("the first goes on unharmed").isZero();
    } finally {
      other.destroyForcibly().waitFor();
    }
    CaseStore.Loaded loaded = new FileCaseStore(folder).load("beacon-1");
    loaded.journal().close();
    assertThat(loaded.events()).as("free again once it is gone").hasSize(everyKind().size() + 1);
    assertThat(loaded.events()).startsWith(everyKind().toArray(CaseEvent[]::new)).endsWith(MORE);
    assertThat(loaded.missing()).isEmpty();
  }

  /** The other program: takes up the case, holds it until it is told to, and writes to it. */
  static final class Holder {
    private Holder() {}

    public static void main(String[] args) throws Exception {
      Path file = Path.of(args[0]);
      String id = file.getFileName().toString().replace(".case.jsonl", "");
      try (CaseStore.Journal journal = new FileCaseStore(file.getParent()).load(id).journal()) {
        System.out.print("h");
        System.out.flush();
        System.in.read();
        journal.append(MORE);
      }
    }
  }

  @Test
  void aClosedJournalTakesNothing() throws Exception {
    CaseStore.Journal journal = new FileCaseStore(folder).create("c");
    journal.close();
    journal.close();
    assertThatThrownBy(() -> journal.append(MORE))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("closed");
  }

  @Test
  void aHugeFileIsRefusedWithoutBeingRead() throws Exception {
    Path file = folder.resolve("huge.case.jsonl");
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      channel.write(java.nio.ByteBuffer.wrap(new byte[] {'x'}), FileCaseStore.LARGEST);
    }
    assertThatThrownBy(() -> new FileCaseStore(folder).load("huge"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("at most");
  }
}
