package loopwright.rules;

import java.util.Comparator;
import java.util.Objects;

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

  @Override
  public int compareTo(RuleDefect other) {
    return ORDER.compare(this, other);
  }

  @Override
  public String toString() {
    return file + ":" + line + ": " + message;
  }
}
