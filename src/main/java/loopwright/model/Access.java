package loopwright.model;

import java.util.Objects;

/**
 * What it takes to reach a point with a meter lead.
 *
 * @param minutes working time to get there and back, zero or more
 * @param how in words, for instance "behind the dash, pull the cluster"; may be empty
 * @param reachable false where no lead can touch the metal, for instance inside a taped splice
 */
public record Access(double minutes, String how, boolean reachable) {

  /** At hand: no time, no words. */
  public static final Access OPEN = new Access(0, "", true);

  /** Rejects negative times. */
  public Access {
    Objects.requireNonNull(how, "how");
    if (!(minutes >= 0)) {
      throw new IllegalArgumentException("access minutes must be 0 or more, not " + minutes);
    }
  }
}
