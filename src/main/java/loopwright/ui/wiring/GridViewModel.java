package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.table.Column;
import loopwright.casework.table.Rows;
import loopwright.casework.table.Table;
import loopwright.casework.table.Typed;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;

/** One table on the screen: its rows, where the cursor is, what is being typed, what is wrong. */
public final class GridViewModel {

  /**
   * A row as it stands on the screen.
   *
   * @param id id of the part or circuit; empty for one that isn't in the vehicle yet
   * @param cells texts by column
   */
  public record GridRow(Optional<String> id, List<String> cells) {
    /** Copies the list. */
    public GridRow {
      cells = List.copyOf(cells);
    }
  }

  /** A text that was typed and can't be taken, with what is accepted. */
  public record Wrong(String text, String message) {}

  private final WiringViewModel work;
  private final ObjectProperty<Table> table = new SimpleObjectProperty<>(Table.LOADS);
  private final ObservableList<GridRow> rows = FXCollections.observableArrayList();
  private final ReadOnlyIntegerWrapper row = new ReadOnlyIntegerWrapper();
  private final ReadOnlyIntegerWrapper column = new ReadOnlyIntegerWrapper();
  private final ReadOnlyObjectWrapper<Optional<String>> editing =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Map<String, Map<Column, Wrong>> wrong = new HashMap<>();
  private final Map<Table, Map<Column, String>> begun = new HashMap<>();

  /** Shows the vehicle that is worked on. */
  public GridViewModel(WiringViewModel work) {
    this.work = work;
    work.vehicleProperty().addListener(o -> refresh());
    table.addListener(
        o -> {
          editing.set(Optional.empty());
          refresh();
          move(0, 0);
        });
    refresh();
  }

  /** Which table is shown. */
  public ObjectProperty<Table> tableProperty() {
    return table;
  }

  /** Its rows; the last one is empty and takes a new part. */
  public ObservableList<GridRow> rows() {
    return rows;
  }

  /** Its columns. */
  public List<Column> columns() {
    return table.get().columns();
  }

  /** Row of the cursor. */
  public ReadOnlyIntegerProperty rowProperty() {
    return row.getReadOnlyProperty();
  }

  /** Column of the cursor. */
  public ReadOnlyIntegerProperty columnProperty() {
    return column.getReadOnlyProperty();
  }

  /** The text the editor begins with; empty while nothing is edited. */
  public ReadOnlyObjectProperty<Optional<String>> editingProperty() {
    return editing.getReadOnlyProperty();
  }

  /** What is wrong with a cell. */
  public Optional<Wrong> wrong(int atRow, int atColumn) {
    if (atRow < 0 || atRow >= rows.size() || atColumn >= columns().size()) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        wrong.getOrDefault(key(atRow), Map.of()).get(columns().get(atColumn)));
  }

  private String key(int atRow) {
    return table.get().name() + " " + rows.get(atRow).id().orElse("");
  }

  private void refresh() {
    List<GridRow> now = new ArrayList<>();
    Optional<Vehicle> vehicle = work.vehicleProperty().get();
    if (vehicle.isPresent()) {
      for (Rows.Row r : new Rows(vehicle.get()).of(table.get())) {
        now.add(new GridRow(Optional.of(r.id()), r.cells()));
      }
      Map<Column, String> typed = begun.getOrDefault(table.get(), Map.of());
      now.add(
          new GridRow(
              Optional.empty(), columns().stream().map(c -> typed.getOrDefault(c, "")).toList()));
    }
    replace(now);
    move(row.get(), column.get());
  }

  /** Changes only the rows that differ, so that the view keeps its place. */
  private void replace(List<GridRow> now) {
    int common = Math.min(rows.size(), now.size());
    int at = 0;
    while (at < common && rows.get(at).equals(now.get(at))) {
      at++;
    }
    int end = 0;
    while (end < common - at
        && rows.get(rows.size() - 1 - end).equals(now.get(now.size() - 1 - end))) {
      end++;
    }
    if (rows.size() == now.size()) {
      for (int i = at; i < now.size() - end; i++) {
        if (!rows.get(i).equals(now.get(i))) {
          rows.set(i, now.get(i));
        }
      }
      return;
    }
    rows.remove(at, rows.size() - end);
    rows.addAll(at, now.subList(at, now.size() - end));
  }

  /** Puts the cursor on a cell, as near as there is one. */
  public void move(int toRow, int toColumn) {
    row.set(Math.max(0, Math.min(rows.size() - 1, toRow)));
    column.set(Math.max(0, Math.min(columns().size() - 1, toColumn)));
  }

  /** Moves the cursor by rows and columns. */
  public void step(int down, int across) {
    move(row.get() + down, column.get() + across);
  }

  /** Goes to the row of a part or circuit, in its table. */
  public void go(String id) {
    work.vehicleProperty()
        .get()
        .flatMap(v -> v.part(id).map(p -> Table.of(p.kind())).or(() -> circuits(v, id)))
        .ifPresent(
            to -> {
              table.set(to);
              for (int i = 0; i < rows.size(); i++) {
                if (rows.get(i).id().equals(Optional.of(id))) {
                  move(i, column.get());
                }
              }
            });
  }

  private static Optional<Table> circuits(Vehicle vehicle, String id) {
    return vehicle.circuit(id).map(c -> Table.CIRCUITS);
  }

  /** The text of the cell under the cursor, or what was typed there in vain. */
  public String text() {
    return text(row.get(), column.get());
  }

  /** The text of a cell, or what was typed there in vain. */
  public String text(int atRow, int atColumn) {
    return wrong(atRow, atColumn)
        .map(Wrong::text)
        .orElseGet(() -> atRow < rows.size() ? rows.get(atRow).cells().get(atColumn) : "");
  }

  /** Begins to edit the cell under the cursor. */
  public void edit(String with) {
    if (!rows.isEmpty()) {
      editing.set(Optional.of(with));
    }
  }

  /** Leaves the cell as it was. */
  public void leave() {
    editing.set(Optional.empty());
  }

  /**
   * Takes what was typed into the cell under the cursor.
   *
   * @return whether it was taken; else the cell says what is wrong
   */
  public boolean commit(String typed) {
    editing.set(Optional.empty());
    return rows.get(row.get()).id().isEmpty() ? begin(typed) : change(typed);
  }

  private boolean change(String typed) {
    GridRow at = rows.get(row.get());
    Column to = columns().get(column.get());
    String title = Texts.of("wiring.edit.cell", at.id().orElseThrow(), Texts.of(to));
    return take(
        Typed.on(
            work.vehicleProperty().get().orElseThrow(),
            table.get(),
            title,
            List.of(new Typed.Entry(at.id(), Map.of(to, typed)))),
        Map.of(to, typed));
  }

  /**
   * A cell of the row that isn't in the vehicle yet: it gets in once all that is needed is there.
   */
  private boolean begin(String typed) {
    Column to = columns().get(column.get());
    Map<Column, String> all =
        new LinkedHashMap<>(begun.getOrDefault(table.get(), new LinkedHashMap<>()));
    all.put(to, typed);
    all.values().removeIf(String::isBlank);
    begun.put(table.get(), all);
    if (all.isEmpty()) {
      refresh();
      return true;
    }
    Vehicle vehicle = work.vehicleProperty().get().orElseThrow();
    Typed tried =
        Typed.on(
            vehicle,
            table.get(),
            Texts.of("wiring.edit.add"),
            List.of(new Typed.Entry(Optional.empty(), all)));
    boolean missingOnly = tried.bad().stream().noneMatch(b -> all.containsKey(b.column()));
    if (tried.bad().isEmpty()) {
      begun.remove(table.get());
      return take(tried, all);
    }
    refresh();
    if (missingOnly) {
      wrong.remove(key(row.get()));
      work.tell(
          WiringViewModel.Tone.PLAIN,
          Texts.of(
              "wiring.stillMissing",
              String.join(", ", tried.bad().stream().map(b -> Texts.of(b.column())).toList())));
      return true;
    }
    return take(tried, all);
  }

  private boolean take(Typed typed, Map<Column, String> texts) {
    String at = key(row.get());
    Map<Column, Wrong> here = wrong.computeIfAbsent(at, x -> new HashMap<>());
    texts.keySet().forEach(here::remove);
    for (Typed.Bad bad : typed.bad()) {
      if (texts.containsKey(bad.column())) {
        here.put(bad.column(), new Wrong(texts.get(bad.column()), message(bad.problem())));
      }
    }
    if (typed.bad().isEmpty()) {
      try {
        work.make(typed);
        return true;
      } catch (Problem e) {
        work.tell(WiringViewModel.Tone.PROBLEM, message(e));
        return false;
      }
    }
    work.tell(WiringViewModel.Tone.PROBLEM, message(typed.bad().get(0).problem()));
    return false;
  }

  static String message(Problem problem) {
    return Texts.of("wiring.wrong", problem.field(), problem.value(), problem.accepted());
  }
}
