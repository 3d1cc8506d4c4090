package loopwright.rules;

import java.util.Arrays;
import java.util.Optional;

/** What rules are about; each area is a folder. */
public enum Area {
  /** What a reading means in its setting. */
  SENSE("sense"),
  /** What a reading clears, holds or condemns. */
  NARROW("narrow"),
  /** What may be proposed, what must not, and what comes first. */
  NEXT("next"),
  /** Why it failed, what to inspect, how to repair, how to prove it. */
  AFTER("after"),
  /** Faults of the plan itself. */
  PLAN("plan"),
  /** What to beware of, at the step where the hand is. */
  CAUTION("caution");

  private final String word;

  Area(String word) {
    this.word = word;
  }

  /** The name of the folder. */
  public String word() {
    return word;
  }

  /** The area with this word. */
  public static Optional<Area> ofWord(String word) {
    return Arrays.stream(values()).filter(a -> a.word.equals(word)).findFirst();
  }
}
