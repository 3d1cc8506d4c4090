package loopwright.casework.pattern;

import java.util.List;
import java.util.Objects;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.Units;

/**
 * Something a pattern asks for.
 *
 * @param id short name, for instance {@code metres}
 * @param text the question in words
 * @param form what is accepted
 * @param usual the answer that stands in until another is given, as it would be typed
 * @param source where the usual answer comes from; empty where it speaks for itself
 */
public record Question(String id, String text, Form form, String usual, String source) {

  /** Rejects missing components. */
  public Question {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(form, "form");
    Objects.requireNonNull(usual, "usual");
    Objects.requireNonNull(source, "source");
  }

  /** What a person typed, as it is kept: a length without a unit is in the unit preferred. */
  public String kept(String typed) {
    boolean bare =
        form instanceof Form.Length
            && Units.inUse().feet()
            && Said.amount(typed, Quantity.LENGTH).isPresent()
            && !Said.saysUnit(typed, Quantity.LENGTH);
    return bare ? typed.strip() + " " + Units.inUse().lengthUnit() : typed;
  }

  /** Where the usual answer comes from, as a person reads it. */
  public String sourceWords() {
    return PatternWords.inUse().source(source);
  }

  /** What kind of answer is accepted. */
  public sealed interface Form {
    /**
     * A few words, at least one letter.
     *
     * @param most greatest number of letters
     */
    record Words(int most) implements Form {}

    /**
     * A number; its unit may be written behind it.
     *
     * @param unit unit, for instance {@code A}; empty for a count, which must be whole
     * @param low least accepted
     * @param high greatest accepted
     */
    record Number(String unit, double low, double high) implements Form {}

    /**
     * A length, for instance {@code 1.5 m} or {@code 5 ft}; a bare number is metres.
     *
     * @param low least accepted, in metres
     * @param high greatest accepted, in metres
     */
    record Length(double low, double high) implements Form {}

    /**
     * What a load takes: watts or amperes, for instance {@code 55 W} or {@code 4.5 A}.
     *
     * @param unit the unit of a bare number: {@code W} or {@code A}
     * @param low least accepted, in amperes at the system's volts
     * @param high greatest accepted, in amperes at the system's volts
     */
    record Power(String unit, double low, double high) implements Form {}

    /**
     * One of several.
     *
     * @param choices at least one, the usual ones first
     */
    record OneOf(List<Choice> choices) implements Form {
      /** Copies the list. */
      public OneOf {
        choices = List.copyOf(choices);
      }
    }
  }

  /**
   * One of several answers.
   *
   * @param id what is typed in a file of answers
   * @param words what a person reads
   */
  public record Choice(String id, String words) {}
}
