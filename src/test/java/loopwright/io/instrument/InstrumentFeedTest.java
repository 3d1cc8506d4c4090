package loopwright.io.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import loopwright.casework.Problem;
import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterPort;
import loopwright.casework.feed.MeterState;
import loopwright.casework.feed.MeterWords;
import loopwright.meter.MeterFunction;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Feeds from a simulated instrument on a loopback port and on a pseudo-terminal. */
@Timeout(60)
class InstrumentFeedTest {
  private static final double PATIENCE = 20;

  private static MeterFeed open(SimulatedInstrument meter) throws Problem {
    return new Instruments().open(MeterPort.parse("tcp:127.0.0.1:" + meter.port()));
  }

  private static void until(String what, BooleanSupplier condition) throws InterruptedException {
    long end = System.nanoTime() + (long) (PATIENCE * 1e9);
    while (!condition.getAsBoolean()) {
      assertThat(System.nanoTime()).as(what).isLessThan(end);
      Thread.sleep(20);
    }
  }

  private static String taken(MeterFeed feed) throws InterruptedException {
    AtomicReference<Optional<String>> taken = new AtomicReference<>(Optional.empty());
    until(
        "a steady reading, instead of " + feed.state(),
        () -> {
          taken.set(feed.take());
          return taken.get().isPresent();
        });
    return taken.get().orElseThrow();
  }

  private static <T> void untilState(MeterFeed feed, Class<T> state) throws InterruptedException {
    until(state.getSimpleName(), () -> state.isInstance(feed.state()));
  }

  @Test
  void anInstrumentIsAskedForWhatTheCheckWants() throws Exception {
    try (SimulatedInstrument meter =
            SimulatedInstrument.scpi(
                c ->
                    switch (c) {
                      case "MEAS:VOLT:DC?" -> "+1.24123456E+01\n";
                      case "MEAS:RES?" -> "+4.71200000E+03\r\n";
                      case "MEAS:DIOD?" -> "+9.9E37\n";
                      default -> "";
                    });
        MeterFeed feed = open(meter)) {
      assertThat(taken(feed)).isEqualTo("12.4123 V");
      feed.ask(MeterFunction.OHMS);
      assertThat(feed.take()).as("volts are no ohms").isEmpty();
      assertThat(taken(feed)).isEqualTo("4712.0000 ohm");
      feed.ask(MeterFunction.DIODE);
      assertThat(taken(feed)).isEqualTo("OL");
      assertThat(meter.commands())
          .startsWith("*IDN?", "MEAS:VOLT:DC?")
          .containsSubsequence("MEAS:RES?", "MEAS:DIOD?");
    }
  }

  @Test
  void aMeterThatSendsByItselfIsHeard() throws Exception {
    Random noise = new Random(1);
    try (SimulatedInstrument meter =
            SimulatedInstrument.sending(
                50, () -> String.format(Locale.ROOT, "12.%02d V DC\r\n", 40 + noise.nextInt(2)));
        MeterFeed feed = open(meter)) {
      assertThat(taken(feed)).isIn("12.40 V", "12.41 V");
      feed.ask(MeterFunction.OHMS);
      untilState(feed, MeterState.Unfit.class);
    }
  }

  @Test
  void aMovingReadingIsNotTaken() throws Exception {
    AtomicInteger at = new AtomicInteger();
    try (SimulatedInstrument meter =
            SimulatedInstrument.scpi(c -> String.format("%d.%02d V\n", 12, at.addAndGet(3) % 100));
        MeterFeed feed = open(meter)) {
      untilState(feed, MeterState.Moving.class);
      for (int i = 0; i < 60; i++) {
        Thread.sleep(50);
        assertThat(feed.take()).isEmpty();
      }
    }
  }

  @Test
  void droppedAndSpoiltLinesAreSurvived() throws Exception {
    AtomicInteger n = new AtomicInteger();
    try (SimulatedInstrument meter =
            SimulatedInstrument.sending(
                40,
                () ->
                    switch (n.incrementAndGet() % 5) {
                      case 1 -> "";
                      case 2 -> "1\u0000.\u0007~ V\r\n";
                      default -> "12.41 V\r\n";
                    });
        MeterFeed feed = open(meter)) {
      assertThat(taken(feed)).isEqualTo("12.41 V");
    }
  }

  @Test
  void slowAnswersAreWaitedFor() throws Exception {
    try (SimulatedInstrument meter =
            SimulatedInstrument.scpi(
                c -> {
                  Thread.sleep(1_500);
                  return "+1.24E+01\n";
                });
        MeterFeed feed = open(meter)) {
      assertThat(taken(feed)).isEqualTo("12.4 V");
    }
  }

  @Test
  void anAnswerThatIsTooLateCountsForNoOtherQuestion() throws Exception {
    AtomicInteger n = new AtomicInteger();
    try (SimulatedInstrument meter =
            SimulatedInstrument.scpi(
                c -> {
                  if (n.incrementAndGet() == 1) {
                    Thread.sleep(6_000);
                    return "+1.24E+01\n";
                  }
                  return c.equals("MEAS:RES?") ? "+4.7E+00\n" : "+1.24E+01\n";
                });
        MeterFeed feed = open(meter)) {
      until("asked", () -> n.get() > 0);
      feed.ask(MeterFunction.OHMS);
      assertThat(taken(feed)).isEqualTo("4.7 ohm");
      assertThat(meter.commands()).startsWith("*IDN?", "MEAS:VOLT:DC?", "*IDN?", "MEAS:RES?");
    }
  }

  @Test
  void aLineCutOffByThePlugIsNoReadingAndTheNextConnectionGoesOn() throws Exception {
    AtomicInteger connections = new AtomicInteger();
    try (SimulatedInstrument meter =
            new SimulatedInstrument(
                (in, out) -> {
                  if (connections.incrementAndGet() == 1) {
                    for (int i = 0; i < 30; i++) {
                      out.write("12.41 V\n12.4".getBytes(StandardCharsets.UTF_8));
                      Thread.sleep(30);
                      out.write("1 V\n".getBytes(StandardCharsets.UTF_8));
                      Thread.sleep(30);
                    }
                    out.write("12.4".getBytes(StandardCharsets.UTF_8));
                    return;
                  }
                  while (true) {
                    out.write("0.35 V\n".getBytes(StandardCharsets.UTF_8));
                    Thread.sleep(50);
                  }
                },
                java.util.List.of());
        MeterFeed feed = open(meter)) {
      assertThat(taken(feed)).isEqualTo("12.41 V");
      untilState(feed, MeterState.Gone.class);
      assertThat(new MeterWords(Locale.ENGLISH).of(feed.state())).contains("trying again");
      assertThat(taken(feed)).isEqualTo("0.35 V");
      assertThat(connections).hasValue(2);
    }
  }

  @Test
  void aMillionJunkLinesAreReadPastInBoundedMemory() throws Exception {
    byte[] junk = ("x".repeat(11) + "\n").repeat(10_000).getBytes(StandardCharsets.UTF_8);
    byte[] endless = new byte[2_000_000];
    try (SimulatedInstrument meter =
            new SimulatedInstrument(
                (in, out) -> {
                  for (int i = 0; i < 100; i++) {
                    out.write(junk);
                  }
                  out.write(endless);
                  while (true) {
                    out.write("\n12.41 V\n".getBytes(StandardCharsets.UTF_8));
                    Thread.sleep(50);
                  }
                },
                java.util.List.of());
        MeterFeed feed = open(meter)) {
      long before = System.nanoTime();
      until("in the flood", () -> feed.state() instanceof MeterState.Connecting);
      assertThat(System.nanoTime() - before).as("state is told at once").isLessThan(1_000_000_000L);
      assertThat(taken(feed)).isEqualTo("12.41 V");
    }
  }

  @Test
  void whereNothingAnswersItIsToldAndTriedAgain() throws Exception {
    SimulatedInstrument meter = SimulatedInstrument.scpi(c -> "");
    meter.close();
    try (MeterFeed feed = open(meter)) {
      untilState(feed, MeterState.Gone.class);
      assertThat(feed.state().toString()).contains("nothing answers at tcp:127.0.0.1:");
    }
  }

  @Test
  void aDeviceThatIsNoneIsTold() throws Exception {
    try (MeterFeed feed = new Instruments().open(MeterPort.parse("serial:/dev/no-such-line"))) {
      untilState(feed, MeterState.Gone.class);
      assertThat(feed.state().toString()).contains("/dev/no-such-line");
    }
  }

  @Test
  void aSerialLineIsSpokenToAndItsUnpluggingSeen() throws Exception {
    try (SimulatedInstrument meter = SimulatedInstrument.scpi(c -> "+1.24100000E+01\r\n")) {
      Process pty = pseudoTerminal(meter.port());
      try (MeterFeed feed =
          new Instruments().open(MeterPort.parse("serial:" + deviceOf(pty) + ",19200"))) {
        assertThat(taken(feed)).isEqualTo("12.4100 V");
        meter.unplug();
        assertThat(pty.waitFor(20, TimeUnit.SECONDS)).isTrue();
        untilState(feed, MeterState.Gone.class);
      } finally {
        pty.destroy();
      }
    }
  }

  private static Process pseudoTerminal(int port) {
    Assumptions.assumeTrue(File.separatorChar == '/', "pseudo-terminals are POSIX");
    try {
      return new ProcessBuilder(
              "python3",
              Path.of("src/test/resources/instrument/pty.py").toString(),
              Integer.toString(port))
          .redirectError(ProcessBuilder.Redirect.INHERIT)
          .start();
    } catch (IOException e) {
      Assumptions.abort("no python3 here to make a pseudo-terminal");
      throw new IllegalStateException(e);
    }
  }

  private static String deviceOf(Process pty) throws IOException {
    return pty.inputReader().readLine();
  }
}
