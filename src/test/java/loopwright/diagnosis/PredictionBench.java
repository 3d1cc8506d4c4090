package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * What one suspect would show at one check of the pumper's beacon, as planning reckons it and with
 * all spreads. The suspects' operating points are solved before the clock starts.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 4, time = 2)
public class PredictionBench {
  private static final int VALUES = 2_000;

  private Workbench bench;
  private Predictor predictor;
  private List<Hypothesis> suspects;
  private List<Check> checks;
  private int next;

  /** Solves the suspects. */
  @Setup
  public void build() {
    Vehicle vehicle = Bench.vehicle("pumper");
    Network network = Bench.network(vehicle);
    bench = new Workbench(network, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("basic").orElseThrow());
    Circuit circuit = vehicle.circuit("beacon").orElseThrow();
    Loop loop =
        Loop.trace(bench, circuit.onSetting(), bench.loadElement(circuit.loads().get(0)))
            .orElseThrow();
    suspects = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      if (loop.holds(part.id())) {
        suspects.addAll(
            bench.singles(part, Context.IN_SERVICE, circuit.onSetting(), v -> false, h -> true));
      }
    }
    suspects.forEach(h -> bench.points(h, circuit.onSetting()));
    checks = new ArrayList<>();
    for (Loop l : loop.all()) {
      for (int node : l.nodes()) {
        if (!network.terminals(node).isEmpty()
            && !network.terminals(node).contains(vehicle.groundedPost())) {
          checks.add(
              Check.measure(
                  CheckKind.VOLTS,
                  network.terminals(node).get(0),
                  vehicle.groundedPost(),
                  circuit.onSetting()));
        }
      }
    }
  }

  /** Forgets what was predicted. */
  @Setup(Level.Invocation)
  public void forget() {
    predictor = new Predictor(bench);
    next = (next + 1) % suspects.size();
  }

  /** One value as planning reckons it. */
  @Benchmark
  @org.openjdk.jmh.annotations.OperationsPerInvocation(VALUES)
  public void forPlanning(Blackhole hole) {
    for (int n = 0; n < VALUES; n++) {
      hole.consume(
          predictor.predict(
              suspects.get((next + n / checks.size()) % suspects.size()),
              checks.get(n % checks.size())));
    }
  }

  /** One value with all spreads. */
  @Benchmark
  @org.openjdk.jmh.annotations.OperationsPerInvocation(VALUES)
  public void withAllSpreads(Blackhole hole) {
    for (int n = 0; n < VALUES; n++) {
      hole.consume(
          predictor.exact(
              suspects.get((next + n / checks.size()) % suspects.size()),
              checks.get(n % checks.size())));
    }
  }
}
