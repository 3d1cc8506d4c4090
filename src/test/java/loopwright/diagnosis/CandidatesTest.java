package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.knowledge.Provocation;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;

/** The checks that are thought of on the hand cart, against its drawing in {@link Cart}. */
class CandidatesTest {

  private final Workbench bench = Cart.bench();

  /** Suspects by part and mode, all equally likely, at the middle of their ranges. */
  private List<Check> candidates(ComplaintKind kind, String... suspects) {
    return source(kind).candidates(prospects(suspects));
  }

  private CheckSource source(ComplaintKind kind) {
    Complaint complaint = Cart.complaint(kind);
    Optional<Loop> loop = Loop.trace(bench, complaint.on(), bench.loadElement(complaint.load()));
    return new CheckSource(bench, complaint, loop);
  }

  private Prospects prospects(String... suspects) {
    List<Hypothesis> all = new ArrayList<>();
    Map<Hypothesis, Double> weights = new IdentityHashMap<>();
    for (String s : suspects) {
      int slash = s.indexOf('/');
      Hypothesis h = Cart.suspect(bench, s.substring(0, slash), s.substring(slash + 1));
      all.add(h);
      weights.put(h, 1.0);
    }
    return new Prospects(bench, all, weights);
  }

  private static Set<String> ids(List<Check> checks, CheckKind kind) {
    Set<String> ids = new HashSet<>();
    checks.stream().filter(c -> c.kind() == kind).forEach(c -> ids.add(c.id()));
    return ids;
  }

  private static final String[] USUAL = {"F1/blown", "K1/coil-open", "L1/burnt-out", "W8/open"};

  @Test
  void voltsAreReadOnceAtEachNodeOfTheLoopThatCanBeReached() {
    List<Check> checks = candidates(ComplaintKind.DEAD, USUAL);
    assertThat(checks).doesNotHaveDuplicates();
    Set<Integer> nodes = new HashSet<>();
    for (Check c : checks) {
      if (c.kind() == CheckKind.VOLTS && c.black().orElseThrow().equals(Cart.at("BAT.neg"))) {
        assertThat(nodes.add(Cart.NETWORK.requireNode(c.red().orElseThrow()))).isTrue();
        assertThat(c.setting()).isEqualTo(Cart.LAMP_ON);
      }
    }
    // Of each node the terminal that is reached soonest: of F1.load, S1.in and K1.30 the fuse.
    assertThat(ids(checks, CheckKind.VOLTS))
        .contains(
            "volts BAT.pos>BAT.neg S1=on",
            "volts F1.load>BAT.neg S1=on",
            "volts K1.86>BAT.neg S1=on",
            "volts K1.87>BAT.neg S1=on",
            "volts L1.in>BAT.neg S1=on",
            "volts L1.out>BAT.neg S1=on",
            "volts BODY.metal>BAT.neg S1=on")
        .doesNotContain("volts S1.in>BAT.neg S1=on", "volts BAT.neg>BAT.neg S1=on");
  }

  @Test
  void noLeadGoesWhereNoneCanReach() {
    for (ComplaintKind kind : ComplaintKind.values()) {
      for (Check c : candidates(kind, USUAL)) {
        for (Optional<TerminalRef> lead : List.of(c.red(), c.black())) {
          lead.ifPresent(t -> assertThat(t.part()).as(c.id()).isNotEqualTo("C1"));
        }
      }
    }
  }

  @Test
  void dropsAreReadAcrossWhatMayHaveFailedAndAcrossTheFuse() {
    List<Check> checks = candidates(ComplaintKind.DIM, "W9/high-resistance", "L1/wrong-lamp");
    // A sound wire or fuse drops millivolts, a lamp all volts.
    assertThat(ids(checks, CheckKind.MILLIVOLTS))
        .containsExactlyInAnyOrder(
            "millivolts L1.out>G1.lug S1=on", "millivolts F1.feed>F1.load S1=on");
    assertThat(ids(checks, CheckKind.VOLTS)).contains("volts L1.in>L1.out S1=on");
  }

  @Test
  void ohmsAreReadWithBatteryFuseAndLoadOut() {
    CheckSource source = source(ComplaintKind.DEAD);
    // The relay's coil hangs on S1 still: 85 ohm, which is no way round a short.
    Setting alone = Cart.LAMP_ON.without("BAT").without("F1").without("L1");
    assertThat(source.alone()).isEqualTo(alone).isSameAs(source.alone());
    List<Check> checks = source.candidates(prospects(USUAL));
    Set<String> ohms = ids(checks, CheckKind.OHMS);
    assertThat(ohms)
        .contains(
            "ohms F1.load>BAT.neg S1=on -BAT,-F1,-L1",
            "ohms L1.in>BAT.neg S1=on -BAT,-F1,-L1",
            // Halving a short: the connector apart, or the switch off.
            "ohms F1.load>BAT.neg S1=on -BAT,-C1,-F1,-L1",
            "ohms L1.in>BAT.neg S1=on -BAT,-C1,-F1,-L1",
            "ohms K1.87>BAT.neg S1=on -BAT,-F1,-L1");
    for (Check c : checks) {
      if (c.kind() == CheckKind.OHMS) {
        boolean hand = c.inHand(Cart.VEHICLE);
        assertThat(hand || c.setting().apart().contains("BAT")).as(c.id()).isTrue();
      }
    }
  }

  @Test
  void partsThatComeOutAreReadInTheHandBothBatteryOnAndOff() {
    List<Check> checks = candidates(ComplaintKind.DEAD, "F1/blown", "K1/coil-open", "L1/burnt-out");
    assertThat(ids(checks, CheckKind.OHMS))
        .contains(
            "ohms F1.feed>F1.load -F1", "ohms F1.feed>F1.load -BAT,-F1",
            "ohms K1.86>K1.85 -K1", "ohms K1.86>K1.85 -BAT,-K1",
            "ohms L1.in>L1.out -L1", "ohms L1.in>L1.out -BAT,-L1");
    // Only the relay has a junction in it, across its coil: both ways round.
    assertThat(ids(checks, CheckKind.DIODE))
        .containsExactlyInAnyOrder(
            "diode K1.86>K1.85 -K1",
            "diode K1.85>K1.86 -K1",
            "diode K1.86>K1.85 -BAT,-K1",
            "diode K1.85>K1.86 -BAT,-K1");
    assertThat(ids(candidates(ComplaintKind.DEAD, "W8/open"), CheckKind.OHMS))
        .noneMatch(id -> id.contains("-L1") && !id.contains("BAT"));
  }

  @Test
  void looksGoToTheLoadTheFuseTheRelayAndTheLoadBeside() {
    assertThat(ids(candidates(ComplaintKind.DEAD, USUAL), CheckKind.LOOK))
        .containsExactlyInAnyOrder(
            "look L1 S1=on", "look F1 S1=on", "look K1 S1=on", "look L2 S2=on");
    assertThat(ids(candidates(ComplaintKind.DEAD, "W8/open"), CheckKind.LOOK))
        .containsExactlyInAnyOrder("look L1 S1=on", "look L2 S2=on");
  }

  @Test
  void aLoadThatStaysOnIsLookedAtWithItsControlAtRest() {
    List<Check> checks = candidates(ComplaintKind.STUCK_ON, "K1/stuck-closed");
    assertThat(ids(checks, CheckKind.LOOK)).contains("look L1", "look L1 S1=on");
    assertThat(ids(checks, CheckKind.VOLTS))
        .contains("volts L1.in>BAT.neg", "volts L1.in>BAT.neg S1=on");
    // What holds it is found by taking the loop apart.
    assertThat(ids(checks, CheckKind.UNPLUG_AND_LOOK))
        .containsExactlyInAnyOrder(
            "unplug-and-look L1 -F1", "unplug-and-look L1 -K1", "unplug-and-look L1 -C1");
  }

  @Test
  void partsAreSwappedWhereAGoodOneFitsQuickly() {
    assertThat(ids(candidates(ComplaintKind.DEAD, USUAL), CheckKind.SWAP))
        .containsExactlyInAnyOrder("swap F1 S1=on", "swap K1 S1=on", "swap L1 S1=on");
    assertThat(ids(candidates(ComplaintKind.DRAINS_BATTERY, USUAL), CheckKind.SWAP)).isEmpty();
    assertThat(ids(candidates(ComplaintKind.WAKES_OTHER, USUAL), CheckKind.SWAP)).isEmpty();
    // Where a fuse blows, that fuse is tried though it isn't to blame itself.
    assertThat(ids(candidates(ComplaintKind.BLOWS_FUSE, "W8/short-to-ground"), CheckKind.SWAP))
        .containsExactly("swap F1 S1=on");
  }

  @Test
  void onlyWhatComesAndGoesIsMovedByHand() {
    String[] loose = {"W8/high-resistance", "F1/high-resistance", "L1/burnt-out"};
    assertThat(ids(candidates(ComplaintKind.WORKS_SOMETIMES, loose), CheckKind.WIGGLE))
        .contains("wiggle W8 S1=on", "wiggle F1 S1=on");
    assertThat(ids(candidates(ComplaintKind.DEAD, loose), CheckKind.WIGGLE)).isEmpty();
  }

  @Test
  void aLampStandsInForTheFuseThatAShortBlows() {
    List<Check> checks = candidates(ComplaintKind.BLOWS_FUSE, "W8/short-to-ground", "W9/open");
    Set<String> lamps = ids(checks, CheckKind.LAMP_FOR_FUSE);
    assertThat(lamps).contains("lamp-for-fuse F1").hasSize(4);
    assertThat(lamps).anyMatch(id -> id.startsWith("lamp-for-fuse F1 S1=on"));
    assertThat(lamps).anyMatch(id -> id.contains("-C1"));
    // A healthy circuit leaves it dark each time: what would light it has been taken out.
    Substitutions substitutions = new Substitutions(bench, Optional.of(Cart.LAMP));
    for (Check c : checks) {
      if (c.kind() == CheckKind.LAMP_FOR_FUSE) {
        double level = substitutions.lamp(bench.healthy(), "F1", c.setting()).get(0);
        assertThat(level).as(c.id()).isLessThan(0.04);
      }
    }
    assertThat(ids(candidates(ComplaintKind.DEAD, "W9/open"), CheckKind.LAMP_FOR_FUSE)).isEmpty();
  }

  @Test
  void aDrainIsLookedForFuseByFuse() {
    // The relay's contact stuck closed: the lamp drains through F1.
    List<Check> checks = candidates(ComplaintKind.DRAINS_BATTERY, "K1/stuck-closed");
    assertThat(ids(checks, CheckKind.UNPLUG_AND_LOOK))
        .containsExactlyInAnyOrder("unplug-and-look BAT", "unplug-and-look BAT -F1");
  }

  @Test
  void whatWakesAnotherLoadIsUnpluggedInTurn() {
    // W8 touches W11: the lamp's feed lights the tail lamp too.
    List<Check> checks = candidates(ComplaintKind.WAKES_OTHER, "W11/short-to-neighbour:W8");
    assertThat(ids(checks, CheckKind.LOOK)).contains("look L2 S1=on");
    assertThat(ids(checks, CheckKind.UNPLUG_AND_LOOK))
        .contains(
            "unplug-and-look L2 S1=on -L1",
            "unplug-and-look L2 S1=on -F1",
            "unplug-and-look L2 S1=on -K1",
            "unplug-and-look L2 S1=on -C1",
            "unplug-and-look L2 S1=on -F2")
        .doesNotContain("unplug-and-look L2 S1=on -L2");
  }

  // ---- the tail lamp: BAT = F2 = S2 -W11- L2 = G1
  // ------------------------------------------------

  private List<Check> ofTail(ComplaintKind kind, Setting on, Map<String, Double> suspects) {
    Complaint complaint = new Complaint(kind, "tail", Cart.TAIL, on);
    Optional<Loop> loop = Loop.trace(bench, on, bench.loadElement(Cart.TAIL));
    List<Hypothesis> all = new ArrayList<>();
    Map<Hypothesis, Double> weights = new IdentityHashMap<>();
    suspects.forEach(
        (name, weight) -> {
          int slash = name.indexOf('/');
          Hypothesis h =
              bench
                  .singles(
                      Cart.VEHICLE.requirePart(name.substring(0, slash)),
                      loopwright.knowledge.Context.IN_SERVICE,
                      on,
                      v -> false,
                      x -> true)
                  .stream()
                  .filter(x -> x.suspect().mode().equals(name.substring(slash + 1)))
                  .findFirst()
                  .orElseThrow();
          all.add(h);
          weights.put(h, weight);
        });
    return new CheckSource(bench, complaint, loop).candidates(new Prospects(bench, all, weights));
  }

  @Test
  void aShortBehindTheTailFuseIsLookedForWithItsLampOut() {
    List<Check> checks =
        ofTail(ComplaintKind.BLOWS_FUSE, Cart.TAIL_ON, Map.of("W11/short-to-ground", 1.0));
    // The tail lamp would light the test lamp, so it is out; no connector lies on its way.
    assertThat(ids(checks, CheckKind.LAMP_FOR_FUSE))
        .containsExactlyInAnyOrder(
            "lamp-for-fuse F2 S2=on -L2", "lamp-for-fuse F2", "lamp-for-fuse F2 -L2");
    assertThat(ids(checks, CheckKind.SWAP)).containsExactly("swap F2 S2=on");
    assertThat(ids(checks, CheckKind.OHMS))
        .contains(
            "ohms F2.load>BAT.neg S2=on -BAT,-F2,-L2", "ohms L2.in>BAT.neg S2=on -BAT,-F2,-L2")
        // Cut in half at its switch.
        .contains("ohms F2.load>BAT.neg S2=off -BAT,-F2,-L2")
        .noneMatch(id -> id.contains("-C1") || id.contains("-K1"));
    assertThat(ids(checks, CheckKind.MILLIVOLTS))
        .containsExactlyInAnyOrder(
            "millivolts F2.feed>F2.load S2=on", "millivolts S2.out>L2.in S2=on");
    assertThat(ids(checks, CheckKind.LOOK))
        .containsExactlyInAnyOrder("look L2 S2=on", "look L1 S1=on");
  }

  @Test
  void whatIsHardlySuspectedGetsNoPointsSwapsOrHandsOfItsOwn() {
    Map<String, Double> weights =
        Map.of(
            "W11/open",
            1.0,
            "F2/blown",
            0.0005,
            "L2/burnt-out",
            0.002,
            "S2/stuck-open:contact:in-out",
            0.5);
    List<Check> checks = ofTail(ComplaintKind.DEAD, Cart.TAIL_ON, weights);
    // Below 0.1 % no look at the fuse; below 0.4 % no hand on the lamp.
    assertThat(ids(checks, CheckKind.LOOK)).doesNotContain("look F2 S2=on");
    assertThat(ids(checks, CheckKind.SWAP)).isEmpty();
    assertThat(ids(checks, CheckKind.OHMS)).doesNotContain("ohms L2.in>L2.out -L2");
    assertThat(ids(checks, CheckKind.VOLTS)).contains("volts L2.in>L2.out S2=on");
    // The switch has no twin, but its drop can be read.
    assertThat(ids(checks, CheckKind.MILLIVOLTS)).contains("millivolts S2.in>S2.out S2=on");
    // With a little more belief hand and twin come.
    List<Check> more =
        ofTail(
            ComplaintKind.DEAD,
            Cart.TAIL_ON,
            Map.of("W11/open", 1.0, "F2/blown", 0.01, "L2/burnt-out", 0.01));
    assertThat(ids(more, CheckKind.LOOK)).contains("look F2 S2=on");
    assertThat(ids(more, CheckKind.SWAP))
        .containsExactlyInAnyOrder("swap F2 S2=on", "swap L2 S2=on");
    assertThat(ids(more, CheckKind.OHMS))
        .contains("ohms L2.in>L2.out -L2", "ohms F2.feed>F2.load -F2");
  }

  @Test
  void loadsThatAreOnAnywayAreLookedAtInTheComplaintsOwnSetting() {
    Setting both = Cart.TAIL_ON.with("S1", "on");
    List<Check> checks = ofTail(ComplaintKind.DEAD, both, Map.of("W11/open", 1.0));
    assertThat(ids(checks, CheckKind.LOOK))
        .contains("look L2 S1=on,S2=on", "look L1 S1=on,S2=on", "look L1 S1=on");
    List<Check> alone = ofTail(ComplaintKind.DEAD, Cart.TAIL_ON, Map.of("W11/open", 1.0));
    assertThat(ids(alone, CheckKind.LOOK)).doesNotContain("look L1 S2=on");
  }

  @Test
  void oneThatComesAndGoesIsMovedOnlyIfItsKindDoes() {
    Map<String, Double> weights =
        Map.of("W11/open", 1.0, "L2/burnt-out", 1.0, "G1/open", 1.0, "BAT/flat", 1.0);
    Set<String> moved =
        ids(ofTail(ComplaintKind.WORKS_SOMETIMES, Cart.TAIL_ON, weights), CheckKind.WIGGLE);
    for (String part : List.of("W11", "L2", "G1", "BAT")) {
      PartKind kind = Cart.VEHICLE.requirePart(part).kind();
      boolean moves =
          loopwright.evidence.Bench.KNOWLEDGE.faults(kind).stream()
              .anyMatch(m -> m.shows(Provocation.MOVED) > 0);
      assertThat(moved.contains("wiggle " + part + " S2=on")).as(part).isEqualTo(moves);
    }
  }

  // ---- prospects ------------------------------------------------------------------------------

  @Test
  void sharesOfPartsAndBlownFusesAddUp() {
    Hypothesis fuse = Cart.suspect(bench, "F1", "blown");
    Hypothesis shorted = Cart.suspect(bench, "W8", "short-to-ground");
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    Map<Hypothesis, Double> weights = new IdentityHashMap<>();
    weights.put(fuse, 1.0);
    weights.put(shorted, 2.0);
    weights.put(open, 3.0);
    weights.put(bench.healthy(), 2.0);
    Prospects prospects =
        new Prospects(bench, List.of(fuse, shorted, open, bench.healthy()), weights);
    assertThat(prospects.parts()).containsOnlyKeys("F1", "W8");
    assertThat(prospects.parts().get("W8")).isEqualTo(5 / 8.0, within(1e-12));
    assertThat(prospects.parts().get("F1")).isEqualTo(1 / 8.0, within(1e-12));
    // The fuse that is blown by itself is no victim.
    assertThat(prospects.blown()).containsOnlyKeys("F1");
    assertThat(prospects.blown().get("F1")).isEqualTo(2 / 8.0, within(1e-12));
    assertThat(prospects.drained()).isEmpty();
    assertThat(prospects.woken(Cart.complaint(ComplaintKind.DEAD))).isEmpty();
  }

  @Test
  void drainsAndWokenLoadsAreThoseOfTheSuspects() {
    Hypothesis welded = Cart.suspect(bench, "K1", "stuck-closed");
    Hypothesis touching = Cart.suspect(bench, "W11", "short-to-neighbour:W8");
    Map<Hypothesis, Double> weights = new IdentityHashMap<>();
    weights.put(welded, 1.0);
    weights.put(touching, 3.0);
    Prospects prospects = new Prospects(bench, List.of(welded, touching), weights);
    assertThat(prospects.drained()).containsOnlyKeys("F1");
    assertThat(prospects.drained().get("F1")).isEqualTo(0.25, within(1e-12));
    Map<LoadRef, Double> woken = prospects.woken(Cart.complaint(ComplaintKind.WAKES_OTHER));
    assertThat(woken).containsOnlyKeys(Cart.TAIL);
    assertThat(woken.get(Cart.TAIL)).isEqualTo(0.75, within(1e-12));
  }

  @Test
  void theLoopIsThatOfTheGreatestCurrentWithItsRelaysCoil() {
    Loop loop = Loop.trace(bench, Cart.LAMP_ON, bench.loadElement(Cart.LAMP)).orElseThrow();
    assertThat(loop.title()).isEqualTo("L1");
    assertThat(loop.pieces().stream().map(Loop.Piece::part))
        .containsExactly("F1", "K1", "W7", "C1", "W8", "L1", "W9", "G1", "W13");
    assertThat(loop.nodes()).hasSize(10);
    assertThat(loop.nodes().get(0)).isEqualTo(Cart.NETWORK.requireNode(Cart.at("BAT.pos")));
    assertThat(loop.nodes().get(9)).isEqualTo(Cart.NETWORK.requireNode(Cart.at("BAT.neg")));
    for (int k = 0; k < 9; k++) {
      assertThat(loop.pieces().get(k).in()).isEqualTo(loop.nodes().get(k));
      assertThat(loop.pieces().get(k).out()).isEqualTo(loop.nodes().get(k + 1));
      assertThat(loop.pieces().get(k).elements()).isNotEmpty();
    }
    assertThat(loop.branches()).hasSize(1);
    Loop coil = loop.branches().get(0);
    assertThat(coil.pieces().stream().map(Loop.Piece::part))
        .containsExactly("F1", "S1", "W4", "K1", "G1", "W13");
    assertThat(loop.all()).containsExactly(loop, coil);
    assertThat(loop.holds("S1")).isTrue();
    assertThat(loop.holds("L2")).isFalse();
    // Nothing flows at rest.
    assertThat(Loop.trace(bench, Setting.REST, bench.loadElement(Cart.LAMP))).isEmpty();
    assertThat(Cart.VEHICLE.requirePart("L1").kind()).isEqualTo(PartKind.LAMP);
  }
}
