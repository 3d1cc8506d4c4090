package loopwright.ui.wiring;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.PlanFinding;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.Sketch;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.io.VehicleFile;
import loopwright.knowledge.Context;
import loopwright.model.Circuit;
import loopwright.model.GroundedPole;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.solver.Network;
import loopwright.ui.fake.FakeVehicleLibrary;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/**
 * Evidence: a vehicle of 15 circuits is typed in from a written list, by the keyboard alone, and
 * then passes the paper check and plays a case. Every cell of the list is typed; nothing is pasted.
 */
@ExtendWith(ApplicationExtension.class)
class WrittenListTest {
  private static final Path LIST = Path.of("src/test/resources/written/fifteen-circuits.txt");

  @TempDir Path folder;

  @RegisterExtension final TestWindow window = new TestWindow();
  private Scene scene;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private String text(String id) {
    return TestWindow.text(scene, id);
  }

  @Test
  void fifteenCircuitsAreTypedFromAWrittenListAndHoldTogether() throws Exception {
    Path file = folder.resolve("yard.json");
    Vehicle nothing =
        new Vehicle(
            "yard", "Yard vehicle", 12, GroundedPole.NEGATIVE, List.of(), List.of(), List.of(), "");
    VehicleFile.write(nothing, file);
    scene = open();
    Keyboard keys = new Keyboard(scene);
    keys.press(KeyCode.F6).control(KeyCode.O);
    until(() -> scene.lookup("#ask-field") != null);
    keys.type(file.toString()).press(KeyCode.ENTER);
    until(() -> text("#wiring-state").contains("saved"));

    long began = System.nanoTime();
    int rows = 0;
    int strokes = 0;
    for (String line : Files.readAllLines(LIST)) {
      if (line.startsWith("[")) {
        keys.control(KeyCode.valueOf("DIGIT" + line.charAt(1)));
        strokes++;
      } else if (line.contains(" | ")) {
        keys.control(KeyCode.END);
        strokes += 2 + line.length();
        String[] cells = line.split("\\|", -1);
        for (int i = 0; i < cells.length; i++) {
          keys.typeFast(cells[i].strip());
          keys.press(i < cells.length - 1 ? KeyCode.TAB : KeyCode.ENTER);
          assertThat(text("#wiring-told")).as(line).doesNotContain("can’t be taken");
        }
        rows++;
      }
    }
    double seconds = (System.nanoTime() - began) / 1e9;
    keys.control(KeyCode.S);
    until(() -> text("#wiring-state").endsWith(": saved"));
    Snapshots.take(scene, "written-list");
    System.out.printf(
        Locale.ROOT, "%d rows typed, about %d strokes, %.0f s%n", rows, strokes, seconds);

    Vehicle typed = VehicleFile.read(file).orThrow();
    assertThat(typed.circuits()).hasSize(15);
    assertThat(VehicleCheck.check(typed)).isEmpty();
    Sketch sketch = new Sketch(typed);
    for (Circuit circuit : typed.circuits()) {
      assertThat(sketch.of(circuit.id())).as(circuit.name()).isPresent();
    }
    assertThat(Network.of(typed, Bench.KNOWLEDGE.typicals()).nodes()).isGreaterThan(100);
    assertThat(Bench.paperDesk().check(typed).defects())
        .extracting(PlanFinding::finding)
        .as("what the paper check finds")
        .isEmpty();
    plays(typed);
  }

  /** A dead work lamp of the typed vehicle is traced to the wire that broke. */
  private static void plays(Vehicle vehicle) throws Problem {
    ReadyCase ready =
        new ReadyCase(
            "yard",
            "yard",
            "yard",
            "dead",
            "work",
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            "",
            List.of(new ReadyCase.Fault("W26", "open", Optional.empty())),
            "better");
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 5);
    try (FindCase find =
        meter.following(
            Bench.desk()
                .open(
                    new CaseDesk.NewCase(
                        vehicle,
                        "yard",
                        "work",
                        Optional.empty(),
                        ready.kind(),
                        ready.context(),
                        ready.meter()),
                    CaseDesk.Progress.SILENT))) {
      CaseView view = find.view();
      for (int n = 0; n < 25 && view.move() == CaseView.Move.CHECK; n++) {
        CheckView check = view.next().orElseThrow();
        view = find.answer(check.id(), meter.read(check));
      }
      assertThat(view.move()).isEqualTo(CaseView.Move.REPAIR);
      assertThat(view.suspects().get(0).parts()).contains("W26");
    }
  }

  private Scene open() {
    return window.open(
        () ->
            new MainWindow(
                window
                    .fittings(new FakeVehicleLibrary(), (v, c) -> Optional.empty())
                    .keeping(TestWindow.keepingIn(folder))),
        1280,
        800);
  }
}
