package loopwright.ui.sheet;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Problem;
import loopwright.casework.edit.Edit;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.SheetStore;
import loopwright.casework.sheet.WireSheet;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** A list that is being looked at before it is taken: its columns, and what would come of it. */
final class SheetViewModel {

  /** What the list is about. */
  enum Sort {
    WIRES,
    PINS
  }

  /** What a line says of a row, in the order in which they stand. */
  enum Tone {
    REFUSED,
    ADDED,
    CHANGED,
    NEW,
    SAME,
    SAID,
    WANTING
  }

  /**
   * One thing said of the list.
   *
   * @param row line of the list; 0 if it is about the whole
   * @param column column of the list; 0 if it is about the row
   */
  record Line(Tone tone, int row, int column, String words) {}

  /**
   * One column of the list.
   *
   * @param number counted from 1
   * @param first what its first cells hold
   * @param taken what it is taken for; empty if it isn't read
   */
  record Column(int number, String heading, List<String> first, Optional<String> taken) {}

  /** One cell of a row under its heading. */
  record Cell(String heading, String text, boolean refused) {}

  private final SheetStore store;
  private final Worker worker;
  private final Supplier<Optional<Vehicle>> vehicle;
  private final ObservableList<Column> columns = FXCollections.observableArrayList();
  private final ObservableList<Line> lines = FXCollections.observableArrayList();
  private final ReadOnlyStringWrapper counts = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper takes = new ReadOnlyBooleanWrapper();
  private final Set<Leniency> leniency = EnumSet.noneOf(Leniency.class);
  private Sort sort = Sort.WIRES;
  private Optional<SheetStore.Read> read = Optional.empty();
  private Optional<ListSource<?>> source = Optional.empty();
  private int asked;

  SheetViewModel(SheetStore store, Worker worker, Supplier<Optional<Vehicle>> vehicle) {
    this.store = store;
    this.worker = worker;
    this.vehicle = vehicle;
  }

  /** The columns of the list. */
  ObservableList<Column> columns() {
    return columns;
  }

  /** What there is to say of it, what is refused first. */
  ObservableList<Line> lines() {
    return lines;
  }

  /** How many wires are new, changed and so on, in a sentence. */
  ReadOnlyStringProperty countsProperty() {
    return counts.getReadOnlyProperty();
  }

  /** Why there is no list; empty if there is one. */
  ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** Whether it can be taken. */
  ReadOnlyBooleanProperty takesProperty() {
    return takes.getReadOnlyProperty();
  }

  /** What columns may hold, by their words. */
  List<String> options() {
    return source.map(ListSource::options).orElse(List.of());
  }

  /** What the list is about. */
  Sort sort() {
    return sort;
  }

  /** Whether something may be left open. */
  boolean allows(Leniency what) {
    return leniency.contains(what);
  }

  /** Reads the list in a file, by its path as typed or pasted. */
  void open(String path) {
    String plain = path.strip().replaceAll("^[\"'](.*)[\"']$", "$1");
    Path file;
    try {
      file = plain.startsWith("~/") ? store.home().resolve(plain.substring(2)) : Path.of(plain);
    } catch (InvalidPathException e) {
      problem.set(Texts.of("sheet.noPath", plain));
      return;
    }
    if (plain.isEmpty()) {
      problem.set(Texts.of("sheet.nothing"));
      return;
    }
    worker.run(() -> store.read(file), this::become, e -> problem.set(e.getMessage()));
  }

  /** Takes a text for the list, for instance one copied from a spreadsheet. */
  void paste(String text) {
    become(new SheetStore.Read(text, Texts.of("sheet.pasted"), Optional.empty()));
  }

  private void become(SheetStore.Read list) {
    read = Optional.of(list);
    problem.set(list.remark().orElse(""));
    reread();
  }

  private void reread() {
    read.ifPresent(
        list -> {
          Sort now = sort;
          worker.run(() -> source(list, now), this::become, this::failed);
        });
  }

  private static ListSource<?> source(SheetStore.Read list, Sort sort) {
    if (sort == Sort.PINS) {
      PinSheet sheet = PinSheet.read(list.text(), list.name());
      return new ListSource.Pins(sheet, sheet.guess());
    }
    WireSheet sheet = WireSheet.read(list.text(), list.name());
    return new ListSource.Wires(sheet, sheet.guess());
  }

  private void become(ListSource<?> next) {
    source = Optional.of(next);
    columns.setAll(next.columns());
    look();
  }

  /** Works out what would come of the list as it is taken now. */
  private void look() {
    takes.set(false);
    Optional<Vehicle> now = vehicle.get();
    if (source.isEmpty() || now.isEmpty()) {
      return;
    }
    ListSource<?> list = source.get();
    Set<Leniency> allowed = Set.copyOf(leniency);
    int mine = ++asked;
    worker.run(
        () -> list.outcome(now.get(), allowed),
        outcome -> {
          if (mine == asked) {
            lines.setAll(outcome.lines());
            counts.set(outcome.counts());
            takes.set(outcome.takes());
          }
        },
        this::failed);
  }

  private void failed(Exception e) {
    problem.set(String.valueOf(e.getMessage()));
  }

  /** Says what the list is about. */
  void about(Sort what) {
    sort = what;
    reread();
  }

  /** Allows something to be left open, or no longer. */
  void toggle(Leniency what) {
    if (!leniency.remove(what)) {
      leniency.add(what);
    }
    look();
  }

  /** Takes a column for something; empty for nothing. */
  void choose(int number, Optional<String> option) {
    source.ifPresent(s -> become(s.with(number, option)));
  }

  /** The row that a line is about, as the list holds it; empty for the whole. */
  List<Cell> row(Line line) {
    if (line.row() == 0 || source.isEmpty()) {
      return List.of();
    }
    List<String> cells = source.get().sheet().cells(line.row());
    return columns.stream()
        .map(
            c ->
                new Cell(
                    c.heading(),
                    c.number() <= cells.size() ? cells.get(c.number() - 1) : "",
                    line.tone() == Tone.REFUSED && c.number() == line.column()))
        .toList();
  }

  /**
   * The edit that takes the list.
   *
   * @throws Problem if it can't be taken
   */
  Edit edit() throws Problem {
    if (source.isEmpty() || !takes.get()) {
      throw new Problem(
          "list",
          read.map(SheetStore.Read::name).orElse(""),
          Texts.of(read.isEmpty() ? "sheet.nothing" : "sheet.notYet"));
    }
    return source.get().edit(read.orElseThrow().name(), Set.copyOf(leniency));
  }
}
