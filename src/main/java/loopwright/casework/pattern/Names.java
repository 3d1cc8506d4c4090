package loopwright.casework.pattern;

import java.util.Locale;

/** How things are called. */
final class Names {
  private Names() {}

  /** With a capital letter, as circuits are written. */
  static String capital(String name) {
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }
}
