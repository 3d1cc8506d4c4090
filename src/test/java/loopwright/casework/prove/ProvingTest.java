package loopwright.casework.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.bench.HiddenTruth;
import loopwright.casework.CaseView;
import loopwright.evidence.Bench;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** First power of the demo vehicles, sound and with single faults, by the simulated meter. */
class ProvingTest {

  private static FirstPowerPlay play(
      Vehicle vehicle, Map<String, Double> faults, HiddenTruth.Draw draw, ProofStore proofs)
      throws Exception {
    return new FirstPowerPlay(vehicle, faults, draw, 7, Bench.desk(), proofs);
  }

  /** With every value at an end the truck's heater fan may not start on slow: that isn't sound. */
  @ParameterizedTest
  @CsvSource({
    "pumper, WITHIN",
    "truck, WITHIN",
    "motorcycle, WITHIN",
    "tractor, WITHIN",
    "pumper, AT_LIMITS",
    "tractor, AT_LIMITS",
    "motorcycle, AT_LIMITS"
  })
  void aSoundVehiclePassesEveryStep(String name, HiddenTruth.Draw draw) throws Exception {
    ProveView view =
        play(Bench.vehicle(name), Map.of(), draw, new Bench.ProofsInMemory()).play(1000);
    assertThat(view.now()).isEmpty();
    assertThat(view.items()).allMatch(i -> i.state() == ProveView.State.PROVEN);
  }

  /** Single faults, the subject and the kind of step where each is met, and the part to blame. */
  @ParameterizedTest
  @CsvSource({
    "pumper, F3/missing, 0, beacon, LIVE, F3",
    "truck, F6/missing, 0, wipers, LIVE, F6",
    "truck, W52/short-to-ground, 0.1, heater-slow, SHORT, W52",
    "tractor, W22/short-to-ground, 0.05, horn, SHORT, W22",
    "tractor, W21/unseated, 0, work, WORKS, W21",
    "tractor, G4/on-paint, 0.5, work, WORKS, G4",
    "pumper, K4/swapped-87-87a, 0, locker, WORKS, K4",
  })
  void aFaultStopsAtItsStepAndTheCaseIsolatesIt(
      String name, String fault, double ohms, String subject, Step.What what, String part)
      throws Exception {
    FirstPowerPlay play =
        play(
            Bench.vehicle(name),
            Map.of(fault, ohms),
            HiddenTruth.Draw.WITHIN,
            new Bench.ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.chosen()).isEqualTo(subject);
    assertThat(play.proving().step().orElseThrow().what()).isEqualTo(what);
    assertThat(view.now().orElseThrow().trouble().orElseThrow().canFind()).isTrue();
    CaseView found = play.find();
    assertThat(found.move()).isEqualTo(CaseView.Move.REPAIR);
    assertThat(found.suspects().get(0).parts()).contains(part);
    assertThat(found.suspects().get(0).parts().size()).isLessThanOrEqualTo(4);
    assertThat(states(play.proving())).containsEntry(subject, ProveView.State.FAILED);
  }

  /**
   * A load that works and loses too much on its way can't be complained of: the way is halved until
   * the stretch is left that holds the fault.
   */
  @ParameterizedTest
  @CsvSource({
    "truck, W51/high-resistance, 0.3, wipers, M2.out, G2.lug",
    "tractor, W18/high-resistance, 0.4, tail, L3.in, C1.1b",
    "tractor, W24/high-resistance, 0.1, horn, G5.lug, S4.out",
  })
  void whatIsLostUnderLoadIsTracedToItsStretch(
      String name, String fault, double ohms, String subject, String from, String to)
      throws Exception {
    FirstPowerPlay play =
        play(
            Bench.vehicle(name),
            Map.of(fault, ohms),
            HiddenTruth.Draw.WITHIN,
            new Bench.ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.chosen()).isEqualTo(subject);
    Step stretch = play.proving().step().orElseThrow();
    assertThat(stretch.what()).isEqualTo(Step.What.PIECE);
    assertThat(
            List.of(
                stretch.check().orElseThrow().red().orElseThrow().toString(),
                stretch.check().orElseThrow().black().orElseThrow().toString()))
        .containsExactly(from, to);
    assertThat(view.now().orElseThrow().trouble().orElseThrow().canFind()).isFalse();
  }

  /** The number on the fuse needs no case: it is met before the fuse goes in. */
  @Test
  void aFuseOfTheWrongSizeIsNotFitted() throws Exception {
    FirstPowerPlay play =
        play(
            Bench.vehicle("tractor"),
            Map.of("F4/wrong-rating", 0.0),
            HiddenTruth.Draw.WITHIN,
            new Bench.ProofsInMemory());
    ProveView view = play.play(1000);
    assertThat(view.chosen()).isEqualTo("work");
    assertThat(play.proving().step().orElseThrow().what()).isEqualTo(Step.What.RATING);
    ProveView.Trouble trouble = view.now().orElseThrow().trouble().orElseThrow();
    assertThat(trouble.canFind()).isFalse();
    assertThat(trouble.words()).contains("says 10 A").contains("never a larger one");
    assertThat(play.proving().confirm(true).now().orElseThrow().number()).isEqualTo(2);
  }

  private static Map<String, ProveView.State> states(Proving proving) {
    Map<String, ProveView.State> states = new java.util.LinkedHashMap<>();
    proving.view().items().forEach(i -> states.put(i.id(), i.state()));
    return states;
  }

  private static Vehicle change(Vehicle vehicle, String part, PartSpec spec) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(p -> p.id().equals(part) ? p.withSpec(spec) : p);
    return vehicle.with(parts, vehicle.joins(), vehicle.circuits());
  }

  private static PartSpec wire(Vehicle vehicle, String id, double metres, String colour) {
    PartSpec.Wire w = (PartSpec.Wire) vehicle.requirePart(id).spec();
    return new PartSpec.Wire(
        w.kind(),
        w.from(),
        w.to(),
        w.size(),
        Estimate.between(metres, metres, metres),
        w.endOhms(),
        colour,
        w.loom());
  }

  private static List<String> changedBy(Vehicle edited, ProofStore proofs) throws Exception {
    Proving again = FirstPowerPlay.proving(edited, Bench.desk(), proofs);
    List<String> changed = new ArrayList<>();
    states(again)
        .forEach(
            (id, state) -> {
              if (state == ProveView.State.CHANGED) {
                changed.add(id);
              } else {
                assertThat(state).as(id).isEqualTo(ProveView.State.PROVEN);
              }
            });
    return changed;
  }

  @Test
  void anEditMakesTheCircuitsUnprovenThatItTouchesAndNoOthers() throws Exception {
    Vehicle tractor = Bench.vehicle("tractor");
    Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();
    play(tractor, Map.of(), HiddenTruth.Draw.TYPICAL, proofs).play(1000);
    assertThat(changedBy(tractor, proofs)).isEmpty();

    PartSpec.Wire w18 = (PartSpec.Wire) tractor.requirePart("W18").spec();
    Vehicle recoloured =
        change(
            tractor,
            "W18",
            new PartSpec.Wire(
                w18.kind(),
                w18.from(),
                w18.to(),
                w18.size(),
                w18.metres(),
                w18.endOhms(),
                "pink",
                w18.loom()));
    assertThat(changedBy(recoloured, proofs)).as("a colour is nothing electrical").isEmpty();
    Vehicle longer = change(tractor, "W18", wire(tractor, "W18", 9, "pink"));
    assertThat(changedBy(longer, proofs)).containsExactly("tail");
    assertThat(
            FirstPowerPlay.proving(longer, Bench.desk(), proofs).view().items().stream()
                .filter(i -> i.id().equals("tail"))
                .findFirst()
                .orElseThrow()
                .note())
        .startsWith("changed since: ")
        .contains("W18");
    Vehicle fused = change(tractor, "F1", new PartSpec.Fuse(25, Optional.empty()));
    assertThat(changedBy(fused, proofs)).containsExactlyInAnyOrder("tail", "dash-lamp", "head");
  }

  /** Nothing but the journal lasts: after each answer another program goes on at the same step. */
  @Test
  void afterAKillItGoesOnAtTheStepThatWasNext() throws Exception {
    Vehicle tractor = Bench.vehicle("tractor");
    Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();
    FirstPowerPlay first = play(tractor, Map.of(), HiddenTruth.Draw.WITHIN, proofs);
    for (int step = 0; step < 40; step++) {
      first.step();
      Proving other = FirstPowerPlay.proving(tractor, Bench.desk(), proofs);
      assertThat(other.step()).as("after %d answers", step + 1).isEqualTo(first.proving().step());
      assertThat(states(other)).isEqualTo(states(first.proving()));
    }
  }
}
