package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;

class GroundCommandTest {
  private TestWorld world(String... lines) {
    TestWorld world = new TestWorld(new MemoryStore(), lines);
    world.vehicle = Bench.vehicle("pumper");
    return world;
  }

  @Test
  void oneGroundIsAskedForUntilItIsGood() {
    TestWorld world = world("0.5 V", "help", "7", "7.0 mV");
    assertThat(world.run("ground", "pumper", "G4", "--sources")).isZero();
    assertThat(world.outText())
        .contains("RED      G4.lug: beacon ground stud G4, ring terminals on the stud")
        .contains("LIMIT    22 mohm: 100 mV at 4.6 A")
        .contains("SAE recommended maximum voltage drops")
        .contains("Bad: ")
        .contains("Undo it, scrape to bright metal")
        .contains("'7' isn't taken: with its unit")
        .contains("Good: 1.3 to 1.8 mohm; limit 22 mohm.")
        .contains("BACK     key switch KEY: off");
    assertThat(world.outLines()).allMatch(line -> line.length() <= 80);
    assertThat(world.proofs.read("pumper").events()).hasSize(2);
  }

  @Test
  void theWalkAsksForOneAfterTheOtherAndCanBeStopped() {
    TestWorld world = world("", "", "stop");
    assertThat(world.run("ground", "pumper", "--width", "200")).isZero();
    assertThat(world.outText())
        .contains("Light pumper: 32 grounds, 0 proven good, 29 to prove.")
        .contains("What was read is kept.");
    assertThat(world.outText().split("reads> ", -1)).hasSize(4);
  }

  @Test
  void ohmsAreAskedForByTheLeads() {
    TestWorld world = world("ohms", "0.3", "0.4", "more", "skip");
    assertThat(world.run("ground", "pumper", "g4")).isZero();
    assertThat(world.outText())
        .contains("Ohms only on a dead vehicle")
        .contains("This reading can't tell: 0 to 506 mohm; limit 22 mohm.")
        .contains("there is no greater load for it");
  }

  @Test
  void allAreListed() {
    TestWorld world = world();
    world.run("ground", "pumper", "--list");
    assertThat(world.outText())
        .contains("- engine strap STR2, strap: to prove")
        .contains("- instrument ground bolt G8, stud: no load proves it");
  }

  @Test
  void whatIsntThereIsNamed() {
    TestWorld world = world();
    assertThat(world.run("ground", "pumper", "G99")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("G99").contains("STR1");
    assertThat(world.run("ground", "nowhere")).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.run("ground", "pumper", "--meter", "none")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.run("ground", "--help")).isZero();
    assertThat(world.outText()).contains("GROUND").contains("cranking last");
  }
}
