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
  private final Set<String> past;
  private final Set<Integer> fed;
  private final Set<Integer> returned;

  /**
   * Looks from both posts.
   *
   * @param past parts that count as open
   */
  Reach(Plan plan, OperatingPoint point, Set<String> past) {
    this.plan = plan;
    this.point = point;
    this.past = past;
    boolean feedIsPositive = point.volts(plan.feedNode()) > 0;
    this.fed = from(plan.feedNode(), feedIsPositive);
    this.returned = from(Network.REFERENCE, !feedIsPositive);
  }

  /** Nodes that hang on the side of a fuse which is farther from the battery. */
  static Set<Integer> behind(Plan plan, OperatingPoint point, Element fuse) {
    Reach reach = new Reach(plan, point, Set.of(fuse.part()));
    boolean feedIsPositive = point.volts(plan.feedNode()) > 0;
    int load = plan.node(fuse.part(), "load");
    return reach.from(load, feedIsPositive);
  }

  /** Whether an end of a load hangs on the feed post. */
  boolean fed(Element load) {
    return fed.contains(load.a()) || fed.contains(load.b());
  }

  /** Whether an end of a load hangs on the grounded post. */
  boolean returned(Element load) {
    return returned.contains(load.a()) || returned.contains(load.b());
  }

  /** Nodes reached; current runs away from a positive post and towards a negative one. */
  private Set<Integer> from(int post, boolean away) {
    Set<Integer> met = new HashSet<>(Set.of(post));
    Deque<Integer> open = new ArrayDeque<>(met);
    while (!open.isEmpty()) {
      int node = open.remove();
      for (int e : plan.elementsAt(node)) {
        Element element = plan.network().elements().get(e);
        int other = element.a() == node ? element.b() : element.a();
        if (conducts(e, element, node, away) && met.add(other)) {
          open.add(other);
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
    boolean passes =
        !kind.isLoad()
            && kind != PartKind.BATTERY
            && kind != PartKind.SENDER
            && !past.contains(element.part())
            && !(element instanceof Element.Coil)
            && !element.role().equals("suppressor");
    return passes && point.siemens(e) > 0;
  }
}
