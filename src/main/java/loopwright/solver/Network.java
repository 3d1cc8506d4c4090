package loopwright.solver;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Typicals;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;

/**
 * The vehicle as elements between nodes, healthy, before any setting is made. Immutable.
 *
 * <p>Roles of the elements by kind of part: battery {@code cell}; wire and strap {@code conductor};
 * fuse {@code link}; switch {@code contact:a-b}; relay {@code coil}, {@code contact:87}, {@code
 * contact:87a}, {@code suppressor}; lamp {@code filament}; dual lamp {@code filament:name}, {@code
 * common}; LED and diode {@code junction}; other loads {@code winding}; sender {@code element};
 * driver {@code output}; connector {@code cavity:name}; splice {@code leg:name}; ground {@code
 * joint}.
 */
public final class Network {

  /** Number of the reference node, the battery's grounded post, at 0 V. */
  public static final int REFERENCE = -1;

  /** Nodes kept free for failures that split a part in two, the last one for a test lamp. */
  static final int SPARES = 4;

  private final Vehicle vehicle;
  private final List<Element> elements;
  private final Map<TerminalRef, Integer> nodeOf;
  private final List<List<TerminalRef>> terminalsOf;
  private final Map<String, List<Integer>> elementsOf;
  private final int nodes;
  private final int firstSpare;
  private final double[][] typicalRows;
  private final Variant asItIs;
  private final Layout atRest;
  private final Map<Setting, Layout> layouts = new ConcurrentHashMap<>();
  private int[] order;

  private Network(
      Vehicle vehicle,
      List<Element> elements,
      Map<TerminalRef, Integer> nodeOf,
      List<List<TerminalRef>> terminalsOf,
      int nodes) {
    this.vehicle = vehicle;
    this.elements = List.copyOf(elements);
    this.nodeOf = Collections.unmodifiableMap(nodeOf);
    this.terminalsOf = terminalsOf;
    this.firstSpare = nodes;
    this.nodes = nodes + SPARES;
    Map<String, List<Integer>> byPart = new LinkedHashMap<>();
    for (int e = 0; e < this.elements.size(); e++) {
      byPart.computeIfAbsent(this.elements.get(e).part(), k -> new ArrayList<>()).add(e);
    }
    this.elementsOf = byPart;
    this.typicalRows = this.elements.stream().map(Values::typicalRow).toArray(double[][]::new);
    this.asItIs = Variant.unchanged(this);
    this.atRest = Layout.atRest(this);
  }

  /**
   * Builds the network of a checked vehicle.
   *
   * @throws IllegalArgumentException if a wire or join names an unknown terminal
   */
  public static Network of(Vehicle vehicle, Typicals typicals) {
    return new Builder(vehicle, typicals).build();
  }

  /** The vehicle it was built from. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /** All elements in file order. */
  public List<Element> elements() {
    return elements;
  }

  /** Number of nodes besides the reference, spare ones included. */
  public int nodes() {
    return nodes;
  }

  /** Number of the n-th spare node, for n from 0. */
  int spare(int n) {
    if (n >= SPARES) {
      throw new IllegalArgumentException("a failure may split at most " + SPARES + " parts");
    }
    return firstSpare + n;
  }

  /** Whether the node is one of the spares. */
  boolean isSpare(int node) {
    return node >= firstSpare;
  }

  /** The node of a terminal; empty for an unknown terminal. */
  public Optional<Integer> node(TerminalRef at) {
    return Optional.ofNullable(nodeOf.get(at));
  }

  /**
   * The node of a terminal.
   *
   * @throws IllegalArgumentException for an unknown terminal
   */
  public int requireNode(TerminalRef at) {
    Integer node = nodeOf.get(at);
    if (node == null) {
      throw new IllegalArgumentException("vehicle " + vehicle.name() + " has no terminal " + at);
    }
    return node;
  }

  /** Terminals that meet at a node, in file order. */
  public List<TerminalRef> terminals(int node) {
    int i = node + 1;
    return i < terminalsOf.size() ? terminalsOf.get(i) : List.of();
  }

  /** What a setting does to the elements; looked up once for each setting. */
  Layout layout(Setting setting) {
    if (setting.equals(Setting.REST)) {
      return atRest;
    }
    return layouts.computeIfAbsent(setting, s -> Layout.of(this, s));
  }

  /**
   * Place of each node in the order of elimination, shared by all who ask: not to be changed.
   * Worked out once, since that takes longer than to factor.
   */
  synchronized int[] order() {
    if (order == null) {
      int[] a = elements.stream().mapToInt(Element::a).toArray();
      int[] b = elements.stream().mapToInt(Element::b).toArray();
      order = SparseSystem.leastDegreeOrder(nodes, a, b);
    }
    return order;
  }

  /** Itself as a variant without changes. */
  Variant asItIs() {
    return asItIs;
  }

  /** Typical values of each element, shared by all who ask: not to be changed. */
  double[][] typicalRows() {
    return typicalRows;
  }

  /** Numbers of the elements of a part. */
  public List<Integer> elementsOf(String part) {
    return elementsOf.getOrDefault(part, List.of());
  }

  /**
   * Number of the element that does a load's work: a filament, winding or junction.
   *
   * @param load a load; of a lamp with two filaments the first where none is named
   * @throws IllegalArgumentException if it is no load
   */
  public int loadElement(LoadRef load) {
    Part part = vehicle.requirePart(load.part());
    String role;
    if (part.spec() instanceof PartSpec.DualLamp d) {
      role = "filament:" + load.filament().orElse(d.first());
    } else if (part.kind() == PartKind.LAMP) {
      role = "filament";
    } else {
      role = part.kind() == PartKind.LED ? "junction" : "winding";
    }
    return element(part.id(), role)
        .orElseThrow(() -> new IllegalArgumentException(load + " is no load"));
  }

  /** Number of the element of a part with this role. */
  public Optional<Integer> element(String part, String role) {
    return elementsOf(part).stream().filter(e -> elements.get(e).role().equals(role)).findFirst();
  }

  private static final class Builder {
    private final Vehicle vehicle;
    private final Typicals typicals;
    private final Map<TerminalRef, TerminalRef> parent = new LinkedHashMap<>();
    private final Map<TerminalRef, Integer> nodeOf = new LinkedHashMap<>();
    private final List<Element> elements = new ArrayList<>();
    private int nodes;

    Builder(Vehicle vehicle, Typicals typicals) {
      this.vehicle = vehicle;
      this.typicals = typicals;
    }

    Network build() {
      for (TerminalRef t : vehicle.terminals()) {
        parent.put(t, t);
      }
      for (List<TerminalRef> join : vehicle.joins()) {
        for (TerminalRef t : join) {
          unite(join.get(0), t);
        }
      }
      TerminalRef reference = root(vehicle.groundedPost());
      Map<TerminalRef, Integer> byRoot = new HashMap<>();
      byRoot.put(reference, REFERENCE);
      List<List<TerminalRef>> terminalsOf = new ArrayList<>();
      terminalsOf.add(new ArrayList<>());
      for (TerminalRef t : vehicle.terminals()) {
        Integer node = byRoot.get(root(t));
        if (node == null) {
          node = nodes++;
          byRoot.put(root(t), node);
          terminalsOf.add(new ArrayList<>());
        }
        nodeOf.put(t, node);
        terminalsOf.get(node + 1).add(t);
      }
      for (Part part : vehicle.parts()) {
        add(part);
      }
      while (terminalsOf.size() < nodes + 1) {
        terminalsOf.add(List.of());
      }
      return new Network(vehicle, elements, nodeOf, terminalsOf, nodes);
    }

    private TerminalRef root(TerminalRef t) {
      TerminalRef up = parent.get(t);
      if (up == null) {
        throw new IllegalArgumentException("vehicle " + vehicle.name() + " has no terminal " + t);
      }
      return up.equals(t) ? t : root(up);
    }

    private void unite(TerminalRef one, TerminalRef two) {
      parent.put(root(two), root(one));
    }

    private int at(Part part, String terminal) {
      return at(new TerminalRef(part.id(), terminal));
    }

    private int at(TerminalRef terminal) {
      Integer node = nodeOf.get(terminal);
      if (node == null) {
        throw new IllegalArgumentException(
            "vehicle " + vehicle.name() + " has no terminal " + terminal);
      }
      return node;
    }

    private Spread usual(PartKind kind, String quantity) {
      return typicals.usual(kind, quantity, vehicle.systemVolts());
    }

    private Spread value(PartKind kind, String quantity, Optional<Estimate> stated) {
      return stated.map(e -> value(kind, quantity, e)).orElseGet(() -> usual(kind, quantity));
    }

    private Spread value(PartKind kind, String quantity, Estimate stated) {
      return stated.spread(typicals.relative(kind, quantity));
    }

    /** Ohms at the system voltage from amperes, limits turned round. */
    private Spread ohmsFromAmps(Spread amps) {
      double volts = vehicle.systemVolts() * WORKING_SHARE;
      return new Spread(volts / amps.high(), volts / amps.typical(), volts / amps.low());
    }

    private void add(Part part) {
      String id = part.id();
      PartKind kind = part.kind();
      PartSpec spec = part.spec();
      if (spec instanceof PartSpec.Battery b) {
        elements.add(
            new Element.Cell(
                id,
                "cell",
                at(part, "pos"),
                at(part, "neg"),
                value(kind, "volts", b.volts()),
                value(kind, "ohms", b.ohms())));
      } else if (spec instanceof PartSpec.Wire w) {
        elements.add(new Element.Resistor(id, "conductor", at(w.from()), at(w.to()), wireOhms(w)));
      } else if (spec instanceof PartSpec.Fuse f) {
        Spread ohms =
            f.ohms().map(e -> value(kind, "ohms", e)).orElseGet(() -> typicals.fuseOhms(f.amps()));
        Spread multiple = typicals.constant("fuse-blow-multiple");
        elements.add(
            new Element.Link(
                id, "link", at(part, "feed"), at(part, "load"), ohms, multiple.times(f.amps())));
      } else if (spec instanceof PartSpec.Switch s) {
        Spread ohms = value(kind, "ohms", s.ohms());
        for (PartSpec.SwitchContact c : s.contacts()) {
          elements.add(
              new Element.Contact(
                  id,
                  "contact:" + c.role(),
                  at(part, c.a()),
                  at(part, c.b()),
                  ohms,
                  new Gate.Position(id, c.closedIn())));
        }
      } else if (spec instanceof PartSpec.Relay r) {
        addRelay(part, r);
      } else if (spec instanceof PartSpec.Lamp l) {
        addFilament(part, "filament", "in", at(part, "out"), l.ratedVolts(), l.watts());
      } else if (spec instanceof PartSpec.DualLamp d) {
        int middle = nodes++;
        addFilament(
            part, "filament:" + d.first(), d.first(), middle, d.ratedVolts(), d.firstWatts());
        addFilament(
            part, "filament:" + d.second(), d.second(), middle, d.ratedVolts(), d.secondWatts());
        elements.add(
            new Element.Resistor(
                id, "common", middle, at(part, "common"), usual(kind, "socketOhms")));
      } else if (spec instanceof PartSpec.Led l) {
        Spread forward = value(kind, "forwardVolts", l.forwardVolts());
        Spread amps = value(kind, "amps", l.amps());
        double rest = vehicle.systemVolts() * WORKING_SHARE - forward.typical();
        elements.add(
            new Element.Junction(
                id,
                "junction",
                at(part, "in"),
                at(part, "out"),
                forward,
                new Spread(rest / amps.high(), rest / amps.typical(), rest / amps.low())));
      } else if (spec instanceof PartSpec.Diode d) {
        elements.add(
            new Element.Junction(
                id,
                "junction",
                at(part, "anode"),
                at(part, "cathode"),
                value(kind, "forwardVolts", d.forwardVolts()),
                usual(kind, "onOhms")));
      } else if (spec instanceof PartSpec.Motor m) {
        Spread amps = value(kind, "amps", m.amps());
        Spread run = ohmsFromAmps(amps);
        Spread factor = usual(kind, "stallFactor");
        Spread stall =
            m.stallAmps()
                .map(e -> ohmsFromAmps(value(kind, "stallAmps", e)))
                .orElseGet(
                    () ->
                        new Spread(
                            run.low() / factor.high(),
                            run.typical() / factor.typical(),
                            run.high() / factor.low()));
        elements.add(
            new Element.Motor(
                id,
                "winding",
                at(part, "in"),
                at(part, "out"),
                run,
                stall,
                usual(kind, "startShare").times(vehicle.systemVolts())));
      } else if (spec instanceof PartSpec.PlainLoad p) {
        elements.add(
            new Element.Resistor(
                id,
                "winding",
                at(part, "in"),
                at(part, "out"),
                ohmsFromAmps(value(kind, "amps", p.amps()))));
      } else if (spec instanceof PartSpec.Sender s) {
        elements.add(
            new Element.Resistor(id, "element", at(part, "in"), at(part, "out"), s.ohms()));
      } else if (spec instanceof PartSpec.Driver d) {
        elements.add(
            new Element.Contact(
                id,
                "output",
                at(part, "out"),
                at(part, "ground"),
                value(kind, "ohms", d.ohms()),
                new Gate.Position(id, java.util.Set.of("on"))));
      } else if (spec instanceof PartSpec.Connector c) {
        Spread ohms = value(kind, "ohms", c.ohms());
        for (String cavity : c.cavities()) {
          elements.add(
              new Element.Resistor(
                  id, "cavity:" + cavity, at(part, cavity + "a"), at(part, cavity + "b"), ohms));
        }
      } else if (spec instanceof PartSpec.Splice s) {
        int middle = nodes++;
        Spread ohms = value(kind, "ohms", s.ohms());
        for (String leg : s.legs()) {
          elements.add(new Element.Resistor(id, "leg:" + leg, at(part, leg), middle, ohms));
        }
      } else if (spec instanceof PartSpec.Ground g) {
        elements.add(
            new Element.Resistor(
                id, "joint", at(part, "lug"), at(part, "metal"), value(kind, "ohms", g.ohms())));
      }
    }

    private void addRelay(Part part, PartSpec.Relay r) {
      String id = part.id();
      PartKind kind = part.kind();
      int a = at(part, "86");
      int b = at(part, "85");
      elements.add(
          new Element.Coil(
              id,
              "coil",
              a,
              b,
              value(kind, "coilOhms", r.coilOhms()),
              value(kind, "pullInVolts", r.pullInVolts()),
              value(kind, "dropOutVolts", r.dropOutVolts())));
      Spread contact = value(kind, "contactOhms", r.contactOhms());
      elements.add(
          new Element.Contact(
              id,
              "contact:87",
              at(part, "30"),
              at(part, "87"),
              contact,
              new Gate.ByCoil(Gate.Rest.OPEN)));
      if (r.changeover()) {
        elements.add(
            new Element.Contact(
                id,
                "contact:87a",
                at(part, "30"),
                at(part, "87a"),
                contact,
                new Gate.ByCoil(Gate.Rest.CLOSED)));
      }
      switch (r.suppression()) {
        case NONE -> {}
        case RESISTOR ->
            elements.add(
                new Element.Resistor(id, "suppressor", a, b, usual(kind, "suppressorOhms")));
        case DIODE_CATHODE_85 -> elements.add(suppressor(id, a, b));
        case DIODE_CATHODE_86 -> elements.add(suppressor(id, b, a));
      }
    }

    private Element suppressor(String id, int anode, int cathode) {
      return new Element.Junction(
          id,
          "suppressor",
          anode,
          cathode,
          usual(PartKind.DIODE, "forwardVolts"),
          usual(PartKind.DIODE, "onOhms"));
    }

    private void addFilament(
        Part part, String role, String in, int out, Optional<Double> rated, Estimate watts) {
      double volts = rated.orElse((double) vehicle.systemVolts());
      Spread power = value(part.kind(), "watts", watts);
      Spread amps = power.times(1 / volts);
      Spread ratio = usual(part.kind(), "coldRatio");
      Spread cold = Element.Filament.coldOhms(volts, amps, ratio);
      elements.add(new Element.Filament(part.id(), role, at(part, in), out, volts, amps, cold));
    }

    /**
     * Copper at its temperature, rho L / A with rho from IEC 60028, stranding by IEC 60228, plus a
     * contact at each end.
     */
    private Spread wireOhms(PartSpec.Wire w) {
      Spread metres = w.metres().spread(typicals.relative(w.kind(), "metres"));
      double rho = typicals.constant("copper-resistivity").typical();
      double alpha = typicals.constant("copper-temperature-coefficient").typical();
      Spread temperature = typicals.constant("wire-temperature");
      Spread strand = typicals.constant("stranding-factor");
      double area = sizeOf(w.size());
      double perMetre = rho / area;
      Spread copper =
          new Spread(
              perMetre * strand.low() * (1 + alpha * (temperature.low() - 20)) * metres.low(),
              perMetre
                  * strand.typical()
                  * (1 + alpha * (temperature.typical() - 20))
                  * metres.typical(),
              perMetre * strand.high() * (1 + alpha * (temperature.high() - 20)) * metres.high());
      Spread ends = value(w.kind(), "endOhms", w.endOhms()).times(2);
      return copper.plus(ends);
    }

    private static double sizeOf(WireSize size) {
      return size.mm2();
    }
  }

  /** Loads are rated at a little more than the system's round number: 12.6 V on a 12 V vehicle. */
  static final double WORKING_SHARE = 1.05;
}
