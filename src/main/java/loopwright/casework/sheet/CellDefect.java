package loopwright.casework.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import loopwright.casework.edit.Shown;

/**
 * One thing wrong with a list, and where.
 *
 * @param line line of the file, counted from 1; 0 for the file as a whole
 * @param column column of the list, counted from 1; 0 for the row as a whole
 * @param object what it is about, for instance {@code wire W7}
 * @param value what the list says, shortened where long
 * @param limit what is accepted
 * @param message all of it in one sentence, place included, said so that it can be put right
 */
public record CellDefect(
    int line, int column, String object, String value, String limit, String message) {
  /** As they stand in the file, from left to right in a row. */
  static final Comparator<CellDefect> IN_ORDER =
      Comparator.comparingInt(CellDefect::line).thenComparingInt(CellDefect::column);

  /** Rejects missing components. */
  public CellDefect {
    Objects.requireNonNull(object, "object");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(message, "message");
  }

  /**
   * A defect of a cell, or of a row or the whole file where column or line is 0.
   *
   * @param what follows the object's name in the message
   */
  static CellDefect at(
      Place place, int line, int column, String object, String value, String limit, String what) {
    String where = place.of(line, column);
    return new CellDefect(
        line, column, object, value, limit, object + ": " + what + " [" + where + "]");
  }

  /** A file and its headings, as far as they are known. */
  record Place(String file, List<String> headings) {
    String of(int line, int column) {
      String heading = column >= 1 && column <= headings.size() ? headings.get(column - 1) : "";
      return file
          + (line > 0 ? SheetWords.say("place.line", line) : "")
          + (column > 0 ? SheetWords.say("place.column", column) : "")
          + (heading.isBlank() ? "" : " (" + Shown.of(heading) + ")");
    }
  }

  @Override
  public String toString() {
    return message;
  }
}
