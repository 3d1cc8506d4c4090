package loopwright.casework.practise;

import java.time.Instant;
import java.util.List;

/**
 * One drill that was played to its end, as it is kept.
 *
 * @param at when it ended
 * @param code its code
 * @param level its level
 * @param kinds the kinds of fault
 * @param score 0 to 100
 * @param minutes working time in minutes
 * @param best the best plan's minutes
 */
public record Practised(
    Instant at,
    String code,
    Level level,
    List<FaultKind> kinds,
    int score,
    double minutes,
    double best) {
  /** Copies the list. */
  public Practised {
    kinds = List.copyOf(kinds);
  }
}
