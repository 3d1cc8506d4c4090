package loopwright.casework.practise;

import java.util.Optional;
import java.util.Set;
import loopwright.casework.Band;
import loopwright.diagnosis.Seen;

/**
 * What the learner expects of a check before it is taken.
 *
 * @param band values that it should read; empty if none was said
 * @param seen what should be seen; empty if none was said
 * @param parts ids of the parts that it should tell about; may be empty
 */
public record Expectation(Optional<Band> band, Optional<Seen> seen, Set<String> parts) {
  /** Copies the set. */
  public Expectation {
    parts = Set.copyOf(parts);
  }
}
