package loopwright.paper;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.Failure;
import loopwright.solver.OperatingPoint;

/** Joints in the loop of each load: every one may fail. */
final class JointFigures {

  /** Current from which a loop can be followed, in amperes. */
  private static final double FLOWS = 1e-3;

  private final Plan plan;
  private final Knowledge knowledge;

  JointFigures(Plan plan, Knowledge knowledge) {
    this.plan = plan;
    this.knowledge = knowledge;
  }

  /** The loop with the most joints. */
  void add() {
    int most = 0;
    String load = "";
    Setting at = Setting.REST;
    List<String> between = List.of();
    Set<Part> loop = Set.of();
    for (Circuit circuit : plan.vehicle().circuits()) {
      OperatingPoint point = plan.point(circuit.onSetting());
      for (LoadRef l : circuit.loads()) {
        int e = plan.network().loadElement(l);
        if (Math.abs(point.amps(e)) < FLOWS) {
          continue;
        }
        int joints = 0;
        List<String> passed = new ArrayList<>();
        Set<Part> pieces = new LinkedHashSet<>();
        for (int passes : CurrentWay.through(plan, point, e).elements()) {
          Part part = plan.part(plan.network().elements().get(passes));
          pieces.add(part);
          joints += joints(part, plan.network().elements().get(passes));
          boolean met =
              switch (part.kind()) {
                case CONNECTOR, SPLICE, GROUND -> true;
                default -> false;
              };
          if (met && !passed.contains(part.id())) {
            passed.add(part.id());
          }
        }
        if (joints > most) {
          most = joints;
          load = l.toString();
          at = circuit.onSetting();
          between = passed;
          loop = pieces;
        }
      }
    }
    if (most > 0) {
      plan.add(
          new Figure(load, Figure.Kind.JOINTS, most, 0, at, between, List.of(100 * share(loop))));
    }
  }

  /** Share of all that is expected to fail in a loop in service that is expected in its joints. */
  private double share(Set<Part> loop) {
    double all = 0;
    double joints = 0;
    for (Part part : loop) {
      boolean joint =
          switch (part.kind()) {
            case CONNECTOR, SPLICE, GROUND -> true;
            default -> false;
          };
      for (Failure f : Failure.of(plan.network(), part, knowledge.faults())) {
        double rate = f.rate(Context.IN_SERVICE);
        all += rate;
        joints += joint || f.mode().per() == FaultMode.Per.CONTACT ? rate : 0;
      }
    }
    return all > 0 ? joints / all : 0;
  }

  /** Places where metal only touches metal. */
  private static int joints(Part part, Element element) {
    return switch (part.kind()) {
      // Both ends; both clips; both terminals of a socket, relay or switch are ends of wires.
      case WIRE, STRAP, FUSE -> 2;
      // Lug, stud and bare metal.
      case GROUND -> 3;
      case CONNECTOR, SPLICE -> 1;
      case SWITCH, RELAY -> element instanceof Element.Contact ? 1 : 0;
      case LAMP, DUAL_LAMP -> element.role().equals("common") ? 0 : 2;
      default -> 0;
    };
  }
}
