package loopwright.ui.wiring;

import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/**
 * What a page has that only reads a vehicle.
 *
 * @param shown the vehicle
 * @param circuit id of the circuit shown; empty if none is
 * @param hottest surroundings of the wires that the paper check shown was made for, in degrees C;
 *     empty if none is shown
 * @param emProperty pixels of one em
 * @param worker runs what the page does
 * @param closed what happens when the page ends
 */
public record ReadingDesk(
    Vehicle shown,
    Optional<String> circuit,
    Optional<Double> hottest,
    ReadOnlyDoubleProperty emProperty,
    Worker worker,
    Runnable closed)
    implements WiringDesk {

  @Override
  public Optional<Vehicle> vehicle() {
    return Optional.of(shown);
  }

  @Override
  public Change make(Edit edit) throws Problem {
    throw new Problem("edit", shown.name(), Texts.of("vehicle.editThere"));
  }

  @Override
  public void begin(Vehicle vehicle) {
    throw new IllegalStateException("a page that only reads begins no vehicle");
  }

  @Override
  public void close(Optional<String> part) {
    closed.run();
  }
}
