package loopwright.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.io.Defect;
import loopwright.io.FileWords;
import loopwright.io.ReadResult;
import loopwright.io.VehicleFile;
import loopwright.model.Vehicle;

/** Finds vehicles by name: the demo vehicles inside the program, or files. */
final class Vehicles {

  /** The demo vehicles, the one to begin with first. */
  static final List<String> DEMO = List.of("pumper", "tractor", "truck", "motorcycle");

  private final Map<String, ReadResult<Vehicle>> demo = new LinkedHashMap<>();

  /** Name under which a vehicle is found again from any folder. */
  static String lastingName(String name) {
    return DEMO.contains(name) ? name : Path.of(name).toAbsolutePath().normalize().toString();
  }

  /** Reads a vehicle; a demo vehicle is read once. */
  ReadResult<Vehicle> read(String name) {
    return read(name, VehicleFile::read);
  }

  /** Reads a vehicle that may not be finished. */
  ReadResult<Vehicle> readDraft(String name) {
    return read(name, VehicleFile::readDraft);
  }

  private ReadResult<Vehicle> read(String name, Function<Path, ReadResult<Vehicle>> reader) {
    if (DEMO.contains(name)) {
      synchronized (demo) {
        return demo.computeIfAbsent(name, Vehicles::readDemo);
      }
    }
    try {
      return reader.apply(Path.of(name));
    } catch (InvalidPathException e) {
      return new ReadResult.Refused<>(
          List.of(
              new Defect(
                  "vehicle",
                  name,
                  FileWords.say("vehicle.known", String.join(", ", DEMO)),
                  "",
                  FileWords.say("vehicle.unknown", name, String.join(", ", DEMO)))));
    }
  }

  private static ReadResult<Vehicle> readDemo(String name) {
    String path = "/demo-data/vehicles/" + name + ".json";
    try (InputStream in = Vehicles.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its demo vehicle " + path);
      }
      return VehicleFile.read(in, name + ".json");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Messages of all defects. */
  static List<String> messages(ReadResult<Vehicle> result) {
    List<String> messages = new ArrayList<>();
    for (Defect defect : result.defects()) {
      messages.add(defect.message());
    }
    return messages;
  }

  /** A demo vehicle, if it is there and good. */
  Optional<Vehicle> demo(String name) {
    return read(name).found();
  }
}
