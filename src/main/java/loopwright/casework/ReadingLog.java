package loopwright.casework;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.diagnosis.CheckKind;

/**
 * One check that was read again and again: what it showed, and when. For a fault that comes and
 * goes this tells more than any one reading.
 *
 * @param readings its readings in the order taken; at least one
 */
public record ReadingLog(List<ReadingView> readings) {

  /** Copies the list. */
  public ReadingLog {
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("a log without a reading");
    }
  }

  /**
   * All checks that were read twice or more, the one read last first.
   *
   * @param readings readings of one case, in the order taken
   */
  public static List<ReadingLog> of(List<ReadingView> readings) {
    Map<OwnCheck, List<ReadingView>> byCheck = new LinkedHashMap<>();
    for (ReadingView reading : readings) {
      List<ReadingView> same = byCheck.remove(reading.check());
      List<ReadingView> more = same == null ? new ArrayList<>() : same;
      more.add(reading);
      byCheck.put(reading.check(), more);
    }
    List<ReadingLog> logs = new ArrayList<>();
    byCheck.values().stream()
        .filter(same -> same.size() > 1)
        .forEach(same -> logs.add(0, new ReadingLog(same)));
    return logs;
  }

  /** The log of one check; empty if it was never read. */
  public static Optional<ReadingLog> of(List<ReadingView> readings, OwnCheck check) {
    List<ReadingView> same = readings.stream().filter(r -> r.check().equals(check)).toList();
    return same.isEmpty() ? Optional.empty() : Optional.of(new ReadingLog(same));
  }

  /** The reading taken first. */
  public ReadingView first() {
    return readings.get(0);
  }

  /** The reading taken last. */
  public ReadingView last() {
    return readings.get(readings.size() - 1);
  }

  /** The reading with the least number; empty if none has one. */
  public Optional<ReadingView> least() {
    return readings.stream()
        .filter(r -> r.number().isPresent())
        .reduce((a, b) -> b.number().get() < a.number().get() ? b : a);
  }

  /** The reading with the greatest number; empty if none has one. */
  public Optional<ReadingView> most() {
    return readings.stream()
        .filter(r -> r.number().isPresent())
        .reduce((a, b) -> b.number().get() > a.number().get() ? b : a);
  }

  /**
   * Where its numbers lie between the least and the greatest of them, healthy ones included; empty
   * if none has a number.
   */
  public Optional<Scale> scale() {
    double[] finite =
        readings.stream()
            .flatMap(
                r ->
                    Stream.concat(
                        r.number().stream(),
                        r.healthy().stream().flatMap(b -> Stream.of(b.low(), b.high()))))
            .filter(Double::isFinite)
            .mapToDouble(Double::doubleValue)
            .toArray();
    if (least().isEmpty() || finite.length == 0) {
      return Optional.empty();
    }
    double low = Arrays.stream(finite).min().orElseThrow();
    double high = Arrays.stream(finite).max().orElseThrow();
    boolean ohms = first().kind() == CheckKind.OHMS;
    return Optional.of(new Scale(low, high, ohms && high > DECADES * Math.max(low, LEAST_OHMS)));
  }

  /** Ratio from which ohms are drawn by decades. */
  private static final double DECADES = 30;

  /** Ohms below which a meter's leads say more than the piece, common practice. */
  private static final double LEAST_OHMS = 0.1;

  /**
   * A line of values.
   *
   * @param low its lower end, in volts or ohms
   * @param high its upper end, in volts or ohms
   * @param decades whether each decade takes the same room
   */
  public record Scale(double low, double high, boolean decades) {
    /** Where a value lies, from 0 at the lower end to 1 at the upper; OL lies at the upper. */
    public double of(double value) {
      double from = along(low);
      double to = along(high);
      double share = to > from ? (along(Math.min(value, high)) - from) / (to - from) : 0.5;
      return Math.max(0, Math.min(1, share));
    }

    private double along(double value) {
      return decades ? Math.log10(Math.max(value, LEAST_OHMS)) : value;
    }
  }

  /** A value as the check's readings are told: volts or ohms. */
  public String words(double value) {
    return Figures.value(value, first().kind() == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT);
  }

  /** The readings that aren't what a healthy circuit shows. */
  public List<ReadingView> outside() {
    return readings.stream().filter(r -> !r.fits()).toList();
  }

  /** Whether it was as in health at some times and not at others. */
  public boolean comesAndGoes() {
    int outside = outside().size();
    return outside > 0 && outside < readings.size();
  }
}
