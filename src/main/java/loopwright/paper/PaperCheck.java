package loopwright.paper;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import loopwright.knowledge.Knowledge;
import loopwright.model.Vehicle;

/**
 * Works out the figures of a plan: every circuit is solved switched on by itself with typical
 * values, and with everything on that can be on together. Remembers the states of the plan that it
 * worked out last, so that after an edit only those are solved that it changes. Not for several
 * threads.
 */
public final class PaperCheck {

  /** Surroundings of the wires for which the chart of fuses holds, in degrees C. */
  public static final double USUAL_SURROUNDINGS = LoomHeat.CHART;

  private final Knowledge knowledge;
  private Optional<Kept> kept = Optional.empty();

  /** Remembers nothing yet. */
  public PaperCheck(Knowledge knowledge) {
    this.knowledge = knowledge;
  }

  /**
   * All figures of a vehicle that can be solved, those within their limits too, worked out anew.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C; below 80, what PVC
   *     insulation stands
   */
  public static List<Figure> figures(Vehicle vehicle, Knowledge knowledge, double hottest) {
    return new PaperCheck(knowledge).figures(vehicle, hottest, () -> false);
  }

  /**
   * The same, with what is remembered.
   *
   * @param stale whether nobody waits for the figures any more; looked at between states
   * @throws java.util.concurrent.CancellationException if nobody does
   */
  public List<Figure> figures(Vehicle vehicle, double hottest, BooleanSupplier stale) {
    Plan plan = new Plan(vehicle, knowledge.typicals(), knowledge.wireFuses(), kept, stale);
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
    kept = Optional.of(plan.states().kept());
    return plan.figures();
  }

  /** How many states the last figures rest on. */
  int states() {
    return kept.map(Kept::states).orElse(0);
  }

  /** How many of them had to be solved. */
  int solved() {
    return kept.map(Kept::solved).orElse(0);
  }
}
