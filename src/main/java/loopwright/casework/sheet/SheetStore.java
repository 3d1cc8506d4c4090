package loopwright.casework.sheet;

import java.nio.file.Path;
import java.util.Optional;
import loopwright.casework.Problem;

/** Where lists come from and go to. Implemented by the io room. */
public interface SheetStore {

  /**
   * A list as read.
   *
   * @param text its text
   * @param name what defects call it
   * @param remark how its letters were taken, where the file doesn't say
   */
  record Read(String text, String name, Optional<String> remark) {}

  /**
   * Reads a list.
   *
   * @throws Problem if there is no such file, or it is no text
   */
  Read read(Path file) throws Problem;

  /**
   * Writes a list, so that the file holds either what it held before or all of it.
   *
   * @throws Problem if it can't be written
   */
  void write(Path file, String text) throws Problem;

  /** The folder in which a person keeps their own things. */
  Path home();
}
