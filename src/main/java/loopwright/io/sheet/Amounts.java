package loopwright.io.sheet;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.model.Estimate;
import loopwright.model.Spread;
import loopwright.model.WireSize;

/**
 * Understands amounts as people write them, and writes them so that they read back the same: {@code
 * 1,5 m}, {@code 4' 6"}, {@code about 2 m}, {@code 1-2 m}, {@code 1.5 +/- 0.2}, {@code 3.4 (3 to
 * 4)}; sizes as {@code 18 AWG}, {@code #18}, {@code 1,5 mm²}.
 *
 * <p>A bare amount stays one without limits, so that the spread usual for its kind applies.
 */
final class Amounts {
  /**
   * How far an amount called "about" may be off either way, as a share of it: twice the 15 percent
   * usual for a measured length (own judgement).
   */
  static final double ROUGH = 0.3;

  private static final String NUMBER = "(-?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+))";
  private static final String UNIT = " *(" + Units.LENGTH + ")? *";
  private static final Pattern ROUGHLY =
      Pattern.compile(
          "(?:about|approximately|approx\\.?|around|roughly|circa|ca\\.?|c\\.|[~≈]) *(.+?) *\\??"
              + "|(.+?) *\\?");
  private static final Pattern ONE = Pattern.compile(NUMBER + UNIT);
  private static final Pattern FEET_INCHES =
      Pattern.compile(NUMBER + " *(?:ft|feet|foot|') *" + NUMBER + " *(?:in(?:ch(?:es)?)?|\")?");
  private static final Pattern RANGE =
      Pattern.compile(NUMBER + UNIT + "(?:-|to|\\.{2,3}) *" + NUMBER + UNIT);
  private static final Pattern WITHIN =
      Pattern.compile(
          NUMBER + UNIT + "\\(" + NUMBER + UNIT + "to *" + NUMBER + UNIT + "\\)" + UNIT);
  private static final Pattern PLUS_MINUS =
      Pattern.compile(NUMBER + UNIT + "\\+/?- *" + NUMBER + " *(%|" + Units.LENGTH + ")? *");

  /** 1,200 is one and a fifth to some and a thousand two hundred to others. */
  private static final Pattern TWO_WAYS =
      Pattern.compile(".*(?<![\\d.,])[1-9]\\d{0,2},\\d{3}(?!\\d).*");

  private static final Pattern AWG =
      Pattern.compile(
          "(?:awg|ga\\.?|gauge|#) *(\\d{1,2}|[1-4]/0)|(\\d{1,2}|[1-4]/0) *(?:awg|ga\\.?|gauge)");
  private static final Pattern MM2 =
      Pattern.compile(
          "(\\d{1,3}(?:[.,]\\d{1,6})?) *(?:mm ?(?:\\^ ?)?[2²]|sq\\.? ?mm|q ?mm|mm ?sq\\.?)");
  private static final Pattern BARE_SIZE = Pattern.compile("\\d{1,3}(?:[.,]\\d{1,6})?|[1-4]/0");

  private final BigDecimal usualUnit;

  private Amounts(BigDecimal usualUnit) {
    this.usualUnit = usualUnit;
  }

  /**
   * A length in metres; empty if the text is none.
   *
   * @param usualUnit metres in the unit of a number without one
   */
  static Optional<Estimate> length(String text, BigDecimal usualUnit) {
    return new Amounts(usualUnit).read(text);
  }

  /**
   * An amount in the one unit its column has; empty if the text is none.
   *
   * @param unit a pattern of what that unit is called
   */
  static Optional<Estimate> amount(String text, String unit) {
    String bare = plain(text).replaceAll("(?<!\\p{L})(" + unit + ")(?!\\p{L})", "").strip();
    String words = bare.replaceAll("to|about|approximately|approx|around|roughly|circa|ca?", "");
    return words.matches(".*[\\p{L}'\"].*")
        ? Optional.empty()
        : new Amounts(BigDecimal.ONE).read(bare);
  }

  /** Whether a length says its unit. */
  static boolean saysUnit(String text) {
    return Pattern.compile("[\\d ](" + Units.LENGTH + ")(?!\\p{L})").matcher(plain(text)).find();
  }

  private Optional<Estimate> read(String text) {
    String t = plain(text);
    if (TWO_WAYS.matcher(t).matches()) {
      return Optional.empty();
    }
    try {
      Matcher m = ROUGHLY.matcher(t);
      if (m.matches()) {
        String said = m.group(1) != null ? m.group(1) : m.group(2);
        return limits(said).or(() -> single(said).map(Amounts::roughly));
      }
      return single(t).map(Estimate::of).or(() -> limits(t));
    } catch (IllegalArgumentException e) {
      // Limits in the wrong order.
      return Optional.empty();
    }
  }

  private static Estimate roughly(double value) {
    return value > 0
        ? Estimate.between(times(value, 1 - ROUGH), value, times(value, 1 + ROUGH))
        : Estimate.of(value);
  }

  /** Decimal, so that 0.7 times 1.5 is 1.05. */
  private static double times(double value, double factor) {
    return BigDecimal.valueOf(value).multiply(BigDecimal.valueOf(factor)).doubleValue();
  }

  private Optional<Double> single(String t) {
    Matcher m = FEET_INCHES.matcher(t);
    if (m.matches()) {
      return Optional.of(
          value(m.group(1), "ft", null).add(value(m.group(2), "in", null)).doubleValue());
    }
    m = ONE.matcher(t);
    return m.matches()
        ? Optional.of(value(m.group(1), m.group(2), null).doubleValue())
        : Optional.empty();
  }

  private Optional<Estimate> limits(String t) {
    Matcher m = RANGE.matcher(t);
    if (m.matches()) {
      BigDecimal low = value(m.group(1), m.group(2), m.group(4));
      BigDecimal high = value(m.group(3), m.group(4), m.group(2));
      BigDecimal middle = low.add(high).multiply(new BigDecimal("0.5"));
      return between(low, middle, high);
    }
    m = WITHIN.matcher(t);
    if (m.matches()) {
      String unit = m.group(7) != null ? m.group(7) : m.group(6) != null ? m.group(6) : m.group(2);
      return between(
          value(m.group(3), m.group(4), unit),
          value(m.group(1), m.group(2), unit),
          value(m.group(5), m.group(6), unit));
    }
    m = PLUS_MINUS.matcher(t);
    if (m.matches()) {
      String unit = "%".equals(m.group(4)) ? null : m.group(4);
      BigDecimal about = value(m.group(1), m.group(2), unit);
      BigDecimal off =
          "%".equals(m.group(4))
              ? about.multiply(number(m.group(3))).movePointLeft(2)
              : value(m.group(3), unit, m.group(2));
      return between(about.subtract(off), about, about.add(off));
    }
    return Optional.empty();
  }

  private static Optional<Estimate> between(BigDecimal low, BigDecimal about, BigDecimal high) {
    return Optional.of(
        Estimate.between(low.doubleValue(), about.doubleValue(), high.doubleValue()));
  }

  private BigDecimal value(String number, String unit, String otherwise) {
    String named = unit != null ? unit : otherwise;
    BigDecimal factor = Optional.ofNullable(named).flatMap(Units::metres).orElse(usualUnit);
    return number(number).multiply(factor);
  }

  private static BigDecimal number(String text) {
    return new BigDecimal(text.replace(',', '.'));
  }

  private static String plain(String text) {
    return text.strip()
        .toLowerCase(Locale.ROOT)
        .replace('\u00A0', ' ')
        .replace('–', '-')
        .replace('—', '-')
        .replace('−', '-')
        .replace("±", "+/-")
        .replace("…", "...")
        .replace('’', '\'')
        .replace('′', '\'')
        .replace("″", "\"")
        .replace("''", "\"")
        .replaceAll("\\s+", " ");
  }

  /**
   * A conductor size; empty if the text is none, or if nothing says whether it is AWG or mm2.
   *
   * @param usualUnit the unit of a number without one
   */
  static Optional<WireSize> size(String text, Optional<WireSize.Unit> usualUnit) {
    String t = plain(text);
    try {
      Matcher awg = AWG.matcher(t);
      if (awg.matches()) {
        return Optional.of(
            WireSize.parse((awg.group(1) != null ? awg.group(1) : awg.group(2)) + " AWG"));
      }
      Matcher mm2 = MM2.matcher(t);
      if (mm2.matches()) {
        return Optional.of(WireSize.parse(mm2.group(1) + " mm2"));
      }
      if (BARE_SIZE.matcher(t).matches()) {
        boolean gauge = t.contains("/") || usualUnit.equals(Optional.of(WireSize.Unit.AWG));
        // No gauge has a fraction, so 1.5 can only be an area.
        boolean area = t.matches(".*[.,].*") || usualUnit.equals(Optional.of(WireSize.Unit.MM2));
        return gauge == area
            ? Optional.empty()
            : Optional.of(WireSize.parse(t + (gauge ? " AWG" : " mm2")));
      }
    } catch (IllegalArgumentException e) {
      // Spelt well, but no such size.
    }
    return Optional.empty();
  }

  /** An amount as {@link #amount} reads it. */
  static String text(Estimate estimate) {
    return number(estimate.about())
        + estimate
            .limits()
            .map((Spread s) -> " (" + number(s.low()) + " to " + number(s.high()) + ")")
            .orElse("");
  }

  /** A number in full, without powers of ten. */
  static String number(double value) {
    BigDecimal plain = BigDecimal.valueOf(value).stripTrailingZeros();
    return plain.toPlainString();
  }
}
