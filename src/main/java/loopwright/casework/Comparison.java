package loopwright.casework;

import java.util.List;

/**
 * The learner's proposal beside the program's.
 *
 * @param learners what the learner proposes
 * @param programs what the program would have proposed
 * @param verdict which of them tells more for its minutes, in one sentence
 * @param blocked why the learner's can't be taken now; empty if it can
 */
public record Comparison(Side learners, Side programs, String verdict, String blocked) {

  /**
   * One of the two.
   *
   * @param what what is done, in words
   * @param tells how its results would split what is suspected, and its minutes, in words
   * @param risks what to be careful of
   */
  public record Side(String what, String tells, List<String> risks) {
    /** Copies the list. */
    public Side {
      risks = List.copyOf(risks);
    }
  }
}
