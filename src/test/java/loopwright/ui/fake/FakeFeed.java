package loopwright.ui.fake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterPort;
import loopwright.casework.feed.MeterState;
import loopwright.meter.MeterFunction;

/** A meter that stands as it is told to, and opens itself at any port. */
public final class FakeFeed implements MeterFeed, MeterFeed.Opener {
  /** The ports that were opened. */
  public final List<String> opened = new ArrayList<>();

  /** What it was asked to measure. */
  public final List<MeterFunction> asked = new ArrayList<>();

  /** How it stands. */
  public MeterState state = new MeterState.Connecting();

  /** How often it was let go. */
  public int closed;

  @Override
  public MeterFeed open(MeterPort port) {
    opened.add(port.words());
    return this;
  }

  @Override
  public void ask(MeterFunction function) {
    asked.add(function);
  }

  @Override
  public MeterState state() {
    return state;
  }

  @Override
  public Optional<String> take() {
    if (state instanceof MeterState.Steady s) {
      state = new MeterState.Taken(s.text());
      return Optional.of(s.text());
    }
    return Optional.empty();
  }

  @Override
  public Optional<String> changed() {
    return take();
  }

  @Override
  public void close() {
    closed++;
  }
}
