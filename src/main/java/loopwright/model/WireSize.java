package loopwright.model;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A conductor size as printed on the reel: American wire gauge or square millimetres.
 *
 * <p>The area of an AWG number is exact by ASTM B258: diameter 0.127 mm x 92^((36 - n) / 39).
 */
public record WireSize(Unit unit, double number) {

  /** How the size is written. */
  public enum Unit {
    /** American wire gauge; 1/0 to 4/0 are 0, -1, -2, -3. */
    AWG,
    /** Square millimetres of copper. */
    MM2
  }

  /** Square millimetres of IEC 60228, class 5, as far as vehicles use them. */
  private static final double[] METRIC = {
    0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120
  };

  /** Rejects sizes outside 4/0 to 40 AWG and 0.05 to 300 mm2. */
  public WireSize {
    boolean ok =
        unit == Unit.AWG
            ? number >= -3 && number <= 40 && number == Math.rint(number)
            : number >= 0.05 && number <= 300;
    if (!ok) {
      throw new IllegalArgumentException(
          unit == Unit.AWG
              ? "AWG size must be a whole number from 4/0 to 40, not " + number
              : "wire area must be 0.05 to 300 mm2, not " + number);
    }
  }

  /** All sizes that are sold, thinnest first: even AWG numbers down to 2, then 1, 1/0 to 4/0. */
  public static Stream<WireSize> sold(Unit unit) {
    return unit == Unit.AWG
        ? Stream.iterate(24, n -> n >= -3, n -> n > 2 ? n - 2 : n - 1)
            .map(n -> new WireSize(Unit.AWG, n))
        : Arrays.stream(METRIC).mapToObj(mm2 -> new WireSize(Unit.MM2, mm2));
  }

  /** Copper area in square millimetres. */
  public double mm2() {
    if (unit == Unit.MM2) {
      return number;
    }
    double diameter = 0.127 * Math.pow(92, (36 - number) / 39);
    return Math.PI / 4 * diameter * diameter;
  }

  /**
   * Reads {@code 18 AWG}, {@code 2/0 AWG} or {@code 1.5 mm2}.
   *
   * @throws IllegalArgumentException if the text is neither
   */
  public static WireSize parse(String text) {
    String t = text.trim().toLowerCase(Locale.ROOT).replace("mm²", "mm2").replace(',', '.');
    try {
      if (t.endsWith("awg")) {
        String n = t.substring(0, t.length() - 3).trim();
        if (n.endsWith("/0")) {
          return new WireSize(Unit.AWG, 1 - Integer.parseInt(n.substring(0, n.length() - 2)));
        }
        return new WireSize(Unit.AWG, Integer.parseInt(n));
      }
      if (t.endsWith("mm2")) {
        return new WireSize(Unit.MM2, Double.parseDouble(t.substring(0, t.length() - 3).trim()));
      }
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "'" + text + "' is not a wire size: write 18 AWG, 2/0 AWG or 1.5 mm2", e);
    }
    throw new IllegalArgumentException(
        "'" + text + "' is not a wire size: write 18 AWG, 2/0 AWG or 1.5 mm2");
  }

  /** The size as it is spelt, with the decimal mark of the language in use. */
  public String shown() {
    return Language.marked(toString());
  }

  /** A size in AWG with its area, or in mm2 with the AWG that is at least as big. */
  public String inBoth() {
    if (unit == Unit.AWG) {
      String area = String.format(Locale.ROOT, mm2() < 10 ? "%.2f" : "%.0f", mm2());
      return this + " (" + Language.marked(area) + " mm2)";
    }
    // Reels come in even gauges down to 2, then every one to 4/0.
    for (int awg = 22; awg >= -3; awg -= awg > 2 ? 2 : 1) {
      WireSize bigger = new WireSize(Unit.AWG, awg);
      if (bigger.mm2() >= mm2() * 0.99) {
        return Language.orSize(shown(), bigger.toString());
      }
    }
    return shown();
  }

  @Override
  public String toString() {
    if (unit == Unit.AWG) {
      return number < 0
          ? (int) (1 - number) + "/0 AWG"
          : (number == 0 ? "1/0 AWG" : (int) number + " AWG");
    }
    String n = Double.toString(number);
    return (n.endsWith(".0") ? n.substring(0, n.length() - 2) : n) + " mm2";
  }
}
