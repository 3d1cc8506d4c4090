package loopwright.ground;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.model.PartKind;
import loopwright.paper.CurrentWay;
import loopwright.paper.Plan;
import loopwright.solver.Blocks;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** The metal that joins nodes in one state: which returns there are and which lie side by side. */
final class Returns {
  private final Plan plan;
  private final OperatingPoint point;
  private final List<Integer> conductors = new ArrayList<>();
  private final Map<Integer, Integer> blockOf = new HashMap<>();
  private final Map<Integer, List<Integer>> at = new HashMap<>();
  private final Set<Integer> grounded;
  private final Map<Integer, Optional<Side>> sides = new HashMap<>();

  Returns(Plan plan, OperatingPoint point) {
    this.plan = plan;
    this.point = point;
    List<Element> elements = plan.network().elements();
    for (int e = 0; e < elements.size(); e++) {
      if (conducts(elements.get(e)) && point.siemens(e) > 0) {
        conductors.add(e);
        at.computeIfAbsent(elements.get(e).a(), n -> new ArrayList<>()).add(e);
        at.computeIfAbsent(elements.get(e).b(), n -> new ArrayList<>()).add(e);
      }
    }
    int nodes = plan.network().nodes();
    int[] a = new int[conductors.size()];
    int[] b = new int[conductors.size()];
    for (int k = 0; k < a.length; k++) {
      Element element = elements.get(conductors.get(k));
      a[k] = element.a() == Network.REFERENCE ? nodes : element.a();
      b[k] = element.b() == Network.REFERENCE ? nodes : element.b();
    }
    int[] block = Blocks.of(nodes + 1, a, b);
    for (int k = 0; k < a.length; k++) {
      blockOf.put(conductors.get(k), block[k]);
    }
    grounded = joined(Network.REFERENCE, Set.of());
  }

  private boolean conducts(Element element) {
    PartKind kind = plan.vehicle().requirePart(element.part()).kind();
    return switch (kind) {
      case WIRE, STRAP, CONNECTOR, SPLICE, GROUND -> true;
      default -> element instanceof Element.Contact || element instanceof Element.Link;
    };
  }

  /** Nodes that metal joins with the battery's grounded post. */
  Set<Integer> grounded() {
    return grounded;
  }

  private Set<Integer> joined(int from, Set<Integer> without) {
    Set<Integer> met = new HashSet<>(Set.of(from));
    Deque<Integer> open = new ArrayDeque<>(met);
    while (!open.isEmpty()) {
      int node = open.poll();
      for (int e : at.getOrDefault(node, List.of())) {
        Element element = plan.network().elements().get(e);
        int other = element.a() == node ? element.b() : element.a();
        if (!without.contains(e) && met.add(other)) {
          open.add(other);
        }
      }
    }
    return met;
  }

  /**
   * What the drop across a piece proves: the piece, or all returns beside each other of which it is
   * one, from where most current enters them to where it leaves. Empty if it leads to no post.
   */
  Optional<Side> of(int piece) {
    return sides.computeIfAbsent(piece, this::side);
  }

  private Optional<Side> side(int piece) {
    Set<Integer> beside = beside(piece);
    Set<Integer> nodes = Side.nodes(plan.network(), beside);
    Set<Integer> behind = joined(Network.REFERENCE, beside);
    Optional<Integer> to = nodes.stream().filter(behind::contains).findFirst();
    if (to.isEmpty()) {
      return Optional.empty();
    }
    int from = to.get();
    double most = -1;
    for (int node : nodes) {
      double enters = new Side(node, to.get(), beside).amps(point);
      if (node != to.get() && enters > most) {
        most = enters;
        from = node;
      }
    }
    return Optional.of(new Side(from, to.get(), beside));
  }

  private Set<Integer> beside(int piece) {
    Set<Integer> beside = new TreeSet<>();
    Integer block = blockOf.get(piece);
    for (int e : conductors) {
      if (block != null && block.equals(blockOf.get(e))) {
        beside.add(e);
      }
    }
    return beside;
  }

  /** The pieces that most of a current passes from a node to the post; empty if it passes more. */
  List<Integer> way(int from) {
    List<Integer> way = CurrentWay.toGround(plan, point, from);
    boolean metal = way.stream().allMatch(blockOf::containsKey);
    return metal && !way.isEmpty() && endsAtPost(way) ? way : List.of();
  }

  private boolean endsAtPost(List<Integer> way) {
    Element last = plan.network().elements().get(way.get(way.size() - 1));
    return last.a() == Network.REFERENCE || last.b() == Network.REFERENCE;
  }

  /**
   * The sides in a row that a way consists of, each with all that lies beside it, from where the
   * way comes to it.
   */
  List<Side> inRow(int from, List<Integer> way) {
    List<Side> row = new ArrayList<>();
    int node = from;
    for (int e : way) {
      if (row.isEmpty() || !row.get(row.size() - 1).elements().contains(e)) {
        Optional<Side> next = of(e);
        if (next.isEmpty()) {
          return List.of();
        }
        row.add(new Side(node, next.get().to(), next.get().elements()));
        node = next.get().to();
      }
    }
    return row;
  }
}
