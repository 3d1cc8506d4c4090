package loopwright.casework.edit;

import java.time.Instant;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/**
 * Keeps copies of work that no vehicle file holds yet, so that nothing is lost if the program ends
 * or another vehicle is taken up. Implemented by the io room. For one thread at a time.
 */
public interface UnsavedWork {

  /** Keeps nothing. */
  UnsavedWork NOWHERE =
      new UnsavedWork() {
        @Override
        public void keep(String name, Vehicle vehicle) {}

        @Override
        public void drop(String name) {}

        @Override
        public List<Kept> kept() {
          return List.of();
        }
      };

  /**
   * A copy that was kept.
   *
   * @param name the vehicle's file, or its name where it had none
   * @param at when
   * @param vehicle the vehicle
   */
  record Kept(String name, Instant at, Vehicle vehicle) {}

  /**
   * Keeps a copy in place of the one kept under that name.
   *
   * @throws Problem if it can't be written
   */
  void keep(String name, Vehicle vehicle) throws Problem;

  /** Forgets what was kept under a name. */
  void drop(String name);

  /** What is kept and isn't being worked on in another window, newest first. */
  List<Kept> kept();
}
