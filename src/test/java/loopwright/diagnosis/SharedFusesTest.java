package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.History;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What spends a fuse while another circuit is on, held against the plain way: every single failure
 * solved with each circuit on in turn, and with its blown fuses in the setting complained of.
 */
class SharedFusesTest {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  private static Workbench bench(Vehicle vehicle) {
    return new Workbench(Bench.network(vehicle), Bench.KNOWLEDGE, METER);
  }

  private static Causes causes(Workbench bench, Complaint complaint) {
    return new Causes(
        bench,
        new Predictor(bench, Optional.of(complaint.load())),
        complaint,
        Loop.trace(bench, complaint.on(), bench.loadElement(complaint.load())));
  }

  private static Complaint dead(Circuit circuit) {
    return new Complaint(
        ComplaintKind.DEAD, circuit.id(), circuit.loads().get(0), circuit.onSetting());
  }

  /** Suspects by the names of their part and kind, as a case on this complaint holds them. */
  private static Map<SuspectId, Double> inPlay(Vehicle vehicle, Complaint complaint) {
    Workbench bench = bench(vehicle);
    Causes causes = causes(bench, complaint);
    Map<SuspectId, Double> all = new LinkedHashMap<>();
    for (Part part : vehicle.parts()) {
      for (Causes.Causing c : causes.causing(part, Context.IN_SERVICE)) {
        all.merge(c.hypothesis().suspect(), c.hypothesis().prior() * c.chance(), Double::sum);
      }
    }
    return all;
  }

  /** What has blown with each circuit on in turn. */
  private static Map<Setting, Solver> solvers(Network network, Vehicle vehicle) {
    return vehicle.circuits().stream()
        .map(Circuit::onSetting)
        .distinct()
        .collect(
            Collectors.toMap(
                s -> s, s -> Solver.lowRank(network, s), (a, b) -> a, LinkedHashMap::new));
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor"})
  void whateverSpendsTheFuseWhileAnotherCircuitIsOnIsSuspected(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    Workbench plain = bench(vehicle);
    Map<Setting, Solver> solvers = solvers(network, vehicle);
    List<String> missing = new ArrayList<>();
    int spent = 0;
    for (Circuit circuit : vehicle.circuits()) {
      Complaint complaint = dead(circuit);
      Solver here = solvers.get(circuit.onSetting());
      Map<SuspectId, Double> suspected = inPlay(vehicle, complaint);
      for (Part part : vehicle.parts()) {
        for (Failure failure : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
          if (failure.rate(Context.IN_SERVICE) <= 0) {
            continue;
          }
          Spread worst = failure.continuum().map(r -> Spread.exactly(r.low())).orElse(null);
          Variant variant =
              Variant.healthy(network)
                  .with(failure.changes(network, worst == null ? Spread.exactly(0) : worst));
          if (level(plain, here, variant, complaint, History.NONE) < 0.01) {
            continue;
          }
          for (Map.Entry<Setting, Solver> e : solvers.entrySet()) {
            History blown =
                e.getValue()
                    .solve(variant, e.getKey(), Values.typical(variant), History.NONE)
                    .history();
            if (!blown.blown().isEmpty() && level(plain, here, variant, complaint, blown) < 0.01) {
              spent++;
              SuspectId id = new SuspectId(part.id(), failure.name());
              if (suspected.getOrDefault(id, 0.0) <= 0) {
                missing.add(circuit.id() + " " + id + " " + e.getKey().positions());
              }
              break;
            }
          }
        }
      }
    }
    System.out.printf("fuses spent elsewhere, %s: %d%n", name, spent);
    assertThat(missing).as("failures that nobody would suspect").isEmpty();
    assertThat(spent).isPositive();
  }

  private static double level(
      Workbench bench, Solver solver, Variant variant, Complaint complaint, History blown) {
    OperatingPoint point = solver.solve(variant, complaint.on(), Values.typical(variant), blown);
    return bench.level(point, complaint.load(), complaint.on());
  }

  @Test
  void aShortBehindTheRestingContactOfAChangeoverIsSuspectedOfTheFuseThatBothShare() {
    Vehicle pumper = Bench.vehicle("pumper");
    Circuit panel =
        pumper.circuits().stream().filter(c -> c.id().equals("panel")).findFirst().orElseThrow();
    Map<SuspectId, Double> suspected = inPlay(pumper, dead(panel));
    Set<String> parts = new TreeSet<>();
    suspected.forEach((id, chance) -> parts.add(chance > 0 ? id.part() : ""));
    assertThat(parts).contains("L15", "F13", "W92").doesNotContain("L1");
    double own =
        suspected.entrySet().stream()
            .filter(e -> e.getKey().part().equals("L11"))
            .mapToDouble(Map.Entry::getValue)
            .sum();
    double other =
        suspected.entrySet().stream()
            .filter(e -> e.getKey().part().equals("L15"))
            .mapToDouble(Map.Entry::getValue)
            .sum();
    assertThat(other).as("the lamp complained of is likelier than its mate").isLessThan(own);
  }
}
