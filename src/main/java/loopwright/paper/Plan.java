package loopwright.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import loopwright.knowledge.Starters;
import loopwright.knowledge.WireFuses;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Typicals;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * What all figures of one plan share: the network, its states in the settings that matter, each
 * solved once with typical values, and the figures found so far. Not for several threads.
 */
public final class Plan {

  /** Copper at 20 C, standard annealed (IEC 60028), in ohm mm2 per metre. */
  private static final double COPPER_OHM_MM2_PER_METRE = 0.017241;

  /** Share by which two numbers may differ that are worked out in two ways. */
  private static final double SAME = 1e-5;

  /** Share within which two numbers are of one size. */
  private static final double ALIKE = 1e-3;

  /** Current that only leaks, over dirt and blocked diodes, in amperes. */
  private static final double LEAKS = 1e-6;

  /** Rating that no short reaches, in amperes. */
  private static final double NEVER_BLOWS = 1e6;

  private final Network network;
  private final Vehicle vehicle;
  private final Typicals typicals;
  private final WireFuses wireFuses;
  private final States states;
  private final int feedNode;
  private final Map<Setting, Boolean> cranks = new HashMap<>();
  private final List<Figure> figures = new ArrayList<>();
  private List<Setting> settings = List.of();
  private Optional<Setting> likely = Optional.empty();
  private final Map<String, Part> parts = new HashMap<>();
  private final Map<Integer, List<Integer>> elementsAt = new HashMap<>();

  /**
   * A plan.
   *
   * @param typicals usual values, for what the vehicle doesn't say
   */
  public Plan(Vehicle vehicle, Typicals typicals, WireFuses wireFuses) {
    this(vehicle, typicals, wireFuses, Optional.empty(), () -> false);
  }

  /**
   * A plan that was perhaps checked before.
   *
   * @param before what an earlier check left
   * @param stale whether nobody waits for the figures any more
   */
  Plan(
      Vehicle vehicle,
      Typicals typicals,
      WireFuses wireFuses,
      Optional<Kept> before,
      BooleanSupplier stale) {
    this.network = Network.of(lasting(vehicle, typicals), typicals);
    this.feedNode = network.requireNode(vehicle.feedPost());
    this.states = new States(vehicle, network, before, stale);
    this.vehicle = vehicle;
    this.typicals = typicals;
    this.wireFuses = wireFuses;
    vehicle.parts().forEach(p -> parts.put(p.id(), p));
    for (int e = 0; e < network.elements().size(); e++) {
      Element element = network.elements().get(e);
      elementsAt.computeIfAbsent(element.a(), n -> new ArrayList<>()).add(e);
      elementsAt.computeIfAbsent(element.b(), n -> new ArrayList<>()).add(e);
    }
  }

  /**
   * The vehicle with fuses that never blow: on paper an overload is to be seen, not the dark after
   * it. Their resistance stays.
   */
  private static Vehicle lasting(Vehicle vehicle, Typicals typicals) {
    Network real = Network.of(vehicle, typicals);
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(
        p -> {
          if (!(p.spec() instanceof PartSpec.Fuse)) {
            return p;
          }
          int e = real.element(p.id(), "link").orElseThrow();
          Spread ohms = ((Element.Link) real.elements().get(e)).ohms();
          return p.withSpec(
              new PartSpec.Fuse(
                  NEVER_BLOWS,
                  Optional.of(Estimate.between(ohms.low(), ohms.typical(), ohms.high()))));
        });
    return vehicle.with(parts, vehicle.joins(), vehicle.circuits());
  }

  /** The network, its fuses of a rating that nothing reaches. */
  public Network network() {
    return network;
  }

  public Vehicle vehicle() {
    return vehicle;
  }

  Typicals typicals() {
    return typicals;
  }

  WireFuses wireFuses() {
    return wireFuses;
  }

  List<Figure> figures() {
    return List.copyOf(figures);
  }

  void add(Figure figure) {
    figures.add(figure);
  }

  /** Its states in all settings. */
  States states() {
    return states;
  }

  /** The healthy state in a setting, no fuse blown. */
  public OperatingPoint point(Setting setting) {
    return states.whole(setting);
  }

  /** The state in a setting with one element gone, no fuse blown. */
  public OperatingPoint without(Setting setting, int element) {
    return states.without(setting, element);
  }

  /** Each circuit on by itself. */
  public List<Setting> alone() {
    return vehicle.circuits().stream().map(Circuit::onSetting).distinct().toList();
  }

  /** Everything at rest; each circuit on by itself; all that may be on for long on together. */
  public List<Setting> settings() {
    if (settings.isEmpty()) {
      List<Setting> all = new ArrayList<>(List.of(Setting.REST));
      all.addAll(alone());
      all.add(likely());
      settings = all.stream().distinct().toList();
    }
    return settings;
  }

  /** All that may be on for long on together. */
  public Setting likely() {
    if (likely.isEmpty()) {
      likely = Optional.of(together(lasting()::contains));
    }
    return likely.get();
  }

  /**
   * The setting in which these circuits are on together. Where two need a control in different
   * positions the one that draws more has it; circuits that crank are left out.
   */
  Setting together(Predicate<Circuit> which) {
    Map<String, String> positions = new LinkedHashMap<>();
    List<Circuit> greatestFirst = new ArrayList<>(vehicle.circuits());
    greatestFirst.sort(Comparator.comparingDouble(c -> -about(batteryAmps(point(c.onSetting())))));
    for (Circuit circuit : greatestFirst) {
      boolean starts = circuit.loads().stream().anyMatch(l -> starter(part(l.part())));
      if (!starts && which.test(circuit)) {
        circuit.on().forEach(positions::putIfAbsent);
      }
    }
    return Setting.of(positions);
  }

  /** Circuits that may be on for long: no starter, nothing that springs back by itself. */
  List<Circuit> lasting() {
    return vehicle.circuits().stream()
        .filter(c -> c.loads().stream().noneMatch(l -> starter(part(l.part()))))
        .filter(c -> !momentary(c))
        .toList();
  }

  /** Whether a circuit works only as long as somebody holds a control. */
  public boolean momentary(Circuit circuit) {
    return circuit.on().keySet().stream()
        .anyMatch(c -> part(c).spec() instanceof PartSpec.Switch s && s.momentary());
  }

  /** Whether a part is a motor that cranks an engine. */
  public boolean starter(Part part) {
    return Starters.is(part.spec(), vehicle.systemVolts());
  }

  /** Whether a starter turns in a setting. */
  public boolean cranks(Setting setting) {
    return cranks.computeIfAbsent(
        setting,
        s ->
            vehicle.parts().stream()
                .filter(this::starter)
                .flatMap(p -> network.elementsOf(p.id()).stream())
                .anyMatch(
                    e -> Math.abs(point(s).amps(e)) * vehicle.systemVolts() > Starters.WATTS / 2));
  }

  /** The node of the battery's post that isn't grounded. */
  int feedNode() {
    return feedNode;
  }

  int node(String part, String terminal) {
    return network.requireNode(new TerminalRef(part, terminal));
  }

  /**
   * Largest fuse that protects a wire; empty for straps and starter cables, which have none. Below
   * the chart's thinnest wire by its copper: what is too thin for the chart is never left out.
   */
  OptionalDouble greatestFuse(PartSpec.Wire wire) {
    WireFuses.Row thinnest = wireFuses.rows().get(0);
    double largest = wireFuses.rows().get(wireFuses.rows().size() - 1).mm2();
    double mm2 = wire.size().mm2();
    if (wire.kind() == PartKind.STRAP || mm2 > largest) {
      return OptionalDouble.empty();
    }
    OptionalDouble listed = wireFuses.greatest(mm2);
    return listed.isPresent() ? listed : OptionalDouble.of(thinnest.amps() * mm2 / thinnest.mm2());
  }

  /** The thinnest wire, in the system of another, that may be fused at so much; empty if none. */
  String sizeFor(PartSpec.Wire wire, double amps) {
    return WireSize.sold(wire.size().unit())
        .filter(s -> wireFuses.greatest(s.mm2()).orElse(0) >= amps)
        .findFirst()
        .map(WireSize::toString)
        .orElse("");
  }

  /** Current of an element in amperes, whichever way it flows; 0 where it only leaks. */
  static double amps(OperatingPoint point, int e) {
    double amps = Math.abs(point.amps(e));
    return amps < LEAKS ? 0 : amps;
  }

  /** Whether one number is greater than another by more than two ways to solve a state differ. */
  static boolean more(double one, double two) {
    return one > two + SAME * Math.abs(two);
  }

  /** The size of a number by which to order: the same for two that are nearly the same. */
  static double about(double number) {
    return Math.rint(Math.log(Math.abs(number)) / ALIKE);
  }

  /** The name of a contact. */
  static String contact(Element element) {
    return element.role().substring(element.role().indexOf(':') + 1);
  }

  /** What a contact of a part may carry, if the owner knows. */
  static Optional<Double> rating(Part part) {
    if (part.spec() instanceof PartSpec.Relay r) {
      return r.amps();
    }
    return part.spec() instanceof PartSpec.Switch s ? s.amps() : Optional.empty();
  }

  /** The part with this id, which the vehicle has. */
  Part part(String id) {
    return parts.get(id);
  }

  Part part(Element element) {
    return parts.get(element.part());
  }

  /** Whether an element does a load's work; the contact of a lamp's socket does not. */
  boolean works(Element element) {
    return part(element).kind().isLoad() && !element.role().equals("common");
  }

  /** Whether an element takes volts on purpose: a load, a coil or what lies across a coil. */
  boolean takesVolts(Element element) {
    return works(element)
        || part(element).kind() == PartKind.RELAY && !(element instanceof Element.Contact);
  }

  /** Current that the battery gives in a state, in amperes. */
  double batteryAmps(OperatingPoint point) {
    return Math.abs(point.amps(network.element(vehicle.battery().id(), "cell").orElseThrow()));
  }

  /** Numbers of the elements that end at a node. */
  List<Integer> elementsAt(int node) {
    return elementsAt.getOrDefault(node, List.of());
  }

  /**
   * The node outside a load's socket: the contact of a lamp's socket belongs to the lamp, no wire
   * could better it.
   */
  public int outside(Element load, int node) {
    for (int e : elementsAt(node)) {
      Element element = network.elements().get(e);
      if (element.part().equals(load.part()) && element.role().equals("common")) {
        return element.a() == node ? element.b() : element.a();
      }
    }
    return node;
  }

  /** Typical resistance of a wire's copper at 20 C without its ends, in ohms (IEC 60028). */
  double copperOhms(PartSpec.Wire wire) {
    return COPPER_OHM_MM2_PER_METRE * wire.metres().about() / wire.size().mm2();
  }
}
