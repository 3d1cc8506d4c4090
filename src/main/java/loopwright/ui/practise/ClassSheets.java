package loopwright.ui.practise;

import java.io.IOException;
import java.nio.file.Path;
import loopwright.casework.practise.ClassSheet;

/** Prints class sheets. */
@FunctionalInterface
public interface ClassSheets {

  /**
   * Writes a sheet with its answers, in place of a file of the same name. Called off the window's
   * thread.
   *
   * @return the file
   * @throws IOException if it can't be written, naming the file and the reason
   */
  Path write(ClassSheet sheet) throws IOException;
}
