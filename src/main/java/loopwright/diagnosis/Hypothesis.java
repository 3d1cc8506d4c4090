package loopwright.diagnosis;

import java.util.List;
import java.util.Optional;
import loopwright.model.Spread;
import loopwright.solver.Failure;
import loopwright.solver.History;
import loopwright.solver.Variant;

/**
 * One way the vehicle may be: a suspect, or one cell of a suspect's resistance range, ready to be
 * solved.
 *
 * @param suspect the suspect it belongs to
 * @param parts the parts that have failed in it; empty for health and for the unlisted rest
 * @param failures the failures put in
 * @param cell added resistance in ohms where the suspect is a continuum
 * @param variant the network with the failures in
 * @param history fuses that have blown by the time the complaint was made
 * @param prior chance before any reading, complaint not yet counted
 */
public record Hypothesis(
    SuspectId suspect,
    List<String> parts,
    List<Failure> failures,
    Optional<Spread> cell,
    Variant variant,
    History history,
    double prior) {

  /** Copies the lists. */
  public Hypothesis {
    parts = List.copyOf(parts);
    failures = List.copyOf(failures);
  }

  /** Whether this is the rest that no table lists. */
  public boolean unlisted() {
    return suspect.equals(SuspectId.UNLISTED);
  }

  /** The part that has failed; a single failure has exactly one. */
  public String part() {
    return parts.isEmpty() ? SuspectId.NONE : parts.get(0);
  }
}
