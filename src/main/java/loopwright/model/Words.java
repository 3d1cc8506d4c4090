package loopwright.model;

/** What this room says, from the bundle {@code loopwright/model/model}. */
final class Words {
  private static final String NAME = "loopwright.model.model";

  private Words() {}

  /**
   * A text in the language in use, with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  static String say(String key, Object... args) {
    return Bundle.inUse(NAME).say(key, args);
  }
}
