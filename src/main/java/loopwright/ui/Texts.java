package loopwright.ui;

import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.Bundle;
import loopwright.model.Language;

/** The words on the screens, from the bundle {@code loopwright/ui/texts}. */
public final class Texts {
  private static final String NAME = "loopwright.ui.texts";

  private Texts() {}

  /**
   * The text of a key in the language in use, with {@code {0}}, {@code {1}}... replaced.
   *
   * @throws java.util.MissingResourceException if the bundle has no such key
   */
  public static String of(String key, Object... values) {
    Bundle bundle = Bundle.inUse(NAME);
    return values.length == 0 ? bundle.text(key) : bundle.say(key, values);
  }

  /** The text of a key in a language that may not be the one in use. */
  public static String in(Language language, String key) {
    return new Bundle(NAME, language.locale()).text(key);
  }

  /** Whether the bundle has a key. */
  public static boolean has(String key) {
    return Bundle.inUse(NAME).has(key);
  }

  /** The text of a constant: key {@code type.NAME}. */
  public static String of(Enum<?> constant) {
    return of(constant.getDeclaringClass().getSimpleName() + "." + constant.name());
  }

  /** What is seen in a check: some kinds have words of their own for it. */
  public static String of(CheckKind kind, Seen seen) {
    String key = "Seen." + kind.name() + "." + seen.name();
    return has(key) ? of(key) : of(seen);
  }
}
