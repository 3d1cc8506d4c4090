package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** How results are sorted and what they tell, worked out by hand. */
class PlannerTest {

  private final Workbench bench = Cart.bench();
  private final Predictor predictor = new Predictor(bench);
  private final Planner planner = new Planner(predictor, Cart.METER);
  private final Check volts = Cart.volts("L1.in", Cart.LAMP_ON);
  private final Hypothesis fuse = Cart.suspect(bench, "F1", "blown");
  private final Hypothesis lamp = Cart.suspect(bench, "L1", "burnt-out");
  private final Hypothesis relay = Cart.suspect(bench, "K1", "coil-open");

  private static Findings.Outcome outcome(double chance, Map<String, Double> parts) {
    return new Findings.Outcome(0, 1, Optional.empty(), chance, parts);
  }

  @Test
  void aSplitInHalvesTellsOneBit() {
    assertThat(
            Planner.bits(List.of(outcome(0.5, Map.of("A", 1.0)), outcome(0.5, Map.of("B", 1.0)))))
        .isEqualTo(1, within(1e-12));
    // Four equal parts, split two and two.
    assertThat(
            Planner.bits(
                List.of(
                    outcome(0.5, Map.of("A", 0.5, "B", 0.5)),
                    outcome(0.5, Map.of("C", 0.5, "D", 0.5)))))
        .isEqualTo(1, within(1e-12));
    // A quarter against three: H(1/4).
    assertThat(
            Planner.bits(List.of(outcome(0.25, Map.of("A", 1.0)), outcome(0.75, Map.of("B", 1.0)))))
        .isEqualTo(0.8112781, within(1e-6));
    // The same shares either way tell nothing, and neither do no results.
    Map<String, Double> same = Map.of("A", 0.3, "B", 0.7);
    assertThat(Planner.bits(List.of(outcome(0.4, same), outcome(0.6, same))))
        .isEqualTo(0, within(1e-12));
    assertThat(Planner.bits(List.of())).isZero();
    // Only shares count, not whether the chances add up to one.
    assertThat(
            Planner.bits(List.of(outcome(0.2, Map.of("A", 1.0)), outcome(0.2, Map.of("B", 1.0)))))
        .isEqualTo(1, within(1e-12));
    // A part that is surely not concerned adds nothing.
    assertThat(
            Planner.bits(
                List.of(outcome(0.5, Map.of("A", 1.0, "C", 0.0)), outcome(0.5, Map.of("B", 1.0)))))
        .isEqualTo(1, within(1e-12));
  }

  private static Planner.Forecast at(Map<Hypothesis, double[]> values) {
    return (h, check) -> new Prediction.Numeric(values.get(h)[0], values.get(h)[1], 0);
  }

  private static Map<String, Double> shares(Findings.Outcome o) {
    return o.parts().entrySet().stream()
        .filter(e -> e.getValue() > 1e-3)
        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  @Test
  void numbersThatAreFarApartFallIntoResultsOfTheirOwn() {
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            List.of(
                new Planner.Weighted(fuse, 0.5),
                new Planner.Weighted(lamp, 0.3),
                new Planner.Weighted(relay, 0.2)),
            volts,
            at(
                Map.of(
                    fuse,
                    new double[] {0, 0.1},
                    lamp,
                    new double[] {12, 0.1},
                    relay,
                    new double[] {6, 0.1})));
    assertThat(outcomes).hasSize(3);
    assertThat(outcomes.stream().mapToDouble(Findings.Outcome::chance).sum())
        .isEqualTo(1, within(1e-9));
    assertThat(shares(outcomes.get(0))).containsOnlyKeys("F1");
    assertThat(shares(outcomes.get(1))).containsOnlyKeys("K1");
    assertThat(shares(outcomes.get(2))).containsOnlyKeys("L1");
    assertThat(outcomes.get(0).chance()).isEqualTo(0.5, within(1e-6));
    assertThat(outcomes.get(2).chance()).isEqualTo(0.3, within(1e-6));
    // The ends are open, and edges lie half way between what the meter tells apart.
    assertThat(outcomes.get(0).low()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(outcomes.get(0).high()).isEqualTo(3, within(1e-9));
    assertThat(outcomes.get(1).low()).isEqualTo(3, within(1e-9));
    assertThat(outcomes.get(1).high()).isEqualTo(9, within(1e-9));
    assertThat(outcomes.get(2).high()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(Planner.bits(outcomes)).isEqualTo(1.4855, within(1e-3));
  }

  @Test
  void numbersThatTheMeterCannotTellApartAreOneResult() {
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            List.of(new Planner.Weighted(fuse, 0.5), new Planner.Weighted(lamp, 0.5)),
            volts,
            at(Map.of(fuse, new double[] {0, 0.1}, lamp, new double[] {0.5, 0.1})));
    assertThat(outcomes).hasSize(1);
    assertThat(outcomes.get(0).parts()).containsEntry("F1", 0.5).containsEntry("L1", 0.5);
    assertThat(Planner.bits(outcomes)).isEqualTo(0, within(1e-9));
  }

  @Test
  void theUnlistedRestShowsAnythingWithEqualChance() {
    Hypothesis unlisted =
        new Hypothesis(
            SuspectId.UNLISTED,
            List.of(),
            List.of(),
            Optional.empty(),
            bench.healthy().variant(),
            loopwright.solver.History.NONE,
            0.1);
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            List.of(
                new Planner.Weighted(fuse, 0.4),
                new Planner.Weighted(lamp, 0.4),
                new Planner.Weighted(unlisted, 0.2)),
            volts,
            at(Map.of(fuse, new double[] {0, 0.1}, lamp, new double[] {12, 0.1})));
    assertThat(outcomes).hasSize(2);
    for (Findings.Outcome o : outcomes) {
      assertThat(o.chance()).isEqualTo(0.5, within(1e-6));
      assertThat(o.parts().get(SuspectId.NONE)).isEqualTo(0.2, within(1e-6));
    }
  }

  @Test
  void ohmsAreSortedOnALogScaleWithOverRangeAtTheEnd() {
    Check ohms =
        Check.measure(
            CheckKind.OHMS,
            Cart.at("F1.load"),
            Cart.VEHICLE.groundedPost(),
            Cart.LAMP_ON.without("BAT"));
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            List.of(
                new Planner.Weighted(fuse, 0.3),
                new Planner.Weighted(lamp, 0.3),
                new Planner.Weighted(relay, 0.4)),
            ohms,
            at(
                Map.of(
                    fuse,
                    new double[] {0.5, 0.1},
                    lamp,
                    new double[] {500, 20},
                    relay,
                    new double[] {1e9, 1e9})));
    assertThat(outcomes).hasSize(3);
    assertThat(outcomes.get(0).low()).isZero();
    assertThat(outcomes.get(0).high()).isBetween(0.8, 500.0).isEqualTo(outcomes.get(1).low());
    assertThat(outcomes.get(1).high()).isGreaterThan(500);
    assertThat(outcomes.get(2).high()).isInfinite();
    assertThat(shares(outcomes.get(2))).containsOnlyKeys("K1");
    assertThat(outcomes.get(2).chance()).isEqualTo(0.4, within(1e-4));
  }

  @Test
  void aSpreadOfWideNumbersIsCutIntoAFewResultsMore() {
    // Each tells from the next but one, not from the next: cut every six deviations or so.
    List<Planner.Weighted> weighted =
        List.of(
            new Planner.Weighted(fuse, 0.25),
            new Planner.Weighted(lamp, 0.25),
            new Planner.Weighted(relay, 0.25),
            new Planner.Weighted(bench.healthy(), 0.25));
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            weighted,
            volts,
            at(
                Map.of(
                    fuse,
                    new double[] {0, 1},
                    lamp,
                    new double[] {5, 1},
                    relay,
                    new double[] {10, 1},
                    bench.healthy(),
                    new double[] {15, 1})));
    // Lamp is 5 from fuse: not cut. Relay is 10 from fuse, more than 6: cut half way from lamp.
    assertThat(outcomes).hasSize(2);
    assertThat(outcomes.get(0).high()).isEqualTo(7.5, within(1e-9));
  }

  @Test
  void whatIsSeenIsSortedByItsWord() {
    Check look = Check.look("L1", Cart.LAMP_ON);
    List<Findings.Outcome> outcomes =
        planner.outcomes(
            List.of(new Planner.Weighted(lamp, 0.75), new Planner.Weighted(bench.healthy(), 0.25)),
            look,
            at(Map.of()));
    Map<Seen, Findings.Outcome> by =
        outcomes.stream().collect(Collectors.toMap(o -> o.seen().orElseThrow(), o -> o));
    assertThat(by.get(Seen.OFF).chance())
        .isEqualTo(0.75 * (0.98 + 0.02 / 3) + 0.25 * 0.02 / 3, within(1e-9));
    assertThat(by.get(Seen.ON).parts().get(SuspectId.NONE)).isGreaterThan(0.97);
    assertThat(by.get(Seen.OFF).parts().get("L1")).isGreaterThan(0.99);
    assertThat(outcomes.stream().mapToDouble(Findings.Outcome::chance).sum())
        .isEqualTo(1, within(1e-9));
  }

  @Test
  void aQuickForecastTakesInTheMetersErrorAndTheBatterysShare() {
    Prediction.Numeric p = (Prediction.Numeric) predictor.predict(bench.healthy(), volts);
    double error =
        Cart.METER.error(loopwright.meter.MeterFunction.VOLTS_DC, p.mean()) / Math.sqrt(3);
    for (double share : new double[] {0, 0.15, 1}) {
      Prediction.Numeric quick = planner.quick(share).of(bench.healthy(), volts);
      assertThat(quick.mean()).isEqualTo(p.mean());
      assertThat(quick.sd(0))
          .isEqualTo(
              Math.sqrt(p.sd() * p.sd() + Math.pow(p.battery() * share, 2) + error * error),
              within(1e-12));
    }
  }
}
