package loopwright.ui.shell;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.stage.Stage;
import loopwright.ui.TextSize;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The frame with every place fitted, as the program has it. */
@ExtendWith(ApplicationExtension.class)
class FrameKeyboardTest {
  @RegisterExtension final TestWindow window = new TestWindow();
  private MainWindow made;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private Scene open(Fittings fittings) {
    return window.open(() -> made = new MainWindow(fittings), 1280, 800);
  }

  @Test
  void theBarFitsWhateverTheWidthAndTheSizeOfText() throws Exception {
    Scene scene = open(window.fittings().practise(TestWindow.drills()).startScreen());
    for (TextSize size : TextSize.values()) {
      for (int width : new int[] {1024, 1100, 1180, 1280, 1366, 1440, 1600, 1920}) {
        double right =
            WaitForAsyncUtils.waitForAsyncFx(
                10_000,
                () -> {
                  made.shell().textSizeProperty().set(size);
                  // Wider than the headless screen, which can't show a window of it.
                  scene.getRoot().resize(width, 800);
                  scene.getRoot().applyCss();
                  scene.getRoot().layout();
                  return ((HBox) scene.lookup(".top-bar"))
                      .getChildren().stream()
                          .mapToDouble(part -> part.getBoundsInParent().getMaxX())
                          .max()
                          .orElseThrow();
                });
        assertThat(right)
            .as("at %d pixels, %d %%", width, size.percent())
            .isGreaterThan(width / 2.0)
            .isLessThanOrEqualTo(width);
      }
    }
  }

  @Test
  void everyPlaceHasAKeyOfItsOwn() throws Exception {
    Scene scene = open(window.fittings().practise(TestWindow.drills()));
    Keyboard keys = new Keyboard(scene);
    keys.takeVehicle();
    keys.press(KeyCode.F11);
    until(() -> scene.lookup("#circuits") == null);
    assertThat(made.shell().placeProperty().get())
        .as("F11 is another vehicle's")
        .isEqualTo(ShellViewModel.Place.VEHICLE);
    keys.press(KeyCode.F4);
    assertThat(made.shell().placeProperty().get()).isEqualTo(ShellViewModel.Place.CASES);
    keys.shift(KeyCode.F4);
    assertThat(made.shell().placeProperty().get()).isEqualTo(ShellViewModel.Place.PRACTISE);
  }
}
