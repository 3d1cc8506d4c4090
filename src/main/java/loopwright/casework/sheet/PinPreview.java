package loopwright.casework.sheet;

import java.util.List;
import java.util.Optional;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/**
 * A pinout list held against a vehicle. Nothing has happened yet.
 *
 * @param mapping which column was taken for what
 * @param agreeing how many rows say what the vehicle says
 * @param defects everything that was not understood, in the order of the list
 * @param differences where list and vehicle say different things, in the order of the list, pins
 *     missing in it last
 * @param remarks what was taken in a certain way or left out, a sentence each
 * @param applied the vehicle with all listed pins as the list says; empty if there is any defect,
 *     or a difference that the list alone doesn't settle
 * @param wanting what that vehicle as a whole would not hold together for
 */
public record PinPreview(
    Mapping<PinColumn> mapping,
    int agreeing,
    List<CellDefect> defects,
    List<Difference> differences,
    List<String> remarks,
    Optional<Vehicle> applied,
    List<VehicleCheck.Finding> wanting) {

  /** Copies the lists. */
  public PinPreview {
    defects = List.copyOf(defects);
    differences = List.copyOf(differences);
    remarks = List.copyOf(remarks);
    wanting = List.copyOf(wanting);
  }

  /**
   * One pin of which list and vehicle say different things.
   *
   * @param line line of the list; 0 if the pin is missing in it
   * @param column column of the list, counted from 1; 0 if the pin is missing in it
   * @param connector the connector
   * @param cavity its cavity
   * @param what which of the columns differs
   * @param listed what the list says; empty if nothing
   * @param modelled what the vehicle says; empty if nothing
   * @param open why the list alone doesn't settle it; empty if it does
   */
  public record Difference(
      int line,
      int column,
      String connector,
      String cavity,
      PinColumn what,
      String listed,
      String modelled,
      Optional<String> open) {

    /** In one sentence. */
    public String message() {
      if (what == PinColumn.CAVITY) {
        return SheetWords.say("pin.unlisted", connector, cavity);
      }
      return SheetWords.say(
              "pin.differs",
              connector,
              cavity,
              what.said(),
              orNone(listed),
              orNone(modelled),
              Integer.toString(line),
              Integer.toString(column))
          + open.map(why -> "; " + why).orElse("");
    }

    private static String orNone(String said) {
      return said.isEmpty() ? SheetWords.say("none") : said;
    }
  }
}
