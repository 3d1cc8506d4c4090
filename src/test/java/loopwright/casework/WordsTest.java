package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import loopwright.diagnosis.Check;
import loopwright.evidence.Bench;
import loopwright.model.Setting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
  private final Words words = new Words(Bench.vehicle("pumper"), new Phrases(Locale.ENGLISH));

  @ParameterizedTest
  @CsvSource({
    "FG, Does fuel gauge FG work?",
    "L5, Does beacon lamp L5 light?",
    "KM, Switch on and off: does main relay KM click?",
    "F3, Pull beacon fuse F3 and look: is the strip whole?"
  })
  void aLookAsksForWhatCanBeSeenAtOnce(String subject, String question) {
    assertThat(words.question(Check.look(subject, Setting.REST))).isEqualTo(question);
  }

  @ParameterizedTest
  @CsvSource({"FG, fuel gauge FG", "L5, beacon lamp L5"})
  void onlyALoadLeftOnIsStayedWith(String load, String title) {
    assertThat(words.question(Check.load(load, Setting.REST)))
        .startsWith("Leave " + title + " on for ten minutes");
  }
}
