package loopwright.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Random;
import loopwright.meter.MeterLine.Quantity;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeterLineTest {
  private static final int LINES = 1_000_000;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          12.41 V           | VOLTS   | 12.41    | 0.01
          12,41 V           | VOLTS   | 12.41    | 0.01
          -12.4V DC         | VOLTS   | -12.4    | 0.1
          - 0.35 VDC        | VOLTS   | -0.35    | 0.01
          DC 12.4 V         | VOLTS   | 12.4     | 0.1
          DC: 12.4 V        | VOLTS   | 12.4     | 0.1
          12.4 DCV          | VOLTS   | 12.4     | 0.1
          35 mV             | VOLTS   | 0.035    | 0.001
          35.2 mVDC         | VOLTS   | 0.0352   | 0.0001
          35 MV             | VOLTS   | 0.035    | 0.001
          120 uV            | VOLTS   | 0.00012  | 0.000001
          4.7 kOhm          | OHMS    | 4700     | 100
          4.70 kohm         | OHMS    | 4700     | 10
          1.2 MOHM          | OHMS    | 1200000  | 100000
          4.7k              | OHMS    | 4700     | 100
          0.3 ohms          | OHMS    | 0.3      | 0.1
          0.3 Ω             | OHMS    | 0.3      | 0.1
          20 mOhm           | OHMS    | 0.020    | 0.001
          1.25 A            | AMPERES | 1.25     | 0.01
          +1.2345E+01       | UNSAID  | 12.345   | 0.001
          -1.20000000E-03   | UNSAID  | -0.0012  | 0.00000000001
          +1.2345E+01 VDC   | VOLTS   | 12.345   | 0.001
          12                | UNSAID  | 12       | 1
          .5 V              | VOLTS   | 0.5      | 0.1
          """)
  void aReadingIsUnderstoodWithItsUnitAndLastDigit(
      String line, Quantity quantity, double value, double step) {
    assertThat(MeterLine.parse(line)).isInstanceOf(MeterLine.Value.class);
    MeterLine.Value read = (MeterLine.Value) MeterLine.parse("  " + line + " ");
    assertThat(read.quantity()).isEqualTo(quantity);
    assertThat(read.value()).isCloseTo(value, within(1e-12 + 1e-12 * Math.abs(value)));
    assertThat(read.step()).isCloseTo(step, within(1e-9 * step));
  }

  @ParameterizedTest
  @CsvSource({
    "OL, UNSAID",
    "O.L, UNSAID",
    "0L, UNSAID",
    "-OL V, VOLTS",
    "OL MOhm, OHMS",
    "0.L kOhm, OHMS",
    "OVLD, UNSAID",
    "overload, UNSAID",
    "9.9E37, UNSAID",
    "+9.90000000E+37, UNSAID",
    "-9.9E+37 V, VOLTS"
  })
  void beyondWhatTheMeterShowsIsOverRange(String line, Quantity quantity) {
    assertThat(MeterLine.parse(line)).isEqualTo(new MeterLine.OverRange(quantity));
  }

  @ParameterizedTest
  @CsvSource({
    "50.0 Hz, Hz",
    "23.4 °C, °C",
    "230.1 VAC, V AC",
    "230.1 V AC, V AC",
    "AC 3.2 mV, mV AC",
    "45 %, %",
    "100 nF, nF",
    "OL V AC, V AC"
  })
  void whatNoCheckAsksForIsNamed(String line, String unit) {
    assertThat(MeterLine.parse(line)).isEqualTo(new MeterLine.OtherUnit(unit));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "V",
        "12.4.1 V",
        "12 .4 V",
        "1.2,3.4",
        "12.4 V 3",
        "12.4 horses",
        "--1 V",
        "1e9999 V",
        "9.91E37",
        "1e30",
        "1e-30 V",
        "NaN",
        "0x12 V",
        "12.4 V;",
        "<12.4 V>",
        "OL horses",
        "12.4 kk",
        "12.4 mk",
        "*IDN?",
        "1234567890123456789012345678901234567890123456789012345678901234567 V"
      })
  void anythingElseIsGarbled(String line) {
    assertThat(MeterLine.parse(line)).isInstanceOf(MeterLine.Garbled.class);
  }

  @Test
  void aMillionJunkLinesAreReadInBoundedTime() {
    Random random = new Random(6);
    String alphabet = "0123456789+-.,eE VmkMOLohDCA\u03a9\u00b5%\u0000\t\u00e9\uD83D";
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(60),
        () -> {
          int values = 0;
          for (int i = 0; i < LINES; i++) {
            StringBuilder line = new StringBuilder();
            for (int n = random.nextInt(i % 1000 == 0 ? 5_000 : 14); n > 0; n--) {
              line.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            MeterLine read = MeterLine.parse(line.toString());
            if (read instanceof MeterLine.Value v) {
              values++;
              assertThat(v.value()).isFinite();
              assertThat(v.step()).isFinite().isPositive();
              assertThat(v.amount().toPlainString().length()).isLessThan(60);
            }
          }
          assertThat(values).as("junk that happens to be a reading").isBetween(1, LINES / 4);
        });
  }
}
