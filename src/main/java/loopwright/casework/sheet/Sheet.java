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
      defects.add(defect(0, 0, "list", "no text", "a line of headings and a row", "is empty"));
      return;
    }
    if (best.tooMuch() || best.tooWide().isPresent()) {
      this.rows = List.of();
      defects.add(
          best.tooMuch()
              ? defect(
                  0,
                  0,
                  "list",
                  "more than 1,000,000 cells",
                  "at most 1,000,000 cells",
                  "has more than 1,000,000 cells")
              : defect(
                  best.tooWide().get(),
                  0,
                  "row",
                  "more than " + SheetText.MOST_COLUMNS + " cells",
                  "at most " + SheetText.MOST_COLUMNS + " cells",
                  "has more than " + SheetText.MOST_COLUMNS + " cells"));
      return;
    }
    this.rows = best.rows().subList(headings.first() + headings.size(), best.rows().size());
    if (rows.isEmpty()) {
      defects.add(
          defect(
              best.rows().get(headings.first()).line(),
              0,
              "list",
              "no rows",
              "a row under the headings",
              "has headings and no rows under them"));
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
            "cell",
            bad.open() ? "a quote that never closes" : "text behind a closing quote",
            "\"text\" with quotes inside doubled",
            bad.open()
                ? "opens a quote that never closes"
                : "has text behind its closing quote; a quote inside quotes is written twice"));
  }

  private void check(SheetText.Row row) {
    int columns = guess.headings().size();
    for (int c = columns + 1; c <= row.cells().size(); c++) {
      if (!row.cell(c).isBlank()) {
        defects.add(
            defect(
                row.line(),
                c,
                "row",
                row.cells().size() + " cells",
                columns + " cells, as there are headings",
                "has more cells than there are headings; a comma that belongs to a cell wants the"
                    + " cell in quotes"));
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
                "cell",
                Shown.of(cell),
                "printable text of at most 10,000 characters",
                control ? "holds control characters" : "is longer than 10,000 characters"));
      }
    }
  }

  CellDefect defect(int line, int column, String object, String value, String limit, String what) {
    return CellDefect.at(
        new CellDefect.Place(file, guess.headings()), line, column, object, value, limit, what);
  }
}
