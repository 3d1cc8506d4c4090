package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Amounts as people write them. Feet and inches by the agreement of 1959 (published). */
class SaidTest {
  private static String read(String text, Quantity quantity) {
    return Said.amount(text, quantity).map(Said::text).orElse("none");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "1.5 | 1.5",
        "1,5 m | 1.5",
        "1.5M | 1.5",
        ",5 | 0.5",
        "150 cm | 1.5",
        "1500mm | 1.5",
        "4' 6\" | 1.3716",
        "4 ft 6 in | 1.3716",
        "4’6” | 1.3716",
        "4'6'' | 1.3716",
        "18\" | 0.4572",
        "3 1/2 ft | 1.0668",
        "3½ ft | 1.0668",
        "½ m | 0.5",
        "1 m 20 cm | 1.2",
        "~1.5 | 1.5 (1.05 to 1.95)",
        "about 1.5 m | 1.5 (1.05 to 1.95)",
        "ca. 1,5 m | 1.5 (1.05 to 1.95)",
        "c. 2 m | 2 (1.4 to 2.6)",
        "2 m? | 2 (1.4 to 2.6)",
        "2 m approx. | 2 (1.4 to 2.6)",
        "About 2 Metres | 2 (1.4 to 2.6)",
        "1.2-1.8 | 1.5 (1.2 to 1.8)",
        "1,2 – 1,8 m | 1.5 (1.2 to 1.8)",
        "1.2 to 1.8 m | 1.5 (1.2 to 1.8)",
        "50 cm ... 1 m | 0.75 (0.5 to 1)",
        "about 1 to 2 m | 1.5 (1 to 2)",
        "1.5 +/- 0.2 m | 1.5 (1.3 to 1.7)",
        "2 m ± 10 % | 2 (1.8 to 2.2)",
        "3.4 (3 to 4) | 3.4 (3 to 4)",
        "2 (1,5 to 3) m | 2 (1.5 to 3)"
      })
  void lengths(String text, String metres) {
    assertThat(read(text, Quantity.LENGTH)).isEqualTo(metres);
  }

  @ParameterizedTest
  @CsvSource({
    "12.6 V, VOLTS, 12.6",
    "about 12.6, VOLTS, 12.6 (11.97 to 13.23)",
    "850 mV, VOLTS, 0.85",
    "7.5A, AMPS, 7.5",
    "500 mA, AMPS, 0.5",
    "10 amps, AMPS, 10",
    "21 W, WATTS, 21",
    "1.2 kW, WATTS, 1200",
    "85 ohm, OHMS, 85",
    "85 Ω, OHMS, 85",
    "5 mohm, OHMS, 0.005",
    "5 mΩ, OHMS, 0.005",
    "5 Milliohm, OHMS, 0.005",
    "1.2 kΩ, OHMS, 1200",
    "10 Mohm, OHMS, 10000000",
    "10 MOHM, OHMS, 10000000",
    "10 MΩ, OHMS, 10000000",
    "70-100 Ohm, OHMS, 85 (70 to 100)",
    "5, MINUTES, 5",
    "90 s, MINUTES, 1.5",
    "1.5 h, MINUTES, 90",
    "5 min, MINUTES, 5"
  })
  void otherQuantities(String text, Quantity quantity, String expected) {
    assertThat(read(text, quantity)).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "m",
        "1.2.3",
        "1,2,3",
        "1 2 m",
        "about",
        "1-",
        "2 lb",
        "1.000,5",
        "1,200 mm",
        "3-1 m",
        "5 km",
        "long",
        "1e3",
        "NaN",
        "0x10",
        "3-1/2 ft",
        "1/0 m",
        "2 m 3 kg",
        "<2 m"
      })
  void whatIsNoLengthOrMayBeTwoIsNotRead(String text) {
    assertThat(Said.amount(text, Quantity.LENGTH)).isEmpty();
  }

  @Test
  void aUnitOfSomethingElseIsNotRead() {
    for (Quantity quantity : Quantity.values()) {
      for (Quantity other : Quantity.values()) {
        boolean same = quantity == other;
        assertThat(Said.amount("5 " + other.symbol(), quantity).isPresent())
            .as("%s as %s", other, quantity)
            .isEqualTo(same);
      }
    }
    assertThat(Said.amount("9".repeat(400), Quantity.OHMS)).isEmpty();
  }

  @Test
  void aNumberWithoutAUnitHasThatOfItsColumn() {
    BigDecimal feet = Quantity.LENGTH.factor("ft").orElseThrow();
    assertThat(Said.listed("10", Quantity.LENGTH, feet)).contains(Estimate.of(3.048));
    assertThat(Said.listed("10 m", Quantity.LENGTH, feet)).contains(Estimate.of(10));
    assertThat(Said.saysUnit("10", Quantity.LENGTH)).isFalse();
    assertThat(Said.saysUnit("10 m", Quantity.LENGTH)).isTrue();
    assertThat(Said.saysUnit("10\"", Quantity.LENGTH)).isTrue();
    assertThat(Said.twoWays("1,200 mm")).isTrue();
    assertThat(Said.twoWays("1,2")).isFalse();
  }

  @Test
  void aRatingIsExactOrNone() {
    assertThat(Said.exactly("15 A", Quantity.AMPS)).contains(15.0);
    assertThat(Said.exactly("10-15 A", Quantity.AMPS)).isEmpty();
    assertThat(Said.exactly("~15 A", Quantity.AMPS)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "18AWG | 18 AWG",
        "#18 | 18 AWG",
        "18# | 18 AWG",
        "AWG 18 | 18 AWG",
        "18 ga. | 18 AWG",
        "18 Gauge | 18 AWG",
        "2/0 | 2/0 AWG",
        "0,75 mm2 | 0.75 mm2",
        "0.75mm² | 0.75 mm2",
        "0.75 MM2 | 0.75 mm2",
        "1,5 qmm | 1.5 mm2",
        "1.5 sq mm | 1.5 mm2",
        "1.5 mm^2 | 1.5 mm2",
        "1.5 | 1.5 mm2",
        "16 | none",
        "99 AWG | none",
        "0.001 mm2 | none",
        "thick | none"
      })
  void sizes(String text, String size) {
    assertThat(Said.size(text, Optional.empty()).map(WireSize::toString).orElse("none"))
        .isEqualTo(size);
  }

  @Test
  void aBareSizeHasTheUnitOfItsColumn() {
    assertThat(Said.size("16", Optional.of(WireSize.Unit.AWG)))
        .contains(new WireSize(WireSize.Unit.AWG, 16));
    assertThat(Said.size("16", Optional.of(WireSize.Unit.MM2)))
        .contains(new WireSize(WireSize.Unit.MM2, 16));
    assertThat(Said.size("1.5", Optional.of(WireSize.Unit.AWG))).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void whatIsWrittenReadsBackTheSame(Quantity quantity) {
    Random random = new Random(7);
    for (int i = 0; i < 2_000; i++) {
      double low = random.nextDouble() * Math.pow(10, random.nextInt(9) - 4);
      double about = low * (1 + random.nextDouble());
      Estimate exact = Estimate.of(about);
      Estimate within = Estimate.between(low, about, about * (1 + random.nextDouble()));
      assertThat(Said.amount(Said.text(exact), quantity)).contains(exact);
      assertThat(Said.amount(Said.text(within) + " " + quantity.symbol(), quantity))
          .contains(within);
    }
  }
}
