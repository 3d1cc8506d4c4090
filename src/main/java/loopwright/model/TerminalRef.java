package loopwright.model;

import java.util.Objects;

/**
 * One terminal of one part, written {@code F3.load}. It is also the name of a probe point.
 *
 * @param part the part's id
 * @param terminal the terminal's name on that part
 */
public record TerminalRef(String part, String terminal) implements Comparable<TerminalRef> {

  /** Rejects missing names. */
  public TerminalRef {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(terminal, "terminal");
  }

  /**
   * Reads {@code part.terminal}; the first dot parts the two.
   *
   * @throws IllegalArgumentException if there is no dot with something on both sides
   */
  public static TerminalRef parse(String text) {
    int dot = text.indexOf('.');
    if (dot <= 0 || dot == text.length() - 1) {
      throw new IllegalArgumentException(
          "'" + text + "' is not a terminal: write part.terminal, for instance F3.load");
    }
    return new TerminalRef(text.substring(0, dot), text.substring(dot + 1));
  }

  @Override
  public int compareTo(TerminalRef other) {
    int byPart = part.compareTo(other.part);
    return byPart != 0 ? byPart : terminal.compareTo(other.terminal);
  }

  @Override
  public String toString() {
    return part + "." + terminal;
  }
}
