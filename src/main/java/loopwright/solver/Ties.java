package loopwright.solver;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The way of least resistance from each node to the reference in one known state. In another state
 * whose elements still conduct along that way, it bounds what a stray current into the node can do:
 * no node's volts change by more than the current times the resistance of the way.
 */
final class Ties {

  /** Resistance of an element from which it ties nothing, in ohms. */
  private static final double LOOSE = 1e4;

  private final OperatingPoint known;
  // The element by which each node hangs on the next one towards the reference; -1 for none.
  private final int[] by;

  Ties(OperatingPoint known, int nodes) {
    this.known = known;
    this.by = new int[nodes];
    Arrays.fill(by, -1);
    Variant variant = known.variant();
    List<List<Integer>> at = new ArrayList<>();
    for (int i = 0; i <= nodes; i++) {
      at.add(new ArrayList<>());
    }
    for (int e = 0; e < variant.size(); e++) {
      if (known.siemens(e) > 1 / LOOSE) {
        at.get(variant.element(e).a() + 1).add(e);
        at.get(variant.element(e).b() + 1).add(e);
      }
    }
    double[] ohms = new double[nodes];
    Arrays.fill(ohms, Double.POSITIVE_INFINITY);
    record Reached(int node, double ohms) {}
    PriorityQueue<Reached> open = new PriorityQueue<>(Comparator.comparingDouble(Reached::ohms));
    open.add(new Reached(Network.REFERENCE, 0));
    while (!open.isEmpty()) {
      Reached from = open.remove();
      if (from.node >= 0 && from.ohms > ohms[from.node]) {
        continue;
      }
      for (int e : at.get(from.node + 1)) {
        int next = other(variant.element(e), from.node);
        double further = from.ohms + 1 / known.siemens(e);
        if (next >= 0 && further < ohms[next]) {
          ohms[next] = further;
          by[next] = e;
          open.add(new Reached(next, further));
        }
      }
    }
  }

  private static int other(Element element, int node) {
    return element.a() == node ? element.b() : element.a();
  }

  /** Ohms of the way from a node to the reference in a state; infinite where it is broken. */
  double ohms(int node, Variant variant, double[] siemens) {
    double ohms = 0;
    for (int i = node; i >= 0; i = other(variant.element(by[i]), i)) {
      if (by[i] < 0 || siemens[by[i]] <= 1 / LOOSE) {
        return Double.POSITIVE_INFINITY;
      }
      ohms += 1 / siemens[by[i]];
    }
    return ohms;
  }

  /** Volts of a node in the known state. */
  double known(int node) {
    return known.volts(node);
  }

  /**
   * Volts with those filled in that aren't known: as far from those of the next node towards the
   * reference as in the known state.
   */
  double[] filled(double[] volts) {
    double[] filled = volts;
    Deque<Integer> way = new ArrayDeque<>();
    for (int node = 0; node < volts.length; node++) {
      int i = node;
      while (i >= 0 && Double.isNaN(filled[i])) {
        way.push(i);
        i = by[i] < 0 ? Network.REFERENCE : other(known.variant().element(by[i]), i);
      }
      if (!way.isEmpty() && filled == volts) {
        filled = volts.clone();
      }
      while (!way.isEmpty()) {
        int next = way.pop();
        filled[next] = known.volts(next) + (i < 0 ? 0 : filled[i] - known.volts(i));
        i = next;
      }
    }
    return filled;
  }
}
