package loopwright.diagnosis;

import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;

/**
 * Where a known-good twin of a part comes from: the same kind with the same rating elsewhere on the
 * vehicle, out of play, or a spare from the box.
 */
final class Twins {

  /** Time to fetch a spare, in minutes. Common practice, our own estimate. */
  private static final double FETCH_MINUTES = 3;

  /** Longest time to fit a part that still counts as a swap, in minutes. Our own choice. */
  private static final double QUICK_MINUTES = 6;

  private final Vehicle vehicle;

  Twins(Vehicle vehicle) {
    this.vehicle = vehicle;
  }

  /** Whether a good one can be fitted for a try at all. */
  boolean swaps(Part part) {
    return pluggable(part)
        && part.swapMinutes().isPresent()
        && part.swapMinutes().get() <= QUICK_MINUTES;
  }

  /**
   * The twin that is quickest to take out.
   *
   * @param inPlay parts that are suspected and can't be known to be good
   */
  Optional<Part> twin(Part part, Set<String> inPlay) {
    return vehicle.parts().stream()
        .filter(p -> !p.id().equals(part.id()) && !inPlay.contains(p.id()))
        .filter(p -> p.apartMinutes().isPresent() && alike(part.spec(), p.spec()))
        .min(
            Comparator.comparingDouble((Part p) -> p.apartMinutes().orElseThrow())
                .thenComparing(Part::id));
  }

  /**
   * Minutes to change a part for its twin, and both back afterwards.
   *
   * @param inPlay parts that are suspected
   */
  double minutes(Part part, Set<String> inPlay) {
    double own = part.swapMinutes().orElse(QUICK_MINUTES);
    return twin(part, inPlay)
        .map(t -> 2 * own + 2 * t.apartMinutes().orElseThrow())
        .orElse(2 * own + FETCH_MINUTES);
  }

  private static boolean pluggable(Part part) {
    return switch (part.kind()) {
      case FUSE, RELAY, LAMP, DUAL_LAMP -> true;
      default -> false;
    };
  }

  /** Whether one fits and does in the other's place. */
  private static boolean alike(PartSpec a, PartSpec b) {
    if (a instanceof PartSpec.Fuse x && b instanceof PartSpec.Fuse y) {
      return x.amps() == y.amps();
    }
    if (a instanceof PartSpec.Relay x && b instanceof PartSpec.Relay y) {
      return x.changeover() == y.changeover()
          && x.suppression() == y.suppression()
          && y.amps().equals(x.amps());
    }
    if (a instanceof PartSpec.Lamp x && b instanceof PartSpec.Lamp y) {
      return x.watts().about() == y.watts().about() && x.ratedVolts().equals(y.ratedVolts());
    }
    if (a instanceof PartSpec.DualLamp x && b instanceof PartSpec.DualLamp y) {
      return x.firstWatts().about() == y.firstWatts().about()
          && x.secondWatts().about() == y.secondWatts().about()
          && x.first().equals(y.first());
    }
    return false;
  }
}
