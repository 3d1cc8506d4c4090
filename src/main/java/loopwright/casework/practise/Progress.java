package loopwright.casework.practise;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Progress over time.
 *
 * @param levels by level, those that were practised
 * @param kinds by kind of fault
 */
public record Progress(Map<Level, Line> levels, Map<FaultKind, Line> kinds) {

  /** How many of the last scores a line of progress is told by. Our own choice. */
  public static final int LATELY = 5;

  /**
   * One line of progress.
   *
   * @param scores all scores in order
   */
  public record Line(List<Integer> scores) {
    /** Copies the list. */
    public Line {
      scores = List.copyOf(scores);
    }

    /** The mean of the last scores. */
    public long lately() {
      return Math.round(
          scores.stream()
              .skip(Math.max(0, scores.size() - LATELY))
              .mapToInt(Integer::intValue)
              .average()
              .orElse(0));
    }
  }

  /** Sums up what was played. */
  public static Progress of(List<Practised> all) {
    return new Progress(
        lines(all, p -> List.of(p.level()), Level.class),
        lines(all, Practised::kinds, FaultKind.class));
  }

  private static <K extends Enum<K>> Map<K, Line> lines(
      List<Practised> all, Function<Practised, List<K>> keys, Class<K> of) {
    Map<K, Line> lines = new EnumMap<>(of);
    for (K key : of.getEnumConstants()) {
      List<Integer> scores =
          all.stream()
              .filter(p -> keys.apply(p).contains(key))
              .map(Practised::score)
              .collect(Collectors.toList());
      if (!scores.isEmpty()) {
        lines.put(key, new Line(scores));
      }
    }
    return lines;
  }
}
