package loopwright.casework;

import java.util.Objects;

/**
 * A reading beside what a suspect and a healthy circuit could show there.
 *
 * @param reading number of the reading
 * @param where where it was taken, in words
 * @param value what it showed, in words
 * @param suspect all that the suspect could show
 * @param healthy all that a healthy circuit could show
 */
public record Against(int reading, String where, String value, Band suspect, Band healthy) {
  /** Rejects missing bands. */
  public Against {
    Objects.requireNonNull(suspect, "suspect");
    Objects.requireNonNull(healthy, "healthy");
  }
}
