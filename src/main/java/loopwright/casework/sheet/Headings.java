package loopwright.casework.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Quantity;
import loopwright.model.Said;

/**
 * Finds the headings of a table: the row that says most about the columns, below a title maybe;
 * with a second row of headings or units under it where there is one; or none at all.
 *
 * @param first the row they begin in
 * @param size how many rows they take; 0 if the table has none
 * @param guess what the columns hold, as far as they tell
 */
record Headings<C extends Enum<C> & SheetColumn>(int first, int size, Mapping<C> guess) {
  /** Rows above the headings that may hold a title. */
  private static final int MOST_TITLES = 10;

  /** Rows looked at where no heading tells what a column holds. */
  private static final int SAMPLE = 50;

  /** What a second row of headings says. */
  private static final Set<String> LOWER =
      Set.of(
          "part",
          "pin",
          "terminal",
          "cavity",
          "way",
          "connector",
          "mm2",
          "mm²",
          "sq mm",
          "awg",
          "m",
          "cm",
          "mm",
          "ft",
          "in",
          "feet",
          "inches",
          "metres",
          "meters",
          "ohm",
          "ohms",
          "min",
          "minutes",
          "id",
          "no",
          "nr",
          "name",
          "code");

  static <C extends Enum<C> & SheetColumn> Headings<C> find(
      List<SheetText.Row> rows, Class<C> kind) {
    Headings<C> best = none(rows, kind);
    for (int i = 0; i < Math.min(MOST_TITLES, rows.size()); i++) {
      List<String> cells = rows.get(i).cells();
      best = best.better(new Headings<>(i, 1, Mapping.guess(cells, kind)));
      if (i + 1 < rows.size() && isLower(rows.get(i + 1).cells())) {
        List<String> both = both(cells, rows.get(i + 1).cells());
        Headings<C> two = new Headings<>(i, 2, Mapping.guess(both, kind));
        best = two.columns() > 0 && two.columns() >= best.columns() ? two : best;
      }
    }
    return best;
  }

  private int columns() {
    return guess.columns().size();
  }

  private Headings<C> better(Headings<C> other) {
    return other.columns() > columns() ? other : this;
  }

  /**
   * Where no row tells: the first one, unless it looks like a wire. What the columns hold is then
   * told by their cells alone.
   */
  private static <C extends Enum<C> & SheetColumn> Headings<C> none(
      List<SheetText.Row> rows, Class<C> kind) {
    List<String> first = rows.isEmpty() ? List.of() : rows.get(0).cells();
    if (first.stream().noneMatch(c -> isEnd(c) || isSize(c))) {
      return new Headings<>(0, 1, new Mapping<C>(Map.of(), first));
    }
    List<String> headings = new ArrayList<>();
    for (int i = 1; i <= first.size(); i++) {
      headings.add("column " + i);
    }
    List<SheetText.Row> sample = rows.subList(0, Math.min(SAMPLE, rows.size()));
    Mapping<C> mapping = new Mapping<C>(Map.of(), headings);
    for (C column : kind.getEnumConstants()) {
      for (int i = 1; i <= headings.size() && mapping.at(column).isEmpty(); i++) {
        int number = i;
        boolean taken = mapping.columns().containsValue(i);
        long fitting = sample.stream().filter(r -> column.couldBe(r.cell(number))).count();
        if (!taken && 2 * fitting > sample.size()) {
          mapping = mapping.with(column, i);
        }
      }
    }
    return new Headings<>(0, 0, mapping);
  }

  /** Whether a cell looks like a part and its terminal. */
  static boolean isEnd(String cell) {
    return cell.strip().matches("(?=.*\\p{L})[^\\s.:]{1,40}[.:][^\\s.:]{1,40}");
  }

  /** Whether a cell is a conductor size that says its unit. */
  static boolean isSize(String cell) {
    return cell.matches(".*[\\p{L}#].*") && Said.size(cell, Optional.empty()).isPresent();
  }

  /** Whether a cell is a length that says its unit. */
  static boolean isLength(String cell) {
    return Said.saysUnit(cell, Quantity.LENGTH)
        && Said.listed(cell, Quantity.LENGTH, BigDecimal.ONE).isPresent();
  }

  private static boolean isLower(List<String> cells) {
    List<String> filled = cells.stream().filter(c -> !c.isBlank()).toList();
    return !filled.isEmpty()
        && filled.stream()
            .map(c -> c.strip().toLowerCase(Locale.ROOT).replaceAll("[()\\[\\]]", ""))
            .allMatch(LOWER::contains);
  }

  /**
   * A row of headings with the one under it; where cells were merged, the one on the left holds.
   */
  private static List<String> both(List<String> upper, List<String> lower) {
    List<String> both = new ArrayList<>();
    String above = "";
    for (int i = 0; i < Math.max(upper.size(), lower.size()); i++) {
      String up = i < upper.size() ? upper.get(i).strip() : "";
      String low = i < lower.size() ? lower.get(i).strip() : "";
      above = up.isEmpty() && !low.isEmpty() ? above : up;
      both.add((above + " " + low).strip());
    }
    return both;
  }
}
