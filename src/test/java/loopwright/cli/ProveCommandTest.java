package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;

class ProveCommandTest {

  private static TestWorld world(String... lines) {
    TestWorld world = new TestWorld(new MemoryStore(), lines);
    world.vehicle = Bench.vehicle("pumper");
    return world;
  }

  @Test
  void aStepIsSaidInTheOrderOfHandsAndAnsweredByANumberOrAReading() {
    TestWorld world = world("1", "0.00 V", "12 apples", "OL", "stop");
    assertThat(world.run("prove", "pumper")).isZero();
    assertThat(world.outText())
        .contains("Small main fuse: 10 A")
        .contains("Battery and grounds, step 1 of 10")
        .contains("  CAREFUL  Battery off before ohms, 0.00 V before ohms.")
        .contains("  RED      SF.load: small main fuse SF, load side")
        .contains("Not taken: ")
        .contains("Battery and grounds, step 4 of 10")
        .endsWith("All answers are kept.\n")
        .doesNotContain("step 5 of 10");
  }

  @Test
  void whatIsWrongIsSaidWithWhatCanBeDone() {
    TestWorld world = world("2", "1", "2.4 V", "find", "");
    assertThat(world.run("prove", "pumper")).isZero();
    assertThat(world.outText())
        .contains("  WRONG    Go on when it is bare.")
        .contains("  WRONG    2.4 V; healthy is 0.00 V. Something feeds in")
        .contains("over which a case can be opened. Nothing has changed.");
  }

  @Test
  void allThatIsProvenIsListed() {
    TestWorld world = world();
    assertThat(world.run("prove", "pumper", "--list")).isZero();
    assertThat(world.outText())
        .contains("[ ] @supply: Battery and grounds")
        .contains("[ ] beacon: Beacon");
  }

  @Test
  void aCircuitThatIsNotThereIsTold() {
    TestWorld world = world();
    assertThat(world.run("prove", "pumper", "rocket")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("rocket").contains("beacon");
    TestWorld meter = world();
    assertThat(meter.run("prove", "pumper", "--meter", "gold")).isEqualTo(ExitCode.USAGE.number());
    assertThat(meter.errText()).contains("basic");
  }

  @Test
  void aVehicleThatCanNotBeReadIsTold() {
    assertThat(world().run("prove", "nothing")).isEqualTo(ExitCode.VEHICLE.number());
  }
}
