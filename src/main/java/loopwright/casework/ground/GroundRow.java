package loopwright.casework.ground;

import java.util.Optional;

/**
 * A ground as one line of all.
 *
 * @param id its id
 * @param title what a person calls it
 * @param kind what it is, in a word or two
 * @param provable whether some load proves it
 * @param result what the last proof said; empty if there was none
 * @param since what was changed since then, so that it no longer counts; empty if nothing was
 */
public record GroundRow(
    String id,
    String title,
    String kind,
    boolean provable,
    Optional<GroundResult> result,
    String since) {

  /** Whether it is proven good and nothing was changed since. */
  public boolean good() {
    return since.isEmpty()
        && result.filter(r -> r.verdict() == GroundResult.Verdict.GOOD).isPresent();
  }
}
