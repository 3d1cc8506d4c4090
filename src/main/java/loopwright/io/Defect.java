package loopwright.io;

import java.util.Objects;

/**
 * One thing wrong with a file, said so that it can be put right.
 *
 * @param object what it is about, for instance {@code wire W7}
 * @param value what the file says, shortened where long
 * @param limit what is accepted
 * @param place file, path in it and line, for instance {@code vehicle.json, parts[6].metres (line
 *     41)}
 * @param message all of it in one sentence, place included
 */
public record Defect(String object, String value, String limit, String place, String message) {

  /** Rejects missing components. */
  public Defect {
    Objects.requireNonNull(object, "object");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(message, "message");
  }

  @Override
  public String toString() {
    return message;
  }
}
