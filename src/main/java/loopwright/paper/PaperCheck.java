package loopwright.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loopwright.knowledge.WireFuses;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;

/**
 * Works out the figures of a plan: every circuit is solved switched on by itself with typical
 * values, and with everything on that can be on together.
 */
public final class PaperCheck {

  /** Share of its rating at which a fuse may work all the time. Common practice. */
  private static final double WORKING_SHARE = 0.8;

  /**
   * Multiple of its rating at which a blade fuse opens within five seconds (SAE J1284 and ISO
   * 8820-3, from memory).
   */
  private static final double OPENS_IN_SECONDS = 2;

  /**
   * Usual loss from the battery to a load, as a share of the system's volts: 0.5 V of 12 V. Common
   * practice.
   */
  private static final double USUAL_FEED = 0.5 / 12;

  /** Usual loss from a load to the battery's grounded post in volts. Common practice. */
  private static final double USUAL_GROUND = 0.1;

  /** The same while cranking: 0.5 V and 0.3 V of 12 V (starter draw tester manual). */
  private static final double STARTER_FEED = 0.5 / 12;

  private static final double STARTER_GROUND = 0.3 / 12;

  /** Current from which a motor counts as a starter, in amperes. Common practice. */
  private static final double STARTER_AMPS = 80;

  /** Current from which a load counts as fed, in amperes. */
  private static final double FLOWS = 1e-3;

  /** Resistance up to which two points count as joined, in ohms. */
  private static final double JOINED = 1e5;

  private final Network network;
  private final Vehicle vehicle;
  private final WireFuses wireFuses;
  private final Map<Setting, OperatingPoint> points = new HashMap<>();
  private final List<Figure> figures = new ArrayList<>();

  private PaperCheck(Network network, WireFuses wireFuses) {
    this.network = network;
    this.vehicle = network.vehicle();
    this.wireFuses = wireFuses;
  }

  /** All figures of a vehicle, those within their limits too. */
  public static List<Figure> figures(Network network, WireFuses wireFuses) {
    PaperCheck check = new PaperCheck(network, wireFuses);
    check.loads();
    check.currents();
    check.protection();
    check.coils();
    return List.copyOf(check.figures);
  }

  private void add(
      Part part, Figure.Kind kind, double value, double limit, Setting at, List<String> with) {
    figures.add(new Figure(part.id(), kind, value, limit, at, with));
  }

  private OperatingPoint point(Setting setting) {
    return points.computeIfAbsent(
        setting, s -> Solver.full(network).solve(Variant.healthy(network), s));
  }

  // ---- loads: fed, returned, fused, with how many volts -----------------------------------------

  private void loads() {
    Set<String> fuses = new LinkedHashSet<>();
    vehicle.parts().stream().filter(p -> p.kind() == PartKind.FUSE).forEach(p -> fuses.add(p.id()));
    for (Circuit circuit : vehicle.circuits()) {
      for (LoadRef load : circuit.loads()) {
        Part part = vehicle.requirePart(load.part());
        Setting on = circuit.onSetting();
        int e = loadElement(load);
        if (Math.abs(point(on).amps(e)) < FLOWS) {
          Element element = network.elements().get(e);
          boolean feed = joined(element, vehicle.feedPost(), on);
          boolean back = joined(element, vehicle.groundedPost(), on);
          add(part, Figure.Kind.FEEDS, feed ? 1 : 0, 1, on, List.of());
          add(part, Figure.Kind.RETURNS, back ? 1 : 0, 1, on, List.of());
          continue;
        }
        add(part, Figure.Kind.FEEDS, 1, 1, on, List.of());
        add(part, Figure.Kind.RETURNS, 1, 1, on, List.of());
        boolean starter = starter(part);
        if (!starter) {
          // What still works with every fuse out is fed past them.
          boolean past = Math.abs(point(on.without(fuses)).amps(e)) > FLOWS;
          add(part, Figure.Kind.FUSES, past ? 0 : 1, 1, on, List.of());
        }
        drop(part, e, on, starter);
      }
    }
  }

  private boolean starter(Part part) {
    return part.spec() instanceof PartSpec.Motor m && m.amps().about() > STARTER_AMPS;
  }

  /** Volts lost before and behind a load, unless another load in series takes them on purpose. */
  private void drop(Part part, int e, Setting on, boolean starter) {
    OperatingPoint point = point(on);
    if (inSeries(point, e)) {
      return;
    }
    Element load = network.elements().get(e);
    double feed = point.volts(network.requireNode(vehicle.feedPost()));
    double back = point.volts(network.requireNode(vehicle.groundedPost()));
    boolean aIsFed =
        Math.abs(point.volts(load.a()) - back) > Math.abs(point.volts(load.b()) - back);
    int fed = aIsFed ? load.a() : load.b();
    int grounded = aIsFed ? load.b() : load.a();
    int system = vehicle.systemVolts();
    add(
        part,
        Figure.Kind.DROP_VOLTS,
        Math.abs(feed - point.volts(fed)),
        (starter ? STARTER_FEED : USUAL_FEED) * system,
        on,
        List.of());
    add(
        part,
        Figure.Kind.GROUND_DROP_VOLTS,
        Math.abs(point.volts(grounded) - back),
        starter ? STARTER_GROUND * system : USUAL_GROUND,
        on,
        List.of());
  }

  /** Whether another load carries this one's very current. */
  private boolean inSeries(OperatingPoint point, int e) {
    double amps = Math.abs(point.amps(e));
    for (int other = 0; other < network.elements().size(); other++) {
      Part part = vehicle.requirePart(network.elements().get(other).part());
      boolean takes = part.kind().isLoad() || part.kind() == PartKind.SENDER;
      boolean same = Math.abs(Math.abs(point.amps(other)) - amps) < 0.01 * amps;
      if (other != e && takes && same && touches(point, e, other)) {
        return true;
      }
    }
    return false;
  }

  /** Whether volts fall across another element in the same loop: none of its ends is at a post. */
  private boolean touches(OperatingPoint point, int e, int other) {
    double posts =
        Math.abs(
            point.volts(
                network.requireNode(vehicle.feedPost()),
                network.requireNode(vehicle.groundedPost())));
    return Math.abs(point.across(e)) + Math.abs(point.across(other)) < 1.02 * posts;
  }

  /** Whether some end of a load is joined to a post with the load itself and the battery out. */
  private boolean joined(Element load, TerminalRef post, Setting on) {
    Setting alone = on.without(Set.of(load.part(), vehicle.battery().id()));
    OperatingPoint point = point(alone);
    int node = network.requireNode(post);
    return point.ohmsSeen(load.a(), node) < JOINED || point.ohmsSeen(load.b(), node) < JOINED;
  }

  private int loadElement(LoadRef load) {
    return network.elementsOf(load.part()).stream()
        .filter(
            e -> {
              String role = network.elements().get(e).role();
              return load.filament().map(f -> role.equals("filament:" + f)).orElse(true)
                  && (role.startsWith("filament")
                      || role.equals("winding")
                      || role.equals("junction"));
            })
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(load + " is no load"));
  }

  // ---- currents of wires, fuses and contacts ----------------------------------------------------

  private void currents() {
    Map<Integer, Double> most = new LinkedHashMap<>();
    Map<Integer, Setting> where = new HashMap<>();
    for (Setting setting : settings()) {
      if (cranks(setting)) {
        // Half a minute at most: what cables stand in that time is another matter.
        continue;
      }
      OperatingPoint point = point(setting);
      for (int e = 0; e < network.elements().size(); e++) {
        double amps = Math.abs(point.amps(e));
        if (amps > most.getOrDefault(e, 0.0)) {
          most.put(e, amps);
          where.put(e, setting);
        }
      }
    }
    most.forEach(
        (e, amps) -> {
          Element element = network.elements().get(e);
          Part part = vehicle.requirePart(element.part());
          Setting at = where.get(e);
          if (part.spec() instanceof PartSpec.Wire w && element.role().equals("conductor")) {
            carries(w).ifPresent(a -> add(part, Figure.Kind.WIRE_AMPS, amps, a, at, List.of()));
          } else if (part.spec() instanceof PartSpec.Fuse f) {
            add(part, Figure.Kind.LOAD_AMPS, amps, WORKING_SHARE * f.amps(), at, List.of());
          } else if (element instanceof Element.Contact) {
            rating(part)
                .ifPresent(a -> add(part, Figure.Kind.CONTACT_AMPS, amps, a, at, List.of()));
          }
        });
  }

  /** Each circuit on by itself, and all of them as far as they can be on together. */
  private List<Setting> settings() {
    List<Setting> settings = new ArrayList<>(List.of(Setting.REST));
    Map<String, String> together = new LinkedHashMap<>();
    for (Circuit circuit : vehicle.circuits()) {
      settings.add(circuit.onSetting());
      if (circuit.loads().stream().noneMatch(l -> starter(vehicle.requirePart(l.part())))) {
        circuit.on().forEach(together::putIfAbsent);
      }
    }
    settings.add(Setting.of(together));
    return settings.stream().distinct().toList();
  }

  /** Whether a starter turns in a setting. */
  private boolean cranks(Setting setting) {
    OperatingPoint point = point(setting);
    return vehicle.parts().stream()
        .filter(this::starter)
        .flatMap(p -> network.elementsOf(p.id()).stream())
        .anyMatch(e -> Math.abs(point.amps(e)) > STARTER_AMPS / 2);
  }

  /** What a wire carries; straps and starter cables, which no fuse protects, are left out. */
  private OptionalDouble carries(PartSpec.Wire wire) {
    double greatest = wireFuses.rows().get(wireFuses.rows().size() - 1).mm2();
    return wire.kind() == PartKind.STRAP || wire.size().mm2() > greatest
        ? OptionalDouble.empty()
        : wireFuses.greatest(wire.size().mm2());
  }

  private static Optional<Double> rating(Part part) {
    if (part.spec() instanceof PartSpec.Relay r) {
      return r.amps();
    }
    return part.spec() instanceof PartSpec.Switch s ? s.amps() : Optional.empty();
  }

  // ---- fuses and the wires behind them ----------------------------------------------------------

  private void protection() {
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Fuse fuse) {
        Behind behind = Behind.of(network, part.id());
        for (String wire : behind.wires()) {
          Part w = vehicle.requirePart(wire);
          carries((PartSpec.Wire) w.spec())
              .ifPresent(
                  a ->
                      add(
                          w,
                          Figure.Kind.FUSE_AMPS,
                          fuse.amps(),
                          a,
                          Setting.REST,
                          List.of(part.id())));
        }
        farShort(part, fuse, behind);
      }
    }
  }

  /**
   * The dead short behind a fuse that the loop's own resistance limits most: open-circuit volts of
   * a point over the resistance it sees (Thevenin), contacts and fuses standing as before.
   */
  private void farShort(Part part, PartSpec.Fuse fuse, Behind behind) {
    int link = network.element(part.id(), "link").orElseThrow();
    double least = Double.MAX_VALUE;
    String far = "";
    Setting where = Setting.REST;
    for (Map.Entry<Integer, String> end : behind.ends().entrySet()) {
      int node = end.getKey();
      for (Setting setting : settings()) {
        if (!fedBy(link, node, setting)) {
          continue;
        }
        OperatingPoint point = point(setting);
        double amps = Math.abs(point.volts(node)) / point.ohmsSeen(node, Network.REFERENCE);
        if (amps < least) {
          least = amps;
          far = end.getValue();
          where = setting;
        }
        break;
      }
    }
    if (least < Double.MAX_VALUE) {
      add(
          part,
          Figure.Kind.FAR_SHORT_AMPS,
          least,
          OPENS_IN_SECONDS * fuse.amps(),
          where,
          List.of(far));
    }
  }

  /** Whether a point hangs on a fuse in a setting by nothing but wires and closed contacts. */
  private boolean fedBy(int link, int node, Setting setting) {
    Element fuse = network.elements().get(link);
    OperatingPoint apart = point(setting.without(fuse.part()));
    double whole = Math.abs(point(setting).volts(node));
    return Math.abs(apart.volts(node)) < 0.1 * whole
        && Math.min(apart.ohmsSeen(node, fuse.a()), apart.ohmsSeen(node, fuse.b())) < WIRED;
  }

  /** Resistance below which nothing but wires and contacts lies between two points, in ohms. */
  private static final double WIRED = 1;

  // ---- coils ------------------------------------------------------------------------------------

  private void coils() {
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Relay relay) {
        boolean within = relay.suppression() != PartSpec.Suppression.NONE;
        boolean beside =
            vehicle.parts().stream()
                .filter(p -> p.kind() == PartKind.DIODE)
                .anyMatch(d -> across(part.id(), d.id()));
        add(
            part,
            Figure.Kind.COIL_SUPPRESSION,
            within || beside ? 1 : 0,
            1,
            Setting.REST,
            List.of());
      }
    }
  }

  /** Whether a diode lies across a relay's coil. */
  private boolean across(String relay, String diode) {
    Set<Integer> coil = nodes(relay, "86", "85");
    return coil.equals(nodes(diode, "anode", "cathode"));
  }

  private Set<Integer> nodes(String part, String one, String other) {
    return Set.of(
        network.requireNode(new TerminalRef(part, one)),
        network.requireNode(new TerminalRef(part, other)));
  }

  /** Figures beyond their limit, worst share first. */
  public static List<Figure> beyond(List<Figure> figures) {
    return figures.stream()
        .filter(Figure::beyond)
        .sorted(Comparator.comparing(Figure::kind).thenComparing(Figure::part))
        .toList();
  }
}
