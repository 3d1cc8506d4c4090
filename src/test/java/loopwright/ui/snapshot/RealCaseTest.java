package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;
import loopwright.casework.CaseDesk;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.fake.FakePreferences;
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
  void aRealCaseOpensAndTakesAReading() throws Exception {
    String vehicle = System.getProperty("vehicle", "pumper");
    String circuit = System.getProperty("circuit", "");
    String lines = System.getProperty("lines", "12.4v");
    Scene scene = open();
    Keyboard keys = new Keyboard(scene);
    for (int i = 0; i < SHED.indexOf(vehicle); i++) {
      keys.press(KeyCode.DOWN);
    }
    Snapshots.take(scene, "real-1-library");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#circuits") != null);
    settle(3000);
    Snapshots.take(scene, "real-2-vehicle");
    keys.press(KeyCode.ENTER);
    if (!circuit.isEmpty()) {
      keys.type(circuit);
    }
    Snapshots.take(scene, "real-3-complaint");
    keys.press(KeyCode.ENTER);
    Snapshots.take(scene, "real-4-opening");
    until(() -> scene.lookup("#case") != null);
    settle(300);
    Snapshots.take(scene, "real-5-case");
    String first = headline(scene);
    int n = 6;
    for (String line : lines.split(";")) {
      String before = headline(scene) + said(scene);
      for (char c : line.toCharArray()) {
        if (c == '#') {
          keys.alt(KeyCode.DIGIT1);
        } else {
          keys.type(String.valueOf(c));
        }
      }
      settle(400);
      if (!line.equals("#") && !line.matches("[1-9c].?")) {
        keys.press(KeyCode.ENTER);
      }
      settle(700);
      Snapshots.take(scene, "real-" + n++ + "-after-" + line.replaceAll("[^a-z0-9]", ""));
    }
    assertThat(headline(scene)).isNotEmpty();
    assertThat(first).isNotEmpty();
  }

  private static String headline(Scene scene) {
    return scene.lookup("#headline") instanceof Label label ? label.getText() : "";
  }

  private static String said(Scene scene) {
    return scene.lookup("#said") instanceof Label label ? label.getText() : "";
  }

  private static void settle(int millis) {
    WaitForAsyncUtils.sleep(millis, TimeUnit.MILLISECONDS);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private static void until(java.util.concurrent.Callable<Boolean> condition) throws Exception {
    WaitForAsyncUtils.waitFor(60, TimeUnit.SECONDS, condition);
  }

  private Scene open() {
    int width = Integer.getInteger("width", 1280);
    return WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          MainWindow window =
              new MainWindow(
                  Bench.desk(),
                  new Shed(),
                  RealCaseTest::loop,
                  Bench.KNOWLEDGE.meters(),
                  new FakePreferences(),
                  background);
          Scene scene = new Scene((BorderPane) window.root(), width, width == 1280 ? 800 : 700);
          stage.setScene(scene);
          stage.show();
          return scene;
        });
  }
}
