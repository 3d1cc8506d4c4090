package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.CircuitLoops;
import loopwright.casework.FindCase;
import loopwright.casework.PaperDesk;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.KnownGood;
import loopwright.cli.Cli;
import loopwright.cli.CliWorld;
import loopwright.io.ReadyCaseFile;
import loopwright.io.wire.SchemaCheck;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The ready-made cases are played to their end with the real engine and the practice meter. */
class ReadyCasesTest {

  static Stream<String> singleFailures() {
    return ReadyCaseFile.readBundled().orThrow().stream()
        .filter(c -> c.truth().size() == 1)
        .map(ReadyCase::id);
  }

  private static ReadyCase ready(String id) {
    return ReadyCaseFile.readBundled().orThrow().stream()
        .filter(c -> c.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static FindCase open(ReadyCase ready, Vehicle vehicle, SimulatedMeter meter)
      throws Problem {
    return meter.following(
        Bench.desk().open(CaseDesk.NewCase.practice(ready, vehicle), CaseDesk.Progress.SILENT));
  }

  @ParameterizedTest
  @MethodSource("singleFailures")
  void theTruePartIsTheAnswerAndItsRepairIsProven(String id) throws Problem {
    ReadyCase ready = ready(id);
    Vehicle vehicle = Bench.vehicle(ready.vehicle());
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, id.hashCode());
    String truth = ready.truth().get(0).part();
    try (FindCase find = open(ready, vehicle, meter)) {
      CaseView view = find.view();
      StringBuilder trail = new StringBuilder();
      for (int n = 0; n < 25 && view.move() == CaseView.Move.CHECK; n++) {
        CheckView check = view.next().orElseThrow();
        view = find.answer(check.id(), meter.read(check));
        trail.append("\n  ").append(check.id()).append(": ").append(view.said());
      }
      System.out.printf(
          "%-22s %-12s %2d checks %5.1f min %s%n",
          id,
          view.status(),
          view.readings().size(),
          view.minutes(),
          view.suspects().get(0).parts());
      assertThat(view.move()).as(id + trail).isEqualTo(CaseView.Move.REPAIR);
      assertThat(view.suspects().get(0).parts()).as(id + trail).contains(truth);
      view = find.repaired(truth);
      for (int n = 0; n < 5 && view.move() == CaseView.Move.PROOF; n++) {
        CheckView check = view.next().orElseThrow();
        view = find.answer(check.id(), meter.read(check));
      }
      assertThat(view.move()).isEqualTo(CaseView.Move.END);
      assertThat(view.status()).isEqualTo(CaseView.Status.HEALTHY);
    }
  }

  @Test
  void aCaseWithTwoFailuresOpensAndIsAnswered() throws Problem {
    ReadyCase ready = ready("two-faults");
    Vehicle vehicle = Bench.vehicle(ready.vehicle());
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 1);
    try (FindCase find = open(ready, vehicle, meter)) {
      CheckView check = find.view().next().orElseThrow();
      assertThat(find.answer(check.id(), meter.read(check)).readings()).hasSize(1);
    }
  }

  @Test
  void theTerminalPlaysTheBeaconToItsProvenRepair() {
    String said = run("meter\n".repeat(12), "find", "--ready", "beacon-ground");
    assertThat(said).contains("Found: beacon ground stud G4");
    said =
        run(
            "meter\n".repeat(checks(said)) + "mended\nmeter\nmeter\n",
            "find",
            "--ready",
            "beacon-ground");
    assertThat(said).contains("Found: beacon ground stud G4").contains("Proof of the repair");
  }

  private static int checks(String said) {
    return (int) said.lines().filter(l -> l.startsWith("Check ")).count();
  }

  @Test
  void theLinesPlayTheBeaconToItsRepair() {
    String said =
        run("{\"type\":\"meter\"}\n".repeat(12), "find", "--ready", "beacon-ground", "--jsonl");
    assertThat(said).contains("\"next\":\"repair\"").contains("\"status\":\"isolated\"");
    assertThat(said.lines().findFirst().orElseThrow())
        .contains("\"story\":\"" + ready("beacon-ground").story());
    assertThat(SchemaCheck.FROM_PROGRAM.defects(said.lines().findFirst().orElseThrow())).isEmpty();
  }

  private static String run(String in, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Cli.run(args, new World(in, new PrintStream(out, true, StandardCharsets.UTF_8)));
    return out.toString(StandardCharsets.UTF_8);
  }

  private record World(String text, PrintStream out) implements CliWorld {
    @Override
    public Opening openVehicle(String name) {
      return new Opening.Opened(Bench.vehicle(name), name, List.of());
    }

    @Override
    public List<String> demoVehicles() {
      return List.of("pumper", "tractor", "truck", "motorcycle");
    }

    @Override
    public CaseDesk desk() {
      return Bench.desk();
    }

    @Override
    public CaseArchive archive() {
      throw new AssertionError("no kept case is looked at here");
    }

    @Override
    public KnownGood knownGood(Vehicle vehicle) {
      throw new AssertionError("no card is printed here");
    }

    @Override
    public PaperDesk paperDesk() {
      return Bench.paperDesk();
    }

    @Override
    public CardDesk cardDesk() {
      return Bench.cardDesk();
    }

    @Override
    public GroundDesk groundDesk() {
      return Bench.groundDesk(new Bench.ProofsInMemory());
    }

    @Override
    public ProveDesk proveDesk() {
      return Bench.proveDesk(Bench.desk(), new Bench.ProofsInMemory());
    }

    @Override
    public List<ReadyCase> readyCases() {
      return ReadyCaseFile.readBundled().orThrow();
    }

    @Override
    public SimulatedMeter practiceMeter(ReadyCase ready, Vehicle vehicle) throws Problem {
      return new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, ready.id().hashCode());
    }

    @Override
    public PractiseDesk practiseDesk() {
      throw new AssertionError("no drill is played here");
    }

    @Override
    public ExplainDesk explainDesk() {
      throw new AssertionError("no page is opened here");
    }

    @Override
    public CircuitLoops loops(Vehicle vehicle) {
      throw new AssertionError("no circuit is drawn here");
    }

    @Override
    public InputStream in() {
      return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public PrintStream err() {
      return System.err;
    }

    @Override
    public Clock clock() {
      return Clock.systemUTC();
    }
  }
}
