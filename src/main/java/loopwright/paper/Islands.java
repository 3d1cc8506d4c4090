package loopwright.paper;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** Which losses can't wake anything, by the wiring alone, so that they needn't be solved. */
final class Islands {

  /** Nodes beyond which an island is not worth searching: it is solved instead. */
  private static final int MOST_NODES = 60;

  private final Plan plan;
  private final Set<Integer> ground = new HashSet<>();
  private final Set<Integer> trunk = new HashSet<>();

  Islands(Plan plan) {
    this.plan = plan;
    ground.add(Network.REFERENCE);
    for (Part part : plan.vehicle().parts()) {
      if (part.kind() == PartKind.BODY) {
        ground.add(plan.node(part.id(), "metal"));
      }
    }
    trunk(Network.REFERENCE);
    trunk(plan.feedNode());
  }

  /** The elements from a post on that all current passes. */
  private void trunk(int post) {
    int node = post;
    int last = plan.network().element(plan.vehicle().battery().id(), "cell").orElseThrow();
    while (plan.elementsAt(node).size() == 2) {
      int before = last;
      last = plan.elementsAt(node).stream().filter(e -> e != before).findFirst().orElse(before);
      if (last == before || !trunk.add(last)) {
        return;
      }
      Element element = plan.network().elements().get(last);
      node = element.a() == node ? element.b() : element.a();
    }
  }

  /**
   * Whether all is dead without this element; or it is a fuse, and what hangs on one end of it is
   * then left with ground alone and holds no relay that was pulled in.
   */
  boolean harmless(OperatingPoint point, int element) {
    Element e = plan.network().elements().get(element);
    return trunk.contains(element)
        || e instanceof Element.Link
            && (leftDead(point, element, e.a()) || leftDead(point, element, e.b()));
  }

  private boolean leftDead(OperatingPoint point, int without, int from) {
    Set<Integer> met = new HashSet<>(Set.of(from));
    Deque<Integer> open = new ArrayDeque<>(Set.of(from));
    while (!open.isEmpty()) {
      int node = open.remove();
      if (node == plan.feedNode() || met.size() > MOST_NODES) {
        return false;
      }
      for (int e : plan.elementsAt(node)) {
        if (e == without || point.siemens(e) == 0) {
          continue;
        }
        if (point.pulledIn(e)) {
          return false;
        }
        Element element = plan.network().elements().get(e);
        int next = element.a() == node ? element.b() : element.a();
        if (!ground.contains(next) && met.add(next)) {
          open.add(next);
        }
      }
    }
    return true;
  }
}
