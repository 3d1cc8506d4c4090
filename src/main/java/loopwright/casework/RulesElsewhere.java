package loopwright.casework;

import java.util.List;

/** A folder of rules that didn't come with the program: read, and not run before it is allowed. */
public interface RulesElsewhere {

  /**
   * One rule.
   *
   * @param path its folder, {@code area/name}
   * @param title what it calls itself
   * @param own what the program's own rules hold in its place
   */
  record Rule(String path, String title, Own own) {
    /** Path and title as they can be shown. */
    public String words() {
      return plain(path + ": " + title);
    }
  }

  /** Somebody else's words in one short line: they could move a cursor, or fill a screen. */
  static String plain(String text) {
    String line = text.replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    return line.length() <= 80 ? line : line.substring(0, 80) + "...";
  }

  /** How a rule stands to the program's own. */
  enum Own {
    SAME("same"),
    CHANGED("changed"),
    NEW("new"),
    MISSING("missing");

    private final String word;

    Own(String word) {
      this.word = word;
    }

    /** The word shown. */
    public String word() {
      return word;
    }
  }

  /** What the folder holds, and what it lacks of the program's own. */
  List<Rule> rules();

  /** Check sum of all names and texts, SHA-256 in hexadecimal: another for any change. */
  String fingerprint();

  /** Whether exactly these rules were allowed before. */
  boolean allowedBefore();

  /**
   * Takes them in place of the program's own, as they were read, and remembers that they may.
   *
   * @throws Problem if they are no rules that can be run
   */
  void take() throws Problem;
}
