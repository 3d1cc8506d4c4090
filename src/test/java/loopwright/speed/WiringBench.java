package loopwright.speed;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import loopwright.casework.CircuitLoops;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.Sketch;
import loopwright.casework.edit.Workpiece;
import loopwright.casework.table.Column;
import loopwright.casework.table.Rows;
import loopwright.casework.table.Table;
import loopwright.casework.table.Typed;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.Fleet;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.drawing.LoopPlan;
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

/** What happens between a typed length of a wire and the new drawing of its circuit. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WiringBench {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  /** Size of the vehicle in parts. */
  @Param({"200", "2000"})
  public int parts;

  private Workpiece work;
  private String wire;
  private String circuit;
  private int metres;

  /** Builds the vehicle; the wire is one in its middle. */
  @Setup
  public void setUp() {
    Vehicle vehicle = Fleet.vehicle(parts);
    work = new Workpiece(vehicle);
    List<String> wires =
        vehicle.parts().stream().filter(p -> p.kind() == PartKind.WIRE).map(p -> p.id()).toList();
    wire = wires.get(wires.size() / 2);
    circuit = new Sketch(vehicle).circuitOf(wire, List.of()).orElseThrow();
  }

  private Vehicle edit() throws Problem {
    metres = metres % 9 + 1;
    work.make(
        Typed.on(
            work.vehicle(),
            Table.WIRES,
            "length",
            List.of(
                new Typed.Entry(
                    Optional.of(wire), Map.of(Column.METRES, Integer.toString(metres))))));
    return work.vehicle();
  }

  /** The edit and the table's new rows: what runs on the window's thread. */
  @Benchmark
  public List<Rows.Row> editAndRows() throws Problem {
    return new Rows(edit()).of(Table.WIRES);
  }

  /** The same, and the circuit looked up, traced and laid out anew. */
  @Benchmark
  public LoopPlan editToDrawing() throws Problem {
    Vehicle now = edit();
    new Rows(now).of(Table.WIRES);
    Sketch sketch = new Sketch(now);
    LoopView loop = sketch.circuitOf(wire, List.of(circuit)).flatMap(sketch::of).orElseThrow();
    return LoopLayout.of(
        new LoopLayout.Request(
            loop,
            70,
            12,
            Optional.empty(),
            Optional.empty(),
            LoopLayout.Folding.WHOLE,
            (text, size) -> 0.5 * size * text.length()));
  }

  /**
   * The plain way to a drawing: the network built anew and solved. It has healthy volts too, and
   * isn't laid out yet.
   */
  @Benchmark
  public Optional<LoopView> editToSolvedDrawing() throws Problem {
    return new CircuitLoops(edit(), Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), PHRASES)
        .loop(circuit);
  }

  /** The check of the whole vehicle, which follows in the background. */
  @Benchmark
  public List<VehicleCheck.Finding> check() throws Problem {
    return VehicleCheck.check(edit());
  }
}
