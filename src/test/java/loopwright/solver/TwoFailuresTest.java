package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import loopwright.evidence.Bench;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** Two failures put in one after the other. */
class TwoFailuresTest {
  private static final Vehicle VEHICLE = Bench.vehicle("motorcycle");
  private static final Network NETWORK = Bench.network(VEHICLE);
  private static final Setting ON = Setting.of(Map.of("KEY", "on", "S1", "side", "S6", "neutral"));

  private static Variant badSocket(Variant before, String lamp) {
    Failure failure =
        Failure.of(NETWORK, VEHICLE.requirePart(lamp), Bench.KNOWLEDGE.faults()).stream()
            .filter(f -> f.name().equals("high-resistance"))
            .findFirst()
            .orElseThrow();
    return before.with(failure.changes(before, Spread.exactly(lamp.equals("L3") ? 20 : 400)));
  }

  private static double volts(Variant variant, String lamp) {
    OperatingPoint point =
        Solver.full(NETWORK).solve(variant, ON, Values.typical(variant), History.NONE);
    int filament = NETWORK.element(lamp, "filament").orElseThrow();
    return point.across(filament);
  }

  /** Two bad sockets of lamps on different wires know nothing of each other. */
  @Test
  void eachHasItsOwnPlaceInTheMiddleOfThePartItSplits() {
    Variant healthy = Variant.healthy(NETWORK);
    Variant both = badSocket(badSocket(healthy, "L3"), "L5");
    for (String lamp : new String[] {"L3", "L5"}) {
      double alone = volts(badSocket(healthy, lamp), lamp);
      assertThat(alone).as("the socket takes its share").isLessThan(0.97 * volts(healthy, lamp));
      assertThat(volts(both, lamp)).as(lamp).isEqualTo(alone, within(0.05));
    }
  }
}
