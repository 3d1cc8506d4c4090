package loopwright.diagnosis;

import java.util.function.BiPredicate;
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
  private final Kept<Check, Check> solved = Kept.byEquals();

  InHand(Workbench bench) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
  }

  /** The check as it is solved: for one in the hand, in a setting with all other parts apart. */
  Check solved(Check check) {
    if (!check.kind().metered() || check.setting().apart().isEmpty()) {
      return check;
    }
    return solved.get(
        check,
        c -> {
          TerminalRef red = c.red().orElseThrow();
          return c.inHand(vehicle)
              ? Check.measure(c.kind(), red, c.black().orElseThrow(), vehicle.only(red.part()))
              : c;
        });
  }

  /**
   * The hypothesis as it is solved: what has failed elsewhere or stays behind is not in it, unless
   * it may have blown the part before.
   */
  Hypothesis solved(Hypothesis h, Check check) {
    return solved(h, check, bench::mayHaveBlown);
  }

  /** The same for bounds that hold for all values: only what surely hasn't blown it is left out. */
  Hypothesis bounded(Hypothesis h, Check check) {
    return solved(h, check, (k, part) -> !bench.cannotHaveBlown(k, part));
  }

  private Hypothesis solved(
      Hypothesis h, Check check, BiPredicate<Hypothesis, String> mayHaveBlown) {
    if (h.failures().isEmpty() || solved(check).equals(check)) {
      return h;
    }
    String part = check.red().orElseThrow().part();
    return mayHaveBlown.test(h, part)
        ? h
        : h.of(part)
            .filter(o -> o.failures().stream().noneMatch(InHand::stays))
            .orElse(bench.healthy());
  }

  /** Whether a failure stays behind when its part is taken out. */
  static boolean stays(Failure failure) {
    return failure.mode().stays();
  }
}
