package loopwright.io.sheet;

import loopwright.casework.list.ListTable;
import loopwright.casework.sheet.SheetText;

/**
 * A list for a spreadsheet: CSV (RFC 4180) with a line of headings. A cell that a spreadsheet would
 * take for a formula has an apostrophe in front, so that nothing in a vehicle file is ever run.
 */
public final class ListSheet {
  private ListSheet() {}

  /** The list's headings and rows. */
  public static String text(ListTable table) {
    StringBuilder text =
        new StringBuilder(
            SheetText.line(table.columns().stream().map(ListTable.Column::heading).toList()));
    table.rows().forEach(row -> text.append(SheetText.line(row)));
    return text.toString();
  }
}
