package loopwright.casework.practise;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.casework.CaseDesk;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;

/** What the tests of practice share. */
final class Drills {
  static final List<String> DEMO = List.of("pumper", "tractor", "truck", "motorcycle");

  private Drills() {}

  /** A log that lasts as long as the test. */
  static final class InMemory implements PractiseLog {
    private final List<Practised> kept = new ArrayList<>();

    @Override
    public void append(Practised practised) {
      kept.add(practised);
    }

    @Override
    public List<Practised> read() {
      return List.copyOf(kept);
    }
  }

  static PractiseDesk desk() {
    return desk(new InMemory());
  }

  static PractiseDesk desk(PractiseLog log) {
    return new PractiseDesk(
        Bench.KNOWLEDGE, Bench::rules, Clock.systemUTC(), new Phrases(Locale.ENGLISH), log);
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
