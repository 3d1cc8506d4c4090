package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.edit.Shown;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.ShortName;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/**
 * One reading of a wire list against one vehicle. A bad cell gets a harmless stand-in, so that the
 * rest of its row is looked at too; no row of a list with a defect reaches the vehicle.
 */
final class WireReading {
  private static final Pattern FINDING = Pattern.compile("parts\\[(\\d+)](?:\\.(\\w+).*)?");
  private static final Set<WireColumn> ENDS = EnumSet.of(WireColumn.FROM, WireColumn.TO);

  /** Columns in which people merge cells. */
  private static final Set<WireColumn> MERGED =
      EnumSet.of(
          WireColumn.FROM,
          WireColumn.TO,
          WireColumn.SIZE,
          WireColumn.COLOUR,
          WireColumn.LOOM,
          WireColumn.WHERE);

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
  private final Cells<WireColumn> cells;
  private final RowSieve<WireColumn> sieve;
  private final NewParts newParts;
  private final List<WirePreview.Added> added = new ArrayList<>();
  private final boolean addsParts;
  private final WireEnds ends;
  private final WireValues values;
  private final Map<String, Integer> lines = new LinkedHashMap<>();
  private final Map<String, List<String>> notes = new HashMap<>();
  private final Set<String> named = new HashSet<>();
  private final List<Part> wires = new ArrayList<>();
  private final Map<String, String> after = new HashMap<>();
  private final Map<TerminalPair, List<Part>> byEnds = new HashMap<>();
  private final Set<String> ids = new HashSet<>();
  private boolean whole = true;
  private int unnamed;
  private int remarkCells;
  private int nextFree = 1;

  /** Stands for an end that couldn't be read, so that the other end is checked. */
  private static final TerminalRef NOWHERE = new TerminalRef("?", "?");

  private record TerminalPair(TerminalRef from, TerminalRef to) {}

  WireReading(
      Sheet<WireColumn> sheet,
      Vehicle vehicle,
      Mapping<WireColumn> mapping,
      Set<Leniency> leniency) {
    this.sheet = sheet;
    this.vehicle = vehicle;
    this.mapping = mapping;
    this.cells = new Cells<>(sheet, mapping);
    this.values = new WireValues(cells, leniency);
    for (Part part : vehicle.parts()) {
      ids.add(part.id());
      if (part.spec() instanceof PartSpec.Wire w) {
        byEnds
            .computeIfAbsent(new TerminalPair(w.from(), w.to()), x -> new ArrayList<>())
            .add(part);
      }
    }
    this.sieve =
        new RowSieve<>(
            sheet.rows,
            mapping,
            ENDS,
            leniency.contains(Leniency.REPEAT_ABOVE) ? MERGED : Set.of(),
            ids::contains);
    this.newParts = new NewParts(vehicle);
    sieve.rows().forEach(this::noteEnds);
    this.addsParts = leniency.contains(Leniency.ADD_PARTS);
    if (addsParts) {
      added.addAll(newParts.guessed());
      added.forEach(p -> ids.add(p.part().id()));
    }
    this.ends = new WireEnds(vehicle, added.stream().map(WirePreview.Added::part).toList());
  }

  private void noteEnds(SheetText.Row row) {
    newParts.note(
        row.line(),
        cells.text(row, WireColumn.FROM),
        cells.text(row, WireColumn.FROM_TERMINAL),
        Sides.End.FROM);
    newParts.note(
        row.line(),
        cells.text(row, WireColumn.TO),
        cells.text(row, WireColumn.TO_TERMINAL),
        Sides.End.TO);
  }

  WirePreview preview() {
    if (columnsSuffice()) {
      sieve.rows().forEach(r -> named.add(cells.text(r, WireColumn.WIRE)));
      sieve.rows().forEach(this::row);
    }
    Vehicle merged = merged();
    List<VehicleCheck.Finding> wanting = new ArrayList<>();
    if (merged.parts().size() > Vehicle.MOST_PARTS) {
      cells.bad(
          0,
          0,
          SheetWords.say("list"),
          SheetWords.say("parts", merged.parts().size()),
          SheetWords.say("parts.most", Vehicle.MOST_PARTS),
          SheetWords.say("parts.more", merged.parts().size()));
    } else {
      check(merged, wanting);
    }
    boolean good = cells.count() == 0;
    return new WirePreview(
        mapping,
        rows(),
        added,
        cells.defects(),
        remarks(),
        good ? Optional.of(merged) : Optional.empty(),
        good ? wanting : List.of());
  }

  private boolean columnsSuffice() {
    if (cells.has(WireColumn.WIRE)) {
      return true;
    }
    for (WireColumn column : ENDS) {
      if (!cells.has(column) && !mapping.headings().isEmpty()) {
        whole = false;
        cells.missing(
            column,
            SheetWords.say(
                "columns.wire",
                WireColumn.FROM.said(),
                WireColumn.TO.said(),
                WireColumn.WIRE.said()));
      }
    }
    return whole;
  }

  private void row(SheetText.Row row) {
    String id = cells.text(row, WireColumn.WIRE);
    Optional<Part> before = ends.exactly(id);
    String object = id.isEmpty() ? SheetWords.say("row") : SheetWords.say("wire", Shown.of(id));
    if (!cells.text(row, WireColumn.NOTE).isEmpty()) {
      remarkCells++;
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
    List<String> taken = new ArrayList<>();
    BothEnds found = ends(row, object, old, taken);
    Optional<TerminalRef> from = found.from();
    Optional<TerminalRef> to = found.to();
    if (id.isEmpty() && from.isPresent() && to.isPresent()) {
      unnamed++;
      before = between(from.get(), to.get());
      id = before.map(Part::id).orElseGet(this::freeName);
    }
    if (from.isEmpty() || to.isEmpty()) {
      whole = false;
      id = id.isEmpty() ? standIn(SheetWords.say("row"), row) : id;
    }
    Integer earlier = lines.putIfAbsent(id, row.line());
    if (earlier != null) {
      cells.bad(
          row,
          WireColumn.WIRE,
          object,
          SheetWords.say("wire.once"),
          SheetWords.say("wire.twice", earlier));
      whole = false;
      id = standIn(id, row);
      lines.put(id, row.line());
    }
    wires.add(values.wire(row, object, id, from.orElse(NOWHERE), to.orElse(NOWHERE), before));
    notes.put(id, taken);
    anchor(row, object, id);
  }

  /** What a wire is called whose name can't be taken, so that the rest of its row is checked. */
  private static String standIn(String id, SheetText.Row row) {
    return SheetWords.say("stand-in", id, Integer.toString(row.line()));
  }

  private boolean nameFits(SheetText.Row row, String id, String object, Optional<Part> before) {
    if (!id.isEmpty() && !ShortName.fits(id)) {
      cells.bad(
          row,
          WireColumn.WIRE,
          object,
          ShortName.limit(),
          SheetWords.say("wire.name", ShortName.limit()));
      return false;
    }
    if (before.isPresent() && !(before.get().spec() instanceof PartSpec.Wire)) {
      cells.bad(
          row,
          WireColumn.WIRE,
          object,
          SheetWords.say("wire.new"),
          SheetWords.say("wire.taken", id, before.get().kind().said()));
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

  private record BothEnds(Optional<TerminalRef> from, Optional<TerminalRef> to) {}

  private BothEnds ends(
      SheetText.Row row, String object, Optional<PartSpec.Wire> old, List<String> taken) {
    Optional<WireEnds.Found> from =
        end(row, object, Sides.End.FROM, old.map(PartSpec.Wire::from), taken);
    Optional<WireEnds.Found> to = end(row, object, Sides.End.TO, old.map(PartSpec.Wire::to), taken);
    if (from.isPresent() && to.isPresent() && isLoadAlone(from.get()) && isLoadAlone(to.get())) {
      cells.bad(
          row,
          WireColumn.FROM,
          object,
          SheetWords.say("wire.sides"),
          SheetWords.say("wire.loads", to.get().terminal().orElseThrow()));
      return new BothEnds(Optional.empty(), to.get().terminal());
    }
    return new BothEnds(
        from.flatMap(WireEnds.Found::terminal), to.flatMap(WireEnds.Found::terminal));
  }

  private boolean isLoadAlone(WireEnds.Found found) {
    return found.alone()
        && found.terminal().flatMap(t -> ends.exactly(t.part())).stream()
            .anyMatch(p -> p.kind().isLoad());
  }

  private Optional<WireEnds.Found> end(
      SheetText.Row row,
      String object,
      Sides.End end,
      Optional<TerminalRef> old,
      List<String> taken) {
    WireColumn partColumn = end == Sides.End.FROM ? WireColumn.FROM : WireColumn.TO;
    String part = cells.text(row, partColumn);
    String terminal =
        cells.text(row, end == Sides.End.FROM ? WireColumn.FROM_TERMINAL : WireColumn.TO_TERMINAL);
    if (part.isEmpty() && terminal.isEmpty() && old.isPresent()) {
      return Optional.of(WireEnds.Found.known(old.get()));
    }
    if (part.isEmpty() && old.isPresent()) {
      part = old.get().part();
    }
    if (part.isEmpty()) {
      cells.bad(
          row,
          partColumn,
          object,
          SheetWords.say("end"),
          SheetWords.say("end.missing", partColumn.said()));
      return Optional.empty();
    }
    WireEnds.Found found = ends.of(part, terminal, end);
    if (found.terminal().isEmpty()) {
      cells.bad(row, partColumn, object, found.limit(), partColumn.said() + " " + found.what());
    }
    found.note().ifPresent(taken::add);
    return Optional.of(found);
  }

  private void anchor(SheetText.Row row, String object, String id) {
    if (!cells.has(WireColumn.AFTER)) {
      return;
    }
    String part = cells.text(row, WireColumn.AFTER);
    boolean known =
        part.isEmpty()
            || ends.exactly(part).filter(p -> !(p.spec() instanceof PartSpec.Wire)).isPresent();
    if (known) {
      after.put(id, part);
    } else {
      cells.bad(
          row,
          WireColumn.AFTER,
          object,
          SheetWords.say("after"),
          SheetWords.say("after.bad", WireColumn.AFTER.said(), Shown.of(part)));
    }
  }

  private Vehicle merged() {
    List<Part> others = new ArrayList<>(vehicle.parts());
    added.forEach(p -> others.add(p.part()));
    return vehicle.with(
        WireRows.merged(others, wires, after), newParts.joins(added), vehicle.circuits());
  }

  /**
   * What the check of the whole finds, by row and column where it is about a row's wire; what was
   * so before the list came is not the list's.
   */
  private void check(Vehicle merged, List<VehicleCheck.Finding> wanting) {
    Set<String> listed = new HashSet<>();
    wires.forEach(w -> listed.add(w.id()));
    VehicleCheck.Scope scope = whole ? VehicleCheck.Scope.WHOLE : VehicleCheck.Scope.PIECES;
    Set<String> before = new HashSet<>();
    for (VehicleCheck.Finding finding : VehicleCheck.check(vehicle, scope, Set.of())) {
      before.add(finding.object() + finding.what());
    }
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
        if (!cells.isBad(line, column)) {
          cells.bad(
              line, column, finding.object(), finding.value(), finding.limit(), finding.what());
        }
      } else if (!before.contains(finding.object() + finding.what())) {
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
    cells.defects().forEach(d -> spoilt.add(d.line()));
    List<WirePreview.Row> rows = new ArrayList<>();
    for (Part wire : wires) {
      int line = lines.get(wire.id());
      if (!spoilt.contains(line)) {
        List<String> taken = notes.getOrDefault(wire.id(), List.of());
        rows.add(WireRows.row(line, ends.exactly(wire.id()), wire, taken));
      }
    }
    return rows;
  }

  private List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    List<String> leftOut = mapping.leftOut();
    if (!leftOut.isEmpty()) {
      remarks.add(SheetWords.say("unread", String.join(", ", leftOut)));
    }
    remarks.addAll(sieve.remarks());
    if (remarkCells > 0) {
      remarks.add(SheetWords.say("notes", Integer.toString(remarkCells), WireColumn.WHERE.said()));
    }
    remarks.addAll(values.remarks());
    long byDirection = notes.values().stream().filter(n -> !n.isEmpty()).count();
    if (byDirection > 0) {
      remarks.add(SheetWords.say("by-direction", byDirection));
    }
    if (unnamed > 0) {
      remarks.add(SheetWords.say("unnamed", unnamed));
    }
    remarks.addAll(newParts.remarks(addsParts));
    long staying =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Wire && !lines.containsKey(p.id()))
            .count();
    if (staying > 0) {
      remarks.add(SheetWords.say("staying", staying));
    }
    return remarks;
  }
}
