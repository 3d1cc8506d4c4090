package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.stream.Stream;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.Fleet;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Healthy volts worked out on what is live against those of the whole vehicle. */
class LiveBandsTest {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meters().get(0);

  /** A node leaks 12 nA; 1,000 of them through 1 ohm make 12 uV, and the corners a little more. */
  private static final double LEAK = 1e-4;

  static Stream<Vehicle> vehicles() {
    return Stream.of(
        Bench.vehicle("pumper"),
        Bench.vehicle("tractor"),
        Bench.vehicle("truck"),
        Bench.vehicle("motorcycle"),
        Fleet.vehicle(200));
  }

  @ParameterizedTest
  @MethodSource("vehicles")
  void everyStairOfEveryCircuitIsTheSame(Vehicle vehicle) {
    Network network = Network.of(vehicle, Bench.KNOWLEDGE.typicals());
    Workbench bench = new Workbench(network, Bench.KNOWLEDGE, METER);
    HealthyBands whole = new HealthyBands(bench);
    LiveBands live = new LiveBands(vehicle, Bench.KNOWLEDGE, METER, whole);
    CircuitLoops loops =
        new CircuitLoops(vehicle, Bench.KNOWLEDGE, METER, new Phrases(Locale.ENGLISH));
    int compared = 0;
    for (Circuit circuit : vehicle.circuits()) {
      for (LoopView.Stair stair :
          loops.loop(circuit.id()).map(LoopView::stairs).orElse(java.util.List.of())) {
        Check check =
            Check.measure(
                CheckKind.VOLTS, stair.point(), vehicle.groundedPost(), circuit.onSetting());
        double[] expected = whole.band(check);
        double[] found = live.band(check);
        for (int i = 0; i < 2; i++) {
          assertThat(found[i])
              .as("%s %s", circuit.id(), check)
              .isCloseTo(expected[i], within(LEAK));
        }
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(20);
  }
}
