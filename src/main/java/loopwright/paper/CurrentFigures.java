package loopwright.paper;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;

/** The most current each wire, fuse and contact carries at work. */
final class CurrentFigures {

  /** Share of its rating at which a fuse may work all the time. Common practice. */
  private static final double WORKING_SHARE = 0.8;

  /**
   * Share of the rating that the closed side of a changeover contact carries: 30 A of 40 A (plug-in
   * relay data sheet, 40 A class).
   */
  private static final double CLOSED_SIDE = 0.75;

  private final Plan plan;
  private final LoomHeat heat;
  private final Map<Integer, Double> most = new LinkedHashMap<>();
  private final Map<Integer, Setting> where = new HashMap<>();

  CurrentFigures(Plan plan, LoomHeat heat) {
    this.plan = plan;
    this.heat = heat;
  }

  void add() {
    for (Setting setting : plan.settings()) {
      // Cranking lasts half a minute at most: what cables stand in that time is another matter.
      if (!plan.cranks(setting)) {
        note(plan.point(setting));
      }
    }
    most.forEach(this::add);
  }

  private void note(OperatingPoint point) {
    for (int e = 0; e < plan.network().elements().size(); e++) {
      double amps = Plan.amps(point, e);
      if (Plan.more(amps, most.getOrDefault(e, 0.0))) {
        most.put(e, amps);
        where.put(e, point.setting());
      }
    }
  }

  private void add(int e, double amps) {
    Element element = plan.network().elements().get(e);
    Part part = plan.part(element);
    if (part.spec() instanceof PartSpec.Wire w) {
      heat.carries(w)
          .ifPresent(
              a ->
                  plan.add(
                      new Figure(
                          part.id(),
                          Figure.Kind.WIRE_AMPS,
                          amps,
                          a,
                          where.get(e),
                          List.of(),
                          List.of(
                              LoomHeat.copper(heat.surroundings(), amps, a),
                              amps > a ? heat.sizeFor(w, amps) : ""))));
    } else if (part.spec() instanceof PartSpec.Fuse f) {
      plan.add(
          new Figure(
              part.id(),
              Figure.Kind.LOAD_AMPS,
              amps,
              WORKING_SHARE * f.amps(),
              where.get(e),
              List.of()));
    } else if (element instanceof Element.Contact) {
      double share = element.role().equals("contact:87a") ? CLOSED_SIDE : 1;
      Plan.rating(part)
          .ifPresent(
              a ->
                  plan.add(
                      new Figure(
                          part.id(),
                          Figure.Kind.CONTACT_AMPS,
                          amps,
                          a * share,
                          where.get(e),
                          List.of(),
                          List.of(Plan.contact(element)))));
    }
  }
}
