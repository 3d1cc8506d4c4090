package loopwright.model;

import java.util.regex.Pattern;

/** What the short names may look like by which parts, terminals and circuits are referred to. */
public final class ShortName {
  private static final Pattern PATTERN = Pattern.compile("[\\p{L}\\p{N}_+/#*-]{1,40}");

  private ShortName() {}

  /** The rule in words. */
  public static String limit() {
    return Words.say("accepted.name");
  }

  /** Whether a text is such a name. */
  public static boolean fits(String text) {
    return PATTERN.matcher(text).matches();
  }
}
