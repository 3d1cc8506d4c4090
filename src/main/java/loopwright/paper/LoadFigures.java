package loopwright.paper;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** Loads: whether each is fed, returned and fused, and how many volts are lost on the way. */
final class LoadFigures {

  /** Current from which a load counts as fed, in amperes ... */
  private static final double FLOWS = 1e-3;

  /** ... and share of the system's volts. */
  private static final double FED = 0.05;

  private final Plan plan;
  private final Network network;
  private final Set<String> fuses = new LinkedHashSet<>();

  /** By setting: the nodes that hang on the feed post past all fuses. */
  private final Map<Setting, Set<Integer>> unfused = new HashMap<>();

  LoadFigures(Plan plan) {
    this.plan = plan;
    this.network = plan.network();
    for (Part part : plan.vehicle().parts()) {
      if (part.kind() == PartKind.FUSE) {
        fuses.add(part.id());
      }
    }
  }

  void add() {
    Set<String> served = new LinkedHashSet<>();
    for (Circuit circuit : plan.vehicle().circuits()) {
      for (LoadRef load : circuit.loads()) {
        served.add(load.toString());
        load(circuit, load);
      }
    }
    for (Part part : plan.vehicle().parts()) {
      for (String function : part.spec().functions()) {
        String name = function.isEmpty() ? part.id() : part.id() + ":" + function;
        boolean known = served.contains(name) || flows(LoadRef.parse(name));
        add(name, Figure.Kind.CIRCUITS, known ? 1 : 0, 1, Setting.REST);
      }
    }
  }

  private boolean flows(LoadRef load) {
    int e = plan.network().loadElement(load);
    return plan.settings().stream().anyMatch(s -> flows(plan.point(s), e));
  }

  /** Whether a load gets current and more than what grounds differ by. */
  private boolean flows(OperatingPoint point, int e) {
    return Math.abs(point.amps(e)) >= FLOWS
        && Math.abs(point.across(e)) >= FED * plan.vehicle().systemVolts();
  }

  private void add(String part, Figure.Kind kind, double value, double limit, Setting at) {
    plan.add(new Figure(part, kind, value, limit, at, List.of()));
  }

  private void load(Circuit circuit, LoadRef load) {
    Part part = plan.part(load.part());
    Setting on = circuit.onSetting();
    int e = plan.network().loadElement(load);
    String name = load.toString();
    boolean works = flows(plan.point(on), e);
    if (!works) {
      Element element = network.elements().get(e);
      Reach reach = new Reach(plan, plan.point(on), Set.of());
      add(name, Figure.Kind.FEEDS, ends(element, reach.fed()) ? 1 : 0, 1, on);
      add(name, Figure.Kind.RETURNS, ends(element, reach.grounded()) ? 1 : 0, 1, on);
      return;
    }
    add(name, Figure.Kind.FEEDS, 1, 1, on);
    add(name, Figure.Kind.RETURNS, 1, 1, on);
    if (!plan.starter(part)) {
      Set<Integer> past =
          unfused.computeIfAbsent(on, s -> new Reach(plan, plan.point(s), fuses).fed());
      add(name, Figure.Kind.FUSES, ends(network.elements().get(e), past) ? 0 : 1, 1, on);
    }
    if (!inSeries(plan.point(on), e)) {
      drops(circuit, part, name, e);
    }
  }

  private static boolean ends(Element load, Set<Integer> nodes) {
    return nodes.contains(load.a()) || nodes.contains(load.b());
  }

  private void drops(Circuit circuit, Part part, String name, int e) {
    Setting on = circuit.onSetting();
    OperatingPoint point = plan.point(on);
    Element load = network.elements().get(e);
    double feed = point.volts(plan.feedNode());
    boolean aIsFed = Math.abs(point.volts(load.a())) > Math.abs(point.volts(load.b()));
    int fed = plan.outside(load, aIsFed ? load.a() : load.b());
    int grounded = plan.outside(load, aIsFed ? load.b() : load.a());
    DropLimits limits = new DropLimits(plan, circuit, part, load, point.amps(e));
    Loss loss = new Loss(plan, point);
    double whole = Math.abs(feed);
    List<Integer> to = CurrentWay.toFeed(plan, point, fed);
    double before = Math.abs(feed - point.volts(fed)) - loss.ofDiodes(to);
    plan.add(loss.figure(name, Figure.Kind.DROP_VOLTS, before, limits.feed(), to, whole, load));
    List<Integer> back = CurrentWay.toGround(plan, point, grounded);
    double behind = Math.abs(point.volts(grounded)) - loss.ofDiodes(back);
    plan.add(
        loss.figure(
            name, Figure.Kind.GROUND_DROP_VOLTS, behind, limits.ground(), back, whole, load));
  }

  /** Whether another load or sender in the same loop takes a part of the volts on purpose. */
  private boolean inSeries(OperatingPoint point, int e) {
    double amps = Math.abs(point.amps(e));
    double posts = Math.abs(point.volts(plan.feedNode()));
    for (int other = 0; other < network.elements().size(); other++) {
      if (other == e || Math.abs(Math.abs(point.amps(other)) - amps) > 0.01 * amps) {
        continue;
      }
      PartKind kind = plan.part(network.elements().get(other)).kind();
      boolean takes = kind.isLoad() || kind == PartKind.SENDER;
      // Two of the same kind side by side carry the same current too, but each has all volts.
      if (takes
          && Math.abs(point.across(other)) > 0.02 * posts
          && Math.abs(point.across(e)) + Math.abs(point.across(other)) < 1.02 * posts) {
        return true;
      }
    }
    return false;
  }
}
