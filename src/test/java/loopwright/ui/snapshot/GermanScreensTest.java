package loopwright.ui.snapshot;

import java.util.List;
import javafx.stage.Stage;
import loopwright.model.Language;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.testfx.framework.junit5.Start;

/** The same screens in German, whose words are longer. */
class GermanScreensTest extends ScreensTest {

  @BeforeAll
  static void inGerman() {
    Language.use(Language.GERMAN);
  }

  @AfterAll
  static void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

  @Start
  @Override
  void start(Stage stage) {
    super.start(stage);
  }

  static List<Dress> dresses() {
    return Dress.all();
  }
}
