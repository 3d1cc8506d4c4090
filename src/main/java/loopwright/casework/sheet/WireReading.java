package loopwright.casework.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.edit.Ends;
import loopwright.casework.edit.Shown;
import loopwright.casework.sheet.WirePreview.Change;
import loopwright.casework.sheet.WirePreview.Effect;
import loopwright.model.Access;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.ShortName;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;

/**
 * One reading of a wire list against one vehicle. A bad cell gets a harmless stand-in, so that the
 * rest of its row is looked at too; no row of a list with a defect reaches the vehicle.
 */
final class WireReading {
  private static final Pattern FINDING = Pattern.compile("parts\\[(\\d+)](?:\\.(\\w+).*)?");
  private static final String LENGTHS = Quantity.LENGTH.accepted();
  private static final String SIZES =
      "4/0 to 40 AWG or 0.05 to 300 mm2, for instance 18 AWG or 1.5 mm2";

  /** The columns a check's finding is about, by the field it names. */
  private static final Map<String, WireColumn> FIELDS =
      Map.of(
          "id", WireColumn.WIRE,
          "from", WireColumn.FROM,
          "to", WireColumn.TO,
          "metres", WireColumn.LENGTH,
          "end_ohms", WireColumn.END_OHMS,
          "apart_minutes", WireColumn.APART,
          "swap_minutes", WireColumn.SWAP);

  private final Sheet<WireColumn> sheet;
  private final Vehicle vehicle;
  private final Mapping<WireColumn> mapping;
  private final Ends ends;
  private final List<CellDefect> defects = new ArrayList<>();
  private final Map<String, Integer> lines = new LinkedHashMap<>();
  private final Set<String> named = new HashSet<>();
  private final List<Part> wires = new ArrayList<>();
  private final Map<String, String> after = new HashMap<>();
  private final Map<TerminalPair, List<Part>> byEnds = new HashMap<>();
  private final Set<String> ids = new HashSet<>();
  private boolean whole = true;
  private int unnamed;
  private int unitless;
  private int notes;
  private int nextFree = 1;

  /** Stands for an end that couldn't be read, so that the other end is checked. */
  private static final TerminalRef NOWHERE = new TerminalRef("?", "?");

  private record TerminalPair(TerminalRef from, TerminalRef to) {}

  WireReading(Sheet<WireColumn> sheet, Vehicle vehicle, Mapping<WireColumn> mapping) {
    this.sheet = sheet;
    this.vehicle = vehicle;
    this.mapping = mapping;
    this.ends = new Ends(vehicle);
    for (Part part : vehicle.parts()) {
      ids.add(part.id());
      if (part.spec() instanceof PartSpec.Wire w) {
        byEnds
            .computeIfAbsent(new TerminalPair(w.from(), w.to()), x -> new ArrayList<>())
            .add(part);
      }
    }
  }

  WirePreview preview() {
    defects.addAll(sheet.defects);
    if (columnsSuffice()) {
      sheet.rows.forEach(r -> named.add(text(r, WireColumn.WIRE)));
      sheet.rows.forEach(this::row);
    }
    Vehicle merged = merged();
    List<VehicleCheck.Finding> wanting = new ArrayList<>();
    if (merged.parts().size() > Vehicle.MOST_PARTS) {
      defects.add(
          sheet.defect(
              0,
              0,
              "list",
              merged.parts().size() + " parts",
              "at most " + Vehicle.MOST_PARTS + " parts of a vehicle",
              "makes " + merged.parts().size() + " parts, more than a vehicle may have"));
    } else {
      check(merged, wanting);
    }
    defects.sort(CellDefect.IN_ORDER);
    boolean good = defects.isEmpty();
    return new WirePreview(
        mapping,
        rows(),
        defects,
        remarks(),
        good ? Optional.of(merged) : Optional.empty(),
        good ? wanting : List.of());
  }

  private boolean columnsSuffice() {
    if (mapping.at(WireColumn.WIRE).isPresent()) {
      return true;
    }
    for (WireColumn column : List.of(WireColumn.FROM, WireColumn.TO)) {
      if (mapping.at(column).isEmpty() && !mapping.headings().isEmpty()) {
        whole = false;
        defects.add(
            sheet.defect(
                0,
                0,
                "list",
                "no column '" + column.word() + "'",
                "columns 'from' and 'to', or 'wire'",
                "no heading is understood as '"
                    + column.word()
                    + "'; say which column it is. Headings: "
                    + Shown.of(String.join(", ", mapping.headings()))));
      }
    }
    return whole;
  }

  private String text(SheetText.Row row, WireColumn column) {
    return mapping.at(column).map(row::cell).orElse("").strip();
  }

  private void bad(SheetText.Row row, WireColumn column, String object, String limit, String what) {
    String shown = Shown.of(text(row, column));
    defects.add(
        sheet.defect(
            row.line(),
            mapping.at(column).orElse(0),
            object,
            shown.isEmpty() ? "missing" : "\"" + shown + "\"",
            limit,
            what));
  }

  private void row(SheetText.Row row) {
    String id = text(row, WireColumn.WIRE);
    Optional<Part> before = ends.exactly(id);
    String object = id.isEmpty() ? "row" : "wire " + Shown.of(id);
    if (!text(row, WireColumn.NOTE).isEmpty()) {
      notes++;
    }
    if (!nameFits(row, id, object, before)) {
      whole = false;
      before = Optional.empty();
      id = standIn(id, row);
    }
    Optional<PartSpec.Wire> old =
        before
            .map(Part::spec)
            .filter(PartSpec.Wire.class::isInstance)
            .map(PartSpec.Wire.class::cast);
    Optional<TerminalRef> from =
        end(row, object, WireColumn.FROM, WireColumn.FROM_TERMINAL, old.map(PartSpec.Wire::from));
    Optional<TerminalRef> to =
        end(row, object, WireColumn.TO, WireColumn.TO_TERMINAL, old.map(PartSpec.Wire::to));
    if (id.isEmpty() && from.isPresent() && to.isPresent()) {
      unnamed++;
      before = between(from.get(), to.get());
      id = before.map(Part::id).orElseGet(this::freeName);
    }
    if (from.isEmpty() || to.isEmpty()) {
      whole = false;
      id = id.isEmpty() ? standIn("row", row) : id;
    }
    Integer earlier = lines.putIfAbsent(id, row.line());
    if (earlier != null) {
      bad(
          row,
          WireColumn.WIRE,
          object,
          "each wire once",
          "stands on line " + earlier + " already, must stand in the list once");
      whole = false;
      before = Optional.empty();
      id = standIn(id, row);
      lines.put(id, row.line());
    }
    wires.add(wire(row, object, id, from.orElse(NOWHERE), to.orElse(NOWHERE), before));
    anchor(row, object, id);
  }

  /** What a wire is called whose name can't be taken, so that the rest of its row is checked. */
  private static String standIn(String id, SheetText.Row row) {
    return id + " of line " + row.line();
  }

  private boolean nameFits(SheetText.Row row, String id, String object, Optional<Part> before) {
    if (!id.isEmpty() && !ShortName.fits(id)) {
      bad(row, WireColumn.WIRE, object, ShortName.LIMIT, "its name must be " + ShortName.LIMIT);
      return false;
    }
    if (before.isPresent() && !(before.get().spec() instanceof PartSpec.Wire)) {
      bad(
          row,
          WireColumn.WIRE,
          object,
          "a name no other part has",
          id
              + " is a "
              + before.get().kind().word()
              + " of the vehicle, must be a wire or a new name");
      return false;
    }
    return true;
  }

  /** The one wire of the vehicle between two terminals that no other row is about. */
  private Optional<Part> between(TerminalRef from, TerminalRef to) {
    return byEnds.getOrDefault(new TerminalPair(from, to), List.of()).stream()
        .filter(p -> !named.contains(p.id()) && !lines.containsKey(p.id()))
        .findFirst();
  }

  private String freeName() {
    while (ids.contains("W" + nextFree) || named.contains("W" + nextFree)) {
      nextFree++;
    }
    return "W" + nextFree++;
  }

  private Optional<TerminalRef> end(
      SheetText.Row row,
      String object,
      WireColumn partColumn,
      WireColumn terminalColumn,
      Optional<TerminalRef> old) {
    String part = text(row, partColumn);
    String terminal = text(row, terminalColumn);
    if (part.isEmpty() && terminal.isEmpty() && old.isPresent()) {
      return old;
    }
    if (part.isEmpty() && old.isPresent()) {
      part = old.get().part();
    }
    if (part.isEmpty()) {
      bad(
          row,
          partColumn,
          object,
          "a part and its terminal, for instance F3.load",
          partColumn.word() + " is missing");
      return Optional.empty();
    }
    Ends.End end = terminal.isEmpty() ? ends.of(part) : ends.of(part, terminal);
    if (end.terminal().isEmpty()) {
      bad(row, partColumn, object, end.limit(), partColumn.word() + " " + end.what());
    }
    return end.terminal();
  }

  private Part wire(
      SheetText.Row row,
      String object,
      String id,
      TerminalRef from,
      TerminalRef to,
      Optional<Part> before) {
    Optional<PartSpec.Wire> old = before.map(p -> (PartSpec.Wire) p.spec());
    PartKind kind = kind(row, object, old);
    WireSize size = size(row, object, old);
    Estimate metres = length(row, object, old);
    Optional<Estimate> endOhms =
        kept(WireColumn.END_OHMS, old.flatMap(PartSpec.Wire::endOhms), () -> ohms(row, object));
    Optional<Double> apart =
        kept(
            WireColumn.APART,
            before.flatMap(Part::apartMinutes),
            () -> minutes(row, object, WireColumn.APART));
    Optional<Double> swap =
        kept(
            WireColumn.SWAP,
            before.flatMap(Part::swapMinutes),
            () -> minutes(row, object, WireColumn.SWAP));
    PartSpec.Wire wire =
        new PartSpec.Wire(
            kind,
            from,
            to,
            size,
            metres,
            endOhms,
            words(row, WireColumn.COLOUR, old.map(PartSpec.Wire::colour)),
            words(row, WireColumn.LOOM, old.map(PartSpec.Wire::loom)));
    Map<String, Access> access = before.map(Part::access).orElse(Map.of());
    return new Part(
        id,
        words(row, WireColumn.NAME, before.map(Part::name)),
        words(row, WireColumn.LABEL, before.map(Part::label)),
        wire,
        access,
        apart,
        swap,
        before.map(Part::spare).orElse(Set.of()),
        words(row, WireColumn.WHERE, before.map(Part::where)));
  }

  private <T> Optional<T> kept(
      WireColumn column, Optional<T> old, java.util.function.Supplier<Optional<T>> read) {
    return mapping.at(column).isPresent() ? read.get() : old;
  }

  /** Words are kept as they stand, outer spaces in quotes included. */
  private String words(SheetText.Row row, WireColumn column, Optional<String> old) {
    return mapping.at(column).map(row::cell).orElse(old.orElse(""));
  }

  private PartKind kind(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = text(row, WireColumn.KIND);
    for (PartKind kind : List.of(PartKind.WIRE, PartKind.STRAP)) {
      if (kind.word().equalsIgnoreCase(cell)) {
        return kind;
      }
    }
    if (!cell.isEmpty()) {
      bad(
          row,
          WireColumn.KIND,
          object,
          "wire or strap",
          "kind is \"" + Shown.of(cell) + "\", must be wire or strap");
    }
    return old.map(PartSpec.Wire::kind).orElse(PartKind.WIRE);
  }

  private WireSize size(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = text(row, WireColumn.SIZE);
    Optional<WireSize> size =
        Said.size(
            cell, mapping.at(WireColumn.SIZE).map(mapping::heading).flatMap(Units::sizeOfHeading));
    if (size.isEmpty() && cell.isEmpty() && old.isPresent()) {
      return old.get().size();
    }
    if (size.isEmpty()) {
      boolean number = cell.matches("\\d{1,2}");
      bad(
          row,
          WireColumn.SIZE,
          object,
          SIZES,
          cell.isEmpty()
              ? "size is missing, must be " + SIZES
              : "size is \""
                  + Shown.of(cell)
                  + "\", must be "
                  + SIZES
                  + (number ? "; a bare " + cell + " may be either" : ""));
    }
    return size.orElse(new WireSize(WireSize.Unit.MM2, 1));
  }

  private Estimate length(SheetText.Row row, String object, Optional<PartSpec.Wire> old) {
    String cell = text(row, WireColumn.LENGTH);
    if (cell.isEmpty() && old.isPresent()) {
      return old.get().metres();
    }
    Optional<BigDecimal> unit =
        mapping.at(WireColumn.LENGTH).map(mapping::heading).flatMap(Units::metresOfHeading);
    Optional<Estimate> length = Said.amount(cell, Quantity.LENGTH, unit.orElse(BigDecimal.ONE));
    if (length.isEmpty()) {
      bad(
          row,
          WireColumn.LENGTH,
          object,
          LENGTHS,
          cell.isEmpty()
              ? "length is missing, must be " + LENGTHS
              : "length is \""
                  + Shown.of(cell)
                  + "\", must be "
                  + LENGTHS
                  + (Said.twoWays(cell)
                      ? "; a comma before three digits can be read two ways"
                      : ""));
    } else if (unit.isEmpty() && !Said.saysUnit(cell, Quantity.LENGTH)) {
      unitless++;
    }
    return length.orElse(Estimate.of(1));
  }

  private Optional<Estimate> ohms(SheetText.Row row, String object) {
    String cell = text(row, WireColumn.END_OHMS);
    Optional<Estimate> ohms = Said.amount(cell, Quantity.OHMS);
    if (ohms.isEmpty() && !cell.isEmpty()) {
      bad(
          row,
          WireColumn.END_OHMS,
          object,
          "a number of ohms",
          "end ohms is \"" + Shown.of(cell) + "\", must be a number of ohms");
    }
    return ohms;
  }

  private Optional<Double> minutes(SheetText.Row row, String object, WireColumn column) {
    String cell = text(row, column);
    Optional<Double> minutes = Said.exactly(cell, Quantity.MINUTES);
    if (minutes.isEmpty() && !cell.isEmpty()) {
      bad(
          row,
          column,
          object,
          "a number of minutes",
          column.word() + " is \"" + Shown.of(cell) + "\", must be a number of minutes");
    }
    return minutes;
  }

  private void anchor(SheetText.Row row, String object, String id) {
    if (mapping.at(WireColumn.AFTER).isEmpty()) {
      return;
    }
    String part = text(row, WireColumn.AFTER);
    boolean known =
        part.isEmpty()
            || ends.exactly(part).filter(p -> !(p.spec() instanceof PartSpec.Wire)).isPresent();
    if (known) {
      after.put(id, part);
    } else {
      bad(
          row,
          WireColumn.AFTER,
          object,
          "a part of the vehicle that is no wire",
          "listed after is \"" + Shown.of(part) + "\", must be a part that is no wire");
    }
  }

  private Vehicle merged() {
    return new Vehicle(
        vehicle.id(),
        vehicle.name(),
        vehicle.systemVolts(),
        vehicle.grounded(),
        WireRows.merged(vehicle.parts(), wires, after),
        vehicle.joins(),
        vehicle.circuits(),
        vehicle.note());
  }

  /** What the check of the whole finds, by row and column where it is about a row's wire. */
  private void check(Vehicle merged, List<VehicleCheck.Finding> wanting) {
    Set<String> listed = new HashSet<>();
    wires.forEach(w -> listed.add(w.id()));
    VehicleCheck.Scope scope = whole ? VehicleCheck.Scope.WHOLE : VehicleCheck.Scope.PIECES;
    for (VehicleCheck.Finding finding : VehicleCheck.check(merged, scope, Set.of())) {
      Matcher m = FINDING.matcher(finding.path());
      Optional<Part> wire =
          m.matches()
              ? Optional.of(merged.parts().get(Integer.parseInt(m.group(1))))
                  .filter(p -> listed.contains(p.id()))
              : Optional.empty();
      if (wire.isPresent()) {
        int line = lines.get(wire.get().id());
        int column = column(m.group(2), wire.get());
        if (defects.stream().noneMatch(d -> d.line() == line && d.column() == column)) {
          defects.add(
              sheet.defect(
                  line,
                  column,
                  finding.object(),
                  finding.value(),
                  finding.limit(),
                  finding.what()));
        }
      } else {
        wanting.add(finding);
      }
    }
  }

  private int column(String field, Part wire) {
    WireColumn column = field == null ? null : FIELDS.get(field);
    if (column == null) {
      return 0;
    }
    // Where the part is known and the terminal has a column of its own, that one is in question.
    PartSpec.Wire spec = (PartSpec.Wire) wire.spec();
    Optional<Integer> terminal = Optional.empty();
    if (column == WireColumn.FROM && ends.part(spec.from().part()).isPresent()) {
      terminal = mapping.at(WireColumn.FROM_TERMINAL);
    } else if (column == WireColumn.TO && ends.part(spec.to().part()).isPresent()) {
      terminal = mapping.at(WireColumn.TO_TERMINAL);
    }
    return terminal.or(() -> mapping.at(column)).orElse(0);
  }

  /** The rows that no defect is about. */
  private List<WirePreview.Row> rows() {
    Set<Integer> spoilt = new HashSet<>();
    defects.forEach(d -> spoilt.add(d.line()));
    List<WirePreview.Row> rows = new ArrayList<>();
    for (Part wire : wires) {
      int line = lines.get(wire.id());
      if (!spoilt.contains(line)) {
        rows.add(
            ends.exactly(wire.id())
                .map(before -> row(line, before, wire))
                .orElseGet(() -> new WirePreview.Row(line, wire, Effect.NEW, List.of())));
      }
    }
    return rows;
  }

  private static WirePreview.Row row(int line, Part before, Part wire) {
    if (wire.equals(before)) {
      return new WirePreview.Row(line, wire, Effect.UNCHANGED, List.of());
    }
    Map<WireColumn, String> was = WireRows.cells(before, (PartSpec.Wire) before.spec());
    List<Change> changes = new ArrayList<>();
    WireRows.cells(wire, (PartSpec.Wire) wire.spec())
        .forEach(
            (column, now) -> {
              if (!now.equals(was.get(column))) {
                changes.add(new Change(column, was.get(column), now));
              }
            });
    return new WirePreview.Row(line, wire, Effect.CHANGED, changes);
  }

  private List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    List<String> leftOut = mapping.leftOut();
    if (!leftOut.isEmpty()) {
      remarks.add("Columns not read: " + String.join(", ", leftOut) + ".");
    }
    if (notes > 0) {
      remarks.add(
          "Notes left out, since a wire holds none: "
              + notes
              + ". To keep them, take that column as 'where'.");
    }
    if (unitless > 0) {
      remarks.add("Lengths without a unit, taken as metres: " + unitless + ".");
    }
    if (unnamed > 0) {
      remarks.add(
          "Rows without a wire's name, known by their ends or given the next free one: "
              + unnamed
              + ".");
    }
    long staying =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Wire && !lines.containsKey(p.id()))
            .count();
    if (staying > 0) {
      remarks.add(
          "Wires of the vehicle that the list doesn't name stay as they are: " + staying + ".");
    }
    return remarks;
  }
}
