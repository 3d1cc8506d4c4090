package loopwright.casework.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/**
 * Fuse and order by hand. What a circuit draws is our own regression; that 5, 7.5 and 10 A are the
 * fuses to bring a plan up with is common practice.
 */
class ProvePlanTest {

  private static ProvePlan plan(String vehicle) {
    Vehicle read = Bench.vehicle(vehicle);
    return new ProvePlan(read, Bench.KNOWLEDGE);
  }

  private static List<String> order(ProvePlan plan) {
    return plan.subjects().stream().map(Subject::id).toList();
  }

  /** The horn's 7.5 A of 6 V ask for the middle fuse; headlamps and starter take more than 10 A. */
  @Test
  void tractor() {
    ProvePlan plan = plan("tractor");
    assertThat(plan.fuse()).contains(7.5);
    // Each has a fuse of its own, so that the smallest draw comes first; the dash lamp shares F1.
    assertThat(order(plan))
        .containsExactly(
            "@supply", "oil-lamp", "tail", "dash-lamp", "work", "horn", "@full", "head", "starter");
  }

  /** Main fuse, key fuse, main relay, and the fuses of several circuits before any circuit. */
  @Test
  void pumper() {
    ProvePlan plan = plan("pumper");
    assertThat(plan.fuse()).contains(10.0);
    assertThat(order(plan))
        .startsWith(
            "@supply", "@FL1", "@F1", "@KM", "@F13", "@F2", "@F9", "@F11", "clock", "oil-lamp")
        .containsSubsequence("@full", "main-beam", "main-telltale", "floods", "fan")
        .endsWith("starter-clutch", "starter");
    assertThat(plan.subject("beacon").orElseThrow().needs())
        .containsExactly("FL1", "F1", "KM", "F3");
  }

  @Test
  void whatIsNotYetFittedIsOutAndTheSmallFuseGoesWithTheFullOneIn() {
    ProvePlan plan = plan("tractor");
    Subject tail = plan.subject("tail").orElseThrow();
    assertThat(plan.power(tail, List.of()).out()).containsExactly("F2", "F3", "F4");
    assertThat(plan.power(tail, List.of("oil-lamp")).out()).containsExactly("F2", "F4");
    assertThat(plan.power(tail, List.of()).fuse()).isEqualTo(Optional.of(7.5));
    assertThat(plan.power(plan.subject("head").orElseThrow(), List.of()).fuse()).isEmpty();
  }

  @Test
  void everyCircuitOfEveryDemoVehicleIsInThePlanOnce() {
    for (String name : Bench.vehicles()) {
      ProvePlan plan = plan(name);
      Map<String, Long> circuits =
          plan.subjects().stream()
              .filter(s -> s.kind() == Subject.Kind.CIRCUIT)
              .collect(
                  java.util.stream.Collectors.groupingBy(
                      Subject::id, java.util.stream.Collectors.counting()));
      assertThat(circuits.keySet())
          .as(name)
          .containsExactlyInAnyOrderElementsOf(
              Bench.vehicle(name).circuits().stream().map(c -> c.id()).toList());
      assertThat(circuits.values()).as(name).containsOnly(1L);
      assertThat(plan.fuse().orElseThrow()).as(name).isBetween(5.0, 10.0);
    }
  }
}
