package loopwright.model;

/**
 * A value that is known within limits: the smallest, the usual and the largest value it may have.
 * The unit is that of the component or parameter it stands in.
 *
 * @param low smallest possible value
 * @param typical usual value, within the limits
 * @param high largest possible value
 */
public record Spread(double low, double typical, double high) {

  /** Checks {@code low <= typical <= high} and that all are finite. */
  public Spread {
    if (!(low <= typical && typical <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException(
          "spread must have low <= typical <= high, all finite: "
              + low
              + ", "
              + typical
              + ", "
              + high);
    }
  }

  /** A value known exactly. */
  public static Spread exactly(double value) {
    return new Spread(value, value, value);
  }

  /** A value with the same relative uncertainty each way, for instance 0.1 for ten percent. */
  public static Spread around(double value, double relative) {
    double reach = Math.abs(value) * relative;
    return new Spread(value - reach, value, value + reach);
  }

  /** Both limits and the usual value multiplied by a positive factor. */
  public Spread times(double factor) {
    if (factor < 0) {
      return new Spread(high * factor, typical * factor, low * factor);
    }
    return new Spread(low * factor, typical * factor, high * factor);
  }

  /** The sum of two independent spreads: limits add. */
  public Spread plus(Spread other) {
    return new Spread(low + other.low, typical + other.typical, high + other.high);
  }

  /** Distance from the low to the high limit. */
  public double width() {
    return high - low;
  }

  /** Whether the value lies within the limits. */
  public boolean holds(double value) {
    return value >= low && value <= high;
  }
}
