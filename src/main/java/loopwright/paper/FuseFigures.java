package loopwright.paper;

import java.util.List;
import java.util.Map;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** Fuses: whether each protects the wires behind it, and opens on a dead short at the far end. */
final class FuseFigures {

  /**
   * Multiple of its rating at which a blade fuse opens within five seconds (SAE J1284 and ISO
   * 8820-3, from memory).
   */
  private static final double OPENS_IN_SECONDS = 2;

  /** Resistance below which nothing but wires and contacts lies between two points, in ohms. */
  private static final double WIRED = 1;

  private final Plan plan;

  FuseFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Fuse fuse) {
        Behind behind = Behind.of(plan, part.id());
        for (String wire : behind.wires()) {
          PartSpec.Wire w = (PartSpec.Wire) plan.part(wire).spec();
          plan.greatestFuse(w)
              .ifPresent(
                  a ->
                      plan.add(
                          new Figure(
                              wire,
                              Figure.Kind.FUSE_AMPS,
                              fuse.amps(),
                              a,
                              Setting.REST,
                              List.of(part.id()))));
        }
        farShort(part, fuse, behind);
      }
    }
  }

  /**
   * The dead short behind a fuse that the loop's own resistance limits most: open-circuit volts of
   * a point over the resistance it sees (Thevenin), contacts and fuses standing as before.
   */
  private void farShort(Part part, PartSpec.Fuse fuse, Behind behind) {
    int link = plan.network().element(part.id(), "link").orElseThrow();
    double least = Double.MAX_VALUE;
    String far = "";
    Setting where = Setting.REST;
    for (Map.Entry<Integer, String> end : behind.ends().entrySet()) {
      int node = end.getKey();
      for (Setting setting : plan.settings()) {
        if (plan.cranks(setting) || !fedBy(link, node, setting)) {
          continue;
        }
        OperatingPoint point = plan.point(setting);
        double amps = Math.abs(point.volts(node)) / point.ohmsSeen(node, Network.REFERENCE);
        if (amps < least) {
          least = amps;
          far = end.getValue();
          where = setting;
        }
        break;
      }
    }
    if (least < Double.MAX_VALUE) {
      plan.add(
          new Figure(
              part.id(),
              Figure.Kind.FAR_SHORT_AMPS,
              least,
              OPENS_IN_SECONDS * fuse.amps(),
              where,
              List.of(far),
              List.of(FuseTimes.longest(least / fuse.amps()))));
    }
  }

  /** Whether a point hangs on a fuse in a setting by nothing but wires and closed contacts. */
  private boolean fedBy(int link, int node, Setting setting) {
    Element fuse = plan.network().elements().get(link);
    OperatingPoint apart = plan.point(setting.without(fuse.part()));
    double whole = Math.abs(plan.point(setting).volts(node));
    return Math.abs(apart.volts(node)) < 0.1 * whole
        && Math.min(apart.ohmsSeen(node, fuse.a()), apart.ohmsSeen(node, fuse.b())) < WIRED;
  }
}
