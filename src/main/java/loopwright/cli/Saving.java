package loopwright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.casework.Problem;
import loopwright.casework.edit.VehicleStore;
import loopwright.io.VehicleFiles;
import loopwright.model.Vehicle;

/** Writes the vehicles that commands make. */
final class Saving {
  private Saving() {}

  /** Saves over a vehicle file, keeping what it held, or as a new one. */
  static ExitCode save(Page page, Page log, Path file, Vehicle vehicle) {
    VehicleFiles files = new VehicleFiles();
    try {
      if (Files.exists(file)) {
        try (VehicleStore.Opened opened = files.open(file)) {
          if (opened.readOnly().isPresent()) {
            throw new Problem("file", file.toString(), opened.readOnly().get());
          }
          opened.save(vehicle);
        }
      } else {
        files.create(file, vehicle).close();
      }
    } catch (Problem e) {
      log.say(Speech.problem(e));
      return ExitCode.FAILED;
    }
    page.say(Speech.of("saved", file));
    return ExitCode.DONE;
  }
}
