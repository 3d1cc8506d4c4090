package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Units by preference. */
class UnitsTest {
  private static final Units METRIC = Units.of(Locale.GERMANY);

  @AfterEach
  void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

  @Test
  void theSystemSaysWhatIsUsual() {
    assertThat(METRIC.names()).isEqualTo("written,m,c");
    assertThat(Units.of(Locale.US).names()).isEqualTo("written,ft,f");
  }

  @Test
  void eachIsChosenByItself() {
    assertThat(METRIC.with("ft").orElseThrow().names()).isEqualTo("written,ft,c");
    assertThat(METRIC.with("AWG, f").orElseThrow().names()).isEqualTo("awg,m,f");
    assertThat(METRIC.with("yards")).isEmpty();
    Units all = METRIC.with("mm2,ft,f").orElseThrow();
    assertThat(METRIC.with(all.names())).contains(all);
  }

  /** 0.3048 m a foot, published: international yard and pound agreement, 1959. */
  @Test
  void lengths() {
    Units feet = METRIC.with("ft").orElseThrow();
    assertThat(METRIC.length(1.5, 1)).isEqualTo("1.5 m");
    assertThat(feet.length(3.048, 2)).isEqualTo("10.00 ft");
    Language.use(Language.GERMAN);
    assertThat(feet.length(1.5, 1)).isEqualTo("4,9 ft");
  }

  /** 18 AWG is 0.823 mm2, 14 AWG 2.08 mm2, published: ASTM B258. */
  @Test
  void sizesKeepWhatIsPrintedOnTheReel() {
    WireSize gauge = WireSize.parse("18 AWG");
    WireSize area = WireSize.parse("1.5 mm2");
    assertThat(METRIC.size(gauge)).isEqualTo("18 AWG");
    assertThat(METRIC.with("awg").orElseThrow().size(gauge)).isEqualTo("18 AWG");
    assertThat(METRIC.with("mm2").orElseThrow().size(gauge)).isEqualTo("18 AWG (0.82 mm2)");
    assertThat(METRIC.with("awg").orElseThrow().size(area)).isEqualTo("1.5 mm2 (or 14 AWG)");
    Language.use(Language.GERMAN);
    assertThat(METRIC.with("awg").orElseThrow().size(area)).isEqualTo("1,5 mm2 (oder 14 AWG)");
  }

  @Test
  void temperatures() {
    Units fahrenheit = METRIC.with("f").orElseThrow();
    assertThat(METRIC.temperature(57, Locale.ENGLISH)).isEqualTo("57 C");
    assertThat(fahrenheit.temperature(100, Locale.ENGLISH)).isEqualTo("212 F");
    assertThat(fahrenheit.temperature(-40, Locale.GERMAN)).isEqualTo("-40 °F");
    assertThat(fahrenheit.degrees(57)).isEqualTo("134.6");
    assertThat(fahrenheit.celsius("134.6")).isEqualTo(57, within(1e-9));
  }

  @Test
  void aUnitWrittenWins() {
    Units fahrenheit = METRIC.with("f").orElseThrow();
    assertThat(fahrenheit.celsius("57 °C")).isEqualTo(57);
    assertThat(METRIC.celsius("212F")).isEqualTo(100, within(1e-9));
    assertThat(METRIC.celsius("57,5")).isEqualTo(57.5);
    assertThat(METRIC.celsius("hot")).isNaN();
    assertThat(Said.amount("10", Quantity.LENGTH, METRIC.with("ft").orElseThrow().metres()))
        .isEqualTo(Optional.of(Estimate.of(3.048)));
    assertThat(Said.amount("10 m", Quantity.LENGTH, METRIC.with("ft").orElseThrow().metres()))
        .isEqualTo(Optional.of(Estimate.of(10)));
  }
}
