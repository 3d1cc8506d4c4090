package loopwright.ui;

import java.util.Optional;

/** What the person chose and wants to find again next time. */
public interface Preferences {

  /** The things kept. */
  enum Item {
    /** Name of a {@link Look}. */
    LOOK,
    /** Name of a {@link TextSize}. */
    TEXT_SIZE,
    /** Id of the meter used last. */
    METER,
    /** Name of the vehicle used last. */
    VEHICLE
  }

  /** What was kept, if anything. */
  Optional<String> read(Item item);

  /** Keeps a value. */
  void keep(Item item, String value);
}
