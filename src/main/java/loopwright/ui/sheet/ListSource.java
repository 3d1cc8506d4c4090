package loopwright.ui.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.edit.Edit;
import loopwright.casework.sheet.CellDefect;
import loopwright.casework.sheet.Leniency;
import loopwright.casework.sheet.Mapping;
import loopwright.casework.sheet.PinColumn;
import loopwright.casework.sheet.PinPreview;
import loopwright.casework.sheet.PinSheet;
import loopwright.casework.sheet.Sheet;
import loopwright.casework.sheet.SheetColumn;
import loopwright.casework.sheet.SheetEdits;
import loopwright.casework.sheet.WireColumn;
import loopwright.casework.sheet.WirePreview;
import loopwright.casework.sheet.WireSheet;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.sheet.SheetViewModel.Column;
import loopwright.ui.sheet.SheetViewModel.Line;
import loopwright.ui.sheet.SheetViewModel.Tone;

/**
 * A list as read, with what is taken from which column. Never changes.
 *
 * @param <C> what its columns may hold
 */
interface ListSource<C extends Enum<C> & SheetColumn> {
  /** Rows shown of each column. */
  int SHOWN = 3;

  /** The list. */
  Sheet<C> sheet();

  /** Which of its columns is taken for what. */
  Mapping<C> mapping();

  /** The same with the columns taken as given. */
  ListSource<C> with(Mapping<C> mapping);

  /** What would come of it. */
  Outcome outcome(Vehicle vehicle, Set<Leniency> leniency);

  /** Takes it. */
  Edit edit(String name, Set<Leniency> leniency);

  /** What columns may hold, by their words. */
  default List<String> options() {
    return sheet().columns().stream().map(SheetColumn::said).toList();
  }

  /** The columns, with their first cells. */
  default List<Column> columns() {
    List<List<String>> rows = sheet().firstRows(SHOWN);
    List<String> headings = mapping().headings();
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      int at = i;
      List<String> first = rows.stream().map(r -> at < r.size() ? r.get(at) : "").toList();
      columns.add(
          new Column(i + 1, headings.get(i), first, mapping().in(i + 1).map(SheetColumn::said)));
    }
    return columns;
  }

  /**
   * The same with a column taken otherwise.
   *
   * @param number the column, counted from 1
   * @param option what it holds; empty for nothing
   */
  default ListSource<C> with(int number, Optional<String> option) {
    return with(
        sheet().columns().stream()
            .filter(c -> option.filter(c.said()::equals).isPresent())
            .findFirst()
            .map(c -> mapping().with(c, number))
            .or(() -> mapping().in(number).map(mapping()::without))
            .orElse(mapping()));
  }

  /**
   * What would come of a list.
   *
   * @param lines what there is to say, what is refused first
   * @param counts how many of each, in a sentence
   * @param takes whether it could be taken, and would change anything
   */
  record Outcome(List<Line> lines, String counts, boolean takes) {}

  /** A wire list. */
  record Wires(WireSheet sheet, Mapping<WireColumn> mapping) implements ListSource<WireColumn> {
    @Override
    public Wires with(Mapping<WireColumn> mapping) {
      return new Wires(sheet, mapping);
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
                        WireSheet.length(w),
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
        all.add(Texts.of("sheet.change", c.column().said(), orNone(c.before()), orNone(c.after())));
      }
      return String.join("; ", all);
    }

    @Override
    public Edit edit(String name, Set<Leniency> leniency) {
      return SheetEdits.wires(name, sheet, mapping, leniency);
    }
  }

  /** A pinout list. */
  record Pins(PinSheet sheet, Mapping<PinColumn> mapping) implements ListSource<PinColumn> {
    @Override
    public Pins with(Mapping<PinColumn> mapping) {
      return new Pins(sheet, mapping);
    }

    @Override
    public Outcome outcome(Vehicle vehicle, Set<Leniency> leniency) {
      PinPreview preview = sheet.preview(vehicle, mapping);
      List<Line> lines = new ArrayList<>(refused(preview.defects()));
      for (PinPreview.Difference d : preview.differences()) {
        Tone tone = d.open().isPresent() ? Tone.REFUSED : d.line() == 0 ? Tone.SAID : Tone.CHANGED;
        lines.add(new Line(tone, d.line(), d.column(), d.message()));
      }
      lines.sort(Comparator.comparing(Line::tone));
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
