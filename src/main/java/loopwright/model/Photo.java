package loopwright.model;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A photo of a part or of one of its terminals.
 *
 * @param file its path from the vehicle's file on, with slashes: no root, no drive, no steps
 *     upwards
 * @param terminal the terminal it shows; empty where it shows the whole part
 */
public record Photo(String file, Optional<String> terminal) {
  private static final Pattern PLAIN =
      Pattern.compile(
          "(?!.*(?:^|/)\\.{1,2}(?:/|$))[^/\\\\:*?\"<>|\\p{Cntrl}]+(?:/[^/\\\\:*?\"<>|\\p{Cntrl}]+)*");

  /** Rejects paths that lead elsewhere. */
  public Photo {
    Objects.requireNonNull(terminal, "terminal");
    if (!fits(file)) {
      throw new IllegalArgumentException("photo '" + file + "' must be " + limit());
    }
  }

  /** The rule in words. */
  public static String limit() {
    return Words.say("accepted.photo");
  }

  /** Whether a text is such a path. */
  public static boolean fits(String file) {
    return file.length() <= 500 && PLAIN.matcher(file).matches();
  }
}
