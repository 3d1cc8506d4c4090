package loopwright.casework;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Language;
import loopwright.model.Spread;

/** Numbers as a meter shows them and people say them, in the language in use. */
public final class Figures {

  private Figures() {}

  /**
   * A value with the places of a display, trailing zeros and all: 12.40 V. With a point in every
   * language, as displays have it, so that what is kept reads back everywhere.
   *
   * @param step what the last digit counts
   */
  public static String displayed(double value, double step, String unit) {
    int places = (int) Math.max(0, Math.round(-Math.log10(step)));
    return String.format(Locale.ROOT, "%." + places + "f %s", value, unit);
  }

  /** Volts with as many places as matter: 12.6 V, 0.35 V, 12 mV. */
  public static String volts(double volts) {
    if (Double.isInfinite(volts)) {
      // Only the diode test has a band that ends beyond what the display shows.
      return "OL";
    }
    double size = Math.abs(volts);
    if (size < 0.0005) {
      return "0 V";
    }
    if (size < 0.1) {
      return trimmed(volts * 1000, size < 0.01 ? 1 : 0) + " mV";
    }
    return trimmed(volts, size < 10 ? 2 : 1) + " V";
  }

  /** Amperes: 0.15 A, 48 A. */
  public static String amps(double amps) {
    return amps < 1 ? significant(amps * 1000, 2) + " mA" : significant(amps, 2) + " A";
  }

  /** A range of amperes: {@code 1.2 to 1.9 A}, {@code 30 to 80 mA}. */
  static String amps(double low, double high) {
    if (high < 1) {
      return Language.range(significant(low * 1000, 2), significant(high * 1000, 2)) + " mA";
    }
    return Language.range(significant(low, 2), significant(high, 2)) + " A";
  }

  /** Ohms with three figures: 0.3 ohm, 47 ohm, 4.7 kohm, OL. */
  public static String ohms(double ohms) {
    if (Double.isInfinite(ohms)) {
      return "OL";
    }
    if (ohms < 0.095) {
      return trimmed(ohms, 2) + " " + Language.ohm("");
    }
    if (ohms < 1000) {
      return significant(ohms, 2) + " " + Language.ohm("");
    }
    if (ohms < 1e6) {
      return significant(ohms / 1000, 2) + " " + Language.ohm("k");
    }
    return significant(ohms / 1e6, 2) + " " + Language.ohm("M");
  }

  /**
   * A range of milliohms: {@code 1.3 to 1.8 mohm}, {@code 9 mohm or more}; from an ohm on in ohms.
   */
  public static String milliohms(double low, double high) {
    if (Double.isInfinite(high)) {
      return Phrases.inUse().say("figure.or-more", low < 1 ? milliohms(low, low) : ohms(low));
    }
    if (high >= 1) {
      return range(low, high, Band.Unit.OHM);
    }
    String from = significant(low * 1000, 2);
    String to = significant(high * 1000, 2);
    return (from.equals(to) ? to : Language.range(from, to)) + " " + Language.ohm("m");
  }

  /** Volts in millivolts up to a volt: 6.9 mV, 180 mV, 1.2 V. */
  public static String millivolts(double volts) {
    double size = Math.abs(volts);
    return size < 1 ? trimmed(volts * 1000, size < 0.1 ? 1 : 0) + " mV" : volts(volts);
  }

  /** A range of millivolts: {@code 2 to 26 mV}. */
  public static String millivolts(double low, double high) {
    String from = millivolts(low);
    String to = millivolts(high);
    if (from.equals(to)) {
      return to;
    }
    boolean same = from.endsWith(" mV") && to.endsWith(" mV");
    return Language.range(same ? from.substring(0, from.length() - 3) : from, to);
  }

  /** What a check reads in. */
  static Band.Unit unit(Check check) {
    return check.kind() == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT;
  }

  static String value(double value, Band.Unit unit) {
    return unit == Band.Unit.VOLT ? volts(value) : ohms(value);
  }

  /** A range: {@code 11.9 to 12.7 V}; one value where both ends read the same. */
  public static String range(double low, double high, Band.Unit unit) {
    String from = value(low, unit);
    String to = value(high, unit);
    if (from.equals(to)) {
      return to;
    }
    int space = from.lastIndexOf(' ');
    int other = to.lastIndexOf(' ');
    if (space > 0 && other > 0 && from.substring(space).equals(to.substring(other))) {
      from = from.substring(0, space);
    }
    return Language.range(from, to);
  }

  static String range(Spread ohms) {
    return range(ohms.low(), ohms.high(), Band.Unit.OHM);
  }

  /** Percent without places; below one percent "under 1". */
  public static String percent(double share) {
    double p = share * 100;
    if (p > 0 && p < 1) {
      return Phrases.inUse().say("figure.under-1");
    }
    if (p > 99 && p < 100) {
      return Language.marked(String.format(Locale.ROOT, "%.1f %%", Math.floor(p * 10) / 10));
    }
    return Math.round(p) + " %";
  }

  /** A chance or a ratio with two digits behind the point. */
  public static String share(double share) {
    return Language.marked(String.format(Locale.ROOT, "%.2f", share));
  }

  /** Minutes in words of half minutes. */
  public static String minutes(double minutes) {
    if (minutes < 0.75) {
      return Math.max(5, Math.round(minutes * 12) * 5) + " s";
    }
    return trimmed(minutes, minutes < 3 ? 1 : 0) + " min";
  }

  private static String trimmed(double value, int places) {
    BigDecimal d = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
    if (d.signum() == 0) {
      return "0";
    }
    return Language.marked(d.stripTrailingZeros().toPlainString());
  }

  private static String significant(double value, int digits) {
    BigDecimal d = BigDecimal.valueOf(value).round(new java.math.MathContext(digits + 1));
    int places = Math.max(0, digits - (d.precision() - d.scale()));
    return Language.marked(
        d.setScale(places, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString());
  }
}
