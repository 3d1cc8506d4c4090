package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.Workpiece;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A case over the real search and the real rules: smoke, heat and fuel, and explanations. */
class SessionTest {
  private static final Vehicle VEHICLE = Bench.vehicle("motorcycle");

  private final Desk desk = Bench.desk();
  private FindCase open = open();

  private FindCase open() {
    try {
      return desk.open(
          new CaseDesk.NewCase(
              VEHICLE,
              "motorcycle",
              VEHICLE.circuits().get(0).id(),
              Optional.empty(),
              ComplaintKind.DEAD,
              Context.IN_SERVICE,
              Bench.KNOWLEDGE.meters().get(0).id()),
          CaseDesk.Progress.SILENT);
    } catch (Problem p) {
      throw new AssertionError(p);
    }
  }

  @AfterEach
  void close() {
    open.close();
  }

  private static boolean dead(CheckView check) {
    return check.set().setting().apart().contains(VEHICLE.battery().id());
  }

  private OwnCheck own(Setting setting) {
    return new OwnCheck(
        CheckKind.VOLTS,
        Optional.of(VEHICLE.feedPost()),
        Optional.of(VEHICLE.groundedPost()),
        Optional.empty(),
        setting);
  }

  @Test
  void smokeStopsAllChecksUntilTheBatteryIsOff() throws Problem {
    CheckView before = open.view().next().orElseThrow();
    assertThat(dead(before)).isFalse();
    CaseView view = open.warn(Warning.SMOKE);
    assertThat(view.move()).isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(view.next()).isEmpty();
    assertThat(view.warnings()).containsExactly(Warning.SMOKE);
    assertThat(view.makeSafe()).hasSize(1).first().asString().startsWith("Isolate the battery");
    assertThat(view.cautions()).containsAll(view.makeSafe());
    assertThatThrownBy(() -> open.answer(before.id(), new Answer.Saw(Seen.OFF)))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("smoke");
    assertThatThrownBy(() -> open.take(own(Setting.REST), new Answer.Text("12.6 V")))
        .hasMessageContaining("battery off");
    assertThat(open.view().readings()).isEmpty();
  }

  @Test
  void onceIsolatedOnlyTheDeadVehicleIsChecked() throws Problem {
    open.warn(Warning.HEAT);
    CaseView view = open.isolated();
    assertThat(view.putBack()).singleElement().asString().contains("grounded lead back on");
    int checks = 0;
    while (view.move() == CaseView.Move.CHECK && checks < 6) {
      CheckView check = view.next().orElseThrow();
      assertThat(dead(check)).as(check.id()).isTrue();
      assertThat(check.set().change())
          .as("it is off already")
          .noneMatch(c -> c.contains("off its"));
      view = open.refuse(check.id(), FindCase.Refusal.WONT);
      checks++;
    }
    assertThat(open.view().warnings()).containsExactly(Warning.HEAT);
  }

  @Test
  void onceGoneTheSameCheckIsAskedAgainAndTheBatteryIsPutBackFirst() throws Problem {
    CheckView before = open.view().next().orElseThrow();
    List<String> cautions = open.view().cautions();
    open.warn(Warning.SMOKE);
    open.isolated();
    CaseView view = open.gone();
    assertThat(view.warnings()).isEmpty();
    assertThat(view.makeSafe()).isEmpty();
    assertThat(view.cautions()).isEqualTo(cautions);
    assertThat(view.move()).isEqualTo(CaseView.Move.CHECK);
    CheckView after = view.next().orElseThrow();
    assertThat(after.id()).isEqualTo(before.id());
    assertThat(after.set().change().get(0)).contains("grounded lead back on");
    view = open.answer(after.id(), new Answer.Saw(after.choices().get(0)));
    assertThat(view.putBack()).as("it is on again").noneMatch(p -> p.contains("grounded lead"));
  }

  @Test
  void withFuelAboutNoLeadIsLiftedAndNothingIsAskedUntilItIsGone() throws Problem {
    CaseView view = open.warn(Warning.FUEL);
    assertThat(view.move()).isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(view.makeSafe()).singleElement().asString().startsWith("Fuel about");
    assertThatThrownBy(() -> open.isolated()).isInstanceOf(Problem.class);
    view = open.warn(Warning.SMOKE);
    assertThat(view.warnings()).containsExactly(Warning.SMOKE, Warning.FUEL);
    assertThat(view.makeSafe()).hasSize(2);
    assertThat(open.isolated().move()).as("fuel is still about").isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(open.gone().move()).isEqualTo(CaseView.Move.CHECK);
    assertThatThrownBy(() -> open.gone()).isInstanceOf(Problem.class);
  }

  @Test
  void aRepairIsNotProvenWhileItSmokes() throws Problem {
    String load = VEHICLE.circuits().get(0).loads().get(0).part();
    open.repaired(load);
    CaseView view = open.warn(Warning.SMOKE);
    assertThat(view.move()).isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(view.makeSafe()).isNotEmpty();
    view = open.isolated();
    assertThat(view.move()).isEqualTo(CaseView.Move.STUCK);
    assertThat(open.gone().move()).isEqualTo(CaseView.Move.PROOF);
  }

  @Test
  void ohmsWhereAHealthyCircuitIsLiveAreTakenEitherWayRound() throws Problem {
    Setting on = VEHICLE.circuits().get(0).onSetting();
    Optional<TerminalRef> feed = Optional.of(VEHICLE.feedPost());
    Optional<TerminalRef> ground = Optional.of(VEHICLE.groundedPost());
    for (boolean turned : new boolean[] {false, true}) {
      Optional<TerminalRef> red = turned ? ground : feed;
      Optional<TerminalRef> black = turned ? feed : ground;
      OwnCheck volts = new OwnCheck(CheckKind.VOLTS, red, black, Optional.empty(), on);
      OwnCheck ohms = new OwnCheck(CheckKind.OHMS, red, black, Optional.empty(), on);
      open.take(volts, new Answer.Text("0.00 V"));
      CaseView view = open.take(ohms, new Answer.Text("OL"));
      assertThat(view.readings()).last().satisfies(r -> assertThat(r.value()).contains("OL"));
    }
  }

  @Test
  void aCaseThatIsStoppedSaysHowFarItCame() throws Problem {
    String load = VEHICLE.circuits().get(0).loads().get(0).part();
    assertThat(open.repaired(load).move()).isEqualTo(CaseView.Move.PROOF);
    String id = open.view().caseId();
    CaseView view = open.stop();
    assertThat(view.move()).isEqualTo(CaseView.Move.END);
    assertThat(view.status()).as("not proven yet").isEqualTo(CaseView.Status.ISOLATED);
    open.close();
    open = desk.resume(id, VEHICLE, CaseDesk.Progress.SILENT);
    while (open.view().move() == CaseView.Move.PROOF) {
      CheckView proof = open.view().next().orElseThrow();
      open.answer(
          proof.id(), proof.kind().metered() ? new Answer.Text("12.2 V") : new Answer.Saw(Seen.ON));
    }
    assertThat(open.stop().status()).as("proven").isEqualTo(CaseView.Status.HEALTHY);
  }

  @Test
  void whatWasToldBesidesReadingsIsTakenBackAsIfItHadNeverBeen() throws Problem {
    open.take(own(Setting.REST), new Answer.Text("12.60 V"));
    CaseView before = open.view();
    String check = before.next().orElseThrow().id();
    String part = before.suspects().get(0).parts().get(0);
    CaseView left = open.refuse(check, FindCase.Refusal.NEVER);
    assertThat(left.next().map(CheckView::id)).isNotEqualTo(Optional.of(check));
    open.swapped(part, FindCase.Helped.NO);
    CaseView mended = open.repaired(part);
    assertThat(mended.readings()).isEmpty();
    assertThat(mended.deeds()).extracting(DeedView::number).containsExactly(1, 2, 3);
    assertThat(mended.deeds()).extracting(DeedView::after).containsOnly(1);
    assertThatThrownBy(() -> open.undo(4)).hasMessageContaining("1, 2, 3");
    // Taken back in another order than told, and the case taken up again between.
    open.undo(2);
    open.undo(3);
    String id = before.caseId();
    open.close();
    open = desk.resume(id, VEHICLE, CaseDesk.Progress.SILENT);
    assertThat(open.view().deeds()).hasSize(1);
    assertThat(open.view().suspects()).isEqualTo(left.suspects());
    CaseView now = open.undo(open.view().deeds().get(0).number());
    assertThat(now.deeds()).isEmpty();
    assertThat(now.move()).isEqualTo(before.move());
    assertThat(now.next()).isEqualTo(before.next());
    assertThat(now.suspects()).isEqualTo(before.suspects());
    assertThat(now.readings()).isEqualTo(before.readings());
    assertThat(now.minutes()).isEqualTo(before.minutes());
    assertThat(now.said()).startsWith("Taken back");
  }

  @Test
  void aWarningIsStillThereWhenTheCaseIsTakenUpAgain() throws Problem {
    open.warn(Warning.SMOKE);
    CaseView before = open.view();
    String id = before.caseId();
    open.close();
    open = desk.resume(id, VEHICLE, CaseDesk.Progress.SILENT);
    assertThat(open.view().move()).isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(open.view().makeSafe()).isEqualTo(before.makeSafe());
    assertThat(open.view().seq()).isEqualTo(1);
    open.isolated();
    open.close();
    open = desk.resume(id, VEHICLE, CaseDesk.Progress.SILENT);
    assertThat(open.view().warnings()).isEqualTo(List.of(Warning.SMOKE));
    assertThat(open.view().move()).isNotEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(Set.copyOf(open.view().putBack())).hasSize(1);
  }

  @Test
  void aCaseWhosePartsWereRenamedSinceSaysSoAndTheVehicleAsItWasTakesItUp() throws Problem {
    OwnCheck check = own(Setting.REST);
    open.take(check, new Answer.Text("12.60 V"));
    String id = open.view().caseId();
    open.close();
    String named = check.red().orElseThrow().part();
    Workpiece work = new Workpiece(VEHICLE);
    work.make(PartEdits.rename(named, "ANOTHER"));
    assertThatThrownBy(() -> desk.resume(id, work.vehicle(), CaseDesk.Progress.SILENT))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("renamed or removed since: " + named)
        .hasMessageContaining("earlier version of the vehicle's file");
    open = desk.resume(id, VEHICLE, CaseDesk.Progress.SILENT);
    assertThat(open.view().readings()).hasSize(1);
  }

  @Test
  void theNumbersBehindASuspectHoldItsReadings() throws Problem {
    open.take(own(Setting.REST), new Answer.Text("12.60 V"));
    String part = open.view().suspects().get(0).parts().get(0);
    assertThat(open.against(part))
        .singleElement()
        .satisfies(
            a -> {
              assertThat(a.reading()).isEqualTo(1);
              assertThat(a.suspect().low()).isLessThan(12.60).isLessThan(a.suspect().high());
              assertThat(a.healthy().unit()).isEqualTo(Band.Unit.VOLT);
            });
    assertThatThrownBy(() -> open.against(part + "/no-such-mode")).isInstanceOf(Problem.class);
    assertThatThrownBy(() -> open.against("Q99")).isInstanceOf(Problem.class);
  }

  @Test
  void everyCheckByHandThatIsOfferedCanBeTaken() throws Problem {
    int taken = 0;
    String fuse =
        VEHICLE.parts().stream()
            .filter(p -> p.kind() == PartKind.FUSE)
            .findFirst()
            .orElseThrow()
            .id();
    for (PartView part : open.parts()) {
      for (CheckKind kind : part.checks().keySet()) {
        Setting setting =
            kind == CheckKind.UNPLUG_AND_LOOK ? Setting.REST.without(fuse) : Setting.REST;
        OwnCheck check =
            new OwnCheck(
                kind, Optional.empty(), Optional.empty(), Optional.of(part.subject()), setting);
        assertThat(part.checks().get(kind)).as(part.subject() + " " + kind).isNotEmpty();
        if (taken++ % 40 == 0) {
          CaseView view = open.take(check, new Answer.Saw(part.checks().get(kind).get(0)));
          assertThat(view.readings()).hasSize(1);
          open.withdraw(view.readings().get(0).id());
        }
      }
    }
    assertThat(open.parts())
        .anyMatch(p -> p.checks().containsKey(CheckKind.LAMP_FOR_FUSE))
        .anyMatch(p -> p.checks().containsKey(CheckKind.WIGGLE) && p.apart().isEmpty())
        .noneMatch(
            p ->
                p.subject().equals(VEHICLE.battery().id())
                    && p.checks().containsKey(CheckKind.UNPLUG_AND_LOOK))
        // A lamp with one filament is named as what is looked at elsewhere: one check, not two.
        .noneMatch(p -> p.subject().endsWith(":") || p.title().contains("()"))
        .anyMatch(p -> p.subject().equals(open.view().suspects().get(0).parts().get(0)));
  }

  @Test
  void whatAReadingMeansIsToldWhereItRulesNothingOut() throws Problem {
    open.take(own(Setting.REST), new Answer.Text("12.60 V"));
    assertThat(open.view().said()).contains("nothing is ruled out by it").contains("at rest");
  }

  @Test
  void aDeadReadingIsTakenWhileItIsWarned() throws Problem {
    open.warn(Warning.SMOKE);
    open.isolated();
    TerminalRef feed = VEHICLE.feedPost();
    CaseView view =
        open.take(own(Setting.REST.without(VEHICLE.battery().id())), new Answer.Text("12.6 V"));
    assertThat(view.readings()).singleElement().matches(r -> r.red().equals(Optional.of(feed)));
  }

  /** No feed behind the fuse, and a burnt-out lamp besides. */
  @Test
  void twoFailuresAtOnceAreSaidSoAndShownWithTheirChances() throws Problem {
    try (FindCase lamp =
        desk.open(
            new CaseDesk.NewCase(
                VEHICLE,
                "motorcycle",
                "neutral-lamp",
                Optional.empty(),
                ComplaintKind.DEAD,
                Context.IN_SERVICE,
                Bench.KNOWLEDGE.meters().get(0).id()),
            CaseDesk.Progress.SILENT)) {
      Setting on = VEHICLE.circuit("neutral-lamp").orElseThrow().onSetting();
      OwnCheck inHand =
          new OwnCheck(
              CheckKind.OHMS,
              Optional.of(new TerminalRef("L3", "in")),
              Optional.of(new TerminalRef("L3", "out")),
              Optional.empty(),
              Setting.REST.without("L3"));
      lamp.take(volts("F3", "feed", on), new Answer.Text("12.58 V"));
      CaseView view = lamp.take(volts("F3", "load", on), new Answer.Text("0.00 V"));
      assertThat(view.said()).doesNotContain("One failure alone");
      lamp.take(inHand, new Answer.Text("OL"));
      view = lamp.take(inHand, new Answer.Text("OL"));
      assertThat(view.said()).contains("One failure alone").contains("F3").contains("L3");
      assertThat(view.suspects().get(0).belief()).isBetween(0.9, 1.0);
      assertThat(view.suspects())
          .flatExtracting(SuspectView::parts)
          .as("both are listed")
          .contains("F3", "L3");
    }
  }

  @Test
  void withThePositivePostGroundedWhatIsDrawnHasNoMinus() throws Problem {
    Vehicle tractor = Bench.vehicle("tractor");
    Optional<TerminalRef> post = Optional.of(tractor.groundedPost());
    try (FindCase drain =
        desk.open(
            new CaseDesk.NewCase(
                tractor,
                "tractor",
                "head",
                Optional.empty(),
                ComplaintKind.DRAINS_BATTERY,
                Context.IN_SERVICE,
                Bench.KNOWLEDGE.meters().get(0).id()),
            CaseDesk.Progress.SILENT)) {
      CaseView view =
          drain.take(
              new OwnCheck(CheckKind.DRAIN, post, post, Optional.empty(), Setting.REST),
              new Answer.Text("-0.120 V"));
      assertThat(view.readings().get(0).value()).contains("(120 mA drawn").doesNotContain("to -");
    }
  }

  private static OwnCheck volts(String part, String terminal, Setting setting) {
    return new OwnCheck(
        CheckKind.VOLTS,
        Optional.of(new TerminalRef(part, terminal)),
        Optional.of(VEHICLE.groundedPost()),
        Optional.empty(),
        setting);
  }
}
