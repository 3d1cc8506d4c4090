package loopwright.casework;

import java.util.Locale;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Bundle;
import loopwright.model.Language;

/** The words of the use cases, from one bundle a language. */
public final class Phrases {
  private final Bundle bundle;

  /** The phrases of a language; English where the program doesn't speak it. */
  public Phrases(Locale locale) {
    bundle = new Bundle("loopwright.casework.phrases", locale);
  }

  /** The phrases of the language in use. */
  public static Phrases inUse() {
    return new Phrases(Language.inUse().locale());
  }

  /**
   * A phrase with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public String say(String key, Object... args) {
    return bundle.say(key, args);
  }

  /** What a load does, in a word or a few. */
  public String of(ComplaintKind kind) {
    return bundle.text("complaint." + kind.name());
  }

  /** The language, and how numbers are written in it. */
  public Locale locale() {
    return bundle.locale();
  }

  /** Whether there is such a phrase. */
  public boolean has(String key) {
    return bundle.has(key);
  }
}
