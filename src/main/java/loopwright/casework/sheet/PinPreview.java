package loopwright.casework.sheet;

import java.util.List;

/**
 * A pinout list held against a vehicle. Nothing is changed by it.
 *
 * @param mapping which column was taken for what
 * @param agreeing how many rows say what the vehicle says
 * @param defects everything that was not understood, in the order of the list
 * @param differences where list and vehicle say different things, in the order of the list, pins
 *     missing in it last
 * @param leftOut headings of the columns that are not read
 */
public record PinPreview(
    Mapping<PinColumn> mapping,
    int agreeing,
    List<CellDefect> defects,
    List<Difference> differences,
    List<String> leftOut) {

  /** Copies the lists. */
  public PinPreview {
    defects = List.copyOf(defects);
    differences = List.copyOf(differences);
    leftOut = List.copyOf(leftOut);
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
   */
  public record Difference(
      int line,
      int column,
      String connector,
      String cavity,
      PinColumn what,
      String listed,
      String modelled) {

    /** In one sentence. */
    public String message() {
      String pin = connector + " cavity " + cavity;
      if (what == PinColumn.CAVITY) {
        return pin + " is not in the list";
      }
      return pin
          + ", "
          + what.word()
          + ": the list says "
          + (listed.isEmpty() ? "none" : listed)
          + ", the vehicle "
          + (modelled.isEmpty() ? "none" : modelled)
          + " [line "
          + line
          + ", column "
          + column
          + "]";
    }
  }
}
