package loopwright.casework;

import java.util.List;
import loopwright.model.Vehicle;

/** What a vehicle has had before, as far as it bears on what it will have. */
@FunctionalInterface
public interface OwnRecord {

  /** No vehicle has had anything. */
  OwnRecord NONE = vehicle -> List.of();

  /** The failure modes that count more or less often than the tables say, in a fixed order. */
  List<OwnRate> rates(Vehicle vehicle);
}
