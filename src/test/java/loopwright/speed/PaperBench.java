package loopwright.speed;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import loopwright.casework.PaperDesk;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanWatch;
import loopwright.casework.Problem;
import loopwright.casework.edit.PartEdits;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
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
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The paper check of a vehicle, whole and after an edit, and what the solving in it takes. */
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
  private Vehicle edited;
  private PaperDesk desk;
  private PlanWatch watch;
  private final Random random = new Random(7);

  /** Reads the vehicle and compiles the rules. */
  @Setup
  public void open() {
    vehicle = CaseBench.vehicle(which);
    Bench.rules();
    desk = Bench.paperDesk();
    watch = desk.watch();
    edited = vehicle;
    watch.check(vehicle, PaperDesk.USUAL_SURROUNDINGS, () -> false);
  }

  /** Edits, which the check isn't timed with. */
  @Setup(Level.Invocation)
  public void edit() throws Problem {
    List<Part> wires = edited.parts().stream().filter(p -> p.kind() == PartKind.WIRE).toList();
    Part wire = wires.get(random.nextInt(wires.size()));
    PartSpec.Wire w = (PartSpec.Wire) wire.spec();
    PartSpec.Wire longer =
        new PartSpec.Wire(
            w.kind(),
            w.from(),
            w.to(),
            w.size(),
            Estimate.of(1.1 * w.metres().about()),
            w.endOhms(),
            w.colour(),
            w.loom());
    edited = PartEdits.spec(wire.id(), longer).make(edited).vehicle();
  }

  /** The whole check, rules and words included. */
  @Benchmark
  public PaperReport check() {
    return desk.check(vehicle);
  }

  /** The check after one more wire was made a little longer. */
  @Benchmark
  public PaperReport recheckAfterEdit() {
    return watch.check(edited, PaperDesk.USUAL_SURROUNDINGS, () -> false);
  }

  /** Its figures alone. */
  @Benchmark
  public List<Figure> figures() {
    return PaperCheck.figures(vehicle, Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
  }

  /** Each circuit switched on by itself, by one solver that factors each step. */
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
