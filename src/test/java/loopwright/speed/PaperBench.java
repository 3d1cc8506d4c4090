package loopwright.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import loopwright.casework.PaperDesk;
import loopwright.casework.PaperReport;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.paper.Figure;
import loopwright.paper.PaperCheck;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
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

/** The paper check of a vehicle, and what the solving in it takes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class PaperBench {

  /** Which vehicle. */
  @Param({"pumper", "fleet-200", "fleet-1000", "fleet-2000"})
  public String which;

  private Vehicle vehicle;
  private PaperDesk desk;

  /** Reads the vehicle and compiles the rules. */
  @Setup
  public void open() {
    vehicle = CaseBench.vehicle(which);
    Bench.rules();
    desk = Bench.paperDesk();
  }

  /** The whole check, rules and words included. */
  @Benchmark
  public PaperReport check() {
    return desk.check(vehicle);
  }

  /** Its figures alone. */
  @Benchmark
  public List<Figure> figures() {
    return PaperCheck.figures(vehicle, Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
  }

  /** Each circuit switched on by itself, by one solver as the check does it. */
  @Benchmark
  public List<OperatingPoint> solvedByOneSolver() {
    Network network = Bench.network(vehicle);
    Solver solver = Solver.full(network);
    return circuits().map(s -> solver.solve(Variant.healthy(network), s)).toList();
  }

  /** The plain way: each of them by a solver of its own, the network built anew. */
  @Benchmark
  public List<OperatingPoint> solvedEachAnew() {
    return circuits()
        .map(
            s -> {
              Network network = Bench.network(vehicle);
              return Solver.full(network).solve(Variant.healthy(network), s);
            })
        .toList();
  }

  private Stream<Setting> circuits() {
    return vehicle.circuits().stream().map(Circuit::onSetting).distinct();
  }
}
