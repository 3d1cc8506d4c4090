package loopwright.paper;

import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;

/**
 * From how much of its rated work on somebody notices that a load does something, in percent. The
 * limits are common practice where no other source is named.
 *
 * @param element number of the element that does the work
 * @param name the load; a filament as {@code part:filament}
 * @param does what the load does, as a word
 * @param percent from which it is noticed
 */
record Noticed(int element, String name, String does, double percent) {

  /**
   * Share of its power from which a filament glows in the dark: an eighth of the volts, where its
   * metal is above a thousand degrees (from the filament law).
   */
  private static final double GLOWS = 4;

  /** Share of its current from which a light-emitting diode is seen. */
  private static final double LED_GLOWS = 2;

  /** Share of the volts at which a horn sounds. */
  private static final double SOUNDS = 50;

  /** Share of the volts at which a solenoid's plunger begins to move. */
  private static final double PULLS = 40;

  /** Share of its power from which a heater is felt. */
  private static final double WARMS = 10;

  /** Share of the volts at which electronics or a gauge wake. */
  private static final double WAKES = 30;

  /** The load that an element is, if it is one. */
  static Optional<Noticed> of(Plan plan, int e) {
    Element element = plan.network().elements().get(e);
    Part part = plan.part(element);
    if (!plan.works(element)) {
      return Optional.empty();
    }
    String name = name(element);
    if (element instanceof Element.Motor m) {
      double starts = 100 * m.startVolts().typical() / plan.vehicle().systemVolts();
      return Optional.of(new Noticed(e, name, "turns", starts));
    }
    return Optional.of(
        switch (part.kind()) {
          case LAMP, DUAL_LAMP -> new Noticed(e, name, "glows", GLOWS);
          case LED -> new Noticed(e, name, "glows", LED_GLOWS);
          case HORN -> new Noticed(e, name, "sounds", SOUNDS);
          case SOLENOID -> new Noticed(e, name, "pulls", PULLS);
          case HEATER -> new Noticed(e, name, "warms", WARMS);
          default -> new Noticed(e, name, "wakes", WAKES);
        });
  }

  /** The part of an element; a filament as {@code part:filament}. */
  static String name(Element element) {
    String role = element.role();
    return role.startsWith("filament:")
        ? element.part() + role.substring(role.indexOf(':'))
        : element.part();
  }

  /** Whether it moves something when it works: a motor or a solenoid. */
  boolean moves() {
    return does.equals("turns") || does.equals("pulls");
  }

  /** How much of its rated work it does in a state, in percent. */
  double level(Plan plan, OperatingPoint point) {
    Element e = plan.network().elements().get(element);
    double volts = Math.abs(point.across(element));
    double amps = Math.abs(point.amps(element));
    if (e instanceof Element.Filament f) {
      return 100 * volts * amps / (f.ratedVolts() * f.amps().typical());
    }
    Part part = plan.part(e);
    if (part.spec() instanceof PartSpec.Led l) {
      return 100 * amps / l.amps().about();
    }
    if (point.siemens(element) == 0) {
      return 0;
    }
    double share = volts / plan.vehicle().systemVolts();
    return 100 * (part.kind() == PartKind.HEATER ? share * share : share);
  }

  /** Whether it is noticed in a state. */
  boolean in(Plan plan, OperatingPoint point) {
    return level(plan, point) >= percent;
  }
}
