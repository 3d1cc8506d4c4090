package loopwright.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;

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
    FEED("feed"),
    RETURN("return"),
    BOTH("both"),
    /** Both posts are reached, but only through one shared node. */
    APART("apart"),
    /** Only against a diode. */
    BLOCKED("blocked");

    private final String word;

    Missing(String word) {
      this.word = word;
    }

    /** What its texts are called. */
    String word() {
      return word;
    }

    /** In words. */
    String said() {
      return Words.say("check.missing." + word);
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

  /**
   * An edge that is there while its control stands in one of some positions; always if it has none.
   */
  private record Gated(Edge edge, String control, Set<String> closedIn) {}

  /** A relay's coil and the contact it closes. */
  private record Coil(Edge coil, Edge contact) {}

  private static final int NONE = -1;

  private final Vehicle vehicle;
  private final Map<TerminalRef, TerminalRef> meant;
  private final Map<TerminalRef, Integer> index = new HashMap<>();
  private final Map<Integer, Set<TerminalRef>> terminals = new HashMap<>();
  private final int[] root;
  private final Map<String, Integer> centres = new HashMap<>();
  private final Map<String, Edge> loads = new HashMap<>();
  private final Map<String, String> rest = new HashMap<>();
  private final List<Gated> gates = new ArrayList<>();
  private final List<Coil> coils = new ArrayList<>();
  private final int feed;
  private final int ground;
  private final int[] cameFrom;
  private final int[] seen;
  private final List<List<Edge>> always = new ArrayList<>();
  private Map<String, String> lastOn = Map.of();
  private List<List<Edge>> lastNetwork = List.of();
  private boolean oneWays;
  private int search;
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
    always.addAll(Collections.nCopies(nodes, List.of()));
    cameFrom = new int[2 * nodes];
    seen = new int[2 * nodes];
    Part supply = vehicle.battery();
    feed = node(vehicle.feedPost());
    ground = node(vehicle.groundedPost());
    for (Part part : vehicle.parts()) {
      List<String> positions = part.spec().positions();
      if (!positions.isEmpty()) {
        rest.putIfAbsent(part.id(), positions.get(0));
      }
      if (!part.equals(supply)) {
        collect(part);
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
    Optional<Edge> found = Optional.ofNullable(loads.get(load.toString()));
    if (found.isEmpty() || feed == NONE || ground == NONE) {
      return Optional.empty();
    }
    Edge edge = found.get();
    List<List<Edge>> network = network(circuit.on());
    if (!twoWays(network, edge)) {
      return Optional.of(side(network, edge));
    }
    if (!oneWays) {
      return Optional.empty();
    }
    int positive = vehicle.grounded() == GroundedPole.NEGATIVE ? feed : ground;
    int negative = positive == feed ? ground : feed;
    boolean[] down = reach(network, positive, edge, Direction.WITH, true);
    boolean[] up = reach(network, negative, edge, Direction.AGAINST, true);
    boolean flows = down[edge.a()] && up[edge.b()];
    boolean backwards = !edge.oneWay() && down[edge.b()] && up[edge.a()];
    return flows || backwards ? Optional.empty() : Optional.of(Missing.BLOCKED);
  }

  private Missing side(List<List<Edge>> network, Edge edge) {
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

  /** The network of a setting; neighbouring questions are about the same one. */
  private List<List<Edge>> network(Map<String, String> on) {
    if (!lastNetwork.isEmpty() && lastOn.equals(on)) {
      return lastNetwork;
    }
    List<List<Edge>> network = new ArrayList<>(always);
    for (Gated gated : gates) {
      String position = on.getOrDefault(gated.control(), rest.get(gated.control()));
      if (gated.closedIn().contains(position)) {
        link(network, gated.edge());
      }
    }
    pullIn(network);
    lastOn = on;
    lastNetwork = network;
    return network;
  }

  /** Closes the contacts of every relay whose coil can get current, until no more can. */
  private void pullIn(List<List<Edge>> network) {
    List<Coil> waiting = new ArrayList<>(coils);
    boolean more = feed != NONE && ground != NONE;
    while (more) {
      // Cheap and necessary: one end is reached from the feed, the other from the ground.
      boolean[] fed = reach(network, feed, ground);
      boolean[] returned = reach(network, ground, feed);
      boolean[] through = through(network);
      List<Coil> closing = new ArrayList<>();
      for (Coil candidate : waiting) {
        Edge coil = candidate.coil();
        boolean near =
            (fed[coil.a()] && returned[coil.b()]) || (fed[coil.b()] && returned[coil.a()]);
        if (near && through[coil.a()] && through[coil.b()] && twoWays(network, coil)) {
          closing.add(candidate);
        }
      }
      for (Coil closed : closing) {
        link(network, closed.contact());
      }
      waiting.removeAll(closing);
      more = !closing.isEmpty() && !waiting.isEmpty();
    }
  }

  /**
   * The nodes that are left once all dead ends are taken off, one after another, but for the two
   * posts. A way from post to post passes no other node.
   */
  private boolean[] through(List<List<Edge>> network) {
    int[] degree = new int[nodes];
    boolean[] left = new boolean[nodes];
    Arrays.fill(left, true);
    ArrayDeque<Integer> ends = new ArrayDeque<>();
    for (int node = 0; node < nodes; node++) {
      degree[node] = network.get(node).size();
      if (degree[node] < 2) {
        ends.add(node);
      }
    }
    while (!ends.isEmpty()) {
      int node = ends.remove();
      if (node == feed || node == ground || !left[node]) {
        continue;
      }
      left[node] = false;
      for (Edge edge : network.get(node)) {
        int other = edge.other(node);
        if (left[other] && --degree[other] == 1) {
          ends.add(other);
        }
      }
    }
    return left;
  }

  /** Ids of the parts with a conductor that may lie on a way from post to post in a setting. */
  Set<String> partsThrough(Map<String, String> on) {
    List<List<Edge>> network = network(on);
    boolean[] through = through(network);
    Set<String> parts = new HashSet<>();
    for (int node = 0; node < nodes; node++) {
      if (through[node]) {
        network.get(node).stream()
            .filter(e -> through[e.a()] && through[e.b()])
            .forEach(e -> parts.add(e.part()));
      }
    }
    return parts;
  }

  private void collect(Part part) {
    String id = part.id();
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Wire w) {
      always(new Edge(node(w.from()), node(w.to()), Sort.PLAIN, id, ""));
    } else if (spec instanceof PartSpec.Battery) {
      always(id, "pos", "neg", Sort.PLAIN, "");
    } else if (spec instanceof PartSpec.Fuse) {
      always(id, "feed", "load", Sort.PLAIN, "");
    } else if (spec instanceof PartSpec.Switch s) {
      for (PartSpec.SwitchContact contact : s.contacts()) {
        Edge edge = edge(id, contact.a(), contact.b(), Sort.PLAIN, "");
        gates.add(new Gated(edge, id, contact.closedIn()));
      }
    } else if (spec instanceof PartSpec.Relay r) {
      always(id, "86", "85", Sort.LOAD, "coil");
      if (r.changeover()) {
        always(id, "30", "87a", Sort.PLAIN, "");
      }
      Edge coil = edge(id, "86", "85", Sort.LOAD, "coil");
      if (coil.a() != NONE && coil.b() != NONE) {
        coils.add(new Coil(coil, edge(id, "30", "87", Sort.PLAIN, "")));
      }
    } else if (spec instanceof PartSpec.DualLamp d) {
      always(id, d.first(), "common", Sort.LOAD, d.first());
      always(id, d.second(), "common", Sort.LOAD, d.second());
    } else if (spec instanceof PartSpec.Led) {
      always(id, "in", "out", Sort.ONE_WAY_LOAD, "");
    } else if (spec instanceof PartSpec.Diode) {
      always(id, "anode", "cathode", Sort.ONE_WAY, "");
    } else if (spec instanceof PartSpec.Driver) {
      gates.add(new Gated(edge(id, "out", "ground", Sort.PLAIN, ""), id, Set.of("on")));
    } else if (spec instanceof PartSpec.Connector c) {
      for (String cavity : c.cavities()) {
        always(id, cavity + "a", cavity + "b", Sort.PLAIN, "");
      }
    } else if (spec instanceof PartSpec.Splice s && centres.containsKey(id)) {
      int centre = find(centres.get(id));
      for (String leg : s.legs()) {
        always(new Edge(centre, node(id, leg), Sort.PLAIN, id, ""));
      }
    } else if (spec instanceof PartSpec.Ground) {
      always(id, "lug", "metal", Sort.PLAIN, "");
    } else if (part.kind().isLoad() || spec instanceof PartSpec.Sender) {
      always(id, "in", "out", Sort.LOAD, "");
    }
  }

  private void always(String part, String a, String b, Sort sort, String function) {
    always(edge(part, a, b, sort, function));
  }

  private void always(Edge edge) {
    link(always, edge);
    oneWays |= edge.oneWay();
    if (edge.load() && edge.a() != NONE && edge.b() != NONE) {
      String name = edge.function().isEmpty() ? edge.part() : edge.part() + ":" + edge.function();
      loads.putIfAbsent(name, edge);
    }
  }

  private Edge edge(String part, String a, String b, Sort sort, String function) {
    return new Edge(node(part, a), node(part, b), sort, part, function);
  }

  /** Adds an edge; lists may be shared with another network and are copied. */
  private static void link(List<List<Edge>> network, Edge edge) {
    if (edge.a() == NONE || edge.b() == NONE) {
      return;
    }
    add(network, edge.a(), edge);
    if (edge.a() != edge.b()) {
      add(network, edge.b(), edge);
    }
  }

  private static void add(List<List<Edge>> network, int node, Edge edge) {
    List<Edge> longer = new ArrayList<>(network.get(node).size() + 1);
    longer.addAll(network.get(node));
    longer.add(edge);
    network.set(node, longer);
  }

  // The way itself.

  /** What passing an edge costs in the search for the shortest way. */
  private static int cost(Edge edge) {
    if (edge.load()) {
      return 1_000;
    }
    return edge.oneWay() ? 50 : 1;
  }

  /** The shortest way through a load, and those of the coils whose contacts lie on it. */
  List<List<CircuitWays.Pass>> ways(Circuit circuit, LoadRef load) {
    Edge edge = loads.get(load.toString());
    if (edge == null || feed == NONE || ground == NONE) {
      return List.of();
    }
    List<List<CircuitWays.Pass>> ways = new ArrayList<>();
    ways(network(circuit.on()), edge, new HashSet<>(), ways);
    return ways;
  }

  private void ways(
      List<List<Edge>> network, Edge load, Set<Edge> traced, List<List<CircuitWays.Pass>> ways) {
    if (!traced.add(load)) {
      return;
    }
    Reached fed = cheapest(network, feed, ground, load);
    Reached returned = cheapest(network, ground, feed, load);
    long there = (long) fed.cost()[load.a()] + returned.cost()[load.b()];
    long back = (long) fed.cost()[load.b()] + returned.cost()[load.a()];
    if (Math.min(there, back) >= Reached.NEVER) {
      return;
    }
    int in = there <= back ? load.a() : load.b();
    List<Edge> way = new ArrayList<>(fed.from(in));
    Collections.reverse(way);
    way.add(load);
    way.addAll(returned.from(load.other(in)));
    List<CircuitWays.Pass> passes = new ArrayList<>();
    int at = feed;
    for (Edge edge : way) {
      passes.add(new CircuitWays.Pass(edge.part(), terminals(at), terminals(edge.other(at))));
      at = edge.other(at);
    }
    ways.add(passes);
    for (Coil coil : coils) {
      if (way.contains(coil.contact())) {
        ways(network, coil.coil(), traced, ways);
      }
    }
  }

  private Set<TerminalRef> terminals(int node) {
    if (terminals.isEmpty()) {
      index.forEach(
          (ref, at) -> terminals.computeIfAbsent(find(at), n -> new HashSet<>()).add(ref));
    }
    return terminals.getOrDefault(node, Set.of());
  }

  /** What each node costs to reach from a post, and the edge it is reached by. */
  private record Reached(int[] cost, Edge[] by) {
    static final int NEVER = Integer.MAX_VALUE / 2;

    /** The edges from a node back to the post. */
    List<Edge> from(int node) {
      List<Edge> edges = new ArrayList<>();
      for (int at = node; by[at] != null; at = by[at].other(at)) {
        edges.add(by[at]);
      }
      return edges;
    }
  }

  /** Dijkstra's search (1959) from a post, not beyond the other post and not through the load. */
  private static Reached cheapest(List<List<Edge>> network, int from, int notBeyond, Edge load) {
    int[] cost = new int[network.size()];
    Arrays.fill(cost, Reached.NEVER);
    Edge[] by = new Edge[network.size()];
    cost[from] = 0;
    PriorityQueue<int[]> open = new PriorityQueue<>(Comparator.comparingInt(o -> o[1]));
    open.add(new int[] {from, 0});
    while (!open.isEmpty()) {
      int[] next = open.remove();
      int at = next[0];
      if (next[1] > cost[at] || at == notBeyond) {
        continue;
      }
      for (Edge edge : network.get(at)) {
        int to = edge.other(at);
        int through = cost[at] + cost(edge);
        if (!edge.equals(load) && through < cost[to]) {
          cost[to] = through;
          by[to] = edge;
          open.add(new int[] {to, through});
        }
      }
    }
    return new Reached(cost, by);
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

  /** Nodes reached from one by any conductor, not beyond another. */
  private static boolean[] reach(List<List<Edge>> network, int from, int notBeyond) {
    boolean[] reached = new boolean[network.size()];
    ArrayDeque<Integer> open = new ArrayDeque<>();
    reached[from] = true;
    open.add(from);
    while (!open.isEmpty()) {
      int at = open.remove();
      for (Edge edge : network.get(at)) {
        int next = edge.other(at);
        if (!reached[next]) {
          reached[next] = true;
          if (next != notBeyond) {
            open.add(next);
          }
        }
      }
    }
    return reached;
  }

  /** Whether two ways that share no node lead from the load's ends to the two posts. */
  private boolean twoWays(List<List<Edge>> network, Edge load) {
    if (load.a() == load.b() || feed == ground) {
      return false;
    }
    Way first = new Way();
    boolean one = augment(network, load, first);
    return one && augment(network, load, first);
  }

  /** The first way: for each node on it the one before and the one after it. */
  private static final class Way {
    private final Map<Integer, Integer> next = new HashMap<>();
    private final Map<Integer, Integer> before = new HashMap<>();

    boolean holds(int node) {
      return next.containsKey(node);
    }

    int next(int node) {
      return next.getOrDefault(node, NONE);
    }

    int before(int node) {
      return before.getOrDefault(node, NONE);
    }
  }

  /**
   * Finds one more way beside the one noted, if any, turning that one aside where needed. Each node
   * is split into an arriving side (2n) and a leaving side (2n + 1), so that it passes one unit.
   */
  private boolean augment(List<List<Edge>> network, Edge load, Way way) {
    search++;
    ArrayDeque<Integer> open = new ArrayDeque<>();
    for (int start : List.of(load.a(), load.b())) {
      // The first way begins at one of the two ends; the second must begin at the other.
      if (!(way.holds(start) && way.before(start) == NONE)) {
        visit(2 * start, NONE, open);
      }
    }
    while (!open.isEmpty()) {
      int state = open.remove();
      int at = state / 2;
      if (state % 2 == 0) {
        if (!way.holds(at)) {
          visit(2 * at + 1, state, open);
        } else if (way.before(at) != NONE) {
          visit(2 * way.before(at) + 1, state, open);
        }
        continue;
      }
      if ((at == feed || at == ground) && !way.holds(at)) {
        note(state, way);
        return true;
      }
      if (way.holds(at)) {
        visit(2 * at, state, open);
      }
      for (Edge edge : network.get(at)) {
        int to = edge.other(at);
        if (to != at && way.next(at) != to && !edge.equals(load)) {
          visit(2 * to, state, open);
        }
      }
    }
    return false;
  }

  private void visit(int state, int comingFrom, ArrayDeque<Integer> open) {
    if (seen[state] != search) {
      seen[state] = search;
      cameFrom[state] = comingFrom;
      open.add(state);
    }
  }

  /** Notes the first way; a second one only has to exist. */
  private void note(int end, Way way) {
    int after = NONE;
    for (int state = end; state != NONE; state = cameFrom[state]) {
      int at = state / 2;
      if (state % 2 == 1) {
        way.next.put(at, after);
        if (after != NONE) {
          way.before.put(after, at);
        }
        after = at;
      }
    }
  }
}
