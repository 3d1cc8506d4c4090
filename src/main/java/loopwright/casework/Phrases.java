package loopwright.casework;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of the use cases, from one bundle a language. */
public final class Phrases {
  private final ResourceBundle bundle;
  private final Locale locale;

  /** The phrases of a language; English where there is no translation. */
  public Phrases(Locale locale) {
    this.locale = locale;
    this.bundle =
        ResourceBundle.getBundle(
            "loopwright.casework.phrases",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /**
   * A phrase with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public String say(String key, Object... args) {
    return new MessageFormat(bundle.getString(key), locale).format(args);
  }

  /** The language, and how numbers are written in it. */
  public Locale locale() {
    return locale;
  }

  /** Whether there is such a phrase. */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }
}
