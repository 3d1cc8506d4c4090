package loopwright.casework.prove;

import java.util.List;
import java.util.Optional;
import loopwright.casework.PointView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;

/**
 * How far a vehicle is proven, in words, and one thing to do now.
 *
 * @param vehicle the vehicle's name
 * @param items all that is proven, in its order
 * @param chosen id of the subject at hand
 * @param now what to do; empty where the subject at hand is proven
 * @param said what the last answer came to; may be empty
 * @param missing what of the kept proofs could not be read; may be empty
 * @param plan the plan in a sentence or two: which small fuse, and why
 */
public record ProveView(
    String vehicle,
    List<Item> items,
    String chosen,
    Optional<Now> now,
    String said,
    String missing,
    String plan) {

  /** Copies the list. */
  public ProveView {
    items = List.copyOf(items);
  }

  /** How a subject stands. */
  public enum State {
    PROVEN,
    /** Some steps are done. */
    BEGUN,
    OPEN,
    /** It was proven, and was changed since. */
    CHANGED,
    /** A step was not as it should be, and a case was opened over it. */
    FAILED
  }

  /**
   * One subject in the list.
   *
   * @param id its id
   * @param title in words
   * @param state how it stands
   * @param note what else there is to say: what was changed since, where it stopped; may be empty
   */
  public record Item(String id, String title, State state, String note) {}

  /**
   * One thing to do.
   *
   * @param step the step's id
   * @param title of the subject
   * @param number of the step, from 1
   * @param of how many steps there are
   * @param task what to do, in a sentence
   * @param kind what is answered; empty: done or not
   * @param set how the vehicle is set up, in lines; only what changes since the step before
   * @param red where the red lead goes
   * @param black where the black lead goes
   * @param meter what the meter is set to
   * @param choices what can be seen
   * @param choiceWords the same in words; for done or not both answers in that order
   * @param healthy what it shows if all is well, in words; empty for done or not
   * @param otherwise what something wrong would show, in words; may be empty
   * @param because why it is done, in a sentence
   * @param cautions what to be careful of
   * @param trouble what is wrong with the last answer; empty while none is
   */
  public record Now(
      String step,
      String title,
      int number,
      int of,
      String task,
      Optional<CheckKind> kind,
      List<String> set,
      Optional<PointView> red,
      Optional<PointView> black,
      String meter,
      List<Seen> choices,
      List<String> choiceWords,
      String healthy,
      String otherwise,
      String because,
      List<String> cautions,
      Optional<Trouble> trouble) {

    /** Copies the lists. */
    public Now {
      set = List.copyOf(set);
      choices = List.copyOf(choices);
      choiceWords = List.copyOf(choiceWords);
      cautions = List.copyOf(cautions);
    }
  }

  /**
   * An answer that is not as it should be.
   *
   * @param words what came and what it means, in sentences
   * @param canFind whether a case can be opened over it with the readings taken
   * @param caseId id of the case that was opened over it; empty: none yet
   */
  public record Trouble(String words, boolean canFind, Optional<String> caseId) {}
}
