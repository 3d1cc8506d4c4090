package loopwright.paper;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loopwright.model.Part;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * The way that most of an element's current takes: from the battery's feed post through the element
 * to its grounded post.
 *
 * @param elements numbers of the elements passed, in that order
 * @param at how many of them come before the element itself
 */
public record CurrentWay(List<Integer> elements, int at) {

  static CurrentWay through(Plan plan, OperatingPoint point, int element) {
    Element e = point.variant().element(element);
    boolean forward = point.amps(element) > 0;
    List<Integer> from = walk(plan, point, element, forward ? e.a() : e.b(), -1);
    List<Integer> to = walk(plan, point, element, forward ? e.b() : e.a(), 1);
    // Current runs from plus to minus: with plus grounded it begins at the grounded post.
    boolean fromFeed = point.volts(plan.feedNode()) > 0;
    List<Integer> before = fromFeed ? from : to;
    List<Integer> all = new ArrayList<>(before);
    Collections.reverse(all);
    all.add(element);
    all.addAll(fromFeed ? to : from);
    return new CurrentWay(all, before.size());
  }

  /** From a node on the feed side of a load back to the feed post, against the current. */
  static List<Integer> toFeed(Plan plan, OperatingPoint point, int from) {
    return walk(plan, point, -1, from, point.volts(plan.feedNode()) > 0 ? -1 : 1);
  }

  /** From a node on the ground side of a load to the grounded post. */
  public static List<Integer> toGround(Plan plan, OperatingPoint point, int from) {
    return walk(plan, point, -1, from, point.volts(plan.feedNode()) > 0 ? 1 : -1);
  }

  /** Follows the most current from a node on, with it (1) or against it (-1), to a post. */
  private static List<Integer> walk(
      Plan plan, OperatingPoint point, int start, int from, int sense) {
    List<Integer> way = new ArrayList<>();
    Set<Integer> met = new HashSet<>();
    int node = from;
    int last = start;
    while (node != Network.REFERENCE && node != plan.feedNode() && met.add(node)) {
      int best = -1;
      double most = 0;
      for (int e : plan.elementsAt(node)) {
        Element element = point.variant().element(e);
        double leaves = element.a() == node ? point.amps(e) : -point.amps(e);
        if (e != last && !(element instanceof Element.Cell) && Plan.more(sense * leaves, most)) {
          best = e;
          most = sense * leaves;
        }
      }
      if (best < 0) {
        return way;
      }
      way.add(best);
      Element taken = point.variant().element(best);
      node = taken.a() == node ? taken.b() : taken.a();
      last = best;
    }
    return way;
  }

  /** The other loads and coils that the current passes. */
  List<Integer> through(Plan plan) {
    return elements.stream()
        .filter(
            e -> !e.equals(elements.get(at)) && plan.takesVolts(plan.network().elements().get(e)))
        .toList();
  }

  /** What is passed, without wires and metal; a filament as {@code part:filament}. */
  List<String> parts(Plan plan) {
    List<String> names = new ArrayList<>();
    for (int e : elements) {
      Element element = plan.network().elements().get(e);
      Part part = plan.part(element);
      boolean conductor =
          switch (part.kind()) {
            case WIRE, STRAP, SPLICE, BODY -> true;
            default -> element.role().equals("common");
          };
      String name = Noticed.name(element);
      if (!conductor && (names.isEmpty() || !names.get(names.size() - 1).equals(name))) {
        names.add(name);
      }
    }
    return names;
  }
}
