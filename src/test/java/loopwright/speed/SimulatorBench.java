package loopwright.speed;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import loopwright.evidence.Bench;
import loopwright.model.Part;
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
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a suspect costs when a general circuit simulator is run for it as a program of its own
 * (ngspice, one small relay circuit), against one suspect of the whole pumper solved here. Needs
 * ngspice on the path.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class SimulatorBench {
  private Path netlist;
  private Solver solver;
  private Setting on;
  private final List<Variant> suspects = new ArrayList<>();
  private int next;

  /** Writes the netlist and builds the suspects. */
  @Setup
  public void build() throws IOException {
    netlist = Files.createTempFile("beacon", ".cir");
    try (InputStream in = SimulatorBench.class.getResourceAsStream("/ngspice/beacon-healthy.cir")) {
      Files.write(netlist, in.readAllBytes());
    }
    Vehicle vehicle = Bench.vehicle("pumper");
    Network network = Bench.network(vehicle);
    on = vehicle.circuit("beacon").orElseThrow().onSetting();
    solver = Solver.lowRank(network, on);
    for (Part part : vehicle.parts()) {
      for (Failure f : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
        suspects.add(
            Variant.healthy(network)
                .with(f.changes(network, f.continuum().orElse(Spread.exactly(0)))));
      }
    }
  }

  /** Removes the netlist. */
  @TearDown
  public void clean() throws IOException {
    Files.deleteIfExists(netlist);
  }

  /** One run of the simulator as a program of its own. */
  @Benchmark
  public int simulatorRun() throws IOException, InterruptedException {
    return new ProcessBuilder("ngspice", "-b", netlist.toString())
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }

  /** One suspect of the whole vehicle, all nodes. */
  @Benchmark
  public Object suspectHere() {
    next = (next + 1) % suspects.size();
    return solver.solve(suspects.get(next), on);
  }
}
