package loopwright.io.wire;

import java.util.Objects;

/**
 * A line's id, given by the program that wrote it. A line with an id that has been accepted before
 * gets the same reply again and changes nothing.
 *
 * @param json the id as it stands in JSON: a string in quotes, or a whole number
 */
public record ClientId(String json) {
  /** Rejects a missing id. */
  public ClientId {
    Objects.requireNonNull(json, "json");
  }
}
