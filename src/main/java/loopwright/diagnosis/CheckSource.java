package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Meters;
import loopwright.solver.Network;

/** The checks that could be made of a complaint, before any rule has its say. */
final class CheckSource {

  /** Drop in volts below which a reading across a piece belongs on the lowest range. */
  private static final double SMALL_DROP = 0.2;

  private final Workbench bench;
  private final Vehicle vehicle;
  private final Network network;
  private final Complaint complaint;
  private final Optional<Loop> loop;
  private final Twins twins;
  private final Set<String> suspected = new LinkedHashSet<>();

  CheckSource(Workbench bench, Complaint complaint, Optional<Loop> loop) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.network = bench.network();
    this.complaint = complaint;
    this.loop = loop;
    this.twins = new Twins(vehicle);
  }

  /**
   * For ohms: battery apart, controls as for the circuit, and the loop cut from everything else at
   * both ends by pulling its own fuse and taking its load out, where that can be done.
   */
  Setting alone() {
    if (alone != null) {
      return alone;
    }
    Setting setting = complaint.on().without(vehicle.battery().id());
    Optional<Part> fuse = ownFuse();
    if (fuse.isPresent()) {
      setting = setting.without(fuse.get().id());
    }
    Part load = vehicle.requirePart(complaint.load().part());
    if (load.apartMinutes().isPresent()) {
      setting = setting.without(load.id());
    }
    if (fuse.isPresent()) {
      TerminalRef end = new TerminalRef(fuse.get().id(), "load");
      for (int n = 0; n < MOST_UNPLUGGED; n++) {
        Optional<String> way = wayRound(end, setting);
        if (way.isEmpty()) {
          break;
        }
        setting = setting.without(way.get());
      }
    }
    alone = setting;
    return setting;
  }

  private Setting alone;

  /** Most loads that are unplugged for one ohms reading. */
  private static final int MOST_UNPLUGGED = 5;

  /** Ohms to ground above which a short stands out. Common practice. */
  static final double LOOSE_OHMS = 20;

  /** The load through which a healthy circuit lets most of the meter's current pass to ground. */
  private Optional<String> wayRound(TerminalRef end, Setting setting) {
    Meters.Shown shown =
        bench.shown(
            bench.healthy(),
            Check.measure(CheckKind.OHMS, end, vehicle.groundedPost(), setting),
            bench.point(bench.healthy(), setting));
    if (shown.overRange() || shown.value() > LOOSE_OHMS) {
      return Optional.empty();
    }
    double most = 0;
    Optional<String> way = Optional.empty();
    for (int e = 0; e < network.elements().size(); e++) {
      Part part = vehicle.requirePart(network.elements().get(e).part());
      double amps = Math.abs(shown.point().amps(e));
      if (amps > most && (part.kind().isLoad() || part.kind() == PartKind.RELAY)) {
        most = amps;
        way = Optional.of(part.id());
      }
    }
    return way;
  }

  /** The last fuse before the load. */
  private Optional<Part> ownFuse() {
    Optional<Part> fuse = Optional.empty();
    if (loop.isPresent()) {
      for (Loop.Piece piece : loop.get().pieces()) {
        Part part = vehicle.requirePart(piece.part());
        if (part.kind() == PartKind.FUSE) {
          fuse = Optional.of(part);
        } else if (part.id().equals(complaint.load().part())) {
          break;
        }
      }
    }
    return fuse;
  }

  /** The loop alone, and cut further at each of its connectors and switches: to halve a short. */
  private List<Setting> cuts() {
    Set<Setting> cuts = new LinkedHashSet<>();
    Setting alone = alone();
    cuts.add(alone);
    if (loop.isPresent()) {
      for (Loop.Piece piece : loop.get().pieces()) {
        Part part = vehicle.requirePart(piece.part());
        if (part.kind() == PartKind.CONNECTOR) {
          cuts.add(alone.without(part.id()));
        } else if (part.spec() instanceof PartSpec.Switch s
            && complaint.on().positions().containsKey(part.id())) {
          cuts.add(alone.with(part.id(), s.rest()));
        }
      }
    }
    return new ArrayList<>(cuts);
  }

  /**
   * All candidates.
   *
   * @param prospects what the suspects make likely
   */
  List<Check> candidates(Prospects prospects) {
    Set<Check> checks = new LinkedHashSet<>();
    Set<String> likely = new LinkedHashSet<>();
    suspected.addAll(prospects.parts().keySet());
    prospects
        .parts()
        .forEach(
            (part, chance) -> {
              if (chance >= WORTH_A_POINT) {
                likely.add(part);
              }
            });
    Map<Integer, TerminalRef> points = points(likely);
    TerminalRef post = vehicle.groundedPost();
    Set<Setting> live = new LinkedHashSet<>(List.of(bench.shows(complaint), complaint.on()));
    for (Setting setting : live) {
      for (TerminalRef point : points.values()) {
        if (!point.equals(post)) {
          checks.add(Check.measure(CheckKind.VOLTS, point, post, setting));
        }
      }
    }
    for (Part part : vehicle.parts()) {
      if (likely.contains(part.id())) {
        across(part).ifPresent(ends -> addAcross(checks, ends));
      }
    }
    // The drop across the circuit's own fuse tells its current.
    ownFuse().flatMap(this::across).ifPresent(ends -> addAcross(checks, ends));
    for (Setting cut : cuts()) {
      for (TerminalRef end : ends()) {
        checks.add(Check.measure(CheckKind.OHMS, end, post, cut));
      }
    }
    for (TerminalRef point : loopPoints().values()) {
      if (!point.equals(post)) {
        checks.add(Check.measure(CheckKind.OHMS, point, post, alone()));
      }
    }
    addLooks(checks, likely);
    checks.addAll(new HandChecks(bench, complaint, loop, prospects).all());
    return new ArrayList<>(checks);
  }

  /** Share of the belief before any reading above which a part gets probe points of its own. */
  private static final double WORTH_A_POINT = 0.001;

  /**
   * The two ends of the feed from the loop's own fuse to the load, as far as they can be reached.
   */
  private List<TerminalRef> ends() {
    List<TerminalRef> ends = new ArrayList<>();
    ownFuse().ifPresent(f -> ends.add(new TerminalRef(f.id(), "load")));
    Part load = vehicle.requirePart(complaint.load().part());
    ends.add(
        new TerminalRef(
            load.id(), complaint.load().filament().orElse(load.spec().terminals().get(0))));
    ends.removeIf(t -> !reachable(t));
    return ends;
  }

  private void addAcross(Set<Check> checks, TerminalRef[] ends) {
    int red = network.requireNode(ends[0]);
    int black = network.requireNode(ends[1]);
    if (red == black) {
      return;
    }
    double drop = Math.abs(bench.point(bench.healthy(), complaint.on()).volts(red, black));
    checks.add(
        Check.measure(
            drop < SMALL_DROP ? CheckKind.MILLIVOLTS : CheckKind.VOLTS,
            ends[0],
            ends[1],
            complaint.on()));
    Setting alone = alone();
    if (!alone.apart().contains(ends[0].part()) || !ends[0].part().equals(ends[1].part())) {
      checks.add(Check.measure(CheckKind.OHMS, ends[0], ends[1], alone));
    }
  }

  /** Two reachable terminals at the ends of a part, where it has exactly two ends on the loop. */
  private Optional<TerminalRef[]> across(Part part) {
    if (part.spec() instanceof PartSpec.Wire w) {
      return reachable(w.from()) && reachable(w.to())
          ? Optional.of(new TerminalRef[] {w.from(), w.to()})
          : Optional.empty();
    }
    if (loop.isPresent()) {
      for (Loop l : loop.get().all()) {
        for (Loop.Piece piece : l.pieces()) {
          if (piece.part().equals(part.id())) {
            Optional<TerminalRef> in = own(part, piece.in());
            Optional<TerminalRef> out = own(part, piece.out());
            if (in.isPresent() && out.isPresent()) {
              return Optional.of(new TerminalRef[] {in.get(), out.get()});
            }
          }
        }
      }
    }
    List<String> terminals = part.spec().terminals();
    if (terminals.size() == 2 && part.kind() != PartKind.BATTERY) {
      TerminalRef a = new TerminalRef(part.id(), terminals.get(0));
      TerminalRef b = new TerminalRef(part.id(), terminals.get(1));
      if (reachable(a) && reachable(b)) {
        return Optional.of(new TerminalRef[] {a, b});
      }
    }
    return Optional.empty();
  }

  private Optional<TerminalRef> own(Part part, int node) {
    return network.terminals(node).stream()
        .filter(t -> t.part().equals(part.id()))
        .filter(this::reachable)
        .findFirst();
  }

  private boolean reachable(TerminalRef at) {
    return vehicle.access(at).reachable();
  }

  /** One terminal a node: the one that is reached soonest. */
  private Map<Integer, TerminalRef> points(Collection<String> likely) {
    Set<Integer> nodes = new LinkedHashSet<>(loopNodes());
    for (String id : likely) {
      vehicle.part(id).ifPresent(part -> nodes.addAll(nodesOf(part)));
    }
    return nearest(nodes);
  }

  private Map<Integer, TerminalRef> loopPoints() {
    return nearest(loopNodes());
  }

  private Set<Integer> loopNodes() {
    Set<Integer> nodes = new LinkedHashSet<>();
    loop.ifPresent(l -> l.all().forEach(x -> nodes.addAll(x.nodes())));
    return nodes;
  }

  private Map<Integer, TerminalRef> nearest(Set<Integer> nodes) {
    Map<Integer, TerminalRef> points = new LinkedHashMap<>();
    for (int node : nodes) {
      network.terminals(node).stream()
          .filter(this::reachable)
          .min(Comparator.comparingDouble(bench::minutes))
          .ifPresent(t -> points.put(node, t));
    }
    return points;
  }

  private List<Integer> nodesOf(Part part) {
    List<Integer> nodes = new ArrayList<>();
    if (part.spec() instanceof PartSpec.Wire w) {
      nodes.add(network.requireNode(w.from()));
      nodes.add(network.requireNode(w.to()));
    } else if (part.kind() != PartKind.CONNECTOR && part.kind() != PartKind.SPLICE) {
      // Of a bar or a connector only the legs on the loop matter, and those are on it already.
      for (String terminal : part.spec().terminals()) {
        if (!part.spare().contains(terminal)) {
          nodes.add(network.requireNode(new TerminalRef(part.id(), terminal)));
        }
      }
    }
    return nodes;
  }

  private void addLooks(Set<Check> checks, Collection<String> inPlay) {
    checks.add(Check.look(complaint.load().toString(), complaint.on()));
    checks.add(Check.look(complaint.load().toString(), bench.shows(complaint)));
    for (LoadRef load : others()) {
      checks.add(Check.look(load.toString(), complaint.on()));
    }
    for (LoadRef load : nearest()) {
      checks.add(Check.look(load.toString(), bench.onSetting(load)));
    }
    for (String id : inPlay) {
      Part part = vehicle.requirePart(id);
      if (part.kind() == PartKind.RELAY) {
        checks.add(Check.look(id, complaint.on()));
      } else if (part.kind() == PartKind.FUSE) {
        checks.add(Check.look(id, complaint.on()));
      }
    }
  }

  /** Loads of other circuits that are on in the complaint's own setting anyway. */
  private List<LoadRef> others() {
    List<LoadRef> loads = new ArrayList<>();
    for (Circuit circuit : vehicle.circuits()) {
      for (LoadRef load : circuit.loads()) {
        boolean on =
            bench.level(bench.point(bench.healthy(), complaint.on()), load, bench.onSetting(load))
                > 0.5;
        if (on && !load.equals(complaint.load()) && !loads.contains(load)) {
          loads.add(load);
        }
      }
    }
    return loads;
  }

  /** Loads whose own loops share the most pieces with this one, each worth a setting of its own. */
  private List<LoadRef> nearest() {
    if (loop.isEmpty()) {
      return List.of();
    }
    Map<LoadRef, Integer> shared = new LinkedHashMap<>();
    for (Circuit circuit : vehicle.circuits()) {
      LoadRef load = circuit.loads().get(0);
      if (load.equals(complaint.load()) || circuit.onSetting().equals(complaint.on())) {
        continue;
      }
      Loop.trace(bench, circuit.onSetting(), bench.loadElement(load))
          .ifPresent(
              other ->
                  shared.put(
                      load,
                      (int)
                          other.pieces().stream().filter(p -> loop.get().holds(p.part())).count()));
    }
    return shared.entrySet().stream()
        .sorted(
            Map.Entry.<LoadRef, Integer>comparingByValue()
                .reversed()
                .thenComparing(Map.Entry.comparingByKey()))
        .limit(NEAREST)
        .map(Map.Entry::getKey)
        .toList();
  }

  /** How many other circuits are switched on for a look. Each costs a solve of every suspect. */
  private static final int NEAREST = 3;

  /** Working time in minutes, from the set-up and lead positions of the check before. */
  double minutes(Check check, Optional<Check> before) {
    Setting from = before.map(Check::setting).orElse(Setting.REST);
    double minutes = setUpMinutes(from, check.setting());
    if (!check.kind().metered()) {
      return minutes + LOOK_MINUTES + handMinutes(check, before);
    }
    minutes += check.kind() == CheckKind.OHMS ? OHMS_MINUTES : VOLTS_MINUTES;
    if (check.kind() == CheckKind.DRAIN) {
      return minutes + handMinutes(check, before);
    }
    if (check.inHand(vehicle)) {
      return minutes;
    }
    TerminalRef red = check.red().orElseThrow();
    TerminalRef black = check.black().orElseThrow();
    if (before.flatMap(Check::red).filter(red::equals).isEmpty()) {
      minutes += bench.minutes(red);
    }
    if (before.flatMap(Check::black).filter(black::equals).isEmpty()) {
      minutes += bench.minutes(black);
    }
    return minutes;
  }

  // Common practice, our own estimate: time to put two tips down and read, to look, to turn a knob.
  private static final double VOLTS_MINUTES = 0.4;
  private static final double OHMS_MINUTES = 0.9;
  private static final double LOOK_MINUTES = 0.2;
  private static final double CONTROL_MINUTES = 0.15;
  private static final double APART_MINUTES = 1;

  private static final double LAMP_MINUTES = 1;
  private static final double MOVE_MINUTES = 0.5;
  private static final double WARM_MINUTES = 4;
  private static final double LOAD_MINUTES = 10;

  /** What the hands do besides the set-up. */
  private double handMinutes(Check check, Optional<Check> before) {
    boolean lampIn =
        before
            .filter(b -> b.kind() == check.kind() && b.subject().equals(check.subject()))
            .isPresent();
    return switch (check.kind()) {
      case LAMP_FOR_FUSE, DRAIN -> lampIn ? 0 : LAMP_MINUTES;
      case UNPLUG_AND_LOOK -> lampIn || !check.watchesLead(vehicle) ? 0 : LAMP_MINUTES;
      case SWAP -> twins.minutes(vehicle.requirePart(check.subject().orElseThrow()), suspected);
      case WIGGLE -> MOVE_MINUTES;
      case WARM -> WARM_MINUTES;
      case LOAD -> LOAD_MINUTES;
      default -> 0;
    };
  }

  /** The part that would be fitted in this one's place, if it comes from elsewhere. */
  Optional<String> twin(String part) {
    return twins.twin(vehicle.requirePart(part), suspected).map(Part::id);
  }

  private double setUpMinutes(Setting from, Setting to) {
    double minutes = 0;
    Set<String> controls = new LinkedHashSet<>(from.positions().keySet());
    controls.addAll(to.positions().keySet());
    for (String control : controls) {
      if (!vehicle.position(control, from).equals(vehicle.position(control, to))) {
        minutes += CONTROL_MINUTES;
      }
    }
    Set<String> parts = new LinkedHashSet<>(from.apart());
    parts.addAll(to.apart());
    for (String part : parts) {
      if (from.apart().contains(part) != to.apart().contains(part)) {
        minutes += vehicle.requirePart(part).apartMinutes().orElse(APART_MINUTES);
      }
    }
    return minutes;
  }
}
