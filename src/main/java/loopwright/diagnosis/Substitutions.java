package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.knowledge.Provocation;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.OperatingPoint;
import loopwright.solver.TestLamp;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * What is seen when something is put in the place of a part or moved: a lamp for a fuse, a lamp in
 * the battery's grounded lead, a good twin, a hand at a joint. Each is solved in the changed
 * network.
 */
final class Substitutions {

  /** Chance that something that is fast seems to come and go. Common practice, our own estimate. */
  private static final double SEEMS_TO = 0.03;

  private final Workbench bench;
  private final Optional<LoadRef> watched;
  private final TestLamp fuseLamp;
  private final TestLamp drainLamp;
  private final int cell;

  /**
   * Predicts for one vehicle.
   *
   * @param watched the load that is watched while a part is swapped or moved
   */
  Substitutions(Workbench bench, Optional<LoadRef> watched) {
    this.bench = bench;
    this.watched = watched;
    int volts = bench.vehicle().systemVolts();
    this.fuseLamp = TestLamp.forFuse(volts, bench.knowledge().typicals());
    this.drainLamp = TestLamp.forDrain(volts, bench.knowledge().typicals());
    this.cell = bench.network().element(bench.vehicle().battery().id(), "cell").orElseThrow();
  }

  /** Whether the check changes the network itself. */
  boolean concerns(Check check) {
    return switch (check.kind()) {
      case LAMP_FOR_FUSE, SWAP, WIGGLE, WARM, LOAD -> true;
      case UNPLUG_AND_LOOK -> check.watchesLead(bench.vehicle());
      default -> false;
    };
  }

  /** Chances of what is seen. */
  Prediction.Sight sight(Hypothesis h, Check check) {
    return switch (check.kind()) {
      case LAMP_FOR_FUSE -> Brightness.of(lamp(h, check.subject().orElseThrow(), check.setting()));
      case UNPLUG_AND_LOOK -> Brightness.of(lead(h, check.setting()));
      case SWAP -> swapped(h, check);
      default -> provoked(h, check);
    };
  }

  /** Shares of its full power at which the lamp in a fuse's place burns; the typical one first. */
  List<Double> lamp(Hypothesis h, String fuse, Setting setting) {
    Variant variant = inPlaceOf(h, fuse);
    return solve(h, variant, setting, whole(h.history(), fuse)).stream()
        .map(p -> fuseLamp.level(p, supply()))
        .toList();
  }

  /** The typical operating point with a lamp in a fuse's place. */
  OperatingPoint lit(Hypothesis h, String fuse, Setting setting) {
    Variant variant = inPlaceOf(h, fuse);
    return bench
        .solver(setting)
        .solve(variant, setting, Values.typical(variant), whole(h.history(), fuse));
  }

  private Variant inPlaceOf(Hypothesis h, String fuse) {
    return fuseLamp.inPlaceOf(h.variant(), bench.network().element(fuse, "link").orElseThrow());
  }

  private List<Double> lead(Hypothesis h, Setting setting) {
    Variant variant = drainLamp.inGroundedLead(h.variant());
    return solve(h, variant, setting, h.history()).stream()
        .map(p -> drainLamp.level(p, supply()))
        .toList();
  }

  private double supply() {
    return ((Element.Cell) bench.network().elements().get(cell)).volts().typical();
  }

  /**
   * A good one in the part's place: its own failure is gone, what stays behind in its seat isn't.
   */
  private Prediction.Sight swapped(Hypothesis h, Check check) {
    String part = check.subject().orElseThrow();
    boolean cured =
        h.of(part).filter(o -> o.failures().stream().noneMatch(InHand::stays)).isPresent();
    History history = whole(h.history(), part);
    if (!cured && history.equals(h.history())) {
      return look(bench.points(h, check.setting()));
    }
    Variant variant = cured ? sound(h, part).variant() : h.variant();
    return look(solve(h, variant, check.setting(), history));
  }

  /**
   * A part is moved or warmed, or the load left on, while that is watched: what comes and goes
   * shows as often as the tables say, if the load differs to the eye between the two.
   */
  private Prediction.Sight provoked(Hypothesis h, Check check) {
    Provocation way = check.kind().provokes().orElseThrow();
    double changes = SEEMS_TO;
    // A load that stays on strains all of its circuit, a hand one part.
    Optional<Hypothesis> reached =
        way == Provocation.LOAD ? Optional.of(h) : h.of(check.subject().orElseThrow());
    double shows =
        reached.stream()
            .flatMap(o -> o.failures().stream())
            .mapToDouble(f -> f.mode().shows(way))
            .min()
            .orElse(0);
    if (shows > 0) {
      Hypothesis without =
          way == Provocation.LOAD ? bench.healthy() : sound(h, check.subject().orElseThrow());
      Prediction.Sight failed = look(bench.points(h, check.setting()));
      Prediction.Sight sound = look(List.of(bench.point(without, check.setting())));
      double alike = 0;
      for (Seen seen : Seen.values()) {
        alike += failed.chance(seen) * sound.chance(seen);
      }
      changes += shows * Math.max(0, 1 - alike);
    }
    return new Prediction.Sight(Map.of(Seen.CHANGES, changes, Seen.STEADY, 1 - changes));
  }

  /** What is left of a hypothesis once a part that has failed in it is good again. */
  private Hypothesis sound(Hypothesis h, String part) {
    return h.pair() ? h.without(part) : bench.healthy();
  }

  private Prediction.Sight look(List<OperatingPoint> points) {
    LoadRef load = watched.orElseThrow();
    Setting fully = bench.vehicle().onSetting(load, points.get(0).setting());
    return Brightness.of(points.stream().map(p -> bench.level(p, load, fully)).toList());
  }

  /** At typical values, and at both ends of what the failure itself leaves open. */
  private List<OperatingPoint> solve(
      Hypothesis h, Variant variant, Setting setting, History history) {
    Values middle = Values.typical(variant);
    List<Values> all = new ArrayList<>(List.of(middle));
    boolean open =
        !h.failures().isEmpty() && Workbench.own(h.variant(), Values.typical(h.variant()), true);
    for (int end = 0; end < 2 && open; end++) {
      Values values = middle.copy();
      if (Workbench.own(variant, values, end == 0)) {
        all.add(values);
      }
    }
    return all.stream()
        .map(v -> bench.solver(setting).solve(variant, setting, v, history))
        .toList();
  }

  /** What has blown, this fuse not counted: it is out, or a new one is in. */
  private History whole(History history, String part) {
    if (bench.vehicle().requirePart(part).kind() != PartKind.FUSE) {
      return history;
    }
    BitSet left = history.blown();
    bench.network().elementsOf(part).forEach(left::clear);
    return new History(left);
  }
}
