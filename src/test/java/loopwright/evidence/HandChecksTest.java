package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Workbench;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.knowledge.Context;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import org.junit.jupiter.api.Test;

/**
 * Checks in which hands do something, asked of the demo pumper with known failures: what they
 * predict against what the simulated vehicle shows, and what the rules make of them in a play.
 */
class HandChecksTest {
  private static final Vehicle PUMPER = Bench.vehicle("pumper");
  private static final Network NETWORK = Bench.network(PUMPER);

  private static Diagnosis open(ComplaintKind kind, String circuit) {
    Circuit c = PUMPER.circuit(circuit).orElseThrow();
    Complaint complaint = new Complaint(kind, circuit, c.loads().get(0), c.onSetting());
    Workbench bench =
        new Workbench(NETWORK, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("basic").orElseThrow());
    return Diagnosis.open(bench, Bench.rules(), complaint, Context.IN_SERVICE, Step.SILENT);
  }

  private static HiddenTruth truth(String part, String mode, double ohms, Setting on) {
    Failure failure =
        Failure.of(NETWORK, PUMPER.requirePart(part), Bench.KNOWLEDGE.faults()).stream()
            .filter(f -> f.name().equals(mode))
            .findFirst()
            .orElseThrow();
    HiddenTruth truth =
        new HiddenTruth(
            NETWORK,
            List.of(failure),
            ohms > 0 ? Map.of(failure, ohms) : Map.of(),
            Bench.KNOWLEDGE.meter("basic").orElseThrow(),
            HiddenTruth.Draw.TYPICAL,
            1);
    truth.run(on);
    return truth;
  }

  private static Check candidate(Diagnosis diagnosis, String id) {
    return diagnosis.candidates().stream()
        .filter(c -> c.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new AssertionError(id + " is not among " + ids(diagnosis)));
  }

  private static List<String> ids(Diagnosis diagnosis) {
    return diagnosis.candidates().stream().map(Check::id).toList();
  }

  private static Reading.Value measured(Diagnosis diagnosis, HiddenTruth truth, Check check) {
    return Plays.measure(PUMPER, truth, diagnosis.complaint().load(), check);
  }

  private static Seen seen(Diagnosis diagnosis, HiddenTruth truth, String id) {
    return ((Reading.Value.Sight) measured(diagnosis, truth, candidate(diagnosis, id))).seen();
  }

  private static double number(Reading.Value value) {
    return ((Reading.Value.Number) value).value();
  }

  @Test
  void theLampInTheFusesPlaceBurnsForAShortAndGoesOutWhereThatIsUnplugged() {
    try (Diagnosis diagnosis = open(ComplaintKind.BLOWS_FUSE, "tail")) {
      HiddenTruth shorted = truth("W50", "short-to-ground", 0.05, diagnosis.complaint().on());
      String loadsOut = "lamp-for-fuse F10 S1=side -L7,-L8";
      assertThat(seen(diagnosis, shorted, loadsOut)).isEqualTo(Seen.ON);
      assertThat(seen(diagnosis, shorted, "lamp-for-fuse F10 S1=side -C1,-L7,-L8"))
          .isEqualTo(Seen.OFF);
      assertThat(seen(diagnosis, shorted, "lamp-for-fuse F10")).isEqualTo(Seen.OFF);
      HiddenTruth mild = truth("W50", "short-to-ground", 1, diagnosis.complaint().on());
      assertThat(seen(diagnosis, mild, loadsOut)).isIn(Seen.ON, Seen.DIM);
      assertThat(diagnosis.healthySight(candidate(diagnosis, loadsOut))).isEqualTo(Seen.OFF);
    }
  }

  @Test
  void noSecondFuseGoesInBeforeTheShortTest() {
    try (Diagnosis diagnosis = open(ComplaintKind.BLOWS_FUSE, "tail")) {
      HiddenTruth shorted = truth("W50", "short-to-ground", 0.05, diagnosis.complaint().on());
      Check second = candidate(diagnosis, "swap F10 S1=side");
      List<Reading> readings = new ArrayList<>();
      Optional<Check> last = Optional.empty();
      boolean lamp = false;
      for (int n = 0; n < 12; n++) {
        Findings findings =
            diagnosis.findings(
                readings, new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of(), last));
        assertThat(findings.ranked()).noneMatch(p -> p.check().equals(second));
        assertThat(findings.conclusions())
            .anyMatch(c -> c instanceof Conclusion.ForbiddenBy f && f.check().equals(second.id()));
        if (findings.ranked().isEmpty() || findings.ranked().get(0).bits() < 1e-4) {
          break;
        }
        Check check = findings.ranked().get(0).check();
        lamp |= check.kind() == CheckKind.LAMP_FOR_FUSE;
        readings.add(new Reading(n + 1, check, measured(diagnosis, shorted, check)));
        last = Optional.of(check);
      }
      assertThat(lamp).as("the short is looked for with a lamp").isTrue();
      // Mended: dark with all of the circuit on, and only then a fuse may go in.
      Check whole = candidate(diagnosis, "lamp-for-fuse F10 S1=side -L7,-L8");
      Findings dark =
          diagnosis.findings(
              List.of(new Reading(1, whole, new Reading.Value.Sight(Seen.OFF))),
              Diagnosis.Circumstances.NONE);
      assertThat(dark.conclusions())
          .noneMatch(c -> c instanceof Conclusion.ForbiddenBy f && f.check().equals(second.id()));
    }
  }

  @Test
  void aBulbInTheHandShowsItsColdOhmsAndNothingOfItsSocket() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, "beacon")) {
      Setting on = diagnosis.complaint().on();
      Check hand = candidate(diagnosis, "ohms L5.in>L5.out -L5");
      double[] healthy = diagnosis.healthyBand(hand);
      HiddenTruth socket = truth("L5", "high-resistance", 5000, on);
      double ohms = number(measured(diagnosis, socket, hand));
      assertThat(ohms).isBetween(healthy[0], healthy[1]);
      HiddenTruth burnt = truth("L5", "burnt-out", 0, on);
      assertThat(measured(diagnosis, burnt, hand)).isInstanceOf(Reading.Value.OverRange.class);
      Findings findings =
          diagnosis.findings(
              List.of(new Reading(1, hand, new Reading.Value.Number(ohms, 0.1))),
              Diagnosis.Circumstances.NONE);
      assertThat(findings.conclusions())
          .anyMatch(
              c ->
                  c instanceof Conclusion.ClearedBy by
                      && by.suspect().equals(new SuspectId("L5", "burnt-out")))
          .noneMatch(
              c ->
                  c instanceof Conclusion.ClearedBy by
                      && by.suspect().equals(new SuspectId("L5", "high-resistance")));
    }
  }

  @Test
  void aDiodeInTheHandConductsOneWay() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, "starter")) {
      Setting on = diagnosis.complaint().on();
      Check forward = candidate(diagnosis, "diode D1.anode>D1.cathode -D1");
      Check back = candidate(diagnosis, "diode D1.cathode>D1.anode -D1");
      // 0.45 to 0.75 V at a milliampere: reference/physical.csv.
      HiddenTruth good = truth("W1", "high-resistance", 0.03, on);
      assertThat(number(measured(diagnosis, good, forward))).isBetween(0.45, 0.75);
      assertThat(measured(diagnosis, good, back)).isInstanceOf(Reading.Value.OverRange.class);
      HiddenTruth backwards = truth("D1", "diode-backwards", 0, on);
      assertThat(measured(diagnosis, backwards, forward))
          .isInstanceOf(Reading.Value.OverRange.class);
      assertThat(number(measured(diagnosis, backwards, back))).isBetween(0.45, 0.75);
      HiddenTruth shorted = truth("D1", "diode-shorted", 0, on);
      assertThat(number(measured(diagnosis, shorted, back))).isLessThan(0.05);
      double before = belief(diagnosis, List.of(), "D1");
      double after =
          belief(diagnosis, List.of(new Reading(1, forward, new Reading.Value.OverRange())), "D1");
      assertThat(after).isGreaterThan(5 * before);
    }
  }

  private static double belief(Diagnosis diagnosis, List<Reading> readings, String part) {
    return diagnosis.findings(readings, Diagnosis.Circumstances.NONE).parts().stream()
        .filter(p -> p.part().equals(part))
        .mapToDouble(Findings.PartBelief::belief)
        .sum();
  }

  /** A dead bulb on the bench says that what hung on it before is sound, one failure at a time. */
  @Test
  void aBurntOutBulbInTheHandRulesOutWhatIsNotInTheHand() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, "beacon")) {
      Check hand = candidate(diagnosis, "ohms L5.in>L5.out -L5");
      HiddenTruth burnt = truth("L5", "burnt-out", 0, diagnosis.complaint().on());
      Findings findings =
          diagnosis.findings(
              List.of(new Reading(1, hand, measured(diagnosis, burnt, hand))),
              Diagnosis.Circumstances.NONE);
      // The fuse, by far the commonest, stays in view: one reading may be a slip.
      assertThat(findings.cleared()).containsKeys("G4", "S5").doesNotContainKey("L5");
    }
  }

  /**
   * A bigger lamp that blows its fuse only at the end of its spread: the open fuse speaks for it.
   */
  @Test
  void anOpenFuseInTheHandNeverClearsWhatMayHaveBlownIt() {
    Vehicle tractor = Bench.vehicle("tractor");
    Circuit circuit = tractor.circuit("head").orElseThrow();
    Complaint complaint =
        new Complaint(
            ComplaintKind.DEAD, circuit.id(), circuit.loads().get(0), circuit.onSetting());
    try (Diagnosis diagnosis =
        Diagnosis.open(
            new Workbench(
                Bench.network(tractor),
                Bench.KNOWLEDGE,
                Bench.KNOWLEDGE.meter("basic").orElseThrow()),
            Bench.rules(),
            complaint,
            Context.IN_SERVICE,
            Step.SILENT)) {
      Check hand = candidate(diagnosis, "ohms F1.feed>F1.load -F1");
      Findings findings =
          diagnosis.findings(
              List.of(new Reading(1, hand, new Reading.Value.OverRange())),
              Diagnosis.Circumstances.NONE);
      SuspectId large = new SuspectId("L2", "wrong-lamp-large");
      assertThat(diagnosis.titles()).containsKey(large);
      assertThat(
              findings.conclusions().stream()
                  .filter(c -> c instanceof Conclusion.ClearedBy by && by.suspect().equals(large)))
          .isEmpty();
    }
  }

  @Test
  void aTwinCuresWhatIsInThePartAndNotWhatStaysInItsSeat() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, "beacon")) {
      Setting on = diagnosis.complaint().on();
      assertThat(seen(diagnosis, truth("F3", "blown", 0, on), "swap F3 KEY=on,S5=on"))
          .isEqualTo(Seen.ON);
      assertThat(seen(diagnosis, truth("F3", "high-resistance", 5000, on), "swap F3 KEY=on,S5=on"))
          .isEqualTo(Seen.OFF);
      // The first twin of the same rating that isn't suspected itself.
      assertThat(diagnosis.twin("F3")).contains("F10");
      Check swap = candidate(diagnosis, "swap F3 KEY=on,S5=on");
      assertThat(
              belief(
                  diagnosis, List.of(new Reading(1, swap, new Reading.Value.Sight(Seen.ON))), "F3"))
          .isGreaterThan(0.5);
    }
  }

  @Test
  void movingALooseJointShowsAndNothingIsClearedByIt() {
    try (Diagnosis diagnosis = open(ComplaintKind.WORKS_SOMETIMES, "beacon")) {
      Setting on = diagnosis.complaint().on();
      Check move = candidate(diagnosis, "wiggle G4 KEY=on,S5=on");
      HiddenTruth loose = truth("G4", "on-paint", 1200, on);
      assertThat(measured(diagnosis, loose, move)).isEqualTo(new Reading.Value.Sight(Seen.CHANGES));
      HiddenTruth elsewhere = truth("W8", "open", 0, on);
      assertThat(measured(diagnosis, elsewhere, move))
          .isEqualTo(new Reading.Value.Sight(Seen.STEADY));
      double before = belief(diagnosis, List.of(), "G4");
      Reading changes = new Reading(1, move, new Reading.Value.Sight(Seen.CHANGES));
      Reading steady = new Reading(1, move, new Reading.Value.Sight(Seen.STEADY));
      assertThat(belief(diagnosis, List.of(changes), "G4")).isGreaterThan(3 * before);
      assertThat(belief(diagnosis, List.of(steady), "G4")).isLessThan(before);
      assertThat(diagnosis.findings(List.of(steady), Diagnosis.Circumstances.NONE).cleared())
          .isEmpty();
    }
  }

  @Test
  void theLampInTheGroundedLeadGoesOutWithTheFuseThatTheDrainIsBehind() {
    try (Diagnosis diagnosis = open(ComplaintKind.DRAINS_BATTERY, "floods")) {
      List<String> lamps =
          ids(diagnosis).stream().filter(id -> id.startsWith("unplug-and-look BATT")).toList();
      assertThat(lamps).contains("unplug-and-look BATT").hasSizeGreaterThan(2);
      // The main relay welded: everything that needs the key only is on at rest.
      HiddenTruth welded = truth("KM", "stuck-closed", 0, Setting.REST);
      assertThat(seen(diagnosis, welded, "unplug-and-look BATT")).isNotEqualTo(Seen.OFF);
      assertThat(seen(diagnosis, welded, "unplug-and-look BATT -FL1")).isEqualTo(Seen.OFF);
      HiddenTruth sound = truth("W40", "open", 0, Setting.REST);
      assertThat(seen(diagnosis, sound, "unplug-and-look BATT")).isEqualTo(Seen.OFF);
      double before = belief(diagnosis, List.of(), "KM");
      Check whole = candidate(diagnosis, "unplug-and-look BATT");
      assertThat(
              belief(
                  diagnosis,
                  List.of(new Reading(1, whole, new Reading.Value.Sight(Seen.ON))),
                  "KM"))
          .isGreaterThan(before);
    }
  }

  @Test
  void whatIsWokenIsWatchedWhileOtherThingsAreUnplugged() {
    try (Diagnosis diagnosis = open(ComplaintKind.WAKES_OTHER, "starter-clutch")) {
      List<String> unplugged =
          ids(diagnosis).stream().filter(id -> id.startsWith("unplug-and-look")).toList();
      assertThat(unplugged).isNotEmpty();
      LoadRef watched =
          LoadRef.parse(candidate(diagnosis, unplugged.get(0)).subject().orElseThrow());
      assertThat(watched).isNotEqualTo(diagnosis.complaint().load());
    }
  }

  @Test
  void aDropAcrossAFuseSaysWhatFlows() {
    try (Diagnosis diagnosis = open(ComplaintKind.DIM, "floods")) {
      Check drop =
          diagnosis.candidates().stream()
              .filter(c -> c.red().filter(r -> r.toString().equals("F5.feed")).isPresent())
              .filter(c -> c.black().filter(b -> b.toString().equals("F5.load")).isPresent())
              .filter(c -> c.kind() == CheckKind.MILLIVOLTS)
              .findFirst()
              .orElseThrow();
      HiddenTruth truth = truth("K3", "worn-contact:contact:87", 0.03, drop.setting());
      Reading reading = new Reading(1, drop, measured(diagnosis, truth, drop));
      int link = NETWORK.element("F5", "link").orElseThrow();
      double amps = Math.abs(truth.point(drop.setting()).amps(link));
      double[] said = diagnosis.fuseAmps(reading).orElseThrow();
      assertThat(amps).isBetween(said[0], said[1]);
      assertThat(said[1] / said[0]).isLessThan(4);
    }
  }
}
