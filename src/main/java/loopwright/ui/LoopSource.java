package loopwright.ui;

import java.util.Optional;
import loopwright.casework.LoopView;
import loopwright.model.Vehicle;

/** Lays out a circuit's loop when no case is open. */
@FunctionalInterface
public interface LoopSource {

  /**
   * The loop of a circuit in its own setting, with what a healthy circuit shows at each node. May
   * take a while; called off the window's thread.
   *
   * @param vehicle the vehicle
   * @param circuit id of the circuit
   * @return the loop; empty if the circuit has no closed loop
   */
  Optional<LoopView> loop(Vehicle vehicle, String circuit);
}
