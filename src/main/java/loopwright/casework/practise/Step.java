package loopwright.casework.practise;

import java.util.List;
import loopwright.casework.LoopView;

/**
 * One thing that the learner did.
 *
 * @param number from 1
 * @param kind what sort of thing
 * @param what what was done, in words
 * @param shown what it showed, as on the display; empty where nothing shows
 * @param minutes working time in minutes
 * @param losses what it lost
 * @param told what is said of it at once, a sentence each
 * @param review what is said of it at the end: what it showed, and what would have been best here
 * @param foretold what was said beforehand of what it tells
 * @param best whether it was what the best plan does here
 * @param loop the loop with its staircase after it; for the end, since it shows what is suspected
 */
public record Step(
    int number,
    Kind kind,
    String what,
    String shown,
    double minutes,
    List<Loss> losses,
    List<String> told,
    List<String> review,
    Tally foretold,
    boolean best,
    LoopView loop) {

  /** Sorts of things. */
  public enum Kind {
    /** A reading or a look. */
    CHECK,
    /** A new fuse for the meter. */
    METER_FUSE,
    /** Parts accused and mended. */
    MEND
  }

  /** Copies the lists. */
  public Step {
    losses = List.copyOf(losses);
    told = List.copyOf(told);
    review = List.copyOf(review);
  }

  /** What was lost that could have done harm. */
  public List<Loss> risks() {
    return losses.stream().filter(Loss::risk).toList();
  }
}
