package loopwright.ground;

import java.util.List;
import java.util.Objects;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;

/**
 * A way or a piece of a way by which current returns to the battery's grounded post.
 *
 * @param id id of the part that it is named after: the stud, strap or wire itself; the piece of
 *     metal or the load from which the way begins
 * @param kind what it is
 * @param from the end away from the battery's grounded post
 * @param to the other end; the post itself for a whole way
 * @param pieces ids of the parts in a row that it consists of, from there to there
 * @param loads ids of the loads that are grounded right at its beginning; only of a whole way
 * @param own resistance by geometry and contacts in ohms, each piece by itself in a row
 */
public record Ground(
    String id,
    Kind kind,
    TerminalRef from,
    TerminalRef to,
    List<String> pieces,
    List<String> loads,
    Spread own) {

  /** Copies the lists. */
  public Ground {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    pieces = List.copyOf(pieces);
    loads = List.copyOf(loads);
  }

  /** What a ground is. */
  public enum Kind {
    /** A lug on a stud or bolt in metal. */
    STUD,
    /** A ground cable or braid. */
    STRAP,
    /** A wire that does a strap's work. */
    WIRE,
    /** The whole way from a piece of metal, as the frame or the engine, to the grounded post. */
    BODY,
    /** The whole way from a load to the grounded post. */
    LOAD;

    /** Whether it is a whole way to the post rather than a piece of one. */
    public boolean whole() {
      return this == BODY || this == LOAD;
    }
  }
}
