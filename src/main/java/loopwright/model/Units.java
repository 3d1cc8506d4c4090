package loopwright.model;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The units that lengths, wire sizes and temperatures are shown and asked in, by preference. A unit
 * written with a value always wins, and files keep metres, sizes as written and degrees Celsius.
 * The one place where these are converted: a foot is 0.3048 m (international yard and pound
 * agreement of 1959, exact), sizes by ASTM B258 ({@link WireSize}), F = 1.8 C + 32 (exact).
 *
 * @param size the unit that sizes are shown in besides their own; empty if their own is enough
 * @param feet feet for metres
 * @param fahrenheit degrees Fahrenheit for degrees Celsius
 */
public record Units(Optional<WireSize.Unit> size, boolean feet, boolean fahrenheit) {
  private static final double METRES_A_FOOT = 0.3048;

  /** Where feet and degrees Fahrenheit are usual, by ISO 3166-1. */
  private static final Set<String> FEET = Set.of("US", "LR", "MM");

  private static final Units METRIC = new Units(Optional.empty(), false, false);

  private static volatile Units inUse = METRIC;

  /** The units in use; sizes as written, metres and degrees Celsius until others are chosen. */
  public static Units inUse() {
    return inUse;
  }

  /** Shows these units from now on; what is on the screen already stays as it is. */
  public static void use(Units units) {
    inUse = units;
  }

  /** What is usual where a system stands. */
  public static Units of(Locale system) {
    boolean feet = FEET.contains(system.getCountry());
    return new Units(Optional.empty(), feet, feet);
  }

  /**
   * Units by their names with commas between: {@code awg} or {@code mm2}, {@code m} or {@code ft},
   * {@code c} or {@code f}; what isn't named stays as it is here. Empty if a name is none of these.
   */
  public Optional<Units> with(String names) {
    Units units = this;
    List<String> all =
        Arrays.stream(names.toLowerCase(Locale.ROOT).split(",")).map(String::strip).toList();
    for (String name : all) {
      switch (name) {
        case "written" -> units = new Units(Optional.empty(), units.feet, units.fahrenheit);
        case "awg" ->
            units = new Units(Optional.of(WireSize.Unit.AWG), units.feet, units.fahrenheit);
        case "mm2" ->
            units = new Units(Optional.of(WireSize.Unit.MM2), units.feet, units.fahrenheit);
        case "m" -> units = new Units(units.size, false, units.fahrenheit);
        case "ft" -> units = new Units(units.size, true, units.fahrenheit);
        case "c" -> units = new Units(units.size, units.feet, false);
        case "f" -> units = new Units(units.size, units.feet, true);
        default -> {
          return Optional.empty();
        }
      }
    }
    return Optional.of(units);
  }

  /** All three by name, as {@link #with} reads them. */
  public String names() {
    return size.map(u -> u.name().toLowerCase(Locale.ROOT)).orElse("written")
        + (feet ? ",ft" : ",m")
        + (fahrenheit ? ",f" : ",c");
  }

  /** The unit of lengths. */
  public String lengthUnit() {
    return feet ? "ft" : "m";
  }

  /** Metres in one unit of length. */
  public BigDecimal metres() {
    return BigDecimal.valueOf(feet ? METRES_A_FOOT : 1);
  }

  /**
   * A length without its unit.
   *
   * @param places digits behind the decimal mark
   */
  public String bareLength(double metres, int places) {
    double length = feet ? metres / METRES_A_FOOT : metres;
    return Language.marked(String.format(Locale.ROOT, "%." + places + "f", length));
  }

  /** A length with its unit: {@code 1.5 m}, {@code 4.9 ft}. */
  public String length(double metres, int places) {
    return bareLength(metres, places) + " " + lengthUnit();
  }

  /** A size as it is printed on the reel, with the unit preferred beside it: 18 AWG (0.82 mm2). */
  public String size(WireSize wire) {
    return size.isEmpty() || size.get() == wire.unit() ? wire.shown() : wire.inBoth();
  }

  /** Degrees in the unit preferred, without it. */
  public String degrees(double celsius) {
    BigDecimal value = BigDecimal.valueOf(fahrenheit ? celsius * 1.8 + 32 : celsius);
    BigDecimal rounded = value.setScale(1, RoundingMode.HALF_UP).stripTrailingZeros();
    return Language.marked(rounded.toPlainString());
  }

  /** The unit of temperatures, in a language. */
  public String degreeUnit(Locale locale) {
    return Language.text(fahrenheit ? "fahrenheit" : "celsius", locale);
  }

  /** A temperature to whole degrees: {@code 57 C}, {@code 135 F}. */
  public String temperature(double celsius, Locale locale) {
    return Math.round(fahrenheit ? celsius * 1.8 + 32 : celsius) + " " + degreeUnit(locale);
  }

  /**
   * Degrees Celsius of a temperature as typed: {@code 57}, {@code 57,5 °C}, {@code 135 F}; a number
   * without a unit is in the unit preferred. Not a number if it is none.
   */
  public double celsius(String typed) {
    String text = typed.strip().toLowerCase(Locale.ROOT).replace("°", "").replace(',', '.');
    boolean inFahrenheit = text.endsWith("f") || !text.endsWith("c") && fahrenheit;
    String number = text.replaceFirst("\\s*[cf]$", "");
    if (!number.matches("[+-]?\\d{1,4}(?:\\.\\d{0,4})?")) {
      return Double.NaN;
    }
    double value = Double.parseDouble(number);
    return inFahrenheit ? (value - 32) / 1.8 : value;
  }
}
