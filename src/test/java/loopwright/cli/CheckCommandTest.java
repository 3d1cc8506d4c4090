package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

class CheckCommandTest {
  private final TestWorld world = new TestWorld(new MemoryStore());

  private static Vehicle withFuse(Vehicle vehicle, String fuse, double amps) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(
        p -> p.id().equals(fuse) ? p.withSpec(new PartSpec.Fuse(amps, Optional.empty())) : p);
    return vehicle.with(parts, vehicle.joins(), vehicle.circuits());
  }

  @Test
  void aSoundPlanEndsWithZero() {
    world.vehicle = Bench.vehicle("pumper");
    assertThat(world.run("check", "pumper")).isZero();
    assertThat(world.outText())
        .contains("Nothing wrong was found: 21 circuits")
        .contains("Local codes, road law and licensed practice decide.");
    assertThat(world.outLines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void theWorstComesFirstWithLimitConsequenceAndCure() {
    world.vehicle = withFuse(Bench.vehicle("pumper"), "F10", 30);
    assertThat(world.run("check", "pumper", "--width", "200", "--sources"))
        .isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText())
        .contains("Can burn or be destroyed")
        .contains("tail lamp wire W43 lies behind the 30 A of")
        .contains("it may be fused at no more than 10 A")
        .contains("Do: Fit the next fuse there is of 10 A or less")
        .contains("Source: FAA AC 43.13-1B");
    assertThat(world.outText().indexOf("Can burn")).isLessThan(world.outText().indexOf("Worth"));
  }

  @Test
  void hotSurroundingsAreTakenIntoAccountAndImpossibleOnesRefused() {
    world.vehicle = Bench.vehicle("pumper");
    assertThat(world.run("check", "pumper", "--surroundings", "75"))
        .isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText()).contains("may be fused at no more than");
    TestWorld other = new TestWorld(new MemoryStore());
    assertThat(other.run("check", "pumper", "--surroundings", "80"))
        .isEqualTo(ExitCode.USAGE.number());
    assertThat(other.errText()).contains("must be -40 to 79 C");
  }

  @Test
  void aPlanWithoutABatterySaysWhatComesFirst() {
    Vehicle whole = Bench.vehicle("pumper");
    world.vehicle =
        whole.with(
            whole.parts().stream().filter(p -> p.kind() != PartKind.BATTERY).toList(),
            whole.joins(),
            whole.circuits());
    assertThat(world.run("check", "pumper")).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText()).contains("can't be solved yet").contains("battery");
  }
}
