package loopwright.ui.wiring;

import java.nio.file.Path;
import java.util.function.Consumer;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;

/** What can be done with the vehicle's file; names that are missing are asked for. */
final class WiringActions {
  private final WiringViewModel work;
  private final GridViewModel grid;
  private final Consumer<Ask> ask;

  WiringActions(WiringViewModel work, GridViewModel grid, Consumer<Ask> ask) {
    this.work = work;
    this.grid = grid;
    this.ask = ask;
  }

  void save() {
    if (work.vehicleProperty().get().isEmpty()) {
      work.tell(Tone.PROBLEM, Texts.of("wiring.openFirst"));
    } else if (work.file().openedProperty().get().isEmpty() || work.file().readOnly().isPresent()) {
      saveAs();
    } else {
      work.file().save();
      warnOfUnfinished();
    }
  }

  /** Rows that were begun are in no file. */
  private void warnOfUnfinished() {
    if (!grid.unfinished().isEmpty()) {
      work.tell(
          Tone.PROBLEM,
          Texts.of(
              "wiring.unfinished",
              String.join(", ", grid.unfinished().stream().map(Texts::of).toList())));
    }
  }

  void saveAs() {
    if (work.vehicleProperty().get().isPresent()) {
      ask.accept(
          Ask.line(
              Texts.of("wiring.ask.saveAs"), suggestion(), typed -> work.file().saveAs(typed)));
    }
  }

  private String suggestion() {
    Path folder =
        work.file()
            .openedProperty()
            .get()
            .map(f -> f.file().getParent())
            .orElse(work.file().home());
    String id = work.vehicleProperty().get().orElseThrow().id();
    boolean copy = work.file().openedProperty().get().isPresent();
    return folder.resolve(copy ? id + "-2.json" : id + ".json").toString();
  }

  void open() {
    ask.accept(Ask.file(Texts.of("wiring.ask.open"), path -> work.file().open(Path.of(path))));
  }
}
