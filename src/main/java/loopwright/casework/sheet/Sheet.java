package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import loopwright.casework.edit.Shown;

/**
 * A list before anybody says what it means: its headings, its rows, and what is wrong with it as
 * text. Cells are parted by semicolons, tabs, bars or commas.
 *
 * @param <C> what its columns may hold
 */
public abstract sealed class Sheet<C extends Enum<C> & SheetColumn> permits WireSheet, PinSheet {
  /** Longest cell in characters, as for texts of vehicles. */
  static final int MAX_TEXT = 10_000;

  /** Separators tried, the one least likely to stand in a cell first. */
  private static final char[] SEPARATORS = {';', '\t', '|', ','};

  private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x08\\x0B-\\x1F\\x7F]");

  final String file;
  private final Class<C> kind;
  private final Mapping<C> guess;
  final List<SheetText.Row> rows;
  final List<CellDefect> defects = new ArrayList<>();

  Sheet(String text, String file, Class<C> kind) {
    this.file = file;
    this.kind = kind;
    SheetText best = SheetText.cut(text, SEPARATORS[0]);
    Headings<C> headings = Headings.find(best.rows(), kind);
    for (int i = 1; i < SEPARATORS.length; i++) {
      SheetText cut = SheetText.cut(text, SEPARATORS[i]);
      Headings<C> found = Headings.find(cut.rows(), kind);
      int more = found.guess().columns().size() - headings.guess().columns().size();
      // Where no heading says anything, the separator that cuts the first row finest.
      boolean finer = found.guess().headings().size() > headings.guess().headings().size();
      if (more > 0 || (headings.guess().columns().isEmpty() && finer)) {
        best = cut;
        headings = found;
      }
    }
    this.guess = headings.guess();
    if (best.rows().isEmpty()) {
      this.rows = List.of();
      defects.add(bad(0, "list", "text.none", "text.needed", "text.bad"));
      return;
    }
    if (best.tooMuch() || best.tooWide().isPresent()) {
      this.rows = List.of();
      defects.add(
          best.tooMuch()
              ? bad(0, "list", "cells.more", "cells.most", "cells.bad", SheetWords.say("million"))
              : bad(
                  best.tooWide().get(),
                  "row",
                  "cells.more",
                  "cells.most",
                  "cells.bad",
                  Integer.toString(SheetText.MOST_COLUMNS)));
      return;
    }
    this.rows = best.rows().subList(headings.first() + headings.size(), best.rows().size());
    if (rows.isEmpty()) {
      defects.add(
          bad(
              best.rows().get(headings.first()).line(),
              "list",
              "rows.none",
              "rows.needed",
              "rows.bad"));
    }
    best.badQuotes().forEach(this::badQuote);
    rows.forEach(this::check);
  }

  /** What its columns may hold. */
  public final List<C> columns() {
    return List.of(kind.getEnumConstants());
  }

  /** Which column holds what, as far as the headings tell. */
  public final Mapping<C> guess() {
    return guess;
  }

  /** The cells of the row that begins on a line, counted from 1; none if none does. */
  public final List<String> cells(int line) {
    return rows.stream()
        .filter(r -> r.line() == line)
        .findFirst()
        .map(SheetText.Row::cells)
        .orElse(List.of());
  }

  /** The first rows under the headings, cell by cell, to judge by what a column holds. */
  public final List<List<String>> firstRows(int most) {
    return rows.stream().limit(most).map(SheetText.Row::cells).toList();
  }

  private void badQuote(SheetText.BadQuote bad) {
    defects.add(
        defect(
            bad.line(),
            bad.column(),
            SheetWords.say("cell"),
            SheetWords.say(bad.open() ? "quote.open" : "quote.text"),
            SheetWords.say("quote"),
            SheetWords.say(bad.open() ? "quote.open.bad" : "quote.text.bad")));
  }

  private void check(SheetText.Row row) {
    int columns = guess.headings().size();
    for (int c = columns + 1; c <= row.cells().size(); c++) {
      if (!row.cell(c).isBlank()) {
        defects.add(
            defect(
                row.line(),
                c,
                SheetWords.say("row"),
                SheetWords.say("cells", row.cells().size()),
                SheetWords.say("cells.headings", columns),
                SheetWords.say("cells.beyond")));
        break;
      }
    }
    for (int c = 1; c <= Math.min(columns, row.cells().size()); c++) {
      String cell = row.cell(c);
      boolean control = CONTROL.matcher(cell).find();
      if (control || cell.length() > MAX_TEXT) {
        defects.add(
            defect(
                row.line(),
                c,
                SheetWords.say("cell"),
                Shown.of(cell),
                SheetWords.say("printable"),
                SheetWords.say(control ? "control" : "long")));
      }
    }
  }

  /** What is wrong with a row or the whole, all of it by key. */
  private CellDefect bad(
      int line, String object, String value, String limit, String what, Object... of) {
    return defect(
        line,
        0,
        SheetWords.say(object),
        SheetWords.say(value, of),
        SheetWords.say(limit, of),
        SheetWords.say(what, of));
  }

  CellDefect defect(int line, int column, String object, String value, String limit, String what) {
    return CellDefect.at(
        new CellDefect.Place(file, guess.headings()), line, column, object, value, limit, what);
  }
}
