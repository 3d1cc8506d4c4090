package loopwright.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.Fleet;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
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

/** Opening a case and its first check; {@link NextCheckBench} has those that follow. */
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
}
