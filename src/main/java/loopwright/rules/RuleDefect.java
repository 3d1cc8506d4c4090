package loopwright.rules;

import java.util.Comparator;
import java.util.Objects;
import loopwright.model.Bundle;

/**
 * Something wrong in a rule's folder.
 *
 * @param file the file, relative to the folder of rules
 * @param line its line, from 1; 1 where the file as a whole is meant
 * @param message what is wrong and what is accepted
 */
public record RuleDefect(String file, int line, String message) implements Comparable<RuleDefect> {

  private static final Comparator<RuleDefect> ORDER =
      Comparator.comparing(RuleDefect::file)
          .thenComparingInt(RuleDefect::line)
          .thenComparing(RuleDefect::message);

  /** Rejects missing words. */
  public RuleDefect {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(message, "message");
  }

  /**
   * What may be wrong, in the language in use, from the bundle {@code loopwright/rules/defects}.
   */
  static String say(String key, Object... args) {
    return Bundle.inUse("loopwright.rules.defects").say(key, args);
  }

  @Override
  public int compareTo(RuleDefect other) {
    return ORDER.compare(this, other);
  }

  @Override
  public String toString() {
    return file + ":" + line + ": " + message;
  }
}
