package loopwright.ui;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words on the screens, from the bundle {@code loopwright/ui/texts}. */
public final class Texts {
  private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("loopwright.ui.texts");

  private Texts() {}

  /**
   * The text of a key, with {@code {0}}, {@code {1}}... replaced.
   *
   * @throws java.util.MissingResourceException if the bundle has no such key
   */
  public static String of(String key, Object... values) {
    String pattern = BUNDLE.getString(key);
    return values.length == 0 ? pattern : new MessageFormat(pattern, Locale.ROOT).format(values);
  }

  /** Whether the bundle has a key. */
  public static boolean has(String key) {
    return BUNDLE.containsKey(key);
  }

  /** The text of a constant: key {@code type.NAME}. */
  public static String of(Enum<?> constant) {
    return of(constant.getDeclaringClass().getSimpleName() + "." + constant.name());
  }
}
