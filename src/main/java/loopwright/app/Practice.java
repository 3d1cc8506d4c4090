package loopwright.app;

import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.io.ReadyCaseFile;
import loopwright.model.Vehicle;

/** The ready-made cases that come with the program, and their practice meters. */
final class Practice {
  private Practice() {}

  /** The cases, by id. */
  static List<ReadyCase> cases() {
    return ReadyCaseFile.readBundled().orThrow();
  }

  /** The same case has the same readings whenever it is opened. */
  static SimulatedMeter meter(Engine engine, ReadyCase ready, Vehicle vehicle) throws Problem {
    return new SimulatedMeter(vehicle, engine.knowledge(), ready, ready.id().hashCode());
  }
}
