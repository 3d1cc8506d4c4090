package loopwright.generated;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;

/**
 * Puts generated inputs to a reader, each from a seed of its own, and holds it to its bounds: no
 * exception, no hang, no more memory than the input asks for. An input that fails is kept in {@code
 * target/generated}.
 *
 * <p>{@code -Dloopwright.generated=1000000} is how many there are in all.
 */
public final class Generated {
  /** Inputs in all, shared out among those that read. */
  private static final int ALL = Integer.getInteger("loopwright.generated", 4_000);

  /** Kinds of reader that share them. */
  private static final int READERS = 14;

  /** No input may take longer, however busy the machine is. */
  private static final long LONGEST_SECONDS = 30;

  /** What one input may allocate whatever it says, in bytes. */
  public static final long MOST_BYTES = 64L << 20;

  /** What each of its bytes adds. */
  private static final long BYTES_A_BYTE = 2_000;

  private static final Path FOLDER = Path.of("target", "generated");
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private final String name;
  private final Scramble scramble;
  private final long mostBytes;
  private final Trial trial;
  private volatile byte[] now = new byte[0];
  private volatile int at;
  private volatile long since;
  private Throwable failed;
  private int accepted;
  private long slowest;
  private long most;

  /** Reads one input. */
  public interface Trial {
    /**
     * Reads an input, and asserts what must hold of what is accepted.
     *
     * @return whether it was accepted
     * @throws Exception if the reader let one through: that is what is looked for
     */
    boolean accepts(byte[] input) throws Exception;
  }

  private Generated(String name, Scramble scramble, long mostBytes, Trial trial) {
    this.name = name;
    this.scramble = scramble;
    this.mostBytes = mostBytes;
    this.trial = trial;
  }

  /** How many inputs each kind of reader gets. */
  public static int share() {
    return Math.max(1, ALL / READERS);
  }

  /** Puts a share of inputs to a reader. */
  public static void run(String name, List<byte[]> seeds, Trial trial) {
    run(name, share(), seeds, MOST_BYTES, trial);
  }

  /**
   * Puts inputs to a reader.
   *
   * @param name what is read, one word a piece
   * @param count how many inputs
   * @param seeds whole documents to spoil
   * @param mostBytes what one input may allocate whatever it says, in bytes
   */
  public static void run(String name, int count, List<byte[]> seeds, long mostBytes, Trial trial) {
    new Generated(name, new Scramble(seeds), mostBytes, trial).run(count);
  }

  private void run(int count) {
    Thread worker = new Thread(() -> work(count), "generated " + name);
    worker.setDaemon(true);
    since = System.nanoTime();
    worker.start();
    try {
      while (worker.isAlive()) {
        worker.join(200);
        if (worker.isAlive()
            && System.nanoTime() - since > TimeUnit.SECONDS.toNanos(LONGEST_SECONDS)) {
          AssertionError hang = new AssertionError(about() + " hangs; it stands where shown");
          hang.setStackTrace(worker.getStackTrace());
          throw hang;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError("interrupted at " + about(), e);
    }
    if (failed != null) {
      throw new AssertionError(about() + ": " + failed, failed);
    }
    System.out.printf(
        "%s: %d inputs, %d accepted, slowest %d ms, at most %.1f MB%n",
        name, count, accepted, TimeUnit.NANOSECONDS.toMillis(slowest), most / 1e6);
  }

  private void work(int count) {
    try {
      for (at = 0; at < count; at++) {
        // Random's first throws are alike for seeds in a row; these are mixed.
        long seed = new SplittableRandom(31L * name.hashCode() + at).nextLong();
        now = scramble.next(new Random(seed));
        since = System.nanoTime();
        long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
        accepted += trial.accepts(now) ? 1 : 0;
        long bytes = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        slowest = Math.max(slowest, System.nanoTime() - since);
        most = Math.max(most, bytes);
        if (bytes > mostBytes + BYTES_A_BYTE * now.length) {
          throw new AssertionError("takes " + bytes + " bytes of memory");
        }
      }
    } catch (Throwable e) {
      failed = e;
    }
  }

  /** Names the input and where it is kept, with its beginning. */
  private String about() {
    Path file = FOLDER.resolve(name.replace(' ', '-') + "-" + at);
    try {
      Files.createDirectories(FOLDER);
      Files.write(file, now);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String text = new String(now, StandardCharsets.UTF_8);
    return name
        + ", input "
        + at
        + " ("
        + file
        + "): "
        + text.substring(0, Math.min(500, text.length()));
  }
}
