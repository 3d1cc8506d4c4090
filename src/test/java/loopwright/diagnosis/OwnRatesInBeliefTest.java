package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import loopwright.bench.HiddenTruth;
import loopwright.evidence.Bench;
import loopwright.evidence.Plays;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import org.junit.jupiter.api.Test;

/** Rates of one vehicle shift belief by just their factors, and clear nothing. */
class OwnRatesInBeliefTest {
  private static final Map<String, Double> FACTORS =
      Map.of("WIRE/unseated", 2.5, "LAMP/burnt-out", 0.5, "FUSE/high-resistance", 1.6);

  private static final List<Check> CHECKS =
      List.of(
          Cart.volts("K1.87", Cart.LAMP_ON),
          Cart.volts("L1.in", Cart.LAMP_ON),
          Cart.volts("F1.load", Cart.LAMP_ON));

  private static double factor(FaultMode mode) {
    return FACTORS.getOrDefault(mode.kind().name() + "/" + mode.mode(), 1.0);
  }

  private static double factor(SuspectId suspect) {
    return FACTORS.getOrDefault(
        Cart.VEHICLE.requirePart(suspect.part()).kind().name() + "/" + suspect.row(), 1.0);
  }

  private static Diagnosis open(ToDoubleFunction<FaultMode> factor) {
    return Diagnosis.open(
        new Workbench(Cart.NETWORK, Bench.KNOWLEDGE.rated(factor), Cart.METER),
        Bench.rules(),
        Cart.complaint(ComplaintKind.DEAD),
        Context.IN_SERVICE,
        Step.SILENT);
  }

  private static Map<SuspectId, Double> beliefs(Findings findings) {
    Map<SuspectId, Double> beliefs = new TreeMap<>();
    findings.parts().forEach(p -> p.modes().forEach(m -> beliefs.put(m.suspect(), m.belief())));
    return beliefs;
  }

  @Test
  void beliefShiftsByTheFactorsAloneAndNothingIsClearedByThem() {
    var failure = Cart.failure("W8", "open");
    HiddenTruth truth =
        new HiddenTruth(
            Cart.NETWORK,
            List.of(failure),
            Map.of(failure, 0.0),
            Cart.METER,
            HiddenTruth.Draw.WITHIN,
            5);
    List<Reading> readings = new ArrayList<>();
    try (Diagnosis plain = open(mode -> 1);
        Diagnosis own = open(OwnRatesInBeliefTest::factor)) {
      for (int n = 0; n <= CHECKS.size(); n++) {
        Findings before = plain.findings(readings, Diagnosis.Circumstances.NONE);
        Findings after = own.findings(readings, Diagnosis.Circumstances.NONE);
        assertThat(after.cleared().keySet()).isEqualTo(before.cleared().keySet());
        assertThat(after.outOfPlay()).isEqualTo(before.outOfPlay());
        Map<SuspectId, Double> was = beliefs(before);
        Map<SuspectId, Double> is = beliefs(after);
        assertThat(is).containsOnlyKeys(was.keySet());
        double all = 0;
        double listed = 0;
        for (SuspectId suspect : was.keySet()) {
          all += was.get(suspect) * factor(suspect);
          listed += is.get(suspect);
        }
        assertThat(was.size()).isGreaterThan(10);
        for (SuspectId suspect : was.keySet()) {
          assertThat(is.get(suspect) / listed)
              .as(n + " readings, " + suspect)
              .isEqualTo(was.get(suspect) * factor(suspect) / all, within(1e-9));
        }
        if (n < CHECKS.size()) {
          readings.add(
              new Reading(
                  n + 1,
                  CHECKS.get(n),
                  Plays.measure(Cart.VEHICLE, truth, Cart.LAMP, CHECKS.get(n))));
        }
      }
    }
  }
}
