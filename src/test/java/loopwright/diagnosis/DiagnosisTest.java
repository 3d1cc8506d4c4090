package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.evidence.Plays;
import loopwright.knowledge.Context;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;

/** Whole diagnoses of the hand cart, with the fewest rules that it takes. */
class DiagnosisTest {

  private static final Diagnosis.Circumstances NONE = Diagnosis.Circumstances.NONE;

  private static Diagnosis open(ComplaintKind kind) {
    return open(kind, new PlainRules());
  }

  private static Diagnosis open(ComplaintKind kind, PlainRules rules) {
    return Diagnosis.open(
        Cart.bench(), rules, Cart.complaint(kind), Context.IN_SERVICE, Step.SILENT);
  }

  private static HiddenTruth truth(HiddenTruth.Draw draw, String part, String mode, double ohms) {
    var failure = Cart.failure(part, mode);
    return new HiddenTruth(
        Cart.NETWORK, List.of(failure), Map.of(failure, ohms), Cart.METER, draw, 5);
  }

  private static Reading taken(HiddenTruth truth, int id, Check check) {
    return new Reading(id, check, Plays.measure(Cart.VEHICLE, truth, Cart.LAMP, check));
  }

  private static final Check AT_LAMP = Cart.volts("L1.in", Cart.LAMP_ON);
  private static final Check AT_RELAY = Cart.volts("K1.87", Cart.LAMP_ON);
  private static final Check AT_FUSE = Cart.volts("F1.load", Cart.LAMP_ON);
  private static final Check AT_POST = Cart.volts("BAT.pos", Cart.LAMP_ON);

  // ---- how it ends -----------------------------------------------------------------------------

  @Test
  void aSoundLampThatIsSeenToWorkIsHealthy() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      HiddenTruth sound =
          new HiddenTruth(
              Cart.NETWORK, List.of(), Map.of(), Cart.METER, HiddenTruth.Draw.TYPICAL, 1);
      List<Reading> readings =
          List.of(
              taken(sound, 1, Check.look("L1", Cart.LAMP_ON)),
              taken(sound, 2, AT_LAMP),
              taken(sound, 3, AT_POST));
      Findings findings = diagnosis.findings(readings, NONE);
      assertThat(findings.healthy()).isGreaterThan(0.9);
      assertThat(findings.status()).isEqualTo(Findings.Status.HEALTHY);
      assertThat(findings.group()).isEmpty();
      // Without having been seen to work it isn't.
      assertThat(diagnosis.findings(readings.subList(1, 3), NONE).status())
          .isNotEqualTo(Findings.Status.HEALTHY);
    }
  }

  // ---- what always holds ------------------------------------------------------------------------

  private static void addsUp(Findings findings) {
    double sum = findings.unlisted() + findings.healthy();
    double last = 1;
    for (Findings.PartBelief part : findings.parts()) {
      assertThat(part.belief()).isLessThanOrEqualTo(last + 1e-12);
      last = part.belief();
      sum += part.belief();
      double modes = 0;
      double before = 1;
      for (Findings.ModeBelief mode : part.modes()) {
        assertThat(mode.suspect().part()).isEqualTo(part.part());
        assertThat(mode.belief()).isLessThanOrEqualTo(before + 1e-12);
        before = mode.belief();
        modes += mode.belief();
        mode.ohms().ifPresent(o -> assertThat(o.typical()).isBetween(o.low(), o.high()));
      }
      assertThat(modes).isEqualTo(part.belief(), within(1e-9));
      assertThat(findings.cleared()).doesNotContainKey(part.part());
      assertThat(findings.outOfPlay()).doesNotContain(part.part());
    }
    assertThat(sum).as("all belief").isEqualTo(1, within(1e-9));
    List<Findings.Proposal> ranked = findings.ranked();
    assertThat(ranked)
        .isSortedAccordingTo(Comparator.comparingDouble(Findings.Proposal::worth).reversed());
    Set<String> ids = new HashSet<>();
    for (Findings.Proposal p : ranked) {
      assertThat(ids.add(p.check().id() + p.forWhat().map(Check::id))).isTrue();
      assertThat(p.minutes()).isNotNegative();
      assertThat(p.bits()).isNotNegative();
    }
  }

  @Test
  void beliefAddsUpAndChecksAreRankedAfterEachReading() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      HiddenTruth truth = truth(HiddenTruth.Draw.WITHIN, "W8", "open", 0);
      Findings before = diagnosis.findings(List.of(), NONE);
      addsUp(before);
      assertThat(before.status()).isEqualTo(Findings.Status.SEARCHING);
      assertThat(before.cleared()).isEmpty();
      assertThat(before.odd()).isEmpty();
      assertThat(before.atOdds()).isEmpty();
      List<Reading> readings = new ArrayList<>();
      for (Check check : List.of(AT_RELAY, AT_LAMP, AT_POST, AT_FUSE)) {
        readings.add(taken(truth, readings.size() + 1, check));
        Findings findings = diagnosis.findings(readings, NONE);
        addsUp(findings);
        assertThat(findings.odd()).containsOnlyKeys(readings.stream().map(Reading::id).toList());
        assertThat(findings.odd().values()).allSatisfy(c -> assertThat(c).isBetween(0.0, 0.2));
        assertThat(findings.ranked())
            .noneMatch(p -> readings.stream().anyMatch(r -> r.check().equals(p.check())));
      }
      // Full volts at the relay, none at the lamp: the way between, W7, C1 or W8.
      Findings last = diagnosis.findings(readings, NONE);
      double between =
          last.parts().stream()
              .filter(p -> Set.of("W7", "C1", "W8").contains(p.part()))
              .mapToDouble(Findings.PartBelief::belief)
              .sum();
      assertThat(between).isGreaterThan(0.9);
      assertThat(last.cleared().keySet()).contains("BAT", "F1", "G1");
      last.cleared()
          .forEach(
              (part, why) -> {
                assertThat(why).as(part).isNotEmpty();
                why.forEach(
                    c -> {
                      assertThat(c.suspect().part()).isEqualTo(part);
                      assertThat(c.readings()).isNotEmpty();
                    });
              });
    }
  }

  @Test
  void orderOfReadingsAndReadingsTakenBackLeaveNoTrace() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      HiddenTruth truth = truth(HiddenTruth.Draw.WITHIN, "K1", "coil-open", 0);
      List<Reading> readings = new ArrayList<>();
      for (Check check : List.of(AT_POST, AT_RELAY, AT_FUSE)) {
        readings.add(taken(truth, readings.size() + 1, check));
      }
      Findings first = diagnosis.findings(readings, NONE);
      List<Reading> turned = new ArrayList<>(readings);
      Collections.reverse(turned);
      same(diagnosis.findings(turned, NONE), first);
      Findings two = diagnosis.findings(readings.subList(0, 2), NONE);
      same(diagnosis.findings(readings, NONE), first);
      same(diagnosis.findings(readings.subList(0, 2), NONE), two);
    }
  }

  private static void same(Findings one, Findings two) {
    assertThat(one.status()).isEqualTo(two.status());
    assertThat(one.group()).isEqualTo(two.group());
    assertThat(one.cleared()).isEqualTo(two.cleared());
    assertThat(one.conclusions()).containsExactlyInAnyOrderElementsOf(two.conclusions());
    assertThat(one.parts().stream().map(Findings.PartBelief::part))
        .isEqualTo(two.parts().stream().map(Findings.PartBelief::part).toList());
    for (int i = 0; i < one.parts().size(); i++) {
      assertThat(one.parts().get(i).belief()).isEqualTo(two.parts().get(i).belief(), within(1e-12));
    }
    assertThat(one.ranked().stream().map(p -> p.check().id()).toList())
        .isEqualTo(two.ranked().stream().map(p -> p.check().id()).toList());
  }

  @Test
  void onePartOnTheLampsLoopIsInPlayAndOneOffItIsNot() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      assertThat(diagnosis.partsInPlay())
          .contains("BAT", "F1", "S1", "K1", "C1", "L1", "G1", "W4", "W7", "W9", "W13")
          .doesNotContain("F2", "L2", "S2", "BODY");
      Findings findings = diagnosis.findings(List.of(), NONE);
      assertThat(findings.outOfPlay()).contains("F2", "L2", "S2");
      assertThat(diagnosis.suspects()).isGreaterThan(30).isEqualTo(diagnosis.titles().size() + 2);
      assertThat(diagnosis.loop().orElseThrow().pieces().stream().map(Loop.Piece::part))
          .containsExactly("F1", "K1", "W7", "C1", "W8", "L1", "W9", "G1", "W13");
      assertThat(diagnosis.complaint().load()).isEqualTo(Cart.LAMP);
      assertThat(diagnosis.titles().get(new SuspectId("F1", "blown"))).isEqualTo("blown fuse");
    }
  }

  // ---- circumstances ----------------------------------------------------------------------------

  @Test
  void whatIsRefusedOrOutOfReachIsNotProposed() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      List<Findings.Proposal> all = diagnosis.findings(List.of(), NONE).ranked();
      Check refused = all.get(0).check();
      List<Findings.Proposal> without =
          diagnosis
              .findings(
                  List.of(),
                  new Diagnosis.Circumstances(
                      Set.of(), Set.of(refused.id()), Map.of(), Optional.empty()))
              .ranked();
      assertThat(without).noneMatch(p -> p.check().equals(refused));
      assertThat(all).anyMatch(p -> touches(p, "K1.87"));
      List<Findings.Proposal> reach =
          diagnosis
              .findings(
                  List.of(),
                  new Diagnosis.Circumstances(
                      Set.of(Cart.at("K1.87")), Set.of(), Map.of(), Optional.empty()))
              .ranked();
      assertThat(reach).isNotEmpty().noneMatch(p -> touches(p, "K1.87"));
    }
  }

  private static boolean touches(Findings.Proposal p, String terminal) {
    TerminalRef at = Cart.at(terminal);
    return p.check().red().filter(at::equals).isPresent()
        || p.check().black().filter(at::equals).isPresent();
  }

  @Test
  void aWarningIsToldToTheRulesAndEveryBatteryThatIsOnCounts() {
    PlainRules rules = new PlainRules();
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, rules)) {
      diagnosis.findings(List.of(), NONE);
      assertThat(rules.stated(Fact.CaseFact.class)).hasSize(1);
      Fact.CaseFact calm = rules.stated(Fact.CaseFact.class).get(0);
      assertThat(calm.warning()).isEmpty();
      assertThat(calm.systemVolts()).isEqualTo(12);
      assertThat(calm.positiveGround()).isFalse();
      // typical-values.csv: a rested battery has at least 12.2 V.
      assertThat(calm.healthySourceVolts()).isEqualTo(12.2);
      assertThat(rules.stated(Fact.CheckIdea.class)).anyMatch(i -> i.inHand() && !i.powered());
      diagnosis.findings(
          List.of(),
          new Diagnosis.Circumstances(
              Set.of(), Set.of(), Map.of(), Optional.empty(), Set.of(Warning.SMOKE)));
      assertThat(rules.stated(Fact.CaseFact.class))
          .extracting(Fact.CaseFact::warning)
          .containsExactly("smoke");
      // Even what is read on a part in the hand, unless the battery is off.
      assertThat(rules.stated(Fact.CheckIdea.class))
          .filteredOn(Fact.CheckIdea::inHand)
          .allMatch(i -> i.powered() != i.id().contains("-BAT"));
    }
    assertThat(rules.isOpen()).isFalse();
  }

  @Test
  void aPartThatWasReplacedIsLessSuspected() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      double before = belief(diagnosis.findings(List.of(), NONE), "L1");
      Findings after =
          diagnosis.findings(
              List.of(),
              new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of("L1", 0.1), Optional.empty()));
      double now = belief(after, "L1");
      // Odds fall by ten.
      assertThat(now / (1 - now)).isEqualTo(0.1 * before / (1 - before), within(1e-9));
      addsUp(after);
      Findings none =
          diagnosis.findings(
              List.of(),
              new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of("L1", 0.0), Optional.empty()));
      assertThat(belief(none, "L1")).isZero();
    }
  }

  private static double belief(Findings findings, String part) {
    return findings.parts().stream()
        .filter(p -> p.part().equals(part))
        .mapToDouble(Findings.PartBelief::belief)
        .sum();
  }

  @Test
  void openingCanBeGivenUpAndTellsHowFarItIs() {
    List<Double> shares = new ArrayList<>();
    Diagnosis.open(
            Cart.bench(),
            new PlainRules(),
            Cart.complaint(ComplaintKind.DEAD),
            Context.IN_SERVICE,
            s -> shares.add(s))
        .close();
    assertThat(shares).isSorted();
    assertThat(shares.get(0)).isPositive();
    assertThat(shares.get(shares.size() - 1)).isEqualTo(1, within(1e-9));
    // Parts are looked at some at a time, then their points are solved.
    assertThat(shares).anySatisfy(s -> assertThat(s).isEqualTo(0.8, within(1e-9)));
    for (int after : new int[] {0, shares.size() - 1}) {
      AtomicInteger steps = new AtomicInteger();
      assertThatThrownBy(
              () ->
                  Diagnosis.open(
                      Cart.bench(),
                      new PlainRules(),
                      Cart.complaint(ComplaintKind.DEAD),
                      Context.IN_SERVICE,
                      s -> steps.getAndIncrement() < after))
          .isInstanceOf(CancellationException.class);
      assertThat(steps.get()).isEqualTo(after + 1);
    }
  }

  // ---- at odds and doubtful
  // -----------------------------------------------------------------------

  @Test
  void readingsThatNothingExplainsAreAtOdds() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      // 30 V on a 12 V cart, at two points, and minus 9 at a third.
      List<Reading> readings =
          List.of(
              new Reading(1, AT_LAMP, new Reading.Value.Number(30, 0.01)),
              new Reading(2, AT_FUSE, new Reading.Value.Number(-9, 0.01)),
              new Reading(3, AT_RELAY, new Reading.Value.Number(22, 0.01)));
      Findings findings = diagnosis.findings(readings, NONE);
      assertThat(findings.status()).isEqualTo(Findings.Status.CONTRADICTION);
      assertThat(findings.atOdds()).isNotEmpty().isSubsetOf(1, 2, 3);
      assertThat(diagnosis.explained(readings.get(0))).isFalse();
      assertThat(diagnosis.explained(new Reading(4, AT_LAMP, new Reading.Value.Number(0, 0.01))))
          .isTrue();
    }
  }

  @Test
  void oneSlipDoesNotClearTheTrueFailureForGood() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      // The relay's coil is open; once the tip touched nothing at the fuse.
      HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "K1", "coil-open", 0);
      Check atCoil = Cart.volts("K1.86", Cart.LAMP_ON);
      List<Reading> readings =
          List.of(
              taken(truth, 1, AT_POST),
              taken(truth, 2, AT_RELAY),
              taken(truth, 3, atCoil),
              new Reading(4, AT_FUSE, new Reading.Value.Number(0, 0.01)));
      Findings findings = diagnosis.findings(readings, NONE);
      assertThat(belief(findings, "K1")).isGreaterThan(0.05);
      assertThat(findings.odd().get(4)).isGreaterThan(0.5);
    }
  }

  @Test
  void aBeliefWithoutAnyUnhealthyReadingAsksToSeeTheLoadFirst() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      // Full volts across the lamp: it must be burnt out, if it is dark at all.
      HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "L1", "burnt-out", 0);
      Check across =
          Check.measure(CheckKind.VOLTS, Cart.at("L1.in"), Cart.at("L1.out"), Cart.LAMP_ON);
      List<Reading> readings =
          new ArrayList<>(List.of(taken(truth, 1, across), taken(truth, 2, AT_POST)));
      Map<String, Double> healthyOut = Map.of();
      Findings findings =
          diagnosis.findings(
              readings,
              new Diagnosis.Circumstances(Set.of(), Set.of(), healthyOut, Optional.empty()));
      Check look = Check.look("L1", Cart.LAMP_ON);
      if (findings.parts().get(0).belief() >= Diagnosis.SURE) {
        assertThat(findings.status()).isEqualTo(Findings.Status.SEARCHING);
        assertThat(findings.ranked().get(0).check()).isEqualTo(look);
      }
      readings.add(taken(truth, 3, look));
      Findings seen = diagnosis.findings(readings, NONE);
      assertThat(seen.status()).isEqualTo(Findings.Status.ISOLATED);
      assertThat(seen.group()).containsExactly("L1");
    }
  }

  @Test
  void aBlownFuseIsNamedTogetherWithWhatMayHaveBlownIt() {
    PlainRules rules = new PlainRules();
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, rules)) {
      HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "F1", "blown", 0);
      List<Reading> readings =
          List.of(
              taken(truth, 1, AT_POST),
              taken(
                  truth,
                  2,
                  Check.measure(
                      CheckKind.VOLTS, Cart.at("F1.feed"), Cart.at("F1.load"), Cart.LAMP_ON)),
              taken(truth, 3, AT_FUSE));
      Findings findings = diagnosis.findings(readings, NONE);
      List<String> first = findings.parts().stream().map(Findings.PartBelief::part).toList();
      assertThat(first.get(0)).isEqualTo("F1");
      if (findings.status() == Findings.Status.ISOLATED) {
        assertThat(findings.group()).startsWith("F1").hasSizeGreaterThan(1);
      }
      diagnosis.advice(List.of(new SuspectId("F1", "blown")), findings, readings);
      assertThat(rules.stated(Fact.Isolated.class))
          .containsExactly(
              new Fact.Isolated(new SuspectId("F1", "blown"), loopwright.model.PartKind.FUSE));
      // Shorts behind it are still believed in.
      assertThat(rules.stated(Fact.BlownFuse.class))
          .containsExactly(new Fact.BlownFuse("F1", false));
      assertThat(rules.stated(Fact.ReadingFact.class)).hasSize(3);
      Findings none =
          new Findings(
              Findings.Status.ISOLATED,
              List.of(),
              List.of(),
              List.of("F1"),
              1,
              0,
              0,
              Map.of(),
              Set.of(),
              List.of(),
              List.of(),
              Map.of(),
              List.of());
      diagnosis.advice(List.of(new SuspectId("F1", "blown")), none, readings);
      assertThat(rules.stated(Fact.BlownFuse.class))
          .containsExactly(new Fact.BlownFuse("F1", true));
      // A short blows it; an open wire does not.
      diagnosis.advice(List.of(new SuspectId("W8", "short-to-ground")), findings, readings);
      assertThat(rules.stated(Fact.BlownFuse.class))
          .containsExactly(new Fact.BlownFuse("F1", false));
      diagnosis.advice(List.of(new SuspectId("W8", "open")), findings, readings);
      assertThat(rules.stated(Fact.BlownFuse.class)).isEmpty();
    }
  }

  @Test
  void onlyWhatBothRulesAndSolverRuleOutIsCleared() {
    HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "W8", "open", 0);
    SuspectId blown = new SuspectId("F1", "blown");
    SuspectId cut = new SuspectId("W8", "open");
    List<Reading> readings =
        List.of(taken(truth, 1, AT_POST), taken(truth, 2, AT_FUSE), taken(truth, 3, AT_RELAY));
    // Rules that would clear the open wire, which no margin speaks for, and that spare the fuse.
    PlainRules rules =
        new PlainRules("F1/blown")
            .and(new Conclusion.ClearedBy(cut, Set.of(2), "wrong", "x", List.of()))
            .and(new Conclusion.ClearedBy(blown, Set.of(1), "wrong", "x", List.of()));
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, rules)) {
      Findings findings = diagnosis.findings(readings, NONE);
      assertThat(modes(findings)).contains(cut, blown);
      assertThat(rules.stated(Fact.Margin.class))
          .anyMatch(m -> m.suspect().equals(blown) && m.standing() == Fact.Standing.OUT)
          .noneMatch(m -> m.suspect().equals(cut) && m.standing() == Fact.Standing.OUT);
    }
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      assertThat(modes(diagnosis.findings(readings, NONE))).contains(cut).doesNotContain(blown);
    }
  }

  private static Set<SuspectId> modes(Findings findings) {
    Set<SuspectId> modes = new HashSet<>();
    findings.parts().forEach(p -> p.modes().forEach(m -> modes.add(m.suspect())));
    return modes;
  }

  @Test
  void aForbiddenCheckIsNotProposedAndAPreferredOneComesFirst() {
    Check look = Check.look("L2", Cart.TAIL_ON);
    List<Findings.Proposal> usual;
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      usual = diagnosis.findings(List.of(), NONE).ranked();
    }
    Findings.Proposal last = usual.get(usual.size() / 2);
    PlainRules rules =
        new PlainRules()
            .and(new Conclusion.ForbiddenBy(look.id(), "no", "x", List.of()))
            .and(new Conclusion.PreferredBy(last.check().id(), "yes", 10, "x", List.of()))
            .and(new Conclusion.PreferredBy(last.check().id(), "too", 2, "x", List.of()));
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, rules)) {
      List<Findings.Proposal> ranked = diagnosis.findings(List.of(), NONE).ranked();
      assertThat(usual).anyMatch(p -> p.check().equals(look));
      assertThat(ranked).noneMatch(p -> p.check().equals(look));
      double worth =
          ranked.stream()
              .filter(p -> p.check().equals(last.check()))
              .findFirst()
              .orElseThrow()
              .worth();
      assertThat(worth).isEqualTo(20 * last.worth(), within(1e-9));
      // Information over working time and 0.3 minutes of reading what is asked.
      for (Findings.Proposal p : usual) {
        assertThat(p.worth()).isEqualTo(p.bits() / (p.minutes() + 0.3), within(1e-12));
      }
    }
  }

  @Test
  void ohmsComeAfterTheirProofOfNoVolts() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      Findings findings = diagnosis.findings(List.of(), NONE);
      Findings.Proposal proof =
          findings.ranked().stream().filter(p -> p.forWhat().isPresent()).findFirst().orElseThrow();
      Check ohms = proof.forWhat().get();
      assertThat(ohms.kind().drives()).isTrue();
      assertThat(proof.check().kind()).isEqualTo(CheckKind.VOLTS);
      assertThat(proof.check().red()).isEqualTo(ohms.red());
      assertThat(proof.check().black()).isEqualTo(ohms.black());
      assertThat(proof.check().setting()).isEqualTo(ohms.setting());
      assertThat(proof.outcomes()).isEmpty();
      assertThat(proof.minutes())
          .isEqualTo(diagnosis.minutes(ohms, Optional.empty()) + 0.4, within(1e-9));
      Reading dead = new Reading(1, proof.check(), new Reading.Value.Number(0.004, 0.001));
      assertThat(diagnosis.findings(List.of(dead), NONE).ranked())
          .anyMatch(p -> p.check().equals(ohms) && p.forWhat().isEmpty());
      Reading live = new Reading(1, proof.check(), new Reading.Value.Number(0.05, 0.001));
      assertThat(diagnosis.findings(List.of(live), NONE).ranked())
          .noneMatch(p -> p.check().equals(ohms));
    }
  }

  @Test
  void aDropAcrossAPartThatCarriesCurrentShowsItGood() {
    PlainRules rules = new PlainRules();
    try (Diagnosis diagnosis = open(ComplaintKind.DIM, rules)) {
      HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "W9", "high-resistance", 3);
      Check drop =
          Check.measure(CheckKind.MILLIVOLTS, Cart.at("G1.lug"), Cart.at("G1.metal"), Cart.LAMP_ON);
      Reading small = taken(truth, 1, drop);
      diagnosis.findings(List.of(small), NONE);
      assertThat(direct(rules)).isEmpty();
      // Once the lamp is seen to glow, or has volts across it, that drop is under current.
      Reading glows =
          new Reading(2, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.DIM));
      diagnosis.findings(List.of(small, glows), NONE);
      assertThat(direct(rules)).isNotEmpty().allMatch(s -> s.part().equals("G1"));
      Reading across =
          taken(
              truth,
              3,
              Check.measure(CheckKind.VOLTS, Cart.at("L1.in"), Cart.at("L1.out"), Cart.LAMP_ON));
      diagnosis.findings(List.of(small, across), NONE);
      assertThat(direct(rules)).isNotEmpty();
      Reading dark =
          new Reading(2, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF));
      diagnosis.findings(List.of(small, dark), NONE);
      assertThat(direct(rules)).isEmpty();
      Reading elsewhere =
          new Reading(2, Check.look("L1", Setting.REST), new Reading.Value.Sight(Seen.ON));
      diagnosis.findings(List.of(small, elsewhere), NONE);
      assertThat(direct(rules)).isEmpty();
    }
  }

  private static Set<SuspectId> direct(PlainRules rules) {
    Set<SuspectId> direct = new HashSet<>();
    rules.stated(Fact.Margin.class).stream()
        .filter(Fact.Margin::direct)
        .forEach(m -> direct.add(m.suspect()));
    return direct;
  }

  @Test
  void theRulesAreToldWhatIsBelieved() {
    PlainRules rules = new PlainRules();
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD, rules)) {
      diagnosis.findings(List.of(), NONE);
      List<Fact.Suspected> suspected = rules.stated(Fact.Suspected.class);
      assertThat(suspected).hasSize(diagnosis.suspects() - 2);
      double sum = suspected.stream().mapToDouble(Fact.Suspected::belief).sum();
      // Each rounded to a percent.
      assertThat(sum).isEqualTo(0.97, within(0.005 * suspected.size()));
      assertThat(suspected).noneMatch(Fact.Suspected::lone);
      assertThat(suspected)
          .allMatch(s -> Math.abs(s.belief() * 100 - Math.round(s.belief() * 100)) < 1e-9);
      assertThat(rules.stated(Fact.Conflict.class)).isEmpty();
      Set<String> pieces = new HashSet<>();
      rules.stated(Fact.Piece.class).forEach(p -> pieces.add(p.id()));
      assertThat(pieces).containsAll(diagnosis.partsInPlay()).contains("L2");
      List<Reading> mad =
          List.of(
              new Reading(1, AT_LAMP, new Reading.Value.Number(30, 0.01)),
              new Reading(2, AT_FUSE, new Reading.Value.Number(-9, 0.01)),
              new Reading(3, AT_RELAY, new Reading.Value.Number(22, 0.01)));
      diagnosis.findings(mad, NONE);
      assertThat(rules.stated(Fact.Conflict.class)).hasSize(1);
      assertThat(rules.stated(Fact.Conflict.class).get(0).readings()).isSubsetOf(1, 2, 3);
    }
  }

  // ---- bands and minutes
  // --------------------------------------------------------------------------

  @Test
  void bandsHoldWhatDrawsShow() {
    try (Diagnosis diagnosis = open(ComplaintKind.DIM)) {
      double[] healthy = diagnosis.healthyBand(AT_LAMP);
      assertThat(healthy[0]).isBetween(11.0, 12.2);
      assertThat(healthy[1]).isBetween(12.6, 13.2);
      for (int seed = 0; seed < 20; seed++) {
        HiddenTruth sound =
            new HiddenTruth(
                Cart.NETWORK, List.of(), Map.of(), Cart.METER, HiddenTruth.Draw.AT_LIMITS, seed);
        Reading r = taken(sound, 1, AT_LAMP);
        assertThat(((Reading.Value.Number) r.value()).value()).isBetween(healthy[0], healthy[1]);
        assertThat(diagnosis.healthyGives(r)).isTrue();
      }
      assertThat(
              diagnosis.healthyGives(
                  new Reading(1, AT_LAMP, new Reading.Value.Number(healthy[0] - 0.3, 0.01))))
          .isFalse();
      SuspectId joint = new SuspectId("W8", "high-resistance");
      double[] band = diagnosis.suspectBand(joint, AT_LAMP).orElseThrow();
      assertThat(band[0]).isLessThan(healthy[0]);
      assertThat(diagnosis.suspectBand(new SuspectId("L2", "burnt-out"), AT_LAMP)).isEmpty();
      assertThat(diagnosis.healthySight(Check.look("L1", Cart.LAMP_ON))).isEqualTo(Seen.ON);
      assertThat(diagnosis.healthySight(Check.look("L1", Setting.REST))).isEqualTo(Seen.OFF);
      assertThat(
              diagnosis.healthyGives(
                  new Reading(
                      1, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF))))
          .isFalse();
      assertThat(
              diagnosis.healthyGives(
                  new Reading(1, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.ON))))
          .isTrue();
    }
  }

  @Test
  void preparingACheckChangesNoAnswerAndCanBeStopped() {
    try (Diagnosis plain = open(ComplaintKind.DEAD);
        Diagnosis prepared = open(ComplaintKind.DEAD)) {
      AtomicInteger asked = new AtomicInteger();
      prepared.prepare(AT_LAMP, List.of(), NONE, () -> asked.incrementAndGet() > 0);
      assertThat(asked.get()).isGreaterThan(3);
      AtomicInteger stopped = new AtomicInteger();
      prepared.prepare(AT_FUSE, List.of(), NONE, () -> stopped.incrementAndGet() < 3);
      assertThat(stopped.get()).isEqualTo(3);
      AtomicInteger look = new AtomicInteger();
      prepared.prepare(
          Check.look("L1", Cart.LAMP_ON), List.of(), NONE, () -> look.incrementAndGet() > 0);
      assertThat(look.get()).isPositive();
      HiddenTruth truth = truth(HiddenTruth.Draw.WITHIN, "W8", "open", 0);
      List<Reading> readings =
          List.of(
              taken(truth, 1, AT_LAMP),
              new Reading(2, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF)));
      same(prepared.findings(readings, NONE), plain.findings(readings, NONE));
    }
  }

  @Test
  void minutesAreThoseOfReachingSettingAndReading() {
    try (Diagnosis diagnosis = open(ComplaintKind.DEAD)) {
      Optional<Check> none = Optional.empty();
      // One control 0.15, reading volts 0.4, L1.in 0.4 and the post 0.1 to reach.
      assertThat(diagnosis.minutes(AT_LAMP, none)).isEqualTo(1.05, within(1e-9));
      // The lead on the post stays; so does the switch.
      assertThat(diagnosis.minutes(AT_RELAY, Optional.of(AT_LAMP))).isEqualTo(0.9, within(1e-9));
      assertThat(diagnosis.minutes(AT_LAMP, Optional.of(AT_LAMP))).isEqualTo(0.4, within(1e-9));
      assertThat(diagnosis.minutes(Check.look("L1", Cart.LAMP_ON), none))
          .isEqualTo(0.35, within(1e-9));
      assertThat(diagnosis.minutes(Check.look("L1", Cart.LAMP_ON), Optional.of(AT_LAMP)))
          .isEqualTo(0.2, within(1e-9));
      // Ohms 0.9; the battery 2 minutes to take off, the lamp 0.5.
      Setting apart = Cart.LAMP_ON.without("BAT").without("L1");
      Check ohms = Check.measure(CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), apart);
      assertThat(diagnosis.minutes(ohms, Optional.of(AT_LAMP)))
          .isEqualTo(2 + 0.5 + 0.9 + 0.7, within(1e-9));
      Check hand =
          Check.measure(
              CheckKind.OHMS, Cart.at("L1.in"), Cart.at("L1.out"), Setting.REST.without("L1"));
      assertThat(diagnosis.minutes(hand, none)).isEqualTo(0.5 + 0.9, within(1e-9));
      // Moving something takes half a minute, a lamp in a fuse's place one, once.
      assertThat(diagnosis.minutes(Check.wiggle("W8", Cart.LAMP_ON), none))
          .isEqualTo(0.15 + 0.2 + 0.5, within(1e-9));
      Check lamp = Check.lampForFuse("F1", Cart.LAMP_ON);
      assertThat(diagnosis.minutes(lamp, none)).isEqualTo(0.15 + 0.2 + 1, within(1e-9));
      assertThat(
              diagnosis.minutes(
                  Check.lampForFuse("F1", Cart.LAMP_ON.without("C1")), Optional.of(lamp)))
          .isEqualTo(0.6 + 0.2, within(1e-9));
      assertThat(
              diagnosis.minutes(
                  Check.unplugAndLook("BAT", Setting.REST.without("F1")),
                  Optional.of(Check.unplugAndLook("BAT", Setting.REST))))
          .isEqualTo(0.3 + 0.2, within(1e-9));
      assertThat(diagnosis.minutes(Check.unplugAndLook("BAT", Setting.REST), none))
          .isEqualTo(0.2 + 1, within(1e-9));
      assertThat(diagnosis.minutes(Check.unplugAndLook("L1", Setting.REST.without("F1")), none))
          .isEqualTo(0.3 + 0.2, within(1e-9));
      // F2 is a fuse of the same rating out of play: there and back, 0.5 and 0.4 each way.
      assertThat(diagnosis.twin("F1")).contains("F2");
      assertThat(diagnosis.twin("K1")).isEmpty();
      assertThat(diagnosis.minutes(Check.swap("F1", Cart.LAMP_ON), none))
          .isEqualTo(0.15 + 0.2 + 1.8, within(1e-9));
      assertThat(diagnosis.minutes(Check.swap("K1", Cart.LAMP_ON), none))
          .isEqualTo(0.15 + 0.2 + 2 + 3, within(1e-9));
    }
  }

  @Test
  void millivoltsAcrossAFuseTellItsCurrent() {
    try (Diagnosis diagnosis = open(ComplaintKind.DIM)) {
      HiddenTruth truth = truth(HiddenTruth.Draw.TYPICAL, "W9", "high-resistance", 2);
      Check across =
          Check.measure(CheckKind.MILLIVOLTS, Cart.at("F1.feed"), Cart.at("F1.load"), Cart.LAMP_ON);
      double[] amps = diagnosis.fuseAmps(taken(truth, 1, across)).orElseThrow();
      double flows =
          Math.abs(truth.run(Cart.LAMP_ON).amps(Cart.NETWORK.element("F1", "link").orElseThrow()));
      assertThat(flows).isBetween(amps[0], amps[1]);
      assertThat(diagnosis.fuseAmps(new Reading(1, AT_LAMP, new Reading.Value.Number(12, 0.01))))
          .isEmpty();
      assertThat(
              diagnosis.fuseAmps(
                  new Reading(
                      1, Check.look("F1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.WHOLE))))
          .isEmpty();
      // A whole volt is no drop of a sound fuse.
      assertThat(diagnosis.fuseAmps(new Reading(1, across, new Reading.Value.Number(1, 0.01))))
          .isEmpty();
      // By hand: so many volts over the ohms of the link, the meter's error off and on.
      var link =
          (loopwright.solver.Element.Link)
              Cart.NETWORK.elements().get(Cart.NETWORK.element("F1", "link").orElseThrow());
      double error = Cart.METER.error(loopwright.meter.MeterFunction.VOLTS_DC, 0.02) + 0.0001 / 2;
      double[] by =
          diagnosis
              .fuseAmps(new Reading(1, across, new Reading.Value.Number(-0.02, 0.0001)))
              .orElseThrow();
      assertThat(by[0]).isEqualTo((0.02 - error) / link.ohms().high(), within(1e-9));
      assertThat(by[1]).isEqualTo((0.02 + error) / link.ohms().low(), within(1e-9));
    }
  }
}
