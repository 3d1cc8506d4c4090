package loopwright.io;

import java.io.IOException;
import java.nio.file.Path;

/** Writes what was made for somebody to a file of theirs: a list, a printed page. */
public final class OutFile {
  private OutFile() {}

  /**
   * Writes the bytes so that the path holds either what it held before or all of them.
   *
   * @param what what it is, for the error
   * @throws IOException naming what, the path and the reason; the old file is then untouched
   */
  public static void write(Path path, String what, byte[] bytes) throws IOException {
    SafeFile.write(path, what, bytes);
  }
}
