package loopwright.cli;

import loopwright.model.Bundle;

/** What the terminal says, from the bundle {@code loopwright/cli/terminal}. */
final class Speech {
  private static final String NAME = "loopwright.cli.terminal";

  /** Columns of a label and its indent. */
  private static final int LABEL = 11;

  private Speech() {}

  /**
   * A text in the language in use, with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  static String of(String key, Object... args) {
    return Bundle.inUse(NAME).say(key, args);
  }

  /** A label before a block, indented, all of one width. */
  static String label(String key) {
    String label = "  " + of("label." + key);
    return label + " ".repeat(Math.max(1, LABEL - label.length()));
  }
}
