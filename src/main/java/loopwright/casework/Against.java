package loopwright.casework;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.diagnosis.Explainer;

/**
 * A reading beside what a suspect and a healthy circuit could show there.
 *
 * @param reading number of the reading
 * @param where where it was taken, in words
 * @param value what it showed, in words
 * @param suspect all that the suspect could show
 * @param healthy all that a healthy circuit could show
 * @param needed the resistance in ohms that the suspect's part would have to have in the way to
 *     give the reading, from 0 for a sound part to infinite for an open one; empty if none does
 * @param modes the part's failures, and whether each can give the reading
 */
public record Against(
    int reading,
    String where,
    String value,
    Band suspect,
    Band healthy,
    Optional<Band> needed,
    List<Explainer.Mode> modes) {
  /** Rejects missing bands. */
  public Against {
    Objects.requireNonNull(suspect, "suspect");
    Objects.requireNonNull(healthy, "healthy");
    modes = List.copyOf(modes);
  }
}
