package loopwright.casework.feed;

import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.meter.MeterFunction;

/**
 * A meter that sends its readings. All calls return at once, from any thread; what takes time goes
 * on behind them.
 */
public interface MeterFeed extends AutoCloseable {

  /** Opens feeds. */
  @FunctionalInterface
  interface Opener {
    /** Begins to connect; whether that works is told by the feed's state. */
    MeterFeed open(MeterPort port);
  }

  /** What the meter is to measure from now on. A meter that can be told to is told. */
  void ask(MeterFunction function);

  /** How it stands now. */
  MeterState state();

  /**
   * The steady reading, if there is one. It is not given a second time within seconds unless it has
   * changed, so that one touch of the leads isn't taken for two checks.
   */
  Optional<String> take();

  /**
   * The steady reading, if it is another than the one given last; for a meter that stays where it
   * is while something is moved, warmed or loaded.
   */
  Optional<String> changed();

  /** Lets the meter go. */
  @Override
  void close();

  /** What a meter is set to for a kind of check; empty for what is looked at. */
  static Optional<MeterFunction> function(CheckKind kind) {
    return switch (kind) {
      case VOLTS, MILLIVOLTS, DRAIN -> Optional.of(MeterFunction.VOLTS_DC);
      case OHMS -> Optional.of(MeterFunction.OHMS);
      case DIODE -> Optional.of(MeterFunction.DIODE);
      case LOOK, UNPLUG_AND_LOOK, SWAP, LAMP_FOR_FUSE, WIGGLE, WARM, LOAD -> Optional.empty();
    };
  }
}
