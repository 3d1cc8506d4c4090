package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import loopwright.casework.edit.CircuitEdits;
import loopwright.casework.edit.Finder;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.table.Column;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;

/** What can be done with the chosen part or circuit as a whole; what is missing is asked for. */
final class CircuitActions {
  private final WiringViewModel work;
  private final GridViewModel grid;
  private final SketchViewModel sketch;
  private final Consumer<Ask> ask;

  CircuitActions(
      WiringViewModel work, GridViewModel grid, SketchViewModel sketch, Consumer<Ask> ask) {
    this.work = work;
    this.grid = grid;
    this.sketch = sketch;
    this.ask = ask;
  }

  private Optional<Vehicle> vehicle() {
    return work.vehicleProperty().get();
  }

  /** The circuit under the cursor, or the one that is drawn. */
  private Optional<Circuit> circuit() {
    return vehicle()
        .flatMap(
            v ->
                grid.chosenProperty()
                    .get()
                    .flatMap(v::circuit)
                    .or(() -> sketch.circuit().flatMap(v::circuit)));
  }

  private void withCircuit(Consumer<Circuit> action) {
    circuit()
        .ifPresentOrElse(action, () -> work.tell(Tone.PROBLEM, Texts.of("wiring.chooseCircuit")));
  }

  /** Another id for the chosen part or circuit, everywhere. */
  void rename() {
    grid.chosenProperty()
        .get()
        .ifPresentOrElse(
            id ->
                ask.accept(
                    Ask.line(Texts.of("wiring.ask.rename", id), id, typed -> renamed(id, typed))),
            () -> work.tell(Tone.PROBLEM, Texts.of("wiring.choosePart")));
  }

  private void renamed(String id, String typed) {
    grid.go(id, Optional.of(Column.ID));
    grid.commit(typed);
  }

  /** Another name for the loom of the chosen wire, on every wire in it. */
  void renameLoom() {
    Optional<String> loom =
        vehicle()
            .flatMap(v -> grid.chosenProperty().get().flatMap(v::part))
            .map(Part::spec)
            .filter(PartSpec.Wire.class::isInstance)
            .map(s -> ((PartSpec.Wire) s).loom())
            .filter(l -> !l.isEmpty());
    loom.ifPresentOrElse(
        from ->
            ask.accept(
                Ask.line(
                    Texts.of("wiring.ask.renameLoom", from),
                    from,
                    to -> work.tryTo(PartEdits.renameLoom(from, to)))),
        () -> work.tell(Tone.PROBLEM, Texts.of("wiring.chooseLoom")));
  }

  /** A second circuit like the one at hand. */
  void duplicate() {
    withCircuit(
        c ->
            ask.accept(
                Ask.line(
                    Texts.of("wiring.ask.duplicate", c.name()), "", name -> duplicated(c, name))));
  }

  private void duplicated(Circuit circuit, String name) {
    List<String> before = vehicle().orElseThrow().circuits().stream().map(Circuit::id).toList();
    if (work.tryTo(CircuitEdits.duplicate(circuit.id(), name))) {
      vehicle().orElseThrow().circuits().stream()
          .map(Circuit::id)
          .filter(id -> !before.contains(id))
          .findFirst()
          .ifPresent(grid::go);
    }
  }

  /** Feeds the circuit at hand from another fuse. */
  void move() {
    withCircuit(
        c -> {
          Vehicle now = vehicle().orElseThrow();
          ask.accept(
              Ask.choice(
                  Texts.of("wiring.ask.move", c.name()),
                  words -> fuses(now, words),
                  fuse -> work.tryTo(CircuitEdits.moveToFuse(c.id(), fuse))));
        });
  }

  private static List<Ask.Option> fuses(Vehicle vehicle, String words) {
    List<Ask.Option> fuses = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Fuse fuse) {
        String line = Texts.of("wiring.fuse", part.title(), Said.shown(fuse.amps()), part.label());
        if (line.toLowerCase(Locale.ROOT).contains(words.toLowerCase(Locale.ROOT))) {
          fuses.add(new Ask.Option(part.id(), line));
        }
      }
    }
    return fuses;
  }

  /** Goes to what is called so. */
  void find() {
    vehicle()
        .ifPresent(
            v ->
                ask.accept(
                    Ask.choice(Texts.of("wiring.ask.find"), words -> found(v, words), grid::go)));
  }

  private static List<Ask.Option> found(Vehicle vehicle, String words) {
    return Finder.find(vehicle, words).stream()
        .map(
            f ->
                new Ask.Option(
                    f.id(),
                    Texts.of(
                        f.sort() == Finder.Sort.CIRCUIT ? "wiring.foundCircuit" : "wiring.found",
                        f.title(),
                        f.id(),
                        vehicle.part(f.id()).map(p -> p.kind().said()).orElse(""))))
        .toList();
  }
}
