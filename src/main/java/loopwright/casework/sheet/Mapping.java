package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Nearest;

/**
 * Which column of a list holds what.
 *
 * @param columns the column, counted from 1, of each thing that has one
 * @param headings the list's headings, in order
 * @param <C> what columns of this list may hold
 */
public record Mapping<C extends Enum<C> & SheetColumn>(
    Map<C, Integer> columns, List<String> headings) {
  /** Shorter headings than this are too like each other to be guessed when misspelt. */
  private static final int SHORTEST_GUESSED = 4;

  /** Copies the columns and headings. */
  public Mapping {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    headings = List.copyOf(headings);
  }

  /**
   * The columns that headings speak of. A heading that is spelt right goes before one that is
   * misspelt, and a column further left before one that says the same.
   */
  static <C extends Enum<C> & SheetColumn> Mapping<C> guess(List<String> headings, Class<C> kind) {
    Map<String, C> known = new HashMap<>();
    for (C column : kind.getEnumConstants()) {
      column.headings().forEach(h -> known.put(h, column));
    }
    for (C column : kind.getEnumConstants()) {
      known.putIfAbsent(plain(column.said()), column);
    }
    Map<C, Integer> columns = new EnumMap<>(kind);
    for (Spelling spelling : Spelling.values()) {
      for (int i = 0; i < headings.size(); i++) {
        if (!columns.containsValue(i + 1)) {
          C column = known.get(spelling.of(headings.get(i), known));
          if (column != null) {
            columns.putIfAbsent(column, i + 1);
          }
        }
      }
      besides(headings, known, columns);
    }
    return new Mapping<>(columns, headings);
  }

  /**
   * A heading that says something only together with the one on its left: "pin" behind "from" is
   * the pin the wire comes from, and so is one without a heading, where cells had been merged.
   */
  private static <C extends Enum<C> & SheetColumn> void besides(
      List<String> headings, Map<String, C> known, Map<C, Integer> columns) {
    for (int i = 1; i < headings.size(); i++) {
      int left = i;
      String own = plain(headings.get(i));
      String besides = own.isEmpty() ? "terminal" : own;
      Optional<C> column =
          columns.entrySet().stream()
              .filter(e -> e.getValue() == left)
              .findFirst()
              .map(e -> known.get(e.getKey().word() + " " + besides));
      if (!columns.containsValue(i + 1)) {
        int number = i + 1;
        column.ifPresent(c -> columns.putIfAbsent(c, number));
      }
    }
  }

  /** How kindly a heading is read, strictest first. */
  private enum Spelling {
    WHOLE,
    WITHOUT_UNIT,
    MISSPELT;

    String of(String heading, Map<String, ?> known) {
      String whole = plain(heading);
      String bare = plain(Units.without(heading));
      return switch (this) {
        case WHOLE -> whole;
        case WITHOUT_UNIT -> bare;
        case MISSPELT ->
            bare.length() < SHORTEST_GUESSED
                ? ""
                : Nearest.to(
                        bare,
                        known.keySet().stream()
                            .filter(k -> k.length() >= SHORTEST_GUESSED)
                            .sorted()
                            .toList())
                    .orElse("");
      };
    }
  }

  private static String plain(String heading) {
    return heading
        .toLowerCase(Locale.ROOT)
        .replace('²', '2')
        .replaceAll("[^\\p{L}\\p{N}]+", " ")
        .strip();
  }

  /** The column that holds something, counted from 1. */
  public Optional<Integer> at(C column) {
    return Optional.ofNullable(columns.get(column));
  }

  /** What a column counted from 1 holds; empty where it isn't read. */
  public Optional<C> in(int number) {
    return columns.entrySet().stream()
        .filter(e -> e.getValue() == number)
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** The heading of a column counted from 1; empty where it has none. */
  public String heading(int column) {
    return column >= 1 && column <= headings.size() ? headings.get(column - 1) : "";
  }

  /** The column with this heading, in any case, or with this number. */
  public Optional<Integer> find(String headingOrNumber) {
    for (int i = 0; i < headings.size(); i++) {
      if (headings.get(i).equalsIgnoreCase(headingOrNumber.strip())) {
        return Optional.of(i + 1);
      }
    }
    return Optional.of(headingOrNumber.strip())
        .filter(t -> t.matches("[1-9]\\d{0,3}"))
        .map(Integer::parseInt)
        .filter(n -> n <= headings.size());
  }

  /**
   * The same with something held by another column, which then holds nothing else.
   *
   * @param number the column, counted from 1
   * @throws IllegalArgumentException if the list has no such column
   */
  public Mapping<C> with(C column, int number) {
    if (number < 1 || number > headings.size()) {
      throw new IllegalArgumentException(
          "the list has columns 1 to " + headings.size() + ", not " + number);
    }
    Map<C, Integer> changed = new LinkedHashMap<>(columns);
    changed.values().removeIf(n -> n == number);
    changed.put(column, number);
    return new Mapping<>(changed, headings);
  }

  /** The same with no column for something. */
  public Mapping<C> without(C column) {
    Map<C, Integer> changed = new LinkedHashMap<>(columns);
    changed.remove(column);
    return new Mapping<>(changed, headings);
  }

  /** Headings of the columns that are not read, with their number where several have that one. */
  public List<String> leftOut() {
    List<String> left = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      if (!columns.containsValue(i + 1) && !headings.get(i).isBlank()) {
        String heading = headings.get(i);
        boolean once = headings.stream().filter(h -> h.equalsIgnoreCase(heading)).count() == 1;
        left.add(once ? heading : heading + " (column " + (i + 1) + ")");
      }
    }
    return left;
  }
}
