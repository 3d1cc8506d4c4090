package loopwright.io;

import loopwright.model.Bundle;

/** What this room says of files, from the bundle {@code loopwright/io/files}. */
public final class FileWords {
  private static final String NAME = "loopwright.io.files";

  private FileWords() {}

  /**
   * A text in the language in use, with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public static String say(String key, Object... args) {
    return Bundle.inUse(NAME).say(key, args);
  }
}
