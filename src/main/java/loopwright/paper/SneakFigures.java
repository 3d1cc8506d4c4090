package loopwright.paper;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.Gate;
import loopwright.solver.OperatingPoint;

/**
 * Sneak paths: what else gets current enough to be noticed, in every setting that somebody can
 * bring about, with everything whole and with each fuse pulled or one ground lost.
 */
final class SneakFigures {

  /** Current from which the loss of what carries it can change anything, in amperes. */
  private static final double CARRIES = 1e-3;

  /** Share of a load's current from which a fuse counts as feeding it. */
  private static final double FEEDS = 0.1;

  /** Share of what it did before from which a load counts as still working. */
  private static final double STILL_WORKS = 0.5;

  /** Current from which the sense of a current means something, in amperes. */
  private static final double SENSE = 1e-2;

  /**
   * One load that does what it shouldn't in one setting.
   *
   * @param losses elements lost; several where each of them alone does the same
   * @param relay the relay whose pulling in wakes it; empty if none
   */
  private record Wake(
      Figure.Kind kind,
      Noticed load,
      double level,
      double amps,
      Setting at,
      Set<String> losses,
      String relay,
      List<String> way,
      List<String> through) {

    /** The setting with fewer moves; of two with as many the one that was looked at first. */
    static Wake plainer(Wake one, Wake two) {
      return two.at.positions().size() < one.at.positions().size() ? two : one;
    }

    /** How far beyond being noticed. */
    double strength() {
      return level / load.percent();
    }

    Wake without(Set<String> lost) {
      return new Wake(kind, load, level, amps, at, lost, relay, way, through);
    }
  }

  private final Plan plan;
  private final States states;
  private final Islands islands;
  private final List<Noticed> loads = new ArrayList<>();
  private final Map<String, List<Circuit>> circuits = new HashMap<>();
  private final List<Integer> losses = new ArrayList<>();
  private final Map<Object, Wake> plainest = new LinkedHashMap<>();

  SneakFigures(Plan plan) {
    this.plan = plan;
    this.states = plan.states();
    this.islands = new Islands(plan);
    for (Circuit circuit : plan.vehicle().circuits()) {
      circuit
          .loads()
          .forEach(
              l -> circuits.computeIfAbsent(l.toString(), k -> new ArrayList<>()).add(circuit));
    }
    for (int e = 0; e < plan.network().elements().size(); e++) {
      Noticed.of(plan, e).ifPresent(loads::add);
      if (mayBeLost(plan.part(plan.network().elements().get(e)))) {
        losses.add(e);
      }
    }
  }

  /** Fuses, ground joints, straps, and the wires that end on ground joints or metal. */
  private boolean mayBeLost(Part part) {
    if (part.spec() instanceof PartSpec.Wire w) {
      return part.kind() == PartKind.STRAP || grounded(w.from().part()) || grounded(w.to().part());
    }
    return part.kind() == PartKind.FUSE || part.kind() == PartKind.GROUND;
  }

  private boolean grounded(String part) {
    PartKind kind = plan.part(part).kind();
    return kind == PartKind.GROUND || kind == PartKind.BODY;
  }

  void add() {
    Set<String> buzzing = new TreeSet<>();
    for (Setting setting : states.settings()) {
      OperatingPoint whole = states.whole(setting);
      for (String relay : whole.buzzing()) {
        if (buzzing.add(relay)) {
          plan.add(new Figure(relay, Figure.Kind.BUZZES, 1, 0, setting, List.of()));
        }
      }
      whole(setting, whole);
      for (int e : losses) {
        if (Math.abs(whole.amps(e)) > CARRIES && !islands.harmless(whole, e)) {
          lost(setting, whole, e);
        }
      }
      stays(setting, whole);
    }
    figures();
  }

  // What wakes.

  private void whole(Setting setting, OperatingPoint point) {
    for (Noticed load : loads) {
      List<Circuit> serves = circuits.getOrDefault(load.name(), List.of());
      if (serves.isEmpty() || on(serves, setting) || !load.in(plan, point)) {
        continue;
      }
      boolean turned = serves.stream().anyMatch(c -> allMoved(c, setting));
      Cause cause = cause(point, load.element(), Optional.empty());
      if (!cause.through.isEmpty()) {
        if (!(turned && onPurpose(load, cause.through))) {
          note(Figure.Kind.SNEAK, load, point, setting, Set.of(), cause);
        }
      } else if (!turned) {
        Figure.Kind straight =
            setting.equals(Setting.REST) ? Figure.Kind.ALWAYS_ON : Figure.Kind.ALSO_ON;
        Figure.Kind kind = backwards(point, cause.way) ? Figure.Kind.BACKFEED : straight;
        note(kind, load, point, setting, Set.of(), cause);
      }
    }
  }

  /** Whether one of these circuits is on, as its controls say. */
  private boolean on(List<Circuit> serves, Setting setting) {
    return serves.stream()
        .anyMatch(
            c ->
                c.on().entrySet().stream()
                    .allMatch(p -> states.position(p.getKey(), setting).equals(p.getValue())));
  }

  /** Whether nothing is moved but what a circuit of the load wants. */
  private boolean forIt(Noticed load, Setting setting) {
    return circuits.get(load.name()).stream()
        .anyMatch(c -> c.on().keySet().containsAll(setting.positions().keySet()));
  }

  /** Whether every control that a circuit wants moved is, though perhaps to another position. */
  private boolean allMoved(Circuit circuit, Setting setting) {
    return circuit.on().entrySet().stream()
        .allMatch(
            p -> {
              String rest = states.rest(p.getKey());
              String now = states.position(p.getKey(), setting);
              return p.getValue().equals(rest) ? now.equals(rest) : !now.equals(rest);
            });
  }

  /** Whether all that the current passes besides serves no circuit, or the same one as the load. */
  private boolean onPurpose(Noticed load, List<String> through) {
    List<Circuit> serves = circuits.getOrDefault(load.name(), List.of());
    return through.stream()
        .map(t -> circuits.getOrDefault(t, List.of()))
        .allMatch(other -> other.isEmpty() || other.stream().anyMatch(serves::contains));
  }

  /** Whether some wire or contact on the feed side carries against its sense in another circuit. */
  private boolean backwards(OperatingPoint point, CurrentWay way) {
    for (int e : way.elements().subList(0, way.at())) {
      double amps = point.amps(e);
      for (Circuit circuit : plan.vehicle().circuits()) {
        double usual = plan.point(circuit.onSetting()).amps(e);
        if (usual * amps < 0 && Math.min(Math.abs(usual), Math.abs(amps)) > SENSE) {
          return true;
        }
      }
    }
    return false;
  }

  private void lost(Setting setting, OperatingPoint whole, int loss) {
    OperatingPoint point = states.without(setting, loss);
    String part = plan.network().elements().get(loss).part();
    boolean fuse = plan.part(part).kind() == PartKind.FUSE;
    Figure.Kind kind = fuse ? Figure.Kind.FUSE_SNEAK : Figure.Kind.GROUND_SNEAK;
    for (Noticed load : loads) {
      if (!load.in(plan, point)) {
        continue;
      }
      boolean on = on(circuits.getOrDefault(load.name(), List.of()), setting);
      if (on && fuse && forIt(load, setting)) {
        bypassed(setting, whole, point, loss, load);
      } else if (!on && point.amps(load.element()) != 0 && !load.in(plan, whole)) {
        Cause cause = cause(point, load.element(), Optional.of(whole.pulledIn()));
        if (!cause.fellBack) {
          note(kind, load, point, setting, Set.of(part), cause);
        }
      }
    }
  }

  /** A load that works on though a fuse on its way is out: two fuses side by side. */
  private void bypassed(
      Setting setting, OperatingPoint whole, OperatingPoint point, int fuse, Noticed load) {
    double before = load.level(plan, whole);
    if (load.level(plan, point) < STILL_WORKS * before
        || Math.abs(whole.amps(fuse)) < FEEDS * Math.abs(whole.amps(load.element()))) {
      return;
    }
    Cause cause = cause(whole, load.element(), Optional.empty());
    Cause other = cause(point, load.element(), Optional.empty());
    if (cause.way.elements().contains(fuse) && other.through.equals(cause.through)) {
      String part = plan.network().elements().get(fuse).part();
      note(Figure.Kind.FUSE_BYPASSED, load, point, setting, Set.of(part), other);
    }
  }

  /** Relays that hold themselves in when a control is put back to rest. */
  private void stays(Setting setting, OperatingPoint whole) {
    if (whole.pulledIn().isEmpty()) {
      return;
    }
    Setting let = setting;
    for (String control : setting.positions().keySet()) {
      let = states.springsBack(control) ? let.resting(control) : let;
    }
    BitSet in =
        let.equals(setting) ? whole.pulledIn() : states.from(let, whole.pulledIn()).pulledIn();
    for (String control : in.isEmpty() ? Set.<String>of() : let.positions().keySet()) {
      Setting off = let.resting(control);
      OperatingPoint held = states.from(off, in);
      if (held.pulledIn().isEmpty()) {
        continue;
      }
      OperatingPoint rest = states.whole(off);
      for (Noticed load : loads) {
        if (load.in(plan, held) && !load.in(plan, rest)) {
          Cause cause = cause(held, load.element(), Optional.of(rest.pulledIn()));
          note(Figure.Kind.STAYS_ON, load, held, off, Set.of(control), cause);
        }
      }
    }
  }

  /**
   * Why a load gets current.
   *
   * @param way the way of the current that matters: the load's own or that of a relay's coil
   * @param through other loads and coils on that way
   * @param relay the relay whose coil that is; empty if none
   * @param fellBack whether a relay's closed side feeds it since the relay let go
   */
  private record Cause(CurrentWay way, List<String> through, String relay, boolean fellBack) {}

  /**
   * @param before coils that are pulled in without what is looked at; empty where nothing is lost
   */
  private Cause cause(OperatingPoint point, int element, Optional<BitSet> before) {
    return cause(point, element, before, new BitSet());
  }

  private Cause cause(OperatingPoint point, int element, Optional<BitSet> before, BitSet met) {
    CurrentWay way = CurrentWay.through(plan, point, element);
    List<String> through = names(way.through(plan));
    boolean fellBack = false;
    if (through.isEmpty()) {
      for (int e : way.elements()) {
        if (!(plan.network().elements().get(e) instanceof Element.Contact c)
            || !(c.gate() instanceof Gate.ByCoil gate)) {
          continue;
        }
        int coil = plan.network().element(c.part(), "coil").orElseThrow();
        boolean wasIn = before.isPresent() && before.get().get(coil);
        if (gate.rest() == Gate.Rest.CLOSED) {
          fellBack |= wasIn;
        } else if (!wasIn && !met.get(coil)) {
          met.set(coil);
          Cause behind = cause(point, coil, before, met);
          if (!behind.through.isEmpty() || before.isPresent()) {
            String relay = behind.relay.isEmpty() ? c.part() : behind.relay;
            return new Cause(behind.way, behind.through, relay, behind.fellBack);
          }
        }
      }
    }
    return new Cause(way, through, "", fellBack);
  }

  private List<String> names(List<Integer> elements) {
    return elements.stream().map(e -> Noticed.name(plan.network().elements().get(e))).toList();
  }

  private void note(
      Figure.Kind kind,
      Noticed load,
      OperatingPoint point,
      Setting setting,
      Set<String> losses,
      Cause cause) {
    Wake wake =
        new Wake(
            kind,
            load,
            load.level(plan, point),
            Math.abs(point.amps(load.element())),
            setting,
            losses,
            cause.relay,
            cause.way.parts(plan),
            cause.through);
    plainest.merge(List.of(kind, load.name(), losses), wake, Wake::plainer);
  }

  // What is told of it.

  private void figures() {
    // Several loads that one thing wakes are told once, and several losses that do the same too.
    Map<Object, List<Wake>> together = new LinkedHashMap<>();
    for (Wake w : plainest.values()) {
      together.computeIfAbsent(cause(w), k -> new ArrayList<>()).add(w);
    }
    Map<Object, List<Wake>> merged = new LinkedHashMap<>();
    for (List<Wake> group : together.values()) {
      Wake first = group.get(0);
      Set<String> names =
          group.stream().map(w -> w.load.name()).collect(Collectors.toCollection(TreeSet::new));
      merged.merge(
          List.of(first.kind, strongest(group).at, names),
          group,
          (a, b) -> {
            Set<String> lost = new LinkedHashSet<>(a.get(0).losses);
            lost.addAll(b.get(0).losses);
            return a.stream().map(w -> w.without(lost)).toList();
          });
    }
    merged.values().forEach(this::add);
  }

  /** What two must have in common to be one. */
  private Object cause(Wake w) {
    Object by =
        switch (w.kind) {
          case SNEAK, BACKFEED -> List.of(w.at, w.relay, w.through);
          case ALSO_ON, ALWAYS_ON ->
              List.of(
                  w.at,
                  circuits.get(w.load.name()).stream()
                      .map(Circuit::id)
                      .collect(Collectors.toSet()));
          default -> w.losses;
        };
    return List.of(w.kind, by);
  }

  /** What moves comes before what glows. */
  private static Wake strongest(List<Wake> group) {
    return group.stream()
        .max(
            Comparator.<Wake, Boolean>comparing(w -> w.load.moves())
                .thenComparingDouble(w -> Plan.about(w.strength())))
        .orElseThrow();
  }

  private void add(List<Wake> group) {
    Wake main = strongest(group);
    List<String> others =
        group.stream().filter(w -> w != main).map(w -> w.load.name()).distinct().toList();
    List<String> with = new ArrayList<>(main.losses);
    with.addAll(others);
    with.addAll(main.way);
    plan.add(
        new Figure(
            main.load.name(),
            main.kind,
            main.level,
            main.load.percent(),
            main.at,
            with,
            List.of(main.load.does(), main.amps, main.relay, main.losses.size(), others.size())));
  }
}
