package loopwright.ui.prove;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.Answer;
import loopwright.casework.MeterInHand;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.prove.ProveView;
import loopwright.casework.prove.Proving;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;
import loopwright.ui.find.EntryUnit;
import loopwright.ui.find.EntryViewModel;
import loopwright.ui.find.MeterViewModel;

/** A vehicle on its first power: what is proven, what to do now, the answer while it is typed. */
public final class CircuitViewModel {

  /** Where it stands. */
  public enum Stage {
    NO_VEHICLE,
    WORKING,
    READY,
    FAILED
  }

  private record Chosen(String name, Vehicle vehicle) {}

  private final ProveDesk desk;
  private final Preferences preferences;
  private final Worker worker;
  private final EntryViewModel entry = new EntryViewModel();
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.NO_VEHICLE);
  private final ReadOnlyObjectWrapper<Optional<ProveView>> view =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private Consumer<String> findFault = id -> {};
  private MeterViewModel meter = new MeterViewModel(Preferences.NONE);
  private Optional<Chosen> chosen = Optional.empty();
  private Optional<Chosen> shown = Optional.empty();
  private Proving proving;

  CircuitViewModel(ProveDesk desk, Preferences preferences, Worker worker) {
    this.desk = desk;
    this.preferences = preferences;
    this.worker = worker;
  }

  /** Says how a case is gone to. */
  void findFaultIn(Consumer<String> go) {
    findFault = go;
  }

  /** Says which meter sends its readings. */
  void readBy(MeterViewModel own) {
    meter = own;
  }

  /** The person's own meter, if it sends its readings. */
  MeterViewModel meter() {
    return meter;
  }

  /** The meter is to measure what is asked now; what it says is shown. */
  void lookAtMeter() {
    now().flatMap(ProveView.Now::kind).ifPresent(meter::follow);
  }

  /** Where it stands. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** What is proven and what to do now; empty until it is worked out. */
  public ReadOnlyObjectProperty<Optional<ProveView>> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What was told last. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** The value while it is typed. */
  public EntryViewModel entry() {
    return entry;
  }

  /** The units that the step at hand is read in; none where nothing is read. */
  public List<EntryUnit> units() {
    return now().flatMap(ProveView.Now::kind).map(EntryUnit::of).orElse(List.of());
  }

  private Optional<ProveView.Now> now() {
    return view.get().flatMap(ProveView::now);
  }

  private Optional<ProveView.Trouble> trouble() {
    return now().flatMap(ProveView.Now::trouble);
  }

  void show(String name, Vehicle vehicle) {
    chosen = Optional.of(new Chosen(name, vehicle));
  }

  void opened() {
    if (chosen.isEmpty()) {
      return;
    }
    if (!chosen.equals(shown)) {
      Chosen take = chosen.get();
      shown = chosen;
      stage.set(Stage.WORKING);
      String meter = preferences.read(Preferences.Item.METER).orElse(MeterInHand.USUAL);
      worker.run(
          () -> {
            Proving taken = desk.open(take.name(), take.vehicle(), meter);
            return new Taken(taken, taken.view());
          },
          taken -> {
            proving = taken.proving();
            took(taken.view());
          },
          failed -> {
            // Asked again the next time it comes into sight.
            shown = Optional.empty();
            failed(failed);
            stage.set(Stage.FAILED);
          });
    } else if (stage.get() == Stage.READY) {
      run(
          () -> {
            proving.refresh();
            return proving.view();
          });
    }
  }

  private record Taken(Proving proving, ProveView view) {}

  private void took(ProveView is) {
    entry.clear();
    told.set(is.said().isEmpty() ? Told.NOTHING : Told.plain(is.said()));
    view.set(Optional.of(is));
    stage.set(Stage.READY);
  }

  private void failed(Exception e) {
    told.set(
        Told.problem(
            e instanceof Problem p
                ? Texts.of("entry.problem", p.value(), p.accepted())
                : Texts.of("case.failed", String.valueOf(e.getMessage()))));
  }

  private void run(Callable<ProveView> work) {
    if (worker.pendingProperty().get() == 0) {
      worker.run(work, this::took, this::failed);
    }
  }

  // ---- what hands do -------------------------------------------------------------------------

  /** Takes one of the choices, from 0: what was seen, or done and not. */
  public void pick(int choice) {
    now()
        .filter(n -> choice >= 0 && choice < n.choiceWords().size())
        .ifPresent(
            n ->
                run(
                    () ->
                        n.kind().isEmpty()
                            ? proving.confirm(choice == 0)
                            : proving.answer(new Answer.Saw(n.choices().get(choice)))));
  }

  /** Sets the unit of what was typed. */
  public void unit(EntryUnit unit) {
    if (!entry.unit(unit)) {
      told.set(Told.problem(Texts.of("entry.unitHint")));
    }
  }

  /**
   * Enter: takes the value typed, with the usual unit where none was set, or else what the person's
   * own meter steadily reads; where all is done, goes on to the next.
   */
  public void count() {
    if (stage.get() != Stage.READY) {
      return;
    }
    if (entry.text().isEmpty() && !units().isEmpty() && meter.present()) {
      lookAtMeter();
      Optional<String> read = meter.take();
      if (read.isEmpty()) {
        told.set(Told.problem(Texts.of("entry.meterNot")));
        return;
      }
      entry.type(read.get());
    }
    if (now().isEmpty()) {
      goOn();
    } else if (!units().isEmpty() && entry.hasNumber() && !entry.complete()) {
      told.set(Told.problem(Texts.of("entry.unitHint")));
    } else if (!units().isEmpty() && entry.complete()) {
      String value = entry.plain();
      run(() -> proving.answer(new Answer.Text(value)));
    }
  }

  /** Goes on to the first that isn't proven. */
  public void goOn() {
    items().stream()
        .filter(i -> i.state() != ProveView.State.PROVEN && i.state() != ProveView.State.FAILED)
        .findFirst()
        .ifPresent(i -> run(() -> proving.choose(i.id())));
  }

  private List<ProveView.Item> items() {
    return view.get().map(ProveView::items).orElse(List.of());
  }

  /** Turns to a subject. */
  public void choose(String id) {
    run(() -> proving.choose(id));
  }

  /** Moves in the list. */
  public void move(int by) {
    List<String> ids = items().stream().map(ProveView.Item::id).toList();
    if (!ids.isEmpty()) {
      int at = ids.indexOf(view.get().orElseThrow().chosen());
      choose(ids.get(Math.max(0, Math.min(ids.size() - 1, at + by))));
    }
  }

  /** Proves the subject at hand again. */
  public void again() {
    if (stage.get() == Stage.READY) {
      run(() -> proving.again());
    }
  }

  /** Whether {@link #find} leads anywhere now. */
  public boolean canFind() {
    return trouble().filter(t -> t.canFind() || t.caseId().isPresent()).isPresent();
  }

  /** Goes to the case over what is wrong; opens one if there is none. */
  public void find() {
    if (!canFind() || worker.pendingProperty().get() > 0) {
      return;
    }
    Optional<String> open = trouble().flatMap(ProveView.Trouble::caseId);
    if (open.isPresent()) {
      findFault.accept(open.get());
      return;
    }
    told.set(Told.plain(Texts.of("prove.opening")));
    worker.run(
        () -> {
          String id = proving.findFault();
          return new Handed(id, proving.view());
        },
        handed -> {
          took(handed.view());
          findFault.accept(handed.caseId());
        },
        this::failed);
  }

  private record Handed(String caseId, ProveView view) {}
}
