package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import loopwright.casework.Problem;

/** Questions of which some follow from the answers to others. */
public interface Questionnaire {
  /**
   * What is asked. An answer may bring or take questions behind it: ask again after each.
   *
   * @param given answers so far, by question; what is missing counts as usual
   * @throws Problem if nothing can be asked; it says what is missing
   */
  List<Question> questions(Map<String, String> given) throws Problem;

  /**
   * Whether an answer fits its question.
   *
   * @throws Problem if not; it says what is accepted
   */
  void check(Question question, String answer) throws Problem;
}
