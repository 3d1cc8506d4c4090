package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;

/**
 * What the results of one check would leave: the first fork of a decision tree.
 *
 * @param check id of the check
 * @param kind its kind
 * @param words what is done, in words, for instance "volts DC at beacon ground stud G4"
 * @param set what would have to be changed first, in words
 * @param minutes working time in minutes
 * @param proposed whether it is the check that is asked now
 * @param note why there are no results to tell of; empty where there are
 * @param branches its results, most likely first: the classes that the meter tells apart
 * @param instead checks that could be asked in its place, best first
 */
public record Outlook(
    String check,
    CheckKind kind,
    String words,
    List<String> set,
    double minutes,
    boolean proposed,
    String note,
    List<Branch> branches,
    List<Choice> instead) {

  /** Copies the lists. */
  public Outlook {
    set = List.copyOf(set);
    branches = List.copyOf(branches);
    instead = List.copyOf(instead);
  }

  /**
   * A check that could be asked.
   *
   * @param check its id
   * @param words what is done, in words
   * @param minutes working time in minutes
   */
  public record Choice(String check, String words, double minutes) {}

  /**
   * A part that would still be suspected.
   *
   * @param part its id
   * @param title its name with id
   * @param belief its chance then, 0 to 1
   */
  public record Left(String part, String title, double belief) {}

  /**
   * One result.
   *
   * @param outcome the result with its chance
   * @param left what it would leave, strongest first
   */
  public record Branch(CheckView.OutcomeView outcome, List<Left> left) {
    /** Copies the list. */
    public Branch {
      left = List.copyOf(left);
    }
  }

  /**
   * What follows on a result.
   *
   * @param move what the person would do next
   * @param words that, in words: the next check, or what was found
   * @param check id of the check that would be asked; empty unless the move is CHECK
   * @param set what would have to be changed for it, in words
   * @param minutes its working time in minutes; 0 without one
   * @param left what would still be suspected once the result was read, strongest first
   * @param outcomes the results of that check
   */
  public record Then(
      CaseView.Move move,
      String words,
      Optional<String> check,
      List<String> set,
      double minutes,
      List<Left> left,
      List<CheckView.OutcomeView> outcomes) {
    /** Copies the lists. */
    public Then {
      set = List.copyOf(set);
      left = List.copyOf(left);
      outcomes = List.copyOf(outcomes);
    }
  }
}
