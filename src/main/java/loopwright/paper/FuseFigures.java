package loopwright.paper;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
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

  /**
   * Amperes by the square root of seconds that a square millimetre of copper takes up within PVC
   * (IEC 60364-4-43, adiabatic rule, from memory).
   */
  private static final double TAKES = 115;

  /** Share of the feed's volts from which a point lies on the feed side. */
  private static final double FED = 0.5;

  /** Stands for a fuse that may never open, in seconds. */
  private static final double FOREVER = 1e9;

  private final Plan plan;
  private final LoomHeat heat;

  FuseFigures(Plan plan, LoomHeat heat) {
    this.plan = plan;
    this.heat = heat;
  }

  void add() {
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Fuse fuse) {
        Behind behind = Behind.of(plan, part.id());
        Source source = source(part);
        for (String wire : behind.wires()) {
          PartSpec.Wire w = (PartSpec.Wire) plan.part(wire).spec();
          wire(wire, w, part, fuse, source);
        }
        farShort(part, fuse, behind);
      }
    }
  }

  private void wire(String id, PartSpec.Wire wire, Part fuse, PartSpec.Fuse rating, Source source) {
    OptionalDouble carries = heat.carries(wire);
    if (carries.isEmpty()) {
      return;
    }
    boolean over = rating.amps() > carries.getAsDouble();
    plan.add(
        new Figure(
            id,
            Figure.Kind.FUSE_AMPS,
            rating.amps(),
            carries.getAsDouble(),
            Setting.REST,
            List.of(fuse.id()),
            List.of(over ? heat.sizeFor(wire, rating.amps()) : "")));
    shortHeat(id, wire, fuse, rating, source);
  }

  /** What feeds a short behind a fuse: open-circuit volts and the resistance before its link. */
  private record Source(double volts, double ohms) {}

  private Source source(Part fuse) {
    OperatingPoint point = plan.point(Setting.REST.without(fuse.id()));
    int e = plan.network().element(fuse.id(), "link").orElseThrow();
    Element link = plan.network().elements().get(e);
    int node =
        Math.abs(point.volts(link.a())) > Math.abs(point.volts(link.b())) ? link.a() : link.b();
    return new Source(
        Math.abs(point.volts(node)),
        point.ohmsSeen(node, Network.REFERENCE) + link.values()[0].typical());
  }

  /** Heat of a dead short at the far end of a wire that begins at its fuse. */
  private void shortHeat(
      String id, PartSpec.Wire wire, Part fuse, PartSpec.Fuse rating, Source source) {
    if (source.volts() < 1) {
      return;
    }
    double amps = source.volts() / (source.ohms() + plan.copperOhms(wire));
    double heat = amps * amps * FuseTimes.longest(amps / rating.amps());
    double takes = TAKES * wire.size().mm2() * TAKES * wire.size().mm2();
    double times = Math.sqrt(heat / takes);
    plan.add(
        new Figure(
            id,
            Figure.Kind.SHORT_HEAT,
            heat,
            takes,
            Setting.REST,
            List.of(fuse.id()),
            List.of(
                heat > takes
                    ? WireSizes.atLeast(wire.size(), times).map(Object::toString).orElse("")
                    : "")));
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
        if (Plan.more(least, amps)) {
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
              List.of(Math.min(FOREVER, FuseTimes.longest(least / fuse.amps())))));
    }
  }

  /** Whether a point is live and hangs on a fuse by wires and contacts that are closed. */
  private boolean fedBy(int link, int node, Setting setting) {
    OperatingPoint point = plan.point(setting);
    Element fuse = plan.network().elements().get(link);
    boolean live = Math.abs(point.volts(node)) > FED * Math.abs(point.volts(plan.feedNode()));
    return live && Reach.behind(plan, point, fuse).contains(node);
  }
}
