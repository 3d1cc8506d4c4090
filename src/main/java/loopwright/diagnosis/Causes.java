package loopwright.diagnosis;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.knowledge.Context;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.OperatingPoint;

/**
 * The complaint as a solved fact: which hypotheses make the vehicle behave as complained of, and
 * with what chance.
 */
final class Causes {

  private final Workbench bench;
  private final Vehicle vehicle;
  private final Predictor predictor;
  private final Complaint complaint;
  private final Optional<Loop> loop;
  private final SharedFuses shared;
  private final Setting shows;

  Causes(Workbench bench, Predictor predictor, Complaint complaint, Optional<Loop> loop) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.predictor = predictor;
    this.complaint = complaint;
    this.loop = loop;
    this.shared = new SharedFuses(bench, complaint, loop);
    this.shows = bench.shows(complaint);
  }

  /**
   * Whether a failure changes only what carries no current wherever the complaint is judged, so
   * that it can't cause it. Most of a big vehicle is out of play by that.
   */
  boolean idle(List<Change> changes) {
    return bench.point(bench.healthy(), complaint.on()).idle(changes)
        && bench.point(bench.healthy(), shows).idle(changes);
  }

  /** A hypothesis with the chance that it causes the complaint. */
  record Causing(Hypothesis hypothesis, double chance) {}

  /**
   * Single failures of a part that cause the complaint, by what they do while the circuit is on or
   * by a fuse that they have spent while another one was.
   */
  List<Causing> causing(Part part, Context context) {
    Map<Cause, Causing> found = new LinkedHashMap<>();
    bench
        .singles(part, context, complaint.on(), this::idle, this::bearsOn)
        .forEach(h -> causing(h).ifPresent(c -> found.put(Cause.of(h), c)));
    if (shared.none()) {
      return List.copyOf(found.values());
    }
    bench
        .cuts(part, context)
        .flatMap(List::stream)
        .filter(cut -> cut.adds() && !found.containsKey(new Cause(cut.id(), cut.cell())))
        .forEach(
            cut ->
                shared.live(cut.changes()).stream()
                    .map(setting -> bench.spent(cut, setting))
                    .filter(shared::spends)
                    .findFirst()
                    .flatMap(this::causing)
                    .ifPresent(c -> found.put(Cause.of(c.hypothesis()), c)));
    return List.copyOf(found.values());
  }

  /** What has failed, told apart by its resistance where that may be anything. */
  private record Cause(SuspectId id, Optional<Spread> cell) {
    static Cause of(Hypothesis h) {
      return new Cause(h.suspect(), h.cell());
    }
  }

  private Optional<Causing> causing(Hypothesis h) {
    return Optional.of(new Causing(h, chance(h))).filter(c -> c.chance() >= CAUSES);
  }

  /** Least chance with which a suspect must cause the complaint to be in play. */
  private static final double CAUSES = 0.02;

  /**
   * Chance that someone whose switching on has spent a fuse complains of another circuit behind it
   * than of the one switched on. Our own estimate.
   */
  private static final double NAMED_INSTEAD = 0.2;

  /** Whether the hypothesis changes anything about the load complained of, or about any fuse. */
  boolean bearsOn(Hypothesis h) {
    if (complaint.kind() == ComplaintKind.DRAINS_BATTERY
        || complaint.kind() == ComplaintKind.WAKES_OTHER
        || complaint.kind() == ComplaintKind.STUCK_ON) {
      return true;
    }
    double level = bench.level(bench.point(h, complaint.on()), complaint.load(), complaint.on());
    return Math.abs(level - 1) > 0.02 || !h.history().blown().isEmpty();
  }

  /**
   * Chance that the hypothesis makes the load look as complained of, from the typical point and the
   * ends of its own range alone where they settle it.
   */
  double chance(Hypothesis h) {
    if (complaint.kind() == ComplaintKind.DEAD
        || complaint.kind() == ComplaintKind.DIM
        || complaint.kind() == ComplaintKind.WORKS_SOMETIMES) {
      if (works(bench.point(h, complaint.on()))
          && (h.cell().isEmpty() || ways(h).stream().allMatch(this::works))) {
        return 0;
      }
    }
    return causesAs(h) * (h.spentIn().isPresent() ? NAMED_INSTEAD : 1);
  }

  /** How the circuit complained of may stand at the ends of what the hypothesis leaves open. */
  private List<OperatingPoint> ways(Hypothesis h) {
    return h.spentIn().isPresent() ? bench.points(h, complaint.on()) : bench.courses(h);
  }

  /** Whether the load complained of works as in health. */
  private boolean works(OperatingPoint point) {
    return bench.level(point, complaint.load(), complaint.on()) > 0.98;
  }

  private double causesAs(Hypothesis h) {
    return switch (complaint.kind()) {
      case DEAD -> sight(h, Seen.OFF) + 0.1 * sight(h, Seen.DIM);
      case DIM -> sight(h, Seen.DIM) + 0.05 * sight(h, Seen.OFF);
      case STUCK_ON -> {
        Prediction.Sight s = predictor.load(h, complaint.load(), shows);
        yield Math.max(0, s.chance(Seen.ON) + 0.7 * s.chance(Seen.DIM) - Predictor.MISNAMED);
      }
      case BLOWS_FUSE -> blows(h) ? 1 : 0;
      case WAKES_OTHER -> wakes(h) ? 1 : 0;
      case WORKS_SOMETIMES -> Math.max(sight(h, Seen.OFF), sight(h, Seen.DIM));
      case DRAINS_BATTERY -> drains(h) ? 1 : 0;
    };
  }

  private double sight(Hypothesis h, Seen seen) {
    double blurred = predictor.load(h, complaint.load(), shows).chance(seen);
    return Math.max(0, (blurred - Predictor.MISNAMED / 3) / (1 - Predictor.MISNAMED));
  }

  private boolean blows(Hypothesis h) {
    History before = bench.point(bench.healthy(), complaint.on()).history();
    for (int e = 0; e < bench.network().elements().size(); e++) {
      if (h.history().blown().get(e)
          && !before.blown().get(e)
          && bench.network().elements().get(e) instanceof Element.Link link
          && (loop.isEmpty() || loop.get().holds(link.part()))) {
        return true;
      }
    }
    return false;
  }

  private boolean wakes(Hypothesis h) {
    return vehicle.circuits().stream()
        .flatMap(c -> c.loads().stream())
        .anyMatch(l -> !l.equals(complaint.load()) && bench.wakes(h, complaint.on(), l));
  }

  private boolean drains(Hypothesis h) {
    int cell = bench.network().element(vehicle.battery().id(), "cell").orElseThrow();
    double amps = Math.abs(bench.point(h, Setting.REST).amps(cell));
    double usual = Math.abs(bench.point(bench.healthy(), Setting.REST).amps(cell));
    return amps > usual + DRAIN_AMPS;
  }

  /** Extra current at rest that empties a battery in days. Common practice: 50 mA is too much. */
  private static final double DRAIN_AMPS = 0.05;
}
