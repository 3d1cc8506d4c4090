package loopwright.casework.edit;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Photo;
import loopwright.model.Vehicle;

/**
 * Where vehicles that are worked on are kept. Implemented by the io room.
 *
 * <p>Whatever fails, the file holds either what it held before or all of what was saved.
 */
public interface VehicleStore {

  /** Keeps nothing. */
  VehicleStore NOWHERE =
      new VehicleStore() {
        @Override
        public Opened open(Path file) throws Problem {
          throw EditWords.problem("file", file.toString(), "store.open");
        }

        @Override
        public Opened create(Path file, Vehicle vehicle) throws Problem {
          throw EditWords.problem("file", file.toString(), "store.save");
        }
      };

  /**
   * Opens a vehicle to work on. A second window or program gets it to look at only, see {@link
   * Opened#readOnly()}. A vehicle that does not hold together is opened all the same.
   *
   * @throws Problem if there is no such file or it can't be read
   */
  Opened open(Path file) throws Problem;

  /**
   * Saves a vehicle under a new name and opens it.
   *
   * @throws Problem if there is something of this name already or it can't be written
   */
  Opened create(Path file, Vehicle vehicle) throws Problem;

  /**
   * A vehicle as it was before a save.
   *
   * @param number counts the saves of the file; higher is newer
   * @param at when it was set aside
   * @param bytes its size
   */
  record Version(int number, Instant at, long bytes) {}

  /** A vehicle that is open until closed. */
  interface Opened extends AutoCloseable {
    /** The file, links followed. */
    Path file();

    /** The vehicle as last read or saved. */
    Vehicle vehicle();

    /** Why nothing can be saved, in words; empty if it can. */
    Optional<String> readOnly();

    /**
     * Saves, and keeps what the file held as a previous version.
     *
     * @throws Problem if it can't be written, or the file was changed by someone else since it was
     *     opened or saved; nothing is changed then
     */
    void save(Vehicle vehicle) throws Problem;

    /**
     * Saves even if the file was changed by someone else; the other's work becomes a previous
     * version.
     *
     * @throws Problem if it can't be written; nothing is changed then
     */
    void saveOver(Vehicle vehicle) throws Problem;

    /** The previous versions, newest first. */
    List<Version> versions();

    /**
     * A previous version, to look at or to save again.
     *
     * @throws Problem if it is gone or can't be read
     */
    Vehicle look(Version version) throws Problem;

    /**
     * Takes a photo for the vehicle: one below the vehicle's folder stays where it is, any other is
     * copied into the folder {@code photos} beside the vehicle's file.
     *
     * @return its path as a {@link loopwright.model.Photo} names it
     * @throws Problem if it is no picture or can't be read or copied
     */
    String attach(Path photo) throws Problem;

    /** A photo's file; empty if it is gone or doesn't lie below the vehicle's folder. */
    Optional<Path> file(Photo photo);

    @Override
    void close();
  }
}
