package loopwright.diagnosis;

import java.util.List;
import java.util.Optional;
import loopwright.model.Setting;
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
  private final Setting shows;

  Causes(Workbench bench, Predictor predictor, Complaint complaint, Optional<Loop> loop) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.predictor = predictor;
    this.complaint = complaint;
    this.loop = loop;
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
          && (h.cell().isEmpty() || bench.courses(h).stream().allMatch(this::works))) {
        return 0;
      }
    }
    return causesAs(h);
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
