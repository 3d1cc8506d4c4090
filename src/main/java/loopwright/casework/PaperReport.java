package loopwright.casework;

import java.util.List;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.VehicleCheck;

/**
 * What the paper check says of a vehicle.
 *
 * @param vehicle the vehicle's name
 * @param unsolved what keeps the plan from being solved; where there is any, nothing else is said
 * @param findings worst first, then in the order of the vehicle's parts
 * @param figures how many figures were held against their limits
 * @param circuits how many circuits were looked at
 */
public record PaperReport(
    String vehicle,
    List<VehicleCheck.Finding> unsolved,
    List<PlanFinding> findings,
    int figures,
    int circuits) {
  /** Copies the lists. */
  public PaperReport {
    unsolved = List.copyOf(unsolved);
    findings = List.copyOf(findings);
  }

  /** Findings of one severity. */
  public List<PlanFinding> of(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).toList();
  }

  /** Findings that say that something is wrong. */
  public List<PlanFinding> defects() {
    return findings.stream().filter(PlanFinding::isDefect).toList();
  }
}
