package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Tells rows that say something from those that only structure a sheet: totals, titles between
 * rows, headings printed again on the next page. Marks for "the same" are filled in.
 */
final class RowSieve<C extends Enum<C> & SheetColumn> {
  private static final Pattern TOTAL =
      Pattern.compile(
          "(?:sub|grand)?[ -]?totals?\\b.*|sum\\b.*|in all\\b.*", Pattern.CASE_INSENSITIVE);
  private static final Pattern SAME =
      Pattern.compile(
          "〃|\"|''|-\"-|- \" -|ditto|do\\.?|same|as above|\\^", Pattern.CASE_INSENSITIVE);

  /** Looks like a name that somebody numbered. */
  private static final Pattern NUMBERED = Pattern.compile("\\p{L}{0,4}[-_]?\\d{1,5}\\p{L}?");

  private final Mapping<C> mapping;
  private final List<SheetText.Row> rows = new ArrayList<>();
  private final List<Integer> totals = new ArrayList<>();
  private final List<Integer> titles = new ArrayList<>();
  private final List<Integer> again = new ArrayList<>();

  /**
   * Sieves the rows of a list.
   *
   * @param decisive without any of these a row may be a total or a title
   * @param repeated in which an empty cell repeats the one above
   * @param known whether a text in the first column of a row names something known
   */
  RowSieve(
      List<SheetText.Row> all,
      Mapping<C> mapping,
      Set<C> decisive,
      Set<C> repeated,
      Predicate<String> known) {
    this.mapping = mapping;
    List<Integer> columns = numbers(repeated);
    SheetText.Row above = null;
    for (SheetText.Row row : all) {
      boolean bare = numbers(decisive).stream().allMatch(c -> row.cell(c).isBlank());
      String first = row.cells().stream().filter(c -> !c.isBlank()).findFirst().orElse("").strip();
      long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
      if (isHeading(row)) {
        again.add(row.line());
      } else if (bare && TOTAL.matcher(first).matches()) {
        totals.add(row.line());
      } else if (bare && filled == 1 && !known.test(first) && !NUMBERED.matcher(first).matches()) {
        titles.add(row.line());
      } else {
        above = above == null ? row : filled(row, above, columns);
        rows.add(above);
      }
    }
  }

  private List<Integer> numbers(Set<C> columns) {
    return columns.stream().flatMap(c -> mapping.at(c).stream()).toList();
  }

  private boolean isHeading(SheetText.Row row) {
    List<String> headings = mapping.headings();
    long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
    long alike = 0;
    for (int c = 1; c <= headings.size(); c++) {
      String heading = headings.get(c - 1).strip().toLowerCase(Locale.ROOT);
      if (!heading.isEmpty() && heading.equals(row.cell(c).strip().toLowerCase(Locale.ROOT))) {
        alike++;
      }
    }
    return filled > 1 && alike == filled;
  }

  private static SheetText.Row filled(
      SheetText.Row row, SheetText.Row above, List<Integer> repeated) {
    List<String> cells = new ArrayList<>();
    int most = Math.max(row.cells().size(), repeated.stream().mapToInt(c -> c).max().orElse(0));
    for (int c = 1; c <= most; c++) {
      String cell = row.cell(c);
      boolean same =
          SAME.matcher(cell.strip()).matches() || (cell.isBlank() && repeated.contains(c));
      cells.add(same ? above.cell(c) : cell);
    }
    return new SheetText.Row(row.line(), cells);
  }

  /** The rows that say something. */
  List<SheetText.Row> rows() {
    return rows;
  }

  /** What was left out, a sentence each. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    told("totals", totals, remarks);
    told("titles", titles, remarks);
    told("again", again, remarks);
    return remarks;
  }

  private static void told(String what, List<Integer> lines, List<String> remarks) {
    if (!lines.isEmpty()) {
      String where = lines.stream().map(String::valueOf).collect(Collectors.joining(", "));
      remarks.add(SheetWords.say("left-out." + what, where));
    }
  }
}
