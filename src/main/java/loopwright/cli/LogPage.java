package loopwright.cli;

import java.util.List;
import java.util.Optional;
import loopwright.casework.Band;
import loopwright.casework.LogWords;
import loopwright.casework.OwnCheck;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;

/** Checks that were read again and again, with their times. */
final class LogPage {
  private static final int BAR = 24;

  private final Page page;
  private final LogWords words = LogWords.inUse();

  LogPage(Page page) {
    this.page = page;
  }

  /** The time of a reading. */
  String time(ReadingView reading) {
    return words.time(reading.at());
  }

  /** All of a case. */
  void show(List<ReadingView> readings) {
    List<ReadingLog> logs = ReadingLog.of(readings);
    if (logs.isEmpty()) {
      page.say(Speech.of("log.none"));
    }
    logs.forEach(this::show);
  }

  /** One check's. */
  void show(ReadingLog log) {
    page.gap();
    page.say(log.first().where());
    page.block("  ", String.join(", ", log.first().setting()));
    log.readings().forEach(r -> line(log, r));
    words.of(log).forEach(page::say);
  }

  /** The latest reading of a check. */
  void latest(List<ReadingView> readings, OwnCheck check) {
    ReadingLog.of(readings, check).ifPresent(log -> line(log, log.last()));
  }

  private void line(ReadingLog log, ReadingView reading) {
    page.block(
        "  " + time(reading) + "  ",
        String.format("%-10s", reading.value())
            + (page.width() < Page.USUAL ? "" : " " + bar(log, reading))
            + (reading.fits() ? "" : " " + Speech.of("log.unlike")));
  }

  /** Where a value lies between the least and the greatest of them all, healthy ones included. */
  private static String bar(ReadingLog log, ReadingView reading) {
    Optional<ReadingLog.Scale> scale = log.scale();
    if (scale.isEmpty() || reading.number().isEmpty()) {
      return "";
    }
    StringBuilder bar = new StringBuilder(".".repeat(BAR));
    Band healthy = reading.healthy().orElseThrow();
    int from = place(scale.get(), healthy.low());
    int to = place(scale.get(), healthy.high());
    for (int i = from; i <= to; i++) {
      bar.setCharAt(i, '=');
    }
    bar.setCharAt(place(scale.get(), reading.number().orElseThrow()), '#');
    return "[" + bar + "]";
  }

  private static int place(ReadingLog.Scale scale, double value) {
    return (int) Math.round(scale.of(value) * (BAR - 1));
  }
}
