package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.sheet.WirePreview.Change;
import loopwright.casework.sheet.WirePreview.Effect;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;

/** A wire as the cells of a row, and the list of all wires of a vehicle. */
final class WireRows {
  private WireRows() {}

  /** The cells of a wire, but for the part it stands behind. */
  static Map<WireColumn, String> cells(Part part, PartSpec.Wire wire) {
    Map<WireColumn, String> cells = new LinkedHashMap<>();
    cells.put(WireColumn.WIRE, part.id());
    cells.put(WireColumn.KIND, wire.kind().word());
    cells.put(WireColumn.NAME, part.name());
    cells.put(WireColumn.LABEL, part.label());
    cells.put(WireColumn.FROM, wire.from().part());
    cells.put(WireColumn.FROM_TERMINAL, wire.from().terminal());
    cells.put(WireColumn.TO, wire.to().part());
    cells.put(WireColumn.TO_TERMINAL, wire.to().terminal());
    cells.put(WireColumn.SIZE, wire.size().toString());
    cells.put(WireColumn.LENGTH, Said.text(wire.metres()));
    cells.put(WireColumn.COLOUR, wire.colour());
    cells.put(WireColumn.LOOM, wire.loom());
    cells.put(WireColumn.WHERE, part.where());
    cells.put(WireColumn.END_OHMS, wire.endOhms().map(Said::text).orElse(""));
    cells.put(WireColumn.APART, part.apartMinutes().map(Said::number).orElse(""));
    cells.put(WireColumn.SWAP, part.swapMinutes().map(Said::number).orElse(""));
    return cells;
  }

  /** What a row does, held against the wire that the vehicle has. */
  static WirePreview.Row row(int line, Optional<Part> before, Part wire, List<String> taken) {
    if (before.isEmpty()) {
      return new WirePreview.Row(line, wire, Effect.NEW, List.of(), taken);
    }
    if (wire.equals(before.get())) {
      return new WirePreview.Row(line, wire, Effect.UNCHANGED, List.of(), taken);
    }
    Map<WireColumn, String> was = cells(before.get(), (PartSpec.Wire) before.get().spec());
    List<Change> changes = new ArrayList<>();
    cells(wire, (PartSpec.Wire) wire.spec())
        .forEach(
            (column, now) -> {
              if (!now.equals(was.get(column))) {
                changes.add(new Change(column, was.get(column), now));
              }
            });
    return new WirePreview.Row(line, wire, Effect.CHANGED, changes, taken);
  }

  /** The list of a vehicle's wires. */
  static String text(Vehicle vehicle) {
    List<WireColumn> columns = new ArrayList<>(List.of(WireColumn.values()));
    columns.remove(WireColumn.NOTE);
    StringBuilder text =
        new StringBuilder(
            SheetText.line(
                columns.stream()
                    .map(c -> c == WireColumn.LENGTH ? c.word() + " m" : c.word())
                    .toList()));
    String after = "";
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Wire wire) {
        Map<WireColumn, String> cells = cells(part, wire);
        cells.put(WireColumn.AFTER, after);
        text.append(SheetText.line(columns.stream().map(cells::get).toList()));
      } else {
        after = part.id();
      }
    }
    return text.toString();
  }

  /**
   * The parts with wires put in: those of a known id in its place, new ones behind the part named
   * for them and the wires behind that, others at the end.
   *
   * @param after the part each new wire stands behind: empty for the front of the list
   */
  static List<Part> merged(List<Part> parts, List<Part> wires, Map<String, String> after) {
    Map<String, Part> replaced = new HashMap<>();
    wires.forEach(w -> replaced.put(w.id(), w));
    Set<String> known = new HashSet<>();
    parts.forEach(p -> known.add(p.id()));
    Map<String, List<Part>> behind = new HashMap<>();
    List<Part> last = new ArrayList<>();
    for (Part wire : wires) {
      if (!known.contains(wire.id())) {
        Optional.ofNullable(after.get(wire.id()))
            .map(a -> behind.computeIfAbsent(a, x -> new ArrayList<>()))
            .orElse(last)
            .add(wire);
      }
    }
    List<Part> merged = new ArrayList<>();
    String anchor = "";
    for (Part part : parts) {
      if (!(part.spec() instanceof PartSpec.Wire)) {
        merged.addAll(behind.getOrDefault(anchor, List.of()));
        anchor = part.id();
      }
      merged.add(replaced.getOrDefault(part.id(), part));
    }
    merged.addAll(behind.getOrDefault(anchor, List.of()));
    merged.addAll(last);
    return merged;
  }
}
