package loopwright.meter;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One line as a meter sends it or a person pastes it: {@code 12.41 V}, {@code -35 mV DC}, {@code
 * 4.7 kOhm}, {@code OL}, or a bare number of the open SCPI command set, {@code +1.24100000E+01}.
 * Whatever comes in, nothing is thrown and little memory is used.
 */
public sealed interface MeterLine {
  /** Longest line looked at, in characters; longer ones are garbled. */
  int LONGEST = 64;

  /** What was measured. */
  enum Quantity {
    /** Direct volts. */
    VOLTS("V"),
    /** Resistance. */
    OHMS("ohm"),
    /** Direct amperes. */
    AMPERES("A"),
    /** No unit was given. */
    UNSAID("");

    private final String unit;

    Quantity(String unit) {
      this.unit = unit;
    }

    /** The base unit in which values are kept; empty if none was given. */
    public String unit() {
      return unit;
    }
  }

  /**
   * A reading.
   *
   * @param amount in the base unit; its scale tells the last digit that was shown
   * @param quantity what was measured
   */
  record Value(BigDecimal amount, Quantity quantity) implements MeterLine {
    /** Rejects missing parts. */
    public Value {
      Objects.requireNonNull(amount, "amount");
      Objects.requireNonNull(quantity, "quantity");
    }

    /** The reading in the base unit. */
    public double value() {
      return amount.doubleValue();
    }

    /** One digit of the last place shown, in the base unit. */
    public double step() {
      return Math.pow(10, -amount.scale());
    }
  }

  /**
   * Beyond what the meter can show.
   *
   * @param quantity what was to be measured, as far as the line says it
   */
  record OverRange(Quantity quantity) implements MeterLine {}

  /**
   * A reading of something that no check asks for, for instance Hz or alternating volts.
   *
   * @param unit its unit as sent
   */
  record OtherUnit(String unit) implements MeterLine {}

  /**
   * No reading.
   *
   * @param why why not, in a few words
   */
  record Garbled(String why) implements MeterLine {}

  /** Understands a line. */
  static MeterLine parse(String line) {
    return Parser.parse(line);
  }

  /** The forms that a line can have. */
  final class Parser {
    private static final Pattern NUMBER =
        Pattern.compile(
            "(?:(?i)(DC|AC)\\s*[:=]?\\s*)?([+-]?)\\s*(\\d+(?:[.,]\\d*)?|[.,]\\d+)"
                + "([eE][+-]?\\d{1,3})?\\s*([a-zA-Z\u00b5\u03bc\u03a9\u2126\u00b0%\\s]*)");
    private static final Pattern OVER =
        Pattern.compile(
            "(?:(?i)(DC|AC)\\s*[:=]?\\s*)?[+-]?\\s*"
                + "(?:(?i)O\\.?L\\.?|\\.OL|0\\.?L|OVLD|OVER(?:LOAD|\\s?RANGE)?|INF(?:INITY)?)"
                + "\\s*([a-zA-Z\u00b5\u03bc\u03a9\u2126\\s]*)");
    private static final Pattern CURRENT = Pattern.compile("(?i)^(?:(AC|DC)(.*)|(.*?)(AC|DC))$");

    /** Infinity, and not a number, as SCPI-1999 writes them (volume 1, 7.2.1.4 and 7.2.1.5). */
    private static final BigDecimal INFINITY = new BigDecimal("9.9E37");

    private static final BigDecimal NOT_A_NUMBER = new BigDecimal("9.91E37");

    /** Most that any display shows, in base units. */
    private static final BigDecimal MOST = new BigDecimal("1E12");

    /** Places of the coarsest and of the finest last digit that any display shows. */
    private static final int COARSEST = -12;

    private static final int FINEST = 21;

    /** Units of readings that no check asks for. */
    private static final Set<String> OTHERS =
        Set.of(
            "HZ", "KHZ", "MHZ", "F", "MF", "UF", "NF", "PF", "C", "CEL", "DEGC", "DEGF", "%", "S",
            "NS", "US", "MS", "DB", "DBM", "DBV", "W", "MW", "VA", "H", "MH", "RPM");

    private Parser() {}

    private static MeterLine parse(String line) {
      if (line.length() > LONGEST) {
        return new Garbled("longer than " + LONGEST + " characters");
      }
      String text = line.strip();
      if (text.isEmpty()) {
        return new Garbled("empty");
      }
      Matcher over = OVER.matcher(text);
      if (over.matches()) {
        return over(given(over.group(1)), over.group(2));
      }
      Matcher number = NUMBER.matcher(text);
      if (!number.matches()) {
        return new Garbled("no number with a unit");
      }
      BigDecimal amount =
          new BigDecimal(
              number.group(2) + number.group(3).replace(',', '.') + given(number.group(4)));
      if (amount.abs().compareTo(NOT_A_NUMBER) == 0) {
        return new Garbled("not a number");
      }
      if (amount.abs().compareTo(INFINITY) >= 0) {
        return over(given(number.group(1)), number.group(5));
      }
      return value(amount, given(number.group(1)), number.group(5));
    }

    private static String given(String group) {
      return group == null ? "" : group;
    }

    private static MeterLine over(String before, String unitText) {
      MeterLine unit = value(BigDecimal.ZERO, before, unitText);
      return unit instanceof Value v ? new OverRange(v.quantity()) : unit;
    }

    private static MeterLine value(BigDecimal amount, String before, String unitText) {
      String unit = unitText.replaceAll("\\s+", "");
      boolean alternating = before.equalsIgnoreCase("AC");
      Matcher current = CURRENT.matcher(unit);
      if (current.matches()) {
        boolean first = current.group(1) != null;
        alternating |= (first ? current.group(1) : current.group(4)).equalsIgnoreCase("AC");
        unit = first ? current.group(2) : current.group(3);
      }
      if (alternating) {
        return new OtherUnit(unit.isEmpty() ? "AC" : unit + " AC");
      }
      if (unit.isEmpty()) {
        return bounded(amount, 0, Quantity.UNSAID);
      }
      for (Quantity quantity : Quantity.values()) {
        Optional<Integer> power = power(unit, quantity);
        if (power.isPresent()) {
          return bounded(amount, power.get(), quantity);
        }
      }
      String bare = unit.replace('\u00b5', 'u').replace('\u03bc', 'u').replace("\u00b0", "DEG");
      return OTHERS.contains(bare.toUpperCase(Locale.ROOT))
          ? new OtherUnit(unit)
          : new Garbled("no unit that a meter shows");
    }

    private static MeterLine bounded(BigDecimal amount, int power, Quantity quantity) {
      BigDecimal based = amount.scaleByPowerOfTen(power);
      if (based.abs().compareTo(MOST) > 0 || based.scale() > FINEST || based.scale() < COARSEST) {
        return new Garbled("no number that a meter shows");
      }
      return new Value(based, quantity);
    }

    /** The power of ten of a unit of this quantity; empty if it is none. */
    private static Optional<Integer> power(String unit, Quantity quantity) {
      String stem =
          switch (quantity) {
            case VOLTS -> "[Vv]|[Vv]olts?";
            case OHMS -> "[Oo]hms?|OHMS?|[\u03a9\u2126]|R";
            case AMPERES -> "[Aa]|[Aa]mps?";
            case UNSAID -> "(?!)";
          };
      Matcher m = Pattern.compile("([nu\u00b5\u03bcmkKM]?)(?:" + stem + ")").matcher(unit);
      if (m.matches()) {
        return Optional.of(prefix(m.group(1), quantity));
      }
      // A meter's display says k and M for thousands and millions of ohms.
      return quantity == Quantity.OHMS && unit.matches("[kKM]")
          ? Optional.of(prefix(unit, quantity))
          : Optional.empty();
    }

    private static int prefix(String prefix, Quantity quantity) {
      return switch (prefix) {
        case "n" -> -9;
        case "u", "\u00b5", "\u03bc" -> -6;
        case "m" -> -3;
        case "k", "K" -> 3;
        // SCPI writes MV for millivolts, and MOHM for millions of ohms.
        case "M" -> quantity == Quantity.OHMS ? 6 : -3;
        default -> 0;
      };
    }
  }
}
