package loopwright.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.model.Circuit;
import loopwright.model.Setting;

/**
 * Bringing up a new plan behind a small fuse in the battery's lead: which circuits each fuse
 * carries by itself, the moment of switching on included, and which need a larger one.
 */
final class BringUpFigures {

  /** Fuses that a plan is brought up with, in amperes. Common practice. */
  private static final double[] FUSES = {5, 7.5, 10};

  /** Circuits named at most. */
  private static final int MOST_NAMED = 12;

  private final Plan plan;
  private final InrushFigures inrush;

  BringUpFigures(Plan plan, InrushFigures inrush) {
    this.plan = plan;
    this.inrush = inrush;
  }

  void add() {
    Map<Double, List<String>> byFuse = new LinkedHashMap<>();
    for (double fuse : FUSES) {
      byFuse.put(fuse, new ArrayList<>());
    }
    double beyond = FUSES[FUSES.length - 1];
    double most = beyond;
    List<String> own = new ArrayList<>();
    for (Circuit circuit : plan.vehicle().circuits()) {
      Setting on = circuit.onSetting();
      if (plan.cranks(on)) {
        continue;
      }
      double amps = plan.batteryAmps(plan.point(on));
      String load = circuit.loads().get(0).toString();
      List<String> into = own;
      for (int i = FUSES.length - 1; i >= 0; i--) {
        if (amps <= FUSES[i] && inrush.outlasts(FUSES[i], on)) {
          into = byFuse.get(FUSES[i]);
        }
      }
      if (into == own) {
        most = Math.max(most, amps);
      }
      if (!into.contains(load)) {
        into.add(load);
      }
    }
    byFuse.forEach((fuse, loads) -> add(Figure.Kind.BRING_UP_AMPS, fuse, beyond, loads));
    add(Figure.Kind.OWN_FUSE_AMPS, most, beyond, own);
  }

  private void add(Figure.Kind kind, double amps, double limit, List<String> loads) {
    if (!loads.isEmpty()) {
      plan.add(
          new Figure(
              plan.vehicle().battery().id(),
              kind,
              amps,
              limit,
              Setting.REST,
              loads.subList(0, Math.min(MOST_NAMED, loads.size())),
              List.of(loads.size(), Math.max(0, loads.size() - MOST_NAMED))));
    }
  }
}
