package loopwright.ui;

import java.util.Optional;

/** What the person chose and wants to find again next time. */
public interface Preferences {

  /** Nothing is kept. */
  Preferences NONE =
      new Preferences() {
        @Override
        public Optional<String> read(Item item) {
          return Optional.empty();
        }

        @Override
        public void keep(Item item, String value) {}
      };

  /** The things kept. */
  enum Item {
    /** Name of a {@link Look}. */
    LOOK,
    /** Name of a {@link TextSize}. */
    TEXT_SIZE,
    /** Code of a language; nothing kept means the system's. */
    LANGUAGE,
    /** Names of units, as {@link loopwright.model.Units#names} gives them. */
    UNITS,
    /** Id of the meter used last. */
    METER,
    /** Where the meter is connected that sends its readings. */
    METER_PORT,
    /** Name of the vehicle used last. */
    VEHICLE,
    /** Names of the vehicles used lately, newest first, one a line. */
    VEHICLES,
    /** Whether what a vehicle had before counts: {@code yes} or {@code no}. */
    OWN_RECORD
  }

  /** What was kept, if anything. */
  Optional<String> read(Item item);

  /** Keeps a value. */
  void keep(Item item, String value);
}
