package loopwright.diagnosis;

import static loopwright.diagnosis.Findings.Status.ISOLATED;
import static loopwright.diagnosis.Findings.Status.SEARCHING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import org.junit.jupiter.api.Test;

/**
 * Two failures at once: when they are weighed, which are believed, and that order changes nothing.
 */
class PairsTest {
  private static final Vehicle VEHICLE = Bench.vehicle("motorcycle");
  private static final Network NETWORK = Bench.network(VEHICLE);
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();
  private static final Setting ON = Setting.of(Map.of("KEY", "on", "S6", "neutral"));
  private static final Complaint NO_NEUTRAL_LAMP =
      new Complaint(ComplaintKind.DEAD, "neutral-lamp", LoadRef.parse("L3"), ON);

  private final Workbench bench = new Workbench(NETWORK, Bench.KNOWLEDGE, METER);
  private final Predictor predictor = new Predictor(bench, Optional.of(NO_NEUTRAL_LAMP.load()));

  private static Diagnosis open(Context context) {
    return Diagnosis.open(
        new Workbench(NETWORK, Bench.KNOWLEDGE, METER),
        Bench.rules(),
        NO_NEUTRAL_LAMP,
        context,
        Step.SILENT);
  }

  private static TerminalRef at(String point) {
    String[] names = point.split("\\.");
    return new TerminalRef(names[0], names[1]);
  }

  private static Check volts(String point) {
    return Check.measure(CheckKind.VOLTS, at(point), VEHICLE.groundedPost(), ON);
  }

  private static final Check LAMP_IN_HAND =
      Check.measure(CheckKind.OHMS, at("L3.in"), at("L3.out"), Setting.REST.without("L3"));

  private Hypothesis single(String part, String mode) {
    return bench
        .singles(VEHICLE.requirePart(part), Context.IN_SERVICE, ON, v -> false, h -> true)
        .stream()
        .filter(h -> h.suspect().mode().equals(mode))
        .findFirst()
        .orElseThrow();
  }

  private Reading number(int id, Check check, double value) {
    return new Reading(id, check, new Reading.Value.Number(value, 0.01));
  }

  /** No feed behind the fuse, and a lamp that is burnt out besides: neither explains both. */
  private List<Reading> fuseAndLamp() {
    return List.of(
        number(1, volts("F3.feed"), 12.58),
        number(2, volts("F3.load"), 0),
        new Reading(3, LAMP_IN_HAND, new Reading.Value.OverRange()));
  }

  private static Findings findings(Diagnosis diagnosis, List<Reading> readings) {
    return diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
  }

  @Test
  void twoFailuresThatNoSingleOneExplainsAreBelievedAndBothNamed() {
    try (Diagnosis diagnosis = open(Context.IN_SERVICE)) {
      Findings first = findings(diagnosis, fuseAndLamp().subList(0, 2));
      assertThat(first.together()).as("one failure explains these").isEmpty();
      assertThat(first.parts().get(0).part()).isEqualTo("F3");

      Findings both = findings(diagnosis, fuseAndLamp());
      assertThat(both.together().get(0).parts()).containsExactly("F3", "L3");
      assertThat(both.together().get(0).belief()).isGreaterThan(0.5);
      assertThat(both.parts().subList(0, 2))
          .extracting(Findings.PartBelief::part)
          .containsExactlyInAnyOrder("F3", "L3");
      assertThat(both.parts().get(1).belief())
          .as("belief in a pair counts for both")
          .isGreaterThanOrEqualTo(both.together().get(0).belief() - 1e-9);
      assertThat(both.cleared()).doesNotContainKeys("F3", "L3");
      assertThat(both.status()).as("one reading may be a slip").isEqualTo(SEARCHING);

      List<Reading> again = new ArrayList<>(fuseAndLamp());
      again.add(new Reading(4, LAMP_IN_HAND, new Reading.Value.OverRange()));
      Findings sure = findings(diagnosis, again);
      assertThat(sure.status()).isEqualTo(ISOLATED);
      assertThat(sure.group()).contains("L3");
      assertThat(sure.together().get(0).parts()).containsExactly("F3", "L3");
      assertThat(sure.together().get(0).belief()).isGreaterThan(0.8);
    }
  }

  @Test
  void aFreshBuildWeighsPairsFromTheFirstReadingOn() {
    List<Reading> one = List.of(number(1, volts("F3.load"), 0));
    try (Diagnosis fresh = open(Context.FRESH_BUILD);
        Diagnosis used = open(Context.IN_SERVICE)) {
      assertThat(findings(fresh, one).together()).isNotEmpty();
      assertThat(findings(used, one).together()).isEmpty();
    }
  }

  @Test
  void readingsInAnotherOrderAndOnesTakenBackLeaveNoTrace() {
    try (Diagnosis diagnosis = open(Context.IN_SERVICE);
        Diagnosis other = open(Context.IN_SERVICE)) {
      List<Reading> readings = new ArrayList<>(fuseAndLamp());
      readings.add(number(4, volts("F1.load"), 12.57));
      String wanted = told(findings(diagnosis, readings));
      Random random = new Random(4);
      for (int n = 0; n < 3; n++) {
        Collections.shuffle(readings, random);
        assertThat(told(findings(other, readings))).isEqualTo(wanted);
        findings(other, List.of(number(9, volts("F3.load"), 7.3), number(8, volts("L3.in"), 3)));
      }
      String alone = told(findings(diagnosis, readings.subList(0, 1)));
      findings(other, readings);
      assertThat(told(findings(other, readings.subList(0, 1)))).isEqualTo(alone);
    }
  }

  private static String told(Findings f) {
    StringBuilder text = new StringBuilder(f.status() + " " + f.group());
    f.parts().stream()
        .filter(p -> p.belief() > 1e-6)
        .forEach(p -> text.append(String.format(Locale.ROOT, " %s %.6f", p.part(), p.belief())));
    f.together()
        .forEach(p -> text.append(String.format(Locale.ROOT, " %s %.6f", p.parts(), p.belief())));
    f.ranked().stream().limit(5).forEach(p -> text.append(' ').append(p.check().id()));
    return text.toString();
  }

  /** Two resistances in one loop: each moves the reading by its own range, apart from the other. */
  @Test
  void eachFailureOfAPairHasItsOwnRange() {
    Hypothesis lamp = single("L3", "high-resistance");
    Hypothesis ground = single("G2", "on-paint");
    Hypothesis pair = bench.pair(lamp, ground);
    double[] loads = predictor.factors(pair, volts("L3.out")).loads();
    int n = loads.length;
    assertThat(Math.abs(loads[n - 2])).as("lamp's").isGreaterThan(0.01);
    assertThat(Math.abs(loads[n - 1])).as("ground's").isGreaterThan(0.01);
    assertThat(loads[n - 2] * loads[n - 1]).as("one up, the other down").isNegative();
    double[] other = predictor.factors(bench.pair(ground, lamp), volts("L3.out")).loads();
    assertThat(other[n - 2]).isEqualTo(loads[n - 1], within(1e-6));
    assertThat(other[n - 1]).isEqualTo(loads[n - 2], within(1e-6));
  }

  @Test
  void ofAPairOnlyTheFailureOfThePartInTheHandShowsThere() {
    Hypothesis lamp = single("L3", "high-resistance");
    Hypothesis fuse = single("F3", "missing");
    for (Hypothesis pair : List.of(bench.pair(lamp, fuse), bench.pair(fuse, lamp))) {
      Predictor.Factors both = predictor.factors(pair, LAMP_IN_HAND);
      Predictor.Factors alone = predictor.factors(lamp, LAMP_IN_HAND);
      assertThat(both.mean()).isEqualTo(alone.mean(), within(1e-9));
      int at = alone.loads().length - (pair.members().get(0) == lamp ? 2 : 1);
      assertThat(both.loads()[at])
          .as("its range is that which it has elsewhere in the pair")
          .isEqualTo(alone.loads()[alone.loads().length - 2], within(1e-9));
    }
  }
}
