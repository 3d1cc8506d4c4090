package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.edit.Ends;
import loopwright.casework.edit.Shown;
import loopwright.casework.sheet.PinPreview.Difference;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/** One reading of a pinout list against one vehicle. */
final class PinReading {
  private static final Set<PinColumn> WIRES =
      EnumSet.of(PinColumn.WIRE_IN, PinColumn.WIRE_OUT, PinColumn.COLOUR);

  private final Mapping<PinColumn> mapping;
  private final Cells<PinColumn> cells;
  private final RowSieve<PinColumn> sieve;
  private final Vehicle vehicle;
  private final Set<String> only;
  private final Ends ends;
  private final PinSheet.Pins pins;
  private final PinMoves moves;
  private final List<Difference> differences = new ArrayList<>();
  private final Map<String, SheetText.Row> rows = new HashMap<>();
  private final Set<Part> connectors = new LinkedHashSet<>();
  private final List<String> connectorIds;
  private final List<Part> wires;
  private int agreeing;
  private int elsewhere;

  PinReading(
      Sheet<PinColumn> sheet, Vehicle vehicle, Mapping<PinColumn> mapping, Set<String> only) {
    this.mapping = mapping;
    this.vehicle = vehicle;
    this.only = only;
    this.cells = new Cells<>(sheet, mapping);
    this.ends = new Ends(vehicle);
    this.pins = new PinSheet.Pins(vehicle);
    this.moves = new PinMoves(vehicle);
    this.wires = vehicle.parts().stream().filter(p -> p.spec() instanceof PartSpec.Wire).toList();
    this.connectorIds =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Connector)
            .map(Part::id)
            .filter(id -> only.isEmpty() || only.contains(id))
            .toList();
    this.sieve =
        new RowSieve<>(
            sheet.rows,
            mapping,
            EnumSet.of(PinColumn.CAVITY, PinColumn.WIRE_IN, PinColumn.WIRE_OUT),
            Set.of(PinColumn.CONNECTOR),
            id -> ends.part(id).isPresent());
  }

  PinPreview preview() {
    if (columnsSuffice()) {
      sieve.rows().forEach(this::row);
      connectors.forEach(this::missing);
      connectors.forEach(this::loose);
    }
    boolean settled = cells.count() == 0 && differences.stream().allMatch(d -> d.open().isEmpty());
    Optional<Vehicle> applied = settled ? Optional.of(moves.applied()) : Optional.empty();
    Set<String> before = new HashSet<>();
    applied.ifPresent(
        v -> VehicleCheck.check(vehicle).forEach(f -> before.add(f.object() + f.what())));
    List<VehicleCheck.Finding> wanting =
        applied.map(VehicleCheck::check).orElse(List.of()).stream()
            .filter(f -> !before.contains(f.object() + f.what()))
            .toList();
    return new PinPreview(
        mapping, agreeing, cells.defects(), differences, remarks(), applied, wanting);
  }

  private List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    if (!mapping.leftOut().isEmpty()) {
      remarks.add(SheetWords.say("unread", String.join(", ", mapping.leftOut())));
    }
    remarks.addAll(sieve.remarks());
    if (elsewhere > 0) {
      remarks.add(SheetWords.say("elsewhere", elsewhere));
    }
    return remarks;
  }

  private boolean columnsSuffice() {
    boolean suffice = !mapping.headings().isEmpty();
    for (PinColumn column : List.of(PinColumn.CONNECTOR, PinColumn.CAVITY)) {
      // One connector needs no column to say which.
      boolean needed = column == PinColumn.CAVITY || connectorIds.size() != 1;
      if (suffice && needed && !cells.has(column)) {
        suffice = false;
        cells.missing(
            column,
            SheetWords.say("columns.pin", PinColumn.CONNECTOR.said(), PinColumn.CAVITY.said()));
      }
    }
    return suffice;
  }

  private void row(SheetText.Row row) {
    Optional<Part> connector = connector(row);
    if (connector.isEmpty()) {
      return;
    }
    Part part = connector.get();
    if (!only.isEmpty() && !only.contains(part.id())) {
      elsewhere++;
      return;
    }
    connectors.add(part);
    List<String> cavities = ((PartSpec.Connector) part.spec()).cavities();
    String cavity = cells.text(row, PinColumn.CAVITY);
    String object = SheetWords.say("connector", part.id());
    if (!cavities.contains(cavity)) {
      String limit = SheetWords.say("cavities", String.join(", ", cavities));
      cells.bad(
          row,
          PinColumn.CAVITY,
          object,
          limit,
          cavity.isEmpty()
              ? SheetWords.say("cavity.missing", limit)
              : SheetWords.bad(PinColumn.CAVITY, cavity, limit));
      return;
    }
    SheetText.Row before = rows.putIfAbsent(part.id() + "." + cavity, row);
    if (before != null) {
      cells.bad(
          row,
          PinColumn.CAVITY,
          object,
          SheetWords.say("cavity.once"),
          SheetWords.say("cavity.twice", cavity, Integer.toString(before.line())));
      return;
    }
    int known = cells.count() + differences.size();
    Pin pin = new Pin(row, part.id(), cavity);
    List<Part> in = wires(pin, PinColumn.WIRE_IN, pins.in(part.id(), cavity));
    List<Part> out = wires(pin, PinColumn.WIRE_OUT, pins.out(part.id(), cavity));
    colours(pin, in, out);
    if (cells.count() + differences.size() == known) {
      agreeing++;
    }
  }

  /** A row and the cavity it is about. */
  private record Pin(SheetText.Row row, String connector, String cavity) {
    TerminalRef side(PinColumn column) {
      return new TerminalRef(connector, cavity + (column == PinColumn.WIRE_IN ? "a" : "b"));
    }
  }

  private Optional<Part> connector(SheetText.Row row) {
    String id = cells.text(row, PinColumn.CONNECTOR);
    if (!cells.has(PinColumn.CONNECTOR)) {
      return ends.part(connectorIds.get(0));
    }
    Optional<Part> part = ends.part(id).filter(p -> p.spec() instanceof PartSpec.Connector);
    if (part.isEmpty()) {

      cells.bad(
          row,
          PinColumn.CONNECTOR,
          SheetWords.say("row"),
          SheetWords.say("a-connector"),
          id.isEmpty()
              ? SheetWords.say("end.missing", PinColumn.CONNECTOR.said())
              : SheetWords.bad(PinColumn.CONNECTOR, id, SheetWords.say("a-connector"))
                  + SheetWords.meant(id, connectorIds));
    }
    return part;
  }

  /**
   * Holds the wires of a cell against those the vehicle has on that side of the pin.
   *
   * @return the wires that lie there by the list; by the vehicle where the list doesn't say
   */
  private List<Part> wires(Pin pin, PinColumn column, List<Part> there) {
    if (!cells.has(column)) {
      return there;
    }
    String cell = cells.text(pin.row(), column);
    List<Part> listed = new ArrayList<>();
    boolean understood = true;
    for (String name : names(cell, there)) {
      Optional<Part> wire =
          PinSheet.Pins.named(name, there).or(() -> PinSheet.Pins.named(name, wires));
      if (wire.isPresent()) {
        listed.add(wire.get());
      } else {
        understood = false;
        unknown(pin, column, name);
      }
    }
    // One label on all wires of the pin names them all.
    boolean sharedLabel =
        !cell.isEmpty()
            && !there.isEmpty()
            && there.stream().allMatch(w -> w.label().equalsIgnoreCase(cell));
    List<Part> now = sharedLabel || !understood ? there : listed;
    List<String> open = new ArrayList<>();
    now.forEach(w -> moves.put(w, pin.side(column)).ifPresent(open::add));
    if (!Set.copyOf(now).equals(Set.copyOf(there))) {
      differs(pin, column, cell, PinSheet.Pins.names(there), open);
    }
    return open.isEmpty() ? now : there;
  }

  private void unknown(Pin pin, PinColumn column, String name) {

    cells.bad(
        pin.row(),
        column,
        SheetWords.say("connector", pin.connector()),
        SheetWords.say("wires"),
        SheetWords.say("wires.unknown", column.said(), Shown.of(name))
            + SheetWords.meant(name, wires.stream().map(Part::id).toList()));
  }

  /** The wires a cell names: all of it where that is one wire's label, else word by word. */
  private List<String> names(String cell, List<Part> there) {
    if (cell.isEmpty() || cell.matches("(?i)[-–—]|none|free|spare|empty|n/?c")) {
      return List.of();
    }
    if (PinSheet.Pins.named(cell, there).isPresent()
        || PinSheet.Pins.named(cell, wires).isPresent()) {
      return List.of(cell);
    }
    String[] words = cell.split("\\s*[,;]\\s*|\\s+[+/&]\\s+|\\s+");
    return List.of(words);
  }

  private void colours(Pin pin, List<Part> in, List<Part> out) {
    if (!cells.has(PinColumn.COLOUR)) {
      return;
    }
    String cell = cells.text(pin.row(), PinColumn.COLOUR);
    Set<String> listed = ColourWords.plain(List.of(cell));
    Set<String> modelled = PinSheet.Pins.colours(in, out);
    if (listed.equals(ColourWords.plain(modelled))) {
      return;
    }
    List<Part> all = new ArrayList<>(in);
    all.addAll(out);
    List<String> written = ColourWords.split(cell);
    List<String> open = new ArrayList<>();
    if (written.size() > 1 && written.size() != all.size()) {
      open.add(SheetWords.say("colours", PinMoves.names(all)));
    } else if (written.size() != 1 && written.size() != all.size()) {
      open.add(SheetWords.say("colour.none"));
    }
    for (int i = 0; open.isEmpty() && i < all.size(); i++) {
      moves.colour(all.get(i), written.get(written.size() == 1 ? 0 : i));
    }
    differs(pin, PinColumn.COLOUR, cell, String.join(", ", modelled), open);
  }

  private void differs(
      Pin pin, PinColumn column, String listed, String modelled, List<String> open) {
    differences.add(
        new Difference(
            pin.row().line(),
            mapping.at(column).orElse(0),
            pin.connector(),
            pin.cavity(),
            column,
            Shown.of(listed),
            modelled,
            open.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", open))));
  }

  /** The cavities of a listed connector that the list doesn't name. */
  private void missing(Part connector) {
    for (String cavity : ((PartSpec.Connector) connector.spec()).cavities()) {
      if (!rows.containsKey(connector.id() + "." + cavity)) {
        differences.add(
            new Difference(
                0, 0, connector.id(), cavity, PinColumn.CAVITY, "", cavity, Optional.empty()));
      }
    }
  }

  /** Wires that lie on a listed cavity and that the list puts nowhere. */
  private void loose(Part connector) {
    for (String cavity : ((PartSpec.Connector) connector.spec()).cavities()) {
      SheetText.Row row = rows.get(connector.id() + "." + cavity);
      for (PinColumn column : List.of(PinColumn.WIRE_IN, PinColumn.WIRE_OUT)) {
        if (row != null && cells.has(column)) {
          loose(new Pin(row, connector.id(), cavity), column);
        }
      }
    }
  }

  private void loose(Pin pin, PinColumn column) {
    TerminalRef side = pin.side(column);
    for (Part wire : pins.on(side)) {
      if (!moves.places(wire, side)) {
        String why = SheetWords.say("move.nowhere", wire.id());
        differences.replaceAll(
            d ->
                d.line() == pin.row().line() && d.what() == column
                    ? new Difference(
                        d.line(),
                        d.column(),
                        d.connector(),
                        d.cavity(),
                        d.what(),
                        d.listed(),
                        d.modelled(),
                        Optional.of(d.open().map(o -> o + "; " + why).orElse(why)))
                    : d);
      }
    }
  }
}
