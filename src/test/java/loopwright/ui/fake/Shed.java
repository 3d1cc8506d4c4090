package loopwright.ui.fake;

import java.util.List;
import loopwright.model.Vehicle;
import loopwright.ui.VehicleLibrary;

/** Vehicles that stand ready, each under its name. */
public record Shed(List<Vehicle> vehicles) implements VehicleLibrary {

  /** A shed of one. */
  public Shed(Vehicle vehicle) {
    this(List.of(vehicle));
  }

  @Override
  public List<Entry> entries() {
    return vehicles.stream()
        .map(v -> new Entry(v.name(), v.name(), v.systemVolts() + " V", Shelf.DEMO))
        .toList();
  }

  @Override
  public Loaded load(String name) {
    return new Loaded.Ready(
        name, vehicles.stream().filter(v -> v.name().equals(name)).findFirst().orElseThrow());
  }
}
