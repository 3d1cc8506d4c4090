package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import loopwright.model.Vehicle;

/**
 * What a pattern makes of a vehicle.
 *
 * @param vehicle the vehicle with the circuit in it
 * @param added the parts that came or changed, in the order of the loop
 * @param circuits names of the circuits that came, by id
 * @param told what the person should know of, in words
 */
public record Outcome(
    Vehicle vehicle, List<Added> added, Map<String, String> circuits, List<String> told) {
  /** Copies the collections. */
  public Outcome {
    Objects.requireNonNull(vehicle, "vehicle");
    added = List.copyOf(added);
    circuits = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(circuits));
    told = List.copyOf(told);
  }
}
