package loopwright.io.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.feed.MeterState;
import loopwright.casework.feed.MeterWatch;
import loopwright.casework.feed.MeterWords;
import loopwright.generated.Generated;
import loopwright.meter.MeterFunction;
import org.junit.jupiter.api.Test;

/** Spoilt lines from a meter: what is taken of them was sent, and can be typed. */
class GeneratedMeterTest {
  /** Between two reads of the connection, in nanoseconds. */
  private static final long STEP = 100_000_000L;

  private static final MeterWords WORDS = new MeterWords(Locale.ENGLISH);

  @Test
  void lines() {
    List<byte[]> seeds =
        Stream.of(
                "Maker,M1,00001,1.0\n" + "+1.24100000E+01\n".repeat(30),
                "Maker,M1,00001,1.0\n" + "+4.71200000E+03\r\n".repeat(30),
                "Maker,M1,00001,1.0\n" + "+9.9E37\n".repeat(30),
                "start\n" + "12.41 V DC\r\n".repeat(30),
                "start\n" + "  0.35 mV\n12.4 V\n4.7 kOhm\nO.L\n".repeat(8),
                "start\n" + "0,612 V\n".repeat(30))
            .map(s -> s.getBytes(StandardCharsets.UTF_8))
            .toList();
    Generated.run("lines of a meter", seeds, GeneratedMeterTest::taken);
  }

  /** One connection for each thing that a meter can be asked for. */
  private static boolean taken(byte[] sent) throws InterruptedException {
    boolean taken = false;
    for (MeterFunction function : MeterFunction.values()) {
      MeterWatch watch = new MeterWatch();
      watch.ask(function, 0);
      watch.linked(0);
      Line line = new Line(sent);
      Optional<String> reading = Optional.empty();
      try {
        new Conversation(line, watch, () -> line.now).run(() -> true);
      } catch (IOException gone) {
        assertThat(WORDS.of(watch.at(line.now))).isNotBlank().doesNotContain("\n");
        reading = watch.take(line.now);
        watch.lost(gone.getMessage(), line.now);
      }
      reading.ifPresent(
          r -> assertThat(MeterWatch.typed(r)).as("what is taken can be typed").contains(r));
      assertThat(watch.take(line.now)).isEmpty();
      assertThat(watch.at(line.now)).isInstanceOf(MeterState.Gone.class);
      taken |= reading.isPresent();
    }
    return taken;
  }

  /** Sends a line at a time, each after a while, and is unplugged behind the last. */
  private static final class Line implements Link {
    private final byte[] sent;
    private int at;
    private long now;

    Line(byte[] sent) {
      this.sent = sent;
    }

    @Override
    public int read(byte[] into) throws IOException {
      if (at == sent.length) {
        throw new IOException("unplugged");
      }
      now += STEP;
      int n = 0;
      while (at < sent.length && n < into.length - 1 && (n == 0 || into[n - 1] != '\n')) {
        into[n++] = sent[at++];
      }
      return n;
    }

    @Override
    public void write(byte[] bytes) {
      assertThat(new String(bytes, StandardCharsets.US_ASCII))
          .matches("(\\*IDN\\?|MEAS:(VOLT:DC|RES|DIOD)\\?)\n");
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }
}
