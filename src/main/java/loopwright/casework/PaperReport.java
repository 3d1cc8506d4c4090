package loopwright.casework;

import java.util.List;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.Units;
import loopwright.model.VehicleCheck;

/**
 * What the paper check says of a vehicle.
 *
 * @param vehicle the vehicle's name
 * @param unsolved what keeps the plan from being solved; where there is any, nothing else is said
 * @param findings worst first, then in the order of the vehicle's parts
 * @param figures how many figures were held against their limits
 * @param circuits how many circuits were looked at
 * @param hottest surroundings of the wires at their hottest that it was made for, in degrees C
 */
public record PaperReport(
    String vehicle,
    List<VehicleCheck.Finding> unsolved,
    List<PlanFinding> findings,
    int figures,
    int circuits,
    double hottest) {
  /** Copies the lists. */
  public PaperReport {
    unsolved = List.copyOf(unsolved);
    findings = List.copyOf(findings);
  }

  /** Findings of one severity. */
  public List<PlanFinding> of(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).toList();
  }

  /** How many things are wrong, in words. */
  public String found(Phrases phrases) {
    int wrong = defects().size();
    return wrong == 0
        ? phrases.say("paper.clean", circuits, figures)
        : phrases.say("paper.found", wrong, circuits, figures);
  }

  /** How hot it was taken to get where the wires run, in words. */
  public String air(Phrases phrases) {
    return phrases.say(
        "paper.air",
        Units.inUse().temperature(hottest, phrases.locale()),
        Units.inUse().temperature(PaperDesk.USUAL_SURROUNDINGS, phrases.locale()));
  }

  /** Findings that say that something is wrong. */
  public List<PlanFinding> defects() {
    return findings.stream().filter(PlanFinding::isDefect).toList();
  }
}
