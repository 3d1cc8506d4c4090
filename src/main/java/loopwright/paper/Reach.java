package loopwright.paper;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import loopwright.model.PartKind;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * What hangs on the battery's posts through wires, joints, fuses, closed contacts and diodes that
 * let the current through, with contacts as they stand in a state.
 */
final class Reach {
  private final Plan plan;
  private final OperatingPoint point;
  private final Set<String> open;

  /**
   * Looks at a state.
   *
   * @param open parts that count as open
   */
  Reach(Plan plan, OperatingPoint point, Set<String> open) {
    this.plan = plan;
    this.point = point;
    this.open = open;
  }

  /** Nodes that hang on the side of a fuse which is farther from the battery. */
  static Set<Integer> behind(Plan plan, OperatingPoint point, Element fuse) {
    return new Reach(plan, point, Set.of(fuse.part()))
        .from(plan.node(fuse.part(), "load"), feedIsPositive(plan, point));
  }

  /** Nodes that hang on the feed post. */
  Set<Integer> fed() {
    return from(plan.feedNode(), feedIsPositive(plan, point));
  }

  /** Nodes that hang on the grounded post. */
  Set<Integer> grounded() {
    return from(Network.REFERENCE, !feedIsPositive(plan, point));
  }

  private static boolean feedIsPositive(Plan plan, OperatingPoint point) {
    return point.volts(plan.feedNode()) > 0;
  }

  /** Nodes reached; current runs away from a positive post and towards a negative one. */
  private Set<Integer> from(int post, boolean away) {
    Set<Integer> met = new HashSet<>(Set.of(post));
    Deque<Integer> left = new ArrayDeque<>(met);
    while (!left.isEmpty()) {
      int node = left.remove();
      for (int e : plan.elementsAt(node)) {
        Element element = plan.network().elements().get(e);
        int other = element.a() == node ? element.b() : element.a();
        if (conducts(e, element, node, away) && met.add(other)) {
          left.add(other);
        }
      }
    }
    return met;
  }

  private boolean conducts(int e, Element element, int from, boolean away) {
    PartKind kind = plan.part(element).kind();
    if (kind == PartKind.DIODE) {
      return (element.a() == from) == away;
    }
    return point.siemens(e) > 0
        && !plan.takesVolts(element)
        && kind != PartKind.BATTERY
        && kind != PartKind.SENDER
        && !open.contains(element.part());
  }
}
