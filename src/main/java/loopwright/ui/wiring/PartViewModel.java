package loopwright.ui.wiring;

import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.VehicleStore;
import loopwright.model.Access;
import loopwright.model.Part;
import loopwright.model.Photo;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.TerminalRef;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;

/** What is known of the chosen part beside its values: label, access, photos. */
public final class PartViewModel {
  private static final double DAY = 1440;

  private final WiringViewModel work;
  private final GridViewModel grid;

  /** Follows the chosen row. */
  public PartViewModel(WiringViewModel work, GridViewModel grid) {
    this.work = work;
    this.grid = grid;
  }

  /** The chosen part; empty for a circuit or an empty row. */
  public Optional<Part> part() {
    return grid.chosenProperty()
        .get()
        .flatMap(id -> work.vehicleProperty().get().flatMap(v -> v.part(id)));
  }

  private Optional<String> make(Edit edit) {
    return work.tryTo(edit) ? Optional.empty() : Optional.of(work.toldProperty().get().words());
  }

  /** Says what is written on it. Gives what is wrong, if anything; so do all that follow. */
  public Optional<String> label(String text) {
    return part().flatMap(p -> make(PartEdits.label(p.id(), text)));
  }

  /** Says where it sits. */
  public Optional<String> where(String text) {
    return part().flatMap(p -> make(PartEdits.where(p.id(), text)));
  }

  /** Says what is worth knowing. */
  public Optional<String> note(String text) {
    return part().flatMap(p -> make(PartEdits.note(p.id(), text)));
  }

  /** Says how long it takes to take it out; empty where it can't be. */
  public Optional<String> apart(String text) {
    return part().flatMap(p -> minutes(text, m -> PartEdits.minutes(p.id(), m, p.swapMinutes())));
  }

  /** Says how long it takes to replace it; empty where none is at hand. */
  public Optional<String> swap(String text) {
    return part().flatMap(p -> minutes(text, m -> PartEdits.minutes(p.id(), p.apartMinutes(), m)));
  }

  /** Says how long it takes to reach a terminal and come back. */
  public Optional<String> reachMinutes(String terminal, String text) {
    return part()
        .flatMap(
            p ->
                minutes(
                    text,
                    m ->
                        access(
                            p,
                            terminal,
                            was -> new Access(m.orElse(0.0), was.how(), was.reachable()))));
  }

  /** Says what to remove to reach a terminal. */
  public Optional<String> reachHow(String terminal, String text) {
    return part()
        .flatMap(
            p ->
                make(access(p, terminal, was -> new Access(was.minutes(), text, was.reachable()))));
  }

  /** Says whether a lead can touch a terminal at all; changes it to the other. */
  public void turnReachable(String terminal) {
    part()
        .ifPresent(
            p ->
                work.tryTo(
                    access(
                        p,
                        terminal,
                        was -> new Access(was.minutes(), was.how(), !was.reachable()))));
  }

  private static Edit access(Part part, String terminal, UnaryOperator<Access> change) {
    Access now = change.apply(part.access(terminal));
    return PartEdits.access(new TerminalRef(part.id(), terminal), now);
  }

  /** An edit with a number of minutes. */
  private interface MinutesEdit {
    Edit of(Optional<Double> minutes);
  }

  private Optional<String> minutes(String text, MinutesEdit edit) {
    if (text.isBlank()) {
      return make(edit.of(Optional.empty()));
    }
    Optional<Double> minutes = Said.exactly(text, Quantity.MINUTES).filter(m -> m >= 0 && m <= DAY);
    return minutes.isEmpty()
        ? Optional.of(Texts.of("wiring.part.minutesWrong", text))
        : make(edit.of(minutes));
  }

  // Photos.

  /** Attaches a photo, to a terminal or to the part as a whole; its file is given as a path. */
  public void attach(String path, Optional<String> terminal) {
    Optional<VehicleStore.Opened> file = work.file().openedProperty().get();
    if (file.isEmpty()) {
      work.tell(Tone.PROBLEM, Texts.of("wiring.part.saveFirst"));
      return;
    }
    Optional<Part> part = part();
    Path photo;
    try {
      photo = Path.of(path.strip());
    } catch (InvalidPathException e) {
      work.tell(Tone.PROBLEM, Texts.of("wiring.noPath", path));
      return;
    }
    part.ifPresent(
        p ->
            work.worker()
                .run(
                    () -> file.get().attach(photo),
                    kept -> attached(p.id(), new Photo(kept, terminal)),
                    failed -> work.tell(Tone.PROBLEM, String.valueOf(failed.getMessage()))));
  }

  private void attached(String id, Photo photo) {
    List<Photo> photos =
        new ArrayList<>(
            work.vehicleProperty()
                .get()
                .flatMap(v -> v.part(id))
                .map(Part::photos)
                .orElse(List.of()));
    if (!photos.contains(photo)) {
      photos.add(photo);
      work.tryTo(PartEdits.photos(id, photos));
    }
  }

  /** Takes a photo away from the part; its file stays. */
  public void detach(Photo photo) {
    part()
        .ifPresent(
            p -> {
              List<Photo> photos = new ArrayList<>(p.photos());
              photos.remove(photo);
              work.tryTo(PartEdits.photos(p.id(), photos));
            });
  }

  /** A photo's file; empty where there is none. */
  public Optional<File> file(Photo photo) {
    return work.file().openedProperty().get().flatMap(f -> f.file(photo)).map(Path::toFile);
  }
}
