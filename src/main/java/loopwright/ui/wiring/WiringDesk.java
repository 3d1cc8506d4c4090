package loopwright.ui.wiring;

import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.model.Vehicle;
import loopwright.ui.Worker;

/** What a {@link WiringPage} may do with the vehicle that is worked on. Window's thread only. */
public interface WiringDesk {

  /** The vehicle as it is now; empty if none is open. */
  Optional<Vehicle> vehicle();

  /**
   * Makes an edit, which can be taken back like any other.
   *
   * @throws Problem if it can't be made, or nothing is open; nothing has changed then
   */
  Change make(Edit edit) throws Problem;

  /**
   * Begins work on a new vehicle, which has no file yet. Unsaved work on another one is kept as a
   * recovery copy.
   */
  void begin(Vehicle vehicle);

  /**
   * Ends the page: the tables come back.
   *
   * @param part id of the part or circuit to go to; empty to go where one was
   */
  void close(Optional<String> part);

  /**
   * Surroundings of the wires that the paper check shown was made for, in degrees C; empty if none
   * is shown.
   */
  default Optional<Double> hottest() {
    return Optional.empty();
  }

  /** Id of the circuit shown; empty if none is, or all are. */
  default Optional<String> circuit() {
    return Optional.empty();
  }

  /** Pixels of one em. */
  ReadOnlyDoubleProperty emProperty();

  /** Runs work off the window's thread. */
  Worker worker();
}
