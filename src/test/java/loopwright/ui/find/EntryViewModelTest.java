package loopwright.ui.find;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.diagnosis.CheckKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EntryViewModelTest {
  private final EntryViewModel entry = new EntryViewModel();

  private void typed(String digits) {
    digits.chars().forEach(c -> entry.add((char) c));
  }

  @ParameterizedTest
  @CsvSource({
    "12.41, VOLT, 12.41 V",
    "'12,41', VOLT, '12,41 V'",
    "35, MILLIVOLT, 35 mV",
    "4.7, KILOHM, 4.7 kohm",
    "-0.02, VOLT, -0.02 V",
    "0.3, OHM, 0.3 ohm"
  })
  void digitsThenAUnitMakeAValue(String digits, EntryUnit unit, String value) {
    typed(digits);
    assertThat(entry.complete()).isFalse();
    assertThat(entry.unit(unit)).isTrue();
    assertThat(entry.text()).isEqualTo(value);
    assertThat(entry.complete()).isTrue();
  }

  @Test
  void overRangeNeedsNoDigits() {
    entry.unit(EntryUnit.OVER);
    assertThat(entry.text()).isEqualTo("OL");
    assertThat(entry.complete()).isTrue();
  }

  @Test
  void aUnitWithoutDigitsIsRefused() {
    assertThat(entry.unit(EntryUnit.VOLT)).isFalse();
    typed("-.");
    assertThat(entry.unit(EntryUnit.VOLT)).isFalse();
  }

  @Test
  void anotherUnitReplacesTheFirst() {
    typed("12.4");
    entry.unit(EntryUnit.MILLIVOLT);
    entry.unit(EntryUnit.VOLT);
    assertThat(entry.text()).isEqualTo("12.4 V");
  }

  @Test
  void backTakesTheUnitFirstThenDigits() {
    typed("12.4");
    entry.unit(EntryUnit.VOLT);
    entry.back();
    assertThat(entry.text()).isEqualTo("12.4");
    entry.back();
    assertThat(entry.text()).isEqualTo("12.");
  }

  @Test
  void aDigitAfterAUnitTakesTheUnitOff() {
    typed("12");
    entry.unit(EntryUnit.VOLT);
    typed("4");
    assertThat(entry.text()).isEqualTo("124");
  }

  @Test
  void aTypographicMinusIsHandedOnPlain() {
    typed("−6.3");
    entry.unit(EntryUnit.VOLT);
    assertThat(entry.plain()).isEqualTo("-6.3 V");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.2.3", "--1", "12x", "12 A", "1e5", "12345678", "OLD", " 12"})
  void whatIsNoValueNeverStandsInTheField(String text) {
    assertThat(entry.type(text)).isFalse();
    assertThat(entry.text()).isEmpty();
  }

  @Test
  void noUnitKeyMeansALead() {
    for (EntryUnit unit : EntryUnit.values()) {
      assertThat(unit.key()).isNotIn('r', 'b');
    }
  }

  @Test
  void ohmsOfferNoVoltsAndLooksNoUnitAtAll() {
    assertThat(EntryUnit.of(CheckKind.OHMS))
        .containsExactly(EntryUnit.OHM, EntryUnit.KILOHM, EntryUnit.OVER);
    assertThat(EntryUnit.of(CheckKind.LOOK)).isEmpty();
  }
}
