package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ExplainCommandTest {
  private final TestWorld world = new TestWorld(new MemoryStore());

  @Test
  void allPagesAreListed() {
    assertThat(world.run("explain")).isZero();
    assertThat(world.outLines())
        .contains("relay: Relays and their terminal numbers", "ghost: Ghost volts")
        .as("eleven pages, and how to open one")
        .hasSize(12);
  }

  @Test
  void aPageIsFoundByItsWordsAndPlayedWith() {
    assertThat(world.run("explain", "short", "circuit", "--set", "chafe=0.1")).isZero();
    // 12.6 V / (0.02 + 1 / (5 / 12.6 + 10)) ohm
    assertThat(world.outLines())
        .contains("Why a fuse blows", "Fuse: blown", "Current if nothing blew: 108 A")
        .anyMatch(l -> l.startsWith("Try this: "))
        .anyMatch(l -> l.startsWith("--set chafe=0.1"));
  }

  @Test
  void whatIsNotThereIsSaid() {
    assertThat(world.run("explain", "carburettor")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("'explain' lists all");
    assertThat(world.run("explain", "relay", "--set", "switch=ajar"))
        .isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("one of on, off");
  }
}
