package loopwright.casework.practise;

/**
 * What costs points, and how many each time. Our own choice: what harms costs more than what only
 * takes time, and a fault left in costs most.
 */
public enum Loss {
  /** A check that couldn't have told anything. */
  WASTED(3),
  /** Ohms or the diode test on points that volts stood between. */
  LIVE_OHMS(6),
  /** Ohms or the diode test without having read 0.00 V there before. */
  UNPROVEN_DEAD(2),
  /** Amperes across points that volts stood between. */
  AMPS_ACROSS(6),
  /** The meter's fuse. */
  METER_FUSE(6),
  /** A fuse of the vehicle, spent on a fault that was still there. */
  CIRCUIT_FUSE(6),
  /** An accusation that the readings didn't bear out. */
  WITHOUT_CAUSE(8),
  /** A sound part accused. */
  SOUND_ACCUSED(12),
  /** The right part accused of another failure than it has. */
  OTHER_FAILURE(2),
  /** A fault left in. */
  MISSED(40),
  /** All mended, and nobody looked whether it works. */
  UNPROVEN_REPAIR(8);

  private final int points;

  Loss(int points) {
    this.points = points;
  }

  /** Points lost each time. */
  public int points() {
    return points;
  }

  /** Whether somebody or something could have come to harm. */
  public boolean risk() {
    return switch (this) {
      case LIVE_OHMS, UNPROVEN_DEAD, AMPS_ACROSS, METER_FUSE, CIRCUIT_FUSE -> true;
      default -> false;
    };
  }

  /** The key of its words. */
  String key() {
    return "practise.loss." + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
