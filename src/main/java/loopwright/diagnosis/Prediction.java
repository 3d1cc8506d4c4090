package loopwright.diagnosis;

import java.util.Map;

/** What a hypothesis says a check would give. */
public sealed interface Prediction {

  /**
   * A number on the display.
   *
   * @param mean expected value in volts or ohms
   * @param sd standard deviation from all spreads but the battery's, in the same unit
   * @param battery change with one standard deviation of the battery's rest volts
   */
  record Numeric(double mean, double sd, double battery) implements Prediction {
    /** Standard deviation with the battery's share, as far as its volts are not yet known. */
    public double sd(double batteryShare) {
      return Math.hypot(sd, battery * batteryShare);
    }
  }

  /**
   * Something seen.
   *
   * @param chances chance of each answer; they add up to 1
   */
  record Sight(Map<Seen, Double> chances) implements Prediction {
    /** Copies the map. */
    public Sight {
      chances = Map.copyOf(chances);
    }

    /** Chance of one answer. */
    public double chance(Seen seen) {
      return chances.getOrDefault(seen, 0.0);
    }
  }
}
