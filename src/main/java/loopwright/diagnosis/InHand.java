package loopwright.diagnosis;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;

/**
 * Readings across a part that has been taken out: both leads on its own two contacts, nothing of
 * the vehicle beside it. They are solved with every other part apart, the part itself in. What
 * stays behind in its holder or socket doesn't show.
 */
final class InHand {
  private final Workbench bench;
  private final Vehicle vehicle;
  private final Map<Check, Check> solved = new HashMap<>();

  InHand(Workbench bench) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
  }

  /** Whether a check is one across a part that is out. */
  static boolean applies(Vehicle vehicle, Check check) {
    return (check.kind() == CheckKind.OHMS || check.kind() == CheckKind.DIODE)
        && check
            .red()
            .map(TerminalRef::part)
            .filter(check.setting().apart()::contains)
            .filter(p -> check.black().map(TerminalRef::part).filter(p::equals).isPresent())
            .filter(p -> comesOut(vehicle.requirePart(p)))
            .isPresent();
  }

  /** Whether the part keeps its own contacts when it is taken out, as a connector does not. */
  static boolean comesOut(Part part) {
    return part.kind().comesOutWhole();
  }

  /** The check as it is solved: for one in the hand, in a setting with all other parts apart. */
  Check solved(Check check) {
    if (!check.kind().metered() || check.setting().apart().isEmpty()) {
      return check;
    }
    return solved.computeIfAbsent(
        check,
        c -> {
          if (!applies(vehicle, c)) {
            return c;
          }
          Set<String> others = new HashSet<>();
          vehicle.parts().forEach(p -> others.add(p.id()));
          others.remove(c.red().orElseThrow().part());
          return Check.measure(
              c.kind(),
              c.red().orElseThrow(),
              c.black().orElseThrow(),
              Setting.REST.without(others));
        });
  }

  /** The hypothesis as it is solved: what has failed elsewhere or stays behind is not in it. */
  Hypothesis solved(Hypothesis h, Check check) {
    if (h.failures().isEmpty() || solved(check).equals(check)) {
      return h;
    }
    String part = check.red().orElseThrow().part();
    boolean itself = h.part().equals(part) && h.failures().stream().noneMatch(InHand::stays);
    boolean blown =
        bench.network().elementsOf(part).stream().anyMatch(e -> h.history().blown().get(e));
    return itself || blown ? h : bench.healthy();
  }

  /** Whether a failure stays behind when its part is taken out. */
  static boolean stays(Failure failure) {
    return failure.mode().stays();
  }
}
