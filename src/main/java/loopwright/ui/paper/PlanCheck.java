package loopwright.ui.paper;

import loopwright.casework.PaperReport;
import loopwright.model.Vehicle;

/** Checks plans for the window. */
public interface PlanCheck {

  /** Stands in where nothing can be checked; each check fails. */
  PlanCheck NONE =
      new PlanCheck() {
        @Override
        public PaperReport check(Vehicle vehicle, double hottest) {
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
   */
  PaperReport check(Vehicle vehicle, double hottest);

  /** Whether a check can begin at once; else it waits for the rules. Quick. */
  boolean ready();
}
