package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.knowledge.Context;
import loopwright.meter.MeterFunction;
import loopwright.model.Setting;
import org.junit.jupiter.api.Test;

/** What the rules are told of readings and checks of the hand cart, by hand. */
class FactsTest {

  private final Workbench bench = Cart.bench();
  private final CaseFacts facts =
      new CaseFacts(
          bench,
          new Predictor(bench),
          Cart.complaint(ComplaintKind.DEAD),
          Context.AFTER_WORK,
          r -> r.id() != 7);

  private static final Setting APART = Cart.LAMP_ON.without("BAT").without("F1").without("L1");

  private Fact.ReadingFact fact(int id, Check check, Reading.Value value) {
    return (Fact.ReadingFact) facts.readingFacts(List.of(new Reading(id, check, value))).get(0);
  }

  @Test
  void aReadingIsToldWithWhatHealthWouldShow() {
    Check check = Cart.volts("L1.in", Cart.LAMP_ON);
    Fact.ReadingFact f = fact(3, check, new Reading.Value.Number(11.5, 0.01));
    assertThat(f.id()).isEqualTo(3);
    assertThat(f.kind()).isEqualTo(CheckKind.VOLTS);
    assertThat(f.red()).isEqualTo("L1");
    assertThat(f.black()).isEqualTo("BAT");
    assertThat(f.blackIsPost()).isTrue();
    assertThat(f.valueClass()).isEqualTo(Fact.ValueClass.NUMBER);
    assertThat(f.value()).isEqualTo(11.5);
    assertThat(f.error()).isEqualTo(Cart.METER.error(MeterFunction.VOLTS_DC, 11.5));
    assertThat(f.seen()).isNull();
    assertThat(f.powered()).isTrue();
    assertThat(f.healthyLow()).isBetween(11.0, 12.2);
    assertThat(f.healthyHigh()).isBetween(12.6, 12.8);
    // A 21 W lamp of some 13 ohm of slope beside some hundredths of an ohm of feed.
    assertThat(f.sourceOhms()).isBetween(0.02, 0.2);
    assertThat(f.loadOn()).isTrue();
    assertThat(f.explained()).isTrue();
    assertThat(f.whole()).isTrue();
    assertThat(fact(7, check, new Reading.Value.Number(11.5, 0.01)).explained()).isFalse();
  }

  @Test
  void rangesOverRangeAndSightsAreToldAsWhatTheyAre() {
    Check ohms = Check.measure(CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), APART);
    Fact.ReadingFact ol = fact(1, ohms, new Reading.Value.OverRange());
    assertThat(ol.valueClass()).isEqualTo(Fact.ValueClass.OVER_RANGE);
    assertThat(ol.value()).isZero();
    assertThat(ol.powered()).isFalse();
    assertThat(ol.loadOn()).isFalse();
    assertThat(ol.black()).isEqualTo("G1");
    assertThat(ol.blackIsPost()).isFalse();
    double infinite = Double.POSITIVE_INFINITY;
    assertThat(fact(1, ohms, new Reading.Value.Between(2, 6)).value()).isEqualTo(4);
    assertThat(fact(1, ohms, new Reading.Value.Between(2, infinite)).value()).isEqualTo(2);
    assertThat(fact(1, ohms, new Reading.Value.Between(-infinite, 6)).value()).isEqualTo(6);
    Fact.ReadingFact seen =
        fact(1, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF));
    assertThat(seen.valueClass()).isEqualTo(Fact.ValueClass.SEEN);
    assertThat(seen.seen()).isEqualTo(Seen.OFF);
    assertThat(seen.red()).isEqualTo("L1");
    assertThat(seen.black()).isEmpty();
    assertThat(seen.error()).isZero();
    assertThat(seen.sourceOhms()).isZero();
    Fact.ReadingFact pulled =
        fact(
            1,
            Check.unplugAndLook("L1", Setting.REST.without("K1")),
            new Reading.Value.Sight(Seen.OFF));
    assertThat(pulled.red()).isEqualTo("K1");
  }

  @Test
  void theWholeCircuitIsThereOnlyWithItsControlsSetAndNothingButLoadsOut() {
    Reading.Value zero = new Reading.Value.Number(0, 0.01);
    assertThat(fact(1, Cart.volts("L1.in", Setting.REST), zero).whole()).isFalse();
    assertThat(fact(1, Cart.volts("L1.in", Cart.LAMP_ON.without("L1")), zero).whole()).isTrue();
    assertThat(fact(1, Cart.volts("L1.in", Cart.LAMP_ON.without("BAT")), zero).whole()).isTrue();
    assertThat(fact(1, Cart.volts("L1.in", Cart.LAMP_ON.without("C1")), zero).whole()).isFalse();
    assertThat(fact(1, Cart.volts("F1.load", Cart.LAMP_ON.without("F1")), zero).whole()).isTrue();
    assertThat(fact(1, Cart.volts("L1.in", Cart.LAMP_ON.without("F1")), zero).whole()).isFalse();
    assertThat(fact(1, Cart.volts("L1.in", Setting.REST), zero).loadOn()).isFalse();
  }

  private Fact.CheckIdea idea(Check check) {
    return facts.idea(check, Set.of(), false, false);
  }

  @Test
  void aCheckIsToldWithWhatItNeedsAndWhatItCosts() {
    Fact.CheckIdea volts = idea(Cart.volts("L1.in", Cart.LAMP_ON));
    assertThat(volts.id()).isEqualTo("volts L1.in>BAT.neg S1=on");
    assertThat(volts.red()).isEqualTo("L1");
    assertThat(volts.black()).isEqualTo("BAT");
    assertThat(volts.powered()).isTrue();
    assertThat(volts.isolated()).isTrue();
    assertThat(volts.loadOn()).isTrue();
    assertThat(volts.provenDead()).isFalse();
    assertThat(volts.reachable()).isTrue();
    assertThat(volts.minutes()).isEqualTo(0.5, within(1e-9));
    assertThat(volts.cranks()).isFalse();
    assertThat(volts.bridges()).isFalse();
    assertThat(volts.inHand()).isFalse();
    assertThat(idea(Cart.volts("L1.in", Setting.REST)).loadOn()).isFalse();
    assertThat(idea(Cart.volts("C1.1a", Cart.LAMP_ON)).reachable()).isFalse();
    Check check = Cart.volts("L1.in", Cart.LAMP_ON);
    assertThat(facts.idea(check, Set.of(Cart.at("L1.in")), false, false).reachable()).isFalse();
    assertThat(facts.idea(check, Set.of(Cart.at("BAT.neg")), false, false).reachable()).isFalse();
    assertThat(facts.idea(check, Set.of(Cart.at("L1.out")), true, false).reachable()).isTrue();
    assertThat(facts.idea(check, Set.of(), true, false).provenDead()).isTrue();
  }

  @Test
  void ohmsSpeakOfAPieceOnlyWithoutAWayRound() {
    // Battery, fuse and lamp out: the piece of wire between C1's sides is all there is.
    Check wire = Check.measure(CheckKind.OHMS, Cart.at("L1.out"), Cart.at("G1.lug"), APART);
    assertThat(idea(wire).isolated()).isTrue();
    // Through the tail lamp as well as through the switch of it: with S2 on there is a way round.
    Check open = Check.measure(CheckKind.OHMS, Cart.at("F1.load"), Cart.at("BAT.neg"), APART);
    assertThat(idea(open).isolated()).as("some 85 ohm of coil: loose").isTrue();
    Check lamp =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("L1.out"), Setting.REST.without("BAT"));
    assertThat(idea(lamp).isolated()).isTrue();
    assertThat(idea(lamp).powered()).isFalse();
    // From the lamp's feed through it to ground: no single piece lies between the leads.
    Check two =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), Setting.REST.without("BAT"));
    assertThat(idea(two).isolated()).isFalse();
    Check hand =
        Check.measure(
            CheckKind.DIODE, Cart.at("K1.86"), Cart.at("K1.85"), Setting.REST.without("K1"));
    assertThat(idea(hand).isolated()).isTrue();
    assertThat(idea(hand).inHand()).isTrue();
    assertThat(idea(hand).powered()).isFalse();
    assertThat(facts.idea(hand, Set.of(), false, true).powered()).isTrue();
  }

  @Test
  void aLampForAFuseIsOnForTheLoadsThatWouldLightIt() {
    assertThat(idea(Check.lampForFuse("F1", Cart.LAMP_ON)).loadOn()).isTrue();
    assertThat(idea(Check.lampForFuse("F1", Setting.REST)).loadOn()).isFalse();
    assertThat(idea(Check.lampForFuse("F1", Cart.LAMP_ON)).red()).isEqualTo("F1");
  }

  @Test
  void aPartIsToldWithItsNameAndHazards() {
    Fact.Piece piece = (Fact.Piece) facts.piece(Cart.VEHICLE.requirePart("L1"));
    assertThat(piece.id()).isEqualTo("L1");
    assertThat(piece.title()).isEqualTo("work lamp L1");
    assertThat(piece.hazards()).containsExactly("hot");
    Fact.CaseFact whole = (Fact.CaseFact) facts.caseFact("heat");
    assertThat(whole.context()).isEqualTo(Context.AFTER_WORK);
    assertThat(whole.complaint()).isEqualTo(ComplaintKind.DEAD);
    assertThat(whole.warning()).isEqualTo("heat");
  }

  // ---- what causes a complaint
  // -------------------------------------------------------------------

  private double chance(ComplaintKind kind, String part, String mode, int cell) {
    Complaint complaint = Cart.complaint(kind);
    Optional<Loop> loop = Loop.trace(bench, complaint.on(), bench.loadElement(complaint.load()));
    Causes causes = new Causes(bench, new Predictor(bench), complaint, loop);
    return causes.chance(Cart.suspects(bench, part, mode).get(cell));
  }

  private double chance(ComplaintKind kind, String part, String mode) {
    return chance(kind, part, mode, 0);
  }

  @Test
  void aFailureCausesTheComplaintThatItShows() {
    assertThat(chance(ComplaintKind.DEAD, "L1", "burnt-out")).isEqualTo(1, within(1e-9));
    assertThat(chance(ComplaintKind.DIM, "L1", "burnt-out")).isEqualTo(0.05, within(1e-9));
    assertThat(chance(ComplaintKind.WORKS_SOMETIMES, "L1", "burnt-out")).isEqualTo(1, within(1e-9));
    assertThat(chance(ComplaintKind.DEAD, "L2", "burnt-out")).isZero();
    assertThat(chance(ComplaintKind.STUCK_ON, "L1", "burnt-out")).isZero();
    assertThat(chance(ComplaintKind.STUCK_ON, "K1", "stuck-closed")).isGreaterThan(0.9);
    assertThat(chance(ComplaintKind.BLOWS_FUSE, "W8", "short-to-ground")).isEqualTo(1);
    assertThat(chance(ComplaintKind.BLOWS_FUSE, "W8", "open")).isZero();
    // A short behind the other fuse blows one that isn't on this loop.
    assertThat(chance(ComplaintKind.BLOWS_FUSE, "W11", "short-to-feed")).isZero();
    assertThat(chance(ComplaintKind.WAKES_OTHER, "W11", "short-to-neighbour:W8")).isEqualTo(1);
    assertThat(chance(ComplaintKind.WAKES_OTHER, "L1", "burnt-out")).isZero();
    assertThat(chance(ComplaintKind.DRAINS_BATTERY, "K1", "stuck-closed")).isEqualTo(1);
    assertThat(chance(ComplaintKind.DRAINS_BATTERY, "L1", "burnt-out")).isZero();
  }

  @Test
  void aJointDimsALampOrKillsItByItsOhms() {
    List<Hypothesis> cells = Cart.suspects(bench, "W9", "high-resistance");
    assertThat(cells).hasSizeGreaterThan(8);
    double dimFirst = chance(ComplaintKind.DIM, "W9", "high-resistance", 0);
    double deadLast = chance(ComplaintKind.DEAD, "W9", "high-resistance", cells.size() - 1);
    assertThat(dimFirst).isLessThan(0.1);
    assertThat(deadLast).isGreaterThan(0.95);
    // 1 to 3 ohm of 7: a glow.
    double most = 0;
    double last = -1;
    for (int c = 0; c < cells.size(); c++) {
      most = Math.max(most, chance(ComplaintKind.DIM, "W9", "high-resistance", c));
      double dead = chance(ComplaintKind.DEAD, "W9", "high-resistance", c);
      assertThat(dead).isGreaterThanOrEqualTo(last - 1e-9);
      last = dead;
    }
    assertThat(most).isGreaterThan(0.85);
  }

  @Test
  void whatTouchesNeitherLoadNorFuseBearsOnNothing() {
    Complaint complaint = Cart.complaint(ComplaintKind.DEAD);
    Causes causes = new Causes(bench, new Predictor(bench), complaint, Optional.empty());
    assertThat(causes.bearsOn(Cart.suspect(bench, "L2", "burnt-out"))).isFalse();
    assertThat(causes.bearsOn(Cart.suspect(bench, "L1", "wrong-lamp"))).isTrue();
    // A fuse that blows with the lamp on, be it another's, counts.
    assertThat(causes.bearsOn(Cart.suspect(bench, "W8", "short-to-ground"))).isTrue();
    for (ComplaintKind kind :
        List.of(ComplaintKind.DRAINS_BATTERY, ComplaintKind.WAKES_OTHER, ComplaintKind.STUCK_ON)) {
      assertThat(
              new Causes(bench, new Predictor(bench), Cart.complaint(kind), Optional.empty())
                  .bearsOn(Cart.suspect(bench, "L2", "burnt-out")))
          .isTrue();
    }
  }

  // ---- what is put in another's place
  // ------------------------------------------------------------

  private Prediction.Sight sight(Hypothesis h, Check check) {
    return new Substitutions(bench, Optional.of(Cart.LAMP)).sight(h, check);
  }

  @Test
  void aGoodPartInItsPlaceCuresWhatWasInItAndNotWhatStaysBehind() {
    Check swap = Check.swap("L1", Cart.LAMP_ON);
    assertThat(sight(Cart.suspect(bench, "L1", "burnt-out"), swap).chance(Seen.ON))
        .isGreaterThan(0.95);
    assertThat(sight(Cart.suspect(bench, "W8", "open"), swap).chance(Seen.OFF)).isGreaterThan(0.95);
    List<Hypothesis> socket = Cart.suspects(bench, "L1", "high-resistance");
    assertThat(sight(socket.get(socket.size() - 1), swap).chance(Seen.OFF)).isGreaterThan(0.95);
    // A new fuse where a short blew the last one: whole again, and whatever that gives.
    Check fuse = Check.swap("F1", Cart.LAMP_ON);
    assertThat(sight(Cart.suspect(bench, "F1", "blown"), fuse).chance(Seen.ON)).isGreaterThan(0.95);
    assertThat(sight(Cart.suspect(bench, "W8", "short-to-ground"), fuse).chance(Seen.OFF))
        .isGreaterThan(0.95);
  }

  @Test
  void aLampInTheFusesPlaceGlowsBeforeAShortOnly() {
    Setting out = Cart.LAMP_ON.without("L1");
    Substitutions substitutions = new Substitutions(bench, Optional.of(Cart.LAMP));
    Check lamp = Check.lampForFuse("F1", out);
    Hypothesis shorted = Cart.suspect(bench, "W8", "short-to-ground");
    assertThat(sight(bench.healthy(), lamp).chance(Seen.OFF)).isGreaterThan(0.95);
    assertThat(sight(Cart.suspect(bench, "W8", "open"), lamp).chance(Seen.OFF)).isGreaterThan(0.95);
    assertThat(substitutions.lamp(bench.healthy(), "F1", out).get(0)).isLessThan(0.04);
    // The fuse itself is out, so that it had blown doesn't matter.
    assertThat(substitutions.lamp(shorted, "F1", Setting.REST).get(0)).isLessThan(0.04);
    Hypothesis before = Cart.suspect(bench, "W4", "short-to-ground");
    assertThat(before.history().blown().isEmpty()).isFalse();
    assertThat(substitutions.lamp(before, "F1", out).get(0)).isGreaterThan(0.8);
    assertThat(substitutions.lit(before, "F1", out).history().blown().isEmpty()).isTrue();
    assertThat(substitutions.concerns(lamp)).isTrue();
    assertThat(substitutions.concerns(Check.look("L1", out))).isFalse();
    assertThat(substitutions.concerns(Check.unplugAndLook("L1", out))).isFalse();
    assertThat(substitutions.concerns(Check.unplugAndLook("BAT", out))).isTrue();
    assertThat(substitutions.concerns(Check.wiggle("W8", out))).isTrue();
  }

  @Test
  void aLampInTheGroundedLeadGlowsForADrain() {
    Check lead = Check.unplugAndLook("BAT", Setting.REST);
    assertThat(sight(bench.healthy(), lead).chance(Seen.OFF)).isGreaterThan(0.95);
    // A 21 W lamp behind a 5 W one: most volts on the small one.
    assertThat(sight(Cart.suspect(bench, "K1", "stuck-closed"), lead).chance(Seen.OFF))
        .isLessThan(0.1);
    Check pulled = Check.unplugAndLook("BAT", Setting.REST.without("F1"));
    assertThat(sight(Cart.suspect(bench, "K1", "stuck-closed"), pulled).chance(Seen.OFF))
        .isGreaterThan(0.95);
  }

  @Test
  void aLooseJointChangesUnderTheHandAndASoundOneHardlyEver() {
    List<Hypothesis> loose = Cart.suspects(bench, "W9", "high-resistance");
    Hypothesis open = loose.get(loose.size() - 1);
    Check there = Check.wiggle("W9", Cart.LAMP_ON);
    Check elsewhere = Check.wiggle("W8", Cart.LAMP_ON);
    // On and off look alike with a chance of 2 x 0.9867 x 0.0067 + 0.0067^2: 1.3 %.
    double alike = 2 * 0.9866667 * 0.0066667 + 0.0066667 * 0.0066667;
    assertThat(sight(open, there).chance(Seen.CHANGES))
        .isEqualTo(0.03 + 0.6 * (1 - alike), within(1e-4));
    assertThat(sight(open, elsewhere).chance(Seen.CHANGES)).isEqualTo(0.03, within(1e-12));
    // A burnt-out filament stays so, whoever touches it.
    Check lamp = Check.wiggle("L1", Cart.LAMP_ON);
    assertThat(sight(Cart.suspect(bench, "L1", "burnt-out"), lamp).chance(Seen.CHANGES))
        .isEqualTo(0.03, within(1e-12));
    Prediction.Sight sight = sight(open, there);
    assertThat(sight.chance(Seen.CHANGES) + sight.chance(Seen.STEADY)).isEqualTo(1, within(1e-12));
  }

  // ---- a part in the hand
  // ------------------------------------------------------------------------

  @Test
  void aPartInTheHandShowsItsOwnFailureAndNobodyElses() {
    InHand hand = new InHand(bench);
    Check lamp =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("L1.out"), Setting.REST.without("L1"));
    Check solved = hand.solved(lamp);
    assertThat(solved.setting().apart()).contains("BAT", "W8", "F1").doesNotContain("L1");
    assertThat(solved.kind()).isEqualTo(CheckKind.OHMS);
    assertThat(hand.solved(lamp)).isSameAs(solved);
    Check wired = Cart.volts("L1.in", Cart.LAMP_ON);
    assertThat(hand.solved(wired)).isSameAs(wired);
    Hypothesis burnt = Cart.suspect(bench, "L1", "burnt-out");
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    Hypothesis socket = Cart.suspects(bench, "L1", "high-resistance").get(9);
    assertThat(hand.solved(burnt, lamp)).isSameAs(burnt);
    assertThat(hand.solved(open, lamp)).isSameAs(bench.healthy());
    assertThat(hand.solved(socket, lamp)).isSameAs(bench.healthy());
    assertThat(hand.solved(open, wired)).isSameAs(open);
    assertThat(hand.solved(bench.healthy(), lamp)).isSameAs(bench.healthy());
    // A fuse that a short has blown is blown in the hand, too.
    Check fuse =
        Check.measure(
            CheckKind.OHMS, Cart.at("F1.feed"), Cart.at("F1.load"), Setting.REST.without("F1"));
    Hypothesis shorted = Cart.suspect(bench, "W8", "short-to-ground");
    assertThat(hand.solved(shorted, fuse)).isSameAs(shorted);
    assertThat(hand.solved(open, fuse)).isSameAs(bench.healthy());
  }
}
