package loopwright.ui.sheet;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.SheetStore;
import loopwright.casework.sheet.WireSheet;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;

/** A list on its way out: which one, and where to. */
final class ListOutViewModel {

  /**
   * A list there is to write.
   *
   * @param title what a person calls it
   * @param file what its file is called
   */
  record Choice(String title, String file, Optional<Set<String>> connectors) {}

  private final SheetStore store;
  private final Worker worker;
  private final Optional<Vehicle> vehicle;
  private final List<Choice> choices = new ArrayList<>();
  private final ReadOnlyObjectWrapper<Told> told =
      new ReadOnlyObjectWrapper<>(Told.plain(Texts.of("listOut.how")));

  ListOutViewModel(SheetStore store, Worker worker, Optional<Vehicle> vehicle) {
    this.store = store;
    this.worker = worker;
    this.vehicle = vehicle;
    vehicle.ifPresent(this::fill);
  }

  private void fill(Vehicle v) {
    choices.add(new Choice(Texts.of("listOut.wires"), v.id() + "-wires.csv", Optional.empty()));
    List<Part> connectors =
        v.parts().stream().filter(p -> p.spec() instanceof PartSpec.Connector).toList();
    if (!connectors.isEmpty()) {
      choices.add(
          new Choice(Texts.of("listOut.pins"), v.id() + "-pins.csv", Optional.of(Set.of())));
    }
    for (Part c : connectors) {
      choices.add(
          new Choice(
              // The id first, so that it is seen where the name has no room.
              Texts.of("listOut.pinsOf", c.name().isEmpty() ? c.id() : c.id() + ", " + c.name()),
              v.id() + "-pins-" + c.id().replaceAll("[^\\p{L}\\p{N}]", "_") + ".csv",
              Optional.of(Set.of(c.id()))));
    }
  }

  /** The lists there are. */
  List<Choice> choices() {
    return choices;
  }

  /** What came of the last one; before that, what it is for. */
  ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Where a list would go unless somebody says otherwise: the person's own folder. */
  String usualPath(Choice choice) {
    return store.home().resolve(choice.file()).toString();
  }

  /** The list's text. */
  String text(Choice choice) {
    return vehicle
        .map(
            v ->
                choice
                    .connectors()
                    .map(c -> PinSheet.text(v, c))
                    .orElseGet(() -> WireSheet.text(v)))
        .orElse("");
  }

  /** Writes a list. */
  void write(Choice choice, String path) {
    Path file;
    try {
      file = Path.of(path.strip());
    } catch (InvalidPathException e) {
      told.set(Told.problem(Texts.of("sheet.noPath", path)));
      return;
    }
    worker.run(
        () -> {
          store.write(file, text(choice));
          return file.toAbsolutePath();
        },
        written -> told.set(Told.plain(Texts.of("listOut.written", written))),
        e -> told.set(Told.problem(String.valueOf(e.getMessage()))));
  }

  /** Says that a list was copied. */
  void copied(Choice choice) {
    told.set(Told.plain(Texts.of("listOut.copied", choice.title())));
  }
}
