package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.FileDescriptor;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.Permission;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.Desk;
import loopwright.casework.FindCase;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ReadingView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.io.ReadResult;
import loopwright.io.VehicleFile;
import loopwright.io.journal.FileCaseStore;
import loopwright.knowledge.Context;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Vehicle files that others wrote: in any script, and with texts that mean harm. Each is opened, a
 * case of it begun, left and taken up again, and all that can be written of it is written.
 */
class VehiclesFromElsewhereTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** By this what comes from the file is known in whatever is opened. */
  private static final String MARK = "zq7";

  private static final List<String> HARMFUL =
      List.of(
          "../../../" + MARK + ".txt",
          "/" + MARK + ".txt",
          "C:\\" + MARK,
          "\\\\" + MARK + "\\share",
          "file:///" + MARK + ".txt",
          "http://" + MARK + ".invalid/a.png",
          "jar:http://" + MARK + ".invalid/a.jar!/",
          "${jndi:ldap://" + MARK + ".invalid/a}",
          "${env:PATH}" + MARK,
          "$(touch " + MARK + ")",
          "`touch " + MARK + "`",
          "=HYPERLINK(\"http://" + MARK + ".invalid\")",
          "=cmd|' /C " + MARK + "'!A0",
          "<img src=\"http://" + MARK + ".invalid\">",
          "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///" + MARK + "\">]>",
          "'}; System.exit(1); // " + MARK,
          "{0,number," + MARK + "}",
          "%n%s" + MARK);

  /** Fields of a vehicle file that hold any text. */
  private static final Set<String> TEXTS = Set.of("name", "note", "where", "how", "label", "loom");

  @TempDir Path folder;

  private static ObjectNode tractor() throws IOException {
    try (InputStream in =
        VehiclesFromElsewhereTest.class.getResourceAsStream("/demo-data/vehicles/tractor.json")) {
      return (ObjectNode) JSON.readTree(in);
    }
  }

  /** Puts words in front of every text there is, each in its turn. */
  private static void say(JsonNode node, List<String> words, int[] turn) {
    if (node instanceof ObjectNode object) {
      for (String field : TEXTS) {
        if (object.path(field).isTextual()) {
          String word = words.get(turn[0]++ % words.size());
          object.put(field, word + " " + object.get(field).textValue());
        }
      }
    }
    node.forEach(inner -> say(inner, words, turn));
  }

  private static OwnCheck volts(String red) {
    return new OwnCheck(
        CheckKind.VOLTS,
        Optional.of(TerminalRef.parse(red)),
        Optional.of(TerminalRef.parse("BATT.neg")),
        Optional.empty(),
        Setting.REST);
  }

  private static CaseDesk.NewCase horn(Vehicle vehicle, Path file, String circuit) {
    return new CaseDesk.NewCase(
        vehicle,
        file.toString(),
        circuit,
        Optional.empty(),
        ComplaintKind.DEAD,
        Context.IN_SERVICE,
        "basic");
  }

  /** Does with a vehicle file what people do; answers with the table of its cases. */
  private String play(Path file, String load, String circuit, Path home) throws Exception {
    Vehicle vehicle = VehicleFile.read(file).orThrow();
    Path cases = home.resolve("cases");
    String caseId;
    try (FindCase begun =
        Bench.desk(new FileCaseStore(cases))
            .open(horn(vehicle, file, circuit), CaseDesk.Progress.SILENT)) {
      caseId = begun.view().caseId();
      begun.take(volts(load + ".in"), new Answer.Text("-6.2 V"));
      begun.whyNext();
    }
    try (FindCase again =
        Bench.desk(new FileCaseStore(cases)).resume(caseId, vehicle, CaseDesk.Progress.SILENT)) {
      assertThat(again.view().readings()).hasSize(1);
      again.stop();
    }
    TestWorld world = new TestWorld(new FileCaseStore(cases));
    world.vehicle = vehicle;
    done(world, "vehicle", "pumper");
    done(world, "cases", "--show", caseId);
    done(world, "cases", "--print", caseId, "--out", home.resolve("case.pdf").toString());
    done(world, "cases", "--out", home.resolve("cases.json").toString());
    done(world, "making", "pumper", "--out", home.resolve("making.pdf").toString());
    done(world, "labels", "pumper", "--out", home.resolve("labels.pdf").toString());
    done(world, "drawings", "pumper", "--out", home.resolve("drawings.pdf").toString());
    done(world, "wires", "pumper");
    assertThat(VehicleFile.read(VehicleFile.text(vehicle), "again.json").orThrow())
        .isEqualTo(vehicle);
    Path table = home.resolve("cases.csv");
    done(world, "cases", "--out", table.toString());
    return Files.readString(table) + world.outText();
  }

  private static void done(TestWorld world, String... args) {
    assertThat(world.run(args)).as(String.join(" ", args) + ": " + world.errText()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "\u041f\u043e\u0436\u0430\u0440\u043d\u0430\u044f \u043c\u0430\u0448\u0438\u043d\u0430, \u0421\u0438\u0433\u043d\u0430\u043b",
    "\u0645\u0636\u062e\u0629 \u0627\u0644\u062d\u0631\u064a\u0642, \u0628\u0648\u0642",
    "\u6d88\u9632\u8f66, \u5587\u53ed",
    "\ud83d\ude92\ud83d\udd14, H-1",
    "\u202epmup\u202c \u200f\u05de\u05e9\u05d0\u05d1\u05d4\u200e, \u05e6\u05d5\u05e4\u05e8",
    "e\u0301\u0302\u0323 \u0926\u092e\u0915\u0932, \u1112\u1169\u1105\u1173\u11ab"
  })
  void namesInAnyScriptAndDeepPathsGoThrough(String words, String id) throws Exception {
    ObjectNode vehicle = tractor();
    say(vehicle, List.of(words), new int[1]);
    vehicle.get("circuits").forEach(c -> renamed((ObjectNode) c, id));
    String text =
        vehicle.toString().replace("\"H1\"", "\"" + id + "\"").replace("\"H1.", "\"" + id + ".");
    Path home = folder;
    for (int i = 0; i < 12; i++) {
      home = home.resolve(words + " " + i);
    }
    Files.createDirectories(home);
    Path file = home.resolve(words + ".json");
    Files.writeString(file, text);
    String told = play(file, id, id, home);
    assertThat(told).contains(words).contains(id);
    try (var files = Files.list(home.resolve("cases"))) {
      assertThat(files.map(f -> f.getFileName().toString()).toList())
          .as("files that any system can name")
          .allMatch(f -> f.matches("[A-Za-z0-9._-]+"));
    }
  }

  private static void renamed(ObjectNode circuit, String id) {
    if (circuit.get("id").textValue().equals("horn")) {
      circuit.put("id", id);
    }
  }

  /** Hears of all that is opened, written, run or connected to while it watches. */
  @SuppressWarnings("removal")
  private static final class Watch extends SecurityManager implements AutoCloseable {
    final Queue<String> touched = new ConcurrentLinkedQueue<>();
    final Queue<String> connected = new ConcurrentLinkedQueue<>();

    static Watch begun() {
      Watch watch = new Watch();
      try {
        System.setSecurityManager(watch);
      } catch (UnsupportedOperationException e) {
        Assumptions.abort("this Java lets nobody watch");
      }
      return watch;
    }

    @Override
    public void checkPermission(Permission permission) {}

    @Override
    public void checkRead(String file) {
      touched.add(file);
    }

    @Override
    public void checkRead(FileDescriptor file) {}

    @Override
    public void checkWrite(String file) {
      touched.add(file);
    }

    @Override
    public void checkWrite(FileDescriptor file) {}

    @Override
    public void checkDelete(String file) {
      touched.add(file);
    }

    @Override
    public void checkExec(String command) {
      connected.add("exec " + command);
    }

    @Override
    public void checkLink(String library) {}

    @Override
    public void checkConnect(String host, int port) {
      connected.add(host + ":" + port);
    }

    @Override
    public void checkListen(int port) {
      connected.add("listen " + port);
    }

    @Override
    public void close() {
      System.setSecurityManager(null);
    }
  }

  @Test
  void textsThatMeanHarmOpenNothing() throws Exception {
    ObjectNode vehicle = tractor();
    say(vehicle, HARMFUL, new int[1]);
    Path file = folder.resolve("tractor.json");
    Files.writeString(file, vehicle.toString());
    String told;
    try (Watch watch = Watch.begun()) {
      told = play(file, "H1", "horn", folder);
      assertThat(watch.touched).as("the watch hears").anyMatch(f -> f.equals(file.toString()));
      assertThat(watch.touched).noneMatch(f -> f.contains(MARK));
      assertThat(watch.connected).isEmpty();
    }
    assertThat(told).contains(MARK);
    String guarded = Files.readString(folder.resolve("cases.csv"));
    assertThat(guarded).doesNotContainPattern("(?m)(^|[,;\t])\"?=");
    Path wires = folder.resolve("wires.csv");
    TestWorld world = new TestWorld(new MemoryStore());
    world.vehicle = VehicleFile.read(file).orThrow();
    done(world, "making", "pumper", "--table", "cutting", "--out", wires.toString());
    assertThat(Files.readString(wires)).doesNotContainPattern("(?m)(^|[,;\t])\"?=");
  }

  /** Each text of the file in turn: nothing but the file is opened, whatever the text is for. */
  @Test
  void noTextOfAFileIsTakenForAPlaceToReadFrom() throws Exception {
    ObjectNode whole = tractor();
    ((ObjectNode) whole.get("parts").get(0)).putArray("photos").addObject().put("file", "p/a.jpg");
    List<String> texts = new ArrayList<>();
    texts(whole, texts);
    String json = whole.toString();
    assertThat(VehicleFile.read(json, "whole.json").defects()).isEmpty();
    Path home = Path.of("home");
    int accepted = 0;
    try (Watch watch = Watch.begun()) {
      for (String text : texts.stream().distinct().toList()) {
        // All of them for the one field that is a path, a few for each of the others.
        List<String> harms =
            text.endsWith(".jpg") ? HARMFUL : HARMFUL.subList(accepted % 16, accepted % 16 + 2);
        for (String harm : harms) {
          String spoilt =
              json.replace(JSON.writeValueAsString(text), JSON.writeValueAsString(harm));
          ReadResult<Vehicle> read = VehicleFile.read(spoilt, "spoilt.json");
          accepted += read.found().isPresent() ? 1 : 0;
          read.found().stream()
              .flatMap(v -> v.parts().stream())
              .flatMap(p -> p.photos().stream())
              .map(p -> home.resolve(p.file()).normalize())
              .forEach(p -> assertThat(p.startsWith(home)).as(p.toString()).isTrue());
        }
      }
      assertThat(watch.touched).noneMatch(f -> f.contains(MARK));
      assertThat(watch.connected).isEmpty();
    }
    assertThat(accepted).isPositive();
  }

  private static void texts(JsonNode node, List<String> into) {
    if (node.isTextual()) {
      into.add(node.textValue());
    }
    node.forEach(inner -> texts(inner, into));
  }

  /** A clock that somebody sets. */
  private static final class SetClock extends Clock {
    Instant now = Instant.parse("2024-05-17T18:00:00Z");

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }

  @Test
  void aClockSetBackKeepsTheOrderOfWhatWasDone() throws Exception {
    SetClock clock = new SetClock();
    Vehicle vehicle = Bench.vehicle("tractor");
    FileCaseStore store = new FileCaseStore(folder);
    Desk desk = new Desk(Bench.KNOWLEDGE, Bench::rules, store, clock, new Phrases(Locale.ENGLISH));
    String id;
    try (FindCase begun =
        desk.open(horn(vehicle, Path.of("tractor"), "horn"), CaseDesk.Progress.SILENT)) {
      id = begun.view().caseId();
      begun.take(volts("H1.in"), new Answer.Text("-6.2 V"));
      clock.now = Instant.parse("2019-01-01T00:00:00Z");
      begun.take(volts("F1.load"), new Answer.Text("-6.3 V"));
      clock.now = Instant.parse("2031-01-01T00:00:00Z");
      begun.take(volts("F1.feed"), new Answer.Text("-6.25 V"));
    }
    clock.now = Instant.parse("1970-01-01T00:00:00Z");
    try (FindCase again = desk.resume(id, vehicle, CaseDesk.Progress.SILENT)) {
      CaseView view = again.view();
      assertThat(view.readings()).extracting(ReadingView::id).containsExactly(1, 2, 3);
      assertThat(view.minutes()).isNotNegative();
      again.stop();
    }
    TestWorld world = new TestWorld(store);
    done(world, "cases", "--show", id);
    assertThat(world.outText().replaceAll("(?s)\\s+", " "))
        .containsSubsequence("-6.2", "-6.3", "-6.25")
        .doesNotContain("-1 min")
        .doesNotContain("in the future");
    // Another case begun in the same second of the day that came twice has a name of its own.
    clock.now = Instant.parse("2024-05-17T18:00:00Z");
    try (FindCase other =
        desk.open(horn(vehicle, Path.of("tractor"), "horn"), CaseDesk.Progress.SILENT)) {
      assertThat(other.view().caseId()).isNotEqualTo(id);
    } catch (Problem e) {
      throw new AssertionError("the second case of that second", e);
    }
  }
}
