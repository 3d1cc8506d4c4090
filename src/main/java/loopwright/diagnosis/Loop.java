package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.Gate;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * The loop of a load: the pieces its current passes from the feed post through the load to the
 * grounded post, found by following the greatest current both ways from the load.
 *
 * @param title id of the part whose current is followed
 * @param pieces the parts in order
 * @param nodes the nodes before, between and after the pieces; one more than pieces
 * @param branches loops of the coils whose contacts lie in this loop
 */
public record Loop(String title, List<Piece> pieces, List<Integer> nodes, List<Loop> branches) {

  /**
   * One part on the loop.
   *
   * @param part its id
   * @param elements numbers of the elements passed
   * @param in node where the current enters
   * @param out node where it leaves
   */
  public record Piece(String part, List<Integer> elements, int in, int out) {
    /** Copies the list. */
    public Piece {
      elements = List.copyOf(elements);
    }
  }

  /** Copies the lists. */
  public Loop {
    pieces = List.copyOf(pieces);
    nodes = List.copyOf(nodes);
    branches = List.copyOf(branches);
  }

  /** Least current in amperes that counts as flowing. */
  private static final double FLOWS = 1e-5;

  /**
   * Traces the loop of an element in a healthy vehicle's setting.
   *
   * @return empty if no current flows through the element there
   */
  public static Optional<Loop> trace(Workbench bench, Setting setting, int element) {
    OperatingPoint point = bench.point(bench.healthy(), setting);
    return trace(bench, point, element, new HashSet<>());
  }

  private static Optional<Loop> trace(
      Workbench bench, OperatingPoint point, int element, Set<Integer> traced) {
    if (!traced.add(element) || Math.abs(point.amps(element)) < FLOWS) {
      return Optional.empty();
    }
    Network network = bench.network();
    int feed = network.requireNode(bench.vehicle().feedPost());
    Element load = network.elements().get(element);
    // Current runs from high to low volts; on a positive-ground vehicle the feed post is low.
    boolean up = point.volts(feed) >= 0;
    boolean forward = (point.amps(element) > 0) == up;
    int start = forward ? load.a() : load.b();
    int end = forward ? load.b() : load.a();
    List<int[]> steps = new ArrayList<>();
    follow(network, point, start, feed, element, up, steps);
    Collections.reverse(steps);
    for (int[] s : steps) {
      int swap = s[1];
      s[1] = s[2];
      s[2] = swap;
    }
    steps.add(new int[] {element, start, end});
    List<int[]> down = new ArrayList<>();
    follow(network, point, end, Network.REFERENCE, element, !up, down);
    steps.addAll(down);
    List<Piece> pieces = new ArrayList<>();
    List<Integer> nodes = new ArrayList<>();
    for (int[] s : steps) {
      String part = network.elements().get(s[0]).part();
      int last = pieces.size() - 1;
      if (last >= 0 && pieces.get(last).part().equals(part)) {
        Piece before = pieces.get(last);
        List<Integer> elements = new ArrayList<>(before.elements());
        elements.add(s[0]);
        pieces.set(last, new Piece(part, elements, before.in(), s[2]));
        nodes.set(nodes.size() - 1, s[2]);
      } else {
        if (nodes.isEmpty()) {
          nodes.add(s[1]);
        }
        pieces.add(new Piece(part, List.of(s[0]), s[1], s[2]));
        nodes.add(s[2]);
      }
    }
    List<Loop> branches = new ArrayList<>();
    for (Piece piece : pieces) {
      for (int e : piece.elements()) {
        if (network.elements().get(e) instanceof Element.Contact c
            && c.gate() instanceof Gate.ByCoil) {
          network
              .element(piece.part(), "coil")
              .flatMap(coil -> trace(bench, point, coil, traced))
              .ifPresent(branches::add);
        }
      }
    }
    return Optional.of(new Loop(load.part(), pieces, nodes, branches));
  }

  /** Walks from a node towards a post, each time through the element with the greatest current. */
  private static void follow(
      Network network,
      OperatingPoint point,
      int from,
      int to,
      int not,
      boolean upwards,
      List<int[]> steps) {
    int node = from;
    Set<Integer> passed = new HashSet<>();
    passed.add(not);
    while (node != to && steps.size() < network.elements().size()) {
      int best = -1;
      int next = 0;
      double most = FLOWS / 10;
      for (int e = 0; e < network.elements().size(); e++) {
        Element element = network.elements().get(e);
        if (passed.contains(e) || element instanceof Element.Cell) {
          continue;
        }
        int other;
        double into;
        if (element.a() == node) {
          other = element.b();
          into = -point.amps(e);
        } else if (element.b() == node) {
          other = element.a();
          into = point.amps(e);
        } else {
          continue;
        }
        double along = upwards ? into : -into;
        if (along > most) {
          most = along;
          best = e;
          next = other;
        }
      }
      if (best < 0) {
        return;
      }
      passed.add(best);
      steps.add(new int[] {best, node, next});
      node = next;
    }
  }

  /** This loop and all its branches. */
  public List<Loop> all() {
    List<Loop> all = new ArrayList<>();
    all.add(this);
    for (Loop branch : branches) {
      all.addAll(branch.all());
    }
    return all;
  }

  /** Whether the part lies on this loop or a branch. */
  public boolean holds(String part) {
    return all().stream().anyMatch(l -> l.pieces().stream().anyMatch(p -> p.part().equals(part)));
  }
}
