package loopwright.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.knowledge.Knowledge;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.paper.Plan;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * All grounds of a vehicle: studs, straps and wires that do a strap's work, and the whole way back
 * from each piece of metal and from each load. Worked out with typical values. Not for several
 * threads.
 */
public final class Grounds {

  /** Current from which a ground counts as used, in amperes. */
  static final double FLOWS = 1e-3;

  private final Plan plan;
  private final Vehicle vehicle;
  private final Network network;
  private final Map<Setting, Returns> returns = new HashMap<>();
  private final List<Ground> all = new ArrayList<>();

  private Grounds(Vehicle vehicle, Knowledge knowledge) {
    this.plan = new Plan(vehicle, knowledge.typicals(), knowledge.wireFuses());
    this.vehicle = vehicle;
    this.network = plan.network();
  }

  /**
   * The grounds of a vehicle that can be solved.
   *
   * @param vehicle a checked vehicle
   * @param knowledge usual values
   */
  public static Grounds of(Vehicle vehicle, Knowledge knowledge) {
    Grounds grounds = new Grounds(vehicle, knowledge);
    grounds.addPieces();
    grounds.addWays();
    return grounds;
  }

  /** Straps, studs and shared wires, then the whole ways from metal and from loads. */
  public List<Ground> all() {
    return List.copyOf(all);
  }

  /** The ground with this id. */
  public Optional<Ground> ground(String id) {
    return all.stream().filter(g -> g.id().equals(id)).findFirst();
  }

  Plan plan() {
    return plan;
  }

  Returns returns(Setting setting) {
    return returns.computeIfAbsent(setting, s -> new Returns(plan, plan.point(s)));
  }

  // ---- pieces --------------------------------------------------------------------------------

  private void addPieces() {
    for (PartKind kind : List.of(PartKind.STRAP, PartKind.GROUND, PartKind.WIRE)) {
      for (Part part : vehicle.parts()) {
        boolean wire = part.kind() == PartKind.WIRE;
        if (part.kind() == kind && (!wire || bonds((PartSpec.Wire) part.spec()))) {
          piece(part).ifPresent(all::add);
        }
      }
    }
  }

  private Optional<Ground> piece(Part part) {
    int e = network.elementsOf(part.id()).get(0);
    Element element = network.elements().get(e);
    Optional<Setting> most =
        plan.settings().stream()
            .filter(s -> returns(s).grounded().contains(element.a()))
            .filter(s -> returns(s).grounded().contains(element.b()))
            .max(Comparator.comparingDouble(s -> Math.abs(plan.point(s).amps(e))));
    if (most.isEmpty()) {
      return Optional.empty();
    }
    List<TerminalRef> ends = ends(part);
    OperatingPoint point = plan.point(most.get());
    boolean aIsFar =
        returns(most.get())
            .of(e)
            .filter(s -> s.elements().size() == 1)
            .map(s -> s.from() == element.a())
            .orElse(Math.abs(point.volts(element.a())) >= Math.abs(point.volts(element.b())));
    Ground.Kind kind =
        switch (part.kind()) {
          case STRAP -> Ground.Kind.STRAP;
          case GROUND -> Ground.Kind.STUD;
          default -> Ground.Kind.WIRE;
        };
    return Optional.of(
        new Ground(
            part.id(),
            kind,
            ends.get(aIsFar ? 0 : 1),
            ends.get(aIsFar ? 1 : 0),
            List.of(part.id()),
            List.of(),
            element.values()[0]));
  }

  private static List<TerminalRef> ends(Part part) {
    return part.spec() instanceof PartSpec.Wire w
        ? List.of(w.from(), w.to())
        : List.of(new TerminalRef(part.id(), "lug"), new TerminalRef(part.id(), "metal"));
  }

  /** Whether a wire does a strap's work: both ends lie on metal, studs, splices or the post. */
  private boolean bonds(PartSpec.Wire wire) {
    return bonds(wire.from()) && bonds(wire.to());
  }

  private boolean bonds(TerminalRef end) {
    return network.terminals(network.requireNode(end)).stream()
        .anyMatch(
            t ->
                t.equals(vehicle.groundedPost())
                    || switch (vehicle.requirePart(t.part()).kind()) {
                      case GROUND, BODY, SPLICE -> true;
                      default -> false;
                    });
  }

  // ---- whole ways ----------------------------------------------------------------------------

  /** Loads that are grounded at one node, and the setting in which most comes from there. */
  private static final class Beginning {
    final Set<String> loads = new LinkedHashSet<>();
    Setting setting = Setting.REST;
    double amps;
  }

  private void addWays() {
    Map<Integer, Beginning> beginnings = new LinkedHashMap<>();
    for (Circuit circuit : vehicle.circuits()) {
      for (LoadRef load : circuit.loads()) {
        OperatingPoint point = plan.point(circuit.onSetting());
        double amps = Math.abs(point.amps(network.loadElement(load)));
        int node = groundedEnd(load, point);
        if (amps >= FLOWS
            && node != Network.REFERENCE
            && returns(circuit.onSetting()).grounded().contains(node)) {
          Beginning beginning = beginnings.computeIfAbsent(node, n -> new Beginning());
          beginning.loads.add(load.part());
          if (amps > beginning.amps) {
            beginning.amps = amps;
            beginning.setting = circuit.onSetting();
          }
        }
      }
    }
    Set<Integer> bodies = new LinkedHashSet<>();
    for (Part part : vehicle.parts()) {
      if (part.kind() == PartKind.BODY) {
        TerminalRef metal = new TerminalRef(part.id(), "metal");
        int node = network.requireNode(metal);
        Beginning beginning = beginnings.getOrDefault(node, new Beginning());
        if (node != Network.REFERENCE && bodies.add(node)) {
          way(part.id(), Ground.Kind.BODY, metal, node, busiest(node, beginning), beginning.loads)
              .ifPresent(all::add);
        }
      }
    }
    beginnings.forEach(
        (node, beginning) -> {
          String load = beginning.loads.iterator().next();
          if (!bodies.contains(node)) {
            terminal(node, load)
                .flatMap(
                    from ->
                        way(load, Ground.Kind.LOAD, from, node, beginning.setting, beginning.loads))
                .ifPresent(all::add);
          }
        });
  }

  /** The node at which a load's ground side begins. */
  int groundedEnd(LoadRef load, OperatingPoint point) {
    Element element = network.elements().get(network.loadElement(load));
    boolean aIsFed = Math.abs(point.volts(element.a())) > Math.abs(point.volts(element.b()));
    return plan.outside(element, aIsFed ? element.b() : element.a());
  }

  /** The setting in which most current leaves a piece of metal towards the post. */
  private Setting busiest(int node, Beginning beginning) {
    Setting best = beginning.setting;
    double most = -1;
    for (Setting setting : plan.settings()) {
      List<Integer> way = returns(setting).way(node);
      double amps = way.isEmpty() ? -1 : Math.abs(plan.point(setting).amps(way.get(0)));
      if (amps > most) {
        most = amps;
        best = setting;
      }
    }
    return best;
  }

  private Optional<Ground> way(
      String id, Ground.Kind kind, TerminalRef from, int node, Setting setting, Set<String> loads) {
    List<Integer> way = returns(setting).way(node);
    if (way.isEmpty()) {
      return Optional.empty();
    }
    Set<String> pieces = new LinkedHashSet<>();
    Spread own = Spread.exactly(0);
    for (int e : way) {
      pieces.add(network.elements().get(e).part());
      own = own.plus(network.elements().get(e).values()[0]);
    }
    return Optional.of(
        new Ground(
            id, kind, from, vehicle.groundedPost(), List.copyOf(pieces), List.copyOf(loads), own));
  }

  // ---- where leads go ------------------------------------------------------------------------

  /** A terminal at a node for a lead: one of a part that is preferred, or else the handiest. */
  Optional<TerminalRef> terminal(int node, String preferred) {
    return network.terminals(node).stream()
        .min(
            Comparator.comparing((TerminalRef t) -> !t.part().equals(preferred))
                .thenComparing(t -> !vehicle.access(t).reachable())
                .thenComparingDouble(t -> vehicle.access(t).minutes()));
  }
}
