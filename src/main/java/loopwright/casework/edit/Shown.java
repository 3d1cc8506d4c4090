package loopwright.casework.edit;

import java.util.regex.Pattern;

/** What a person wrote, as messages quote it. */
public final class Shown {
  private static final int MOST = 60;
  private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x08\\x0B-\\x1F\\x7F]");

  private Shown() {}

  /** The text on one line, without control characters, shortened to 60 characters. */
  public static String of(String text) {
    String plain = CONTROL.matcher(text).replaceAll("?").replaceAll("\\s+", " ").strip();
    return plain.length() <= MOST ? plain : plain.substring(0, MOST - 3) + "...";
  }
}
