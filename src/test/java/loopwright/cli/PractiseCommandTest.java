package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Level;
import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;

class PractiseCommandTest {
  private static TestWorld world(String... lines) {
    TestWorld world = new TestWorld(new MemoryStore(), lines);
    world.vehicle = Bench.vehicle("motorcycle");
    return world;
  }

  @Test
  void aDrillIsPlayedByWordsAndDebriefed() {
    TestWorld world =
        world(
            "help",
            "amps BATT.pos BATT.neg",
            "on",
            "volts BATT.pos",
            "12-13",
            "BATT",
            "pull NOWHERE",
            "volts KEY",
            "accuse BATT as nonsense",
            "accuse BATT as high resistance",
            "fuse",
            "done");
    String code = new DrillCode(Level.DEAD_LAMP, 1, 4, "").toString();
    assertThat(world.run("practise", code, "--expect", "--stairs")).isZero();
    assertThat(world.outText())
        .contains("Drill " + code)
        .contains("SHOWS    0.00 A")
        .contains("The meter's fuse has blown")
        .contains("As you expected: 12.")
        .contains("'NOWHERE' isn't taken")
        .contains("'KEY' isn't taken")
        .contains("'nonsense' isn't taken: open, high-resistance, short, stuck, other.")
        .contains("Accused without cause")
        .contains("A fault was left in")
        .contains("Here the best check was")
        .contains("volts against the grounded post")
        .contains("The best plan:");
    assertThat(world.outLines())
        .filteredOn(line -> !line.contains("> "))
        .allMatch(line -> line.length() <= 80);
    assertThat(world.drills.read()).hasSize(1);
    assertThat(world.drills.read().get(0).code()).isEqualTo(code);
    world.run("practise");
    assertThat(world.outText())
        .contains("dead-lamp: " + world.drills.read().get(0).score() + " (1)");
  }

  @Test
  void whatIsNoDrillIsRefusedInWords() {
    TestWorld world = world();
    assertThat(world.run("practise", "4F7Q")).isEqualTo(2);
    assertThat(world.errText()).contains("a drill's code of four characters");
    assertThat(world.run("practise", "pumper", "--level", "hard")).isEqualTo(2);
    assertThat(world.errText()).contains("dead-lamp, high-resistance");
    assertThat(world.run("practise", "mine.json")).isEqualTo(3);
    assertThat(world.run("practise")).isZero();
    assertThat(world.outText()).contains("No drill was played yet");
  }
}
