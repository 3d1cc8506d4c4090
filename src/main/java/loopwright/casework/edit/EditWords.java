package loopwright.casework.edit;

import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.model.Circuit;

/** What edits are called and say, in the language in use. */
final class EditWords {
  private EditWords() {}

  /**
   * A text with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  static String say(String key, Object... args) {
    return Phrases.inUse().say("edit." + key, args);
  }

  /**
   * What can't be edited so.
   *
   * @param field key of what was wrong
   * @param key key of what is accepted
   */
  static Problem problem(String field, String value, String key, Object... args) {
    return new Problem(say("field." + field), value, say(key, args));
  }

  /** A circuit's name with its id. */
  static String title(Circuit circuit) {
    return say("circuit", circuit.name(), circuit.id());
  }
}
