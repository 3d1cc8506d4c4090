package loopwright.solver;

import java.util.Set;

/** What decides whether a contact is closed. */
public sealed interface Gate {

  /** Closed while a control stands in one of these positions. */
  record Position(String control, Set<String> closedIn) implements Gate {
    /** Copies the positions. */
    public Position {
      closedIn = Set.copyOf(closedIn);
    }
  }

  /** Follows the coil of the same relay: closed when it has pulled in, or when it has not. */
  record ByCoil(Rest rest) implements Gate {}

  /** Stuck. */
  record Fixed(Rest rest) implements Gate {}

  /** How a contact stands when nothing moves it. */
  enum Rest {
    OPEN,
    CLOSED
  }
}
