package loopwright.ground;

import java.util.Objects;

/**
 * What a ground may lose or have. A strap's limit is the drop that is allowed over the worst
 * current through it, not a fixed number of milliohms.
 *
 * @param measure whether a reading is held against the ohms or right against the volts
 * @param volts volts that may be lost
 * @param amps current at which they may be lost, in amperes
 * @param source where the volts come from
 */
public record Limit(Measure measure, double volts, double amps, Source source) {

  /** Rejects limits that nothing could keep. */
  public Limit {
    Objects.requireNonNull(measure, "measure");
    Objects.requireNonNull(source, "source");
    if (!(volts > 0 && amps > 0)) {
      throw new IllegalArgumentException("limit of " + volts + " V at " + amps + " A");
    }
  }

  /** Resistance at which just those volts are lost at that current, in ohms. */
  public double ohms() {
    return volts / amps;
  }

  /** What is held against the limit. */
  public enum Measure {
    /** The resistance: the reading is taken at another current than the limit is for. */
    OHMS,
    /**
     * The volts: the load works as it should while they are read, and that is what they are for.
     */
    VOLTS
  }

  /** Where a limit comes from; the rows stand in voltage-drop-limits.csv and ground.csv. */
  public enum Source {
    /** 0.1 V for a high-current connection: SAE recommended maximum drops, second hand. */
    CONNECTION,
    /** 0.1 V for the whole ground of a lamp: training text, common practice for 6 V. */
    LAMP,
    /** 0.2 V for what works for moments, motors and heaters: common practice. */
    OTHER,
    /** 0.2 V for each 100 A of a starter: US Army TM 10-3930-671-24, p. F-303. */
    STARTER,
    /** 0.05 V for a control unit or sensor: common practice. */
    SIGNAL
  }
}
