package loopwright.paper;

import java.util.List;
import loopwright.knowledge.Knowledge;
import loopwright.model.Vehicle;

/**
 * Works out the figures of a plan: every circuit is solved switched on by itself with typical
 * values, and with everything on that can be on together.
 */
public final class PaperCheck {
  private PaperCheck() {}

  /** Surroundings of the wires for which the chart of fuses holds, in degrees C. */
  public static final double USUAL_SURROUNDINGS = LoomHeat.CHART;

  /**
   * All figures of a vehicle that can be solved, those within their limits too.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C; below 80, what PVC
   *     insulation stands
   */
  public static List<Figure> figures(Vehicle vehicle, Knowledge knowledge, double hottest) {
    Plan plan = new Plan(vehicle, knowledge.typicals(), knowledge.wireFuses());
    LoomHeat heat = new LoomHeat(plan, hottest);
    heat.add();
    new TerminalFigures(plan).add();
    new LoadFigures(plan).add();
    new CurrentFigures(plan, heat).add();
    new FuseFigures(plan, heat).add();
    InrushFigures inrush = new InrushFigures(plan);
    inrush.add();
    new CoilFigures(plan).add();
    new SneakFigures(plan).add();
    new TotalFigures(plan).add();
    new SupplyFigures(plan).add();
    new BringUpFigures(plan, inrush).add();
    new CrimpFigures(plan).add();
    new SharedGroundFigures(plan).add();
    new JointFigures(plan, knowledge).add();
    return plan.figures();
  }
}
