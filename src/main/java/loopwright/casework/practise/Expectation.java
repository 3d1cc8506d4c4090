package loopwright.casework.practise;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.Entry;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;

/**
 * What the learner expects of a check before it is taken.
 *
 * @param band values that it should read; empty if none was said
 * @param seen what should be seen; empty if none was said
 * @param parts ids of the parts whose failure should show in it, none if it should tell of none of
 *     those asked for; empty if that wasn't said
 */
public record Expectation(Optional<Band> band, Optional<Seen> seen, Optional<Set<String>> parts) {
  /** Copies the set. */
  public Expectation {
    parts = parts.map(Set::copyOf);
  }

  /**
   * How far a single value may be off, of itself and at least, in volts or ohms. Our own choice.
   */
  private static final double SHARE_OFF = 0.1;

  private static final double LEAST_OFF = 0.3;

  private static final Pattern RANGE = Pattern.compile("(.*\\S)\\s*(?:-|\\bto\\b)\\s*(\\S.*)");

  /**
   * Reads what somebody typed: {@code 12.4 V}, {@code 12-13 V}, {@code OL}, {@code on}.
   *
   * @param text empty if nothing is expected
   * @param parts ids of the parts whose failure should show in it; empty if that wasn't said
   * @throws Problem if it isn't understood
   */
  public static Expectation of(CheckKind kind, String text, Optional<Set<String>> parts)
      throws Problem {
    String typed = text.strip();
    if (typed.isEmpty()) {
      return new Expectation(Optional.empty(), Optional.empty(), parts);
    }
    if (!kind.metered()) {
      for (Seen seen : kind.answers()) {
        if (seen.word().equalsIgnoreCase(typed)) {
          return new Expectation(Optional.empty(), Optional.of(seen), parts);
        }
      }
      throw new Problem(
          "expected",
          typed,
          kind.answers().stream().map(Seen::word).collect(Collectors.joining(", ")));
    }
    Matcher range = RANGE.matcher(typed);
    double low;
    double high;
    if (range.matches()) {
      high = value(kind, range.group(2));
      String unit = range.group(2).replaceAll("^[-+0-9.,\\s]+", "");
      boolean bare = range.group(1).matches("[-+0-9.,\\s]+");
      low = value(kind, bare ? range.group(1) + " " + unit : range.group(1));
    } else {
      double middle = value(kind, typed);
      double off = Math.max(LEAST_OFF, SHARE_OFF * Math.abs(middle));
      low = middle - off;
      high = middle + off;
      if (Double.isInfinite(middle)) {
        low = middle;
        high = middle;
      }
    }
    Band.Unit unit = kind == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT;
    return new Expectation(
        Optional.of(new Band(Math.min(low, high), Math.max(low, high), unit)),
        Optional.empty(),
        parts);
  }

  private static double value(CheckKind kind, String text) throws Problem {
    return Entry.value(kind, new Answer.Text(text))
        .orElseThrow(() -> new Problem("expected", text, "12.4 V, 12-13 V, OL"));
  }
}
