package loopwright.ui.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.ForwardingCase;
import loopwright.casework.Outlook;
import loopwright.casework.PartView;
import loopwright.casework.ReadingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.model.TerminalRef;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeFindCase;
import loopwright.ui.fake.FakeVehicles;
import org.junit.jupiter.api.Test;

class CaseViewModelTest {
  private final Queue<Runnable> background = new ArrayDeque<>();
  private boolean atOnce = true;
  private final CaseViewModel model = model(new FakeFindCase(FakeVehicles.pumper(), "Beacon dead"));

  private CaseViewModel model(FindCase findCase) {
    return new CaseViewModel(
        findCase,
        findCase.view(),
        findCase.points(),
        findCase.settings(),
        new Worker(this::background, Runnable::run));
  }

  private void background(Runnable task) {
    if (atOnce) {
      task.run();
    } else {
      background.add(task);
    }
  }

  private void finish() {
    while (!background.isEmpty()) {
      background.remove().run();
    }
  }

  private void enter(String digits, EntryUnit unit) {
    digits.chars().forEach(c -> model.entry().add((char) c));
    model.unit(unit);
  }

  private void count(String digits, EntryUnit unit) {
    enter(digits, unit);
    model.count();
  }

  private List<String> suspects() {
    return model.view().suspects().stream().map(SuspectView::title).toList();
  }

  @Test
  void aLookIsAnsweredByWhatWasSeen() {
    assertThat(model.choices()).containsExactly(Seen.CLICKS, Seen.SILENT);
    model.pick(Seen.CLICKS);
    assertThat(model.view().readings()).hasSize(1);
    assertThat(model.choices()).isEmpty();
    assertThat(model.units()).startsWith(EntryUnit.VOLT);
  }

  @Test
  void theTreeTellsItsResultsAtOnceAndWhatFollowsOneByOne() {
    model.pick(Seen.CLICKS);
    atOnce = false;
    model.toggleTree();
    assertThat(model.tree().open()).isFalse();
    finish();
    Outlook outlook = model.tree().outlookProperty().get().orElseThrow();
    assertThat(outlook.check()).isEqualTo(model.view().next().orElseThrow().id());
    assertThat(model.tree().thens())
        .hasSameSizeAs(outlook.branches())
        .doesNotContain(Optional.empty());
    model.tree().moveBranch(5);
    assertThat(model.tree().branchProperty().get()).isEqualTo(outlook.branches().size() - 1);
    model.back();
    assertThat(model.tree().open()).isFalse();
    assertThat(model.tree().thens()).isEmpty();
    assertThat(model.view().readings()).as("looking ahead changes nothing").hasSize(1);
  }

  @Test
  void anAnswerClosesTheTree() {
    model.pick(Seen.CLICKS);
    model.toggleTree();
    assertThat(model.tree().open()).isTrue();
    count("12.4", EntryUnit.VOLT);
    assertThat(model.tree().open()).isFalse();
    model.toggleTree();
    model.startWarn();
    assertThat(model.tree().open()).as("smoke comes first").isFalse();
  }

  @Test
  void everyPieceCanBeAskedWhyWhetherSuspectedClearedOrHardly() {
    model.pick(Seen.CLICKS);
    count("12.4", EntryUnit.VOLT);
    int pieces =
        model.view().suspects().size() + model.view().cleared().size() + model.hardly().size();
    assertThat(model.view().cleared()).isNotEmpty();
    for (int i = 0; i < pieces; i++) {
      model.suspectProperty().set(i);
      assertThat(model.ifNotLines()).as("piece " + i).isNotEmpty();
    }
    model.moveSuspect(1);
    assertThat(model.suspectProperty().get()).isEqualTo(pieces - 1);
    model.startSwap();
    assertThat(model.suspectProperty().get()).as("only a suspect is swapped").isZero();
  }

  @Test
  void checksByHandCanBeTakenOnesOwn() {
    model.startOwn();
    OwnCheckViewModel own = model.own();
    own.choose(OwnCheckViewModel.KINDS.indexOf(CheckKind.LAMP_FOR_FUSE));
    own.choose(0);
    assertThat(own.stepProperty().get()).isEqualTo(OwnCheckViewModel.Step.PART);
    assertThat(own.found()).as("only fuses").allMatch(f -> f.contains("fuse"));
    own.choose(0);
    assertThat(own.missing()).isEmpty();
    assertThat(own.check().kind()).isEqualTo(CheckKind.LAMP_FOR_FUSE);
    assertThat(model.choices()).containsExactly(Seen.ON, Seen.DIM, Seen.OFF);
    model.back();

    model.startOwn();
    own.choose(OwnCheckViewModel.KINDS.indexOf(CheckKind.UNPLUG_AND_LOOK));
    own.choose(0);
    assertThat(own.stepProperty().get()).isEqualTo(OwnCheckViewModel.Step.OUT);
    own.choose(0);
    String out = own.outProperty().get().orElseThrow().subject();
    own.choose(0);
    assertThat(own.check().setting().apart()).contains(out);
    assertThat(own.check().lookAt()).isPresent();
  }

  @Test
  void theEntryIsEchoedBeforeItCounts() {
    model.pick(Seen.CLICKS);
    enter("12.4", EntryUnit.VOLT);
    assertThat(model.echoProperty().get()).isEqualTo("12.4 V");
    assertThat(model.view().readings()).hasSize(1);
    model.count();
    assertThat(model.view().readings()).hasSize(2);
    assertThat(model.entry().text()).isEmpty();
    assertThat(model.echoProperty().get()).isEmpty();
  }

  @Test
  void aSecondLookIsAskedOnceAndThenItCounts() {
    model.pick(Seen.CLICKS);
    count("12.4", EntryUnit.MILLIVOLT);
    assertThat(model.secondProperty().get()).contains("not 12.4 V?");
    assertThat(model.view().readings()).hasSize(1);
    model.count();
    assertThat(model.view().readings()).hasSize(2);
    assertThat(model.secondProperty().get()).isEmpty();
  }

  @Test
  void anotherValueAfterASecondLookIsJudgedAnew() {
    model.pick(Seen.CLICKS);
    count("12.4", EntryUnit.MILLIVOLT);
    model.unit(EntryUnit.VOLT);
    assertThat(model.secondProperty().get()).isEmpty();
    model.count();
    assertThat(model.view().readings().get(1).value()).isEqualTo("12.4 V");
  }

  @Test
  void withoutUnitNothingCountsAndTheUnitIsAskedFor() {
    model.pick(Seen.CLICKS);
    model.entry().add('5');
    model.count();
    assertThat(model.problemProperty().get()).isNotEmpty();
    assertThat(model.view().readings()).hasSize(1);
  }

  @Test
  void aUnitOfAnotherKindOfCheckIsNotTaken() {
    model.pick(Seen.CLICKS);
    enter("5", EntryUnit.OHM);
    assertThat(model.entry().text()).isEqualTo("5");
  }

  @Test
  void aBandIsAnAnswer() {
    model.pick(Seen.CLICKS);
    model.pick(model.bands().get(0).band().orElseThrow());
    assertThat(model.view().readings()).hasSize(2);
  }

  @Test
  void pressingTwiceCountsOnce() {
    model.pick(Seen.CLICKS);
    enter("12.4", EntryUnit.VOLT);
    atOnce = false;
    model.count();
    model.count();
    assertThat(model.busyProperty().get()).isTrue();
    finish();
    assertThat(model.busyProperty().get()).isFalse();
    assertThat(model.view().readings()).hasSize(2);
    assertThat(model.problemProperty().get()).isEmpty();
  }

  @Test
  void typingOnWhileTheEchoIsWorkedOutLeavesNoStaleEcho() {
    model.pick(Seen.CLICKS);
    atOnce = false;
    enter("12.4", EntryUnit.VOLT);
    model.entry().back();
    finish();
    assertThat(model.echoProperty().get()).isEmpty();
  }

  @Test
  void aRefusedCheckGivesWayToAnother() {
    model.pick(Seen.CLICKS);
    String before = model.view().next().orElseThrow().id();
    model.startRefuse();
    assertThat(model.doing()).isEqualTo(CaseViewModel.Doing.REFUSE);
    model.refuse(FindCase.Refusal.CANT_REACH);
    assertThat(model.view().next().orElseThrow().id()).isNotEqualTo(before);
    assertThat(model.doing()).isEqualTo(CaseViewModel.Doing.ANSWER);
  }

  @Test
  void aReadingIsCorrectedInPlace() {
    model.pick(Seen.CLICKS);
    count("0.1", EntryUnit.VOLT);
    model.startCorrect();
    assertThat(model.entry().text()).isEqualTo("0.1 V");
    model.entry().clear();
    count("12.4", EntryUnit.VOLT);
    assertThat(model.view().readings())
        .extracting(ReadingView::value)
        .containsExactly("clicks", "12.4 V");
  }

  @Test
  void aReadingTakenBackLeavesTheSuspectsAsBefore() {
    model.pick(Seen.CLICKS);
    List<String> before = suspects();
    count("12.4", EntryUnit.VOLT);
    assertThat(suspects()).isNotEqualTo(before);
    model.takeBack();
    assertThat(suspects()).isEqualTo(before);
  }

  @Test
  void theOrderOfTheListsStaysUntilTheNextReading() {
    model.pick(Seen.CLICKS);
    List<String> before = suspects();
    model.toggleWhy();
    model.back();
    model.toggleIfNot();
    model.moveSuspect(1);
    enter("12.4", EntryUnit.VOLT);
    assertThat(suspects()).isEqualTo(before);
  }

  @Test
  void whyAndWhatIfNotAreTold() {
    model.toggleWhy();
    assertThat(model.whyLines()).isNotEmpty();
    assertThat(model.sideProperty().get()).isEqualTo(CaseViewModel.Side.WHY);
    model.back();
    model.toggleIfNot();
    String first = model.ifNotLines().get(0);
    model.moveSuspect(1);
    assertThat(model.ifNotLines().get(0)).isNotEqualTo(first);
  }

  @Test
  void aMeasurementOfOnesOwnIsPutTogetherStepByStep() {
    model.pick(Seen.CLICKS);
    model.startOwn();
    OwnCheckViewModel own = model.own();
    own.choose(OwnCheckViewModel.KINDS.indexOf(CheckKind.VOLTS));
    own.choose(0);
    own.searchProperty().set("G4.lug");
    own.choose(0);
    own.choose(own.chosenIndex());
    assertThat(own.stepProperty().get()).isEqualTo(OwnCheckViewModel.Step.VALUE);
    assertThat(model.red()).hasToString("Optional[G4.lug]");
    count("12.4", EntryUnit.VOLT);
    assertThat(model.view().readings().get(1).where()).isEqualTo("G4.lug to BATT.neg");
  }

  @Test
  void aCheckOfOnesOwnIsClickedOnTheDrawingRedThenBlack() {
    TerminalRef red = TerminalRef.parse("F3.load");
    model.pick("F3", List.of(red));
    assertThat(model.doing()).as("nothing is put together").isEqualTo(CaseViewModel.Doing.ANSWER);
    model.startOwn();
    finish();
    OwnCheckViewModel own = model.own();
    model.pick("F3", List.of(red));
    assertThat(model.red()).contains(red);
    model.pick("G4", List.of());
    assertThat(model.black().map(TerminalRef::part)).contains("G4");
    assertThat(own.stepProperty().get()).isEqualTo(OwnCheckViewModel.Step.VALUE);
    // Once more from red, and a look takes the part itself.
    model.pick("L1", List.of(TerminalRef.parse("L1.in")));
    assertThat(model.red()).contains(TerminalRef.parse("L1.in"));
    own.kindProperty().set(CheckKind.LOOK);
    model.pick("L1", List.of());
    assertThat(own.partProperty().get().map(PartView::subject)).contains("L1");
  }

  @Test
  void bothLeadsOnOnePointAreRefused() {
    model.pick(Seen.CLICKS);
    model.startOwn();
    OwnCheckViewModel own = model.own();
    own.redProperty().set(own.blackProperty().get());
    own.stepProperty().set(OwnCheckViewModel.Step.VALUE);
    count("0", EntryUnit.VOLT);
    assertThat(model.problemProperty().get()).isNotEmpty();
    assertThat(model.view().readings()).hasSize(1);
  }

  @Test
  void aCaseDoesNotEndWhileSomethingIsToBePutBack() {
    toOhms();
    assertThat(model.view().putBack()).isNotEmpty();
    model.end();
    assertThat(model.doing()).isEqualTo(CaseViewModel.Doing.PUT_BACK);
    assertThat(model.ended()).isFalse();
    model.allPutBack();
    assertThat(model.ended()).isTrue();
  }

  @Test
  void onceEnterIsPressedItSaysThatItIsCounting() {
    model.pick(Seen.CLICKS);
    enter("12.4", EntryUnit.VOLT);
    atOnce = false;
    model.count();
    assertThat(model.countingProperty().get()).isTrue();
    finish();
    assertThat(model.countingProperty().get()).isFalse();
    assertThat(model.view().readings()).hasSize(2);
  }

  @Test
  void aReadingThatEndedTheCaseByMistakeCanStillBeTakenBack() {
    toOhms();
    model.repaired();
    count("0.03", EntryUnit.VOLT);
    assertThat(model.ended()).isTrue();
    int readings = model.view().readings().size();
    model.takeBack();
    assertThat(model.ended()).isFalse();
    assertThat(model.view().readings()).hasSize(readings - 1);
    model.end();
    model.allPutBack();
    model.takeBack();
    assertThat(model.view().readings()).as("what was put aside stays so").hasSize(readings - 1);
  }

  @Test
  void aWarningEndsWhateverWasBegunAndStandsUntilItIsGone() {
    model.pick(Seen.CLICKS);
    model.startOwn();
    model.startWarn();
    assertThat(model.units()).isEmpty();
    model.warn(Warning.HEAT);
    assertThat(model.view().move()).isEqualTo(CaseView.Move.MAKE_SAFE);
    assertThat(model.isolating()).isTrue();
    assertThat(model.doing()).isEqualTo(CaseViewModel.Doing.ANSWER);
    model.isolated();
    assertThat(model.view().warnings()).containsExactly(Warning.HEAT);
    assertThat(model.isolating()).isFalse();
    model.gone();
    assertThat(model.view().move()).isEqualTo(CaseView.Move.CHECK);
  }

  @Test
  void withFuelAboutNobodyIsAskedToLiftABatteryLead() {
    model.warn(Warning.FUEL);
    assertThat(model.isolating()).isFalse();
    model.isolated();
    assertThat(model.view().move()).isEqualTo(CaseView.Move.MAKE_SAFE);
  }

  @Test
  void afterTheRepairComesItsProofAndThenTheEnd() {
    toOhms();
    assertThat(model.view().move()).isEqualTo(CaseView.Move.REPAIR);
    model.repaired();
    assertThat(model.view().move()).isEqualTo(CaseView.Move.PROOF);
    model.otherFirst();
    assertThat(model.problemProperty().get()).as("a proof is nobody's choice").isEmpty();
    count("0.03", EntryUnit.VOLT);
    assertThat(model.ended()).isTrue();
  }

  private void toOhms() {
    model.pick(Seen.CLICKS);
    count("12.4", EntryUnit.VOLT);
    model.startRefuse();
    model.refuse(FindCase.Refusal.CANT_REACH);
    count("12.3", EntryUnit.VOLT);
    count("0.02", EntryUnit.VOLT);
    count("1.2", EntryUnit.KILOHM);
  }

  @Test
  void whatCannotBeTakenIsToldAndNothingChanges() {
    model.pick(Seen.CLICKS);
    CaseViewModel refusing = model(new RefusingCase());
    refusing.pick(Seen.ON);
    assertThat(refusing.problemProperty().get()).contains("on").contains("nothing today");
    assertThat(refusing.view().readings()).isEmpty();
  }

  /** A case that can't take anything. */
  private static final class RefusingCase extends ForwardingCase {
    RefusingCase() {
      super(new FakeFindCase(FakeVehicles.pumper(), ""));
    }

    @Override
    public CaseView answer(String checkId, loopwright.casework.Answer answer)
        throws loopwright.casework.Problem {
      throw new loopwright.casework.Problem("value", "on", "nothing today");
    }
  }

  @Test
  void redAndBlackAreWhereTheCheckSays() {
    model.pick(Seen.CLICKS);
    assertThat(model.red()).isEqualTo(model.view().next().orElseThrow().red().map(p -> p.ref()));
    assertThat(model.black()).hasToString(Optional.of("BATT.neg").toString());
  }
}
