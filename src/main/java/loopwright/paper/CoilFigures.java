package loopwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Variant;

/** Coils of relays: their current, the volts they get, and what takes their kick. */
final class CoilFigures {

  /** A relay's coil draws less than this, in amperes. Common practice. */
  private static final double USUAL_COIL = 1;

  /** Contact rating above which it is a solenoid or contactor, in amperes. Common practice. */
  private static final double LARGEST_RELAY = 70;

  /** Current of motors from which the arc of a slow relay is worth a word, in amperes. */
  private static final double ARCS = 1;

  /** Share of the volts it needs from which a coil counts as fed. */
  private static final double FED = 0.3;

  private final Plan plan;

  CoilFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Relay relay) {
        work(part, relay);
        suppression(part, relay);
      }
    }
  }

  /** Current and volts of the coil where it should pull in. */
  private void work(Part part, PartSpec.Relay relay) {
    int e = plan.network().element(part.id(), "coil").orElseThrow();
    Element.Coil coil = (Element.Coil) plan.network().elements().get(e);
    double needs = coil.pullInVolts().high();
    double most = 0;
    double least = Double.MAX_VALUE;
    Setting mostAt = Setting.REST;
    Setting leastAt = Setting.REST;
    for (Setting setting : plan.alone()) {
      OperatingPoint point = plan.point(setting);
      double amps = Math.abs(point.amps(e));
      double volts = Math.abs(point.across(e));
      if (Plan.more(amps, most)) {
        most = amps;
        mostAt = setting;
      }
      if (volts > FED * needs && Plan.more(least, volts)) {
        least = volts;
        leastAt = setting;
      }
    }
    if (relay.amps().orElse(0.0) <= LARGEST_RELAY && most > 0) {
      plan.add(new Figure(part.id(), Figure.Kind.COIL_AMPS, most, USUAL_COIL, mostAt, List.of()));
    }
    if (least < Double.MAX_VALUE) {
      plan.add(new Figure(part.id(), Figure.Kind.COIL_VOLTS, least, needs, leastAt, List.of()));
    }
  }

  private void suppression(Part part, PartSpec.Relay relay) {
    List<String> beside = new ArrayList<>();
    for (Part diode : plan.vehicle().parts()) {
      if (diode.kind() == PartKind.DIODE && across(part.id(), diode.id())) {
        beside.add(diode.id());
      }
    }
    boolean within = relay.suppression() != PartSpec.Suppression.NONE;
    Optional<String> driver = driver(part);
    plan.add(
        new Figure(
            part.id(),
            Figure.Kind.COIL_SUPPRESSION,
            (within ? 1 : 0) + beside.size(),
            1,
            Setting.REST,
            driver.stream().toList(),
            List.of(driver.isPresent() ? "driver" : "switch")));
    for (String diode : beside) {
      plan.add(backwards(part, diode, Variant.healthy(plan.network()), Set.of(diode)));
    }
    boolean diodeWithin = within && relay.suppression() != PartSpec.Suppression.RESISTOR;
    if (diodeWithin) {
      int suppressor = plan.network().element(part.id(), "suppressor").orElseThrow();
      Variant without =
          Variant.healthy(plan.network()).with(List.of(new Change.Remove(suppressor)));
      plan.add(backwards(part, part.id(), without, Set.of()));
    }
    if (diodeWithin || !beside.isEmpty()) {
      breaks(part);
    }
  }

  /** Whether a diode would conduct while the coil is fed: the volts across it without it. */
  private Figure backwards(Part relay, String diode, Variant without, Set<String> apart) {
    Element.Junction junction =
        plan.network().elementsOf(diode).stream()
            .map(plan.network().elements()::get)
            .filter(Element.Junction.class::isInstance)
            .map(Element.Junction.class::cast)
            .findFirst()
            .orElseThrow();
    String changed = apart.isEmpty() ? relay.id() + " suppressor" : "";
    for (Setting setting : plan.alone()) {
      OperatingPoint point = plan.states().of(without, changed, setting.without(apart));
      if (point.volts(junction.a(), junction.b()) > junction.forwardVolts().high()) {
        return new Figure(relay.id(), Figure.Kind.DIODES_BACKWARDS, 1, 0, setting, List.of(diode));
      }
    }
    return new Figure(relay.id(), Figure.Kind.DIODES_BACKWARDS, 0, 0, Setting.REST, List.of(diode));
  }

  /** The motors' current that a relay breaks. */
  private void breaks(Part part) {
    double most = 0;
    Setting at = Setting.REST;
    for (Setting setting : plan.alone()) {
      OperatingPoint point = plan.point(setting);
      double motors = 0;
      for (int e = 0; e < plan.network().elements().size(); e++) {
        if (plan.network().elements().get(e) instanceof Element.Motor) {
          motors += Math.abs(point.amps(e));
        }
      }
      double contact =
          plan.network().elementsOf(part.id()).stream()
              .filter(e -> plan.network().elements().get(e) instanceof Element.Contact)
              .mapToDouble(e -> Math.abs(point.amps(e)))
              .max()
              .orElse(0);
      if (Plan.more(Math.min(motors, contact), most)) {
        most = Math.min(motors, contact);
        at = setting;
      }
    }
    plan.add(new Figure(part.id(), Figure.Kind.DIODE_BREAKS_AMPS, most, ARCS, at, List.of()));
  }

  /** The driver at one end of a coil, if a driver switches it. */
  private Optional<String> driver(Part relay) {
    return plan.vehicle().parts().stream()
        .filter(p -> p.kind() == PartKind.DRIVER)
        .map(Part::id)
        .filter(
            d -> {
              int coil = plan.network().element(relay.id(), "coil").orElseThrow();
              return plan.alone().stream()
                  .anyMatch(
                      s ->
                          Math.abs(plan.point(s).amps(coil)) > 1e-3
                              && Math.abs(plan.point(s.resting(d)).amps(coil)) < 1e-3);
            })
        .findFirst();
  }

  /** Whether a diode lies across a relay's coil. */
  private boolean across(String relay, String diode) {
    return Set.of(plan.node(relay, "86"), plan.node(relay, "85"))
        .equals(Set.of(plan.node(diode, "anode"), plan.node(diode, "cathode")));
  }
}
