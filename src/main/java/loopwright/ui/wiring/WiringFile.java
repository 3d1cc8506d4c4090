package loopwright.ui.wiring;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.UnsavedWork;
import loopwright.casework.edit.VehicleStore;
import loopwright.casework.edit.VehicleStore.Opened;
import loopwright.casework.edit.VehicleStore.Version;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;
import loopwright.ui.Worker;

/**
 * The file of the vehicle that is worked on: saving, previous versions, unsaved work kept aside.
 */
public final class WiringFile {
  private static final int MOST_NAMED = 20;

  private final WiringViewModel work;
  private final VehicleStore store;
  private final UnsavedWork aside;
  private final Path home;
  private final Worker worker;
  private final ReadOnlyObjectWrapper<Optional<Opened>> opened =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper name = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper mayOverwrite = new ReadOnlyBooleanWrapper();
  private final ObservableList<Version> versions = FXCollections.observableArrayList();
  private final ObservableList<UnsavedWork.Kept> kept = FXCollections.observableArrayList();
  private final AtomicInteger asideAsked = new AtomicInteger();
  private boolean opening;

  WiringFile(WiringViewModel work, Keeping keeping, Worker worker) {
    this.work = work;
    this.store = keeping.store();
    this.aside = keeping.unsaved();
    this.home = keeping.home();
    this.worker = worker;
    refreshKept();
  }

  /** The file, while one is open. */
  public ReadOnlyObjectProperty<Optional<Opened>> openedProperty() {
    return opened.getReadOnlyProperty();
  }

  /** The file's full path, or what the vehicle is called that has none. */
  public ReadOnlyStringProperty nameProperty() {
    return name.getReadOnlyProperty();
  }

  String name() {
    return name.get();
  }

  /** The folder proposed for a first file. */
  Path home() {
    return home;
  }

  /** Why nothing can be saved here, in words; empty if it can. */
  public Optional<String> readOnly() {
    return opened.get().flatMap(Opened::readOnly);
  }

  /** Whether saving failed because somebody else changed the file, so that it may be saved over. */
  public ReadOnlyBooleanProperty mayOverwriteProperty() {
    return mayOverwrite.getReadOnlyProperty();
  }

  /** The previous versions, newest first. */
  public ObservableList<Version> versions() {
    return versions;
  }

  /** Unsaved work that was kept, of vehicles that aren't open here. */
  public ObservableList<UnsavedWork.Kept> kept() {
    return kept;
  }

  private <T> void later(Callable<T> what, Consumer<T> then) {
    worker.run(what, then, this::tell);
  }

  private void tell(Throwable failed) {
    work.tell(
        Tone.PROBLEM,
        failed instanceof Problem p
            ? Texts.of("wiring.fileProblem", p.value(), p.accepted())
            : String.valueOf(failed.getMessage()));
  }

  /** A file with the unsaved work on it that was kept. */
  private record Found(Opened file, Optional<UnsavedWork.Kept> copy) {}

  /** Opens a file to work on; it need not hold together yet. Unsaved work on it comes back. */
  public void open(Path path) {
    opening = true;
    worker.run(
        () -> {
          Opened file = store.open(path);
          return new Found(file, copyOf(file.file().toString()));
        },
        found -> {
          opening = false;
          close();
          opened.set(Optional.of(found.file()));
          name.set(found.file().file().toString());
          work.become(found.file().vehicle());
          bringBack(found.copy());
          refreshVersions();
          refreshKept();
          readOnly().ifPresent(why -> work.tell(Tone.PROBLEM, Texts.of("wiring.lookOnly", why)));
        },
        this::notOpened);
  }

  private void notOpened(Throwable failed) {
    opening = false;
    tell(failed);
  }

  /** Whether another vehicle is on its way here. */
  boolean opening() {
    return opening;
  }

  /** Takes up a vehicle that has no file, as the program brings it along. */
  public void begin(String called, Vehicle vehicle) {
    opening = true;
    worker.run(
        () -> copyOf(called),
        copy -> {
          opening = false;
          withoutFile(called);
          work.become(vehicle);
          bringBack(copy);
          refreshKept();
        },
        this::notOpened);
  }

  /** Begins a new vehicle, which no file holds yet. */
  public void beginNew(Vehicle vehicle) {
    withoutFile(vehicle.name());
    work.become(vehicle);
    work.saved(vehicle.with(List.of(), List.of(), List.of()));
    keepAside();
    refreshKept();
  }

  private void withoutFile(String called) {
    close();
    name.set(called);
    versions.clear();
  }

  private Optional<UnsavedWork.Kept> copyOf(String called) {
    return aside.kept().stream().filter(k -> k.name().equals(called)).findFirst();
  }

  /** Unsaved work comes back as one edit, which can be taken back. */
  private void bringBack(Optional<UnsavedWork.Kept> copy) {
    copy.filter(k -> !work.vehicleProperty().get().equals(Optional.of(k.vehicle())))
        .ifPresent(
            k -> {
              work.tryTo(replace(Texts.of("wiring.edit.takeUp"), k.vehicle()));
              work.tell(Tone.PLAIN, Texts.of("wiring.back", time(k.at())));
            });
  }

  /** Date and time as the place where the program runs has them. */
  static String time(Instant at) {
    return DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)
        .format(at.atZone(ZoneId.systemDefault()));
  }

  private void close() {
    opened.get().ifPresent(Opened::close);
    opened.set(Optional.empty());
    mayOverwrite.set(false);
  }

  /** Saves; the work counts as unsaved until it is done. Only with a file that can be written. */
  public void save() {
    save(Opened::save);
  }

  /** Saves over what somebody else wrote; theirs becomes a previous version. */
  public void saveOver() {
    save(Opened::saveOver);
  }

  /** A way to save. */
  private interface Saver {
    void save(Opened file, Vehicle vehicle) throws Problem;
  }

  private void save(Saver how) {
    Opened file = opened.get().orElseThrow();
    Vehicle vehicle = work.vehicleProperty().get().orElseThrow();
    worker.run(
        () -> {
          how.save(file, vehicle);
          aside.drop(file.file().toString());
          return vehicle;
        },
        done -> {
          mayOverwrite.set(false);
          work.saved(done);
          refreshVersions();
          work.tell(Tone.PLAIN, Texts.of("wiring.savedAs", file.file().toString()));
        },
        failed -> {
          mayOverwrite.set(file.readOnly().isEmpty());
          tell(failed);
        });
  }

  /** Saves under a new name, given as a path. */
  public void saveAs(String path) {
    Optional<Path> target = path(path);
    if (target.isEmpty()) {
      return;
    }
    Vehicle vehicle = work.vehicleProperty().get().orElseThrow();
    String before = name.get();
    later(
        () -> {
          Opened made = store.create(target.get(), vehicle);
          aside.drop(before);
          return made;
        },
        made -> {
          close();
          opened.set(Optional.of(made));
          name.set(made.file().toString());
          work.saved(vehicle);
          work.publish();
          refreshVersions();
          work.tell(Tone.PLAIN, Texts.of("wiring.savedAs", made.file().toString()));
        });
  }

  private Optional<Path> path(String typed) {
    String text = typed.strip();
    try {
      Path path = Path.of(text.endsWith(".json") ? text : text + ".json").toAbsolutePath();
      if (!text.isEmpty()) {
        return Optional.of(path);
      }
    } catch (InvalidPathException e) {
      // Told below.
    }
    work.tell(Tone.PROBLEM, Texts.of("wiring.noPath", text));
    return Optional.empty();
  }

  // Previous versions.

  private void refreshVersions() {
    opened.get().ifPresentOrElse(file -> later(file::versions, versions::setAll), versions::clear);
  }

  /** Shows what a previous version differs in, without changing anything. */
  public void look(Version version) {
    Opened file = opened.get().orElseThrow();
    later(
        () -> file.look(version),
        was ->
            work.vehicleProperty()
                .get()
                .ifPresent(now -> work.tell(Tone.PLAIN, differences(version, was, now))));
  }

  private static String differences(Version version, Vehicle was, Vehicle now) {
    Change change = Change.between("", was, now, List.of());
    List<String> all = new ArrayList<>(change.parts());
    all.addAll(change.circuits());
    int more = Math.max(0, all.size() - MOST_NAMED);
    return all.isEmpty()
        ? Texts.of("wiring.versionSame", version.number())
        : Texts.of(
            "wiring.versionDiffers",
            version.number(),
            String.join(", ", all.subList(0, all.size() - more)),
            more);
  }

  /** Brings a previous version back as an edit, which can be taken back and has yet to be saved. */
  public void restore(Version version) {
    Opened file = opened.get().orElseThrow();
    later(
        () -> file.look(version),
        was -> work.tryTo(replace(Texts.of("wiring.edit.restore", version.number()), was)));
  }

  private static Edit replace(String title, Vehicle by) {
    return Edit.of(title, before -> new Edit.Made(by, List.of()));
  }

  // Unsaved work.

  /** Keeps the work as it is now, until it is saved. */
  void keepAside() {
    Vehicle vehicle = work.vehicleProperty().get().orElseThrow();
    String of = name.get();
    boolean unsaved = work.unsavedProperty().get();
    int mine = asideAsked.incrementAndGet();
    later(
        () -> {
          if (mine == asideAsked.get() && unsaved) {
            aside.keep(of, vehicle);
          } else if (!unsaved) {
            aside.drop(of);
          }
          return of;
        },
        done -> {});
  }

  private void refreshKept() {
    later(
        aside::kept,
        found -> kept.setAll(found.stream().filter(k -> !k.name().equals(name.get())).toList()));
  }

  /** Takes up unsaved work on another vehicle. */
  public void takeUp(UnsavedWork.Kept copy) {
    WiringViewModel.path(copy.name())
        .ifPresentOrElse(
            this::open,
            () -> {
              beginNew(copy.vehicle());
              name.set(copy.name());
            });
  }

  /** Forgets unsaved work. */
  public void forget(UnsavedWork.Kept copy) {
    later(
        () -> {
          aside.drop(copy.name());
          return copy;
        },
        done -> refreshKept());
  }
}
