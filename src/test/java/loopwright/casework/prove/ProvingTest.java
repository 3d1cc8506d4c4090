package loopwright.casework.prove;

import static org.assertj.core.api.Assertions.assertThat;

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
            new Bench.ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.now().flatMap(ProveView.Now::trouble)).as(view.now().toString()).isEmpty();
    assertThat(view.items()).allMatch(i -> i.state() == ProveView.State.PROVEN);
  }

  /** Single faults, the subject and the kind of step where each is met, and the part to blame. */
  @ParameterizedTest
  @CsvSource({
    "pumper, F3/missing, 0, beacon, LIVE, F3",
    "pumper, W5/short-to-ground, 0.1, @KM, SHORT, W5",
  })
  void aFaultStopsAtItsStepAndTheCaseIsolatesIt(
      String name, String fault, double ohms, String subject, Step.What what, String part)
      throws Exception {
    FirstPowerPlay play =
        new FirstPowerPlay(
            Bench.vehicle(name),
            Map.of(fault, ohms),
            HiddenTruth.Draw.WITHIN,
            7,
            Bench.desk(),
            new Bench.ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.chosen()).isEqualTo(subject);
    assertThat(play.proving().step().orElseThrow().what()).isEqualTo(what);
    assertThat(view.now().orElseThrow().trouble().orElseThrow().canFind()).isTrue();
    CaseView found = play.find();
    assertThat(found.move()).isEqualTo(CaseView.Move.REPAIR);
    assertThat(found.suspects().get(0).parts()).contains(part);
    assertThat(play.proving().view().items())
        .filteredOn(i -> i.id().equals(subject))
        .extracting(ProveView.Item::state)
        .containsExactly(ProveView.State.FAILED);
  }
}
