package loopwright.model;

import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One function of the vehicle: what should work, and how the controls must stand for it to work.
 * The parts on its loop are not listed; they follow from the network.
 *
 * @param id short name, unique in the vehicle
 * @param name what a person calls the function, for instance "Beacon"
 * @param loads ids of the parts that do the work; a filament of a dual-filament lamp is written
 *     {@code part:filament}, for instance {@code L7:stop}
 * @param on position by control for the function to work; controls not named are at rest
 * @param note anything worth knowing; may be empty
 */
public record Circuit(
    String id, String name, List<LoadRef> loads, Map<String, String> on, String note) {

  /** Copies the collections. */
  public Circuit {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(note, "note");
    loads = List.copyOf(loads);
    on = Map.copyOf(on);
  }

  /** The setting in which the function should work, with nothing unplugged. */
  public Setting onSetting() {
    return Setting.of(on);
  }
}
