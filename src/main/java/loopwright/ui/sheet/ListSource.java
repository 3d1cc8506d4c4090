package loopwright.ui.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import loopwright.casework.edit.Edit;
import loopwright.casework.sheet.CellDefect;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.Mapping;
import loopwright.casework.sheet.PinColumn;
import loopwright.casework.sheet.PinPreview;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.SheetColumn;
import loopwright.casework.sheet.SheetEdits;
import loopwright.casework.sheet.WireColumn;
import loopwright.casework.sheet.WirePreview;
import loopwright.casework.sheet.WireSheet;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.sheet.SheetViewModel.Column;
import loopwright.ui.sheet.SheetViewModel.Line;
import loopwright.ui.sheet.SheetViewModel.Tone;

/** A list as read, with what is taken from which column. Never changes. */
interface ListSource {
  /** Rows shown of each column. */
  int SHOWN = 3;

  /** What columns may hold, by their words. */
  List<String> options();

  /** The columns, with their first cells. */
  List<Column> columns();

  /**
   * The same with a column taken otherwise.
   *
   * @param number the column, counted from 1
   * @param option what it holds; empty for nothing
   */
  ListSource with(int number, Optional<String> option);

  /** What would come of it. */
  Outcome outcome(Vehicle vehicle, Set<Leniency> leniency);

  /** Takes it. */
  Edit edit(String name, Set<Leniency> leniency);

  /** The cells of the row on a line of the list. */
  List<String> cells(int line);

  /**
   * What would come of a list.
   *
   * @param lines what there is to say, what is refused first
   * @param counts how many of each, in a sentence
   * @param takes whether it could be taken, and would change anything
   */
  record Outcome(List<Line> lines, String counts, boolean takes) {}

  /** A wire list. */
  record Wires(WireSheet sheet, Mapping<WireColumn> mapping) implements ListSource {
    @Override
    public List<String> options() {
      return words(WireColumn.values());
    }

    @Override
    public List<Column> columns() {
      return ListSource.columns(mapping, sheet.firstRows(SHOWN));
    }

    @Override
    public ListSource with(int number, Optional<String> option) {
      return new Wires(sheet, changed(mapping, number, option, WireColumn.values()));
    }

    @Override
    public Outcome outcome(Vehicle vehicle, Set<Leniency> leniency) {
      WirePreview preview = sheet.preview(vehicle, mapping, leniency);
      List<Line> lines = new ArrayList<>(refused(preview.defects()));
      preview.added().forEach(a -> lines.add(new Line(Tone.ADDED, a.line(), 0, a.told())));
      for (Tone tone : List.of(Tone.CHANGED, Tone.NEW)) {
        preview.rows().stream().map(Wires::line).filter(l -> l.tone() == tone).forEach(lines::add);
      }
      preview.remarks().forEach(r -> lines.add(new Line(Tone.SAID, 0, 0, r)));
      lines.addAll(ListSource.wanting(preview.wanting()));
      long fresh = preview.count(WirePreview.Effect.NEW);
      long changed = preview.count(WirePreview.Effect.CHANGED);
      long refused = preview.defects().stream().map(CellDefect::line).distinct().count();
      String counts =
          Texts.of(
              "sheet.counts", fresh, changed, preview.count(WirePreview.Effect.UNCHANGED), refused);
      boolean takes = preview.applied().filter(v -> !v.equals(vehicle)).isPresent();
      return new Outcome(lines, counts, takes);
    }

    private static Line line(WirePreview.Row row) {
      PartSpec.Wire w = (PartSpec.Wire) row.wire().spec();
      String id = row.wire().id();
      String taken = row.taken().isEmpty() ? "" : " (" + String.join("; ", row.taken()) + ")";
      return switch (row.effect()) {
        case NEW ->
            new Line(
                Tone.NEW,
                row.line(),
                0,
                Texts.of(
                        "sheet.newWire",
                        id,
                        w.from(),
                        w.to(),
                        w.size(),
                        Said.text(w.metres()) + " m",
                        w.colour().isEmpty() ? "" : ", " + w.colour())
                    + taken);
        case CHANGED ->
            new Line(Tone.CHANGED, row.line(), 0, id + ": " + changes(row.changes()) + taken);
        case UNCHANGED -> new Line(Tone.SAME, row.line(), 0, id);
      };
    }

    private static String changes(List<WirePreview.Change> changes) {
      List<String> all = new ArrayList<>();
      for (WirePreview.Change c : changes) {
        all.add(Texts.of("sheet.change", c.column().word(), orNone(c.before()), orNone(c.after())));
      }
      return String.join("; ", all);
    }

    @Override
    public Edit edit(String name, Set<Leniency> leniency) {
      return SheetEdits.wires(name, sheet, mapping, leniency);
    }

    @Override
    public List<String> cells(int line) {
      return sheet.cells(line);
    }
  }

  /** A pinout list. */
  record Pins(PinSheet sheet, Mapping<PinColumn> mapping) implements ListSource {
    @Override
    public List<String> options() {
      return words(PinColumn.values());
    }

    @Override
    public List<Column> columns() {
      return ListSource.columns(mapping, sheet.firstRows(SHOWN));
    }

    @Override
    public ListSource with(int number, Optional<String> option) {
      return new Pins(sheet, changed(mapping, number, option, PinColumn.values()));
    }

    @Override
    public Outcome outcome(Vehicle vehicle, Set<Leniency> leniency) {
      PinPreview preview = sheet.preview(vehicle, mapping);
      List<Line> lines = new ArrayList<>(refused(preview.defects()));
      for (PinPreview.Difference d : preview.differences()) {
        Tone tone = d.open().isPresent() ? Tone.REFUSED : d.line() == 0 ? Tone.SAID : Tone.CHANGED;
        lines.add(new Line(tone, d.line(), d.column(), d.message()));
      }
      lines.sort(java.util.Comparator.comparing(Line::tone));
      preview.remarks().forEach(r -> lines.add(new Line(Tone.SAID, 0, 0, r)));
      lines.addAll(ListSource.wanting(preview.wanting()));
      long refused = lines.stream().filter(l -> l.tone() == Tone.REFUSED).count();
      long differ = lines.stream().filter(l -> l.tone() == Tone.CHANGED).count();
      String counts = Texts.of("sheet.pinCounts", preview.agreeing(), differ, refused);
      boolean takes = preview.applied().filter(v -> !v.equals(vehicle)).isPresent();
      return new Outcome(lines, counts, takes);
    }

    @Override
    public Edit edit(String name, Set<Leniency> leniency) {
      return SheetEdits.pins(name, sheet, mapping, Set.of());
    }

    @Override
    public List<String> cells(int line) {
      return sheet.cells(line);
    }
  }

  private static List<String> words(SheetColumn[] columns) {
    return IntStream.range(0, columns.length).mapToObj(i -> columns[i].word()).toList();
  }

  private static <C extends Enum<C> & SheetColumn> Mapping<C> changed(
      Mapping<C> mapping, int number, Optional<String> option, C[] columns) {
    Mapping<C> changed = mapping;
    for (C column : columns) {
      if (mapping.at(column).filter(n -> n == number).isPresent()) {
        changed = changed.without(column);
      }
    }
    for (C column : columns) {
      if (option.filter(column.word()::equals).isPresent()) {
        changed = changed.with(column, number);
      }
    }
    return changed;
  }

  private static <C extends Enum<C> & SheetColumn> List<Column> columns(
      Mapping<C> mapping, List<List<String>> rows) {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < mapping.headings().size(); i++) {
      int at = i;
      Optional<String> taken =
          mapping.columns().entrySet().stream()
              .filter(e -> e.getValue() == at + 1)
              .map(Map.Entry::getKey)
              .map(SheetColumn::word)
              .findFirst();
      List<String> first =
          rows.stream().map(r -> at < r.size() ? r.get(at) : "").limit(SHOWN).toList();
      columns.add(new Column(i + 1, mapping.headings().get(i), first, taken));
    }
    return columns;
  }

  private static List<Line> refused(List<CellDefect> defects) {
    return defects.stream()
        .map(d -> new Line(Tone.REFUSED, d.line(), d.column(), d.message()))
        .toList();
  }

  private static List<Line> wanting(List<VehicleCheck.Finding> wanting) {
    return wanting.stream()
        .map(f -> new Line(Tone.WANTING, 0, 0, f.object() + ": " + f.what()))
        .toList();
  }

  private static String orNone(String value) {
    return value.isEmpty() ? Texts.of("sheet.none") : value;
  }
}
