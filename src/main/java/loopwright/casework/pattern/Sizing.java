package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.knowledge.PatternValues;
import loopwright.knowledge.PatternValues.Drop;
import loopwright.knowledge.PatternValues.Stretch;
import loopwright.knowledge.Starters;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;

/**
 * Makes new wires thicker until no more volts are lost on the way than is usual. The vehicle is
 * solved as a whole for it, so that what the old wiring loses counts too.
 */
final class Sizing {
  /** Steps after which it gives up; each makes one run thicker. */
  private static final int MOST_STEPS = 60;

  /** A run that loses less than this isn't worth thickening, in volts. */
  private static final double WORTH = 0.004;

  /**
   * Share of what is lost too much below which all copper together isn't worth thickening: the rest
   * is lost in contacts and joints, and no wire betters those.
   */
  private static final double HOPE = 0.5;

  /** Left free of a limit: lengths differ, and later circuits share the way. */
  private static final double MARGIN = 0.85;

  /**
   * Volts lost with one circuit on, the worst of its loads.
   *
   * @param circuit its id
   * @param feed from the battery to the load in volts
   * @param ground from the load to the grounded post in volts
   */
  record Loss(String circuit, double feed, Drop feedLimit, double ground, Drop groundLimit) {
    boolean within() {
      return feed <= feedLimit.volts() && ground <= groundLimit.volts();
    }
  }

  private final Harness harness;
  private final boolean cranks;
  private final PatternValues values;

  /**
   * Begins sizing.
   *
   * @param cranks whether a motor among the loads cranks the engine
   */
  Sizing(Harness harness, boolean cranks) {
    this.harness = harness;
    this.cranks = cranks;
    this.values = harness.basis().knowledge().patternValues();
  }

  /**
   * Sizes the wires.
   *
   * @return what is lost in the end, a row for each new circuit; empty where the vehicle can't be
   *     solved yet
   */
  List<Loss> size() {
    harness.settle();
    // Asked once: whether a vehicle holds together doesn't depend on sizes.
    if (!VehicleCheck.check(harness.vehicle()).isEmpty()) {
      harness.tell("told.not-solved");
      return List.of();
    }
    Set<Run> atTheirEnd = new HashSet<>();
    List<Loss> losses = List.of();
    for (int step = 0; step < MOST_STEPS; step++) {
      harness.settle();
      Network network = Network.of(harness.vehicle(), harness.basis().knowledge().typicals());
      losses = new ArrayList<>();
      Optional<Step> worst = Optional.empty();
      for (Circuit circuit : harness.newCircuits()) {
        OperatingPoint point =
            Solver.full(network).solve(Variant.healthy(network), circuit.onSetting());
        Loss loss = loss(network, point, circuit);
        losses.add(loss);
        if (worst.isEmpty()) {
          worst = step(network, point, true, loss.feed(), loss.feedLimit(), atTheirEnd);
        }
        if (worst.isEmpty()) {
          worst = step(network, point, false, loss.ground(), loss.groundLimit(), atTheirEnd);
        }
      }
      if (worst.isEmpty()) {
        return losses;
      }
      Run run = worst.get().run();
      WireSize next = harness.atLeast(Math.max(worst.get().mm2(), run.size().mm2() * 1.05));
      if (next.mm2() <= run.size().mm2()) {
        atTheirEnd.add(run);
      } else {
        run.grow(next);
      }
    }
    return losses;
  }

  private record Step(Run run, double mm2) {}

  /**
   * The run that loses most, and the copper it would need; empty if it needn't be thicker, or no
   * run can help.
   */
  private Optional<Step> step(
      Network network,
      OperatingPoint point,
      boolean feed,
      double all,
      Drop limit,
      Set<Run> atTheirEnd) {
    double excess = all - MARGIN * limit.volts();
    if (excess <= 0) {
      return Optional.empty();
    }
    Map<Run, Double> lost = new HashMap<>();
    for (Run run : harness.runs()) {
      if (run.side().feeds() == feed && run.side() != Side.CONTROL && !atTheirEnd.contains(run)) {
        // Of branches side by side only the worst counts: a load's way goes through one of them.
        double volts = 0;
        for (String wire : run.wires()) {
          volts = Math.max(volts, copper(network, point, wire));
        }
        lost.put(run, volts);
      }
    }
    double copper = lost.values().stream().mapToDouble(Double::doubleValue).sum();
    double over = all - limit.volts();
    // Within the limit, and no copper reaches the margin.
    boolean enough = over <= 0 && copper < excess;
    if (enough || copper < HOPE * over) {
      return Optional.empty();
    }
    return lost.entrySet().stream()
        .filter(e -> e.getValue() > WORTH)
        .max(Comparator.comparingDouble(Map.Entry::getValue))
        .map(
            e -> {
              double rest = Math.max(e.getValue() - excess, 0.6 * e.getValue());
              return new Step(e.getKey(), e.getKey().size().mm2() * e.getValue() / rest);
            });
  }

  /** Volts along a wire's copper, without its ends. */
  private double copper(Network network, OperatingPoint point, String wire) {
    int e = network.element(wire, "conductor").orElseThrow();
    PartSpec.Wire spec = (PartSpec.Wire) network.vehicle().requirePart(wire).spec();
    double ends =
        2
            * spec.endOhms()
                .map(o -> o.about())
                .orElseGet(
                    () ->
                        harness
                            .basis()
                            .knowledge()
                            .typicals()
                            .usual(spec.kind(), "endOhms", harness.volts())
                            .typical());
    return Math.max(0, Math.abs(point.across(e)) - Math.abs(point.amps(e)) * ends);
  }

  private Loss loss(Network network, OperatingPoint point, Circuit circuit) {
    Vehicle vehicle = network.vehicle();
    double feed = 0;
    double ground = 0;
    boolean starter = false;
    for (LoadRef load : circuit.loads()) {
      Part part = vehicle.requirePart(load.part());
      starter |= cranks && Starters.is(part.spec(), vehicle.systemVolts());
      Element element = element(network, load);
      double whole = point.volts(network.requireNode(vehicle.feedPost()));
      double a = point.volts(element.a());
      double b = point.volts(element.b());
      feed = Math.max(feed, Math.min(Math.abs(whole - a), Math.abs(whole - b)));
      ground = Math.max(ground, Math.min(Math.abs(a), Math.abs(b)));
    }
    boolean momentary =
        circuit.on().keySet().stream()
            .anyMatch(
                c -> vehicle.requirePart(c).spec() instanceof PartSpec.Switch s && s.momentary());
    int volts = vehicle.systemVolts();
    Drop feedLimit = values.drop(starter ? Stretch.STARTER_FEED : Stretch.FEED, volts);
    Drop groundLimit = values.drop(starter ? Stretch.STARTER_GROUND : Stretch.GROUND, volts);
    return new Loss(
        circuit.id(),
        feed,
        !starter && momentary ? twice(feedLimit) : feedLimit,
        ground,
        !starter && momentary ? twice(groundLimit) : groundLimit);
  }

  /**
   * What works for moments may lose twice as much: FAA AC 43.13-1B, Table 11-6 (from memory) allows
   * 0.5 V for long and 1 V for moments.
   */
  private static Drop twice(Drop drop) {
    return new Drop(drop.stretch(), drop.systemVolts(), 2 * drop.volts(), drop.source());
  }

  private static Element element(Network network, LoadRef load) {
    return network.elements().get(network.loadElement(load));
  }
}
