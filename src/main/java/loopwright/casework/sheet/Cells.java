package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.edit.Shown;

/** The cells of a list by what they hold, and what is found wrong with them. */
final class Cells<C extends Enum<C> & SheetColumn> {
  private final Sheet<C> sheet;
  private final Mapping<C> mapping;
  private final List<CellDefect> defects;

  Cells(Sheet<C> sheet, Mapping<C> mapping) {
    this.sheet = sheet;
    this.mapping = mapping;
    this.defects = new ArrayList<>(sheet.defects);
  }

  /** What a row holds of something, without outer spaces; empty where there is no such column. */
  String text(SheetText.Row row, C column) {
    return whole(row, column).strip();
  }

  /** What a row holds of something as it stands. */
  String whole(SheetText.Row row, C column) {
    return mapping.at(column).map(row::cell).orElse("");
  }

  /** Whether the list has a column for it. */
  boolean has(C column) {
    return mapping.at(column).isPresent();
  }

  /** The heading over something; empty where there is no such column. */
  String heading(C column) {
    return mapping.at(column).map(mapping::heading).orElse("");
  }

  /** Notes what is wrong with a cell. */
  void bad(SheetText.Row row, C column, String object, String limit, String what) {
    String shown = Shown.of(text(row, column));
    bad(
        row.line(),
        mapping.at(column).orElse(0),
        object,
        shown.isEmpty() ? SheetWords.say("nothing") : "\"" + shown + "\"",
        limit,
        what);
  }

  /** Notes what is wrong in a place; line or column 0 for the whole. */
  void bad(int line, int column, String object, String value, String limit, String what) {
    defects.add(sheet.defect(line, column, object, value, limit, what));
  }

  /** Notes a column that the list can't do without. */
  void missing(C column, String limit) {
    bad(
        0,
        0,
        SheetWords.say("list"),
        SheetWords.say("no-column", column.said()),
        limit,
        SheetWords.say(
            "no-heading", column.said(), Shown.of(String.join(", ", mapping.headings()))));
  }

  /** Whether something wrong is known of a cell. */
  boolean isBad(int line, int column) {
    return defects.stream().anyMatch(d -> d.line() == line && d.column() == column);
  }

  /** How much is found wrong so far. */
  int count() {
    return defects.size();
  }

  /** Everything found wrong, in the order of the list. */
  List<CellDefect> defects() {
    defects.sort(CellDefect.IN_ORDER);
    return List.copyOf(defects);
  }
}
