package loopwright.model;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What an amount that people write down may be an amount of, and the units it may come in. */
public enum Quantity {
  /** Lengths in metres; foot and inch are exact by the international agreement of 1959. */
  LENGTH(
      "m",
      0.3,
      unit("1", "m", "metre", "metres", "meter", "meters", "mtr", "mtrs"),
      unit("0.01", "cm"),
      unit("0.001", "mm"),
      unit("0.3048", "ft", "foot", "feet", "fuß", "'"),
      unit("0.0254", "in", "inch", "inches", "zoll", "\"")),
  /** Volts. */
  VOLTS("V", 0.05, unit("1", "v", "volt", "volts"), unit("0.001", "mv", "millivolts")),
  /** Amperes. */
  AMPS(
      "A",
      0.3,
      unit("1", "a", "amp", "amps", "ampere", "amperes"),
      unit("0.001", "ma", "milliamps")),
  /** Watts. */
  WATTS(
      "W",
      0.3,
      unit("1", "w", "watt", "watts"),
      unit("0.001", "mw", "milliwatts"),
      unit("1000", "kw", "kilowatts")),
  /** Ohms. A capital M before the unit is mega, a small one milli. */
  OHMS(
      "ohm",
      0.5,
      unit("1", "ohm", "ohms", "Ω"),
      unit("0.001", "mohm", "mohms", "mΩ", "milliohm", "milliohms"),
      unit("1000", "kohm", "kohms", "kΩ", "k"),
      unit("1000000", "Mohm", "Mohms", "MΩ", "megohm", "megohms")),
  /** Working time in minutes. */
  MINUTES(
      "min",
      0.5,
      unit("1", "min", "mins", "minute", "minutes", "minuten"),
      new Unit(
          BigDecimal.ONE.divide(new BigDecimal(60), new MathContext(40)),
          List.of("s", "sec", "secs", "second", "seconds", "sekunden")),
      unit("60", "h", "hr", "hrs", "hour", "hours", "stunden"));

  private record Unit(BigDecimal factor, List<String> spellings) {}

  private final String symbol;
  private final double rough;
  private final Map<String, BigDecimal> units = new HashMap<>();
  private final String pattern;

  Quantity(String symbol, double rough, Unit... spelt) {
    this.symbol = symbol;
    this.rough = rough;
    for (Unit unit : spelt) {
      unit.spellings().forEach(s -> units.put(s, unit.factor()));
    }
    this.pattern = units.keySet().stream().map(Pattern::quote).collect(Collectors.joining("|"));
  }

  private static Unit unit(String factor, String... spellings) {
    return new Unit(new BigDecimal(factor), List.of(spellings));
  }

  /** The unit that the program keeps it in, as written behind a number. */
  public String symbol() {
    return symbol;
  }

  /** What is accepted, with examples, as it follows "must be". */
  public String accepted() {
    return Words.say("accepted." + name().toLowerCase(Locale.ROOT));
  }

  /**
   * How far an amount called "about" may be off either way, as a share of it: own judgement, for
   * lengths twice the 15 percent usual for a measured one.
   */
  public double rough() {
    return rough;
  }

  /** Units of ours in a unit so called; empty if it is none of this quantity. */
  public Optional<BigDecimal> factor(String unit) {
    BigDecimal sure = units.get(unit);
    String small = unit.toLowerCase(Locale.ROOT).replace('ω', 'Ω');
    boolean mega = unit.matches("M(?i)(ohms?|Ω)");
    return Optional.ofNullable(
        sure != null ? sure : units.get(mega ? "M" + small.substring(1) : small));
  }

  /** Every spelling of its units, for use in a pattern that minds no case. */
  public String pattern() {
    return pattern;
  }
}
