package loopwright.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.evidence.Takes;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
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
import org.openjdk.jmh.annotations.Warmup;

/**
 * From a reading to the next check, over every step of many searches on fresh cases, the rules in.
 * What is got ready while a person takes a check is done before the clock starts, as every front
 * end does it; {@code readyAhead=false} shows what that saves.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 1, time = 30)
@Measurement(iterations = 1, time = 60)
public class NextCheckBench {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  /** Readings after which a search is given up and the next begins. */
  private static final int MOST = 12;

  /** The vehicle: one of the demo, or a made-up one of so many parts. */
  @Param({"pumper", "fleet-60", "fleet-200", "fleet-1000", "fleet-2000"})
  public String vehicle;

  /** Whether the next check's tables are filled before its reading comes. */
  @Param({"true", "false"})
  public boolean readyAhead;

  private final Random random = new Random(7);
  private final List<Reading> readings = new ArrayList<>();
  private Network network;
  private Complaint complaint;
  private Diagnosis diagnosis;
  private HiddenTruth truth;
  private Findings findings;

  /** Builds the network and compiles the rules. */
  @Setup(Level.Trial)
  public void build() {
    Vehicle v = CaseBench.vehicle(vehicle);
    network = Bench.network(v);
    complaint = CaseBench.complaint(v, network);
    Bench.rules();
  }

  /** Takes the next reading, after opening a case with another failure where one has ended. */
  @Setup(Level.Invocation)
  public void reading() {
    while (findings == null
        || readings.size() >= MOST
        || findings.status() != Findings.Status.SEARCHING
        || findings.ranked().isEmpty()) {
      open();
    }
    Check check = findings.ranked().get(0).check();
    if (readyAhead) {
      diagnosis.prepare(check, readings, after(), () -> true);
    }
    readings.add(
        new Reading(
            readings.size() + 1,
            check,
            Takes.measure(network.vehicle(), truth, complaint.load(), check)));
  }

  private void open() {
    if (diagnosis != null) {
      diagnosis.close();
    }
    readings.clear();
    diagnosis =
        Diagnosis.open(
            new Workbench(network, Bench.KNOWLEDGE, METER),
            Bench.rules(),
            complaint,
            Context.IN_SERVICE,
            Step.SILENT);
    List<String> parts = new ArrayList<>(diagnosis.partsInPlay());
    String failed = parts.get(random.nextInt(parts.size()));
    List<Failure> failures =
        Failure.of(network, network.vehicle().requirePart(failed), Bench.KNOWLEDGE.faults());
    Failure failure = failures.get(random.nextInt(failures.size()));
    truth =
        new HiddenTruth(
            network, List.of(failure), Map.of(), METER, HiddenTruth.Draw.WITHIN, random.nextLong());
    truth.run(complaint.on());
    findings = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
  }

  /** A reading to the next check. */
  @Benchmark
  public Object readingToNextCheck() {
    findings = diagnosis.findings(readings, after());
    return findings;
  }

  /** What is known besides, the check taken last. */
  private Diagnosis.Circumstances after() {
    Optional<Check> last =
        readings.isEmpty()
            ? Optional.empty()
            : Optional.of(readings.get(readings.size() - 1).check());
    return new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of(), last);
  }
}
