package loopwright.ui.fake;

import java.util.List;
import java.util.function.BooleanSupplier;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanFinding;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.paper.PlanCheck;

/** Says the same of every vehicle, or what really keeps it from being solved. */
public final class FakePlanCheck implements PlanCheck {
  private final List<PlanFinding> findings;
  private final boolean solves;

  private FakePlanCheck(List<PlanFinding> findings, boolean solves) {
    this.findings = findings;
    this.solves = solves;
  }

  /** Finds this in every vehicle. */
  public static FakePlanCheck finding(PlanFinding... findings) {
    return new FakePlanCheck(List.of(findings), true);
  }

  /** Only says what keeps a vehicle from being solved. */
  public static FakePlanCheck unsolved() {
    return new FakePlanCheck(List.of(), false);
  }

  /** Findings of every severity about the invented pumper. */
  public static FakePlanCheck several() {
    return finding(
        finding(
            "W3",
            Severity.BURNS,
            "wire W3 is 18 AWG behind beacon fuse F3 of 30 A; the chart allows 10 A at most.",
            "A short behind the fuse makes the wire glow before the fuse blows.",
            "Fit a fuse of 10 A, or lay 10 AWG."),
        finding(
            "W10",
            Severity.BURNS,
            "wire W10 has no fuse within 0.18 m of the battery; it lies open for 2.4 m.",
            "Whatever chafes through it draws hundreds of amperes.",
            "Put a fuse at the battery end."),
        finding(
            "L1",
            Severity.FAILS,
            "beacon lamp L1 has no way to the grounded post.",
            "It never lights.",
            "Lay a wire from L1.out to a ground stud."),
        finding(
            "G4",
            Severity.WEARS,
            "beacon ground G4 loses 0.31 V at 12 A; usual is 0.1 V at most.",
            "The beacon is dimmer than it should be.",
            "Move half of its loads to another stud."),
        finding(
            "K1",
            Severity.KNOW,
            "relay K1 has a plain diode across its coil.",
            "It lets go slowly.",
            "A resistor instead lets go faster."));
  }

  /** A finding with a source, a setting and one other part. */
  public static PlanFinding finding(
      String part, Severity severity, String says, String follows, String cure) {
    return new PlanFinding(
        part,
        part,
        severity,
        "plan-" + severity,
        says,
        follows,
        cure,
        "chart of wires and fuses of the demo",
        "30 A",
        "10 A",
        List.of("beacon switch S5: on"),
        List.of("F3"));
  }

  @Override
  public PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
    List<VehicleCheck.Finding> unsolved = solves ? List.of() : VehicleCheck.check(vehicle);
    return unsolved.isEmpty()
        ? new PaperReport(
            vehicle.name(), List.of(), findings, 128, vehicle.circuits().size(), hottest)
        : new PaperReport(vehicle.name(), unsolved, List.of(), 0, 0, hottest);
  }

  @Override
  public boolean ready() {
    return true;
  }
}
