package loopwright.casework.pattern;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of the patterns, from one bundle a language. */
public final class PatternWords {
  private final ResourceBundle bundle;
  private final Locale locale;

  /** The words of a language; English where there is no translation. */
  public PatternWords(Locale locale) {
    this.locale = locale;
    this.bundle =
        ResourceBundle.getBundle(
            "loopwright.casework.patterns",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /**
   * Words with their arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  String say(String key, Object... args) {
    return new MessageFormat(bundle.getString(key), locale).format(args);
  }

  /** The words of the first key that has any. */
  String first(String key, String other) {
    return say(bundle.containsKey(key) ? key : other);
  }
}
