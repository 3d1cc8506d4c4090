package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.casework.feed.MeterWatch;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.NewVehicleForm;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Reading;
import loopwright.evidence.Bench;
import loopwright.generated.Generated;
import loopwright.io.VehicleFile;
import loopwright.io.wire.LineReader;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Spoilt lines to the machine conversation, spoilt readings, and spoilt files of answers. */
class GeneratedTalkTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Lines to a case that is solved, for each thousand to the one that isn't. */
  private static final int SOLVED_PER_THOUSAND = 100;

  /** What solving for one line may allocate, nearly all of it for moments, in bytes. */
  private static final long SOLVED_BYTES = 8L << 30;

  private static final List<String> LINES =
      List.of(
          "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"12.4 V\"}",
          "{\"type\":\"reading\",\"id\":\"q\",\"check\":\"c2\",\"seen\":\"off\"}",
          "{\"type\":\"reading\",\"id\":7,\"check\":\"c3\",\"value\":12.40,\"unit\":\"V\"}",
          "{\"type\":\"reading\",\"check\":\"c3\",\"band\":{\"low\":11.9,\"high\":12.7,\"unit\":\"V\"}}",
          "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.load\",\"black\":\"BATT.neg\","
              + "\"value\":1.5,\"unit\":\"V\",\"setting\":{\"positions\":{\"S5\":\"on\"},"
              + "\"apart\":[\"F3\"]}}",
          "{\"type\":\"reading\",\"kind\":\"ohms\",\"red\":\"L1.out\",\"black\":\"BATT.neg\","
              + "\"value\":\"OL\",\"setting\":{\"apart\":[\"BATT\"]}}",
          "{\"type\":\"reading\",\"kind\":\"look\",\"look\":\"L1\",\"seen\":\"dim\"}",
          "{\"type\":\"withdraw\",\"reading\":1}",
          "{\"type\":\"correct\",\"reading\":1,\"value\":\"1 V\"}",
          "{\"type\":\"swapped\",\"part\":\"L1\",\"helped\":false}",
          "{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"will not\"}",
          "{\"type\":\"warning\",\"of\":\"smoke\"}",
          "{\"type\":\"isolated\"}",
          "{\"type\":\"gone\"}",
          "{\"type\":\"why\",\"about\":\"G4\"}",
          "{\"type\":\"outlook\",\"check\":\"c1\",\"depth\":2}",
          "{\"type\":\"repaired\",\"part\":\"G4\"}",
          "{\"type\":\"meter\"}",
          "{\"type\":\"stop\"}");

  @TempDir Path folder;

  private static List<byte[]> seeds(Stream<String> lines) {
    return lines.map(l -> l.getBytes(StandardCharsets.UTF_8)).toList();
  }

  @Test
  void linesToAScriptedCase() {
    CaseDesk.NewCase pumper = newCase(Shed.pumper(), "beacon");
    Talk talk =
        new Talk(
            () -> {
              MemoryStore store = new MemoryStore();
              return new Open(
                  new ScriptedDesk(store).open(pumper, CaseDesk.Progress.SILENT), store);
            });
    Generated.run("lines", seeds(LINES.stream()), talk::accepts);
    assertThat(talk.ended).as("cases that were talked to their end").isPositive();
  }

  @Test
  void linesToACaseThatIsSolved() throws Problem {
    Vehicle tractor = Bench.vehicle("tractor");
    CaseDesk.NewCase lamps = newCase(tractor, "head");
    Opener opener =
        () -> {
          MemoryStore store = new MemoryStore();
          return new Open(Bench.desk(store).open(lamps, CaseDesk.Progress.SILENT), store);
        };
    String first = opener.open().findCase().view().next().orElseThrow().id();
    int count = Math.max(1, Generated.share() * SOLVED_PER_THOUSAND / 1_000);
    Generated.run(
        "lines to a solved case",
        count,
        seeds(
            LINES.stream()
                .map(l -> l.replace("{\"S5\":\"on\"}", "{\"S2\":\"head\"}"))
                .map(l -> l.replaceAll("\"c\\d\"", "\"" + first + "\""))),
        SOLVED_BYTES,
        new Talk(opener)::accepts);
  }

  private static CaseDesk.NewCase newCase(Vehicle vehicle, String circuit) {
    return new CaseDesk.NewCase(
        vehicle,
        vehicle.id(),
        circuit,
        Optional.empty(),
        ComplaintKind.DEAD,
        Context.IN_SERVICE,
        "basic");
  }

  private record Open(FindCase findCase, MemoryStore store) {}

  private interface Opener {
    Open open() throws Problem;
  }

  /** One case after another. */
  private static final class Talk {
    /** Lines to a case that nobody ends. */
    private static final int LINES_A_CASE = 40;

    private final Opener opener;
    private Open open;
    private int kept;
    private int lines;
    int ended;

    Talk(Opener opener) {
      this.opener = opener;
    }

    /** One line to the case that is open: one answer, and the journal grows with a state alone. */
    boolean accepts(byte[] bytes) throws Exception {
      if (open == null || lines % LINES_A_CASE == 0) {
        open = opener.open();
        kept = events(open.store);
      }
      lines++;
      byte[] line = Arrays.copyOf(bytes, bytes.length + 1);
      for (int i = 0; i < bytes.length; i++) {
        line[i] = bytes[i] == '\n' ? (byte) ' ' : bytes[i];
      }
      line[bytes.length] = '\n';
      List<String> told = talk(open.findCase, line);
      assertThat(told).hasSize(3);
      JsonNode answer = JSON.readTree(told.get(2));
      boolean problem = answer.get("type").textValue().equals("problem");
      int now = events(open.store);
      if (problem) {
        assertThat(answer.get("accepted").textValue()).isNotBlank();
        assertThat(now).as("what is refused isn't kept").isEqualTo(kept);
      }
      assertThat(now - kept).as("at most one event a line, and what it tells").isBetween(0, 2);
      kept = now;
      if (open.findCase.view().move() == CaseView.Move.END) {
        open.findCase.close();
        open = null;
        ended++;
      }
      return !problem;
    }

    private static int events(CaseStore store) throws Problem {
      int events = 0;
      for (String id : store.ids()) {
        List<CaseEvent> all = store.read(id).events();
        events += all.size();
      }
      return events;
    }
  }

  private static List<String> talk(FindCase findCase, byte[] line) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Meanwhile in = new Meanwhile(findCase, new LineReader(new ByteArrayInputStream(line)));
        PrintStream told = new PrintStream(out, true, StandardCharsets.UTF_8)) {
      new LineTalk(findCase, Shed.pumper(), "pumper", Optional.empty(), "", in, told).run();
    }
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }

  /** What is typed or pasted for a reading counts only as what a meter can show. */
  @Test
  void readings() {
    Generated.run(
        "readings",
        seeds(
            Stream.of(
                "12.4 V",
                "12,40",
                "-35 mV DC",
                "4.7 kOhm",
                "+1.24100000E+01",
                "OL",
                "1.",
                "120 mA",
                "a",
                "0.3 \u03a9",
                "12.41 V; 12.42 V",
                "2024-05-17 12:01:07  12.4 V")),
        bytes -> {
          String text = new String(bytes, StandardCharsets.UTF_8);
          boolean accepted = false;
          for (CheckKind kind : CheckKind.values()) {
            accepted |= counts(kind, text);
            Optional<String> typed = MeterWatch.typed(text);
            accepted |= typed.isPresent() && counts(kind, typed.get());
          }
          return accepted;
        });
  }

  private static boolean counts(CheckKind kind, String text) {
    try {
      Reading.Value value = loopwright.casework.Entry.understand(kind, Entry.of(kind).read(text));
      if (value instanceof Reading.Value.Number number) {
        assertThat(Math.abs(number.value())).isLessThanOrEqualTo(1e9);
        assertThat(number.step()).isPositive().isFinite();
      }
      return true;
    } catch (Problem e) {
      assertThat(e.getMessage()).isNotBlank().hasSizeLessThan(10_000);
      return false;
    }
  }

  @Test
  void answers() {
    Basis basis = AddCommand.basis();
    Path file = folder.resolve("answers.txt");
    List<byte[]> seeds =
        seeds(
            Stream.of(
                """
                # the village's second tractor
                kind = tractor
                name = second tractor
                volts = 6
                grounded = positive
                add = horn
                to-load = 1,5
                add = lamp-relay
                name = plough lamp
                count = 1
                """,
                """
                kind = truck
                name = hose truck
                key = none
                sizes = awg
                add = flasher
                to-rear = 3
                add = trailer-socket
                """));
    Generated.run(
        "answers",
        seeds,
        bytes -> {
          Files.write(file, bytes);
          try {
            AnswerFile read = AnswerFile.read(file);
            Vehicle vehicle =
                NewVehicleForm.vehicle(basis, read.answers(), read.rows()).make(basis).vehicle();
            if (VehicleCheck.check(vehicle).isEmpty()) {
              String text = VehicleFile.text(vehicle);
              assertThat(VehicleFile.read(text, "made.json").orThrow()).isEqualTo(vehicle);
            }
            return true;
          } catch (Problem e) {
            assertThat(e.getMessage()).isNotBlank();
            return false;
          }
        });
  }
}
