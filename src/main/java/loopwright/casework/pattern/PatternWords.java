package loopwright.casework.pattern;

import java.util.Locale;
import loopwright.knowledge.PatternValues;
import loopwright.model.Bundle;
import loopwright.model.Language;

/** The words of the patterns, from one bundle a language. */
public final class PatternWords {
  private final Bundle bundle;

  /** The words of a language; English where the program doesn't speak it. */
  public PatternWords(Locale locale) {
    bundle = new Bundle("loopwright.casework.patterns", locale);
  }

  /** The words of the language in use. */
  public static PatternWords inUse() {
    return new PatternWords(Language.inUse().locale());
  }

  /**
   * Words with their arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  String say(String key, Object... args) {
    return bundle.say(key, args);
  }

  /** The words of the first key that has any. */
  String first(String key, String other, Object... args) {
    return say(bundle.has(key) ? key : other, args);
  }

  /** Where a value comes from, as a person reads it. */
  String source(String source) {
    return source.equals(PatternValues.COMMON_PRACTICE) ? say("source.common") : source;
  }
}
