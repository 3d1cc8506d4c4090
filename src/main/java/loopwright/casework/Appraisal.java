package loopwright.casework;

import java.util.List;

/**
 * What a check of the person's own choice is expected to tell before it is taken.
 *
 * @param words what is done, in words, for instance "volts DC at beacon ground stud G4"
 * @param bits expected information about which part has failed, in bits
 * @param tells whether that is worth any minutes at all
 * @param minutes working time in minutes
 * @param outcomes its results, most likely first
 */
public record Appraisal(
    String words,
    double bits,
    boolean tells,
    double minutes,
    List<CheckView.OutcomeView> outcomes) {
  /** Copies the list. */
  public Appraisal {
    outcomes = List.copyOf(outcomes);
  }
}
