package loopwright.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import loopwright.model.Spread;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * What lies between two nodes and is proven by the drop between them, as one: a single piece, the
 * pieces of a way, or all returns that lie beside each other.
 *
 * @param from node away from the grounded post
 * @param to node towards it
 * @param elements numbers of the elements in between
 */
public record Side(int from, int to, Set<Integer> elements) {

  /** Copies the set. */
  public Side {
    elements = Set.copyOf(elements);
  }

  /** Current that enters at the far end, in amperes. */
  public double amps(OperatingPoint point) {
    double sum = 0;
    for (int e : elements) {
      if (point.variant().element(e).a() == from) {
        sum += point.amps(e);
      } else if (point.variant().element(e).b() == from) {
        sum -= point.amps(e);
      }
    }
    return Math.abs(sum);
  }

  /** Several in a row as one. */
  static Side inRow(List<Side> row) {
    Set<Integer> all = new TreeSet<>();
    row.forEach(s -> all.addAll(s.elements()));
    return new Side(row.get(0).from(), row.get(row.size() - 1).to(), all);
  }

  /**
   * Resistance between its ends in ohms. It grows with that of every element (Rayleigh's
   * monotonicity law), so that the limits follow from all elements at theirs.
   */
  public Spread ohms(Network network) {
    if (elements.size() == 1) {
      return own(network, elements.iterator().next());
    }
    return new Spread(
        ohms(network, e -> own(network, e).low()),
        ohms(network, e -> own(network, e).typical()),
        ohms(network, e -> own(network, e).high()));
  }

  private static Spread own(Network network, int element) {
    return network.elements().get(element).values()[0];
  }

  /**
   * Resistance between its ends for one choice of values, in ohms.
   *
   * @param each ohms of each element by its number
   */
  public double ohms(Network network, IntToDoubleFunction each) {
    List<Integer> nodes = new ArrayList<>(nodes(network, elements));
    nodes.remove(Integer.valueOf(to));
    int n = nodes.size();
    double[][] rows = new double[n][n];
    for (int e : elements) {
      Element element = network.elements().get(e);
      double siemens = 1 / each.applyAsDouble(e);
      int a = nodes.indexOf(element.a());
      int b = nodes.indexOf(element.b());
      if (a >= 0) {
        rows[a][a] += siemens;
      }
      if (b >= 0) {
        rows[b][b] += siemens;
      }
      if (a >= 0 && b >= 0) {
        rows[a][b] -= siemens;
        rows[b][a] -= siemens;
      }
    }
    // One ampere in at the far end; the order ends with that node, so that elimination alone does.
    int last = nodes.indexOf(from);
    for (int pivot = 0; pivot < n; pivot++) {
      if (pivot != last) {
        eliminate(rows, pivot, last);
      }
    }
    return 1 / rows[last][last];
  }

  /** Takes a node out of the equations of the nodes that come after it, and of the last one. */
  private static void eliminate(double[][] rows, int pivot, int last) {
    for (int r = 0; r < rows.length; r++) {
      if (r > pivot || r == last) {
        double factor = rows[r][pivot] / rows[pivot][pivot];
        for (int c = 0; c < rows.length; c++) {
          rows[r][c] -= factor * rows[pivot][c];
        }
      }
    }
  }

  /** Nodes in between. */
  Set<Integer> inner(Network network) {
    Set<Integer> inner = nodes(network, elements);
    inner.remove(from);
    inner.remove(to);
    return inner;
  }

  /** All nodes at which some elements end. */
  static Set<Integer> nodes(Network network, Set<Integer> elements) {
    Set<Integer> nodes = new TreeSet<>();
    for (int e : elements) {
      nodes.add(network.elements().get(e).a());
      nodes.add(network.elements().get(e).b());
    }
    return nodes;
  }
}
