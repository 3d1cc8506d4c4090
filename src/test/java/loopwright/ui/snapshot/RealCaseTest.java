package loopwright.ui.snapshot;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;
import loopwright.ui.ReadyCases;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The window over the real search and a demo vehicle. */
@ExtendWith(ApplicationExtension.class)
class RealCaseTest {
  private static final List<String> SHED = List.of("pumper", "tractor", "truck", "motorcycle");

  private final OneReadyCase beacon = new OneReadyCase("beacon-ground", "pumper", Bench.desk());
  private final ExecutorService background = Executors.newCachedThreadPool();
  private Stage stage;

  @Start
  void start(Stage stage) {
    this.stage = stage;
  }

  /** The demo vehicles. */
  private static final class Shed implements VehicleLibrary {
    @Override
    public List<Entry> entries() {
      return SHED.stream()
          .map(Bench::vehicle)
          .map(v -> new Entry(v.id(), v.name(), v.systemVolts() + " V", Shelf.DEMO))
          .toList();
    }

    @Override
    public Loaded load(String name) {
      return new Loaded.Ready(
          name,
          SHED.stream()
              .map(Bench::vehicle)
              .filter(v -> v.id().equals(name))
              .findFirst()
              .orElseThrow());
    }
  }

  private static Optional<LoopView> loop(Vehicle vehicle, String circuit) {
    CaseDesk.NewCase newCase =
        new CaseDesk.NewCase(
            vehicle,
            vehicle.id(),
            circuit,
            Optional.empty(),
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            Bench.KNOWLEDGE.meters().get(0).id());
    try (FindCase opened = Bench.desk().open(newCase, CaseDesk.Progress.SILENT)) {
      return Optional.of(opened.view().loop());
    } catch (Problem p) {
      throw new AssertionError(p);
    }
  }

  @Test
  void aCaseOverTheRealSearchOpensAndTakesAnAnswer() throws Exception {
    Scene scene = open();
    Keyboard keys = new Keyboard(scene);
    keys.takeVehicle();
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#complaint") != null);
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#case") != null);
    Snapshots.take(scene, "real-case-opened");
    assertThat(text(scene, "#headline")).isEqualTo("Check 1");

    boolean look = scene.lookup(".choice-button") != null;
    if (look) {
      keys.type("1");
    } else {
      keys.alt(KeyCode.DIGIT1);
    }
    until(() -> scene.lookup("#done").lookupAll(".chip").size() == 1);
    Snapshots.take(scene, "real-case-answered");
    assertThat(text(scene, "#said")).isNotEmpty();
    assertThat(scene.getRoot().lookupAll(".piece")).hasSizeGreaterThan(5);
  }

  @Test
  void aLearnerProposesFirstByKeyboardAlone() throws Exception {
    Scene scene = open();
    Keyboard keys = new Keyboard(scene);
    keys.takeVehicle();
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#complaint") != null);
    keys.press(KeyCode.ENTER);
    until(() -> text(scene, "#headline").equals("Check 1"));
    keys.type("y");
    until(() -> text(scene, "#headline").equals("Your turn"));
    Snapshots.take(scene, "learner-first");
    // Volts, the circuit on, between two points found by their names.
    keys.press(KeyCode.ENTER);
    until(() -> text(scene, "#headline").equals("Your proposal"));
    keys.press(KeyCode.ENTER).press(KeyCode.ENTER);
    keys.type("BATT.pos").press(KeyCode.ENTER).type("BATT.neg").press(KeyCode.ENTER);
    until(() -> scene.lookup("#own-search") == null);
    keys.press(KeyCode.ENTER);
    until(() -> !text(scene, "#verdict").isEmpty());
    Snapshots.take(scene, "learner-compared");
    // Thought over, then taken all the same.
    keys.press(KeyCode.ESCAPE);
    until(() -> text(scene, "#headline").equals("Your proposal"));
    keys.press(KeyCode.ENTER);
    until(() -> !text(scene, "#verdict").isEmpty());
    keys.type("1");
    until(() -> text(scene, "#headline").equals("Check 1"));
    keys.type("12.6v").press(KeyCode.ENTER);
    until(() -> scene.lookup("#done").lookupAll(".chip").size() == 1);
    until(() -> text(scene, "#headline").equals("Your turn"));
    keys.type("y");
    until(() -> text(scene, "#headline").equals("Check 2"));
  }

  @Test
  void aReadyMadeCaseIsPlayedToItsProvenRepairByKeyboardAlone() throws Exception {
    Scene scene = open(beacon);
    Keyboard keys = new Keyboard(scene);
    keys.press(KeyCode.F4);
    until(() -> scene.lookup("#ready") != null && scene.lookup("#ready").isFocused());
    Snapshots.take(scene, "ready-cases");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#case") != null);
    until(() -> text(scene, "#said").startsWith("The owner: The body came back"));
    Snapshots.take(scene, "ready-case-opened");
    int checks = 0;
    while (scene.lookup("#mended") == null && checks < 15) {
      int before = scene.lookup("#done").lookupAll(".chip").size();
      keys.type("z");
      until(
          () ->
              scene.lookup("#mended") != null
                  || scene.lookup("#done").lookupAll(".chip").size() > before);
      checks++;
    }
    until(() -> scene.lookup("#mended") != null);
    Snapshots.take(scene, "ready-case-found");
    assertThat(scene.getRoot().lookupAll(".label").stream().map(n -> ((Label) n).getText()))
        .anyMatch(t -> t != null && t.contains("beacon ground stud G4"));
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#mended") == null);
    for (int n = 0; n < 4; n++) {
      keys.type("z");
      Thread.sleep(700);
    }
    Snapshots.take(scene, "ready-case-proven");
    assertThat(beacon.view().status()).isEqualTo(CaseView.Status.HEALTHY);
    assertThat(beacon.view().move()).isEqualTo(CaseView.Move.END);
  }

  /** Digits, unit, Enter, as a person types them; each is answered before the next is typed. */
  @Test
  void typedReadingsFindTheFailureAndProveItsRepairAndEachIsAnsweredPromptly() throws Exception {
    Scene scene = open(beacon);
    Keyboard keys = new Keyboard(scene);
    keys.press(KeyCode.F4);
    until(() -> scene.lookup("#ready") != null && scene.lookup("#ready").isFocused());
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#case") != null && !text(scene, "#headline").isEmpty());
    List<String> trail = new ArrayList<>();
    double slowest = 0;
    int metered = 0;
    boolean mended = false;
    for (int n = 0; n < 20 && beacon.view().move() != CaseView.Move.END; n++) {
      CaseView view = beacon.view();
      if (view.move() == CaseView.Move.REPAIR) {
        until(() -> scene.lookup("#mended") != null);
        assertThat(view.suspects().get(0).parts()).containsExactly("G4");
        keys.press(KeyCode.ENTER);
        until(() -> text(scene, "#headline").equals("Prove the repair"));
        mended = true;
        continue;
      }
      CheckView check = view.next().orElseThrow();
      Answer answer = beacon.read(check);
      int before = chips(scene);
      long start = System.nanoTime();
      if (answer instanceof Answer.Saw saw) {
        keys.type(Integer.toString(check.choices().indexOf(saw.seen()) + 1));
      } else {
        metered++;
        keys.type(OneReadyCase.keysOf(((Answer.Text) answer).text()));
        until(() -> text(scene, "#entry-status").contains("Enter counts it"));
        start = System.nanoTime();
        keys.press(KeyCode.ENTER);
      }
      if (mended) {
        until(() -> beacon.view().readings().size() > view.readings().size());
      } else {
        until(() -> chips(scene) > before);
      }
      double seconds = (System.nanoTime() - start) / 1e9;
      slowest = Math.max(slowest, seconds);
      trail.add(String.format(Locale.ROOT, "%s: %s, %.2f s", check.id(), answer, seconds));
    }
    System.out.println(String.join("\n", trail));
    until(() -> text(scene, "#headline").equals("Closed"));
    assertThat(metered).as("readings were typed").isGreaterThanOrEqualTo(2);
    assertThat(mended).isTrue();
    assertThat(beacon.view().status()).isEqualTo(CaseView.Status.HEALTHY);
    assertThat(slowest).as("seconds to the next check: %s", trail).isLessThan(20);
  }

  private static int chips(Scene scene) {
    return scene.lookup("#done").lookupAll(".chip").size();
  }

  private static String text(Scene scene, String id) {
    return scene.lookup(id) instanceof Label label ? label.getText() : "";
  }

  private Scene open() {
    return open(ReadyCases.NONE);
  }

  private Scene open(ReadyCases ready) {
    return WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          MainWindow window =
              new MainWindow(
                  new Fittings(
                          Bench.desk(),
                          new Shed(),
                          RealCaseTest::loop,
                          Bench.KNOWLEDGE.meters(),
                          new FakePreferences(),
                          background)
                      .ready(ready));
          Scene scene = new Scene((BorderPane) window.root(), 1280, 800);
          stage.setScene(scene);
          stage.show();
          return scene;
        });
  }
}
