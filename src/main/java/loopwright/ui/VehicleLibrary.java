package loopwright.ui;

import java.util.List;
import java.util.Objects;
import loopwright.model.Vehicle;

/**
 * Where the window finds vehicles. Files and their format are the business of whoever implements
 * it.
 */
public interface VehicleLibrary {

  /** Where an entry comes from. */
  enum Shelf {
    /** Comes with the program. */
    DEMO,
    /** Opened before. */
    RECENT
  }

  /**
   * A vehicle that can be loaded.
   *
   * @param name how it is found again, for instance its file; given to {@link #load}
   * @param title what people call it
   * @param detail a few words more, for instance "12 V, negative ground, 9 circuits"; may be empty
   * @param shelf where it comes from
   */
  record Entry(String name, String title, String detail, Shelf shelf) {
    /** Rejects missing parts. */
    public Entry {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(title, "title");
      Objects.requireNonNull(detail, "detail");
      Objects.requireNonNull(shelf, "shelf");
    }
  }

  /** What loading came to. */
  sealed interface Loaded {
    /**
     * The vehicle is ready.
     *
     * @param name how it is found again
     * @param vehicle the vehicle
     */
    record Ready(String name, Vehicle vehicle) implements Loaded {}

    /**
     * It can't be used.
     *
     * @param defects what is wrong with it, each naming object, value, limit and place
     */
    record Faulty(List<String> defects) implements Loaded {
      /** Copies the list. */
      public Faulty {
        defects = List.copyOf(defects);
      }
    }
  }

  /** The vehicles to choose from: recent ones first. Quick; called on the window's thread. */
  List<Entry> entries();

  /**
   * Loads a vehicle. May take a while; called off the window's thread.
   *
   * @param name an entry's name, or the path of a file the person chose
   */
  Loaded load(String name);
}
