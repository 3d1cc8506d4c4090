package loopwright.ui.cases;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.record.CaseRecord;

/** Writes what is printed or exported of kept cases. */
@FunctionalInterface
public interface CaseFiles {

  /** What can be written. */
  enum Sheet {
    /** The record of one case on a page. */
    RECORD,
    /** Cases with all their readings, for other programs. */
    JSON,
    /** All readings of cases, for a spreadsheet. */
    CSV
  }

  /**
   * Writes a file, in place of one of the same name. Called off the window's thread.
   *
   * @param records the cases; one for a record
   * @param folder the folder it goes into
   * @return the file
   * @throws IOException if it can't be written, naming the file and the reason
   * @throws Problem if there is nothing to write
   */
  Path write(Sheet sheet, List<CaseRecord> records, Path folder) throws IOException, Problem;
}
