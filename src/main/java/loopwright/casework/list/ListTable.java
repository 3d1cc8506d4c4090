package loopwright.casework.list;

import java.util.List;

/**
 * A list in words, for paper and for a spreadsheet alike.
 *
 * @param title what it is
 * @param notes what to know before using it, a sentence each
 * @param columns its columns
 * @param rows its rows, each with a cell for every column
 */
public record ListTable(
    String title, List<String> notes, List<Column> columns, List<List<String>> rows) {

  /**
   * A column.
   *
   * @param heading its heading
   * @param share how much of the width it wants beside the others
   * @param side where its texts stand
   */
  public record Column(String heading, double share, Side side) {}

  /** Where texts stand in their column. */
  public enum Side {
    LEFT,
    RIGHT
  }

  /** Copies the lists; rejects rows of another length. */
  public ListTable {
    notes = List.copyOf(notes);
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "row of " + row.size() + " cells in '" + title + "' of " + columns.size());
      }
    }
  }
}
