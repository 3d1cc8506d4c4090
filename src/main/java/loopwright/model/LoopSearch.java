package loopwright.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Asks whether current can flow through a load at all: whether two ways that share no node lead
 * from its two ends to the two battery posts. Two such ways exist exactly if two units can flow
 * where each node passes one (Menger 1927; augmenting paths by Ford and Fulkerson 1956), so a way
 * back through the same bus bar does not count as a return.
 *
 * <p>Resistances do not matter here: everything that conducts at all conducts. A relay's contact
 * counts as closed if its coil can get current in the setting, and then its rest contact counts as
 * closed as well.
 */
final class LoopSearch {

  /** What is missing of a load's loop. */
  enum Missing {
    FEED("no feed"),
    RETURN("no return"),
    BOTH("no feed and no return"),
    /** Both posts are reached, but only through one shared node. */
    APART("no loop"),
    /** Only against a diode. */
    BLOCKED("blocked by a diode");

    private final String word;

    Missing(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  private enum Sort {
    /** Wires, contacts and joints. */
    PLAIN,
    /** Loads, coils and senders: they conduct, but are no feed. */
    LOAD,
    /** From {@code a} to {@code b} only. */
    ONE_WAY,
    /** An LED: a load, from {@code a} to {@code b} only. */
    ONE_WAY_LOAD
  }

  private record Edge(int a, int b, Sort sort, String part, String function) {
    boolean load() {
      return sort == Sort.LOAD || sort == Sort.ONE_WAY_LOAD;
    }

    boolean oneWay() {
      return sort == Sort.ONE_WAY || sort == Sort.ONE_WAY_LOAD;
    }

    int other(int node) {
      return node == a ? b : a;
    }
  }

  private record Coil(String part, int from, int to) {}

  private static final int NONE = -1;

  private final Vehicle vehicle;
  private final Map<TerminalRef, TerminalRef> meant;
  private final Map<TerminalRef, Integer> index = new HashMap<>();
  private final int[] root;
  private final Map<String, Integer> centres = new HashMap<>();
  private final Map<Map<String, String>, List<List<Edge>>> networks = new HashMap<>();
  private int nodes;

  LoopSearch(Vehicle vehicle, Map<String, Part> parts, Map<TerminalRef, TerminalRef> meant) {
    this.vehicle = vehicle;
    this.meant = meant;
    for (Part part : parts.values()) {
      for (String terminal : part.spec().terminals()) {
        index.put(new TerminalRef(part.id(), terminal), nodes++);
      }
      if (part.spec() instanceof PartSpec.Splice) {
        centres.put(part.id(), nodes++);
      }
    }
    root = new int[nodes];
    Arrays.setAll(root, i -> i);
    for (List<TerminalRef> join : vehicle.joins()) {
      int first = NONE;
      for (TerminalRef ref : join) {
        int at = indexOf(ref);
        if (at != NONE && first == NONE) {
          first = at;
        } else if (at != NONE) {
          root[find(at)] = find(first);
        }
      }
    }
  }

  private int indexOf(TerminalRef ref) {
    Integer at = index.get(meant.getOrDefault(ref, ref));
    return at == null ? NONE : at;
  }

  private int find(int at) {
    int r = at;
    while (root[r] != r) {
      root[r] = root[root[r]];
      r = root[r];
    }
    return r;
  }

  private int node(TerminalRef ref) {
    int at = indexOf(ref);
    return at == NONE ? NONE : find(at);
  }

  private int node(String part, String terminal) {
    return node(new TerminalRef(part, terminal));
  }

  /** Whether joins make the two terminals one node. */
  boolean oneNode(TerminalRef a, TerminalRef b) {
    int at = node(a);
    return at != NONE && at == node(b);
  }

  /**
   * What is missing of the loop of a load of a circuit; empty if nothing is, or if there is no such
   * load.
   */
  Optional<Missing> missing(Circuit circuit, LoadRef load) {
    List<List<Edge>> network = networks.computeIfAbsent(circuit.on(), this::network);
    Optional<Edge> found =
        network.stream()
            .flatMap(List::stream)
            .filter(
                e ->
                    e.load()
                        && e.part().equals(load.part())
                        && e.function().equals(load.filament().orElse("")))
            .findFirst();
    int feed = node(vehicle.feedPost());
    int ground = node(vehicle.groundedPost());
    if (found.isEmpty() || feed == NONE || ground == NONE) {
      return Optional.empty();
    }
    Edge edge = found.get();
    if (!twoWays(network, edge, feed, ground)) {
      return Optional.of(side(network, edge, feed, ground));
    }
    int positive = vehicle.grounded() == GroundedPole.NEGATIVE ? feed : ground;
    int negative = positive == feed ? ground : feed;
    boolean[] down = reach(network, positive, edge, Direction.WITH, true);
    boolean[] up = reach(network, negative, edge, Direction.AGAINST, true);
    boolean flows = down[edge.a()] && up[edge.b()];
    boolean backwards = !edge.oneWay() && down[edge.b()] && up[edge.a()];
    return flows || backwards ? Optional.empty() : Optional.of(Missing.BLOCKED);
  }

  private static Missing side(List<List<Edge>> network, Edge edge, int feed, int ground) {
    boolean[] fed = reach(network, feed, edge, Direction.EITHER, false);
    boolean[] returned = reach(network, ground, edge, Direction.EITHER, false);
    boolean hasFeed = fed[edge.a()] || fed[edge.b()];
    boolean hasReturn = returned[edge.a()] || returned[edge.b()];
    if (hasFeed && hasReturn) {
      return Missing.APART;
    }
    if (hasFeed) {
      return Missing.RETURN;
    }
    return hasReturn ? Missing.FEED : Missing.BOTH;
  }

  // The network of a setting.

  private List<List<Edge>> network(Map<String, String> on) {
    List<List<Edge>> network = new ArrayList<>();
    for (int i = 0; i < nodes; i++) {
      network.add(new ArrayList<>(2));
    }
    Setting setting = Setting.of(on);
    List<Coil> waiting = new ArrayList<>();
    Part supply = vehicle.battery();
    for (Part part : vehicle.parts()) {
      if (part != supply) {
        edges(network, part, setting, waiting);
      }
    }
    pullIn(network, waiting);
    return network;
  }

  /** Closes the contacts of every relay whose coil can get current, until no more can. */
  private void pullIn(List<List<Edge>> network, List<Coil> waiting) {
    int feed = node(vehicle.feedPost());
    int ground = node(vehicle.groundedPost());
    boolean more = true;
    while (more) {
      List<Coil> closing = new ArrayList<>();
      for (Coil coil : waiting) {
        Edge edge = new Edge(coil.from(), coil.to(), Sort.LOAD, coil.part(), "coil");
        if (coil.from() != NONE && coil.to() != NONE && twoWays(network, edge, feed, ground)) {
          closing.add(coil);
        }
      }
      for (Coil coil : closing) {
        edge(network, coil.part(), "30", "87", Sort.PLAIN, "");
      }
      waiting.removeAll(closing);
      more = !closing.isEmpty() && !waiting.isEmpty();
    }
  }

  private void edges(List<List<Edge>> network, Part part, Setting setting, List<Coil> coils) {
    String id = part.id();
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Wire w) {
      link(network, new Edge(node(w.from()), node(w.to()), Sort.PLAIN, id, ""));
    } else if (spec instanceof PartSpec.Battery) {
      edge(network, id, "pos", "neg", Sort.PLAIN, "");
    } else if (spec instanceof PartSpec.Fuse) {
      edge(network, id, "feed", "load", Sort.PLAIN, "");
    } else if (spec instanceof PartSpec.Switch s) {
      String position = setting.positions().getOrDefault(id, s.rest());
      for (PartSpec.SwitchContact contact : s.contacts()) {
        if (contact.closedIn().contains(position)) {
          edge(network, id, contact.a(), contact.b(), Sort.PLAIN, "");
        }
      }
    } else if (spec instanceof PartSpec.Relay r) {
      edge(network, id, "86", "85", Sort.LOAD, "coil");
      if (r.changeover()) {
        edge(network, id, "30", "87a", Sort.PLAIN, "");
      }
      coils.add(new Coil(id, node(id, "86"), node(id, "85")));
    } else if (spec instanceof PartSpec.DualLamp d) {
      edge(network, id, d.first(), "common", Sort.LOAD, d.first());
      edge(network, id, d.second(), "common", Sort.LOAD, d.second());
    } else if (spec instanceof PartSpec.Led) {
      edge(network, id, "in", "out", Sort.ONE_WAY_LOAD, "");
    } else if (spec instanceof PartSpec.Diode) {
      edge(network, id, "anode", "cathode", Sort.ONE_WAY, "");
    } else if (spec instanceof PartSpec.Driver) {
      if (setting.positions().getOrDefault(id, "off").equals("on")) {
        edge(network, id, "out", "ground", Sort.PLAIN, "");
      }
    } else if (spec instanceof PartSpec.Connector c) {
      for (String cavity : c.cavities()) {
        edge(network, id, cavity + "a", cavity + "b", Sort.PLAIN, "");
      }
    } else if (spec instanceof PartSpec.Splice s && centres.containsKey(id)) {
      int centre = find(centres.get(id));
      for (String leg : s.legs()) {
        link(network, new Edge(centre, node(id, leg), Sort.PLAIN, id, ""));
      }
    } else if (spec instanceof PartSpec.Ground) {
      edge(network, id, "lug", "metal", Sort.PLAIN, "");
    } else if (part.kind().isLoad() || spec instanceof PartSpec.Sender) {
      edge(network, id, "in", "out", Sort.LOAD, "");
    }
  }

  private void edge(
      List<List<Edge>> network, String part, String a, String b, Sort sort, String function) {
    link(network, new Edge(node(part, a), node(part, b), sort, part, function));
  }

  private static void link(List<List<Edge>> network, Edge edge) {
    if (edge.a() == NONE || edge.b() == NONE) {
      return;
    }
    network.get(edge.a()).add(edge);
    if (edge.a() != edge.b()) {
      network.get(edge.b()).add(edge);
    }
  }

  // Reaching.

  private enum Direction {
    WITH,
    AGAINST,
    EITHER
  }

  /** Nodes reached from one, not through the load in question. */
  private static boolean[] reach(
      List<List<Edge>> network, int from, Edge without, Direction direction, boolean throughLoads) {
    boolean[] reached = new boolean[network.size()];
    ArrayDeque<Integer> open = new ArrayDeque<>();
    reached[from] = true;
    open.add(from);
    while (!open.isEmpty()) {
      int at = open.remove();
      for (Edge edge : network.get(at)) {
        int next = edge.other(at);
        if (reached[next] || edge.equals(without) || (edge.load() && !throughLoads)) {
          continue;
        }
        boolean passes =
            !edge.oneWay()
                || direction == Direction.EITHER
                || (direction == Direction.WITH ? at == edge.a() : at == edge.b());
        if (passes) {
          reached[next] = true;
          open.add(next);
        }
      }
    }
    return reached;
  }

  /** Whether two ways that share no node lead from the load's ends to the two posts. */
  private static boolean twoWays(List<List<Edge>> network, Edge load, int feed, int ground) {
    if (load.a() == load.b() || feed == ground || feed == NONE || ground == NONE) {
      return false;
    }
    int[] next = new int[network.size()];
    int[] before = new int[network.size()];
    Arrays.fill(next, NONE);
    Arrays.fill(before, NONE);
    boolean[] onWay = new boolean[network.size()];
    boolean one = augment(network, load, feed, ground, next, before, onWay);
    return one && augment(network, load, feed, ground, next, before, onWay);
  }

  /**
   * Finds one more way beside the one noted, if any, turning that one aside where needed. Each node
   * is split into an arriving side (2n) and a leaving side (2n + 1), so that it passes one unit.
   */
  private static boolean augment(
      List<List<Edge>> network,
      Edge load,
      int feed,
      int ground,
      int[] next,
      int[] before,
      boolean[] onWay) {
    Map<Integer, Integer> from = new HashMap<>();
    ArrayDeque<Integer> open = new ArrayDeque<>();
    for (int start : List.of(load.a(), load.b())) {
      // A node whose own start is taken is one that a way begins at.
      if (!(onWay[start] && before[start] == NONE)) {
        from.put(2 * start, NONE);
        open.add(2 * start);
      }
    }
    while (!open.isEmpty()) {
      int state = open.remove();
      int at = state / 2;
      boolean leaving = state % 2 == 1;
      if (leaving && (at == feed || at == ground) && !(onWay[at] && next[at] == NONE)) {
        note(state, from, next, before, onWay);
        return true;
      }
      if (!leaving) {
        if (!onWay[at]) {
          visit(2 * at + 1, state, from, open);
        } else if (before[at] != NONE) {
          visit(2 * before[at] + 1, state, from, open);
        }
        continue;
      }
      if (onWay[at]) {
        visit(2 * at, state, from, open);
      }
      for (Edge edge : network.get(at)) {
        int to = edge.other(at);
        if (to != at && next[at] != to && !edge.equals(load)) {
          visit(2 * to, state, from, open);
        }
      }
    }
    return false;
  }

  private static void visit(
      int state, int comingFrom, Map<Integer, Integer> from, ArrayDeque<Integer> open) {
    if (from.putIfAbsent(state, comingFrom) == null) {
      open.add(state);
    }
  }

  /** Notes the first way; a second one only has to exist. */
  private static void note(
      int end, Map<Integer, Integer> from, int[] next, int[] before, boolean[] onWay) {
    int state = end;
    while (state != NONE) {
      int previous = from.get(state);
      int at = state / 2;
      onWay[at] = true;
      if (previous != NONE && previous / 2 != at) {
        next[previous / 2] = at;
        before[at] = previous / 2;
      }
      state = previous;
    }
  }
}
