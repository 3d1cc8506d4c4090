package loopwright.diagnosis;

import java.util.Objects;

/**
 * One reading as it counts for the diagnosis.
 *
 * @param id its number in the case, from 1
 * @param check what was measured or looked at
 * @param value what it gave
 */
public record Reading(int id, Check check, Value value) {

  /** Rejects missing parts. */
  public Reading {
    Objects.requireNonNull(check, "check");
    Objects.requireNonNull(value, "value");
  }

  /** What a reading gave. */
  public sealed interface Value {

    /**
     * A number from the display.
     *
     * @param value in volts or ohms
     * @param step one digit of the last place shown, in volts or ohms
     */
    record Number(double value, double step) implements Value {}

    /**
     * Known only to lie between two values.
     *
     * @param low in volts or ohms
     * @param high in volts or ohms; infinite where OL is within
     */
    record Between(double low, double high) implements Value {}

    /** OL. */
    record OverRange() implements Value {}

    /** Something seen, heard or felt. */
    record Sight(Seen seen) implements Value {}
  }
}
