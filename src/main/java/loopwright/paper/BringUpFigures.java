package loopwright.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.model.Setting;

/**
 * Bringing up a new plan behind a small fuse in the battery's lead: which circuits each fuse
 * carries by itself, the moment of switching on included, and which need a larger one.
 */
final class BringUpFigures {

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
    for (double fuse : BringUp.FUSES) {
      byFuse.put(fuse, new ArrayList<>());
    }
    double beyond = BringUp.FUSES.get(BringUp.FUSES.size() - 1);
    double most = beyond;
    List<String> own = new ArrayList<>();
    for (BringUp.Draw draw : BringUp.draws(plan, inrush)) {
      if (draw.cranks()) {
        continue;
      }
      String load = draw.circuit().loads().get(0).toString();
      List<String> into = draw.fuse().map(byFuse::get).orElse(own);
      if (into == own) {
        most = Math.max(most, draw.amps());
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
