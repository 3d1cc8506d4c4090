package loopwright.speed;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.MadeUp;
import loopwright.knowledge.Context;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Heap in use after many cases were opened, read once and closed: it must not grow. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx512m")
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class HeapBench {

  /** How many cases. */
  @State(Scope.Thread)
  public static class Cases {
    /** Number of cases. */
    @Param({"10", "100", "1000"})
    public int cases;
  }

  /** Heap in megabytes after a collection. */
  @State(Scope.Thread)
  @AuxCounters(AuxCounters.Type.EVENTS)
  public static class Heap {
    /** Used heap, MB. */
    public long usedMb;
  }

  /** Opens, reads and closes; vehicles come round after eighteen. */
  @Benchmark
  public void heapAfterCases(Cases cases, Heap heap) throws InterruptedException {
    for (int n = 0; n < cases.cases; n++) {
      one(n % 18);
    }
    for (int n = 0; n < 3; n++) {
      System.gc();
      Thread.sleep(200);
    }
    Runtime runtime = Runtime.getRuntime();
    heap.usedMb = (runtime.totalMemory() - runtime.freeMemory()) >> 20;
  }

  private static void one(int n) {
    Vehicle vehicle = MadeUp.vehicle(n);
    Circuit circuit = vehicle.circuit("main").orElseThrow();
    Complaint complaint =
        new Complaint(
            ComplaintKind.DEAD, circuit.id(), circuit.loads().get(0), circuit.onSetting());
    Workbench bench =
        new Workbench(
            Bench.network(vehicle), Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("basic").orElseThrow());
    try (Diagnosis diagnosis =
        Diagnosis.open(bench, Bench.rules(), complaint, Context.IN_SERVICE, Step.SILENT)) {
      Findings first = diagnosis.findings(List.of(), Diagnosis.Circumstances.NONE);
      Check check = first.ranked().get(0).check();
      Reading.Value value =
          check.kind().metered()
              ? new Reading.Value.Number(0.01, 0.001)
              : new Reading.Value.Sight(Seen.OFF);
      diagnosis.findings(
          List.of(new Reading(1, check, value)),
          new Diagnosis.Circumstances(Set.of(), Set.of(), java.util.Map.of(), Optional.of(check)));
    }
  }
}
