package loopwright.casework.feed;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Optional;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterLine;
import loopwright.meter.MeterLine.Quantity;

/**
 * Makes the state of a meter of what comes from it. Knows no clock: times are nanoseconds of any
 * clock that only goes forward. For use by several threads.
 */
public final class MeterWatch {
  /**
   * Nanoseconds for which a reading that was taken isn't offered again unless it changes: long
   * enough to see that the check has changed. Not for good, since leads in the air read 0 V and OL
   * like many a point.
   */
  static final long REST = 3_000_000_000L;

  private static final String OVER = "OL";
  private static final int MOST_PLACES = 4;
  private static final int SHOWN_OF_GARBLED = 20;

  private enum Link {
    NONE,
    UP,
    LOST
  }

  private final Steadiness steadiness = new Steadiness();
  private MeterFunction asked = MeterFunction.VOLTS_DC;
  private Link link = Link.NONE;
  private String why = "";
  private long since;
  private Optional<MeterState> latest = Optional.empty();
  private Optional<MeterState> garbled = Optional.empty();
  private Optional<Steadiness.Still> taken = Optional.empty();
  private long takenAt;

  /** The meter is connected. */
  public synchronized void linked(long nanos) {
    link = Link.UP;
    forget(nanos);
  }

  /**
   * The connection is lost or can't be made.
   *
   * @param because in words
   */
  public synchronized void lost(String because, long nanos) {
    link = Link.LOST;
    why = because;
    forget(nanos);
  }

  /** What the check asks for from now on. */
  public synchronized void ask(MeterFunction function, long nanos) {
    if (function != asked) {
      asked = function;
      forget(nanos);
    }
  }

  /** What the check asks for. */
  public synchronized MeterFunction asked() {
    return asked;
  }

  private void forget(long nanos) {
    since = nanos;
    latest = Optional.empty();
    garbled = Optional.empty();
    taken = Optional.empty();
    steadiness.clear();
  }

  /**
   * A line came.
   *
   * @param text the line
   * @param answers what the meter was asked for by a command, if this answers one: then a bare
   *     number has that unit
   */
  public synchronized void line(String text, Optional<MeterFunction> answers, long nanos) {
    if (answers.filter(f -> f != asked).isPresent()) {
      return;
    }
    MeterLine line = MeterLine.parse(text);
    if (line instanceof MeterLine.Value value) {
      Quantity quantity = quantity(value.quantity(), answers);
      if (fits(quantity, nanos)) {
        latest = Optional.of(new MeterState.Moving(shown(value.amount(), quantity)));
        steadiness.add(value.amount(), quantity, nanos);
        release(value.amount(), quantity);
      }
    } else if (line instanceof MeterLine.OverRange over) {
      // Over range tells nothing of its unit on many displays, and means the same on all of them.
      Quantity quantity = quantity(over.quantity(), Optional.of(asked));
      if (fits(quantity, nanos)) {
        latest = Optional.of(new MeterState.Moving(OVER));
        steadiness.addOver(nanos);
        taken = taken.filter(t -> t.amount().isEmpty());
      }
    } else if (line instanceof MeterLine.OtherUnit other) {
      unfit(other.unit(), nanos);
    } else {
      garbled = Optional.of(new MeterState.Garbled(printable(text)));
    }
  }

  private static Quantity quantity(Quantity said, Optional<MeterFunction> answers) {
    return said == Quantity.UNSAID && answers.isPresent() ? wanted(answers.get()) : said;
  }

  private static Quantity wanted(MeterFunction function) {
    return function == MeterFunction.OHMS ? Quantity.OHMS : Quantity.VOLTS;
  }

  private boolean fits(Quantity quantity, long nanos) {
    if (quantity != wanted(asked)) {
      unfit(quantity.unit(), nanos);
      return false;
    }
    since = nanos;
    garbled = Optional.empty();
    return true;
  }

  private void unfit(String unit, long nanos) {
    since = nanos;
    garbled = Optional.empty();
    latest = Optional.of(new MeterState.Unfit(unit, asked));
    taken = Optional.empty();
    steadiness.clear();
  }

  /** A reading that was taken may be taken again at once when another has been seen. */
  private void release(BigDecimal amount, Quantity quantity) {
    taken =
        taken.filter(
            t ->
                t.amount().isPresent()
                    && amount.subtract(t.amount().get()).abs().doubleValue()
                        <= Steadiness.SPREAD * Steadiness.digit(amount, quantity));
  }

  /** How it stands at a time. */
  public synchronized MeterState at(long nanos) {
    if (link == Link.LOST) {
      return new MeterState.Gone(why);
    }
    if (link == Link.NONE) {
      return new MeterState.Connecting();
    }
    if (nanos - since > Steadiness.GAP) {
      return garbled.orElse(new MeterState.Silent(Duration.ofNanos(nanos - since)));
    }
    Optional<Steadiness.Still> still = steadiness.still();
    if (still.isPresent()) {
      String text = still.get().amount().map(a -> shown(a, wanted(asked))).orElse(OVER);
      boolean resting = taken.isPresent() && nanos - takenAt < REST;
      return resting ? new MeterState.Taken(text) : new MeterState.Steady(text);
    }
    return latest.orElse(new MeterState.Connecting());
  }

  /** Takes the reading at a time, if it is steady and wasn't taken yet. */
  public synchronized Optional<String> take(long nanos) {
    if (at(nanos) instanceof MeterState.Steady steady) {
      taken = steadiness.still();
      takenAt = nanos;
      return Optional.of(steady.text());
    }
    return Optional.empty();
  }

  /** Takes the reading at a time, if it is steady and another than the one taken last. */
  public synchronized Optional<String> changed(long nanos) {
    return taken.isPresent() ? Optional.empty() : take(nanos);
  }

  /** A line with its unit as it would be typed; empty if it is no reading of volts or ohms. */
  public static Optional<String> typed(String text) {
    MeterLine line = MeterLine.parse(text);
    if (line instanceof MeterLine.OverRange) {
      return Optional.of(OVER);
    }
    return line instanceof MeterLine.Value v
            && (v.quantity() == Quantity.VOLTS || v.quantity() == Quantity.OHMS)
        ? Optional.of(shown(v.amount(), v.quantity()))
        : Optional.empty();
  }

  /**
   * An amount as it would be typed: in mV below a tenth of a volt and in kohm from ten thousand
   * ohms, with four places at most, its last digit where the display had it.
   */
  static String shown(BigDecimal amount, Quantity quantity) {
    double size = Math.abs(amount.doubleValue());
    boolean ohms = quantity == Quantity.OHMS;
    boolean milli = !ohms && size < 0.1 && amount.scale() >= MOST_PLACES;
    boolean kilo = ohms && (size >= 10_000 || amount.scale() < 0);
    BigDecimal moved = amount.scaleByPowerOfTen(milli ? 3 : kilo ? -3 : 0);
    BigDecimal places =
        moved.setScale(Math.max(0, Math.min(MOST_PLACES, moved.scale())), RoundingMode.HALF_EVEN);
    return places.toPlainString() + " " + (milli ? "m" : kilo ? "k" : "") + quantity.unit();
  }

  private static String printable(String text) {
    String clean = text.strip().replaceAll("[^\\x20-\\x7e]", "");
    return clean.length() > SHOWN_OF_GARBLED ? clean.substring(0, SHOWN_OF_GARBLED) : clean;
  }
}
