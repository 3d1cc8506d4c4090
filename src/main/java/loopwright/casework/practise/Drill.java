package loopwright.casework.practise;

import java.util.List;
import java.util.OptionalInt;
import loopwright.casework.ReadyCase;
import loopwright.model.Vehicle;

/**
 * One drill: all that its code settles.
 *
 * @param code its code
 * @param vehicle the vehicle
 * @param hidden the complaint and what has really failed
 * @param kinds the kinds of fault, one for each
 * @param seed of the vehicle's true values and the meter's errors
 * @param slipFrom number of the first meter reading that may not touch metal; empty: all do
 */
public record Drill(
    DrillCode code,
    Vehicle vehicle,
    ReadyCase hidden,
    List<FaultKind> kinds,
    long seed,
    OptionalInt slipFrom) {
  /** Copies the list. */
  public Drill {
    kinds = List.copyOf(kinds);
  }
}
