package loopwright.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.evidence.Takes;
import loopwright.evidence.generated.Fleet;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
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

/** A case: opening it, and from a reading to the next check, the rules in. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
public class CaseBench {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  static Vehicle vehicle(String name) {
    return name.startsWith("fleet-")
        ? Fleet.vehicle(Integer.parseInt(name.substring(6)))
        : Bench.vehicle(name);
  }

  static Complaint complaint(Vehicle vehicle, Network network) {
    // A relay circuit: the pumper's beacon, of a made-up one the fourth.
    Circuit circuit = vehicle.circuit("beacon").or(() -> vehicle.circuit("c3")).orElseThrow();
    return new Complaint(
        ComplaintKind.DEAD, circuit.id(), circuit.loads().get(0), circuit.onSetting());
  }

  /** Opens a case of a vehicle. */
  @State(Scope.Thread)
  public static class Opening {
    /** The vehicle. */
    @Param({"pumper", "fleet-50", "fleet-200", "fleet-1000"})
    public String vehicle;

    private Network network;

    /** Builds the network and compiles the rules. */
    @Setup
    public void build() {
      network = Bench.network(vehicle(vehicle));
      Bench.rules();
    }

    Diagnosis open() {
      return Diagnosis.open(
          new Workbench(network, Bench.KNOWLEDGE, METER),
          Bench.rules(),
          complaint(network.vehicle(), network),
          Context.IN_SERVICE,
          Step.SILENT);
    }
  }

  /** From the complaint to the first check, the rules compiled. */
  @Benchmark
  @Warmup(iterations = 3)
  @Measurement(iterations = 5)
  public Object openingToFirstCheck(Opening opening) {
    try (Diagnosis diagnosis = opening.open()) {
      return diagnosis.findings(List.of(), Diagnosis.Circumstances.NONE);
    }
  }

  /** An open case with the readings of a whole search, each taken once before the clock starts. */
  @State(Scope.Thread)
  public static class Play {
    private final List<Reading> readings = new ArrayList<>();
    private Diagnosis diagnosis;

    /** Plays a lost ground once. */
    @Setup(Level.Iteration)
    public void play(Opening opening) {
      diagnosis = opening.open();
      readings.clear();
      Network network = opening.network;
      Vehicle vehicle = network.vehicle();
      Complaint complaint = diagnosis.complaint();
      List<String> onLoop =
          diagnosis.loop().orElseThrow().pieces().stream().map(p -> p.part()).toList();
      String failed = onLoop.get(onLoop.size() * 2 / 3);
      Failure failure =
          Failure.of(network, vehicle.requirePart(failed), Bench.KNOWLEDGE.faults()).get(0);
      HiddenTruth truth =
          new HiddenTruth(
              network, List.of(failure), java.util.Map.of(), METER, HiddenTruth.Draw.WITHIN, 5);
      truth.run(complaint.on());
      List<Check> order = new ArrayList<>();
      Findings findings = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
      while (readings.size() < 5 && !findings.ranked().isEmpty()) {
        Check check = findings.ranked().get(0).check();
        order.add(check);
        readings.add(
            new Reading(
                readings.size() + 1,
                check,
                Takes.measure(vehicle, truth, complaint.load(), check)));
        findings = diagnosis.findings(readings, circumstances(check));
      }
    }

    private static Diagnosis.Circumstances circumstances(Check last) {
      return new Diagnosis.Circumstances(Set.of(), Set.of(), java.util.Map.of(), Optional.of(last));
    }

    /** Closes the case. */
    @TearDown(Level.Iteration)
    public void close() {
      diagnosis.close();
    }

    Object again() {
      return diagnosis.findings(readings, circumstances(readings.get(readings.size() - 1).check()));
    }
  }

  /** The fifth reading to the next check, everything it needs predicted before. */
  @Benchmark
  @BenchmarkMode(Mode.SampleTime)
  @Warmup(iterations = 2, time = 3)
  @Measurement(iterations = 3, time = 3)
  public Object warmReadingToNextCheck(Play play) {
    return play.again();
  }

  /** The first reading to the next check, nothing about that check worked out before. */
  @Benchmark
  @Warmup(iterations = 3)
  @Measurement(iterations = 8)
  public Object firstReadingToNextCheck(Fresh fresh) {
    return fresh.diagnosis.findings(
        List.of(fresh.reading), Play.circumstances(fresh.reading.check()));
  }

  /** A case just opened, with one reading ready. */
  @State(Scope.Thread)
  public static class Fresh {
    private Diagnosis diagnosis;
    private Reading reading;

    /** Opens it: one a shot, since single shots count what is set up for an invocation. */
    @Setup(Level.Iteration)
    public void open(Opening opening) {
      diagnosis = opening.open();
      Check check =
          diagnosis.findings(List.of(), Diagnosis.Circumstances.NONE).ranked().stream()
              .map(Findings.Proposal::check)
              .filter(c -> c.kind().metered())
              .findFirst()
              .orElseThrow();
      reading = new Reading(1, check, new Reading.Value.Number(0.02, 0.001));
    }

    /** Closes it. */
    @TearDown(Level.Iteration)
    public void close() {
      diagnosis.close();
    }
  }
}
