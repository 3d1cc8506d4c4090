package loopwright.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.Fleet;
import loopwright.model.Circuit;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import loopwright.solver.Solver;
import loopwright.solver.Variant;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One suspect solved: by changing the healthy factorisation, and by factoring the sparse matrix
 * anew. Suspects are the series failures of one relay circuit in the middle of the vehicle.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SolveBench {
  /** Size of the vehicle in parts. */
  @Param({"50", "200", "1000", "2000"})
  public int parts;

  private Setting on;
  private Solver lowRank;
  private Solver full;
  private List<Variant> suspects;
  private int next;

  /** Builds the vehicle and its suspects. */
  @Setup
  public void build() {
    Vehicle vehicle = Fleet.vehicle(parts);
    Network network = Bench.network(vehicle);
    List<Circuit> relays =
        vehicle.circuits().stream()
            .filter(c -> (Integer.parseInt(c.id().substring(1)) % 4) == 3)
            .toList();
    Circuit circuit = relays.get(relays.size() / 2);
    String n = circuit.id().substring(1);
    on = circuit.onSetting();
    suspects = new ArrayList<>();
    vehicle.parts().stream()
        .filter(p -> p.name().endsWith(" " + n))
        .forEach(
            p -> {
              for (Failure f : Failure.of(network, p, Bench.KNOWLEDGE.faults())) {
                if (!f.bridges()) {
                  suspects.add(
                      Variant.healthy(network)
                          .with(f.changes(network, f.continuum().orElse(Spread.exactly(0)))));
                }
              }
            });
    lowRank = Solver.lowRank(network, on);
    full = Solver.full(network);
  }

  private Variant suspect() {
    next = (next + 1) % suspects.size();
    return suspects.get(next);
  }

  /** One suspect by low rank. */
  @Benchmark
  public Object lowRank() {
    return lowRank.solve(suspect(), on);
  }

  /** One suspect by the whole sparse matrix. */
  @Benchmark
  public Object sparseAnew() {
    return full.solve(suspect(), on);
  }
}
