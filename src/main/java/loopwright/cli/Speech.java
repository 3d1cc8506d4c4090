package loopwright.cli;

import java.util.ResourceBundle;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.model.Bundle;
import loopwright.model.Language;

/** What the terminal says, from the bundle {@code loopwright/cli/terminal}. */
final class Speech {
  private static final String NAME = "loopwright.cli.terminal";

  private static final Bundle ENGLISH = new Bundle(NAME, Language.ENGLISH.locale());

  /** Columns of a label and its indent. */
  private static final int LABEL = 11;

  /** As wide as a label. */
  static final String NO_LABEL = " ".repeat(LABEL);

  private Speech() {}

  /**
   * A text in the language in use, with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  static String of(String key, Object... args) {
    return Bundle.inUse(NAME).say(key, args);
  }

  /** The same in English, whatever language is in use. */
  static String inEnglish(String key) {
    return ENGLISH.say(key);
  }

  /** What a problem says: what was wrong, what came in, what is accepted. */
  static String problem(Problem problem) {
    return of(
        problem.value().isEmpty() ? "problem.bare" : "problem",
        named(problem),
        problem.value(),
        problem.accepted());
  }

  /** What a problem is about, in words where there are any: options keep their names. */
  private static String named(Problem problem) {
    String key = "field." + problem.field().replace(' ', '-');
    return Bundle.inUse(NAME).has(key) ? of(key) : problem.named();
  }

  /** Whether a word says yes, in English or in the language in use. */
  static boolean yes(String word) {
    return Stream.of("yes", "y", of("word.yes")).anyMatch(word::equalsIgnoreCase);
  }

  /** Whether a word says no, in the same. */
  static boolean no(String word) {
    return Stream.of("no", "n", of("word.no")).anyMatch(word::equalsIgnoreCase);
  }

  /** The help of the commands, from the bundle {@code loopwright/cli/help}. */
  static ResourceBundle help() {
    return ResourceBundle.getBundle(
        "loopwright.cli.help",
        Language.inUse().locale(),
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** A label before a block, indented, all of one width. */
  static String label(String key) {
    String label = "  " + of("label." + key);
    return label + " ".repeat(Math.max(1, LABEL - label.length()));
  }
}
