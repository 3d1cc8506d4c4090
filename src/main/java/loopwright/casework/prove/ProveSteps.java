package loopwright.casework.prove;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.casework.FirstPower;
import loopwright.casework.Phrases;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Hazards;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Workbench;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/**
 * The steps by which one subject is proven with the vehicle powered up so far, and what a healthy
 * one shows at each, found by the same predictions as in finding a fault. Not for several threads.
 */
final class ProveSteps {

  /**
   * Ohms of the worst short that is looked for before power, leads not counted: the greatest that
   * the failure tables list for a touching wire.
   */
  private static final double WORST_SHORT = 1;

  /** Volts that still count as none before ohms: what shows as 0.00 V, and a digit. */
  private static final double ZERO = 0.01;

  /** Volts that still count as none where none should be yet: what open wires pick up. */
  private static final double STRAY = 0.05;

  /** Share of the supply from which a point counts as live. */
  private static final double LIVE = 0.5;

  /** Least current of a load that is on, in amperes. */
  private static final double FLOWS = 1e-4;

  private final Vehicle whole;
  private final ProvePlan plan;
  private final FirstPower power;
  private final Vehicle vehicle;
  private final MeterSpec meter;
  private final Workbench bench;
  private final HealthyBands bands;
  private final List<Step> steps = new ArrayList<>();

  private ProveSteps(
      Vehicle whole,
      ProvePlan plan,
      FirstPower power,
      Knowledge knowledge,
      MeterSpec meter,
      Phrases phrases) {
    this.whole = whole;
    this.plan = plan;
    this.power = power;
    this.vehicle = power.of(whole, phrases);
    this.meter = meter;
    this.bench = new Workbench(Network.of(vehicle, knowledge.typicals()), knowledge, meter);
    this.bands = new HealthyBands(bench);
  }

  /**
   * The steps of a subject.
   *
   * @param whole the vehicle as it is meant to be
   * @param power how far it is powered up
   * @param own ids of the fuses and relays that are fitted for this subject, in their order
   */
  static ProveSteps of(
      Subject subject,
      List<String> own,
      Vehicle whole,
      ProvePlan plan,
      FirstPower power,
      Knowledge knowledge,
      MeterSpec meter,
      Phrases phrases) {
    ProveSteps steps = new ProveSteps(whole, plan, power, knowledge, meter, phrases);
    switch (subject.kind()) {
      case SUPPLY -> steps.supply();
      case FEED -> steps.feed(subject);
      case CIRCUIT -> steps.circuit(subject.circuit().orElseThrow(), own);
      case FULL -> steps.hand(Step.What.SWAP, whole.battery().id(), List.of());
    }
    return steps;
  }

  /** The steps in their order. */
  List<Step> all() {
    return List.copyOf(steps);
  }

  /**
   * What is lost on a stretch of a way on which too much is lost.
   *
   * @param way the step that showed it
   * @param from where on its path the stretch begins
   * @param to where it ends
   */
  Step piece(Step way, int from, int to) {
    TerminalRef red = way.path().get(from);
    TerminalRef black = way.path().get(to);
    Check check = Check.measure(CheckKind.VOLTS, red, black, way.check().orElseThrow().setting());
    return new Step(
        id(Step.What.PIECE, check),
        Step.What.PIECE,
        Optional.of(check),
        Double.NEGATIVE_INFINITY,
        bands.band(check)[1],
        Optional.empty(),
        way.about(),
        way.load(),
        List.of(),
        way.cautions());
  }

  /** What a short reads at most before power, leads and all, in ohms. */
  static double worstShort(MeterSpec meter) {
    return meter.leadOhms().high() + WORST_SHORT;
  }

  // ---- the battery, the grounds and the way to the first fuse --------------------------------

  private void supply() {
    String battery = vehicle.battery().id();
    String fuse = FirstPower.fuseId(whole);
    TerminalRef feed = power.feed(whole);
    TerminalRef ground = ground();
    hand(Step.What.BARE, battery, List.of(new Step.Caution("first", "")));
    Setting dead = Setting.REST.without(battery);
    Setting open = power.fuse().isPresent() ? dead.without(fuse) : dead;
    shortTest(feed, open, power.fuse().isPresent() ? fuse : battery, Optional.empty());
    for (Part part : vehicle.parts()) {
      if (part.kind() == PartKind.BODY && !part.id().equals(ground.part())) {
        TerminalRef metal = new TerminalRef(part.id(), "metal");
        bonded(metal, ground, open, part.id());
      }
    }
    TerminalRef lug = strapEnd();
    if (!lug.equals(ground)) {
      bonded(lug, ground, open, battery);
    }
    hand(Step.What.CONNECT, battery, List.of(new Step.Caution("same-fuse", "")));
    reading(
        Step.What.BATTERY,
        Check.measure(CheckKind.VOLTS, vehicle.feedPost(), vehicle.groundedPost(), Setting.REST),
        battery,
        Optional.empty(),
        List.of());
    reading(
        Step.What.LIVE,
        Check.measure(CheckKind.VOLTS, feed, ground, Setting.REST),
        power.fuse().isPresent() ? fuse : battery,
        Optional.empty(),
        List.of());
  }

  private void bonded(TerminalRef one, TerminalRef other, Setting dead, String about) {
    zero(one, other, dead, about);
    reading(
        Step.What.BONDED,
        Check.measure(CheckKind.OHMS, one, other, dead),
        about,
        Optional.empty(),
        batteryOff());
  }

  /** Where the black lead rests while the battery's grounded lead is off its post: bare metal. */
  private TerminalRef ground() {
    return vehicle.parts().stream()
        .filter(p -> p.kind() == PartKind.BODY)
        .map(p -> new TerminalRef(p.id(), "metal"))
        .filter(t -> vehicle.access(t).reachable())
        .findFirst()
        .orElseGet(this::strapEnd);
  }

  /** The other end of what lies on the grounded post. */
  private TerminalRef strapEnd() {
    TerminalRef post = vehicle.groundedPost();
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Wire w) {
        if (w.from().equals(post)) {
          return w.to();
        }
        if (w.to().equals(post)) {
          return w.from();
        }
      }
    }
    return post;
  }

  // ---- a fuse or relay that feeds several circuits -------------------------------------------

  private void feed(Subject subject) {
    String part = subject.part().orElseThrow();
    TerminalRef out = outlet(part, plan.waysTo(part));
    rating(part);
    shortTest(out, off(Set.of(part)), part, Optional.empty());
    hand(Step.What.FIT, part, List.of(new Step.Caution("same-fuse", "")));
    plan.draws().stream()
        .filter(d -> !d.cranks() && plan.needs(d.circuit().id()).contains(part))
        .map(d -> d.circuit().onSetting())
        .filter(on -> isLive(out, on))
        .findFirst()
        .ifPresent(on -> live(out, on, part, Optional.empty()));
  }

  /**
   * Volts at a point with as few controls moved as make it live; and none at rest if it isn't live
   * there.
   */
  private void live(TerminalRef at, Setting on, String about, Optional<LoadRef> load) {
    Setting live = on;
    for (String control : on.positions().keySet()) {
      live = isLive(at, live.resting(control)) ? live.resting(control) : live;
    }
    if (!isLive(at, live)) {
      return;
    }
    if (!live.equals(Setting.REST)) {
      Check none = toGround(at, Setting.REST);
      reading(Step.What.DEAD, none, -STRAY, STRAY, about, load, List.of());
    }
    reading(Step.What.LIVE, toGround(at, live), about, load, List.of());
  }

  private Check toGround(TerminalRef at, Setting setting) {
    return Check.measure(CheckKind.VOLTS, at, vehicle.groundedPost(), setting);
  }

  private boolean isLive(TerminalRef at, Setting setting) {
    OperatingPoint point = bench.point(bench.healthy(), setting);
    double supply = Math.abs(point.volts(bench.network().requireNode(vehicle.feedPost())));
    return Math.abs(point.volts(bench.network().requireNode(at))) > LIVE * supply;
  }

  // ---- a circuit -----------------------------------------------------------------------------

  private void circuit(Circuit circuit, List<String> own) {
    Setting on = circuit.onSetting();
    boolean airBag =
        circuit.loads().stream()
            .anyMatch(l -> Hazards.of(vehicle.requirePart(l.part())).contains("airbag"));
    own.forEach(this::rating);
    if (!airBag) {
      beforePower(circuit, own, on);
    }
    if (!own.isEmpty()) {
      hand(Step.What.FIT, own.get(own.size() - 1), List.of(new Step.Caution("same-fuse", "")));
    }
    for (LoadRef load : circuit.loads()) {
      if (amps(load, on) > FLOWS && amps(load, Setting.REST) < FLOWS) {
        look(Step.What.REST, load, Setting.REST, Seen.OFF);
      }
    }
    if (!airBag) {
      own.stream()
          .filter(p -> vehicle.requirePart(p).kind() == PartKind.FUSE)
          .forEach(f -> live(new TerminalRef(f, "load"), on, f, first(circuit)));
    }
    for (LoadRef load : circuit.loads()) {
      look(Step.What.WORKS, load, on, Seen.ON);
      if (!airBag) {
        drops(load, on);
      }
    }
  }

  private static Optional<LoadRef> first(Circuit circuit) {
    return circuit.loads().stream().findFirst();
  }

  private double amps(LoadRef load, Setting setting) {
    return Math.abs(bench.point(bench.healthy(), setting).amps(bench.loadElement(load)));
  }

  /**
   * Ohms to bare metal where the circuit begins: behind its last fuse, and behind its own relays,
   * which keep what lies behind them out of sight.
   */
  private void beforePower(Circuit circuit, List<String> own, Setting on) {
    List<List<CircuitWays.Pass>> ways = plan.ways(circuit.id());
    Set<String> tested = new LinkedHashSet<>();
    for (LoadRef load : circuit.loads()) {
      ways.stream()
          .filter(w -> w.stream().anyMatch(p -> p.part().equals(load.part())))
          .flatMap(List::stream)
          .takeWhile(p -> !p.part().equals(load.part()))
          .map(CircuitWays.Pass::part)
          .filter(p -> vehicle.requirePart(p).kind() == PartKind.FUSE)
          .reduce((a, b) -> b)
          .ifPresent(tested::add);
    }
    own.stream()
        .filter(p -> vehicle.requirePart(p).spec() instanceof PartSpec.Relay)
        .forEach(tested::add);
    own.stream().filter(p -> vehicle.requirePart(p).kind() == PartKind.FUSE).forEach(tested::add);
    Set<String> apart = new LinkedHashSet<>(own);
    apart.addAll(tested);
    Setting off = new Setting(on.positions(), off(apart).apart());
    for (String part : tested) {
      shortTest(outlet(part, ways), off, part, first(circuit));
    }
  }

  /** The terminal of a fuse or relay that leads on to what it feeds. */
  private TerminalRef outlet(String part, List<List<CircuitWays.Pass>> ways) {
    if (vehicle.requirePart(part).kind() == PartKind.FUSE) {
      return new TerminalRef(part, "load");
    }
    for (List<CircuitWays.Pass> way : ways) {
      for (CircuitWays.Pass pass : way) {
        Optional<TerminalRef> contact =
            pass.out().stream()
                .filter(t -> t.part().equals(part) && t.terminal().startsWith("87"))
                .findFirst();
        if (pass.part().equals(part) && contact.isPresent()) {
          return contact.get();
        }
      }
    }
    return new TerminalRef(part, "87");
  }

  private Setting off(Set<String> apart) {
    return Setting.REST.without(apart).without(vehicle.battery().id());
  }

  private void drops(LoadRef load, Setting on) {
    Optional<Loop> loop = Loop.trace(bench, on, bench.loadElement(load));
    if (loop.isEmpty()) {
      return;
    }
    int at = -1;
    for (int i = 0; i < loop.get().pieces().size(); i++) {
      if (loop.get().pieces().get(i).part().equals(load.part())) {
        at = i;
      }
    }
    if (at < 0) {
      return;
    }
    List<Integer> nodes = loop.get().nodes();
    List<TerminalRef> there = points(nodes.subList(0, at + 1), load.part());
    List<TerminalRef> back = points(nodes.subList(at + 1, nodes.size()), load.part());
    power.fuse().ifPresent(f -> there.remove(vehicle.feedPost()));
    drop(Step.What.FEED, there, on, load);
    drop(Step.What.RETURN, back, on, load);
  }

  /** The points of a way that leads get at, a node each. */
  private List<TerminalRef> points(List<Integer> nodes, String own) {
    List<TerminalRef> points = new ArrayList<>();
    nodes.forEach(n -> reachable(n, own).ifPresent(points::add));
    return points;
  }

  /** A drop with the leads so that a healthy one reads above zero with either post grounded. */
  private void drop(Step.What what, List<TerminalRef> way, Setting on, LoadRef load) {
    if (way.size() < 2) {
      return;
    }
    List<TerminalRef> path = new ArrayList<>(way);
    if (vehicle.grounded() == GroundedPole.POSITIVE) {
      Collections.reverse(path);
    }
    Check check = Check.measure(CheckKind.VOLTS, path.get(0), path.get(path.size() - 1), on);
    double most = bands.band(check)[1];
    // A sender or a series resistor takes its volts on purpose.
    if (most < LIVE * vehicle.systemVolts()) {
      steps.add(
          new Step(
              id(what, check),
              what,
              Optional.of(check),
              Double.NEGATIVE_INFINITY,
              most,
              Optional.empty(),
              load.part(),
              Optional.of(load),
              path,
              moving(load)));
    }
  }

  private boolean preferred(TerminalRef at, String own) {
    return at.part().equals(own)
        || at.equals(vehicle.groundedPost())
        || at.equals(power.feed(whole));
  }

  /** The terminal of a node that a lead gets at, the load's own before others. */
  private Optional<TerminalRef> reachable(int node, String own) {
    return bench.network().terminals(node).stream()
        .filter(t -> vehicle.access(t).reachable())
        .min(
            Comparator.<TerminalRef>comparingInt(t -> preferred(t, own) ? 0 : 1)
                .thenComparingDouble(t -> vehicle.access(t).minutes()));
  }

  // ---- single steps --------------------------------------------------------------------------

  private void rating(String part) {
    if (vehicle.requirePart(part).kind() == PartKind.FUSE) {
      hand(Step.What.RATING, part, List.of(new Step.Caution("same-fuse", "")));
    }
  }

  /**
   * No short from a point to bare metal: with the loads behind it if they don't hide one, else with
   * those out that come out; not at all where a short couldn't be told from the loads.
   */
  private void shortTest(TerminalRef at, Setting dead, String about, Optional<LoadRef> load) {
    TerminalRef ground = ground();
    Set<String> all = loadsBehind(about);
    Set<String> on = carrying(all, dead);
    for (Set<String> loadsOut : List.of(electronics(all), on, all)) {
      Check check = Check.measure(CheckKind.OHMS, at, ground, dead.without(loadsOut));
      double[] band = bands.band(check);
      if (band[0] > worstShort(meter)) {
        zero(at, ground, check.setting(), about);
        reading(Step.What.SHORT, check, band[0], band[1], about, load, batteryOff());
        return;
      }
    }
  }

  /** Those of the loads to which ohms are not taken. */
  private Set<String> electronics(Set<String> loads) {
    Set<String> out = new HashSet<>(loads);
    out.removeIf(l -> vehicle.requirePart(l).kind() != PartKind.ELECTRONICS);
    return out;
  }

  /** The loads behind a part that come out. */
  private Set<String> loadsBehind(String part) {
    return vehicle.circuits().stream()
        .filter(c -> plan.passes(c.id(), part))
        .flatMap(c -> c.loads().stream())
        .map(LoadRef::part)
        .filter(p -> vehicle.requirePart(p).apartMinutes().isPresent())
        .collect(Collectors.toSet());
  }

  /** Those of the loads that carry current with the controls so, all fitted and the battery on. */
  private Set<String> carrying(Set<String> loads, Setting dead) {
    OperatingPoint point =
        bench.point(bench.healthy(), new Setting(dead.positions(), Setting.REST.apart()));
    Set<String> out = new HashSet<>(electronics(loads));
    for (String load : loads) {
      if (bench.network().elementsOf(load).stream()
          .anyMatch(e -> Math.abs(point.amps(e)) > FLOWS)) {
        out.add(load);
      }
    }
    return out;
  }

  private void zero(TerminalRef at, TerminalRef ground, Setting dead, String about) {
    Check check = Check.measure(CheckKind.VOLTS, at, ground, dead);
    reading(Step.What.ZERO, check, -ZERO, ZERO, about, Optional.empty(), batteryOff());
  }

  private static List<Step.Caution> batteryOff() {
    return List.of(new Step.Caution("battery-off", ""));
  }

  private List<Step.Caution> moving(LoadRef load) {
    Part part = vehicle.requirePart(load.part());
    return Hazards.of(part).stream().map(h -> new Step.Caution(h, part.title())).toList();
  }

  private void look(Step.What what, LoadRef load, Setting setting, Seen seen) {
    Check check = Check.look(load.toString(), setting);
    steps.add(
        new Step(
            id(what, check),
            what,
            Optional.of(check),
            0,
            0,
            Optional.of(seen),
            load.part(),
            Optional.of(load),
            List.of(),
            what == Step.What.WORKS ? moving(load) : List.of()));
  }

  private void reading(
      Step.What what,
      Check check,
      String about,
      Optional<LoadRef> load,
      List<Step.Caution> cautions) {
    double[] band = bands.band(check);
    reading(what, check, band[0], band[1], about, load, cautions);
  }

  private void reading(
      Step.What what,
      Check check,
      double low,
      double high,
      String about,
      Optional<LoadRef> load,
      List<Step.Caution> cautions) {
    steps.add(
        new Step(
            id(what, check),
            what,
            Optional.of(check),
            low,
            high,
            Optional.empty(),
            about,
            load,
            List.of(),
            cautions));
  }

  private void hand(Step.What what, String about, List<Step.Caution> cautions) {
    steps.add(
        new Step(
            what.word() + " " + about,
            what,
            Optional.empty(),
            0,
            0,
            Optional.empty(),
            about,
            Optional.empty(),
            List.of(),
            cautions));
  }

  private static String id(Step.What what, Check check) {
    return what.word() + " " + check.id();
  }
}
