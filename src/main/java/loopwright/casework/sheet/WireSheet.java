package loopwright.casework.sheet;

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
public final class WireSheet extends Sheet<WireColumn> {
  private WireSheet(String text, String file) {
    super(text, file, WireColumn.class);
  }

  /**
   * Reads a list from a text.
   *
   * @param file what defects call it
   */
  public static WireSheet read(String text, String file) {
    return new WireSheet(text, file);
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
    return new WireReading(this, vehicle, mapping, leniency).preview();
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
