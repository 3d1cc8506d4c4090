package loopwright.ui.starting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.NewVehicle;
import loopwright.casework.pattern.NewVehicleForm;
import loopwright.casework.pattern.Outcome;
import loopwright.casework.pattern.Pattern;
import loopwright.casework.pattern.Patterns;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;
import loopwright.ui.Worker;

/** A vehicle being begun: what it is, and what needs power. */
final class NewVehicleViewModel {

  /**
   * Something that may need power.
   *
   * @param taken whether it is wanted
   */
  record Entry(NewVehicle.Row row, boolean taken) {}

  private final Basis basis;
  private final Worker worker;
  private final FormViewModel form;
  private final PreviewMaker maker;
  private final ObservableList<Entry> entries = FXCollections.observableArrayList();
  private List<NewVehicle.Row> suggested = List.of();

  NewVehicleViewModel(Basis basis, Worker worker, LoopSource loops) {
    this.basis = basis;
    this.worker = worker;
    this.maker = new PreviewMaker(worker, loops);
    this.form = new FormViewModel(NewVehicleForm.questionnaire(basis), Map.of());
    form.onChange(this::changed);
    changed();
  }

  FormViewModel form() {
    return form;
  }

  PreviewMaker maker() {
    return maker;
  }

  ObservableList<Entry> entries() {
    return entries;
  }

  /** What a row is called. */
  String name(Entry entry) {
    return NewVehicleForm.name(entry.row(), basis);
  }

  /** What a row's pattern is called. */
  String pattern(Entry entry) {
    return pattern(entry.row()).title(basis);
  }

  static Pattern pattern(NewVehicle.Row row) {
    return Patterns.find(row.pattern()).orElseThrow();
  }

  /** Another kind of vehicle usually needs other things; what was changed by hand stays. */
  private void changed() {
    List<NewVehicle.Row> usual = NewVehicleForm.suggested(basis, form.given());
    if (!usual.equals(suggested)) {
      boolean untouched =
          entries.stream().map(Entry::row).toList().equals(suggested)
              && entries.stream().allMatch(Entry::taken);
      if (untouched) {
        entries.setAll(usual.stream().map(r -> new Entry(r, true)).toList());
      }
      suggested = usual;
    }
    ask();
  }

  private void ask() {
    Map<String, String> given = form.given();
    List<NewVehicle.Row> rows = rows();
    maker.ask(() -> NewVehicleForm.vehicle(basis, given, rows).make(basis));
  }

  private List<NewVehicle.Row> rows() {
    return entries.stream().filter(Entry::taken).map(Entry::row).toList();
  }

  /** Takes a row or leaves it. */
  void toggle(int at) {
    if (at >= 0 && at < entries.size()) {
      Entry entry = entries.get(at);
      entries.set(at, new Entry(entry.row(), !entry.taken()));
      ask();
    }
  }

  /** Puts a row in the place of another, or at the end. */
  void put(int at, NewVehicle.Row row) {
    if (at >= 0 && at < entries.size()) {
      entries.set(at, new Entry(row, true));
    } else {
      entries.add(new Entry(row, true));
    }
    ask();
  }

  /**
   * Makes the vehicle with the rows above one alone, so that its questions can be asked.
   *
   * @param at the row; beyond the last one for a new row
   */
  void before(int at, Consumer<Vehicle> then) {
    Map<String, String> given = form.given();
    List<NewVehicle.Row> above = new ArrayList<>();
    for (int i = 0; i < Math.min(at, entries.size()); i++) {
      if (entries.get(i).taken()) {
        above.add(entries.get(i).row());
      }
    }
    worker.run(
        () -> NewVehicleForm.vehicle(basis, given, above).make(basis).vehicle(),
        then,
        failed -> {
          // The preview tells what doesn't fit.
        });
  }

  /** The vehicle as it was last worked out; empty while an answer doesn't fit. */
  Optional<Outcome> outcome() {
    return maker.previewProperty().get().outcome();
  }
}
