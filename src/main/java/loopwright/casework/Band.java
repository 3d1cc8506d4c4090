package loopwright.casework;

/**
 * A range of values a meter could show.
 *
 * @param low least value, in volts or ohms
 * @param high greatest value, in volts or ohms; {@link Double#POSITIVE_INFINITY} means over range
 *     (OL)
 * @param unit V or ohm
 */
public record Band(double low, double high, Unit unit) {

  /** Units of readings. */
  public enum Unit {
    VOLT,
    OHM
  }

  /** Rejects bands the wrong way round. */
  public Band {
    if (!(low <= high)) {
      throw new IllegalArgumentException("band from " + low + " to " + high);
    }
  }
}
