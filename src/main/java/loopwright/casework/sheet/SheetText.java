package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Cuts text into rows of cells: RFC 4180 with any one separator, plus what hand-kept files have:
 * empty lines, lines of remarks, spaces round cells, quotes in the middle of a cell (2" is a
 * length). A quote that never closes spoils its own line alone, so that the rest is still looked
 * at; that, and the line each row begins on, is why a strict parser would not do.
 */
public final class SheetText {
  /** Most cells of a row that hold anything in them or behind them; no list needs as many. */
  static final int MOST_COLUMNS = 200;

  /** Most cells of a list: a vehicle's 20,000 parts in 50 columns. */
  static final int MOST_CELLS = 1_000_000;

  /** A remark: two slashes, or a # that no cell's content follows. */
  private static final Pattern REMARK = Pattern.compile("\\s*(//|#+\\s*\\p{L}|#\\s+|#+$|sep=.$).*");

  /** What spreadsheets take for a formula. A sign alone, as on a battery post, is none. */
  private static final Pattern GUARDED = Pattern.compile("'*[=+@\\t\\r-].+", Pattern.DOTALL);

  /**
   * One row.
   *
   * @param line the line it begins on, counted from 1
   * @param cells its cells: bare ones without the spaces round them, quoted ones as they are
   */
  record Row(int line, List<String> cells) {
    Row {
      cells = List.copyOf(cells);
    }

    /** The cell of a column counted from 1; empty where the row is shorter. */
    String cell(int column) {
      return column <= cells.size() ? cells.get(column - 1) : "";
    }
  }

  /** A quote that opens and does not close, or closes before its cell ends. */
  record BadQuote(int line, int column, boolean open) {}

  private final String text;
  private final char separator;
  private final List<Row> rows = new ArrayList<>();
  private final List<BadQuote> badQuotes = new ArrayList<>();
  private int at;
  private int line = 1;
  private int cells;
  private Optional<Integer> tooWide = Optional.empty();

  private SheetText(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  static SheetText cut(String text, char separator) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    SheetText sheet = new SheetText(plain.replace("\r\n", "\n").replace('\r', '\n'), separator);
    while (sheet.at < sheet.text.length() && sheet.cells <= MOST_CELLS) {
      sheet.row();
    }
    return sheet;
  }

  /** The rows that hold anything. */
  List<Row> rows() {
    return rows;
  }

  List<BadQuote> badQuotes() {
    return badQuotes;
  }

  /** Whether it has more than {@link #MOST_CELLS}; what lies behind them was not looked at. */
  boolean tooMuch() {
    return cells > MOST_CELLS;
  }

  /** The line of the first row of more than {@link #MOST_COLUMNS} cells, if there is one. */
  Optional<Integer> tooWide() {
    return tooWide;
  }

  private void row() {
    int end = lineEnd(at);
    if (REMARK.matcher(text).region(at, end).matches()) {
      at = end + 1;
      line++;
      return;
    }
    int begins = line;
    List<String> row = new ArrayList<>();
    boolean more = true;
    while (more) {
      String cell = unguarded(cell(begins, row.size() + 1));
      cells++;
      // Spreadsheets leave any number of empty cells behind the last.
      if (row.size() < MOST_COLUMNS) {
        row.add(cell);
      } else if (!cell.isBlank() && tooWide.isEmpty()) {
        tooWide = Optional.of(begins);
      }
      more = at < text.length() && text.charAt(at) == separator;
      at++;
    }
    line++;
    if (row.stream().anyMatch(c -> !c.isBlank())) {
      rows.add(new Row(begins, row));
    }
  }

  /** One cell; afterwards {@code at} is on the separator or line break behind it. */
  private String cell(int begins, int column) {
    int start = at;
    while (start < text.length() && text.charAt(start) == ' ') {
      start++;
    }
    if (start < text.length() && text.charAt(start) == '"') {
      int close = closing(start);
      if (close > 0) {
        String inside = text.substring(start + 1, close).replace("\"\"", "\"");
        int breaks = (int) inside.chars().filter(c -> c == '\n').count();
        at = close + 1;
        String behind = bare();
        if (behind.isEmpty() || breaks == 0) {
          if (!behind.isEmpty()) {
            badQuotes.add(new BadQuote(begins, column, false));
          }
          line += breaks;
          return inside + behind;
        }
        // What closes it lines below belongs to another cell.
        at = start;
      }
      badQuotes.add(new BadQuote(begins, column, true));
    }
    return bare();
  }

  private String bare() {
    int start = at;
    while (at < text.length() && text.charAt(at) != separator && text.charAt(at) != '\n') {
      at++;
    }
    return text.substring(start, at).strip();
  }

  /** Where the quote opened at a place closes; -1 if it never does. */
  private int closing(int open) {
    int i = open + 1;
    while (i < text.length()) {
      if (text.charAt(i) == '"') {
        if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
          i++;
        } else {
          return i;
        }
      }
      i++;
    }
    return -1;
  }

  private int lineEnd(int from) {
    int end = text.indexOf('\n', from);
    return end < 0 ? text.length() : end;
  }

  /**
   * A cell with an apostrophe in front where a spreadsheet would take it for a formula, so that
   * nothing in a vehicle file is ever run. Taken off again on reading.
   */
  private static String guarded(String cell) {
    return GUARDED.matcher(cell).matches() ? "'" + cell : cell;
  }

  private static String unguarded(String cell) {
    return cell.startsWith("'") && GUARDED.matcher(cell.substring(1)).matches()
        ? cell.substring(1)
        : cell;
  }

  /** A comma-separated text with tabs in place of the commas, as spreadsheets paste it. */
  public static String tabbed(String commas) {
    StringBuilder out = new StringBuilder();
    for (Row row : cut(commas, ',').rows()) {
      out.append(line(row.cells(), '\t'));
    }
    return out.toString();
  }

  /**
   * A row of text, each cell guarded, and in quotes where it needs them to be read back the same.
   */
  public static String line(List<String> cells) {
    return line(cells, ',');
  }

  private static String line(List<String> cells, char separator) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      String cell = guarded(cells.get(i));
      boolean remark = i == 0 && REMARK.matcher(cell).matches();
      boolean quoted =
          remark
              || !cell.equals(cell.strip())
              || cell.chars().anyMatch(c -> "\",;\t\n".indexOf(c) >= 0);
      if (i > 0) {
        out.append(separator);
      }
      out.append(quoted ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
    }
    return out.append('\n').toString();
  }
}
