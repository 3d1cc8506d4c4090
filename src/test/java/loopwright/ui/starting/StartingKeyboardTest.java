package loopwright.ui.starting;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.PatternWords;
import loopwright.evidence.Bench;
import loopwright.io.VehicleFile;
import loopwright.model.GroundedPole;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.LoopSource;
import loopwright.ui.fake.FakeVehicleLibrary;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** A vehicle is begun, a circuit added and all of it saved, by the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class StartingKeyboardTest {
  private static final Basis BASIS = new Basis(Bench.KNOWLEDGE, new PatternWords(Locale.ENGLISH));
  private static final LoopSource NO_LOOPS = (vehicle, circuit) -> Optional.empty();

  @TempDir Path folder;

  @RegisterExtension final TestWindow window = new TestWindow();
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private void open() {
    scene =
        window.open(
            () ->
                new MainWindow(
                    window
                        .fittings(new FakeVehicleLibrary(), NO_LOOPS)
                        .keeping(TestWindow.keepingIn(folder))
                        .pages(
                            List.of(
                                new NewVehiclePage(BASIS, NO_LOOPS),
                                new AddCircuitPage(BASIS, NO_LOOPS)))),
            1280,
            800);
    keys = new Keyboard(scene);
  }

  private String count() {
    return scene.lookup("#preview-count") instanceof Label label ? label.getText() : "";
  }

  private boolean focused(String id) {
    return scene.getFocusOwner() != null && id.equals(scene.getFocusOwner().getId());
  }

  @Test
  void aVehicleWithThreeCircuitsIsMadeAndSaved() throws Exception {
    open();
    keys.press(KeyCode.F6).control(KeyCode.N);
    until(() -> focused("ask-kind"));
    // A race car is the fourth; its sixth need, the starter, and the lamps are left out.
    keys.press(KeyCode.DIGIT4);
    assertThat(((TextField) scene.lookup("#ask-name")).getText()).isEqualTo("my race car");
    keys.press(KeyCode.DOWN);
    until(() -> focused("ask-name"));
    keys.control(KeyCode.A).type("hill car").press(KeyCode.DOWN);
    until(() -> focused("ask-volts"));
    keys.press(KeyCode.DIGIT1, KeyCode.DOWN, KeyCode.RIGHT, KeyCode.ENTER);
    until(() -> focused("needs"));
    until(() -> count().contains("circuits"));
    ListView<?> needs = (ListView<?>) scene.lookup("#needs");
    assertThat(needs.getItems()).hasSize(6);
    for (int i = 0; i < 6; i++) {
      if (i == 1 || i == 3 || i == 4 || i == 5) {
        keys.press(KeyCode.SPACE);
      }
      keys.press(KeyCode.DOWN);
    }
    until(() -> count().contains("2 circuits"));
    // One more: the horn, found by its letters, with 4 A.
    keys.control(KeyCode.K);
    until(() -> focused("pattern-filter"));
    assertThat(scene.lookup("#pattern-filter").lookupAll(".text"))
        .as("the prompt stands until something is typed")
        .anyMatch(n -> n.isVisible() && n instanceof Text t && t.getText().startsWith("A number"));
    keys.type("horn, relay").press(KeyCode.ENTER);
    until(() -> focused("ask-name"));
    keys.press(KeyCode.DOWN);
    until(() -> focused("ask-power"));
    keys.control(KeyCode.A).type("400");
    until(() -> count().contains("Accepted"));
    keys.control(KeyCode.A).type("4 A");
    until(() -> count().contains("one circuit"));
    keys.press(KeyCode.ENTER);
    until(() -> focused("needs"));
    until(() -> count().contains("3 circuits"));
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#grid") != null);
    keys.control(KeyCode.S);
    save();
    Vehicle saved = saved();
    assertThat(saved.name()).isEqualTo("hill car");
    assertThat(saved.systemVolts()).isEqualTo(6);
    assertThat(saved.grounded()).isEqualTo(GroundedPole.POSITIVE);
    assertThat(saved.circuits())
        .extracting(c -> c.id())
        .containsExactly("ignition", "radiator-fan", "horn");
    assertThat(VehicleCheck.check(saved)).isEmpty();

    // A fourth is added to what is there, and taken back as a whole.
    keys.control(KeyCode.K);
    until(() -> focused("pattern-filter"));
    keys.type("6").press(KeyCode.ENTER);
    until(() -> count().contains("2 circuits"));
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#grid") != null);
    keys.control(KeyCode.S);
    until(() -> saved().circuit("left-turn-signal").isPresent());
    keys.control(KeyCode.Z).control(KeyCode.S);
    until(() -> saved().equals(saved));
  }

  /** Gives the file its name where it has none yet. */
  private void save() throws Exception {
    until(() -> focused("ask-field"));
    keys.press(KeyCode.ENTER);
    until(() -> !files().isEmpty());
  }

  private List<Path> files() {
    Path[] all =
        Optional.ofNullable(folder.toFile().listFiles((f, n) -> n.endsWith(".json")))
            .map(fs -> java.util.Arrays.stream(fs).map(java.io.File::toPath).toArray(Path[]::new))
            .orElse(new Path[0]);
    return List.of(all);
  }

  private Vehicle saved() {
    return VehicleFile.read(files().get(0)).orThrow();
  }
}
