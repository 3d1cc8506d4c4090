package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import loopwright.io.instrument.SimulatedInstrument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The person's own meter in the plain conversation. */
@Timeout(60)
class OwnMeterTest {
  private final MemoryStore store = new MemoryStore();

  private TestWorld find(int port, String... lines) {
    TestWorld world = new TestWorld(store, lines);
    assertThat(
            world.run(
                "find",
                "pumper",
                "--complaint",
                "beacon dead",
                "--meter-port",
                "tcp:127.0.0.1:" + port))
        .as(world.errText())
        .isZero();
    return world;
  }

  private static String flat(TestWorld world) {
    return world.outText().replaceAll("\\s+", " ");
  }

  @Test
  void takeTakesTheSteadyReading() throws IOException {
    try (SimulatedInstrument meter = SimulatedInstrument.scpi(c -> "+1.24000000E+01\n")) {
      TestWorld world = find(meter.port(), "take", "take");
      assertThat(flat(world))
          .containsSubsequence(
              "Say take to take what your own meter reads.",
              "Hold the leads still ...",
              "Taken: 12.4000 V.",
              "Check 2",
              "Not taken: take '': nothing is to be measured now. Nothing has changed.");
      assertThat(store.cases.get("beacon-1").toString()).contains("12.4000 V");
    }
  }

  @Test
  void leftOnAPointTheMetersEveryChangeIsTaken() throws IOException {
    long start = System.nanoTime();
    try (SimulatedInstrument meter =
        SimulatedInstrument.sending(
            50, () -> System.nanoTime() - start < 4_000_000_000L ? "12.40 V\n" : "3.10 V\n")) {
      TestWorld world = find(meter.port(), "take", "same", "take 8", "no");
      assertThat(flat(world))
          .containsSubsequence(
              "Taken: 12.40 V.",
              "Say take 60",
              "Watching for 8 s.",
              "3.10 V",
              "Time is up.",
              "between 3.10 V and 12.40 V");
      assertThat(store.cases.get("beacon-1").toString().split("3.10 V", -1))
          .as("it stays at 3.10 V, which is taken once")
          .hasSize(2);
    }
  }

  @Test
  void theMeterOnTheWrongFunctionIsNotTaken() throws IOException {
    try (SimulatedInstrument meter = SimulatedInstrument.sending(50, () -> "0.3 ohm\n")) {
      assertThat(flat(find(meter.port(), "take")))
          .contains("shows ohm, but this check is on volts DC; leads off first");
    }
  }

  @Test
  void aMovingReadingIsToldAndAValueCanStillBeTyped() throws IOException {
    AtomicInteger n = new AtomicInteger();
    try (SimulatedInstrument meter =
        SimulatedInstrument.sending(50, () -> (n.incrementAndGet() % 2 + 11) + ".00 V\n")) {
      assertThat(flat(find(meter.port(), "take", "12.4 V")))
          .containsSubsequence("hold the leads still. Nothing has changed.", "Taken: 12.4 V.");
    }
  }

  @Test
  void aPortThatIsNoneIsRefused() {
    for (List<String> args :
        List.of(
            List.of("--meter-port", "http://host"),
            List.of("--meter-port", "tcp:127.0.0.1:9", "--jsonl"))) {
      TestWorld world = new TestWorld(store);
      List<String> all = new java.util.ArrayList<>(List.of("find", "pumper"));
      all.addAll(List.of("--complaint", "beacon dead"));
      all.addAll(args);
      assertThat(world.run(all.toArray(String[]::new))).isEqualTo(ExitCode.USAGE.number());
      assertThat(world.errText()).contains("meter");
    }
  }
}
