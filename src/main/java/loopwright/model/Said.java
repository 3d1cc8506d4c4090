package loopwright.model;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Understands amounts as people write them, and writes them so that they read back the same: {@code
 * 1,5 m}, {@code 4' 6"}, {@code about 2 m}, {@code 1-2 m}, {@code 1.5 +/- 0.2}, {@code 3 1/2 ft},
 * {@code 3.4 (3 to 4)}; sizes as {@code 18 AWG}, {@code #18}, {@code 1,5 mm²}. The one place where
 * that is done, for lists, tables and everything else.
 *
 * <p>A bare amount stays one without limits, so that the spread usual for its kind applies; "about"
 * widens it by {@link Quantity#rough}. Nothing is guessed: what can be read two ways is not read.
 */
public final class Said {
  private static final String FRACTION = "\\d{1,2}/(?:2|3|4|8|16)(?!\\d)";
  private static final String NUMBER =
      "(-?(?:(?:\\d+ )?" + FRACTION + "|\\d+(?:[.,]\\d+)?|[.,]\\d+))";
  private static final String ABOUT =
      "about|approximately|approx\\.?|around|roughly|circa|ca\\.?|c\\.|est\\.?|estimated"
          + "|etwa|ungefähr|rund|zirka|geschätzt";

  /**
   * 1,200 is one and a fifth to some and a thousand two hundred to others; so is 1.200 where a
   * comma is the decimal mark.
   */
  private static final Map<Character, Pattern> TWO_WAYS =
      Map.of('.', grouped(","), ',', grouped("\\."));

  private static final Pattern ROUGHLY =
      Pattern.compile(
          "(?:(?:"
              + ABOUT
              + ") +|(?:"
              + ABOUT
              + ")(?=\\d)|[~≈] *)(.+?) *\\??"
              + "|(.+?) *(?:\\?| (?:"
              + ABOUT
              + "))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern FEET_INCHES =
      form(NUMBER + " *(?:ft|feet|foot|') *" + NUMBER + " *(?:in(?:ch(?:es)?)?|\")?");
  private static final Pattern METRES_CM = form(NUMBER + " *m *" + NUMBER + " *cm");

  private static final Pattern AWG =
      Pattern.compile(
          "(?:awg|ga\\.?|gauge|#) *(\\d{1,2}|[1-4]/0)|(\\d{1,2}|[1-4]/0) *(?:awg|ga\\.?|gauge|#)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern MM2 =
      Pattern.compile(
          "(\\d{1,3}(?:[.,]\\d{1,6})?) *(?:mm ?(?:\\^ ?)?[2²]|sq\\.? ?mm|q ?mm|mm ?sq\\.?)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern BARE_SIZE = Pattern.compile("\\d{1,3}(?:[.,]\\d{1,6})?|[1-4]/0");

  private static final Map<Quantity, Forms> FORMS = new EnumMap<>(Quantity.class);

  static {
    for (Quantity quantity : Quantity.values()) {
      FORMS.put(quantity, Forms.of(quantity));
    }
  }

  /** The forms in which amounts of one quantity come. */
  private record Forms(
      Pattern one, Pattern range, Pattern within, Pattern plusMinus, Pattern unit) {
    static Forms of(Quantity quantity) {
      String names = quantity.pattern();
      String unit = " *(" + names + ")? *";
      return new Forms(
          form(NUMBER + unit),
          form(NUMBER + unit + "(?:-|to|bis|\\.{2,3}) *" + NUMBER + unit),
          form(
              NUMBER
                  + unit
                  + "\\("
                  + NUMBER
                  + unit
                  + "(?:to|bis) *"
                  + NUMBER
                  + unit
                  + "\\)"
                  + unit),
          form(NUMBER + unit + "\\+/?- *" + NUMBER + " *(%|" + names + ")? *"),
          form("[\\d ](" + names + ")(?!\\p{L})"));
    }
  }

  private final Quantity quantity;
  private final Forms forms;
  private final BigDecimal usualUnit;
  private final char mark;

  private Said(Quantity quantity, BigDecimal usualUnit, char mark) {
    this.quantity = quantity;
    this.forms = FORMS.get(quantity);
    this.usualUnit = usualUnit;
    this.mark = mark;
  }

  private static Pattern grouped(String other) {
    return Pattern.compile(".*(?<![\\d.,])[1-9]\\d{0,2}" + other + "\\d{3}(?!\\d).*");
  }

  private static Pattern form(String regex) {
    return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /** An amount, in our own unit where it names none; empty if the text is none. */
  public static Optional<Estimate> amount(String text, Quantity quantity) {
    return amount(text, quantity, BigDecimal.ONE);
  }

  /**
   * An amount, a bare number in another unit than our own; empty if the text is none, or may be
   * read two ways.
   *
   * @param usualUnit our own units in the unit of a number without one: 0.3048 for feet
   */
  public static Optional<Estimate> amount(String text, Quantity quantity, BigDecimal usualUnit) {
    return new Said(quantity, usualUnit, Language.inUse().mark()).read(text);
  }

  /**
   * An amount in a list that comes from a file or goes into one, where the point is the decimal
   * mark in every language; empty if the text is none, or may be read two ways.
   *
   * @param usualUnit our own units in the unit of a number without one: 0.01 for lengths in cm
   */
  public static Optional<Estimate> listed(String text, Quantity quantity, BigDecimal usualUnit) {
    return new Said(quantity, usualUnit, '.').read(text);
  }

  /** An amount that has to be exact, for instance a rating; empty if the text is none. */
  public static Optional<Double> exactly(String text, Quantity quantity) {
    return amount(text, quantity).filter(e -> e.limits().isEmpty()).map(Estimate::about);
  }

  /** Whether an amount says its unit. */
  public static boolean saysUnit(String text, Quantity quantity) {
    return FORMS.get(quantity).unit().matcher(plain(text)).find();
  }

  /** Whether a number in it may be read two ways, as 1,200 may be 1.2 or 1200. */
  public static boolean twoWays(String text) {
    return twoWays(text, Language.inUse().mark());
  }

  /**
   * Whether a number in it may be read two ways.
   *
   * @param mark the decimal mark, point or comma
   */
  public static boolean twoWays(String text, char mark) {
    return TWO_WAYS.get(mark).matcher(plain(text)).matches();
  }

  private Optional<Estimate> read(String text) {
    String t = plain(text);
    if (twoWays(t, mark)) {
      return Optional.empty();
    }
    try {
      Matcher m = ROUGHLY.matcher(t);
      if (m.matches()) {
        String said = m.group(1) != null ? m.group(1) : m.group(2);
        return limits(said).or(() -> single(said).filter(Double::isFinite).map(this::roughly));
      }
      return single(t).filter(Double::isFinite).map(Estimate::of).or(() -> limits(t));
    } catch (IllegalArgumentException e) {
      // Limits in the wrong order.
      return Optional.empty();
    }
  }

  private Estimate roughly(double value) {
    return value > 0
        ? Estimate.between(
            times(value, 1 - quantity.rough()), value, times(value, 1 + quantity.rough()))
        : Estimate.of(value);
  }

  /** Decimal, so that 0.7 times 1.5 is 1.05. */
  private static double times(double value, double factor) {
    return BigDecimal.valueOf(value).multiply(BigDecimal.valueOf(factor)).doubleValue();
  }

  private Optional<Double> single(String t) {
    if (quantity == Quantity.LENGTH) {
      Matcher feet = FEET_INCHES.matcher(t);
      if (feet.matches()) {
        return Optional.of(sum(feet, "ft", "in"));
      }
      Matcher metres = METRES_CM.matcher(t);
      if (metres.matches()) {
        return Optional.of(sum(metres, "m", "cm"));
      }
    }
    Matcher m = forms.one().matcher(t);
    return m.matches()
        ? Optional.of(value(m.group(1), m.group(2), null).doubleValue())
        : Optional.empty();
  }

  private double sum(Matcher m, String unit, String part) {
    return value(m.group(1), unit, null).add(value(m.group(2), part, null)).doubleValue();
  }

  private Optional<Estimate> limits(String t) {
    Matcher m = forms.range().matcher(t);
    if (m.matches()) {
      BigDecimal low = value(m.group(1), m.group(2), m.group(4));
      BigDecimal high = value(m.group(3), m.group(4), m.group(2));
      BigDecimal middle = low.add(high).multiply(new BigDecimal("0.5"));
      return between(low, middle, high);
    }
    m = forms.within().matcher(t);
    if (m.matches()) {
      String named = m.group(7) != null ? m.group(7) : m.group(6) != null ? m.group(6) : m.group(2);
      return between(
          value(m.group(3), m.group(4), named),
          value(m.group(1), m.group(2), named),
          value(m.group(5), m.group(6), named));
    }
    m = forms.plusMinus().matcher(t);
    if (m.matches()) {
      String named = "%".equals(m.group(4)) ? null : m.group(4);
      BigDecimal about = value(m.group(1), m.group(2), named);
      BigDecimal off =
          "%".equals(m.group(4))
              ? about.multiply(number(m.group(3))).movePointLeft(2)
              : value(m.group(3), named, m.group(2));
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
    BigDecimal factor = Optional.ofNullable(named).flatMap(quantity::factor).orElse(usualUnit);
    return number(number).multiply(factor);
  }

  private static BigDecimal number(String text) {
    int slash = text.indexOf('/');
    if (slash < 0) {
      return new BigDecimal(text.replace(',', '.'));
    }
    boolean minus = text.startsWith("-");
    String[] words = text.substring(minus ? 1 : 0, slash).split(" ");
    BigDecimal part =
        new BigDecimal(words[words.length - 1])
            .divide(new BigDecimal(text.substring(slash + 1)), MathContext.DECIMAL64);
    BigDecimal whole = words.length > 1 ? part.add(new BigDecimal(words[0])) : part;
    return minus ? whole.negate() : whole;
  }

  private static String plain(String text) {
    return text.replace('\u00A0', ' ')
        .replace('\u202F', ' ')
        .strip()
        .replace('–', '-')
        .replace('—', '-')
        .replace('−', '-')
        .replace("±", "+/-")
        .replace("…", "...")
        .replace('’', '\'')
        .replace('′', '\'')
        .replace("″", "\"")
        .replace("”", "\"")
        .replace("''", "\"")
        .replace("½", " 1/2")
        .replace("¼", " 1/4")
        .replace("¾", " 3/4")
        .replace('\u2126', 'Ω')
        .replaceAll("\\s+", " ")
        .strip();
  }

  /**
   * A conductor size; empty if the text is none, or if nothing says whether it is AWG or mm2.
   *
   * @param usualUnit the unit of a number without one
   */
  public static Optional<WireSize> size(String text, Optional<WireSize.Unit> usualUnit) {
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

  /** An amount in our own unit, without it, as {@link #listed} reads it. */
  public static String text(Estimate estimate) {
    return number(estimate.about())
        + estimate
            .limits()
            .map((Spread s) -> " (" + number(s.low()) + " to " + number(s.high()) + ")")
            .orElse("");
  }

  /**
   * An amount as a person would say it in the language in use: {@code about 1.5}, {@code 1.2 to
   * 1.8}, else {@code 1.3 (1.2 to 1.8)}; in our own unit, without it. It reads back the same.
   */
  public static String spoken(Estimate estimate, Quantity quantity) {
    if (estimate.limits().isEmpty()) {
      return shown(estimate.about());
    }
    Spread limits = estimate.limits().get();
    String about = Language.about(shown(estimate.about()));
    String range = Language.range(shown(limits.low()), shown(limits.high()));
    return Stream.of(about, range)
        .filter(t -> amount(t, quantity).equals(Optional.of(estimate)))
        .findFirst()
        .orElseGet(() -> shown(estimate.about()) + " (" + range + ")");
  }

  /** A number in full, with the decimal mark of the language in use. */
  public static String shown(double value) {
    return Language.marked(number(value));
  }

  /** A number in full, without powers of ten. */
  public static String number(double value) {
    BigDecimal plain = BigDecimal.valueOf(value).stripTrailingZeros();
    return plain.toPlainString();
  }
}
