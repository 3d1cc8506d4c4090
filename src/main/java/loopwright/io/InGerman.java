package loopwright.io;

import loopwright.model.Language;

/** Words of the knowledge files that stand there in both languages. */
final class InGerman {
  private InGerman() {}

  /** The German words where that is the language in use and there are any, else the English. */
  static String or(String german, String english) {
    return Language.inUse() == Language.GERMAN && !german.isEmpty() ? german : english;
  }
}
