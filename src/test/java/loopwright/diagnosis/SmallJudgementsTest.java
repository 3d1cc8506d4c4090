package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** Brightness, hazards, twins, swaps and the names of checks, each by hand. */
class SmallJudgementsTest {

  // ---- brightness -----------------------------------------------------------------------------

  /** Each answer is given by mistake with a chance of 2 % in all. */
  private static double blurred(double chance) {
    return chance * 0.98 + 0.02 / 3;
  }

  @Test
  void aLoadIsCalledOnDimOrOffByItsShareOfPower() {
    // Off up to 4 %, rising to dim at 25 %; dim up to 70 %, rising to on at 95 %.
    double[][] rows = {
      {0, 0, 0, 1},
      {0.04, 0, 0, 1},
      {0.145, 0, 0.5, 0.5},
      {0.25, 0, 1, 0},
      {0.5, 0, 1, 0},
      {0.70, 0, 1, 0},
      {0.825, 0.5, 0.5, 0},
      {0.95, 1, 0, 0},
      {1.3, 1, 0, 0}
    };
    for (double[] row : rows) {
      Prediction.Sight sight = Brightness.of(List.of(row[0]));
      assertThat(sight.chance(Seen.ON)).as("%s", row[0]).isEqualTo(blurred(row[1]), within(1e-9));
      assertThat(sight.chance(Seen.DIM)).as("%s", row[0]).isEqualTo(blurred(row[2]), within(1e-9));
      assertThat(sight.chance(Seen.OFF)).as("%s", row[0]).isEqualTo(blurred(row[3]), within(1e-9));
      assertThat(sight.chance(Seen.CLICKS)).isZero();
    }
  }

  @Test
  void theTypicalShareCountsTwiceAgainstTheEnds() {
    Prediction.Sight sight = Brightness.of(List.of(1.0, 0.0, 0.5));
    assertThat(sight.chance(Seen.ON)).isEqualTo(blurred(0.5), within(1e-9));
    assertThat(sight.chance(Seen.OFF)).isEqualTo(blurred(0.25), within(1e-9));
    assertThat(sight.chance(Seen.DIM)).isEqualTo(blurred(0.25), within(1e-9));
    assertThat(Brightness.dark(0.039)).isTrue();
    assertThat(Brightness.dark(0.04)).isFalse();
  }

  // ---- hazards --------------------------------------------------------------------------------

  private static Set<String> hazards(String name, PartSpec spec) {
    return Hazards.of(Part.of("X", name, spec));
  }

  @Test
  void hazardsFollowFromKindRatingAndName() {
    PartSpec motor = new PartSpec.Motor(Estimate.of(8), Optional.empty());
    PartSpec starter = new PartSpec.Motor(Estimate.of(51), Optional.empty());
    PartSpec fifty = new PartSpec.Motor(Estimate.of(50), Optional.empty());
    PartSpec body = new PartSpec.Body();
    assertThat(hazards("wiper", motor)).containsExactly("moving");
    assertThat(hazards("winch", fifty)).containsExactly("moving");
    assertThat(hazards("cranker", starter)).containsExactly("starter");
    assertThat(hazards("Starter relay stud", body)).containsExactly("starter");
    assertThat(hazards("fuel sender", body)).containsExactly("fuel");
    assertThat(hazards("petrol tap", body)).containsExactly("fuel");
    assertThat(hazards("float in the tank", body)).containsExactly("fuel");
    assertThat(hazards("alternator", body)).containsExactly("charging");
    assertThat(hazards("generator", body)).containsExactly("charging");
    assertThat(hazards("air bag unit", body)).containsExactly("airbag");
    assertThat(hazards("airbag unit", body)).containsExactly("airbag");
    assertThat(hazards("fan", body)).isEmpty();
    assertThat(hazards("fan", motor)).containsExactly("moving");
    assertThat(hazards("b", new PartSpec.Battery(Optional.empty(), Optional.empty())))
        .containsExactly("battery");
    assertThat(hazards("r", new PartSpec.PlainLoad(PartKind.ELECTRONICS, Estimate.of(1))))
        .containsExactly("electronics");
    assertThat(hazards("h", new PartSpec.PlainLoad(PartKind.HEATER, Estimate.of(1))))
        .containsExactly("hot");
    assertThat(hazards("l", new PartSpec.Lamp(Optional.empty(), Estimate.of(20))))
        .containsExactly("hot");
    assertThat(hazards("l", new PartSpec.Lamp(Optional.empty(), Estimate.of(19.9)))).isEmpty();
    assertThat(
            Hazards.of(
                new Part(
                    "X",
                    "clamp",
                    "",
                    body,
                    Map.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Set.of(),
                    "beside the starter")))
        .containsExactly("starter");
  }

  // ---- twins ----------------------------------------------------------------------------------

  private static Part timed(String id, PartSpec spec, double apart, double swap) {
    return new Part(
        id,
        id,
        "",
        spec,
        Map.of(),
        apart > 0 ? Optional.of(apart) : Optional.empty(),
        swap > 0 ? Optional.of(swap) : Optional.empty(),
        Set.of(),
        "");
  }

  private static Vehicle of(Part... parts) {
    return new Vehicle(
        "v",
        "v",
        12,
        loopwright.model.GroundedPole.NEGATIVE,
        List.of(parts),
        List.of(),
        List.of(),
        "");
  }

  private static PartSpec fuse(double amps) {
    return new PartSpec.Fuse(amps, Optional.empty());
  }

  @Test
  void aTwinIsAFuseOfTheSameAmpsOutOfPlayTheQuickestFirst() {
    Part mine = timed("F1", fuse(10), 0.3, 0.5);
    Vehicle vehicle =
        of(
            mine,
            timed("F2", fuse(10), 0.9, 0.5),
            timed("F3", fuse(10), 0.4, 0.5),
            timed("F4", fuse(15), 0.1, 0.5),
            timed("F5", fuse(10), 0, 0.5));
    Twins twins = new Twins(vehicle);
    assertThat(twins.twin(mine, Set.of()).map(Part::id)).contains("F3");
    assertThat(twins.twin(mine, Set.of("F3")).map(Part::id)).contains("F2");
    assertThat(twins.twin(mine, Set.of("F2", "F3"))).isEmpty();
    // Its own 0.5 and the twin's 0.4 there and back; a spare takes 3 minutes to fetch.
    assertThat(twins.minutes(mine, Set.of())).isEqualTo(1.8, within(1e-9));
    assertThat(twins.minutes(mine, Set.of("F2", "F3"))).isEqualTo(4, within(1e-9));
  }

  @Test
  void onlyWhatIsPluggedInAndQuickIsSwapped() {
    Twins twins = new Twins(of());
    assertThat(twins.swaps(timed("F", fuse(10), 1, 6))).isTrue();
    assertThat(twins.swaps(timed("F", fuse(10), 1, 6.1))).isFalse();
    assertThat(twins.swaps(timed("F", fuse(10), 1, 0))).isFalse();
    assertThat(twins.swaps(timed("B", new PartSpec.Body(), 1, 1))).isFalse();
    assertThat(twins.swaps(timed("L", lamp(21, 12), 1, 1))).isTrue();
    assertThat(twins.swaps(timed("L", dual(5, 21, "tail"), 1, 1))).isTrue();
    assertThat(twins.swaps(timed("K", relay(false, PartSpec.Suppression.NONE, 30), 1, 1))).isTrue();
  }

  private static PartSpec lamp(double watts, double volts) {
    return new PartSpec.Lamp(Optional.of(volts), Estimate.of(watts));
  }

  private static PartSpec dual(double first, double second, String name) {
    return new PartSpec.DualLamp(
        name, Estimate.of(first), "stop", Estimate.of(second), Optional.of(12.0));
  }

  private static PartSpec relay(boolean changeover, PartSpec.Suppression suppression, double amps) {
    return new PartSpec.Relay(
        changeover,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        suppression,
        Optional.of(amps));
  }

  @Test
  void alikeMeansInEveryRating() {
    PartSpec.Suppression none = PartSpec.Suppression.NONE;
    List<List<PartSpec>> unlike =
        List.of(
            List.of(lamp(21, 12), lamp(5, 12)),
            List.of(lamp(21, 12), lamp(21, 24)),
            List.of(dual(5, 21, "tail"), dual(4, 21, "tail")),
            List.of(dual(5, 21, "tail"), dual(5, 18, "tail")),
            List.of(dual(5, 21, "tail"), dual(5, 21, "park")),
            List.of(relay(false, none, 30), relay(true, none, 30)),
            List.of(relay(false, none, 30), relay(false, PartSpec.Suppression.RESISTOR, 30)),
            List.of(relay(false, none, 30), relay(false, none, 40)),
            List.of(fuse(10), fuse(15)),
            List.of(fuse(10), lamp(10, 12)),
            List.of(new PartSpec.Body(), new PartSpec.Body()));
    for (List<PartSpec> pair : unlike) {
      Part one = timed("A", pair.get(0), 1, 1);
      Part two = timed("B", pair.get(1), 1, 1);
      assertThat(new Twins(of(one, two)).twin(one, Set.of())).as("%s", pair).isEmpty();
    }
    for (PartSpec spec :
        List.of(lamp(21, 12), dual(5, 21, "tail"), relay(false, none, 30), fuse(10))) {
      Part one = timed("A", spec, 1, 1);
      Part two = timed("B", spec, 1, 1);
      assertThat(new Twins(of(one, two)).twin(one, Set.of())).as("%s", spec).contains(two);
    }
  }

  // ---- swap or test ---------------------------------------------------------------------------

  private static Findings.Proposal proposal(
      Check check, double minutes, Findings.Outcome... outcomes) {
    return new Findings.Proposal(check, 1, minutes, 1, List.of(outcomes), Optional.empty());
  }

  private static Findings.Outcome outcome(double chance, String part, double share) {
    return new Findings.Outcome(
        0, 1, Optional.empty(), chance, Map.of(part, share, "rest", 1 - share));
  }

  private static final Check SWAP = Check.swap("F1", Setting.REST);
  private static final Check LOOK = Check.look("F1", Setting.REST);

  /** A swap that cures with a chance of one half. */
  private static Findings.Proposal swap(double minutes) {
    return proposal(SWAP, minutes, outcome(0.5, "F1", 1), outcome(0.5, "F1", 0));
  }

  @Test
  void aSwapStaysOnlyWhereNoQuickTestTellsAsMuch() {
    // Common practice: a swap pays while its cost stays below that of testing over the chance.
    Findings.Proposal tells = proposal(LOOK, 1, outcome(0.5, "F1", 1), outcome(0.5, "F1", 0));
    assertThat(SwapChoice.worthwhile(List.of(swap(1.9), tells))).hasSize(2);
    assertThat(SwapChoice.worthwhile(List.of(swap(4), tells))).containsExactly(tells);
    // A test that tells nothing of the part is no rival, nor is another swap.
    Findings.Proposal silent = proposal(LOOK, 1, outcome(0.5, "F1", 0.5), outcome(0.5, "F1", 0.5));
    assertThat(SwapChoice.worthwhile(List.of(swap(4), silent))).hasSize(2);
    assertThat(SwapChoice.worthwhile(List.of(swap(4), swap(0.1)))).hasSize(2);
    // Nor one whose results aren't known.
    assertThat(SwapChoice.worthwhile(List.of(swap(4), proposal(LOOK, 1)))).hasSize(2);
  }

  @Test
  void aTestMustTellFourFifthsOfWhatIsOpen() {
    // 0.98 to 0.02 leaves 0.14 bit of 1: tells 0.86. 0.95 to 0.05 leaves 0.29: tells 0.71.
    Findings.Proposal enough =
        proposal(LOOK, 1, outcome(0.5, "F1", 0.98), outcome(0.5, "F1", 0.02));
    Findings.Proposal less = proposal(LOOK, 1, outcome(0.5, "F1", 0.95), outcome(0.5, "F1", 0.05));
    assertThat(SwapChoice.worthwhile(List.of(swap(4), enough))).containsExactly(enough);
    assertThat(SwapChoice.worthwhile(List.of(swap(4), less))).hasSize(2);
  }

  // ---- checks ---------------------------------------------------------------------------------

  @Test
  void aCheckIsNamedByWhatIsDoneWhereAndHow() {
    assertThat(Cart.volts("L1.in", Cart.LAMP_ON).id()).isEqualTo("volts L1.in>BAT.neg S1=on");
    assertThat(
            Check.measure(
                    CheckKind.OHMS,
                    Cart.at("L1.in"),
                    Cart.at("L1.out"),
                    Cart.LAMP_ON.without("L1").without("BAT"))
                .id())
        .isEqualTo("ohms L1.in>L1.out S1=on -BAT,-L1");
    assertThat(Check.look("L1", Setting.REST).id()).isEqualTo("look L1");
    assertThat(Check.wiggle("W9", Cart.LAMP_ON).id()).isEqualTo("wiggle W9 S1=on");
    assertThat(Check.lampForFuse("F1", Setting.REST.without("L1")).id())
        .isEqualTo("lamp-for-fuse F1 -L1");
  }

  @Test
  void aMeterNeedsTwoPointsAndALookNone() {
    assertThatThrownBy(
            () ->
                new Check(
                    CheckKind.VOLTS,
                    Optional.of(Cart.at("L1.in")),
                    Optional.empty(),
                    Optional.empty(),
                    Setting.REST))
        .hasMessage("volts needs two points");
    assertThatThrownBy(
            () ->
                new Check(
                    CheckKind.LOOK,
                    Optional.of(Cart.at("L1.in")),
                    Optional.of(Cart.at("L1.out")),
                    Optional.of("L1"),
                    Setting.REST))
        .hasMessage("look takes no leads");
    assertThatThrownBy(
            () ->
                new Check(
                    CheckKind.LOOK,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Setting.REST))
        .hasMessage("look needs something to look at");
  }

  @Test
  void onlyOhmsOrDiodeAcrossAPartThatIsOutAreInTheHand() {
    Setting out = Setting.REST.without("L1");
    Check ohms = Check.measure(CheckKind.OHMS, Cart.at("L1.in"), Cart.at("L1.out"), out);
    assertThat(ohms.inHand(Cart.VEHICLE)).isTrue();
    assertThat(ohms.acrossPart()).contains("L1");
    assertThat(ohms.handled()).isEmpty();
    assertThat(
            Check.measure(CheckKind.DIODE, Cart.at("L1.in"), Cart.at("L1.out"), out)
                .inHand(Cart.VEHICLE))
        .isTrue();
    assertThat(
            Check.measure(CheckKind.VOLTS, Cart.at("L1.in"), Cart.at("L1.out"), out)
                .inHand(Cart.VEHICLE))
        .isFalse();
    assertThat(
            Check.measure(CheckKind.OHMS, Cart.at("L1.in"), Cart.at("L1.out"), Setting.REST)
                .inHand(Cart.VEHICLE))
        .isFalse();
    Check apart = Check.measure(CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), out);
    assertThat(apart.inHand(Cart.VEHICLE)).isFalse();
    assertThat(apart.acrossPart()).isEmpty();
  }

  @Test
  void theHandGoesToWhatIsUnpluggedOrLookedAt() {
    assertThat(Check.look("L7:stop", Setting.REST).handled()).contains("L7");
    assertThat(Check.unplugAndLook("L1", Setting.REST.without("C1")).handled()).contains("C1");
    assertThat(Check.unplugAndLook("BAT", Setting.REST).handled()).contains("BAT");
    assertThat(Check.unplugAndLook("BAT", Setting.REST).watchesLead(Cart.VEHICLE)).isTrue();
    assertThat(Check.unplugAndLook("L1", Setting.REST).watchesLead(Cart.VEHICLE)).isFalse();
    assertThat(Check.look("BAT", Setting.REST).watchesLead(Cart.VEHICLE)).isFalse();
    assertThat(Check.look("L1", Setting.REST).acrossPart()).isEmpty();
  }

  @Test
  void kindsOfCheckSayWhatTheyUseAndWhatMayBeSeen() {
    for (CheckKind kind : CheckKind.values()) {
      boolean onTheVehicle = kind.reads() || kind.drives();
      assertThat(kind.metered()).as(kind.word()).isEqualTo(onTheVehicle || kind == CheckKind.DRAIN);
      assertThat(kind.answers().isEmpty()).as(kind.word()).isEqualTo(kind.metered());
    }
    assertThat(CheckKind.VOLTS.reads() && CheckKind.MILLIVOLTS.reads()).isTrue();
    assertThat(CheckKind.OHMS.drives() && CheckKind.DIODE.drives()).isTrue();
    assertThat(CheckKind.OHMS.reads() || CheckKind.VOLTS.drives()).isFalse();
    assertThat(CheckKind.WIGGLE.answers()).containsExactly(Seen.CHANGES, Seen.STEADY);
    assertThat(CheckKind.SWAP.answers()).containsExactly(Seen.ON, Seen.DIM, Seen.OFF);
    assertThat(CheckKind.LOOK.answers()).contains(Seen.CLICKS, Seen.BROKEN);
  }

  @Test
  void suspectsAreOrderedByPartThenMode() {
    SuspectId a = new SuspectId("A", "open");
    assertThat(a).isLessThan(new SuspectId("B", "blown")).isLessThan(new SuspectId("A", "short"));
    assertThat(a.compareTo(new SuspectId("A", "open"))).isZero();
    assertThat(a).hasToString("A/open");
    assertThat(LoadRef.of("L1")).hasToString("L1");
  }

  @Test
  void aNumberKnowsWhatTheBatteryAddsToItsSpread() {
    Prediction.Numeric n = new Prediction.Numeric(12, 0.3, 0.4);
    assertThat(n.sd(1)).isEqualTo(0.5, within(1e-12));
    assertThat(n.sd(0)).isEqualTo(0.3, within(1e-12));
    assertThat(n.sd(0.5)).isEqualTo(Math.hypot(0.3, 0.2), within(1e-12));
  }
}
