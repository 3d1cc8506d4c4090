package loopwright.casework.prove;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.model.Circuit;

/**
 * One thing that is proven.
 *
 * @param id a circuit's id; what belongs to no circuit begins with {@code @}, which no circuit's id
 *     does
 * @param kind what it is
 * @param part id of the fuse or relay that is proven; empty for all but those
 * @param circuit the circuit that is proven; empty for all but those
 * @param needs ids of the fuses and relays it needs, those nearest the battery first
 * @param small whether it is proven behind the small fuse
 */
public record Subject(
    String id,
    Kind kind,
    Optional<String> part,
    Optional<Circuit> circuit,
    List<String> needs,
    boolean small) {

  /** Id of the battery, the grounds and the way to the first fuse. */
  public static final String SUPPLY = "@supply";

  /** Id of the swap back to the full fuse. */
  public static final String FULL = "@full";

  /** Copies the list. */
  public Subject {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(kind, "kind");
    needs = List.copyOf(needs);
  }

  /** What is proven. */
  public enum Kind {
    /** The battery, the grounds and the way to the first fuse. */
    SUPPLY,
    /** A fuse or relay that feeds several circuits. */
    FEED,
    /** A circuit. */
    CIRCUIT,
    /** The swap back to the full fuse. */
    FULL
  }

  /** The fuse or relay that feeds several circuits. */
  static Subject feed(String part, List<String> needs) {
    return new Subject("@" + part, Kind.FEED, Optional.of(part), Optional.empty(), needs, true);
  }
}
