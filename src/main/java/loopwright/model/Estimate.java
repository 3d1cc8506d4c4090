package loopwright.model;

import java.util.Objects;
import java.util.Optional;

/**
 * A number as the vehicle's owner wrote it down: about so much, and, where they know it, not less
 * than and not more than. Without limits the spread usual for the kind of part applies.
 *
 * @param about the value, in the unit of the component it stands in
 * @param limits the stated limits, whose typical value is {@code about}; empty if none were stated
 */
public record Estimate(double about, Optional<Spread> limits) {

  /** Rejects limits that do not hold the value. */
  public Estimate {
    Objects.requireNonNull(limits, "limits");
    limits.ifPresent(
        spread -> {
          if (!spread.holds(about)) {
            throw new IllegalArgumentException("limits " + spread + " do not hold " + about);
          }
        });
  }

  /** A bare number without stated limits. */
  public static Estimate of(double about) {
    return new Estimate(about, Optional.empty());
  }

  /** A number without any spread. */
  public static Estimate exactly(double value) {
    return between(value, value, value);
  }

  /** A number with stated limits. */
  public static Estimate between(double low, double about, double high) {
    return new Estimate(about, Optional.of(new Spread(low, about, high)));
  }

  /** The stated limits, or the value plus or minus the given share of it. */
  public Spread spread(double usualRelative) {
    return limits.orElseGet(() -> Spread.around(about, usualRelative));
  }
}
