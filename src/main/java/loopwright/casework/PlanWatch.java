package loopwright.casework;

import java.util.function.BooleanSupplier;
import loopwright.model.Vehicle;
import loopwright.paper.PaperCheck;

/**
 * Checks a plan again after each edit. It says what {@link PaperDesk#check} says, sooner: states of
 * the plan that an edit leaves as they were aren't solved again.
 */
public final class PlanWatch {
  private final PaperDesk desk;
  private final PaperCheck figures;

  PlanWatch(PaperDesk desk, PaperCheck figures) {
    this.desk = desk;
    this.figures = figures;
  }

  /**
   * Checks a vehicle's plan. One check at a time; others wait.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C; below 80
   * @param stale whether nobody waits for the answer any more; asked often, from this thread
   * @throws java.util.concurrent.CancellationException soon after nobody does
   */
  public synchronized PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
    return desk.check(vehicle, hottest, () -> figures.figures(vehicle, hottest, stale));
  }
}
