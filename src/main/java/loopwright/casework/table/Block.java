package loopwright.casework.table;

import java.util.ArrayList;
import java.util.List;

/**
 * A block of cells as spreadsheets put it on the clipboard: a line a row, tabs between cells, a
 * cell with a line break or tab in it in quotes.
 */
public final class Block {
  private final String text;
  private int at;

  private Block(String text) {
    this.text = text;
  }

  /** The cells of a text, row by row; empty rows at the end are left out. */
  public static List<List<String>> read(String text) {
    Block block = new Block(text.replace("\r\n", "\n").replace('\r', '\n'));
    List<List<String>> rows = new ArrayList<>();
    while (block.at < block.text.length()) {
      rows.add(block.row());
    }
    while (!rows.isEmpty() && rows.get(rows.size() - 1).stream().allMatch(String::isBlank)) {
      rows.remove(rows.size() - 1);
    }
    return rows;
  }

  private List<String> row() {
    List<String> cells = new ArrayList<>();
    while (true) {
      cells.add(cell().strip());
      boolean more = at < text.length() && text.charAt(at) == '\t';
      at++;
      if (!more) {
        return cells;
      }
    }
  }

  private String cell() {
    int close = text.startsWith("\"", at) ? closing(at) : -1;
    if (close > 0) {
      String inside = text.substring(at + 1, close).replace("\"\"", "\"");
      at = close + 1;
      return inside;
    }
    int from = at;
    while (at < text.length() && text.charAt(at) != '\t' && text.charAt(at) != '\n') {
      at++;
    }
    return text.substring(from, at);
  }

  /** Where a quote closes that a cell ends behind; -1 if it is no more than a sign, as in 4' 6". */
  private int closing(int open) {
    for (int i = open + 1; i < text.length(); i++) {
      if (text.charAt(i) == '"') {
        if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
          i++;
        } else {
          return i + 1 == text.length() || "\t\n".indexOf(text.charAt(i + 1)) >= 0 ? i : -1;
        }
      }
    }
    return -1;
  }

  /** The text of some cells. */
  public static String text(List<List<String>> rows) {
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      text.append(String.join("\t", row.stream().map(Block::quoted).toList())).append('\n');
    }
    return text.toString();
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == '\t' || c == '\n') && !cell.startsWith("\"");
    return plain ? cell : "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
