package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;

/**
 * A proposed check, complete enough to be done from these words alone.
 *
 * @param id its id; the same check keeps its id within a case
 * @param number how many checks have been asked so far, this one included
 * @param kind kind of check
 * @param set set-up to make
 * @param red where the red lead goes; empty for a look
 * @param black where the black lead goes; empty for a look
 * @param meter what the meter is set to, in words, for instance "volts DC"
 * @param lookAt id of the part to look at, unplug or swap; empty for a meter check
 * @param question for a look: what to look for, in a sentence
 * @param choices for a look: the answers there are
 * @param choiceWords those answers in words, in the same order
 * @param healthy what a healthy circuit shows; empty for a look
 * @param healthyWords the same in words, for instance "12.1 to 12.7 V" or "lit"
 * @param outcomes what the possible results would mean, most likely first
 * @param minutes working time in minutes
 * @param because why this check is next, in one sentence
 * @param cautions cautions that apply at this step, in words
 */
public record CheckView(
    String id,
    int number,
    CheckKind kind,
    SettingView set,
    Optional<PointView> red,
    Optional<PointView> black,
    String meter,
    Optional<String> lookAt,
    String question,
    List<Seen> choices,
    List<String> choiceWords,
    Optional<Band> healthy,
    String healthyWords,
    List<OutcomeView> outcomes,
    double minutes,
    String because,
    List<String> cautions) {

  /**
   * One result that the suspects can give.
   *
   * @param words the result, for instance "11.9 to 12.7 V", "OL" or "lit"
   * @param band its values where it has some; a band is a valid answer by itself
   * @param seen what would be seen, for a look
   * @param chance how likely it is now, 0 to 1
   * @param leaves titles of the pieces that would still be suspected, strongest first
   */
  public record OutcomeView(
      String words, Optional<Band> band, Optional<Seen> seen, double chance, List<String> leaves) {
    /** Copies the list. */
    public OutcomeView {
      leaves = List.copyOf(leaves);
    }
  }

  /** Copies the lists. */
  public CheckView {
    choices = List.copyOf(choices);
    choiceWords = List.copyOf(choiceWords);
    outcomes = List.copyOf(outcomes);
    cautions = List.copyOf(cautions);
  }
}
