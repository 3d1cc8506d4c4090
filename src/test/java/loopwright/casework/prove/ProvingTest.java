package loopwright.casework.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import loopwright.bench.HiddenTruth;
import loopwright.casework.CaseView;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProvingTest {

  @ParameterizedTest
  @CsvSource({"pumper, 1", "tractor, 1", "truck, 1", "motorcycle, 1", "pumper, 2", "truck, 2"})
  void aSoundVehiclePassesEveryStep(String name, long seed) throws Exception {
    Vehicle vehicle = Bench.vehicle(name);
    FirstPowerPlay play =
        new FirstPowerPlay(
            vehicle,
            Map.of(),
            seed == 1 ? HiddenTruth.Draw.WITHIN : HiddenTruth.Draw.AT_LIMITS,
            seed,
            Bench.desk(),
            new ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.now().flatMap(ProveView.Now::trouble)).as(view.now().toString()).isEmpty();
    assertThat(view.items()).allMatch(i -> i.state() == ProveView.State.PROVEN);
  }

  @ParameterizedTest
  @CsvSource({
    "pumper, F3/missing, 0, beacon, live",
    "pumper, W5/short-to-ground, 0.1, ?, short",
  })
  void aFaultStopsAtItsStepAndTheCaseIsolatesIt(
      String name, String fault, double ohms, String subject, String what) throws Exception {
    Vehicle vehicle = Bench.vehicle(name);
    FirstPowerPlay play =
        new FirstPowerPlay(
            vehicle,
            Map.of(fault, ohms),
            HiddenTruth.Draw.WITHIN,
            7,
            Bench.desk(),
            new ProofsInMemory());
    ProveView view = play.play(1000);
    System.out.println(
        fault
            + " stops at "
            + view.chosen()
            + " "
            + view.now().map(n -> n.step() + " " + n.trouble()));
    CaseView found = play.find();
    System.out.println("   " + found.move() + " " + found.suspects().stream().limit(3).toList());
    System.out.println("   " + found.readings());
    List.of(subject, what);
  }
}
