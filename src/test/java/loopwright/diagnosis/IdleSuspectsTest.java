package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is left out of a search unsolved, since it changes only what carries no current, against
 * solving it: it must not cause the complaint.
 */
class IdleSuspectsTest {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor"})
  void noIdleSuspectCausesTheComplaint(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    int left = 0;
    int all = 0;
    for (Circuit circuit : vehicle.circuits()) {
      for (ComplaintKind kind : ComplaintKind.values()) {
        Workbench bench = new Workbench(Bench.network(vehicle), Bench.KNOWLEDGE, METER);
        Complaint complaint =
            new Complaint(kind, circuit.id(), circuit.loads().get(0), circuit.onSetting());
        Predictor predictor = new Predictor(bench, Optional.of(complaint.load()));
        Causes causes =
            new Causes(
                bench,
                predictor,
                complaint,
                Loop.trace(bench, complaint.on(), bench.loadElement(complaint.load())));
        double healthy = causes.chance(bench.healthy());
        for (Part part : vehicle.parts()) {
          List<Hypothesis> suspects =
              bench.singles(part, Context.IN_SERVICE, complaint.on(), v -> false, causes::bearsOn);
          for (Hypothesis h : suspects) {
            all++;
            if (causes.idle(changes(bench, h))) {
              left++;
              // What health does too is no cause; the last digits may differ by leaks.
              assertThat(causes.chance(h))
                  .as("%s %s %s", circuit.id(), kind, h.suspect())
                  .isLessThan(Math.max(0.02, healthy + 1e-3));
            }
          }
        }
      }
    }
    System.out.printf("idle suspects, %s: %d of %d left out unsolved%n", name, left, all);
    assertThat(left).as("some are idle").isGreaterThan(all / 20);
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor"})
  void whatCarriesTheLoadsCurrentIsNeverIdle(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Workbench bench = new Workbench(Bench.network(vehicle), Bench.KNOWLEDGE, METER);
    for (Circuit circuit : vehicle.circuits()) {
      Set<String> loop =
          Loop.trace(bench, circuit.onSetting(), bench.loadElement(circuit.loads().get(0)))
              .map(l -> l.pieces().stream().map(Loop.Piece::part).collect(Collectors.toSet()))
              .orElse(Set.of());
      for (String part : loop) {
        List<Hypothesis> opens =
            bench
                .singles(
                    vehicle.requirePart(part),
                    Context.IN_SERVICE,
                    circuit.onSetting(),
                    v -> false,
                    h -> true)
                .stream()
                .filter(h -> h.suspect().mode().equals("open"))
                .toList();
        for (Hypothesis h : opens) {
          assertThat(bench.point(bench.healthy(), circuit.onSetting()).idle(changes(bench, h)))
              .as("%s %s", circuit.id(), h.suspect())
              .isFalse();
        }
      }
    }
  }

  private static List<Change> changes(Workbench bench, Hypothesis h) {
    return h.failures().get(0).changes(bench.network(), h.cell().orElse(Spread.exactly(0)));
  }
}
