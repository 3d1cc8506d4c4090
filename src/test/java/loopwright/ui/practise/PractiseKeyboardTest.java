package loopwright.ui.practise;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.practise.Loss;
import loopwright.evidence.Bench;
import loopwright.model.PartKind;
import loopwright.ui.Worker;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestScreen;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A drill on the motorcycle, chosen, played and debriefed on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class PractiseKeyboardTest {
  private final ExecutorService background = Executors.newCachedThreadPool();
  private final Bench.DrillsInMemory kept = new Bench.DrillsInMemory();
  private PractiseViewModel model;
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    model =
        new PractiseViewModel(
            new PractiseSource(
                Bench.practiseDesk(kept),
                List.of("motorcycle"),
                name -> Optional.of(Bench.vehicle(name)),
                Optional.of(sheet -> Path.of(sheet.code() + ".pdf"))),
            new Worker(background, Platform::runLater));
    PractiseScreen screen = new PractiseScreen(model, new ReadOnlyDoubleWrapper(TestScreen.EM));
    scene = TestScreen.show(stage, screen);
  }

  @AfterEach
  void stopBackground() {
    background.shutdownNow();
  }

  private void settled(PractiseViewModel.Stage stage) throws TimeoutException {
    WaitForAsyncUtils.waitFor(
        120, TimeUnit.SECONDS, () -> model.stageProperty().get() == stage && !model.working());
    WaitForAsyncUtils.waitForFxEvents(3);
  }

  private String text(String id) {
    return scene.lookup(id) instanceof Label label ? label.getText() : "";
  }

  @Test
  void aDrillIsPlayedToItsDebriefWithoutAMouse() throws Exception {
    keys = new Keyboard(scene);
    Platform.runLater(
        () -> {
          model.show("motorcycle", Bench.vehicle("motorcycle"));
          model.opened();
        });
    until(() -> !model.levels().isEmpty());
    settled(PractiseViewModel.Stage.CHOOSE);
    Snapshots.take(scene, "practise-choose");
    // What is chosen can go on a class sheet; here it is played.
    keys.press(KeyCode.P);
    assertThat(model.printing()).isTrue();
    Snapshots.take(scene, "practise-sheet");
    keys.press(KeyCode.P);
    assertThat(model.printing()).isFalse();
    keys.press(KeyCode.X).press(KeyCode.DIGIT1);
    settled(PractiseViewModel.Stage.PLAYING);
    // Asked for what is expected and what it will tell, then read.
    keys.press(KeyCode.ENTER).type("12-13").press(KeyCode.ENTER);
    assertThat(model.foretelling()).isTrue();
    keys.press(KeyCode.DIGIT1);
    assertThat(model.foretold(0)).isTrue();
    Snapshots.take(scene, "practise-foretold");
    keys.press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.foretelling()).isFalse();
    assertThat(model.last().orElseThrow().foretold().right()).isPositive();
    assertThat(text("#practise-shown")).contains("12.");
    assertThat(model.last().orElseThrow().told()).anyMatch(t -> t.contains("As you expected"));
    // Amperes across the battery.
    keys.press(KeyCode.A).press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.last().orElseThrow().losses())
        .containsExactly(Loss.AMPS_ACROSS, Loss.METER_FUSE);
    keys.press(KeyCode.U);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.drilling().orElseThrow().meterFuse()).isTrue();
    // The switches, the leads and the battery are moved.
    keys.press(KeyCode.V).press(KeyCode.S);
    assertThat(model.setting()).isEqualTo(model.drilling().orElseThrow().on());
    var red = model.red().ref();
    keys.press(KeyCode.RIGHT);
    assertThat(model.red().ref()).isNotEqualTo(red);
    var black = model.black().ref();
    keys.shift(KeyCode.RIGHT);
    assertThat(model.black().ref()).isNotEqualTo(black);
    keys.shift(KeyCode.LEFT);
    keys.press(KeyCode.B);
    assertThat(model.setting().apart()).hasSize(1);
    keys.press(KeyCode.B);
    Snapshots.take(scene, "practise-playing");
    keys.press(KeyCode.L).press(KeyCode.ENTER).press(KeyCode.ENTER).press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.last().orElseThrow().shown()).isNotEmpty();
    // A good part in another's place, what is expected of it by its number; a lamp for a fuse.
    keys.press(KeyCode.G).press(KeyCode.ENTER).type("3").press(KeyCode.ENTER);
    keys.press(KeyCode.DIGIT0).press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.last().orElseThrow().told()).anyMatch(t -> t.contains("you expected"));
    keys.press(KeyCode.F);
    assertThat(model.drilling().orElseThrow().vehicle().requirePart(model.choice()).kind())
        .isEqualTo(PartKind.FUSE);
    keys.press(KeyCode.ENTER).press(KeyCode.ENTER).press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(text("#practise-shown")).startsWith("lamp ");
    // A guess, and the end.
    keys.press(KeyCode.N).press(KeyCode.K);
    assertThat(model.how()).isPresent();
    Snapshots.take(scene, "practise-name");
    keys.press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.last().orElseThrow().losses()).contains(Loss.WITHOUT_CAUSE);
    keys.press(KeyCode.E);
    settled(PractiseViewModel.Stage.DEBRIEF);
    assertThat(text("#practise-score")).contains("Score");
    keys.press(KeyCode.DOWN);
    assertThat(model.shownStep()).isEqualTo(1);
    Snapshots.take(scene, "practise-debrief");
    assertThat(kept.read()).hasSize(1);
    // The same again, by its code.
    String code = model.drilling().orElseThrow().code().toString();
    keys.press(KeyCode.N);
    settled(PractiseViewModel.Stage.CHOOSE);
    assertThat(scene.lookup("#practise-progress")).isNotNull();
    keys.press(KeyCode.C).type(code.toLowerCase(Locale.ROOT)).press(KeyCode.ENTER);
    settled(PractiseViewModel.Stage.PLAYING);
    assertThat(model.drilling().orElseThrow().code().toString()).isEqualTo(code);
    assertThat(model.drilling().orElseThrow().steps()).isEmpty();
  }
}
