package loopwright.speed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import loopwright.casework.CircuitLoops;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.edit.CircuitEdits;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.Finder;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.VehicleStore;
import loopwright.casework.edit.Workpiece;
import loopwright.casework.sheet.WireSheet;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.io.VehicleFile;
import loopwright.io.VehicleFiles;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Working on a vehicle: what has to stay fluid with 2,000 parts. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class EditBench {
  /** The vehicle: one of the demo, or a made-up one of so many parts. */
  @Param({"pumper", "fleet-1000", "fleet-2000"})
  public String vehicle;

  private final Phrases phrases = new Phrases(Locale.ENGLISH);
  private Vehicle before;
  private Circuit circuit;
  private Part wire;
  private String otherFuse;
  private List<TerminalRef> points;
  private String list;
  private Path file;
  private VehicleStore.Opened opened;
  private boolean longer;

  /** Makes the vehicle and its file. */
  @Setup(Level.Trial)
  public void build() throws IOException, Problem {
    before = CaseBench.vehicle(vehicle);
    circuit = before.circuits().get(before.circuits().size() - 1);
    List<Part> wires =
        before.parts().stream().filter(p -> p.spec() instanceof PartSpec.Wire).toList();
    wire = wires.get(wires.size() / 2);
    otherFuse =
        before.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Fuse)
            .map(Part::id)
            .reduce((a, b) -> a)
            .orElseThrow();
    points =
        new CircuitLoops(before, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), phrases)
            .loop(circuit.id()).orElseThrow().stairs().stream().map(LoopView.Stair::point).toList();
    list = WireSheet.text(before);
    file = Files.createTempDirectory("edit-bench").resolve("vehicle.json");
    VehicleFile.write(before, file);
    opened = new VehicleFiles().open(file);
  }

  /** Puts the file away. */
  @TearDown(Level.Trial)
  public void close() {
    opened.close();
  }

  /**
   * Reads the file as it is opened to work on: what can't be read at all, no check of the whole.
   */
  @Benchmark
  public Object open() throws Problem {
    try (VehicleStore.Opened again = new VehicleFiles().open(file)) {
      return again.vehicle();
    }
  }

  /** Saves after an edit, the previous version kept. */
  @Benchmark
  public void save() throws Problem {
    longer = !longer;
    opened.save(longer ? longer() : before);
  }

  /** Checks that the whole holds together. */
  @Benchmark
  public Object check() {
    return VehicleCheck.check(longer());
  }

  private Vehicle longer() {
    PartSpec.Wire w = (PartSpec.Wire) wire.spec();
    PartSpec.Wire other =
        new PartSpec.Wire(
            w.kind(),
            w.from(),
            w.to(),
            w.size(),
            Estimate.of(w.metres().about() + 0.5),
            Optional.empty(),
            w.colour(),
            w.loom());
    return made(PartEdits.spec(wire.id(), other));
  }

  private Vehicle made(Edit edit) {
    try {
      Workpiece work = new Workpiece(before);
      work.make(edit);
      return work.vehicle();
    } catch (Problem e) {
      throw new IllegalStateException(e);
    }
  }

  /** Changes one wire, with what undo needs. */
  @Benchmark
  public Object editWire() {
    return longer();
  }

  /** The plain way to change one wire: the whole written as text and read back, not checked. */
  @Benchmark
  public Object editWireThroughText() {
    return VehicleFile.read(VehicleFile.text(longer()), "vehicle.json");
  }

  /** Renames a part everywhere. */
  @Benchmark
  public Object rename() {
    return made(PartEdits.rename(otherFuse, "RENAMED"));
  }

  /** Removes a part and what ends on it. */
  @Benchmark
  public Object remove() {
    return made(PartEdits.remove(otherFuse));
  }

  /** Makes a second circuit like the last one. */
  @Benchmark
  public Object duplicate() {
    return made(CircuitEdits.duplicate(circuit.id(), "another"));
  }

  /** Looks for words. */
  @Benchmark
  public Object find() {
    return Finder.find(before, "lamp feed");
  }

  /** Draws the last circuit after an edit, the network built anew. */
  @Benchmark
  public Object drawAfterEdit() {
    return new CircuitLoops(longer(), Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), phrases)
        .loop(circuit.id());
  }

  /**
   * The plain way for the healthy volts of that drawing alone: worked out on the whole vehicle, not
   * only on what is live.
   */
  @Benchmark
  public Object voltsOfTheWholeAfterEdit() {
    HealthyBands bands =
        new HealthyBands(
            new Workbench(
                Bench.network(longer()), Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0)));
    return points.stream()
        .map(p -> Check.measure(CheckKind.VOLTS, p, before.groundedPost(), circuit.onSetting()))
        .map(bands::band)
        .toList();
  }

  /** Reads the vehicle's own wire list back and says what it would change. */
  @Benchmark
  public Object wireList() {
    WireSheet sheet = WireSheet.read(list, "list.csv");
    return sheet.preview(before, sheet.guess());
  }
}
