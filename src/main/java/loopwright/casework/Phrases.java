package loopwright.casework;

import java.util.Collection;
import java.util.Locale;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Bundle;

/** The words of the use cases, from one bundle a language. */
public final class Phrases {
  private static final String NAME = "loopwright.casework.phrases";

  private final Bundle bundle;

  /** The phrases of a language; English where the program doesn't speak it. */
  public Phrases(Locale locale) {
    this(new Bundle(NAME, locale));
  }

  private Phrases(Bundle bundle) {
    this.bundle = bundle;
  }

  /** The phrases of the language in use. */
  public static Phrases inUse() {
    return new Phrases(Bundle.inUse(NAME));
  }

  /**
   * A phrase with its arguments put in.
   *
   * @throws java.util.MissingResourceException for an unknown key
   */
  public String say(String key, Object... args) {
    return bundle.say(key, args);
  }

  /** That it must be one of some names. */
  public String oneOf(Collection<String> names) {
    return say("problem.one-of", String.join(", ", names));
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
