package loopwright.casework.sheet;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Tells whether colours are the same, written out or by their letters (IEC 60757). */
final class ColourWords {
  /** Letter codes of IEC 60757. */
  private static final Map<String, String> LETTERS =
      Map.ofEntries(
          Map.entry("bk", "black"),
          Map.entry("bn", "brown"),
          Map.entry("rd", "red"),
          Map.entry("og", "orange"),
          Map.entry("ye", "yellow"),
          Map.entry("gn", "green"),
          Map.entry("bu", "blue"),
          Map.entry("vt", "violet"),
          Map.entry("gy", "grey"),
          Map.entry("gray", "grey"),
          Map.entry("wh", "white"),
          Map.entry("pk", "pink"),
          Map.entry("gd", "gold"),
          Map.entry("tq", "turquoise"),
          Map.entry("sr", "silver"));

  private ColourWords() {}

  /** The colours that one cell lists. */
  static List<String> split(String cell) {
    return Arrays.stream(cell.split("[,;+]")).map(String::strip).filter(c -> !c.isEmpty()).toList();
  }

  /** The colours of some cells, each once and in one way of writing. */
  static Set<String> plain(Collection<String> cells) {
    Set<String> plain = new HashSet<>();
    cells.forEach(c -> split(c).forEach(s -> plain.add(plain(s))));
    return plain;
  }

  /** Whether two cells say the same colour. */
  static boolean same(String one, String other) {
    return plain(one).equals(plain(other));
  }

  private static String plain(String colour) {
    return Arrays.stream(colour.strip().toLowerCase(Locale.ROOT).split("\\s*[-/ ]\\s*"))
        .map(c -> LETTERS.getOrDefault(c, c))
        .collect(Collectors.joining("/"));
  }
}
