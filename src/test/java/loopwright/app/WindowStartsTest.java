package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

@ExtendWith(ApplicationExtension.class)
class WindowStartsTest {
  private Stage stage;

  @Start
  void openWindow(Stage stage) {
    this.stage = stage;
    new LoopwrightApp().start(stage);
  }

  @Test
  void windowIsShownUnderTheProgramsName() {
    assertThat(stage.isShowing()).isTrue();
    assertThat(stage.getTitle()).isEqualTo("Loopwright");
    assertThat(stage.getScene().getWidth()).isPositive();
  }
}
