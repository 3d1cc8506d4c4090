package loopwright.paper;

import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.solver.Element;

/** Volts that may be lost before and behind a load while it works. */
public final class DropLimits {

  /**
   * Usual loss from the battery to a lamp that is on for long, as a share of the system's volts:
   * 0.5 V of 12 V. Common practice; FAA AC 43.13-1B, Table 11-6 (from memory) has 0.5 V of 14 V.
   */
  private static final double LAMP_FEED = 0.5 / 12;

  /**
   * The same for what works for moments, as a horn or a brake lamp, and for motors and heaters,
   * which lose less of their work by it: 1 V of 12 V, after FAA AC 43.13-1B, Table 11-6 (from
   * memory): 1 V of 14 V, 2 V of 28 V for intermittent loads.
   */
  private static final double OTHER_FEED = 1.0 / 12;

  /**
   * Usual loss from a lamp to the battery's grounded post in volts, at 6 and 12 V; twice that at 24
   * V. Common practice.
   */
  private static final double LAMP_GROUND = 0.1;

  /** The same for what works for moments, and for motors and heaters. Common practice. */
  private static final double OTHER_GROUND = 0.2;

  /** While cranking: 0.5 V and 0.3 V of 12 V (starter draw tester manual) ... */
  private static final double STARTER_FEED = 0.5 / 12;

  private static final double STARTER_GROUND = 0.3 / 12;

  /**
   * Greatest resistance of any part of a starter's circuit in ohms: 0.2 V for each 100 A (US Army
   * TM 10-3930-671-24, p. F-303).
   */
  public static final double STARTER_OHMS = 0.2 / 100;

  private final Plan plan;
  private final boolean starter;
  private final boolean light;
  private final double cranking;

  /**
   * Limits of one load.
   *
   * @param circuit the circuit that is on
   * @param part the load's part
   * @param load the element that does its work
   * @param amps current through it, in amperes
   */
  public DropLimits(Plan plan, Circuit circuit, Part part, Element load, double amps) {
    this.plan = plan;
    this.starter = plan.starter(part);
    this.light =
        !plan.momentary(circuit)
            && (load instanceof Element.Filament || load instanceof Element.Junction);
    this.cranking = STARTER_OHMS * Math.abs(amps);
  }

  /**
   * Volts that may be lost on the whole way from a starter to the battery's grounded post.
   *
   * @param systemVolts 6, 12 or 24
   * @param amps cranking current in amperes
   */
  public static double starterGround(int systemVolts, double amps) {
    return Math.max(STARTER_GROUND * systemVolts, STARTER_OHMS * amps);
  }

  /** Whether it is a lamp that is on for long. */
  public boolean light() {
    return light;
  }

  /** Volts that may be lost from the battery's feed post to the load. */
  public double feed() {
    int system = plan.vehicle().systemVolts();
    return starter
        ? Math.max(STARTER_FEED * system, cranking)
        : (light ? LAMP_FEED : OTHER_FEED) * system;
  }

  /** Volts that may be lost from the load to the battery's grounded post. */
  public double ground() {
    int system = plan.vehicle().systemVolts();
    return starter
        ? starterGround(system, cranking / STARTER_OHMS)
        : (light ? LAMP_GROUND : OTHER_GROUND) * Math.max(1, system / 12.0);
  }
}
