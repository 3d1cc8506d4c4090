package loopwright.model;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The languages that the program speaks, and the one in use. It is settled once, before anything is
 * shown; files and lines for programs are the same in all of them.
 */
public enum Language {
  /** English: 12.4 V. */
  ENGLISH(Locale.ENGLISH, '.'),
  /** German: 12,4 V. */
  GERMAN(Locale.GERMAN, ',');

  private static final String TEXTS = "loopwright.model.model";

  private static volatile Language inUse = ENGLISH;

  private final Locale locale;
  private final char mark;

  Language(Locale locale, char mark) {
    this.locale = locale;
    this.mark = mark;
  }

  /** The language in use; English until another is chosen. */
  public static Language inUse() {
    return inUse;
  }

  /** Speaks this language from now on; what is on the screen already stays as it is. */
  public static void use(Language language) {
    inUse = language;
  }

  /** The language of a code, {@code en} or {@code de}; empty if there is none. */
  public static Optional<Language> of(String code) {
    return Arrays.stream(values())
        .filter(l -> l.code().equals(code.strip().toLowerCase(Locale.ROOT)))
        .findFirst();
  }

  /** The language of a system; English where the program doesn't speak that. */
  public static Language of(Locale system) {
    return of(system.getLanguage()).orElse(ENGLISH);
  }

  /** Its two letters by ISO 639-1. */
  public String code() {
    return locale.getLanguage();
  }

  /** The locale of its texts. */
  public Locale locale() {
    return locale;
  }

  /** The decimal mark. */
  public char mark() {
    return mark;
  }

  /**
   * A number with the decimal mark of the language in use.
   *
   * @param number digits with a point at most, and what stands beside them without one
   */
  public static String marked(String number) {
    return number.replace('.', inUse.mark);
  }

  /** A range in the language in use: {@code 11.9 to 12.7}. */
  public static String range(String low, String high) {
    return range(low, high, inUse.locale);
  }

  /** A range in a language: {@code 11.9 to 12.7}. */
  public static String range(String low, String high, Locale locale) {
    return new Bundle(TEXTS, locale).say("range", low, high);
  }

  /** The unit of ohms behind a prefix, in the language in use: {@code kohm}. */
  public static String ohm(String prefix) {
    return ohm(prefix, inUse.locale);
  }

  /** The unit of ohms behind a prefix, in a language. */
  public static String ohm(String prefix, Locale locale) {
    return prefix + text("ohm", locale);
  }

  /** A text of this room in a language. */
  static String text(String key, Locale locale) {
    return new Bundle(TEXTS, locale).text(key);
  }

  /** A size with another that is as good: {@code 1.5 mm2 (or 14 AWG)}. */
  static String orSize(String size, String other) {
    return Words.say("or-size", size, other);
  }

  /** A rough amount in the language in use: {@code about 1.5}. */
  public static String about(String amount) {
    return Words.say("about", amount);
  }
}
