package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.bench.HiddenTruth;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import org.junit.jupiter.api.Test;

/**
 * The pumper's panel lamp is dead since the locker lamp, shorted, spent the fuse of both while the
 * pump drive was out: nothing of that carries current where the panel lamp should shine.
 */
class SpentElsewhereTest {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  @Test
  void theLampThatSpentTheFuseOfAnotherIsFoundAndProvenWhereItShows() throws Problem {
    Vehicle pumper = Bench.vehicle("pumper");
    Network network = Bench.network(pumper);
    Failure shorted =
        Failure.of(network, pumper.requirePart("L15"), Bench.KNOWLEDGE.faults()).stream()
            .filter(f -> f.name().equals("shorted"))
            .findFirst()
            .orElseThrow();
    HiddenTruth sick = truth(network, List.of(shorted));
    sick.run(pumper.circuit("locker").orElseThrow().onSetting());
    LoadRef lamp = new LoadRef("L11", Optional.empty());
    Player player = new Player(pumper, sick, lamp);
    try (FindCase find =
        Bench.desk()
            .open(
                new CaseDesk.NewCase(
                    pumper,
                    "pumper",
                    "panel",
                    Optional.of("L11"),
                    ComplaintKind.DEAD,
                    Context.IN_SERVICE,
                    "basic"),
                CaseDesk.Progress.SILENT)) {
      assertThat(find.whyStill("L15"))
          .anySatisfy(
              w ->
                  assertThat(w)
                      .contains(
                          "work lamp fuse F13 blows by it as soon as \u201cLocker lamp\u201d is on"));
      CaseView view = player.play(find, 25);
      System.out.printf(
          "%s after %d checks: %s%n",
          view.status(), view.readings().size(), view.suspects().get(0).title());
      assertThat(view.move()).isEqualTo(CaseView.Move.REPAIR);
      assertThat(view.suspects().get(0).parts()).contains("L15");
      view = find.repaired("L15");
      Player mended = new Player(pumper, truth(network, List.of()), lamp);
      boolean elsewhere = false;
      for (int n = 0; n < 6 && view.move() == CaseView.Move.PROOF; n++) {
        CheckView check = view.next().orElseThrow();
        elsewhere |= "out".equals(check.set().setting().positions().get("S12"));
        view = find.answer(check.id(), mended.answer(check));
      }
      assertThat(elsewhere).as("proven with the pump drive out").isTrue();
      assertThat(view.status()).isEqualTo(CaseView.Status.HEALTHY);
    }
  }

  private static HiddenTruth truth(Network network, List<Failure> failures) {
    return new HiddenTruth(network, failures, Map.of(), METER, HiddenTruth.Draw.WITHIN, 7);
  }
}
