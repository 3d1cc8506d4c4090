package loopwright.casework.edit;

import java.util.List;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/** One change of a vehicle that a person makes and may take back. */
public interface Edit {

  /** What undo and redo call it, for instance {@code rename F3 to F13}. */
  String title();

  /**
   * Makes the change. What comes out need not hold together.
   *
   * @throws Problem if it can't be made; it names the field and what is accepted
   */
  Made make(Vehicle before) throws Problem;

  /** An edit of a title and how it is made. */
  static Edit of(String title, Maker maker) {
    return new Edit() {
      @Override
      public String title() {
        return title;
      }

      @Override
      public Made make(Vehicle before) throws Problem {
        return maker.make(before);
      }
    };
  }

  /** How a change is made; as {@link Edit#make}. */
  interface Maker {
    /** Makes it. */
    Made make(Vehicle before) throws Problem;
  }

  /**
   * What came of a change.
   *
   * @param vehicle the vehicle changed
   * @param told what the person should know of, in words
   */
  record Made(Vehicle vehicle, List<String> told) {
    /** Copies the list. */
    public Made {
      told = List.copyOf(told);
    }
  }
}
