package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

@ExtendWith(ApplicationExtension.class)
class WindowStartsTest {
  @TempDir static Path home;

  private Stage stage;

  @Start
  void openWindow(Stage stage) {
    this.stage = stage;
    System.setProperty(Places.HOME, home.toString());
    new LoopwrightApp().start(stage);
  }

  @AfterEach
  void backHome() {
    System.clearProperty(Places.HOME);
  }

  @Test
  void windowIsShownUnderTheProgramsName() {
    assertThat(stage.isShowing()).isTrue();
    assertThat(stage.getTitle()).isEqualTo("Loopwright");
    assertThat(stage.getScene().getWidth()).isPositive();
  }
}
