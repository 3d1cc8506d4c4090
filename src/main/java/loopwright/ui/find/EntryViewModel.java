package loopwright.ui.find;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import loopwright.casework.feed.MeterWatch;

/** A value while it is typed: digits, then the letter of a unit. */
public final class EntryViewModel {
  private static final Pattern DIGITS = Pattern.compile("[-−]?\\d{0,7}([.,]\\d{0,4})?");
  private static final Pattern WHOLE =
      Pattern.compile("([-−]?\\d{0,7}(?:[.,]\\d{0,4})?)(?: (mV|V|ohm|kohm))?");

  private final ReadOnlyStringWrapper text = new ReadOnlyStringWrapper("");

  /** What stands in the field, for instance {@code 12.4 V}. */
  public ReadOnlyStringProperty textProperty() {
    return text.getReadOnlyProperty();
  }

  /** What stands in the field. */
  public String text() {
    return text.get();
  }

  /** Whether a text may stand in the field at any time while it is typed. */
  private static boolean possible(String proposed) {
    return proposed.equals("OL") || WHOLE.matcher(proposed).matches();
  }

  /**
   * What to put into the field for a text that was pasted, for instance {@code +1.241E+01 VDC};
   * empty if it is no value with a unit that can be typed.
   */
  public static Optional<String> pasted(String text) {
    return possible(text)
        ? Optional.of(text)
        : MeterWatch.typed(text).filter(EntryViewModel::possible);
  }

  /** Puts a text into the field; refuses what is no part of a value. */
  public boolean type(String proposed) {
    if (!possible(proposed)) {
      return false;
    }
    text.set(proposed);
    return true;
  }

  /** Adds a digit, decimal sign or minus at the end of the digits; a unit already set stays off. */
  public boolean add(char c) {
    String digits = digits();
    String next = digits + c;
    if (!DIGITS.matcher(next).matches()) {
      return false;
    }
    text.set(next);
    return true;
  }

  /** Takes the unit away, or else the last character. */
  public void back() {
    String now = text.get();
    if (unit().isPresent()) {
      text.set(digits());
    } else if (!now.isEmpty()) {
      text.set(now.substring(0, now.length() - 1));
    }
  }

  /**
   * Sets the unit; {@link EntryUnit#OVER} replaces the digits.
   *
   * @return whether it could be set; a unit needs digits before it
   */
  public boolean unit(EntryUnit unit) {
    if (unit == EntryUnit.OVER) {
      text.set(unit.word());
      return true;
    }
    if (!hasNumber()) {
      return false;
    }
    text.set(digits() + " " + unit.word());
    return true;
  }

  /** The unit set, if any. */
  public Optional<EntryUnit> unit() {
    if (text.get().equals(EntryUnit.OVER.word())) {
      return Optional.of(EntryUnit.OVER);
    }
    Matcher m = WHOLE.matcher(text.get());
    if (!m.matches() || m.group(2) == null) {
      return Optional.empty();
    }
    String word = m.group(2);
    return List.of(EntryUnit.values()).stream().filter(u -> u.word().equals(word)).findFirst();
  }

  /** Whether there is a number to set a unit on. */
  public boolean hasNumber() {
    return digits().chars().anyMatch(Character::isDigit);
  }

  /** Whether the entry has all it needs to be counted. */
  public boolean complete() {
    return unit().isPresent();
  }

  /** What is handed on: a typographic minus is made a plain one. */
  public String plain() {
    return text.get().replace('−', '-');
  }

  /** Empties the field. */
  public void clear() {
    text.set("");
  }

  private String digits() {
    Matcher m = WHOLE.matcher(text.get());
    return m.matches() ? m.group(1) : "";
  }
}
