package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.edit.Ends;
import loopwright.casework.edit.Shown;
import loopwright.casework.sheet.PinPreview.Difference;
import loopwright.model.Nearest;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;

/** One reading of a pinout list against one vehicle. */
final class PinReading {
  private final Sheet<PinColumn> sheet;
  private final Mapping<PinColumn> mapping;
  private final Ends ends;
  private final PinSheet.Pins pins;
  private final List<CellDefect> defects = new ArrayList<>();
  private final List<Difference> differences = new ArrayList<>();
  private final Map<String, Integer> lines = new HashMap<>();
  private final Set<Part> connectors = new LinkedHashSet<>();
  private final List<String> connectorIds;
  private final List<Part> wires;
  private int agreeing;

  PinReading(Sheet<PinColumn> sheet, Vehicle vehicle, Mapping<PinColumn> mapping) {
    this.sheet = sheet;
    this.mapping = mapping;
    this.ends = new Ends(vehicle);
    this.pins = new PinSheet.Pins(vehicle);
    this.wires = vehicle.parts().stream().filter(p -> p.spec() instanceof PartSpec.Wire).toList();
    this.connectorIds =
        vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Connector)
            .map(Part::id)
            .toList();
  }

  PinPreview preview() {
    defects.addAll(sheet.defects);
    if (columnsSuffice()) {
      sheet.rows.forEach(this::row);
      connectors.forEach(this::missing);
    }
    defects.sort(CellDefect.IN_ORDER);
    return new PinPreview(mapping, agreeing, defects, differences, mapping.leftOut());
  }

  private boolean columnsSuffice() {
    boolean suffice = !mapping.headings().isEmpty();
    for (PinColumn column : List.of(PinColumn.CONNECTOR, PinColumn.CAVITY)) {
      // A vehicle with one connector needs no column to say which.
      boolean needed = column == PinColumn.CAVITY || connectorIds.size() != 1;
      if (suffice && needed && mapping.at(column).isEmpty()) {
        suffice = false;
        defects.add(
            sheet.defect(
                0,
                0,
                "list",
                "no column '" + column.word() + "'",
                "columns 'connector' and 'cavity'",
                "no heading is understood as '"
                    + column.word()
                    + "'; say which column it is. Headings: "
                    + Shown.of(String.join(", ", mapping.headings()))));
      }
    }
    return suffice;
  }

  private String text(SheetText.Row row, PinColumn column) {
    return mapping.at(column).map(row::cell).orElse("").strip();
  }

  private void bad(SheetText.Row row, PinColumn column, String object, String limit, String what) {
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
    Optional<Part> connector = connector(row);
    if (connector.isEmpty()) {
      return;
    }
    Part part = connector.get();
    connectors.add(part);
    List<String> cavities = ((PartSpec.Connector) part.spec()).cavities();
    String cavity = text(row, PinColumn.CAVITY);
    String object = "connector " + part.id();
    if (!cavities.contains(cavity)) {
      String limit = "one of its cavities " + String.join(", ", cavities);
      bad(
          row,
          PinColumn.CAVITY,
          object,
          limit,
          "cavity is "
              + (cavity.isEmpty() ? "missing" : "\"" + Shown.of(cavity) + "\"")
              + ", must be "
              + limit);
      return;
    }
    Integer before = lines.putIfAbsent(part.id() + "." + cavity, row.line());
    if (before != null) {
      bad(
          row,
          PinColumn.CAVITY,
          object,
          "each cavity once",
          "cavity " + cavity + " stands on line " + before + " already, must stand once");
      return;
    }
    int known = defects.size() + differences.size();
    wires(row, part.id(), cavity, PinColumn.WIRE_IN, pins.in(part.id(), cavity));
    wires(row, part.id(), cavity, PinColumn.WIRE_OUT, pins.out(part.id(), cavity));
    colours(row, part.id(), cavity);
    if (defects.size() + differences.size() == known) {
      agreeing++;
    }
  }

  private Optional<Part> connector(SheetText.Row row) {
    String id = text(row, PinColumn.CONNECTOR);
    if (mapping.at(PinColumn.CONNECTOR).isEmpty()) {
      return ends.part(connectorIds.get(0));
    }
    Optional<Part> part = ends.part(id).filter(p -> p.spec() instanceof PartSpec.Connector);
    if (part.isEmpty()) {
      String meant =
          Nearest.to(id, connectorIds).map(n -> "; did you mean \"" + n + "\"?").orElse("");
      bad(
          row,
          PinColumn.CONNECTOR,
          "row",
          "a connector of the vehicle",
          id.isEmpty()
              ? "connector is missing"
              : "connector is \""
                  + Shown.of(id)
                  + "\", must be a connector of the vehicle"
                  + meant);
    }
    return part;
  }

  /** Holds the wires of a cell against those the vehicle has on that side of the pin. */
  private void wires(
      SheetText.Row row, String connector, String cavity, PinColumn column, List<Part> there) {
    if (mapping.at(column).isEmpty()) {
      return;
    }
    String cell = text(row, column);
    Set<String> listed = new HashSet<>();
    boolean understood = true;
    for (String name : names(cell, there)) {
      Optional<Part> wire = PinSheet.Pins.named(name, there);
      wire.ifPresent(w -> listed.add(w.id()));
      if (wire.isEmpty() && PinSheet.Pins.named(name, wires).isEmpty()) {
        understood = false;
        String meant =
            Nearest.to(name, wires.stream().map(Part::id).toList())
                .map(n -> "; did you mean \"" + n + "\"?")
                .orElse("");
        bad(
            row,
            column,
            "connector " + connector,
            "wires of the vehicle",
            column.word()
                + " names \""
                + Shown.of(name)
                + "\", must be the name or label of a wire of the vehicle"
                + meant);
      } else if (wire.isEmpty()) {
        listed.add("elsewhere " + name);
      }
    }
    Set<String> modelled = new HashSet<>();
    there.forEach(w -> modelled.add(w.id()));
    // One label on all wires of the pin names them all.
    boolean sharedLabel =
        !cell.isEmpty()
            && !there.isEmpty()
            && there.stream().allMatch(w -> w.label().equalsIgnoreCase(cell));
    if (understood && !sharedLabel && !listed.equals(modelled)) {
      differs(row, connector, cavity, column, cell, PinSheet.Pins.names(there));
    }
  }

  /** The wires a cell names: all of it where that is one wire's label, else word by word. */
  private List<String> names(String cell, List<Part> there) {
    if (cell.isEmpty() || cell.matches("[-–—]|none|free|spare|empty")) {
      return List.of();
    }
    if (PinSheet.Pins.named(cell, there).isPresent()
        || PinSheet.Pins.named(cell, wires).isPresent()) {
      return List.of(cell);
    }
    String[] words = cell.split("\\s*[,;]\\s*|\\s+[+/&]\\s+|\\s+");
    return List.of(words);
  }

  private void colours(SheetText.Row row, String connector, String cavity) {
    if (mapping.at(PinColumn.COLOUR).isEmpty()) {
      return;
    }
    String cell = text(row, PinColumn.COLOUR);
    Set<String> listed = new HashSet<>();
    for (String colour : cell.split("[,;+]")) {
      listed.add(plain(colour));
    }
    listed.remove("");
    Set<String> modelled = new HashSet<>();
    Set<String> there = pins.colours(connector, cavity);
    // As written for export, a colour's own commas are cut the same way.
    there.forEach(c -> List.of(c.split("[,;+]")).forEach(s -> modelled.add(plain(s))));
    if (!listed.equals(modelled)) {
      differs(row, connector, cavity, PinColumn.COLOUR, cell, String.join(", ", there));
    }
  }

  private static String plain(String colour) {
    return colour.strip().toLowerCase(Locale.ROOT).replaceAll("\\s*[-/ ]\\s*", "/");
  }

  private void differs(
      SheetText.Row row,
      String connector,
      String cavity,
      PinColumn column,
      String listed,
      String modelled) {
    differences.add(
        new Difference(
            row.line(),
            mapping.at(column).orElse(0),
            connector,
            cavity,
            column,
            Shown.of(listed),
            modelled));
  }

  /** The cavities of a listed connector that the list doesn't name. */
  private void missing(Part connector) {
    for (String cavity : ((PartSpec.Connector) connector.spec()).cavities()) {
      if (!lines.containsKey(connector.id() + "." + cavity)) {
        differences.add(new Difference(0, 0, connector.id(), cavity, PinColumn.CAVITY, "", cavity));
      }
    }
  }
}
