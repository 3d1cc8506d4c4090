package loopwright.io.wire;

import java.util.Objects;
import java.util.Optional;
import loopwright.casework.Problem;

/** An incoming line, read: either a request or what is wrong with the line. */
public sealed interface Told {

  /** The line's id, as far as it could be read. */
  Optional<ClientId> id();

  /** A line in order. */
  record Good(Optional<ClientId> id, Request request) implements Told {}

  /** A line that is not; nothing is to change. */
  record Bad(Optional<ClientId> id, Problem problem) implements Told {
    /** Rejects a missing problem. */
    public Bad {
      Objects.requireNonNull(problem, "problem");
    }
  }
}
