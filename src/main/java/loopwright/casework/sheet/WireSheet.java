package loopwright.casework.sheet;

import java.util.List;
import java.util.Set;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;

/**
 * A list of wires as a spreadsheet keeps it: a table of cells, one wire a row. Reading changes
 * nothing; {@link #preview} says what the list would do and what is wrong with it, and holds the
 * changed vehicle only if nothing is.
 *
 * <p>A row is about the wire of its short name, or, where it has none, the wire between its ends;
 * if the vehicle has no such wire, it is a new one. A column that is not there leaves known wires
 * as they are; an empty cell clears what can be empty. Wires that the list doesn't name stay.
 */
public final class WireSheet {
  private final Sheet<WireColumn> sheet;

  private WireSheet(Sheet<WireColumn> sheet) {
    this.sheet = sheet;
  }

  /**
   * Reads a list from a text.
   *
   * @param file what defects call it
   */
  public static WireSheet read(String text, String file) {
    return new WireSheet(Sheet.of(text, file, WireColumn.class));
  }

  /** Which column holds what, as far as the headings tell. */
  public Mapping<WireColumn> guess() {
    return sheet.guess;
  }

  /** What the list would do to a vehicle, with the columns taken as given. */
  public WirePreview preview(Vehicle vehicle, Mapping<WireColumn> mapping) {
    return preview(vehicle, mapping, Set.of());
  }

  /**
   * What the list would do to a vehicle, with the columns taken as given.
   *
   * @param leniency what it may leave open
   */
  public WirePreview preview(Vehicle vehicle, Mapping<WireColumn> mapping, Set<Leniency> leniency) {
    return new WireReading(sheet, vehicle, mapping, leniency).preview();
  }

  /** The cells of the row that begins on a line, counted from 1; none if none does. */
  public List<String> cells(int line) {
    return sheet.rows.stream()
        .filter(r -> r.line() == line)
        .findFirst()
        .map(SheetText.Row::cells)
        .orElse(List.of());
  }

  /** The first rows under the headings, cell by cell, to judge by what a column holds. */
  public List<List<String>> firstRows(int most) {
    return sheet.rows.stream().limit(most).map(SheetText.Row::cells).toList();
  }

  /** A wire's length as lists write it, with its unit. */
  public static String length(PartSpec.Wire wire) {
    return Said.text(wire.metres()) + " m";
  }

  /** The list of a vehicle's wires. Read back, it gives the same wires in the same places. */
  public static String text(Vehicle vehicle) {
    return WireRows.text(vehicle);
  }
}
