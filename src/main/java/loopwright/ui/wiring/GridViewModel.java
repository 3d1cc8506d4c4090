package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.edit.CircuitEdits;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.Stretch;
import loopwright.casework.edit.Together;
import loopwright.casework.table.Block;
import loopwright.casework.table.Column;
import loopwright.casework.table.Rows;
import loopwright.casework.table.Table;
import loopwright.casework.table.Typed;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;

/** One table on the screen: its rows, where the cursor is, what is being typed, what is wrong. */
public final class GridViewModel {
  private static final int MOST_TOLD = 12;

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
  private final ReadOnlyObjectWrapper<Optional<String>> chosen =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Map<String, Map<Column, Wrong>> wrong = new HashMap<>();
  private final Map<Table, Map<Column, String>> begun = new HashMap<>();
  private int anchorRow;
  private int anchorColumn;

  /** Where Enter goes back to after Tab. */
  private int tabbedFrom = -1;

  /** Shows the vehicle that is worked on. */
  public GridViewModel(WiringViewModel work) {
    this.work = work;
    work.vehicleProperty().addListener(o -> refresh());
    work.onOpen(this::forget);
    work.onBack(change -> show(change.parts(), change.circuits()));
    table.addListener(
        o -> {
          editing.set(Optional.empty());
          refresh();
          move(0, 0);
        });
    refresh();
  }

  /** Another vehicle: what was begun on the last one has nothing to do with it. */
  private void forget() {
    begun.clear();
    wrong.clear();
    editing.set(Optional.empty());
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

  /** Id of the part or circuit the cursor is on. */
  public ReadOnlyObjectProperty<Optional<String>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** Tables in which a row was begun that still lacks something, so that it is in no file. */
  public List<Table> unfinished() {
    return List.of(Table.values()).stream().filter(begun::containsKey).toList();
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

  // Rows.

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
    place(row.get(), column.get());
  }

  /** Changes only the rows that differ, so that the view keeps its place. */
  private void replace(List<GridRow> now) {
    if (rows.size() == now.size()) {
      for (int i = 0; i < now.size(); i++) {
        if (!rows.get(i).equals(now.get(i))) {
          rows.set(i, now.get(i));
        }
      }
      return;
    }
    Stretch<GridRow> differing = Stretch.between(rows, now);
    rows.remove(differing.at(), differing.at() + differing.before().size());
    rows.addAll(differing.at(), differing.after());
  }

  // The cursor and the block.

  /** Puts the cursor on a cell, as near as there is one. */
  public void move(int toRow, int toColumn) {
    tabbedFrom = -1;
    place(toRow, toColumn);
  }

  private void place(int toRow, int toColumn) {
    set(toRow, toColumn, true);
  }

  /** Stretches the block from where the cursor was to a cell. */
  public void stretch(int toRow, int toColumn) {
    set(toRow, toColumn, false);
  }

  private void set(int toRow, int toColumn, boolean alone) {
    int r = Math.max(0, Math.min(rows.size() - 1, toRow));
    int c = Math.max(0, Math.min(columns().size() - 1, toColumn));
    if (alone) {
      anchorRow = r;
      anchorColumn = c;
    }
    column.set(c);
    row.set(r);
    chosen.set(r < rows.size() ? rows.get(r).id() : Optional.empty());
  }

  /** Moves the cursor by rows and columns. */
  public void step(int down, int across) {
    move(row.get() + down, column.get() + across);
  }

  /** Goes one cell on, or back. */
  public void tab(int across) {
    int from = tabbedFrom < 0 ? column.get() : tabbedFrom;
    place(row.get(), column.get() + across);
    tabbedFrom = from;
  }

  /** Goes to the next row, to where tabbing began. */
  public void nextRow(int down) {
    move(row.get() + down, tabbedFrom < 0 ? column.get() : tabbedFrom);
  }

  /** Whether a cell lies in the block. */
  public boolean inBlock(int atRow, int atColumn) {
    return atRow >= top() && atRow <= bottom() && atColumn >= left() && atColumn <= right();
  }

  private int top() {
    return Math.min(anchorRow, row.get());
  }

  private int bottom() {
    return Math.max(anchorRow, row.get());
  }

  private int left() {
    return Math.min(anchorColumn, column.get());
  }

  private int right() {
    return Math.max(anchorColumn, column.get());
  }

  /** Goes to the row of a part or circuit, in its table. */
  public void go(String id) {
    go(id, Optional.empty());
  }

  /** Goes to a cell of the row of a part or circuit, in its table. */
  public void go(String id, Optional<Column> cell) {
    work.vehicleProperty()
        .get()
        .flatMap(v -> v.part(id).map(p -> Table.of(p.kind())).or(() -> circuits(v, id)))
        .ifPresent(to -> go(to, id, cell));
  }

  private static Optional<Table> circuits(Vehicle vehicle, String id) {
    return vehicle.circuit(id).map(c -> Table.CIRCUITS);
  }

  private void go(Table to, String id, Optional<Column> cell) {
    table.set(to);
    int at = Math.max(0, cell.map(columns()::indexOf).orElse(column.get()));
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).id().equals(Optional.of(id))) {
        move(i, at);
        return;
      }
    }
  }

  /** Goes to the empty row, to add a part. */
  public void goToEmpty() {
    move(rows.size() - 1, 0);
  }

  /** After undo and redo: a changed row that is in sight, else the first one's table. */
  private void show(Set<String> parts, Set<String> circuits) {
    Set<String> all = new LinkedHashSet<>(table.get() == Table.CIRCUITS ? circuits : parts);
    all.addAll(parts);
    all.addAll(circuits);
    boolean here = chosen.get().filter(all::contains).isPresent();
    if (here) {
      return;
    }
    rows.stream()
        .flatMap(r -> r.id().stream())
        .filter(all::contains)
        .findFirst()
        .or(() -> all.stream().findFirst())
        .ifPresent(this::go);
  }

  /** The text of the cell under the cursor, or what was typed there in vain. */
  public String text() {
    return text(row.get(), column.get());
  }

  /** The text of a cell, or what was typed there in vain. */
  public String text(int atRow, int atColumn) {
    return wrong(atRow, atColumn)
        .map(Wrong::text)
        .orElseGet(() -> there(atRow, atColumn) ? rows.get(atRow).cells().get(atColumn) : "");
  }

  private boolean there(int atRow, int atColumn) {
    return atRow >= 0 && atRow < rows.size() && atColumn < rows.get(atRow).cells().size();
  }

  // Typing.

  /** Begins to edit the cell under the cursor. */
  public void edit(String with) {
    if (!rows.isEmpty()) {
      anchorRow = row.get();
      anchorColumn = column.get();
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
    Column to = columns().get(column.get());
    Optional<String> id = rows.get(row.get()).id();
    if (id.isEmpty()) {
      return begin(Map.of(to, typed));
    }
    boolean same = typed.strip().equals(rows.get(row.get()).cells().get(column.get()));
    if (same) {
      wrong.getOrDefault(key(row.get()), new HashMap<>()).remove(to);
      return true;
    }
    boolean taken =
        take(
            Texts.of("wiring.edit.cell", id.get(), Texts.of(to)),
            List.of(new Typed.Entry(id, Map.of(to, typed))),
            List.of(key(row.get())));
    if (taken) {
      Spoken.widened(to, text()).ifPresent(w -> work.tell(Tone.PLAIN, id.get() + ": " + w));
    }
    return taken;
  }

  /** Cells of the row that isn't in the vehicle yet: it gets in once it has all that is needed. */
  private boolean begin(Map<Column, String> texts) {
    Map<Column, String> all = new LinkedHashMap<>(begun.getOrDefault(table.get(), Map.of()));
    all.putAll(texts);
    all.values().removeIf(String::isBlank);
    if (all.isEmpty()) {
      begun.remove(table.get());
      refresh();
      return true;
    }
    String emptyRow = key(rows.size() - 1);
    Typed tried =
        typed(Texts.of("wiring.edit.add"), List.of(new Typed.Entry(Optional.empty(), all)));
    if (tried.bad().isEmpty()) {
      begun.remove(table.get());
      return take(tried, List.of(all), List.of(emptyRow));
    }
    begun.put(table.get(), all);
    refresh();
    List<String> missing =
        tried.bad().stream()
            .filter(b -> !all.containsKey(b.column()))
            .map(b -> Texts.of(b.column()))
            .toList();
    if (missing.size() == tried.bad().size()) {
      wrong.remove(emptyRow);
      work.tell(Tone.PLAIN, Texts.of("wiring.stillMissing", String.join(", ", missing)));
      return true;
    }
    return take(tried, List.of(all), List.of(emptyRow));
  }

  private Typed typed(String title, List<Typed.Entry> entries) {
    return Typed.on(work.vehicleProperty().get().orElseThrow(), table.get(), title, entries);
  }

  private boolean take(String title, List<Typed.Entry> entries, List<String> keys) {
    return take(typed(title, entries), entries.stream().map(Typed.Entry::cells).toList(), keys);
  }

  /**
   * Makes the edit, or marks the cells that can't be taken.
   *
   * @param keys rows in which the texts typed are kept, one an entry; none for what was pasted
   */
  private boolean take(Typed typed, List<Map<Column, String>> texts, List<String> keys) {
    for (int i = 0; i < keys.size(); i++) {
      Map<Column, Wrong> here = wrong.computeIfAbsent(keys.get(i), x -> new HashMap<>());
      texts.get(i).keySet().forEach(here::remove);
      for (Typed.Bad bad : typed.bad()) {
        if (bad.entry() == i && texts.get(i).containsKey(bad.column())) {
          String text = texts.get(i).get(bad.column());
          here.put(bad.column(), new Wrong(text, message(bad)));
        }
      }
    }
    if (!typed.bad().isEmpty()) {
      work.tell(Tone.PROBLEM, message(typed.bad().get(0)));
      return false;
    }
    return work.tryTo(typed);
  }

  private static String message(Typed.Bad bad) {
    Problem problem = bad.problem();
    return problem.value().isEmpty()
        ? Texts.of("wiring.wrongEmpty", Texts.of(bad.column()), problem.accepted())
        : Texts.of("wiring.wrong", Texts.of(bad.column()), problem.value(), problem.accepted());
  }

  // Blocks.

  /** The block as spreadsheets take it. */
  public String copy() {
    List<List<String>> block = new ArrayList<>();
    for (int r = top(); r <= bottom() && r < rows.size(); r++) {
      block.add(rows.get(r).cells().subList(left(), right() + 1));
    }
    return Block.text(block);
  }

  /**
   * Puts cells in from the upper left corner of the block on, new rows at the end included: all of
   * them, or none if one can't be taken. A single cell fills the block.
   */
  public void paste(String text) {
    List<List<String>> cells = Block.read(text);
    if (cells.isEmpty() || rows.isEmpty()) {
      return;
    }
    boolean one = cells.size() == 1 && cells.get(0).size() == 1;
    int height = one ? bottom() - top() + 1 : cells.size();
    int width = one ? right() - left() + 1 : widest(cells);
    if (left() + width > columns().size()) {
      work.tell(
          Tone.PROBLEM,
          Texts.of("wiring.pasteWide", width, columns().size() - left(), Texts.of(table.get())));
      return;
    }
    List<Typed.Entry> entries = new ArrayList<>();
    List<Integer> lines = new ArrayList<>();
    for (int i = 0; i < height; i++) {
      List<String> line = cells.get(one ? 0 : i);
      Map<Column, String> to = new LinkedHashMap<>();
      for (int j = 0; j < (one ? width : line.size()); j++) {
        to.put(columns().get(left() + j), line.get(one ? 0 : j));
      }
      int at = top() + i;
      Optional<String> id = at < rows.size() - 1 ? rows.get(at).id() : Optional.empty();
      if (id.isPresent() || to.values().stream().anyMatch(t -> !t.isBlank())) {
        entries.add(new Typed.Entry(id, to));
        lines.add(i + 1);
      }
    }
    if (entries.size() == 1 && entries.get(0).row().isEmpty()) {
      begin(entries.get(0).cells());
      return;
    }
    pasted(typed(Texts.of("wiring.edit.paste", height, width), entries), lines);
  }

  private static int widest(List<List<String>> cells) {
    return cells.stream().mapToInt(List::size).max().orElse(0);
  }

  private void pasted(Typed typed, List<Integer> lines) {
    if (typed.bad().isEmpty()) {
      work.tryTo(typed);
      return;
    }
    List<String> told = new ArrayList<>();
    told.add(Texts.of("wiring.pasteBad", typed.bad().size()));
    typed.bad().stream()
        .limit(MOST_TOLD)
        .map(b -> Texts.of("wiring.pasteLine", lines.get(b.entry()), message(b)))
        .forEach(told::add);
    if (typed.bad().size() > MOST_TOLD) {
      told.add(Texts.of("wiring.pasteMore", typed.bad().size() - MOST_TOLD));
    }
    work.tell(Tone.PROBLEM, String.join("\n", told));
  }

  /** Fills the block from its first row; a block of one row from the row above it. */
  public void fillDown() {
    int from = top() == bottom() ? top() - 1 : top();
    if (from < 0 || rows.isEmpty()) {
      work.tell(Tone.PLAIN, Texts.of("wiring.nothingAbove"));
      return;
    }
    List<Typed.Entry> entries = new ArrayList<>();
    List<String> keys = new ArrayList<>();
    Map<Column, String> cells = new LinkedHashMap<>();
    for (int c = left(); c <= right(); c++) {
      if (columns().get(c) != Column.ID) {
        cells.put(columns().get(c), rows.get(from).cells().get(c));
      }
    }
    if (cells.isEmpty()) {
      work.tell(Tone.PLAIN, Texts.of("wiring.idsDiffer"));
      return;
    }
    for (int r = from + 1; r <= bottom(); r++) {
      if (rows.get(r).id().isPresent()) {
        entries.add(new Typed.Entry(rows.get(r).id(), cells));
        keys.add(key(r));
      }
    }
    if (!entries.isEmpty()) {
      take(Texts.of("wiring.edit.fill", entries.size()), entries, keys);
    }
    if (bottom() == rows.size() - 1) {
      begin(cells);
    }
  }

  /** Empties the cells of the block; with the cursor on an id, removes the rows. */
  public void delete() {
    if (left() == 0) {
      removeRows();
      return;
    }
    List<Typed.Entry> entries = new ArrayList<>();
    List<String> keys = new ArrayList<>();
    Map<Column, String> empty = new LinkedHashMap<>();
    for (int c = left(); c <= right(); c++) {
      empty.put(columns().get(c), "");
    }
    for (int r = top(); r <= bottom() && r < rows.size(); r++) {
      if (rows.get(r).id().isPresent()) {
        entries.add(new Typed.Entry(rows.get(r).id(), empty));
        keys.add(key(r));
      } else {
        begin(empty);
      }
    }
    // What was typed in vain goes, even where nothing may stand empty.
    boolean vain =
        keys.stream()
            .map(k -> wrong.getOrDefault(k, new HashMap<>()))
            .map(w -> w.keySet().removeAll(empty.keySet()))
            .reduce(false, Boolean::logicalOr);
    if (vain) {
      refresh();
      work.tell(Tone.PLAIN, "");
      return;
    }
    if (!entries.isEmpty()) {
      Typed typed = typed(Texts.of("wiring.edit.clear"), entries);
      take(typed, entries.stream().map(Typed.Entry::cells).toList(), List.of());
    }
  }

  /** Removes the rows of the block, with the wires that end on their parts. */
  public void removeRows() {
    List<Edit> edits = new ArrayList<>();
    List<String> ids = new ArrayList<>();
    for (int r = top(); r <= bottom() && r < rows.size(); r++) {
      Optional<String> id = rows.get(r).id();
      if (id.isEmpty()) {
        begun.remove(table.get());
        wrong.remove(key(r));
        refresh();
      } else {
        ids.add(id.get());
        edits.add(
            table.get() == Table.CIRCUITS
                ? CircuitEdits.remove(id.get())
                : PartEdits.remove(id.get()));
      }
    }
    if (!edits.isEmpty()) {
      work.tryTo(new Together(Texts.of("wiring.edit.remove", String.join(", ", ids)), edits));
    }
  }
}
