package loopwright.ui.snapshot;

import java.util.List;
import javafx.stage.Stage;
import loopwright.model.Language;
import loopwright.ui.Look;
import loopwright.ui.TextSize;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.provider.Arguments;
import org.testfx.framework.junit5.Start;

/**
 * The same screens in German, whose words are longer: the ends of the scale of text sizes; or, with
 * {@code -Dloopwright.german=all}, whatever {@link ScreensTest} looks at.
 */
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

  static List<Arguments> looksAndSizes() {
    return System.getProperty("loopwright.german", "").equals("all")
        ? ScreensTest.looksAndSizes()
        : List.of(
            Arguments.of(Look.PAPER, TextSize.NORMAL, 1280, 800),
            Arguments.of(Look.PAPER, TextSize.LARGEST, 1024, 700));
  }
}
