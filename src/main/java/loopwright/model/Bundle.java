package loopwright.model;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

/** The texts of one room in one language. All texts that a person reads come through here. */
public final class Bundle {
  private static final Map<String, Bundle> KEPT = new ConcurrentHashMap<>();

  private final ResourceBundle texts;
  private final Locale locale;

  /**
   * The texts of a language; English where the program doesn't speak it.
   *
   * @param name the name of the bundle, for instance {@code loopwright.ui.texts}
   */
  public Bundle(String name, Locale locale) {
    this.locale = locale;
    this.texts =
        ResourceBundle.getBundle(
            name,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** The texts of the language in use; they are looked for once. */
  public static Bundle inUse(String name) {
    Locale locale = Language.inUse().locale();
    return KEPT.computeIfAbsent(name + " " + locale, x -> new Bundle(name, locale));
  }

  /**
   * A text as it stands.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public String text(String key) {
    return texts.getString(key);
  }

  /**
   * A text with its arguments put in, {@code {0}}, {@code {1}}...
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public String say(String key, Object... args) {
    return new MessageFormat(texts.getString(key), locale).format(args);
  }

  /** Whether there is such a text. */
  public boolean has(String key) {
    return texts.containsKey(key);
  }

  /** The language, and how numbers are written in it. */
  public Locale locale() {
    return locale;
  }
}
