package loopwright.meter;

import java.util.List;
import java.util.Objects;
import loopwright.model.Spread;

/**
 * The description of a meter: ranges with their error limits, leads, and what it does to the
 * circuit.
 *
 * @param id short name, for instance {@code basic}
 * @param name what a person calls it
 * @param volts direct-volt ranges, smallest first
 * @param ohms resistance ranges, smallest first
 * @param leadOhms resistance of both leads together in ohms
 * @param inputOhms resistance between the leads on volts, in ohms
 * @param testVolts open-circuit volts on ohms
 * @param testOhms resistance behind the test source on ohms, in ohms
 * @param source where the figures come from
 */
public record MeterSpec(
    String id,
    String name,
    List<Range> volts,
    List<Range> ohms,
    Spread leadOhms,
    double inputOhms,
    double testVolts,
    double testOhms,
    String source) {

  /**
   * One range.
   *
   * @param full largest value shown, in volts or ohms
   * @param step one digit of the last place, in volts or ohms
   * @param percent error limit in percent of the reading
   * @param digits error limit in digits of the last place
   */
  public record Range(double full, double step, double percent, double digits) {
    /** Largest error in volts or ohms at this value: percent of it plus the digits. */
    public double error(double value) {
      return Math.abs(value) * percent / 100 + digits * step;
    }
  }

  /**
   * The range of the diode test: it shows 0 to 3 V and OL beyond (service manual's requirements for
   * meters, {@code reference/meter.csv}); 1 % and 5 digits from memory.
   */
  private static final Range DIODE = new Range(3, 0.001, 1, 5);

  /** Open-circuit volts of the diode test: 3.2 V at most, {@code reference/meter.csv}. */
  public static final double DIODE_VOLTS = 3.2;

  /**
   * Resistance behind the diode test's source in ohms, such that about 1 mA flows through a silicon
   * junction: 1 to 1.5 mA, {@code reference/meter.csv}.
   */
  public static final double DIODE_OHMS = 2400;

  /** The ranges of a function, smallest first. */
  public List<Range> ranges(MeterFunction function) {
    return switch (function) {
      case VOLTS_DC -> volts;
      case OHMS -> ohms;
      case DIODE -> List.of(DIODE);
    };
  }

  /** Copies the lists and checks that there is a range of each. */
  public MeterSpec {
    Objects.requireNonNull(leadOhms, "leadOhms");
    volts = List.copyOf(volts);
    ohms = List.copyOf(ohms);
    if (volts.isEmpty() || ohms.isEmpty()) {
      throw new IllegalArgumentException("meter " + id + " needs at least one range each");
    }
  }

  /** The smallest range that shows a value of this size; the largest if none does. */
  public Range rangeFor(MeterFunction function, double value) {
    List<Range> ranges = ranges(function);
    for (Range range : ranges) {
      if (Math.abs(value) <= range.full()) {
        return range;
      }
    }
    return ranges.get(ranges.size() - 1);
  }

  /** Largest error of a shown value in volts or ohms, leads not counted. */
  public double error(MeterFunction function, double value) {
    return rangeFor(function, value).error(value);
  }

  /**
   * Largest error of a value that was shown with a last digit of this size, in volts or ohms, leads
   * not counted. A coarser digit than the finest range has means that a higher range was in use, or
   * that somebody rounded; the larger error of the two counts.
   *
   * @param shown the value on the display
   * @param step one digit of the last place shown
   */
  public double error(MeterFunction function, double shown, double step) {
    Range finest = rangeFor(function, shown);
    if (step <= finest.step() * SAME_STEP) {
      return finest.error(shown);
    }
    double rounded = finest.error(shown) + step / 2;
    return ranges(function).stream()
        .filter(r -> Math.abs(shown) <= r.full() && r.step() * SAME_STEP >= step)
        .findFirst()
        .map(r -> Math.max(r.error(shown), rounded))
        .orElse(rounded);
  }

  /** Steps that differ by no more than this factor are the same but for binary fractions. */
  private static final double SAME_STEP = 1 + 1e-9;

  /**
   * The largest value that the function can show, in volts or ohms; beyond it the display is OL.
   */
  public double fullScale(MeterFunction function) {
    List<Range> ranges = ranges(function);
    return ranges.get(ranges.size() - 1).full();
  }
}
