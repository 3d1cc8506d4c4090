package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The language in use, and numbers in it. */
class LanguageTest {

  @AfterEach
  void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

  @Test
  void aSettingGoesBeforeTheSystem() {
    assertThat(Language.of("de")).contains(Language.GERMAN);
    assertThat(Language.of(" EN ")).contains(Language.ENGLISH);
    assertThat(Language.of("tlh")).isEmpty();
    assertThat(Language.of(Locale.forLanguageTag("de-AT"))).isEqualTo(Language.GERMAN);
    assertThat(Language.of(Locale.FRANCE)).isEqualTo(Language.ENGLISH);
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void whatIsShownReadsBackTheSame(Language language) {
    Language.use(language);
    for (double value : new double[] {0.005, 0.75, 1.5, 1.234, 12.345, 999.999, 1234, 1200.5}) {
      assertThat(Said.amount(Said.shown(value), Quantity.LENGTH))
          .as(Said.shown(value))
          .contains(Estimate.of(value));
      Estimate range = Estimate.between(value * 0.9, value, value * 1.2);
      assertThat(Said.amount(Said.spoken(range, Quantity.LENGTH), Quantity.LENGTH))
          .as(Said.spoken(range, Quantity.LENGTH))
          .contains(range);
      Estimate about = Said.amount("about " + Said.shown(value), Quantity.LENGTH).orElseThrow();
      assertThat(Said.amount(Said.spoken(about, Quantity.LENGTH), Quantity.LENGTH))
          .as(Said.spoken(about, Quantity.LENGTH))
          .contains(about);
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void commaAndPointAreBothDecimalMarks(Language language) {
    Language.use(language);
    assertThat(Said.amount("12,4 V", Quantity.VOLTS)).contains(Estimate.of(12.4));
    assertThat(Said.amount("12.4 V", Quantity.VOLTS)).contains(Estimate.of(12.4));
    assertThat(Said.amount("0,125 V", Quantity.VOLTS)).contains(Estimate.of(0.125));
    assertThat(Said.amount("0.125 V", Quantity.VOLTS)).contains(Estimate.of(0.125));
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "ENGLISH;1.234;1.234", "ENGLISH;1,234;", "ENGLISH;12,345 m;", "ENGLISH;1234;1234",
        "GERMAN;1,234;1.234", "GERMAN;1.234;", "GERMAN;12.345 m;", "GERMAN;1234;1234"
      },
      delimiter = ';')
  void aMarkThatMayGroupThousandsIsNotRead(Language language, String text, Double value) {
    Language.use(language);
    assertThat(Said.amount(text, Quantity.LENGTH).map(Estimate::about).orElse(null))
        .isEqualTo(value);
    assertThat(Said.twoWays(text)).isEqualTo(value == null);
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void listsInFilesReadTheSameInEveryLanguage(Language language) {
    Language.use(language);
    assertThat(Said.listed("1.234", Quantity.LENGTH, BigDecimal.ONE)).contains(Estimate.of(1.234));
    assertThat(Said.listed("1,234", Quantity.LENGTH, BigDecimal.ONE)).isEmpty();
    Estimate range = Estimate.between(1.5, 2.25, 3.125);
    assertThat(Said.text(range)).isEqualTo("2.25 (1.5 to 3.125)");
    assertThat(Said.listed(Said.text(range), Quantity.LENGTH, BigDecimal.ONE)).contains(range);
  }

  @Test
  void germanWordsForAmountsAreUnderstoodInBoth() {
    assertThat(Said.amount("1 bis 2 m", Quantity.LENGTH))
        .isEqualTo(Said.amount("1 to 2 m", Quantity.LENGTH));
    assertThat(Said.amount("etwa 1,5 m", Quantity.LENGTH))
        .isEqualTo(Said.amount("about 1.5 m", Quantity.LENGTH));
  }
}
