package loopwright.ui.paper;

import java.util.function.BooleanSupplier;
import loopwright.casework.PaperReport;
import loopwright.model.Vehicle;

/** Checks plans for the window. */
public interface PlanCheck {

  /** Stands in where nothing can be checked; each check fails. */
  PlanCheck NONE =
      new PlanCheck() {
        @Override
        public PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
          throw new IllegalStateException("no rules to check with");
        }

        @Override
        public boolean ready() {
          return true;
        }
      };

  /**
   * Checks a vehicle's plan, once the rules are ready. May take a while; called off the window's
   * thread.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C
   * @param stale whether the vehicle was edited meanwhile
   * @throws java.util.concurrent.CancellationException if it was and the check was given up
   */
  PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale);

  /** Whether a check can begin at once; else it waits for the rules. Quick. */
  boolean ready();
}
