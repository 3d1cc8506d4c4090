package loopwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;

/** Coils of relays: their current, the volts they get, and what takes their kick. */
final class CoilFigures {

  /** A relay's coil draws less than this, in amperes. Common practice. */
  private static final double USUAL_COIL = 1;

  private final Plan plan;

  CoilFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Relay relay) {
        suppression(part, relay);
      }
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
    plan.add(
        new Figure(
            part.id(),
            Figure.Kind.COIL_SUPPRESSION,
            (within ? 1 : 0) + beside.size(),
            1,
            Setting.REST,
            List.of()));
  }

  /** Whether a diode lies across a relay's coil. */
  private boolean across(String relay, String diode) {
    return Set.of(plan.node(relay, "86"), plan.node(relay, "85"))
        .equals(Set.of(plan.node(diode, "anode"), plan.node(diode, "cathode")));
  }
}
