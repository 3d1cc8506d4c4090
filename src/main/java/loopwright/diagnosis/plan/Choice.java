package loopwright.diagnosis.plan;

import java.util.OptionalDouble;

/**
 * A check as a planner ranks it.
 *
 * @param check its number
 * @param minutes working time from here
 * @param bits information it is expected to give about which group of pieces is to blame
 * @param expectedMinutes expected minutes from here to the end if this check is done next; empty
 *     where it was not worked out
 */
public record Choice(int check, double minutes, double bits, OptionalDouble expectedMinutes) {

  /** Information per minute. */
  public double worth() {
    return bits / minutes;
  }
}
