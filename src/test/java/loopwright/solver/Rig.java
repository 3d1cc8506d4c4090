package loopwright.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;

/**
 * A small vehicle on a test bench, put together from parts between named nodes. Node {@code "0"} is
 * the battery's grounded post. Values are exact unless a test gives a spread.
 */
public final class Rig {
  private final int systemVolts;
  private final GroundedPole grounded;
  private final List<java.util.function.Supplier<Part>> parts = new ArrayList<>();
  private final Map<String, List<TerminalRef>> nodes = new LinkedHashMap<>();
  private final List<Circuit> circuits = new ArrayList<>();

  private Rig(int systemVolts, GroundedPole grounded) {
    this.systemVolts = systemVolts;
    this.grounded = grounded;
  }

  /** BAT -- top -- RA 1 to 3, typical 2 -- mid -- RB 4 to 4 ohm -- ground. */
  static Rig divider() {
    return of(12)
        .battery(12, 0.1, "top")
        .part("RA", new PartSpec.Sender(new Spread(1, 2, 3)), "top", "mid")
        .resistor("RB", 4, "mid", "0");
  }

  /** Negative to ground. */
  public static Rig of(int systemVolts) {
    return new Rig(systemVolts, GroundedPole.NEGATIVE);
  }

  /** Positive to ground. */
  public static Rig positiveGround(int systemVolts) {
    return new Rig(systemVolts, GroundedPole.POSITIVE);
  }

  /** Any part between nodes, one a terminal in the order of its spec. */
  public Rig part(String id, PartSpec spec, String... at) {
    if (spec.terminals().size() != at.length) {
      throw new IllegalArgumentException(
          id + " has terminals " + spec.terminals() + ", not " + Arrays.toString(at));
    }
    for (int i = 0; i < at.length; i++) {
      nodes
          .computeIfAbsent(at[i], k -> new ArrayList<>())
          .add(new TerminalRef(id, spec.terminals().get(i)));
    }
    parts.add(() -> Part.of(id, id, spec));
    return this;
  }

  /** A battery with its live post on one node and the grounded one on node 0. */
  public Rig battery(double volts, double ohms, String live) {
    return battery(exactly(volts), exactly(ohms), live);
  }

  /** A battery with spreads. */
  public Rig battery(Estimate volts, Estimate ohms, String live) {
    PartSpec spec = new PartSpec.Battery(Optional.of(volts), Optional.of(ohms));
    return grounded == GroundedPole.NEGATIVE
        ? part("BAT", spec, live, "0")
        : part("BAT", spec, "0", live);
  }

  /** A resistor. */
  public Rig resistor(String id, double ohms, String a, String b) {
    return part(id, new PartSpec.Sender(Spread.exactly(ohms)), a, b);
  }

  /** A lamp that takes its watts at these volts. */
  public Rig lamp(String id, double watts, double ratedVolts, String a, String b) {
    return part(id, new PartSpec.Lamp(Optional.of(ratedVolts), exactly(watts)), a, b);
  }

  /** A fuse of exact cold resistance. */
  public Rig fuse(String id, double amps, double ohms, String a, String b) {
    return part(id, new PartSpec.Fuse(amps, Optional.of(exactly(ohms))), a, b);
  }

  /** A plain on-off switch, at rest off. */
  public Rig onOff(String id, double ohms, String a, String b) {
    return part(id, PartSpec.Switch.onOff(Optional.of(exactly(ohms))), a, b);
  }

  /** A wire of 18 AWG between two nodes that have terminals of their own. */
  public Rig wire(String id, double metres, String a, String b) {
    return wire(id, "18 AWG", metres, a, b);
  }

  /** A wire of any size between two nodes that have terminals of their own. */
  public Rig wire(String id, String size, double metres, String a, String b) {
    return conductor(PartKind.WIRE, id, size, Estimate.of(metres), Optional.empty(), a, b);
  }

  /** A ground strap between two nodes that have terminals of their own, its ends with spreads. */
  public Rig strap(String id, String size, Estimate metres, Estimate endOhms, String a, String b) {
    return conductor(PartKind.STRAP, id, size, metres, Optional.of(endOhms), a, b);
  }

  private Rig conductor(
      PartKind kind,
      String id,
      String size,
      Estimate metres,
      Optional<Estimate> endOhms,
      String a,
      String b) {
    parts.add(
        () ->
            Part.of(
                id,
                id,
                new PartSpec.Wire(
                    kind,
                    terminal(a),
                    terminal(b),
                    WireSize.parse(size),
                    metres,
                    endOhms,
                    "",
                    "")));
    return this;
  }

  /** A circuit served by one load; controls as {@code "S1=on"}. */
  public Rig circuit(String id, String load, String... on) {
    Map<String, String> positions = new LinkedHashMap<>();
    for (String control : on) {
      positions.put(control.split("=")[0], control.split("=")[1]);
    }
    circuits.add(new Circuit(id, id, List.of(LoadRef.parse(load)), positions, ""));
    return this;
  }

  /** An estimate without any spread. */
  public static Estimate exactly(double value) {
    return Estimate.exactly(value);
  }

  /** The first terminal put on a node. */
  public TerminalRef terminal(String node) {
    List<TerminalRef> at = nodes.get(node);
    if (at == null) {
      throw new IllegalArgumentException("no terminal on node " + node);
    }
    return at.get(0);
  }

  /** The vehicle. */
  public Vehicle vehicle() {
    List<List<TerminalRef>> joins = new ArrayList<>();
    nodes.values().stream().filter(l -> l.size() > 1).forEach(joins::add);
    return new Vehicle(
        "rig",
        "rig",
        systemVolts,
        grounded,
        parts.stream().map(java.util.function.Supplier::get).toList(),
        joins,
        circuits,
        "");
  }

  /** Its network. */
  public Network network() {
    return Network.of(vehicle(), Bench.KNOWLEDGE.typicals());
  }

  /** Solved with everything at rest, by the whole matrix. */
  public Solved solve(String... on) {
    Network network = network();
    return solved(Solver.full(network), Variant.healthy(network), setting(on));
  }

  /** Solved in any way. */
  public Solved solved(Solver solver, Variant variant, Setting setting) {
    return new Solved(solver.network(), solver.solve(variant, setting));
  }

  /** A setting, controls as {@code "S1=on"}. */
  public static Setting setting(String... on) {
    Setting setting = Setting.REST;
    for (String control : on) {
      setting = setting.with(control.split("=")[0], control.split("=")[1]);
    }
    return setting;
  }

  /** A solved rig, asked by node and part names. */
  public final class Solved {
    private final Network network;
    private final OperatingPoint point;

    Solved(Network network, OperatingPoint point) {
      this.network = network;
      this.point = point;
    }

    /** The point itself. */
    public OperatingPoint point() {
      return point;
    }

    /** The network it belongs to. */
    public Network network() {
      return network;
    }

    /** Number of a node. */
    public int node(String name) {
      return network.requireNode(terminal(name));
    }

    /** Volts of a node against the grounded post. */
    public double volts(String node) {
      return point.volts(node(node));
    }

    /** Volts from one node to another. */
    public double volts(String red, String black) {
      return volts(red) - volts(black);
    }

    /** Current from the first to the second terminal of an element. */
    public double amps(String part, String role) {
      return point.amps(network.element(part, role).orElseThrow());
    }

    /** Current of a resistor. */
    public double amps(String resistor) {
      return amps(resistor, "element");
    }
  }
}
