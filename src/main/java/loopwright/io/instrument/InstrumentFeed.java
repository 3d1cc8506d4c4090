package loopwright.io.instrument;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterState;
import loopwright.casework.feed.MeterWatch;
import loopwright.meter.MeterFunction;

/** A meter's feed on a thread of its own, connected again and again with growing rests. */
final class InstrumentFeed implements MeterFeed {
  /** Milliseconds before the second try; each rest is twice the one before. */
  static final long FIRST_REST = 500;

  /** Longest rest between tries, in milliseconds. */
  static final long LONGEST_REST = 8_000;

  private final Link.Opener opener;
  private final MeterWatch watch = new MeterWatch();
  private final AtomicBoolean closed = new AtomicBoolean();
  private final Thread thread;

  private InstrumentFeed(String name, Link.Opener opener) {
    this.opener = opener;
    this.thread = new Thread(this::run, "meter " + name);
    thread.setDaemon(true);
  }

  static InstrumentFeed start(String name, Link.Opener opener) {
    InstrumentFeed feed = new InstrumentFeed(name, opener);
    feed.thread.start();
    return feed;
  }

  private void run() {
    long rest = FIRST_REST;
    try {
      while (!closed.get()) {
        rest = connected() ? FIRST_REST : rest;
        Thread.sleep(closed.get() ? 0 : rest);
        rest = Math.min(2 * rest, LONGEST_REST);
      }
    } catch (InterruptedException e) {
      // Closed while it rested.
      Thread.currentThread().interrupt();
    }
  }

  /** One connection until it is lost; whether anything was heard. */
  private boolean connected() throws InterruptedException {
    boolean heard = false;
    try (Link link = opener.open()) {
      watch.linked(System.nanoTime());
      Conversation talk = new Conversation(link, watch, System::nanoTime);
      try {
        talk.run(() -> !closed.get());
      } finally {
        heard = talk.heard();
      }
    } catch (IOException | RuntimeException e) {
      String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      watch.lost(why, System.nanoTime());
    }
    return heard;
  }

  @Override
  public void ask(MeterFunction function) {
    watch.ask(function, System.nanoTime());
  }

  @Override
  public MeterState state() {
    return watch.at(System.nanoTime());
  }

  @Override
  public Optional<String> take() {
    return watch.take(System.nanoTime());
  }

  @Override
  public Optional<String> changed() {
    return watch.changed(System.nanoTime());
  }

  @Override
  public void close() {
    closed.set(true);
    thread.interrupt();
  }
}
