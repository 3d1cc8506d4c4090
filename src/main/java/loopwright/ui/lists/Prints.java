package loopwright.ui.lists;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/** Writes what is printed of a vehicle. */
@FunctionalInterface
public interface Prints {

  /** What can be written, in the order offered. */
  enum Sheet {
    MAKING,
    LABELS,
    DRAWINGS,
    CHECK,
    KNOWN_GOOD,
    BUYING,
    CUTTING,
    ORDER
  }

  /**
   * What is printed of.
   *
   * @param vehicle the vehicle
   * @param hottest surroundings of its wires at their hottest for the paper check, in degrees C
   * @param circuit id of the circuit whose order of checks is printed; empty for all
   */
  record Plan(Vehicle vehicle, double hottest, Optional<String> circuit) {}

  /** The paper printed on. */
  enum Paper {
    A4,
    LETTER
  }

  /**
   * Writes a file, in place of one of the same name. May take some seconds; called off the window's
   * thread.
   *
   * @param folder the folder it goes into
   * @return the file
   * @throws IOException if it can't be written, naming the file and the reason
   * @throws Problem if there is nothing to write
   */
  Path write(Plan plan, Sheet sheet, Paper paper, Path folder) throws IOException, Problem;
}
