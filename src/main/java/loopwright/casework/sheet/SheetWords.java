package loopwright.casework.sheet;

import java.util.Collection;
import loopwright.casework.Phrases;
import loopwright.casework.edit.Shown;
import loopwright.model.Nearest;

/** What is said of lists, in the language in use. */
final class SheetWords {
  private SheetWords() {}

  /**
   * A text with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  static String say(String key, Object... args) {
    return Phrases.inUse().say("sheet." + key, args);
  }

  /** The same with a number put in. */
  static String say(String key, long number) {
    return say(key, Long.toString(number));
  }

  /** That a column must be something and holds nothing or something else. */
  static String bad(SheetColumn column, String cell, String limit) {
    return cell.isEmpty()
        ? say("missing", column.said(), limit)
        : say("bad", column.said(), Shown.of(cell), limit);
  }

  /** What a misspelt name was most likely meant to be; empty if nothing is close. */
  static String meant(String name, Collection<String> known) {
    return Nearest.to(name, known).map(n -> say("meant", n)).orElse("");
  }
}
