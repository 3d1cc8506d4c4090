package loopwright.ui.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import loopwright.casework.CaseDesk;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicles;
import org.junit.jupiter.api.Test;

class FindViewModelTest {
  private final Queue<Runnable> background = new ArrayDeque<>();
  private final FakeCaseDesk desk = new FakeCaseDesk();
  private final FakePreferences preferences = new FakePreferences();
  private final ComplaintViewModel complaint =
      new ComplaintViewModel(desk, FakeMeters.both(), preferences);
  private final FindViewModel model = find(desk);

  private FindViewModel find(CaseDesk cases) {
    return new FindViewModel(cases, complaint, new Worker(background::add, Runnable::run));
  }

  private void finish() {
    while (!background.isEmpty()) {
      background.remove().run();
    }
  }

  @Test
  void aCaseOpensInTheBackgroundFromWhatWasChosen() {
    model.complain("pumper.json", FakeVehicles.pumper(), Optional.of("tail"));
    complaint.kindProperty().set(ComplaintKind.DIM);
    complaint.contextProperty().set(Context.AFTER_WORK);
    complaint.meterProperty().set(FakeMeters.both().get(1));
    model.open();
    assertThat(model.stageProperty().get()).isEqualTo(FindViewModel.Stage.OPENING);
    finish();
    assertThat(model.stageProperty().get()).isEqualTo(FindViewModel.Stage.CASE);
    CaseDesk.NewCase opened = desk.opened().get(0);
    assertThat(opened.circuit()).isEqualTo("tail");
    assertThat(opened.kind()).isEqualTo(ComplaintKind.DIM);
    assertThat(opened.context()).isEqualTo(Context.AFTER_WORK);
    assertThat(opened.meter()).isEqualTo("good");
    assertThat(preferences.read(Preferences.Item.METER)).contains("good");
  }

  @Test
  void openingCanBeGivenUp() {
    model.complain("pumper.json", FakeVehicles.pumper(), Optional.empty());
    model.open();
    model.cancel();
    assertThat(model.stageProperty().get())
        .as("at once, not when the work is done")
        .isEqualTo(FindViewModel.Stage.COMPLAINT);
    finish();
    assertThat(model.stageProperty().get()).isEqualTo(FindViewModel.Stage.COMPLAINT);
    assertThat(model.openCaseProperty().get()).isEmpty();
    assertThat(model.problemProperty().get()).isEmpty();
    assertThat(desk.opened()).isEmpty();
  }

  @Test
  void aCaseThatCannotBeOpenedTellsWhy() {
    FindViewModel failing = find(new FailingDesk());
    failing.complain("pumper.json", FakeVehicles.pumper(), Optional.empty());
    failing.open();
    finish();
    assertThat(failing.stageProperty().get()).isEqualTo(FindViewModel.Stage.COMPLAINT);
    assertThat(failing.problemProperty().get()).contains("basic").contains("another meter");
  }

  /** Opens nothing. */
  private static final class FailingDesk implements CaseDesk {
    @Override
    public Complaint understand(Vehicle vehicle, String words) throws Problem {
      throw new Problem("complaint", words, "none");
    }

    @Override
    public FindCase open(NewCase newCase, Progress progress) throws Problem {
      throw new Problem("meter", newCase.meter(), "another meter");
    }

    @Override
    public String handOver(NewCase newCase, List<Before> readings) {
      throw new UnsupportedOperationException("nothing is handed over here");
    }

    @Override
    public FindCase resume(String caseId, Vehicle vehicle, Progress progress) {
      throw new CancellationException();
    }
  }

  @Test
  void progressIsToldWhileTheCaseOpens() {
    List<String> told = new ArrayList<>();
    model.progressWordsProperty().addListener((o, was, is) -> told.add(is));
    model.complain("pumper.json", FakeVehicles.pumper(), Optional.empty());
    model.open();
    finish();
    assertThat(told).contains("Solving what each failure would read");
    assertThat(model.progressProperty().get()).isPositive();
  }

  @Test
  void anotherVehicleDoesNotDisturbAnOpenCase() {
    model.complain("pumper.json", FakeVehicles.pumper(), Optional.empty());
    model.open();
    finish();
    model.vehicleChosen("other.json", FakeVehicles.pumper());
    assertThat(model.openCaseProperty().get()).isPresent();
    model.leaveCase();
    model.open();
    finish();
    assertThat(desk.opened().get(1).vehicleName()).isEqualTo("other.json");
  }

  @Test
  void typedWordsChooseCircuitAndKind() {
    complaint.begin("pumper.json", FakeVehicles.pumper(), Optional.empty());
    complaint.wordsProperty().set("horn stuck on");
    assertThat(complaint.chosen()).map(Circuit::id).contains("horn");
    assertThat(complaint.kindProperty().get()).isEqualTo(ComplaintKind.STUCK_ON);
  }

  @Test
  void partOfANameNarrowsTheCircuits() {
    complaint.begin("pumper.json", FakeVehicles.pumper(), Optional.empty());
    complaint.wordsProperty().set("lamp");
    assertThat(complaint.circuits()).extracting(Circuit::id).containsExactly("tail", "stop");
  }

  @Test
  void wordsThatNameNothingSaySoAndLeaveAllCircuits() {
    complaint.begin("pumper.json", FakeVehicles.pumper(), Optional.empty());
    complaint.wordsProperty().set("toaster dead");
    assertThat(complaint.problemProperty().get()).contains("toaster");
    assertThat(complaint.circuits()).hasSize(5);
  }
}
