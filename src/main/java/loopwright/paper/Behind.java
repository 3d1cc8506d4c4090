package loopwright.paper;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.solver.Element;
import loopwright.solver.Network;

/**
 * What a fuse protects: everything that is reached from its load side through wires, joints and
 * contacts, whichever way they may stand, up to the next fuse, a load, a coil or ground.
 *
 * @param wires ids of the wires
 * @param ends by node at which it ends: id of the part it ends at
 */
record Behind(Set<String> wires, Map<Integer, String> ends) {

  static Behind of(Plan plan, String fuse) {
    Network network = plan.network();
    int link = network.element(fuse, "link").orElseThrow();
    Element start = network.elements().get(link);
    int feed = plan.node(fuse, "feed");
    int load = start.a() == feed ? start.b() : start.a();
    Set<String> wires = new LinkedHashSet<>();
    Map<Integer, String> ends = new LinkedHashMap<>();
    Set<Integer> met = new LinkedHashSet<>(List.of(load, feed, Network.REFERENCE));
    Deque<Integer> open = new ArrayDeque<>(Set.of(load));
    while (!open.isEmpty()) {
      int node = open.remove();
      for (int number : plan.elementsAt(node)) {
        Element e = network.elements().get(number);
        if (e.part().equals(fuse)) {
          continue;
        }
        Part part = plan.part(e);
        if (stops(plan, part, e)) {
          ends.putIfAbsent(node, part.id());
          continue;
        }
        if (part.spec() instanceof PartSpec.Wire) {
          wires.add(part.id());
        }
        int next = e.a() == node ? e.b() : e.a();
        if (met.add(next)) {
          open.add(next);
        }
      }
    }
    return new Behind(wires, ends);
  }

  /** Whether a short behind this element is no longer one of the same feed. */
  private static boolean stops(Plan plan, Part part, Element e) {
    return plan.takesVolts(e)
        || part.kind() == PartKind.FUSE
        || part.kind() == PartKind.BATTERY
        || part.kind() == PartKind.GROUND
        || part.kind() == PartKind.BODY
        || part.kind() == PartKind.DIODE;
  }
}
