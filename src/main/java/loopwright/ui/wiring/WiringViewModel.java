package loopwright.ui.wiring;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.Workpiece;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Told.Tone;
import loopwright.ui.Worker;

/** The vehicle that is worked on: its edits, and what keeps it from being solved. */
public final class WiringViewModel {

  private final Worker worker;
  private final BiConsumer<String, Vehicle> publish;
  private final WiringFile file;
  private final ReadOnlyObjectWrapper<Optional<Vehicle>> vehicle =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private final ObservableList<VehicleCheck.Finding> findings = FXCollections.observableArrayList();
  private final List<Runnable> onOpen = new ArrayList<>();
  private final List<Consumer<Change>> onBack = new ArrayList<>();
  private final AtomicInteger asked = new AtomicInteger();
  private Optional<Workpiece> workpiece = Optional.empty();
  private String shown = "";

  /**
   * Makes the view model with nothing open.
   *
   * @param keeping where vehicles are kept
   * @param worker runs what takes a while
   * @param publish gets each version that can be solved, with the name it is found by
   */
  public WiringViewModel(Keeping keeping, Worker worker, BiConsumer<String, Vehicle> publish) {
    this.worker = worker;
    this.publish = publish;
    this.file = new WiringFile(this, keeping, worker.another());
  }

  /** The vehicle's file. */
  public WiringFile file() {
    return file;
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

  /**
   * Takes up the vehicle that the window shows. Unsaved work on another one is kept aside.
   *
   * @param name its name, a full path if it comes from a file
   * @param loaded the vehicle
   */
  public void takeUp(String name, Vehicle loaded) {
    boolean same = shown.equals(name) || file.name().equals(name);
    if (same && vehicle.get().isPresent()) {
      return;
    }
    shown = name;
    path(name).ifPresentOrElse(file::open, () -> file.begin(name, loaded));
  }

  /** The full path that a vehicle's name is; empty if it comes from no file. */
  static Optional<Path> path(String name) {
    try {
      return Optional.of(Path.of(name)).filter(Path::isAbsolute);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Shows a vehicle with nothing edited yet. */
  void become(Vehicle opened) {
    onOpen.forEach(Runnable::run);
    Optional<String> left = unsaved.get() ? vehicle.get().map(Vehicle::name) : Optional.empty();
    Workpiece work = new Workpiece(opened);
    workpiece = Optional.of(work);
    tell(Tone.PLAIN, left.map(name -> Texts.of("wiring.leftBehind", name)).orElse(""));
    follow(work);
  }

  /** A version of the vehicle was saved. */
  void saved(Vehicle version) {
    workpiece.ifPresent(
        work -> {
          work.saved(version);
          unsaved.set(work.unsaved());
        });
  }

  private void follow(Workpiece work) {
    Vehicle now = work.vehicle();
    vehicle.set(Optional.of(now));
    unsaved.set(work.unsaved());
    int mine = asked.incrementAndGet();
    worker.run(
        () -> mine == asked.get() ? VehicleCheck.check(now) : List.<VehicleCheck.Finding>of(),
        found -> {
          if (mine == asked.get()) {
            findings.setAll(found);
            publish();
          }
        },
        failed -> tell(Tone.PROBLEM, String.valueOf(failed.getMessage())));
  }

  /** Lets the rest of the window have the vehicle, if it can be solved. */
  void publish() {
    if (findings.isEmpty()) {
      shown = file.name();
      vehicle.get().ifPresent(v -> publish.accept(file.name(), v));
    }
  }

  /**
   * Makes an edit.
   *
   * @throws Problem if it can't be made; nothing has changed then
   */
  public Change make(Edit edit) throws Problem {
    Workpiece work =
        workpiece.orElseThrow(() -> new Problem("vehicle", "", Texts.of("wiring.openFirst")));
    Vehicle before = work.vehicle();
    Change change = work.make(edit);
    boolean nothing = work.vehicle().equals(before);
    changed(work, change);
    tell(
        Tone.PLAIN,
        change.told().isEmpty()
            ? nothing ? "" : Texts.of("wiring.done", change.title())
            : String.join(". ", change.told()));
    return change;
  }

  /** Makes an edit, or tells why it can't be made. */
  boolean tryTo(Edit edit) {
    try {
      make(edit);
      return true;
    } catch (Problem e) {
      tell(Tone.PROBLEM, Texts.of("wiring.wrong", e.field(), e.value(), e.accepted()));
      return false;
    }
  }

  /** Takes the last edit back. */
  public void undo() {
    back(Workpiece::undo, "wiring.undone", "wiring.nothingToUndo");
  }

  /** Makes the edit last taken back again. */
  public void redo() {
    back(Workpiece::redo, "wiring.redone", "wiring.nothingToRedo");
  }

  private void back(Function<Workpiece, Optional<Change>> how, String done, String nothing) {
    Optional<Change> change = workpiece.flatMap(how);
    if (change.isEmpty()) {
      tell(Tone.PLAIN, Texts.of(nothing));
      return;
    }
    changed(workpiece.orElseThrow(), change.get());
    onBack.forEach(l -> l.accept(change.get()));
    tell(Tone.PLAIN, Texts.of(done, change.get().title()));
  }

  private void changed(Workpiece work, Change change) {
    follow(work);
    file.keepAside();
  }
}
