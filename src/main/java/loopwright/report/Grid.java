package loopwright.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTable.Side;

/** Draws a table: headings bold over a thick line, a thin line under each row. */
final class Grid {
  private static final double SIZE = Paper.SMALL;
  private static final double LINE = SIZE * Typeface.LEADING;
  private static final double PAD = 3;

  private final Paper paper;
  private final ListTable table;
  private final double[] widths;

  Grid(Paper paper, ListTable table) {
    this.paper = paper;
    this.table = table;
    this.widths = widths(paper.right() - Paper.MARGIN);
  }

  void draw() {
    List<List<String>> heads = heads();
    heads(heads);
    table.rows().forEach(row -> row(row(row), heads));
  }

  /** Height of the headings and so many rows, in points. */
  double height(int rows) {
    return height(heads())
        + table.rows().stream().limit(rows).mapToDouble(r -> height(row(r))).sum();
  }

  private List<List<String>> heads() {
    List<List<String>> heads = new ArrayList<>();
    for (int c = 0; c < widths.length; c++) {
      heads.add(cell(table.columns().get(c).heading(), Typeface.BOLD, c));
    }
    return heads;
  }

  private List<List<String>> row(List<String> row) {
    List<List<String>> cells = new ArrayList<>();
    for (int c = 0; c < widths.length; c++) {
      cells.add(cell(row.get(c), Typeface.REGULAR, c));
    }
    return cells;
  }

  private void heads(List<List<String>> heads) {
    lines(heads, Typeface.BOLD);
    double y = paper.y();
    paper.leaf().line(Paper.MARGIN, y, paper.right(), y, 1.2);
  }

  /** A row; one that is higher than what is left of the page goes on the next, heads first. */
  private void row(List<List<String>> cells, List<List<String>> heads) {
    List<List<String>> rest = cells;
    double whole = paper.leaf().height() - 4 * Paper.MARGIN - height(heads);
    while (!rest.isEmpty()) {
      double left = paper.bottom() - paper.y();
      if (height(rest) <= left) {
        lines(rest, Typeface.REGULAR);
        paper.leaf().line(Paper.MARGIN, paper.y(), paper.right(), paper.y(), 0.3);
        return;
      }
      if (height(rest) > whole && left >= 3 * LINE) {
        int fits = (int) ((left - 2 * PAD) / LINE);
        lines(cut(rest, 0, fits), Typeface.REGULAR);
        rest = cut(rest, fits, Integer.MAX_VALUE);
      }
      paper.newPage();
      heads(heads);
    }
  }

  private static List<List<String>> cut(List<List<String>> cells, int from, int to) {
    return cells.stream()
        .map(c -> c.subList(Math.min(from, c.size()), Math.min(to, c.size())))
        .toList();
  }

  private void lines(List<List<String>> cells, Typeface face) {
    double top = paper.y() + PAD;
    double x = Paper.MARGIN;
    for (int c = 0; c < cells.size(); c++) {
      double y = top;
      for (String line : cells.get(c)) {
        if (table.columns().get(c).side() == Side.RIGHT) {
          paper.leaf().textRight(line, face, SIZE, x + widths[c] - PAD, y);
        } else {
          paper.leaf().text(line, face, SIZE, x + PAD, y);
        }
        y += LINE;
      }
      x += widths[c];
    }
    paper.moveTo(paper.y() + height(cells));
  }

  private static double height(List<List<String>> cells) {
    return cells.stream().mapToInt(List::size).max().orElse(1) * LINE + 2 * PAD;
  }

  private List<String> cell(String text, Typeface face, int column) {
    return text.isBlank() ? List.of("") : face.wrap(text, SIZE, widths[column] - 2 * PAD);
  }

  /** By the columns' shares, but no column narrower than its longest word where there is room. */
  private double[] widths(double room) {
    int count = table.columns().size();
    double[] least = new double[count];
    double[] wanted = new double[count];
    for (int c = 0; c < count; c++) {
      least[c] = longestWord(table.columns().get(c).heading(), Typeface.BOLD);
      wanted[c] = Typeface.BOLD.width(table.columns().get(c).heading(), SIZE) + 2 * PAD;
      for (List<String> row : table.rows()) {
        least[c] = Math.max(least[c], longestWord(row.get(c), Typeface.REGULAR));
        wanted[c] = Math.max(wanted[c], Typeface.REGULAR.width(row.get(c), SIZE) + 2 * PAD);
      }
      least[c] = Math.min(least[c], room / 4);
    }
    double[] widths = least.clone();
    double spare = room - Arrays.stream(least).sum();
    if (spare <= 0) {
      double squeeze = room / Arrays.stream(least).sum();
      return Arrays.stream(least).map(w -> w * squeeze).toArray();
    }
    // What no column needs any more goes to the others by their shares.
    boolean[] full = new boolean[count];
    while (spare > 0.01) {
      double shares = 0;
      for (int c = 0; c < count; c++) {
        shares += full[c] ? 0 : table.columns().get(c).share();
      }
      if (shares == 0) {
        widths[count - 1] += spare;
        break;
      }
      double given = 0;
      for (int c = 0; c < count; c++) {
        if (!full[c]) {
          double more = spare * table.columns().get(c).share() / shares;
          double taken = Math.min(more, Math.max(0, wanted[c] - widths[c]));
          full[c] = taken < more;
          widths[c] += taken;
          given += taken;
        }
      }
      spare -= given;
    }
    return widths;
  }

  private static double longestWord(String text, Typeface face) {
    double longest = 0;
    for (String word : text.split("\\s+")) {
      longest = Math.max(longest, face.width(word, SIZE));
    }
    // A hair more, so that the word fits its own column.
    return longest + 2 * PAD + 0.1;
  }
}
