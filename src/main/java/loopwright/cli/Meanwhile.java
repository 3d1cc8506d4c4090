package loopwright.cli;

import java.io.IOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import loopwright.casework.FindCase;
import loopwright.io.wire.LineReader;

/**
 * Waits for lines, and lets the case get ready for the answer meanwhile: the hands that place the
 * leads take longer than that.
 */
final class Meanwhile implements AutoCloseable {
  private final FindCase findCase;
  private final LineReader in;
  private final ExecutorService aside =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "getting ready");
            thread.setDaemon(true);
            return thread;
          });

  Meanwhile(FindCase findCase, LineReader in) {
    this.findCase = findCase;
    this.in = in;
  }

  /**
   * The next line. Getting ready has ended by then: a case is asked by one thread at a time.
   *
   * @throws IOException if the stream fails
   */
  LineReader.Next next() throws IOException {
    AtomicBoolean waiting = new AtomicBoolean(true);
    Future<?> ready = aside.submit(() -> findCase.prepare(waiting::get));
    try {
      return in.next();
    } finally {
      waiting.set(false);
      await(ready);
    }
  }

  private static void await(Future<?> ready) {
    try {
      ready.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      // What goes wrong here goes wrong again, and is told, when the answer needs it.
    }
  }

  @Override
  public void close() {
    aside.shutdown();
  }
}
