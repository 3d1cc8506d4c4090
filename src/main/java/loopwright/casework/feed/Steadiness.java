package loopwright.casework.feed;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import loopwright.meter.MeterLine.Quantity;

/**
 * Tells whether a reading stands still. It does if the latest readings over {@link #HOLD}, and at
 * least {@link #FEWEST} of them, lie within {@link #SPREAD} digits of each other, and the later
 * half lies within {@link #DRIFT} digits of the earlier half in the mean. A display at rest
 * flickers by a digit to either side; whatever drifts faster than a digit a second fails the second
 * condition.
 *
 * <p>A digit is the last one shown, but not finer than a hand-held meter of 6,000 counts has it
 * (common practice): a bench meter shows digits that never rest.
 *
 * <p>Over range stands still if all of the latest are over range. Memory is bounded however fast
 * readings come: those within {@link #SLICE} are held as one, with their least and largest.
 */
final class Steadiness {
  /** Nanoseconds for which it must have stood still. */
  static final long HOLD = 1_500_000_000L;

  /** Fewest readings in that time; a slow meter takes longer. */
  static final int FEWEST = 4;

  /** Nanoseconds without a reading after which it starts anew. */
  static final long GAP = 5_000_000_000L;

  /** Digits between the least and the largest. */
  static final double SPREAD = 2;

  /** Digits between the means of the two halves. */
  static final double DRIFT = 0.75;

  /** Nanoseconds of readings that are held as one. */
  static final long SLICE = 20_000_000L;

  private static final int COUNTS = 6_000;

  /** Differences of binary fractions that are none. */
  private static final double SAME = 1e-6;

  /** Readings held as one; over range is infinite. */
  private static final class Slice {
    private final long at;
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;
    private double digit;
    private BigDecimal last = BigDecimal.ZERO;

    Slice(long at) {
      this.at = at;
    }

    void add(BigDecimal amount, double digitHere) {
      add(amount.doubleValue());
      last = amount;
      digit = Math.max(digit, digitHere);
    }

    void add(double value) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }

    double value() {
      return last.doubleValue();
    }
  }

  private final Deque<Slice> slices = new ArrayDeque<>();
  private long latest;

  /** A steady reading: an amount that was shown, or over range if empty. */
  record Still(Optional<BigDecimal> amount) {}

  /** Takes a reading of volts or ohms. */
  void add(BigDecimal amount, Quantity quantity, long nanos) {
    slice(nanos).add(amount, digit(amount, quantity));
    trim();
  }

  /** Takes an over range. */
  void addOver(long nanos) {
    slice(nanos).add(Double.POSITIVE_INFINITY);
    trim();
  }

  void clear() {
    slices.clear();
  }

  /** Memory in use, in slices. */
  int size() {
    return slices.size();
  }

  private Slice slice(long nanos) {
    if (!slices.isEmpty() && nanos - latest > GAP) {
      slices.clear();
    }
    latest = nanos;
    if (slices.isEmpty() || nanos - slices.getLast().at >= SLICE) {
      slices.addLast(new Slice(nanos));
    }
    return slices.getLast();
  }

  /** Drops what isn't needed: the rest alone must be long and many enough. */
  private void trim() {
    while (slices.size() > FEWEST) {
      Iterator<Slice> from = slices.iterator();
      from.next();
      if (latest - from.next().at < HOLD) {
        return;
      }
      slices.removeFirst();
    }
  }

  /** The steady reading, if it is one. */
  Optional<Still> still() {
    if (slices.size() < FEWEST || latest - slices.getFirst().at < HOLD) {
      return Optional.empty();
    }
    if (slices.stream().allMatch(s -> s.low == Double.POSITIVE_INFINITY)) {
      return Optional.of(new Still(Optional.empty()));
    }
    double low = slices.stream().mapToDouble(s -> s.low).min().orElseThrow();
    double high = slices.stream().mapToDouble(s -> s.high).max().orElseThrow();
    double digit = slices.stream().mapToDouble(s -> s.digit).max().orElseThrow();
    if (high - low > SPREAD * digit * (1 + SAME)) {
      return Optional.empty();
    }
    List<Slice> all = List.copyOf(slices);
    int half = all.size() / 2;
    double drift = mean(all.subList(all.size() - half, all.size())) - mean(all.subList(0, half));
    if (Math.abs(drift) > DRIFT * digit * (1 + SAME)) {
      return Optional.empty();
    }
    // The middle one was really shown, and one flicker doesn't make it.
    List<BigDecimal> sorted = all.stream().map(s -> s.last).sorted().toList();
    return Optional.of(new Still(Optional.of(sorted.get((sorted.size() - 1) / 2))));
  }

  private static double mean(List<Slice> of) {
    return of.stream().mapToDouble(Slice::value).average().orElseThrow();
  }

  /** One digit at this amount, in volts or ohms. */
  static double digit(BigDecimal amount, Quantity quantity) {
    double finest = quantity == Quantity.OHMS ? 0.1 : 0.0001;
    double size = Math.abs(amount.doubleValue());
    double digit = finest;
    while (digit * COUNTS < size) {
      digit *= 10;
    }
    return Math.max(digit, Math.pow(10, -amount.scale()));
  }
}
