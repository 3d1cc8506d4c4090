package loopwright.ui.vehicle;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.LoopView;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.Worker;

/** The vehicle: chosen from the library, then its circuits, parts and loops. */
public final class VehicleViewModel {

  /** A vehicle with the name by which it is found again. */
  public record Named(String name, Vehicle vehicle) {}

  /** So many vehicles are remembered. */
  private static final int LATELY = 6;

  private final VehicleLibrary library;
  private final LoopSource loops;
  private final Preferences preferences;
  private final Worker worker;
  private final ObservableList<VehicleLibrary.Entry> entries = FXCollections.observableArrayList();
  private final IntegerProperty entry = new SimpleIntegerProperty(0);
  private final ReadOnlyObjectWrapper<Optional<Named>> vehicle =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<String> defects = FXCollections.observableArrayList();
  private final ReadOnlyBooleanWrapper choosing = new ReadOnlyBooleanWrapper(true);
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final IntegerProperty circuit = new SimpleIntegerProperty(0);
  private final ReadOnlyObjectWrapper<Optional<LoopView>> loop =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final StringProperty filter = new SimpleStringProperty("");
  private final ObservableList<Part> parts = FXCollections.observableArrayList();
  private int asked;

  /**
   * Makes the view model.
   *
   * @param library where vehicles come from
   * @param loops lays loops out
   * @param preferences remembers the vehicle
   * @param worker where loading runs
   */
  public VehicleViewModel(
      VehicleLibrary library, LoopSource loops, Preferences preferences, Worker worker) {
    this.library = library;
    this.loops = loops;
    this.preferences = preferences;
    this.worker = worker;
    busy.bind(worker.pendingProperty().greaterThan(0));
    circuit.addListener(o -> circuitChanged());
    filter.addListener(o -> filterParts());
    refreshEntries();
  }

  /** The vehicles to choose from. */
  public ObservableList<VehicleLibrary.Entry> entries() {
    return entries;
  }

  /** Index of the marked entry. */
  public IntegerProperty entryProperty() {
    return entry;
  }

  /** The loaded vehicle. */
  public ReadOnlyObjectProperty<Optional<Named>> vehicleProperty() {
    return vehicle.getReadOnlyProperty();
  }

  /** What is wrong with the vehicle chosen last; empty if it loaded. */
  public ObservableList<String> defects() {
    return defects;
  }

  /** Whether a vehicle is being chosen. */
  public ReadOnlyBooleanProperty choosingProperty() {
    return choosing.getReadOnlyProperty();
  }

  /** Whether something is being loaded or laid out. */
  public ReadOnlyBooleanProperty busyProperty() {
    return busy.getReadOnlyProperty();
  }

  /** Index of the chosen circuit. */
  public IntegerProperty circuitProperty() {
    return circuit;
  }

  /** The loop of the chosen circuit, once laid out. */
  public ReadOnlyObjectProperty<Optional<LoopView>> loopProperty() {
    return loop.getReadOnlyProperty();
  }

  /** What parts must contain to be listed. */
  public StringProperty filterProperty() {
    return filter;
  }

  /** The parts listed. */
  public ObservableList<Part> parts() {
    return parts;
  }

  /** The circuits of the vehicle. */
  public List<Circuit> circuits() {
    return vehicle.get().map(v -> v.vehicle().circuits()).orElse(List.of());
  }

  /** The chosen circuit. */
  public Optional<Circuit> chosenCircuit() {
    int i = circuit.get();
    return i >= 0 && i < circuits().size() ? Optional.of(circuits().get(i)) : Optional.empty();
  }

  /** Shows the library again. */
  public void chooseAnother() {
    refreshEntries();
    defects.clear();
    choosing.set(true);
  }

  /** Goes back to the loaded vehicle, if there is one. */
  public void backToVehicle() {
    if (vehicle.get().isPresent()) {
      defects.clear();
      choosing.set(false);
    }
  }

  private void refreshEntries() {
    entries.setAll(library.entries());
  }

  /** Moves the mark in the library. */
  public void moveEntry(int by) {
    if (!entries.isEmpty()) {
      entry.set(Math.max(0, Math.min(entries.size() - 1, entry.get() + by)));
    }
  }

  /** Loads the marked entry. */
  public void loadMarked() {
    int i = entry.get();
    if (i >= 0 && i < entries.size()) {
      load(entries.get(i).name(), () -> {});
    }
  }

  /** Loads the vehicle used last time, if it is still there. */
  public void loadLast() {
    last().ifPresent(name -> load(name, () -> {}));
  }

  /** Loads the vehicle used last time, or else the first one that comes with the program. */
  public void loadLastOrDemo() {
    last()
        .or(
            () ->
                entries.stream()
                    .filter(e -> e.shelf() == VehicleLibrary.Shelf.DEMO)
                    .map(VehicleLibrary.Entry::name)
                    .findFirst())
        .ifPresent(name -> load(name, () -> {}));
  }

  private Optional<String> last() {
    return preferences
        .read(Preferences.Item.VEHICLE)
        .filter(name -> entries.stream().anyMatch(e -> e.name().equals(name)));
  }

  /**
   * Loads a vehicle.
   *
   * @param name an entry's name or a file's path
   * @param then what follows once it is loaded without defects
   */
  public void load(String name, Runnable then) {
    if (vehicle.get().map(Named::name).equals(Optional.of(name)) && !choosing.get()) {
      then.run();
      return;
    }
    defects.clear();
    worker.run(
        () -> library.load(name),
        loaded -> {
          if (loaded instanceof VehicleLibrary.Loaded.Ready ready) {
            take(ready);
            then.run();
          } else if (loaded instanceof VehicleLibrary.Loaded.Faulty faulty) {
            defects.setAll(faulty.defects());
            choosing.set(true);
          }
        },
        failed -> {
          defects.setAll(Texts.of("vehicle.failed", name, String.valueOf(failed.getMessage())));
          choosing.set(true);
        });
  }

  private void take(VehicleLibrary.Loaded.Ready ready) {
    preferences.keep(Preferences.Item.VEHICLE, ready.name());
    keepLately(ready.name());
    loop.set(Optional.empty());
    vehicle.set(Optional.of(new Named(ready.name(), ready.vehicle())));
    choosing.set(false);
    filter.set("");
    filterParts();
    if (circuit.get() == 0) {
      circuitChanged();
    } else {
      circuit.set(0);
    }
  }

  private void keepLately(String name) {
    String kept = preferences.read(Preferences.Item.VEHICLES).orElse("");
    preferences.keep(
        Preferences.Item.VEHICLES,
        Stream.concat(Stream.of(name), kept.lines().filter(n -> !n.equals(name)))
            .limit(LATELY)
            .collect(Collectors.joining("\n")));
  }

  /** Shows the vehicle as it was edited elsewhere; the chosen circuit stays chosen. */
  public void edited(String name, Vehicle now) {
    if (vehicle.get().map(Named::vehicle).equals(Optional.of(now))) {
      return;
    }
    Optional<String> chosen = chosenCircuit().map(Circuit::id);
    vehicle.set(Optional.of(new Named(name, now)));
    choosing.set(false);
    filterParts();
    List<String> ids = circuits().stream().map(Circuit::id).toList();
    int at = Math.max(0, chosen.map(ids::indexOf).orElse(0));
    if (circuit.get() == at) {
      circuitChanged();
    } else {
      circuit.set(at);
    }
  }

  private void circuitChanged() {
    int now = ++asked;
    vehicle
        .get()
        .ifPresent(
            named ->
                chosenCircuit()
                    .ifPresent(
                        c ->
                            worker.run(
                                () -> loops.loop(named.vehicle(), c.id()),
                                found -> {
                                  if (now == asked) {
                                    loop.set(found);
                                  }
                                },
                                failed -> {
                                  if (now == asked) {
                                    loop.set(Optional.empty());
                                  }
                                })));
  }

  /** Moves the choice of circuit. */
  public void moveCircuit(int by) {
    if (!circuits().isEmpty()) {
      circuit.set(Math.max(0, Math.min(circuits().size() - 1, circuit.get() + by)));
    }
  }

  private void filterParts() {
    String wanted = filter.get().toLowerCase(Locale.ROOT).trim();
    parts.setAll(
        vehicle.get().map(v -> v.vehicle().parts()).orElse(List.of()).stream()
            .filter(p -> contains(p, wanted))
            .toList());
  }

  private static boolean contains(Part part, String wanted) {
    return String.join(
            " ",
            part.id(),
            part.name(),
            part.label(),
            part.where(),
            part.kind().said(),
            PartWords.of(part))
        .toLowerCase(Locale.ROOT)
        .contains(wanted);
  }
}
