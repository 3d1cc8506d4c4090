package loopwright.solver;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;

/**
 * Outer bounds: between which values a meter's display must lie, whatever values a variant's
 * elements have inside their spreads and whichever way relays, motors, junctions and fuses then
 * stand. What lies outside cannot be; what lies inside need not be reached.
 *
 * <p>Starts from known ways to stand and looks at every other one that some choice of values might
 * lead to: wherever a threshold isn't kept clear of by all values, the element is tried the other
 * way too. Where no bounds are found the answer is empty, which says nothing either way.
 */
public final class Enclosure {

  /** Ways to stand that are looked at before it is given up. */
  private static final int MOST_STANDS = 10;

  /** Ways to stand that are looked at over all halvings before it is given up. */
  private static final int MOST_LOOKS = 24;

  /** Nodes of a reduced network beyond which it is given up. */
  private static final int MOST_NODES = 160;

  /** Ohms up to which resistances in series are joined: the leak between them is nothing. */
  private static final double JOINABLE_OHMS = 1e3;

  /** Share of its starting volts below which a motor is not tried the other way. */
  private static final double POWERED = 0.25;

  /** Halvings of a failure's own range before it is given up. */
  private static final int MOST_HALVINGS = 3;

  private final Variant variant;
  private final Setting setting;
  private final Network network;
  private final int n;
  private final Layout layout;
  // Set anew for each question, and shared with the halves.
  private final int[] looksLeft;

  /**
   * Looks at one variant in one setting.
   *
   * @param variant the network with its failures
   * @param setting positions of the controls and what is apart
   */
  public Enclosure(Variant variant, Setting setting) {
    this(variant, setting, new int[1]);
  }

  private Enclosure(Variant variant, Setting setting, int[] looksLeft) {
    this.looksLeft = looksLeft;
    this.variant = variant;
    this.setting = setting;
    this.network = variant.base();
    this.n = variant.size();
    this.layout = Layout.of(variant, setting);
  }

  /**
   * Limits of a display, the meter's own error left out.
   *
   * @param low least value in volts or ohms
   * @param high greatest value; infinite where OL is possible
   */
  public record Bounds(double low, double high) {
    Bounds join(Bounds other) {
      return new Bounds(Math.min(low, other.low), Math.max(high, other.high));
    }
  }

  /**
   * Ways to stand from which all others are looked for. A link that has blown in a solved point may
   * hold for other values, so each point counts with the links that were blown before it, and any
   * further ones are left to the search.
   */
  public static final class Starts {
    private final Set<Stand> stands;
    private final boolean buzzing;

    private Starts(Set<Stand> stands, boolean buzzing) {
      this.stands = stands;
      this.buzzing = buzzing;
    }

    Set<Stand> stands() {
      return stands;
    }

    /**
     * Puts starts together. Where a point buzzes, relays go through ways to stand that none of them
     * keeps: then every way met with counts as possible.
     *
     * @param points solved points
     * @param before which links may have blown before the setting was made
     */
    public static Starts of(Collection<OperatingPoint> points, Collection<History> before) {
      Set<Stand> stands = new LinkedHashSet<>();
      boolean buzzing = false;
      for (OperatingPoint point : points) {
        buzzing |= point.ending() == OperatingPoint.Ending.BUZZING;
        for (History history : before) {
          stands.add(Stand.of(point).blown(history));
        }
      }
      return new Starts(stands, buzzing);
    }
  }

  /**
   * Bounds of the volts from red to black with the meter's resistance between them.
   *
   * @param starts ways to stand to start from
   * @param red node under the red lead
   * @param black node under the black lead
   * @param inputOhms resistance of the meter in ohms
   */
  public Optional<Bounds> volts(Starts starts, int red, int black, double inputOhms) {
    Element meter = new Element.Resistor("meter", "input", red, black, Spread.exactly(inputOhms));
    looksLeft[0] = MOST_LOOKS;
    return bounds(starts, meter, 0).map(v -> new Bounds(v[0], v[1]));
  }

  /**
   * Bounds of the ohms between red and black, leads included, with the battery apart.
   *
   * @param starts ways to stand to start from
   * @param red node under the red lead
   * @param black node under the black lead
   * @param meter the meter, for its test source and its leads
   */
  public Optional<Bounds> ohms(Starts starts, int red, int black, MeterSpec meter) {
    Element source = Meters.source(red, black, meter.testVolts(), meter.testOhms());
    double full = meter.fullScale(MeterFunction.OHMS);
    looksLeft[0] = MOST_LOOKS;
    return bounds(starts, source, 0)
        .map(
            v -> {
              double low = ohms(v[0], meter) + meter.leadOhms().low();
              double high = ohms(v[1], meter) + meter.leadOhms().high();
              return new Bounds(Math.min(low, full), high > full ? Double.POSITIVE_INFINITY : high);
            });
  }

  private static double ohms(double volts, MeterSpec meter) {
    double rest = meter.testVolts() - volts;
    return rest <= 0 ? Double.MAX_VALUE : Math.max(0, volts) / rest * meter.testOhms();
  }

  /**
   * Which links may have blown in this setting, whatever the values; empty if that can't be told.
   *
   * @param starts ways to stand to start from
   */
  public Optional<Set<History>> histories(Starts starts) {
    // It is asked of every suspect, so it has to be given up sooner.
    looksLeft[0] = MOST_LOOKS / 2;
    return histories(starts, 0);
  }

  private Optional<Set<History>> histories(Starts starts, int halvings) {
    Set<History> found = new LinkedHashSet<>();
    Element idle = new Element.Resistor("meter", "input", -1, -1, Spread.exactly(1));
    Optional<List<Way>> ways = ways(starts, idle);
    if (ways.isPresent()) {
      ways.get().forEach(way -> found.add(new History(way.stand().blown())));
      return found.isEmpty() ? Optional.empty() : Optional.of(found);
    }
    List<Enclosure> halves = halves(halvings);
    for (Enclosure half : halves) {
      Optional<Set<History>> part = half.histories(starts, halvings + 1);
      if (part.isEmpty()) {
        return Optional.empty();
      }
      found.addAll(part.get());
    }
    return halves.isEmpty() ? Optional.empty() : Optional.of(found);
  }

  /** The same with either half of the failure's own widest range; none if it can't be halved. */
  private List<Enclosure> halves(int halvings) {
    if (halvings >= MOST_HALVINGS || looksLeft[0] < 0) {
      return List.of();
    }
    int widest = -1;
    double most = 1.2;
    for (int e = 0; e < n; e++) {
      boolean own = e >= variant.baseCount() || variant.touched(e);
      if (own && !layout.off(e) && variant.element(e) instanceof Element.Resistor r) {
        double ratio = r.ohms().high() / r.ohms().low();
        if (ratio > most) {
          most = ratio;
          widest = e;
        }
      }
    }
    if (widest < 0) {
      return List.of();
    }
    Element.Resistor r = (Element.Resistor) variant.element(widest);
    double low = r.ohms().low();
    double high = r.ohms().high();
    double cut = Math.sqrt(low * high);
    List<Enclosure> halves = new ArrayList<>();
    for (Spread half :
        List.of(
            new Spread(low, Math.sqrt(low * cut), cut),
            new Spread(cut, Math.sqrt(cut * high), high))) {
      Element.Resistor narrower = new Element.Resistor(r.part(), r.role(), r.a(), r.b(), half);
      halves.add(
          new Enclosure(
              variant.with(List.of(new Change.Replace(widest, narrower))), setting, looksLeft));
    }
    return halves;
  }

  private Optional<double[]> bounds(Starts starts, Element meter, int halvings) {
    Optional<double[]> whole = bounds(starts, meter);
    if (whole.isPresent()) {
      return whole;
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    List<Enclosure> halves = halves(halvings);
    for (Enclosure half : halves) {
      Optional<double[]> part = half.bounds(starts, meter, halvings + 1);
      if (part.isEmpty()) {
        return Optional.empty();
      }
      low = Math.min(low, part.get()[0]);
      high = Math.max(high, part.get()[1]);
    }
    return halves.isEmpty() ? Optional.empty() : Optional.of(new double[] {low, high});
  }

  private Optional<double[]> bounds(Starts starts, Element meter) {
    Optional<List<Way>> ways = ways(starts, meter);
    if (ways.isEmpty() || ways.get().isEmpty()) {
      return Optional.empty();
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Way way : ways.get()) {
      Optional<double[]> v = way.reduced().net().volts(way.reduced().meterEdge());
      if (v.isEmpty()) {
        return Optional.empty();
      }
      low = Math.min(low, v.get()[0]);
      high = Math.max(high, v.get()[1]);
    }
    return Optional.of(new double[] {low, high});
  }

  // ---- all nodes at once ----------------------------------------------------------------------

  /** Ohms of a node beyond which the meter's own load is no mere correction. */
  private static final double STIFF_OHMS = 1e4;

  /** Times the ohms of the middle that a node may have elsewhere. */
  private static final double OHMS_MARGIN = 5;

  /**
   * Bounds of the volts of all nodes at once. Wider than those of {@link #volts} for one pair,
   * since what two nodes share is not taken into account, but made once for a whole setting.
   */
  public static final class Survey {
    private final List<WayVolts> ways;

    private Survey(List<WayVolts> ways) {
      this.ways = List.copyOf(ways);
    }

    /**
     * Bounds of the volts from red to black with the meter in place; empty where its load matters
     * too much or a node can't be told.
     *
     * @param red node under the red lead
     * @param black node under the black lead
     * @param inputOhms resistance of the meter in ohms
     */
    public Optional<Bounds> volts(int red, int black, double inputOhms) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (WayVolts way : ways) {
        Optional<double[]> v = way.between(red, black, inputOhms);
        if (v.isEmpty()) {
          return Optional.empty();
        }
        low = Math.min(low, v.get()[0]);
        high = Math.max(high, v.get()[1]);
      }
      return low <= high ? Optional.of(new Bounds(low, high)) : Optional.empty();
    }
  }

  /** One way to stand with the volts of its nodes and edges. */
  private record WayVolts(
      int[] joint,
      double[] idleOhms,
      int[] number,
      Map<Integer, Place> inside,
      int[] first,
      int[] second,
      IntervalNet.NodeVolts nodes,
      double[] edgeLow,
      double[] edgeHigh) {

    private static final int NOWHERE = -2;

    /** Number in the reduced network: -1 for the reference, NOWHERE inside an edge. */
    private int place(int node) {
      int reference = joint.length - 1;
      int root = Blocks.root(joint, node < 0 ? reference : node);
      return root == reference ? -1 : number[root] >= 0 ? number[root] : NOWHERE;
    }

    private int root(int node) {
      return Blocks.root(joint, node < 0 ? joint.length - 1 : node);
    }

    Optional<double[]> between(int red, int black, double inputOhms) {
      double[] r = at(red);
      double[] b = at(black);
      if (r.length == 0 || b.length == 0 || r[2] + b[2] > STIFF_OHMS) {
        return Optional.empty();
      }
      double low = r[0] - b[1];
      double high = r[1] - b[0];
      Place p = inside.get(root(red));
      Place q = inside.get(root(black));
      int edge = p != null ? p.edge() : q != null ? q.edge() : common(place(red), place(black));
      if (edge >= 0) {
        Optional<double[]> share = share(edge, red, p);
        Optional<double[]> other = share(edge, black, q);
        if (share.isPresent() && other.isPresent()) {
          double from = other.get()[0] - share.get()[1];
          double to = other.get()[1] - share.get()[0];
          double[] corners = {
            from * edgeLow[edge], from * edgeHigh[edge], to * edgeLow[edge], to * edgeHigh[edge]
          };
          Arrays.sort(corners);
          low = Math.max(low, corners[0]);
          high = Math.min(high, corners[3]);
        }
      }
      double load = OHMS_MARGIN * (r[2] + b[2]) / inputOhms;
      double shift = load * Math.max(Math.abs(low), Math.abs(high));
      return Optional.of(new double[] {low - shift, high + shift});
    }

    /** An edge between two places; -1 if there is none. */
    private int common(int one, int two) {
      for (int e = 0; e < first.length; e++) {
        if ((first[e] == one && second[e] == two) || (first[e] == two && second[e] == one)) {
          return e;
        }
      }
      return -1;
    }

    /** Share of an edge's volts between its first end and a node on it. */
    private Optional<double[]> share(int edge, int node, Place inner) {
      if (inner != null) {
        return inner.edge() == edge
            ? Optional.of(new double[] {inner.least(), inner.most()})
            : Optional.empty();
      }
      int place = place(node);
      return place == first[edge]
          ? Optional.of(new double[] {0, 0})
          : place == second[edge] ? Optional.of(new double[] {1, 1}) : Optional.empty();
    }

    /** Least and greatest volts and ohms; empty array if the node can't be told. */
    private double[] at(int node) {
      int place = place(node);
      double idle = idleOhms[node < 0 ? joint.length - 1 : node];
      if (place == -1) {
        return new double[] {0, 0, idle};
      }
      if (place >= 0) {
        return new double[] {nodes.low()[place], nodes.high()[place], nodes.ohms()[place] + idle};
      }
      Place p = inside.get(root(node));
      if (p == null) {
        return new double[0];
      }
      double[] a = end(first[p.edge()]);
      double[] b = end(second[p.edge()]);
      double[] drops = {
        p.least() * edgeLow[p.edge()],
        p.least() * edgeHigh[p.edge()],
        p.most() * edgeLow[p.edge()],
        p.most() * edgeHigh[p.edge()]
      };
      Arrays.sort(drops);
      double ohms = Math.max(a[2], b[2]) + JOINABLE_OHMS + idle;
      return new double[] {a[0] - drops[3], a[1] - drops[0], ohms};
    }

    private double[] end(int place) {
      return place < 0
          ? new double[3]
          : new double[] {nodes.low()[place], nodes.high()[place], nodes.ohms()[place]};
    }
  }

  /**
   * Looks at all nodes at once.
   *
   * @param starts ways to stand to start from
   */
  public Optional<Survey> survey(Starts starts) {
    looksLeft[0] = MOST_LOOKS;
    List<WayVolts> found = new ArrayList<>();
    return survey(starts, 0, found) ? Optional.of(new Survey(found)) : Optional.empty();
  }

  private boolean survey(Starts starts, int halvings, List<WayVolts> found) {
    Element idle = new Element.Resistor("meter", "input", -1, -1, Spread.exactly(1));
    Optional<List<Way>> ways = ways(starts, idle);
    if (ways.isPresent()) {
      for (Way way : ways.get()) {
        Reduced r = way.reduced();
        IntervalNet.Box box = r.net().anyBox();
        found.add(
            new WayVolts(
                r.contraction().joint(),
                r.contraction().ohms(),
                r.number(),
                r.inside(),
                r.net().a,
                r.net().b,
                r.net().nodeVolts(box),
                box.vLow(),
                box.vHigh()));
      }
      return !ways.get().isEmpty();
    }
    List<Enclosure> halves = halves(halvings);
    for (Enclosure half : halves) {
      if (!half.survey(starts, halvings + 1, found)) {
        return false;
      }
    }
    return !halves.isEmpty();
  }

  // ---- which ways everything may stand --------------------------------------------------------

  private record Way(Stand stand, Reduced reduced) {}

  /** All ways to stand that some values agree with; empty if it can't be told. */
  private Optional<List<Way>> ways(Starts starts, Element meter) {
    Deque<Stand> open = new ArrayDeque<>(starts.stands());
    Set<Stand> met = new LinkedHashSet<>(starts.stands());
    List<Way> possible = new ArrayList<>();
    while (!open.isEmpty()) {
      Stand stand = open.poll();
      Reduced reduced = reduce(stand, meter);
      if (reduced.net().nodes > MOST_NODES) {
        return Optional.empty();
      }
      IntervalNet.Box box = reduced.net().anyBox();
      List<Stand> others = new ArrayList<>();
      List<Stand> forced = new ArrayList<>();
      for (Watch watch : reduced.watches()) {
        Verdict verdict = verdict(watch, stand, box);
        if (verdict != Verdict.MUST) {
          (verdict == Verdict.CANNOT ? forced : others)
              .add(stand.flipped(variant.element(watch.element()), watch.element()));
        }
      }
      boolean can = forced.isEmpty() || starts.buzzing;
      if (starts.buzzing) {
        others.addAll(forced);
      }
      // A way that can't be only leads on to what it must become.
      for (Stand other : can ? others : forced) {
        if (met.add(other)) {
          open.add(other);
        }
      }
      if (met.size() > MOST_STANDS || --looksLeft[0] < 0) {
        return Optional.empty();
      }
      if (can) {
        possible.add(new Way(stand, reduced));
      }
    }
    return Optional.of(possible);
  }

  /** Whether an element must stand as it does, may, or cannot. */
  private enum Verdict {
    MUST,
    MAY,
    CANNOT
  }

  private Verdict verdict(Watch watch, Stand stand, IntervalNet.Box box) {
    int e = watch.element();
    Element element = variant.element(e);
    double low = watch.edge() == DEAD ? 0 : box.vLow()[watch.edge()];
    double high = watch.edge() == DEAD ? 0 : box.vHigh()[watch.edge()];
    double most = Math.max(Math.abs(low), Math.abs(high));
    double least = low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
    if (element instanceof Element.Coil c) {
      if (stand.pulled().get(e)) {
        return most <= c.dropOutVolts().low()
            ? Verdict.CANNOT
            : least >= c.pullInVolts().high() ? Verdict.MUST : Verdict.MAY;
      }
      return least >= c.pullInVolts().high()
          ? Verdict.CANNOT
          : most < c.pullInVolts().low() ? Verdict.MUST : Verdict.MAY;
    }
    if (element instanceof Element.Motor m) {
      if (stand.running().get(e)) {
        // What it would see standing shows only there.
        return most < m.startVolts().low() / 2 ? Verdict.CANNOT : Verdict.MAY;
      }
      return least >= m.startVolts().high()
          ? Verdict.CANNOT
          : most < POWERED * m.startVolts().low() ? Verdict.MUST : Verdict.MAY;
    }
    if (element instanceof Element.Junction j) {
      if (stand.conducting().get(e)) {
        return high < j.forwardVolts().low()
            ? Verdict.CANNOT
            : low > j.forwardVolts().high() ? Verdict.MUST : Verdict.MAY;
      }
      return low > j.forwardVolts().high()
          ? Verdict.CANNOT
          : high < j.forwardVolts().low() ? Verdict.MUST : Verdict.MAY;
    }
    Element.Link l = (Element.Link) element;
    return box.leastAmps(watch.edge()) > l.blowsAt().high()
        ? Verdict.CANNOT
        : box.mostAmps(watch.edge()) <= l.blowsAt().low() ? Verdict.MUST : Verdict.MAY;
  }

  // ---- the reduced network
  // ------------------------------------------------------------------------

  /** An element with a threshold and the edge that shows its volts or amperes. */
  private record Watch(int element, int edge) {}

  /** In place of an edge, for an element that no current can flow through. */
  private static final int DEAD = -1;

  /**
   * Where a node lies inside an edge.
   *
   * @param edge the edge
   * @param least least share of the edge's volts between its first end and the node
   * @param most greatest share
   */
  private record Place(int edge, double least, double most) {}

  private record Reduced(
      IntervalNet net,
      int meterEdge,
      List<Watch> watches,
      Contraction contraction,
      int[] number,
      Map<Integer, Place> inside) {}

  /**
   * A node inside an edge that stands for several in series.
   *
   * @param aLow least ohms between it and the edge's first end
   * @param aHigh greatest ohms there
   * @param bLow least ohms between it and the second end
   * @param bHigh greatest ohms there
   */
  private record Inner(int node, double aLow, double aHigh, double bLow, double bHigh) {
    /** Share of the edge's volts that lie between the first end and this node. */
    double leastShare() {
      return aLow == 0 ? 0 : aLow / (aLow + bHigh);
    }

    double mostShare() {
      return bLow == 0 ? 1 : aHigh / (aHigh + bLow);
    }
  }

  /** One edge while the network is being reduced. */
  private static final class Edge {
    int a;
    int b;
    double rLow;
    double rHigh;
    double eLow;
    double eHigh;
    double ratedVolts;
    double ampsLow;
    double ampsHigh;
    boolean plain;
    boolean drives;
    boolean gone;
    boolean shunted;
    final List<Integer> watched = new ArrayList<>(0);
    final List<Inner> inner = new ArrayList<>(0);

    Edge(int a, int b, double rLow, double rHigh) {
      this.a = a;
      this.b = b;
      this.rLow = rLow;
      this.rHigh = rHigh;
    }
  }

  /** The edge an element stands for; empty if it carries nothing. */
  private Optional<Edge> edge(int e, Element element, Stand stand) {
    Edge edge;
    if (element instanceof Element.Cell c) {
      edge = resistance(element, c.ohms());
      edge.eLow = c.volts().low();
      edge.eHigh = c.volts().high();
      edge.drives = true;
    } else if (element instanceof Element.Filament f) {
      edge = resistance(element, f.coldOhms());
      edge.ratedVolts = f.ratedVolts();
      edge.ampsLow = f.amps().low();
      edge.ampsHigh = f.amps().high();
    } else if (element instanceof Element.Junction j) {
      if (stand.conducting().get(e)) {
        edge = resistance(element, j.ohms());
        edge.eLow = j.forwardVolts().low();
        edge.eHigh = j.forwardVolts().high();
      } else {
        edge = resistance(element, Spread.exactly(1 / Laws.BLOCKED));
      }
      edge.watched.add(e);
    } else if (element instanceof Element.Contact c) {
      if (!layout.closed(e, c, stand.pulled())) {
        return Optional.empty();
      }
      edge = resistance(element, c.ohms());
      edge.plain = true;
    } else if (element instanceof Element.Link l) {
      if (stand.blown().get(e)) {
        return Optional.empty();
      }
      edge = resistance(element, l.ohms());
      edge.plain = true;
      edge.watched.add(e);
    } else if (element instanceof Element.Motor m) {
      edge = resistance(element, stand.running().get(e) ? m.runOhms() : m.stallOhms());
      edge.watched.add(e);
    } else if (element instanceof Element.Coil c) {
      edge = resistance(element, c.ohms());
      edge.watched.add(e);
    } else {
      edge = resistance(element, ((Element.Resistor) element).ohms());
      edge.plain = true;
    }
    return Optional.of(edge);
  }

  private static Edge resistance(Element element, Spread ohms) {
    return new Edge(element.a(), element.b(), ohms.low(), ohms.high());
  }

  /**
   * The part of the network in which current can flow: what hangs on by a single node carries none
   * but leaks and shrinks to that node; plain resistances in series are joined.
   */
  private Reduced reduce(Stand stand, Element meter) {
    List<Edge> edges = new ArrayList<>();
    for (int e = 0; e < n; e++) {
      Element element = variant.element(e);
      if (!layout.off(e) && element.a() != element.b()) {
        edge(e, element, stand).ifPresent(edges::add);
      }
    }
    Edge display;
    if (meter instanceof Element.Cell c) {
      display = resistance(meter, c.ohms());
      display.eLow = c.volts().low();
      display.eHigh = c.volts().high();
    } else {
      display = resistance(meter, ((Element.Resistor) meter).ohms());
    }
    display.drives = true;
    edges.add(display);
    int nodes = network.nodes();
    Contraction contraction = contract(edges, nodes);
    int[] joint = contraction.joint();
    double[] leak = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      int root = Blocks.root(joint, i);
      if (root < nodes) {
        leak[root] += SparseSystem.LEAK;
      }
    }
    List<List<Edge>> at = new ArrayList<>(nodes);
    for (int i = 0; i < nodes; i++) {
      at.add(null);
    }
    List<Edge> kept = new ArrayList<>();
    for (Edge edge : edges) {
      if (!edge.gone || edge == display) {
        edge.gone = false;
        edge.a = node(joint, edge.a, nodes);
        edge.b = node(joint, edge.b, nodes);
        touch(at, edge.a, edge);
        touch(at, edge.b, edge);
        kept.add(edge);
      }
    }
    Deque<Integer> open = new ArrayDeque<>();
    for (int i = 0; i < nodes; i++) {
      if (at.get(i) != null) {
        open.add(i);
      }
    }
    while (!open.isEmpty()) {
      joinSeries(open.poll(), display, at, leak, open).ifPresent(kept::add);
    }
    return number(kept, display, leak, contraction);
  }

  private static int node(int[] joint, int node, int reference) {
    int root = Blocks.root(joint, node < 0 ? reference : node);
    return root == reference ? -1 : root;
  }

  /**
   * Nodes joined because no current flows between them.
   *
   * @param joint the node that each has become part of, the reference being the last; see {@link
   *     Blocks#root}
   * @param ohms no more than so many ohms lie between a node and where current may flow; infinite
   *     if it is cut off
   */
  private record Contraction(int[] joint, double[] ohms) {}

  /** Marks every edge as gone in whose block nothing drives a current, and joins its ends. */
  private static Contraction contract(List<Edge> edges, int nodes) {
    int[] a = new int[edges.size()];
    int[] b = new int[edges.size()];
    for (int k = 0; k < a.length; k++) {
      a[k] = edges.get(k).a < 0 ? nodes : edges.get(k).a;
      b[k] = edges.get(k).b < 0 ? nodes : edges.get(k).b;
    }
    int[] block = Blocks.of(nodes + 1, a, b);
    BitSet driven = new BitSet();
    for (int k = 0; k < a.length; k++) {
      if (edges.get(k).drives && block[k] >= 0) {
        driven.set(block[k]);
      }
    }
    int[] joint = new int[nodes + 1];
    for (int i = 0; i <= nodes; i++) {
      joint[i] = i;
    }
    for (int k = 0; k < a.length; k++) {
      if (block[k] < 0 || !driven.get(block[k])) {
        edges.get(k).gone = true;
        int one = Blocks.root(joint, a[k]);
        int two = Blocks.root(joint, b[k]);
        // The reference stays a root of its own.
        joint[Math.min(one, two)] = Math.max(one, two);
      }
    }
    return new Contraction(joint, idleOhms(edges, a, b, nodes));
  }

  /** Ohms along some way through idle edges to each node; more than there are between them. */
  private static double[] idleOhms(List<Edge> edges, int[] a, int[] b, int nodes) {
    double[] ohms = new double[nodes + 1];
    Arrays.fill(ohms, Double.POSITIVE_INFINITY);
    ohms[nodes] = 0;
    List<List<Integer>> idle = new ArrayList<>(nodes + 1);
    for (int i = 0; i <= nodes; i++) {
      idle.add(new ArrayList<>(2));
    }
    for (int k = 0; k < a.length; k++) {
      if (edges.get(k).gone) {
        idle.get(a[k]).add(k);
        idle.get(b[k]).add(k);
      } else {
        ohms[a[k]] = 0;
        ohms[b[k]] = 0;
      }
    }
    Deque<Integer> open = new ArrayDeque<>();
    for (int i = 0; i <= nodes; i++) {
      if (ohms[i] == 0) {
        open.add(i);
      }
    }
    while (!open.isEmpty()) {
      int node = open.poll();
      for (int k : idle.get(node)) {
        int other = a[k] == node ? b[k] : a[k];
        if (Double.isInfinite(ohms[other])) {
          ohms[other] = ohms[node] + edges.get(k).rHigh;
          open.add(other);
        }
      }
    }
    return ohms;
  }

  private static void touch(List<List<Edge>> at, int node, Edge edge) {
    if (node >= 0) {
      if (at.get(node) == null) {
        at.set(node, new ArrayList<>(4));
      }
      at.get(node).add(edge);
    }
  }

  /** Joins two plain resistances in series and what lies beside them; returns what they become. */
  private static Optional<Edge> joinSeries(
      int node, Edge display, List<List<Edge>> at, double[] leak, Deque<Integer> open) {
    List<Edge> here = at.get(node);
    here.removeIf(e -> e.gone);
    if (node == display.a || node == display.b || here.size() != 2) {
      return Optional.empty();
    }
    Edge one = here.get(0);
    Edge two = here.get(1);
    if (!one.plain || !two.plain || one.rHigh > JOINABLE_OHMS || two.rHigh > JOINABLE_OHMS) {
      return Optional.empty();
    }
    int left = one.a == node ? one.b : one.a;
    int right = two.a == node ? two.b : two.a;
    if (left == right) {
      return Optional.empty();
    }
    two.gone = true;
    one.gone = true;
    here.clear();
    if (left >= 0) {
      leak[left] += leak[node];
      open.add(left);
    }
    if (right >= 0) {
      open.add(right);
    }
    Edge joined = new Edge(left, right, one.rLow + two.rLow, one.rHigh + two.rHigh);
    joined.plain = true;
    joined.watched.addAll(one.watched);
    joined.watched.addAll(two.watched);
    joined.inner.add(new Inner(node, one.rLow, one.rHigh, two.rLow, two.rHigh));
    inherit(joined, one, one.a == left, true, two);
    inherit(joined, two, two.b == right, false, one);
    takeParallel(joined, at);
    touch(at, left, joined);
    touch(at, right, joined);
    return Optional.of(joined);
  }

  /** Takes over the nodes inside an edge that becomes the first or second part of another. */
  private static void inherit(Edge joined, Edge part, boolean along, boolean first, Edge other) {
    if (part.shunted) {
      // Its own share of the volts no longer follows from ohms in a row.
      return;
    }
    for (Inner i : part.inner) {
      double aLow = along ? i.aLow() : i.bLow();
      double aHigh = along ? i.aHigh() : i.bHigh();
      double bLow = along ? i.bLow() : i.aLow();
      double bHigh = along ? i.bHigh() : i.aHigh();
      joined.inner.add(
          first
              ? new Inner(i.node(), aLow, aHigh, bLow + other.rLow, bHigh + other.rHigh)
              : new Inner(i.node(), aLow + other.rLow, aHigh + other.rHigh, bLow, bHigh));
    }
  }

  /** Takes plain edges between the same nodes into the new one, if neither has a threshold. */
  private static void takeParallel(Edge joined, List<List<Edge>> at) {
    int end = joined.a >= 0 ? joined.a : joined.b;
    for (Edge other : at.get(end)) {
      boolean same =
          (other.a == joined.a && other.b == joined.b)
              || (other.a == joined.b && other.b == joined.a);
      if (same
          && !other.gone
          && other.plain
          && other.watched.isEmpty()
          && joined.watched.isEmpty()) {
        joined.rLow = 1 / (1 / joined.rLow + 1 / other.rLow);
        joined.rHigh = 1 / (1 / joined.rHigh + 1 / other.rHigh);
        joined.shunted = true;
        boolean along = other.a == joined.a;
        for (Inner i : other.shunted ? List.<Inner>of() : other.inner) {
          joined.inner.add(
              along ? i : new Inner(i.node(), i.bLow(), i.bHigh(), i.aLow(), i.aHigh()));
        }
        other.gone = true;
      }
    }
  }

  private Reduced number(List<Edge> edges, Edge display, double[] leak, Contraction contraction) {
    int nodes = leak.length;
    List<Edge> all = edges.stream().filter(e -> !e.gone).toList();
    int[] number = new int[nodes];
    Arrays.fill(number, -1);
    int count = 0;
    for (Edge e : all) {
      if (e.a >= 0 && number[e.a] < 0) {
        number[e.a] = count++;
      }
      if (e.b >= 0 && number[e.b] < 0) {
        number[e.b] = count++;
      }
    }
    IntervalNet net = new IntervalNet(count, all.size());
    for (int i = 0; i < nodes; i++) {
      if (number[i] >= 0) {
        net.leak[number[i]] = leak[i];
      }
    }
    List<Watch> watches = new ArrayList<>();
    BitSet seen = new BitSet();
    int meterEdge = -1;
    for (int k = 0; k < all.size(); k++) {
      Edge e = all.get(k);
      net.a[k] = e.a < 0 ? -1 : number[e.a];
      net.b[k] = e.b < 0 ? -1 : number[e.b];
      net.rLow[k] = e.rLow;
      net.rHigh[k] = e.rHigh;
      net.eLow[k] = e.eLow;
      net.eHigh[k] = e.eHigh;
      net.ratedVolts[k] = e.ratedVolts;
      net.ampsLow[k] = e.ampsLow;
      net.ampsHigh[k] = e.ampsHigh;
      for (int watched : e.watched) {
        watches.add(new Watch(watched, k));
        seen.set(watched);
      }
      if (e == display) {
        meterEdge = k;
      }
    }
    for (int e = 0; e < n; e++) {
      Element element = variant.element(e);
      if (!seen.get(e)
          && (element instanceof Element.Coil
              || element instanceof Element.Motor
              || element instanceof Element.Junction)) {
        watches.add(new Watch(e, DEAD));
      }
    }
    Map<Integer, Place> inside = new HashMap<>();
    for (int k = 0; k < all.size(); k++) {
      for (Inner i : all.get(k).inner) {
        inside.put(i.node(), new Place(k, i.leastShare(), i.mostShare()));
      }
    }
    return new Reduced(net, meterEdge, watches, contraction, number, inside);
  }
}
