package loopwright.paper;

import java.util.List;
import loopwright.knowledge.WireFuses;
import loopwright.solver.Network;

/**
 * Works out the figures of a plan: every circuit is solved switched on by itself with typical
 * values, and with everything on that can be on together.
 */
public final class PaperCheck {
  private PaperCheck() {}

  /** All figures of a vehicle, those within their limits too. */
  public static List<Figure> figures(Network network, WireFuses wireFuses) {
    Plan plan = new Plan(network, wireFuses);
    new LoadFigures(plan).add();
    new CurrentFigures(plan).add();
    new FuseFigures(plan).add();
    new CoilFigures(plan).add();
    new SneakFigures(plan).add();
    return plan.figures();
  }
}
