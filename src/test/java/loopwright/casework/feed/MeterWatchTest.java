package loopwright.casework.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterLine.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeterWatchTest {
  private static final long TENTH = 100_000_000L;

  private final MeterWatch watch = new MeterWatch();
  private final MeterWords words = new MeterWords(Locale.ENGLISH);
  private long now;

  private void lines(String text, int times) {
    for (int i = 0; i < times; i++) {
      now += TENTH;
      watch.line(text, Optional.empty(), now);
    }
  }

  private String said() {
    return words.of(watch.at(now));
  }

  @Test
  void aReadingMovesUntilItIsSteadyAndIsTakenOnce() {
    assertThat(watch.at(now)).isInstanceOf(MeterState.Connecting.class);
    watch.linked(now);
    lines("12.41 V", 3);
    assertThat(watch.at(now)).isEqualTo(new MeterState.Moving("12.41 V"));
    assertThat(watch.take(now)).isEmpty();
    lines("12.41 V", 17);
    assertThat(said()).isEqualTo("meter: 12.41 V, steady");
    assertThat(watch.take(now)).contains("12.41 V");
    lines("12.42 V", 5);
    assertThat(watch.at(now)).isInstanceOf(MeterState.Taken.class);
    assertThat(watch.take(now)).as("the same touch of the leads").isEmpty();
    lines("0.00 V", 20);
    assertThat(watch.take(now)).as("the leads were lifted").contains("0.00 V");
    lines("0.00 V", 31);
    assertThat(watch.take(now)).as("a dead point after another").contains("0.00 V");
  }

  @Test
  void whatStaysIsNoChangeHoweverLongItStays() {
    watch.linked(now);
    lines("12.40 V", 20);
    assertThat(watch.changed(now)).contains("12.40 V");
    lines("12.41 V", 200);
    assertThat(watch.changed(now)).as("a flicker of the last digit").isEmpty();
    lines("3.10 V", 20);
    assertThat(watch.changed(now)).contains("3.10 V");
    lines("12.40 V", 20);
    assertThat(watch.changed(now)).contains("12.40 V");
    assertThat(watch.changed(now)).isEmpty();
  }

  @Test
  void theLastDigitIsKept() {
    assertThat(MeterWatch.shown(new BigDecimal("12.40"), Quantity.VOLTS)).isEqualTo("12.40 V");
    assertThat(MeterWatch.shown(new BigDecimal("0.0352"), Quantity.VOLTS)).isEqualTo("35.2 mV");
    assertThat(MeterWatch.shown(new BigDecimal("0.00"), Quantity.VOLTS)).isEqualTo("0.00 V");
    assertThat(MeterWatch.shown(new BigDecimal("12.3456789"), Quantity.VOLTS))
        .isEqualTo("12.3457 V");
    assertThat(MeterWatch.shown(new BigDecimal("4.7E+3"), Quantity.OHMS)).isEqualTo("4.7 kohm");
    assertThat(MeterWatch.shown(new BigDecimal("120000"), Quantity.OHMS)).isEqualTo("120.000 kohm");
    assertThat(MeterWatch.shown(new BigDecimal("0.30"), Quantity.OHMS)).isEqualTo("0.30 ohm");
  }

  @ParameterizedTest
  @CsvSource({
    "4.7 kOhm, VOLTS_DC, 'shows ohm, but this check is on volts DC'",
    "12.4 V, OHMS, 'shows V, but this check is on ohms'",
    "230 V AC, VOLTS_DC, 'shows V AC, but'",
    "1.2 A, VOLTS_DC, 'red lead out of its A socket'",
    "23.4 °C, VOLTS_DC, 'shows °C'",
    "12.41, VOLTS_DC, 'without a unit'"
  })
  void aUnitThatDoesntFitIsRefusedInWords(String line, MeterFunction asked, String told) {
    watch.ask(asked, now);
    watch.linked(now);
    lines(line, 30);
    assertThat(said()).contains(told);
    assertThat(watch.take(now)).isEmpty();
  }

  @Test
  void aBareNumberHasTheUnitThatWasAskedForAndNoOther() {
    watch.linked(now);
    watch.ask(MeterFunction.OHMS, now);
    for (int i = 0; i < 20; i++) {
      now += TENTH;
      watch.line("+4.70000000E+00", Optional.of(MeterFunction.VOLTS_DC), now);
    }
    assertThat(watch.at(now)).as("late answers").isInstanceOf(MeterState.Connecting.class);
    for (int i = 0; i < 20; i++) {
      now += TENTH;
      watch.line("+4.70000000E+00", Optional.of(MeterFunction.OHMS), now);
    }
    assertThat(watch.take(now)).contains("4.7000 ohm");
  }

  @Test
  void anotherFunctionBeginsAnew() {
    watch.linked(now);
    lines("12.41 V", 20);
    watch.ask(MeterFunction.OHMS, now);
    assertThat(watch.take(now)).isEmpty();
    assertThat(watch.at(now)).isInstanceOf(MeterState.Connecting.class);
  }

  @Test
  void silenceJunkAndLossAreTold() {
    watch.linked(now);
    lines("12.41 V", 20);
    now += 6_000_000_000L;
    assertThat(said()).contains("nothing for 6 s");
    lines("\u0007~~x\u00ff~", 3);
    assertThat(said()).contains("sends '~~x~'").contains("baud");
    watch.lost("the meter was unplugged", now);
    assertThat(said()).isEqualTo("meter: the meter was unplugged; trying again");
    assertThat(watch.take(now)).isEmpty();
    watch.linked(now);
    lines("12.41 V", 5);
    assertThat(watch.at(now))
        .as("what was before doesn't count")
        .isInstanceOf(MeterState.Moving.class);
  }

  @Test
  void aSteadyOverRangeIsAReading() {
    watch.linked(now);
    watch.ask(MeterFunction.OHMS, now);
    lines("OL", 20);
    assertThat(watch.take(now)).contains("OL");
  }

  @Test
  void everyKindOfCheckWithLeadsHasAFunction() {
    assertThat(Arrays.stream(CheckKind.values()).filter(k -> MeterFeed.function(k).isPresent()))
        .containsExactlyElementsOf(
            Arrays.stream(CheckKind.values()).filter(CheckKind::metered).toList());
  }

  @ParameterizedTest
  @CsvSource({
    "tcp:127.0.0.1:5025, tcp:127.0.0.1:5025",
    "TCP:bench.local:1, tcp:bench.local:1",
    "tcp:[::1]:5025, tcp:[::1]:5025",
    "serial:/dev/ttyUSB0, 'serial:/dev/ttyUSB0,9600'",
    "'serial:COM3,115200', 'serial:COM3,115200'"
  })
  void portsAreUnderstood(String said, String words) throws Problem {
    assertThat(MeterPort.parse(said).words()).isEqualTo(words);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "tcp:",
        "tcp:host",
        "tcp:host:0",
        "tcp:host:65536",
        "tcp:a b:1",
        "http://host:80",
        "serial:",
        "serial: ",
        "serial:/dev/x,12",
        "serial:/dev/x,9999999",
        "/dev/ttyUSB0"
      })
  void whatIsNoPortIsRefusedWithWhatIs(String said) {
    assertThatThrownBy(() -> MeterPort.parse(said))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("tcp:HOST:PORT");
  }
}
