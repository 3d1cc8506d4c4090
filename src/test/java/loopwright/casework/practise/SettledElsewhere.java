package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.model.TerminalRef;

/** Prints what codes settle and what the meter then reads: run in a Java of its own. */
final class SettledElsewhere {
  private SettledElsewhere() {}

  static List<String> of(List<String> codes) throws Problem {
    List<String> lines = new ArrayList<>();
    for (String code : codes) {
      try (Drilling drilling = Drills.open(DrillCode.parse(code))) {
        lines.add(Drills.settled(drilling.drill()) + " " + drilling.title());
        TerminalRef post = drilling.vehicle().groundedPost();
        TerminalRef feed = drilling.vehicle().feedPost();
        for (CheckKind kind : List.of(CheckKind.VOLTS, CheckKind.OHMS)) {
          lines.add(
              drilling
                  .take(Robots.measure(kind, feed, post, drilling.on()), Optional.empty())
                  .shown());
        }
        drilling.best().steps().forEach(s -> lines.add(s.what() + " " + s.shown()));
      }
    }
    return lines;
  }

  public static void main(String[] codes) throws Problem {
    of(List.of(codes)).forEach(System.out::println);
  }
}
