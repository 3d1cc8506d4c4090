package loopwright.app;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.io.ReadResult;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.VehicleLibrary;

/** The vehicles the window offers: those opened lately, and the demo vehicles. */
final class Library implements VehicleLibrary {
  private final Vehicles vehicles;
  private final Preferences preferences;

  Library(Vehicles vehicles, Preferences preferences) {
    this.vehicles = vehicles;
    this.preferences = preferences;
  }

  @Override
  public List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    Stream.concat(
            preferences.read(Preferences.Item.VEHICLE).stream(),
            preferences.read(Preferences.Item.VEHICLES).stream().flatMap(String::lines))
        .distinct()
        .filter(name -> !Vehicles.DEMO.contains(name))
        .forEach(
            name ->
                title(name).ifPresent(t -> entries.add(new Entry(name, t, name, Shelf.RECENT))));
    for (String name : Vehicles.DEMO) {
      Optional<Vehicle> vehicle = vehicles.demo(name);
      vehicle.ifPresent(v -> entries.add(new Entry(name, v.name(), detail(v), Shelf.DEMO)));
    }
    return entries;
  }

  /** What the file is called; empty if the settings name none that can be. */
  private static Optional<String> title(String name) {
    try {
      return Optional.ofNullable(Path.of(name).getFileName())
          .map(Path::toString)
          .map(f -> f.endsWith(".json") ? f.substring(0, f.length() - 5) : f);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  private static String detail(Vehicle v) {
    return Texts.of("vehicle.shelf", v.systemVolts(), Texts.of(v.grounded()), v.circuits().size());
  }

  @Override
  public Loaded load(String name) {
    ReadResult<Vehicle> result = vehicles.read(name);
    return result
        .found()
        .<Loaded>map(v -> new Loaded.Ready(Vehicles.lastingName(name), v))
        .orElseGet(() -> new Loaded.Faulty(Vehicles.messages(result)));
  }
}
