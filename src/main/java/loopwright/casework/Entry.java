package loopwright.casework;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.model.Language;
import loopwright.model.Said;

/** Reads what a person entered as the value of a check. */
public final class Entry {

  private static final Pattern FORM =
      Pattern.compile(
          "([+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+))\\s*([a-zA-Z\u00b5\u03bc\u03a9\u2126]*)");

  /** Largest volts that a reading on these vehicles can have, in volts. */
  static final double MOST_VOLTS = 1000;

  /** Largest ohms any hand-held meter shows, in ohms. */
  static final double MOST_OHMS = 1e9;

  private Entry() {}

  /**
   * Understands an answer to a check of a kind.
   *
   * @throws Problem naming the value and what is accepted
   */
  public static Reading.Value understand(CheckKind kind, Answer answer) throws Problem {
    if (answer instanceof Answer.Saw saw) {
      if (kind.metered()) {
        throw new Problem("value", saw.seen().word(), say("entry.number"));
      }
      return new Reading.Value.Sight(saw.seen());
    }
    if (!kind.metered()) {
      String given = answer instanceof Answer.Text t ? t.text() : "a range";
      throw new Problem("value", given, say("entry.seen"));
    }
    if (answer instanceof Answer.Within within) {
      return within(kind, within.band());
    }
    return number(kind, ((Answer.Text) answer).text());
  }

  /**
   * The same for what a person types now. A comma is a decimal comma in every language, since no
   * meter groups its digits; but where people do, 1,234 may be meant a thousand times as large, and
   * is not taken.
   *
   * @throws Problem naming the value and what is accepted
   */
  public static Reading.Value typed(CheckKind kind, Answer answer) throws Problem {
    if (answer instanceof Answer.Text text
        && Language.inUse().mark() != ','
        && Said.twoWays(text.text())) {
      throw new Problem("value", text.text().strip(), Phrases.inUse().say("problem.two-ways"));
    }
    return understand(kind, answer);
  }

  /** The number that a meter's answer stands for, OL as infinity; empty if it is none. */
  public static Optional<Double> value(CheckKind kind, Answer answer) {
    try {
      return number(understand(kind, answer));
    } catch (Problem p) {
      return Optional.empty();
    }
  }

  /** The number of a value in volts or ohms, OL as infinity; empty if it is none. */
  static Optional<Double> number(Reading.Value value) {
    if (value instanceof Reading.Value.OverRange) {
      return Optional.of(Double.POSITIVE_INFINITY);
    }
    return value instanceof Reading.Value.Number n ? Optional.of(n.value()) : Optional.empty();
  }

  private static String say(String key) {
    return Phrases.inUse().say(key);
  }

  private static Reading.Value within(CheckKind kind, Band band) throws Problem {
    boolean ohms = kind == CheckKind.OHMS;
    if (ohms != (band.unit() == Band.Unit.OHM)) {
      throw new Problem("unit", band.unit().name(), ohms ? say("entry.ohms") : say("entry.volts"));
    }
    if (Double.isNaN(band.low()) || Double.isNaN(band.high())) {
      throw new Problem("value", band.toString(), say("entry.two"));
    }
    return new Reading.Value.Between(band.low(), band.high());
  }

  private static Reading.Value number(CheckKind kind, String text) throws Problem {
    String t = text.trim();
    if (t.length() > 40) {
      throw new Problem("value", t.substring(0, 40) + "...", say("entry.long"));
    }
    if (t.equalsIgnoreCase("OL") || t.equalsIgnoreCase("O.L") || t.equals("1.")) {
      return new Reading.Value.OverRange();
    }
    Matcher m = FORM.matcher(t);
    if (!m.matches()) {
      throw new Problem("value", t, say("entry.form"));
    }
    BigDecimal number = new BigDecimal(m.group(1).replace(',', '.'));
    String unit = m.group(2);
    boolean ohms = kind == CheckKind.OHMS;
    double factor =
        ohms
            ? ohmsFactor(unit, t)
            : kind == CheckKind.DRAIN ? drainFactor(unit, t) : voltsFactor(unit, t);
    double value = number.doubleValue() * factor;
    double step = Math.pow(10, -Math.max(0, number.scale())) * factor;
    if (ohms && (value < -1 || value > MOST_OHMS)) {
      throw new Problem("value", t, say("entry.most-ohms"));
    }
    if (!ohms && Math.abs(value) > MOST_VOLTS) {
      throw new Problem("value", t, say("entry.most-volts"));
    }
    return new Reading.Value.Number(value, step);
  }

  /** Across 1 ohm amperes are volts. */
  private static double drainFactor(String unit, String text) throws Problem {
    return switch (unit) {
      case "mA", "ma" -> 1e-3;
      case "A", "a" -> 1;
      default -> voltsFactor(unit, text);
    };
  }

  private static double voltsFactor(String unit, String text) throws Problem {
    return switch (unit) {
      case "", "V", "v" -> 1;
      case "mV", "mv", "MV" -> 1e-3;
      default -> throw new Problem("unit", text, say("entry.in-volts"));
    };
  }

  private static double ohmsFactor(String unit, String text) throws Problem {
    return switch (unit.replace('\u2126', '\u03a9')) {
      case "", "ohm", "ohms", "Ohm", "Ohms", "\u03a9", "R" -> 1;
      case "k", "K", "kohm", "kohms", "kOhm", "Kohm", "k\u03a9", "K\u03a9" -> 1e3;
      case "M", "Mohm", "Mohms", "MOhm", "M\u03a9" -> 1e6;
      default ->
          throw new Problem(
              "unit",
              text,
              unit.toLowerCase(Locale.ROOT).endsWith("v")
                  ? say("entry.in-ohms")
                  : say("entry.capital"));
    };
  }
}
