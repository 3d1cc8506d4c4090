package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Workbench;
import loopwright.meter.MeterSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A drain read across 1 ohm in the battery's grounded lead: Ohm's law, a millivolt a milliampere.
 */
class DrainTest {
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  private static double volts(HiddenTruth truth, Setting setting) {
    return ((HiddenTruth.Display.Number) truth.drain(setting)).value();
  }

  private static HiddenTruth truth(
      Network network, List<Failure> failures, HiddenTruth.Draw draw, long seed) {
    return new HiddenTruth(network, failures, Map.of(), METER, draw, seed);
  }

  @Test
  void theMillivoltsAreWhatTheBatteryGives() {
    Network network = Bench.network(Bench.vehicle("pumper"));
    HiddenTruth sound = truth(network, List.of(), HiddenTruth.Draw.TYPICAL, 1);
    int cell = network.element(network.vehicle().battery().id(), "cell").orElseThrow();
    double amps = Math.abs(sound.run(Setting.REST).amps(cell));
    assertThat(amps).isGreaterThan(0.01);
    // The resistor itself takes 1 ohm of some 400.
    assertThat(volts(sound, Setting.REST)).isEqualTo(amps, within(0.01 * amps));
  }

  @Test
  void onAPositiveGroundVehicleTheMeterShowsMinus() {
    Vehicle tractor = Bench.vehicle("tractor");
    Network network = Bench.network(tractor);
    Failure leak =
        tractor.parts().stream()
            .flatMap(p -> Failure.of(network, p, Bench.KNOWLEDGE.faults()).stream())
            .filter(f -> drains(network, f))
            .findFirst()
            .orElseThrow();
    HiddenTruth truth = truth(network, List.of(leak), HiddenTruth.Draw.TYPICAL, 1);
    assertThat(volts(truth, Setting.REST)).isLessThan(-0.02);
  }

  private static boolean drains(Network network, Failure failure) {
    int cell = network.element(network.vehicle().battery().id(), "cell").orElseThrow();
    HiddenTruth truth = truth(network, List.of(failure), HiddenTruth.Draw.TYPICAL, 1);
    double amps = Math.abs(truth.run(Setting.REST).amps(cell));
    return amps > 0.05 && amps < 2;
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor", "truck", "pumper"})
  void noSoundVehicleReadsOutsideItsBand(String name) {
    Network network = Bench.network(Bench.vehicle(name));
    TerminalRef post = network.vehicle().groundedPost();
    HealthyBands bands = new HealthyBands(new Workbench(network, Bench.KNOWLEDGE, METER));
    double[] band = bands.band(Check.drain(post, Setting.REST));
    for (int seed = 0; seed < 300; seed++) {
      HiddenTruth.Draw draw = seed % 2 == 0 ? HiddenTruth.Draw.AT_LIMITS : HiddenTruth.Draw.WITHIN;
      double shown = volts(truth(network, List.of(), draw, seed), Setting.REST);
      assertThat(shown).as("seed %d", seed).isBetween(band[0], band[1]);
    }
    // It says something: no wider than what the loads' own spreads make of it.
    assertThat(band[1] - band[0]).isLessThan(0.1);
    assertThat(Check.drain(post, Setting.REST).kind()).isEqualTo(CheckKind.DRAIN);
  }
}
