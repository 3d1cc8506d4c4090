package loopwright.casework;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import loopwright.model.Language;

/** Logs of readings in words. */
public final class LogWords {
  /** Times told one by one; of more, the number and the first and last. */
  private static final int TIMES = 4;

  private final Phrases phrases;
  private final DateTimeFormatter clock;

  /**
   * In a language.
   *
   * @param zone where times are told
   */
  public LogWords(Locale locale, ZoneId zone) {
    this.phrases = new Phrases(locale);
    this.clock = DateTimeFormatter.ofPattern("HH:mm:ss", locale).withZone(zone);
  }

  /** In the language in use, times as this machine's clock tells them. */
  public static LogWords inUse() {
    return new LogWords(Language.inUse().locale(), ZoneId.systemDefault());
  }

  /** A time of the day to the second. */
  public String time(Instant at) {
    return clock.format(at);
  }

  /**
   * What a log shows, in sentences: how often it was read and between which values, when it was not
   * as in health, and what that means.
   */
  public List<String> of(ReadingLog log) {
    List<String> lines = new ArrayList<>();
    lines.add(
        phrases.say(
            "log.span",
            log.readings().size(),
            time(log.first().at()),
            time(log.last().at()),
            values(log),
            log.first().healthyWords()));
    lines.add(outside(log));
    if (log.comesAndGoes()) {
      lines.add(phrases.say("log.goes"));
    }
    return lines;
  }

  private String values(ReadingLog log) {
    if (log.least().isEmpty()) {
      return log.readings().stream()
          .map(ReadingView::value)
          .distinct()
          .collect(Collectors.joining(", "));
    }
    String least = log.least().orElseThrow().value();
    String most = log.most().orElseThrow().value();
    return least.equals(most) ? phrases.say("log.one", least) : phrases.say("log.two", least, most);
  }

  private String outside(ReadingLog log) {
    List<ReadingView> outside = log.outside();
    if (outside.isEmpty()) {
      return phrases.say("log.all-good");
    }
    if (outside.size() == log.readings().size()) {
      return phrases.say("log.all-bad");
    }
    if (outside.size() > TIMES) {
      return phrases.say(
          "log.often",
          outside.size(),
          time(outside.get(0).at()),
          time(outside.get(outside.size() - 1).at()));
    }
    return phrases.say(
        "log.times", outside.stream().map(r -> time(r.at())).collect(Collectors.joining(", ")));
  }
}
