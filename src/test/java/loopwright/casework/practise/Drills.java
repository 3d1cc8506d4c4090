package loopwright.casework.practise;

import java.util.List;
import loopwright.casework.CaseDesk;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;

/** What the tests of practice share. */
final class Drills {
  static final List<String> DEMO = List.of("pumper", "tractor", "truck", "motorcycle");

  private Drills() {}

  static PractiseDesk desk() {
    return Bench.practiseDesk(new Bench.DrillsInMemory());
  }

  static DrillCode code(Level level, String vehicle, int seed) {
    return new DrillCode(level, DEMO.indexOf(vehicle) + 1, seed, "");
  }

  static Drilling open(DrillCode code) throws Problem {
    Vehicle vehicle = Bench.vehicle(DEMO.get(code.vehicle() - 1));
    return desk().open(code, vehicle, CaseDesk.Progress.SILENT);
  }

  /** All that a code settles, as text. */
  static String settled(Drill drill) {
    return drill.code()
        + " "
        + drill.hidden()
        + " "
        + drill.kinds()
        + " "
        + drill.seed()
        + " "
        + drill.slipFrom();
  }
}
