package loopwright.io.sheet;

import java.util.List;
import loopwright.casework.list.ListTable;
import loopwright.casework.sheet.SheetText;

/**
 * A list for a spreadsheet: CSV (RFC 4180) with a line of headings. A cell that a spreadsheet would
 * take for a formula has an apostrophe in front, so that nothing in a vehicle file is ever run.
 */
public final class ListSheet {
  /** What a formula begins with in common spreadsheets. */
  private static final String FORMULA = "=+-@\t\r";

  private ListSheet() {}

  /** The list's headings and rows. */
  public static String text(ListTable table) {
    StringBuilder text =
        new StringBuilder(line(table.columns().stream().map(ListTable.Column::heading).toList()));
    table.rows().forEach(row -> text.append(line(row)));
    return text.toString();
  }

  private static String line(List<String> cells) {
    return SheetText.line(cells.stream().map(ListSheet::plain).toList());
  }

  private static String plain(String cell) {
    // A sign alone, as on a battery post, is no formula.
    return cell.length() > 1 && FORMULA.indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
  }
}
