package loopwright.speed;

import java.util.concurrent.TimeUnit;
import loopwright.casework.PaperDesk;
import loopwright.casework.PaperReport;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
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

/** The whole paper check of a vehicle, rules and words included. */
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

  /** The whole check. */
  @Benchmark
  public PaperReport check() {
    return desk.check(vehicle);
  }
}
