package loopwright.casework.sheet;

import java.util.List;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/**
 * What a wire list would do to a vehicle. Nothing has happened yet.
 *
 * @param mapping which column was taken for what
 * @param rows the rows that were understood whole, in the order of the list
 * @param added parts that its wires end on and that would come with it
 * @param defects everything that was not understood or can't be, in the order of the list
 * @param remarks what was taken in a certain way or left out, a sentence each
 * @param applied the vehicle with the whole list in it; empty if there is any defect
 * @param wanting what that vehicle as a whole would not hold together for, for instance a circuit
 *     whose loop a moved wire opens; empty where there is no such vehicle
 */
public record WirePreview(
    Mapping<WireColumn> mapping,
    List<Row> rows,
    List<Added> added,
    List<CellDefect> defects,
    List<String> remarks,
    Optional<Vehicle> applied,
    List<VehicleCheck.Finding> wanting) {

  /** Copies the lists. */
  public WirePreview {
    rows = List.copyOf(rows);
    added = List.copyOf(added);
    defects = List.copyOf(defects);
    remarks = List.copyOf(remarks);
    wanting = List.copyOf(wanting);
  }

  /** What a row does. */
  public enum Effect {
    NEW("new"),
    CHANGED("changed"),
    UNCHANGED("unchanged");

    private final String word;

    Effect(String word) {
      this.word = word;
    }

    /** The word shown. */
    public String word() {
      return word;
    }
  }

  /**
   * One value that a row changes.
   *
   * @param column what it is
   * @param before as a list writes it
   * @param after as a list writes it
   */
  public record Change(WireColumn column, String before, String after) {}

  /**
   * One row as understood.
   *
   * @param line its line in the file
   * @param wire the wire as it would be
   * @param effect whether the vehicle has it already
   * @param changes what differs from the vehicle's; empty unless changed
   * @param taken how its ends were taken, where that is not what was written
   */
  public record Row(int line, Part wire, Effect effect, List<Change> changes, List<String> taken) {
    /** Copies the lists. */
    public Row {
      changes = List.copyOf(changes);
      taken = List.copyOf(taken);
    }
  }

  /**
   * A part that the vehicle doesn't have yet.
   *
   * @param part the part, its kind and values guessed
   * @param line the line that first names it
   * @param told that it is a guess, in words
   */
  public record Added(Part part, int line, String told) {}

  /** How many rows do this. */
  public long count(Effect effect) {
    return rows.stream().filter(r -> r.effect() == effect).count();
  }
}
