package loopwright.ui.wiring;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.VehicleStore;
import loopwright.casework.edit.Workpiece;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** The vehicle that is worked on: its edits, its file, and what keeps it from being solved. */
public final class WiringViewModel {

  /** What was last told. */
  public record Told(Tone tone, String words) {}

  /** How it is told. */
  public enum Tone {
    PLAIN,
    PROBLEM
  }

  private static final Told NOTHING = new Told(Tone.PLAIN, "");

  private final VehicleStore store;
  private final Worker worker;
  private final BiConsumer<String, Vehicle> publish;
  private final ReadOnlyObjectWrapper<Optional<Vehicle>> vehicle =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(NOTHING);
  private final ObservableList<VehicleCheck.Finding> findings = FXCollections.observableArrayList();
  private Optional<Workpiece> workpiece = Optional.empty();
  private Optional<VehicleStore.Opened> file = Optional.empty();
  private final List<Runnable> onOpen = new ArrayList<>();
  private final List<Consumer<Change>> onBack = new ArrayList<>();
  private String name = "";
  private int checked;

  /**
   * Makes the view model with nothing open.
   *
   * @param store keeps the vehicles
   * @param worker runs what takes a while
   * @param publish gets each version that can be solved, with the name it is found by
   */
  public WiringViewModel(VehicleStore store, Worker worker, BiConsumer<String, Vehicle> publish) {
    this.store = store;
    this.worker = worker;
    this.publish = publish;
  }

  /** The vehicle as it is now. */
  public ReadOnlyObjectProperty<Optional<Vehicle>> vehicleProperty() {
    return vehicle.getReadOnlyProperty();
  }

  /** Whether there is work that no file holds. */
  public ReadOnlyBooleanProperty unsavedProperty() {
    return unsaved.getReadOnlyProperty();
  }

  /** What was last told. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** What keeps the vehicle from being solved, as of the last check. */
  public ObservableList<VehicleCheck.Finding> findings() {
    return findings;
  }

  /** What is called before another vehicle is shown. */
  void onOpen(Runnable listener) {
    onOpen.add(listener);
  }

  /** What is called after an edit was taken back or made again. */
  void onBack(Consumer<Change> listener) {
    onBack.add(listener);
  }

  /** Runs work off the window's thread. */
  Worker worker() {
    return worker;
  }

  void tell(Tone tone, String words) {
    told.set(new Told(tone, words));
  }

  /** What undo would take back. */
  public Optional<String> undoTitle() {
    return workpiece.flatMap(Workpiece::undoTitle);
  }

  /** What redo would make again. */
  public Optional<String> redoTitle() {
    return workpiece.flatMap(Workpiece::redoTitle);
  }

  /**
   * Takes up the vehicle that the window shows, unless one is being worked on.
   *
   * @param shown its name, a full path if it comes from a file, and the vehicle
   */
  public void takeUp(String shown, Vehicle loaded) {
    if (name.equals(shown) || unsaved.get()) {
      return;
    }
    Optional<Path> path = path(shown);
    if (path.isPresent()) {
      open(path.get());
    } else {
      leaveFile();
      name = shown;
      become(new Workpiece(loaded));
    }
  }

  private static Optional<Path> path(String name) {
    try {
      return Optional.of(Path.of(name)).filter(Path::isAbsolute);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Opens a file to work on. */
  public void open(Path path) {
    worker.run(
        () -> store.open(path),
        opened -> {
          leaveFile();
          file = Optional.of(opened);
          name = opened.file().toString();
          become(new Workpiece(opened.vehicle()));
          opened.readOnly().ifPresent(why -> tell(Tone.PROBLEM, Texts.of("wiring.lookOnly", why)));
        },
        failed -> tell(Tone.PROBLEM, String.valueOf(failed.getMessage())));
  }

  /** Begins work on a vehicle that has no file yet. */
  public void begin(Vehicle fresh) {
    leaveFile();
    name = fresh.name();
    become(new Workpiece(fresh));
  }

  private void leaveFile() {
    file.ifPresent(VehicleStore.Opened::close);
    file = Optional.empty();
  }

  private void become(Workpiece work) {
    onOpen.forEach(Runnable::run);
    workpiece = Optional.of(work);
    tell(Tone.PLAIN, "");
    follow(work);
  }

  private void follow(Workpiece work) {
    Vehicle now = work.vehicle();
    vehicle.set(Optional.of(now));
    unsaved.set(work.unsaved());
    int asked = ++checked;
    worker.run(
        () -> VehicleCheck.check(now),
        found -> {
          if (asked == checked) {
            findings.setAll(found);
            if (found.isEmpty()) {
              publish.accept(name, now);
            }
          }
        },
        failed -> tell(Tone.PROBLEM, String.valueOf(failed.getMessage())));
  }

  /**
   * Makes an edit.
   *
   * @throws Problem if it can't be made; nothing has changed then
   */
  public Change make(Edit edit) throws Problem {
    Workpiece work =
        workpiece.orElseThrow(() -> new Problem("vehicle", "", "open one first: F2 or Ctrl+O"));
    Change change = work.make(edit);
    changed(work, change);
    return change;
  }

  /** Takes the last edit back. */
  public void undo() {
    workpiece.ifPresent(
        work ->
            work.undo()
                .ifPresentOrElse(
                    change -> {
                      changed(work, change);
                      onBack.forEach(l -> l.accept(change));
                      tell(Tone.PLAIN, Texts.of("wiring.undone", change.title()));
                    },
                    () -> tell(Tone.PLAIN, Texts.of("wiring.nothingToUndo"))));
  }

  /** Makes the edit last taken back again. */
  public void redo() {
    workpiece.ifPresent(
        work ->
            work.redo()
                .ifPresentOrElse(
                    change -> {
                      changed(work, change);
                      onBack.forEach(l -> l.accept(change));
                      tell(Tone.PLAIN, Texts.of("wiring.redone", change.title()));
                    },
                    () -> tell(Tone.PLAIN, Texts.of("wiring.nothingToRedo"))));
  }

  private void changed(Workpiece work, Change change) {
    follow(work);
    tell(
        Tone.PLAIN,
        change.told().isEmpty() ? change.title() : String.join(". ", List.copyOf(change.told())));
  }
}
