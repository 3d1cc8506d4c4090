package loopwright.ui.snapshot;

import javafx.stage.Stage;
import loopwright.InGerman;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.Start;

/** The same places in German, whose words are longer. */
@ExtendWith(InGerman.class)
class GermanPlacesTest extends PlacesTest {

  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }
}
