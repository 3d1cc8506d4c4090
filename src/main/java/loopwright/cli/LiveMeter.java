package loopwright.cli;

import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterState;
import loopwright.casework.feed.MeterWords;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Language;

/** The person's own meter in the plain conversation, if it sends its readings. */
final class LiveMeter implements AutoCloseable {
  /** Longest time that is waited for a steady reading, in nanoseconds. */
  private static final long PATIENCE = 12_000_000_000L;

  private static final long LOOK = 50;

  private final Optional<MeterFeed> feed;
  private final MeterWords words = new MeterWords(Language.inUse().locale());

  LiveMeter(Optional<MeterFeed> feed) {
    this.feed = feed;
  }

  boolean present() {
    return feed.isPresent();
  }

  /** The meter is to measure what this kind of check asks for. */
  void follow(CheckKind kind) {
    MeterFeed.function(kind).ifPresent(f -> feed.ifPresent(m -> m.ask(f)));
  }

  /**
   * Waits for a steady reading and takes it.
   *
   * @param kind what is asked; empty if nothing is
   * @throws Problem if there is none to be had, or nothing to measure
   */
  String take(Optional<CheckKind> kind, Page page) throws Problem {
    MeterFeed meter = meter();
    if (kind.flatMap(MeterFeed::function).isEmpty()) {
      throw new Problem("take", "", Speech.of("take.nothing"));
    }
    long until = System.nanoTime() + PATIENCE;
    boolean told = false;
    while (true) {
      Optional<String> taken = meter.take();
      if (taken.isPresent()) {
        return taken.get();
      }
      MeterState state = meter.state();
      if (hopeless(state) || System.nanoTime() > until) {
        throw new Problem("take", "", words.of(state));
      }
      if (!told) {
        told = true;
        page.say(Speech.of("take.still"));
        page.flush();
      }
      if (!pause()) {
        throw new Problem("take", "", words.of(state));
      }
    }
  }

  /**
   * Waits for a steady reading that is another than the one taken last.
   *
   * @param until when it ends, in nanoseconds of {@link System#nanoTime}
   * @return the reading; empty when the time is up
   * @throws Problem if the meter is gone or measures something else
   */
  Optional<String> changed(long until) throws Problem {
    MeterFeed meter = meter();
    while (System.nanoTime() < until) {
      Optional<String> taken = meter.changed();
      if (taken.isPresent()) {
        return taken;
      }
      MeterState state = meter.state();
      if (hopeless(state) || !pause()) {
        throw new Problem("take", "", words.of(state));
      }
    }
    return Optional.empty();
  }

  private MeterFeed meter() throws Problem {
    return feed.orElseThrow(() -> new Problem("take", "", Speech.of("take.none")));
  }

  private static boolean hopeless(MeterState state) {
    return state instanceof MeterState.Unfit || state instanceof MeterState.Gone;
  }

  /** Waits a moment; false if it was interrupted. */
  private static boolean pause() {
    try {
      Thread.sleep(LOOK);
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  @Override
  public void close() {
    feed.ifPresent(MeterFeed::close);
  }
}
