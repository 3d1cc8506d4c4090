package loopwright.ui.find;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.SettingView;
import loopwright.model.Vehicle;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** Finding a fault, from the complaint to the open case. */
public final class FindViewModel {

  /** Where it stands. */
  public enum Stage {
    NO_VEHICLE,
    COMPLAINT,
    OPENING,
    CASE
  }

  /** Opens a case one way or the other. */
  @FunctionalInterface
  private interface Opener {
    Started open(CaseDesk.Progress progress) throws Problem;
  }

  private record Started(FindCase findCase, Optional<CaseViewModel.Practice> practice) {}

  private record Chosen(String name, Vehicle vehicle) {}

  private record Opened(
      FindCase findCase,
      CaseView view,
      List<PointView> points,
      List<SettingView> settings,
      Optional<CaseViewModel.Practice> practice) {}

  private final CaseDesk desk;
  private final Worker worker;
  private final ComplaintViewModel complaint;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.NO_VEHICLE);
  private final ReadOnlyStringWrapper progressWords = new ReadOnlyStringWrapper("");
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(-1);
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Optional<CaseViewModel>> openCase =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Chosen> chosen = Optional.empty();
  private AtomicBoolean cancelled = new AtomicBoolean();

  /**
   * Makes the view model.
   *
   * @param desk opens cases
   * @param complaint the complaint form
   * @param worker where opening runs
   */
  public FindViewModel(CaseDesk desk, ComplaintViewModel complaint, Worker worker) {
    this.desk = desk;
    this.complaint = complaint;
    this.worker = worker;
  }

  /** Where it stands. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** The complaint form. */
  public ComplaintViewModel complaint() {
    return complaint;
  }

  /** The open case. */
  public ReadOnlyObjectProperty<Optional<CaseViewModel>> openCaseProperty() {
    return openCase.getReadOnlyProperty();
  }

  /** What opening is busy with, in words. */
  public ReadOnlyStringProperty progressWordsProperty() {
    return progressWords.getReadOnlyProperty();
  }

  /** How much of opening is done, 0 to 1; -1 while unknown. */
  public ReadOnlyDoubleProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** Why no case could be opened; empty if none failed. */
  public ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** Begins a complaint about a vehicle; an open case is closed and kept. */
  public void complain(String vehicleName, Vehicle vehicle, Optional<String> circuit) {
    closeCase();
    chosen = Optional.of(new Chosen(vehicleName, vehicle));
    complaint.begin(vehicleName, vehicle, circuit);
    problem.set("");
    stage.set(Stage.COMPLAINT);
  }

  /** Opens the case that the complaint tells. */
  public void open() {
    complaint
        .newCase()
        .ifPresent(newCase -> open(p -> new Started(desk.open(newCase, p), Optional.empty())));
  }

  /** Takes up a kept case. */
  public void resume(String caseId, String vehicleName, Vehicle vehicle) {
    closeCase();
    complaint.begin(vehicleName, vehicle, Optional.empty());
    open(p -> new Started(desk.resume(caseId, vehicle, p), Optional.empty()));
  }

  /** Opens a ready-made case with its practice meter. */
  public void practise(ReadyCases ready, ReadyCases.Entry entry, Vehicle vehicle) {
    closeCase();
    complaint.begin(entry.vehicleName(), vehicle, Optional.empty());
    open(
        p -> {
          ReadyCases.Opened opened = ready.open(entry.id(), vehicle, p);
          return new Started(
              opened.findCase(),
              Optional.of(new CaseViewModel.Practice(opened.meter(), entry.story())));
        });
  }

  private void open(Opener opener) {
    AtomicBoolean givenUp = new AtomicBoolean();
    cancelled = givenUp;
    problem.set("");
    progress.set(-1);
    progressWords.set(Texts.of("opening.start"));
    stage.set(Stage.OPENING);
    CaseDesk.Progress told =
        new CaseDesk.Progress() {
          @Override
          public void at(String step, double share) {
            worker.onWindow(
                () -> {
                  if (!givenUp.get()) {
                    progressWords.set(step);
                    progress.set(share);
                  }
                });
          }

          @Override
          public boolean cancelled() {
            return givenUp.get();
          }
        };
    worker.run(
        () -> {
          Started started = opener.open(told);
          FindCase opened = started.findCase();
          return new Opened(
              opened, opened.view(), opened.points(), opened.settings(), started.practice());
        },
        opened -> {
          if (givenUp.get()) {
            opened.findCase().close();
            return;
          }
          complaint.ownMeter().connect();
          openCase.set(
              Optional.of(
                  new CaseViewModel(
                      opened.findCase(),
                      opened.view(),
                      opened.points(),
                      opened.settings(),
                      opened.practice(),
                      complaint.ownMeter(),
                      worker.another())));
          stage.set(Stage.CASE);
        },
        failed -> {
          if (givenUp.get()) {
            return;
          }
          if (!(failed instanceof CancellationException)) {
            problem.set(
                failed instanceof Problem p
                    ? Texts.of("entry.problem", p.value(), p.accepted())
                    : Texts.of("case.failed", String.valueOf(failed.getMessage())));
          }
          stage.set(Stage.COMPLAINT);
        });
  }

  /** Gives up opening; what is still being worked out is thrown away when it is done. */
  public void cancel() {
    cancelled.set(true);
    if (stage.get() == Stage.OPENING) {
      stage.set(Stage.COMPLAINT);
    }
  }

  /** Another vehicle is at hand; an open case is not disturbed. */
  public void vehicleChosen(String vehicleName, Vehicle vehicle) {
    chosen = Optional.of(new Chosen(vehicleName, vehicle));
    if (stage.get() == Stage.NO_VEHICLE || stage.get() == Stage.COMPLAINT) {
      complain(vehicleName, vehicle, Optional.empty());
    }
  }

  /** Leaves the case for a new complaint about the vehicle at hand; it is kept. */
  public void leaveCase() {
    chosen.ifPresent(c -> complain(c.name(), c.vehicle(), Optional.empty()));
  }

  private void closeCase() {
    openCase.get().ifPresent(CaseViewModel::close);
    openCase.set(Optional.empty());
  }
}
