package loopwright.casework.table;

import loopwright.casework.Problem;

/** What stands in the cells of one column of one table. */
interface Rule {

  /** The cell's text; empty where a row has no such value. */
  String text(Draft draft, String row);

  /**
   * Takes a text for a cell.
   *
   * @throws Problem if it can't be taken; it says what is accepted
   */
  void set(Draft draft, String row, String text) throws Problem;

  /** Whether a row can't do without it. */
  default boolean required(Draft draft, String row) {
    return false;
  }
}
