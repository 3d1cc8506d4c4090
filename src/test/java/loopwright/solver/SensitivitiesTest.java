package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The adjoint's derivatives against central differences of fresh solves, and the resistance seen by
 * the leads against a test current put between them.
 */
class SensitivitiesTest {

  /** Share of a value by which the differences move it. */
  private static final double MOVE = 1e-3;

  @ParameterizedTest
  @MethodSource("loopwright.evidence.Bench#vehicles")
  void derivativesAgreeWithCentralDifferences(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    Random random = new Random(5);
    Solver full = Solver.full(network);
    double worst = 0;
    int compared = 0;
    int skipped = 0;
    for (Circuit circuit : vehicle.circuits()) {
      Setting setting = circuit.onSetting();
      Solver low = Solver.lowRank(network, setting);
      for (Variant variant : List.of(Variant.healthy(network), failed(network, random))) {
        OperatingPoint point = low.solve(variant, setting);
        if (point.ending() == OperatingPoint.Ending.BUZZING) {
          continue;
        }
        int red = random.nextInt(network.nodes() - Network.SPARES);
        int black = random.nextInt(network.nodes() - Network.SPARES + 1) - 1;
        double[][] slopes = point.sensitivities(red, black);
        for (int e = 0; e < variant.size(); e++) {
          for (int k = 0; k < slopes[e].length; k++) {
            double at = point.values().get(e, k);
            // In volts for a whole change of the value: large and small values alike.
            double adjoint = slopes[e][k] * at;
            OperatingPoint up = moved(full, point, e, k, at * (1 + MOVE));
            OperatingPoint down = moved(full, point, e, k, at * (1 - MOVE));
            if (!sameState(point, up) || !sameState(point, down)) {
              skipped++;
              continue;
            }
            double numeric = (up.volts(red, black) - down.volts(red, black)) / (2 * MOVE);
            // Volts are good to about 1e-8, over twice 1e-3. What central differences leave out is
            // of the order of the square of the move.
            double seen =
                Math.min(1e9, point.ohmsSeen(red, Network.REFERENCE))
                    + Math.min(1e9, point.ohmsSeen(black, Network.REFERENCE));
            double allowed = 2e-5 + 1e-9 * seen + 1e-3 * Math.abs(adjoint);
            double off = Math.abs(adjoint - numeric);
            if (seen < 1e5) {
              worst = Math.max(worst, off);
              compared++;
            }
            assertThat(off)
                .as(
                    "%s %s value %d in %s: adjoint %.6g, differences %.6g, sees %.3g",
                    variant.element(e).part(),
                    variant.element(e).role(),
                    k,
                    setting.positions(),
                    adjoint,
                    numeric,
                    seen)
                .isLessThan(allowed);
          }
        }
      }
    }
    System.out.printf(
        "sensitivities, %s: %d compared at stiff points, worst %.2g V per whole change, %d crossed a"
            + " threshold%n",
        name, compared, worst, skipped);
    assertThat(skipped).isLessThan(compared / 20 + 50);
  }

  private static Variant failed(Network network, Random random) {
    List<Part> parts = network.vehicle().parts();
    while (true) {
      List<Failure> failures =
          Failure.of(network, parts.get(random.nextInt(parts.size())), Bench.KNOWLEDGE.faults());
      if (!failures.isEmpty()) {
        Failure failure = failures.get(random.nextInt(failures.size()));
        Spread added = failure.continuum().orElse(Spread.exactly(0));
        return Variant.healthy(network).with(failure.changes(network, added));
      }
    }
  }

  private static OperatingPoint moved(
      Solver solver, OperatingPoint point, int e, int k, double value) {
    Values values = point.values().copy();
    values.set(e, k, value);
    return solver.solve(
        point.variant(), point.setting(), values, point.history(), point.pulledIn());
  }

  private static boolean sameState(OperatingPoint one, OperatingPoint two) {
    if (!one.pulledIn().equals(two.pulledIn())
        || !one.history().blown().equals(two.history().blown())) {
      return false;
    }
    for (int e = 0; e < one.variant().size(); e++) {
      if (one.running(e) != two.running(e)
          || (one.variant().element(e) instanceof Element.Junction
              && one.siemens(e) > 1e-6 != two.siemens(e) > 1e-6)) {
        return false;
      }
    }
    return true;
  }

  @Test
  void ohmsSeenIsWhatATestCurrentMeets() {
    // A milliampere between two nodes moves their volts by the resistance seen, to first order.
    Network network = Bench.network(Bench.vehicle(Bench.vehicles().get(0)));
    Random random = new Random(6);
    double worst = 0;
    int compared = 0;
    for (Circuit circuit : network.vehicle().circuits()) {
      Setting setting = circuit.onSetting();
      Solver low = Solver.lowRank(network, setting);
      Solver full = Solver.full(network);
      Variant healthy = Variant.healthy(network);
      OperatingPoint point = low.solve(healthy, setting);
      for (int pair = 0; pair < 10; pair++) {
        int red = random.nextInt(network.nodes() - Network.SPARES);
        int black = random.nextInt(network.nodes() - Network.SPARES + 1) - 1;
        double seen = point.ohmsSeen(red, black);
        if (red == black || seen > 1e4) {
          continue;
        }
        // A milliampere from a source of 1 kV behind 1 Mohm, and the same turned round.
        double up = with(full, point, red, black, 1000).volts(red, black);
        double down = with(full, point, red, black, -1000).volts(red, black);
        double amps = (2000 - up + down) / 1e6;
        double met = (up - down) / amps;
        worst = Math.max(worst, Math.abs(met / seen - 1));
        compared++;
        // Curvature of a filament over a milliampere, and 1e-8 V of settling over 2 mA.
        assertThat(Math.abs(met - seen))
            .as("%s to %s", network.terminals(red), network.terminals(black))
            .isLessThan(1e-3 * seen + 2e-5);
      }
    }
    System.out.printf(
        "ohms seen: %d pairs, worst share %.2g against a test current%n", compared, worst);
    assertThat(compared).isGreaterThan(60);
  }

  private static OperatingPoint with(
      Solver solver, OperatingPoint point, int red, int black, double volts) {
    Element source =
        new Element.Cell("test", "source", red, black, Spread.exactly(volts), Spread.exactly(1e6));
    Variant loaded = point.variant().with(List.of(new Change.Add(source)));
    return solver.solve(
        loaded,
        point.setting(),
        point.values().extended(loaded),
        point.history(),
        point.pulledIn());
  }
}
