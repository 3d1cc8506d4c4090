package loopwright.casework.practise;

import java.util.Locale;

/** What a drill trains, easier ones first. The order is part of every code: add at the end only. */
public enum Level {
  /** A lamp that is dead because something is open. */
  DEAD_LAMP,
  /** A joint or contact in the way that lets too little pass. */
  HIGH_RESISTANCE,
  /** A ground or strap that several circuits share. */
  SHARED_GROUND,
  /** A load fed by a relay; the fault lies at the relay or on the way of its coil. */
  RELAY,
  /** Something touches ground and the fuse blows. */
  SHORT,
  /** Two parts have failed at once. */
  TWO_FAULTS,
  /** One fault, and once the tip doesn't touch metal. */
  SLIP;

  /** The word used in options and files, for instance {@code dead-lamp}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
