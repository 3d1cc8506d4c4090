package loopwright.casework.practise;

import java.util.List;

/**
 * How a drill went, beside the best plan from the same facts.
 *
 * @param title the complaint and the vehicle
 * @param code the drill's code
 * @param own the learner's way
 * @param best the best plan's way through the same drill
 * @param truth what had really failed, in words
 * @param summary minutes, checks, what was wasted and risked, a sentence each
 */
public record Debrief(
    String title, DrillCode code, Way own, Way best, List<String> truth, List<String> summary) {
  /** Copies the lists. */
  public Debrief {
    truth = List.copyOf(truth);
    summary = List.copyOf(summary);
  }

  /** The score of the learner's way, 0 to 100. */
  public int score() {
    return own.score(best);
  }
}
