package loopwright.casework;

import java.util.List;
import java.util.Objects;
import loopwright.diagnosis.rulebook.Conclusion.Severity;

/**
 * One finding of the paper check, in words.
 *
 * @param part id of the part it is about; a filament as {@code part:filament}
 * @param title the part as a person calls it
 * @param severity how bad it is
 * @param rule id of the rule that says so
 * @param finding what was found, a sentence with value and limit
 * @param consequence what follows from it
 * @param cure what to do
 * @param source where the limit comes from
 * @param value the figure with its unit; empty for a yes or no
 * @param limit the limit with its unit; empty for a yes or no
 * @param setting how the controls stand, in words; empty where it doesn't matter
 * @param with ids of other parts that have to do with it
 */
public record PlanFinding(
    String part,
    String title,
    Severity severity,
    String rule,
    String finding,
    String consequence,
    String cure,
    String source,
    String value,
    String limit,
    List<String> setting,
    List<String> with) {
  /** Copies the lists. */
  public PlanFinding {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(severity, "severity");
    setting = List.copyOf(setting);
    with = List.copyOf(with);
  }

  /** Whether something is wrong, rather than worth knowing. */
  public boolean isDefect() {
    return severity != Severity.KNOW;
  }
}
