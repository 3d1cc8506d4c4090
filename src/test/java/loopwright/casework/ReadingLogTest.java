package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;

class ReadingLogTest {
  private static final Instant START = Instant.parse("2024-05-17T18:00:00Z");
  private static final double OL = Double.POSITIVE_INFINITY;

  private final List<ReadingView> readings = new ArrayList<>();

  private static OwnCheck check(CheckKind kind, String red) {
    return new OwnCheck(
        kind,
        Optional.of(TerminalRef.parse(red)),
        Optional.of(TerminalRef.parse("BATT.neg")),
        Optional.empty(),
        Setting.REST);
  }

  private void read(CheckKind kind, String red, double value, double low, double high) {
    int id = readings.size() + 1;
    Band.Unit unit = kind == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT;
    readings.add(
        new ReadingView(
            id,
            check(kind, red),
            List.of("key on"),
            red,
            Figures.value(value, unit),
            Optional.of(value),
            Optional.of(new Band(low, high, unit)),
            Figures.range(low, high, unit),
            value >= low && value <= high,
            "",
            List.of(),
            START.plusSeconds(10L * id)));
  }

  private void volts(String red, double value) {
    read(CheckKind.VOLTS, red, value, 11.9, 12.7);
  }

  private static List<Integer> ids(List<ReadingView> readings) {
    return readings.stream().map(ReadingView::id).toList();
  }

  @Test
  void onlyWhatWasReadAgainIsALogTheLatestFirst() {
    volts("F3.load", 12.4);
    volts("L1.out", 12.2);
    volts("F3.load", 0.02);
    volts("S5.out", 12.3);
    volts("L1.out", 12.2);
    volts("F3.load", 12.5);
    assertThat(ReadingLog.of(readings))
        .extracting(log -> ids(log.readings()))
        .containsExactly(List.of(1, 3, 6), List.of(2, 5));
    ReadingLog log = ReadingLog.of(readings).get(0);
    assertThat(log.least().map(ReadingView::id)).contains(3);
    assertThat(log.most().map(ReadingView::id)).contains(6);
    assertThat(ids(log.outside())).containsExactly(3);
    assertThat(log.comesAndGoes()).isTrue();
    assertThat(ReadingLog.of(readings).get(1).comesAndGoes()).isFalse();
    assertThat(ReadingLog.of(readings, check(CheckKind.VOLTS, "S5.out"))).isPresent();
    assertThat(ReadingLog.of(readings, check(CheckKind.OHMS, "S5.out"))).isEmpty();
    assertThatThrownBy(() -> new ReadingLog(List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theWordsTellHowOftenBetweenWhatAndWhen() {
    volts("F3.load", 12.4);
    volts("F3.load", 0.02);
    volts("F3.load", 12.5);
    LogWords words = new LogWords(Locale.ENGLISH, ZoneOffset.UTC);
    List<String> told = words.of(ReadingLog.of(readings).get(0));
    assertThat(told.get(0))
        .isEqualTo(
            "3 readings from 18:00:10 to 18:00:30: between 20 mV and 12.5 V."
                + " Healthy: 11.9 to 12.7 V.");
    assertThat(told.get(1)).isEqualTo("Not as in health at 18:00:20.");
    assertThat(told.get(2)).startsWith("It came and went.");
    for (int i = 0; i < 5; i++) {
      volts("F3.load", 0.1 * i);
    }
    assertThat(words.of(ReadingLog.of(readings).get(0)).get(1))
        .isEqualTo("6 of them not as in health, first at 18:00:20, last at 18:01:20.");
  }

  @Test
  void whatNeverChangesIsToldAsThat() {
    volts("F3.load", 0.02);
    volts("F3.load", 0.02);
    volts("L1.out", 12.4);
    volts("L1.out", 12.4);
    LogWords words = new LogWords(Locale.ENGLISH, ZoneOffset.UTC);
    assertThat(words.of(ReadingLog.of(readings).get(0)))
        .containsExactly(
            "2 readings from 18:00:30 to 18:00:40: always 12.4 V. Healthy: 11.9 to 12.7 V.",
            "Each was as in health.");
    assertThat(words.of(ReadingLog.of(readings).get(1)).get(1)).startsWith("None was as in health");
  }

  @Test
  void theScaleHoldsAllValuesAndTheHealthyOnes() {
    volts("F3.load", 12.4);
    volts("F3.load", 3.1);
    ReadingLog.Scale scale = ReadingLog.of(readings).get(0).scale().orElseThrow();
    assertThat(scale.low()).isEqualTo(3.1);
    assertThat(scale.high()).isEqualTo(12.7);
    assertThat(scale.decades()).isFalse();
    assertThat(scale.of(7.9)).isCloseTo(0.5, within(1e-9));
    assertThat(scale.of(OL)).isEqualTo(1);
  }

  @Test
  void ohmsOfManySizesAreDrawnByDecadesAndOlAtTheTop() {
    read(CheckKind.OHMS, "F3.load", 0.4, 0, 0.8);
    read(CheckKind.OHMS, "F3.load", 1000, 0, 0.8);
    read(CheckKind.OHMS, "F3.load", OL, 0, 0.8);
    ReadingLog log = ReadingLog.of(readings).get(0);
    ReadingLog.Scale scale = log.scale().orElseThrow();
    assertThat(scale.decades()).isTrue();
    assertThat(scale.of(0)).isZero();
    assertThat(scale.of(10)).as("half way from 0.1 to 1000").isCloseTo(0.5, within(1e-9));
    assertThat(scale.of(OL)).isEqualTo(1);
    assertThat(log.most().map(ReadingView::value)).contains("OL");
  }
}
