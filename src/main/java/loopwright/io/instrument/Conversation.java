package loopwright.io.instrument;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import loopwright.casework.feed.MeterWatch;
import loopwright.meter.MeterFunction;

/**
 * One connection with a meter. It is asked who it is. If it answers like an instrument that speaks
 * SCPI it is asked for one reading after another; if not, what it sends by itself is taken.
 *
 * <p>A bare number answers the last question only: there is never more than one open. If an answer
 * stays out, the meter is asked who it is again, and all that comes before the answer to that is
 * dropped, so that a late answer never counts for another question.
 */
final class Conversation {
  /** Nanoseconds between the beginnings of two questions at least. */
  static final long PACE = 150_000_000L;

  /** Nanoseconds after which an answer is no longer waited for. */
  static final long PATIENCE = 5_000_000_000L;

  /** Fields of an answer to {@code *IDN?}: maker, model, serial number, version (IEEE 488.2). */
  private static final int IDENTITY_FIELDS = 4;

  private static final int CHUNK = 4_096;

  /** Milliseconds of rest after a full chunk: a flood of junk must not take the whole processor. */
  private static final int REST = 1;

  private static final String WHO = "*IDN?";

  private enum Open {
    NOTHING,
    WHO,
    READING
  }

  private final Link link;
  private final MeterWatch watch;
  private final LongSupplier clock;
  private final LineSplitter lines = new LineSplitter();
  private boolean scpi;
  private Open open = Open.NOTHING;
  private MeterFunction question = MeterFunction.VOLTS_DC;
  private long askedAt;
  private boolean heard;

  Conversation(Link link, MeterWatch watch, LongSupplier clock) {
    this.link = link;
    this.watch = watch;
    this.clock = clock;
  }

  /** Whether anything came over this connection. */
  boolean heard() {
    return heard;
  }

  /**
   * Goes on until the meter is gone.
   *
   * @param goOn asked often; false ends it
   * @throws IOException when the meter is gone; the message says why
   */
  void run(BooleanSupplier goOn) throws IOException, InterruptedException {
    byte[] chunk = new byte[CHUNK];
    ask(Open.WHO, WHO);
    while (goOn.getAsBoolean()) {
      int n = link.read(chunk);
      lines.add(chunk, n, this::line);
      if (n == CHUNK) {
        Thread.sleep(REST);
      }
      next();
    }
  }

  private void line(String text, boolean whole) {
    heard = true;
    if (open == Open.WHO && identity(text)) {
      scpi = true;
      open = Open.NOTHING;
      return;
    }
    long now = clock.getAsLong();
    if (!scpi) {
      if (whole) {
        watch.line(text, Optional.empty(), now);
      }
    } else if (open == Open.READING) {
      open = Open.NOTHING;
      watch.line(text, Optional.of(question), now);
    }
  }

  private static boolean identity(String text) {
    return Character.isLetter(text.strip().isEmpty() ? ' ' : text.strip().charAt(0))
        && text.split(",", -1).length >= IDENTITY_FIELDS;
  }

  private void next() throws IOException {
    long waited = clock.getAsLong() - askedAt;
    boolean late = waited > PATIENCE;
    if (!scpi) {
      // A meter that sends by itself is left alone; one that was still starting is asked again.
      if (late && !heard) {
        ask(Open.WHO, WHO);
      }
    } else if (open == Open.NOTHING) {
      if (waited > PACE) {
        question = watch.asked();
        ask(Open.READING, command(question));
      }
    } else if (late) {
      ask(Open.WHO, WHO);
    }
  }

  private void ask(Open what, String command) throws IOException {
    open = what;
    askedAt = clock.getAsLong();
    link.write((command + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  private static String command(MeterFunction function) {
    return switch (function) {
      case VOLTS_DC -> "MEAS:VOLT:DC?";
      case OHMS -> "MEAS:RES?";
      case DIODE -> "MEAS:DIOD?";
    };
  }
}
