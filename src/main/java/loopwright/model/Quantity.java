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
      "a length, for instance 1.5 m, 50 cm, 4 ft, 4' 6\", 1-2 m or about 1.5 m",
      unit("1", "m", "metre", "metres", "meter", "meters", "mtr", "mtrs"),
      unit("0.01", "cm"),
      unit("0.001", "mm"),
      unit("0.3048", "ft", "foot", "feet", "'"),
      unit("0.0254", "in", "inch", "inches", "\"")),
  /** Volts. */
  VOLTS(
      "V",
      0.05,
      "volts, for instance 12.6 V, 12.4-12.8 V or about 12.6 V",
      unit("1", "v", "volt", "volts"),
      unit("0.001", "mv", "millivolts")),
  /** Amperes. */
  AMPS(
      "A",
      0.3,
      "amperes, for instance 7.5 A, 500 mA, 6-8 A or about 7 A",
      unit("1", "a", "amp", "amps", "ampere", "amperes"),
      unit("0.001", "ma", "milliamps")),
  /** Watts. */
  WATTS(
      "W",
      0.3,
      "watts, for instance 21 W, 50-60 W or about 55 W",
      unit("1", "w", "watt", "watts"),
      unit("0.001", "mw", "milliwatts"),
      unit("1000", "kw", "kilowatts")),
  /** Ohms. A capital M before the unit is mega, a small one milli. */
  OHMS(
      "ohm",
      0.5,
      "ohms, for instance 85 ohm, 5 mohm, 1.2 kohm, 70-100 ohm or about 85 ohm",
      unit("1", "ohm", "ohms", "Ω"),
      unit("0.001", "mohm", "mohms", "mΩ", "milliohm", "milliohms"),
      unit("1000", "kohm", "kohms", "kΩ", "k"),
      unit("1000000", "Mohm", "Mohms", "MΩ", "megohm", "megohms")),
  /** Working time in minutes. */
  MINUTES(
      "min",
      0.5,
      "minutes, for instance 5, 90 s or 1.5 h",
      unit("1", "min", "mins", "minute", "minutes"),
      new Unit(
          BigDecimal.ONE.divide(new BigDecimal(60), new MathContext(40)),
          List.of("s", "sec", "secs", "second", "seconds")),
      unit("60", "h", "hr", "hrs", "hour", "hours"));

  private record Unit(BigDecimal factor, List<String> spellings) {}

  private final String symbol;
  private final double rough;
  private final String accepted;
  private final Map<String, BigDecimal> units = new HashMap<>();
  private final String pattern;

  Quantity(String symbol, double rough, String accepted, Unit... spelt) {
    this.symbol = symbol;
    this.rough = rough;
    this.accepted = accepted;
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
    return accepted;
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
