package loopwright.model;

import java.util.Objects;
import java.util.Optional;

/**
 * A load, or one filament of a dual-filament lamp.
 *
 * @param part the part's id
 * @param filament the filament's name on a dual-filament lamp, else empty
 */
public record LoadRef(String part, Optional<String> filament) implements Comparable<LoadRef> {

  /** Rejects missing names. */
  public LoadRef {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(filament, "filament");
  }

  /** A load with a single function. */
  public static LoadRef of(String part) {
    return new LoadRef(part, Optional.empty());
  }

  /** Reads {@code L7} or {@code L7:stop}. */
  public static LoadRef parse(String text) {
    int colon = text.indexOf(':');
    return colon < 0
        ? of(text)
        : new LoadRef(text.substring(0, colon), Optional.of(text.substring(colon + 1)));
  }

  @Override
  public int compareTo(LoadRef other) {
    return toString().compareTo(other.toString());
  }

  @Override
  public String toString() {
    return part + filament.map(f -> ":" + f).orElse("");
  }
}
