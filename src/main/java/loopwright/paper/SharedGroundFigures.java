package loopwright.paper;

import java.util.List;
import java.util.Optional;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** Grounds of senders and electronics that heavy loads lift. */
final class SharedGroundFigures {

  /**
   * Volts by which the ground of a control unit or sender may move. Common practice, see
   * ground.csv.
   */
  private static final double MAY_MOVE = 0.05;

  /** Electronics up to this current count as signals, in amperes. Common practice. */
  private static final double SIGNAL_AMPS = 2;

  /** Volts up to which an end of a signal counts as grounded. */
  private static final double GROUNDED = 1;

  /** Volts below which a ground counts as still. */
  private static final double LEAST_MOVED = 1e-6;

  /** Times the signal's own current from which a piece counts as shared. */
  private static final double SHARED = 1.5;

  /** Share by which two currents may differ and count as alike. */
  private static final double ALIKE = 0.1;

  private final Plan plan;
  private final List<OperatingPoint> states;

  SharedGroundFigures(Plan plan) {
    this.plan = plan;
    this.states = plan.settings().stream().map(plan::point).toList();
  }

  void add() {
    for (Part part : plan.vehicle().parts()) {
      boolean signal =
          part.kind() == PartKind.SENDER
              || part.kind() == PartKind.ELECTRONICS
                  && ((PartSpec.PlainLoad) part.spec()).amps().about() <= SIGNAL_AMPS;
      if (signal) {
        int e = plan.network().elementsOf(part.id()).get(0);
        ground(e).ifPresent(ground -> moves(part, e, ground));
      }
    }
  }

  /**
   * How a signal is grounded.
   *
   * @param node its grounded end
   * @param way the elements from there to the grounded post where it works most
   */
  private record Return(int node, List<Integer> way) {}

  private Optional<Return> ground(int e) {
    Element element = plan.network().elements().get(e);
    Optional<OperatingPoint> works =
        states.stream().max((p, q) -> Double.compare(Plan.about(p.amps(e)), Plan.about(q.amps(e))));
    if (works.isEmpty() || works.get().amps(e) == 0) {
      return Optional.empty();
    }
    double a = Math.abs(works.get().volts(element.a()));
    double b = Math.abs(works.get().volts(element.b()));
    int node = a < b ? element.a() : element.b();
    return node != Network.REFERENCE && Math.min(a, b) < GROUNDED
        ? Optional.of(new Return(node, CurrentWay.toGround(plan, works.get(), node)))
        : Optional.empty();
  }

  private void moves(Part signal, int e, Return ground) {
    double most = LEAST_MOVED;
    Optional<Circuit> heavy = Optional.empty();
    for (Circuit circuit : plan.vehicle().circuits()) {
      boolean own = circuit.loads().stream().anyMatch(l -> l.part().equals(signal.id()));
      if (!own && !plan.cranks(circuit.onSetting())) {
        double moved = moved(plan.point(circuit.onSetting()), e, ground.node());
        if (Plan.more(moved, most)) {
          most = moved;
          heavy = Optional.of(circuit);
        }
      }
    }
    if (heavy.isEmpty()) {
      return;
    }
    OperatingPoint point = plan.point(heavy.get().onSetting());
    int worst = -1;
    for (int piece : ground.way()) {
      boolean shared = Math.abs(point.amps(piece)) > SHARED * Math.abs(point.amps(e));
      if (shared
          && (worst < 0
              || Plan.more(Math.abs(point.across(piece)), Math.abs(point.across(worst))))) {
        worst = piece;
      }
    }
    if (worst >= 0) {
      plan.add(
          new Figure(
              signal.id(),
              Figure.Kind.GROUND_MOVES_VOLTS,
              most,
              MAY_MOVE,
              point.setting(),
              List.of(
                  plan.network().elements().get(worst).part(),
                  heavy.get().loads().get(0).toString()),
              List.of(Math.abs(point.amps(worst)))));
    }
  }

  /** How far a state lifts the ground beyond the quietest one in which the signal draws as much. */
  private double moved(OperatingPoint point, int e, int node) {
    double amps = Math.abs(point.amps(e));
    double quiet = Math.abs(point.volts(node));
    for (OperatingPoint other : states) {
      if (Math.abs(Math.abs(other.amps(e)) - amps) <= ALIKE * amps + 1e-4) {
        quiet = Math.min(quiet, Math.abs(other.volts(node)));
      }
    }
    return Math.abs(point.volts(node)) - quiet;
  }
}
