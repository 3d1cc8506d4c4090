package loopwright.cli;

import java.util.List;
import java.util.Locale;

/**
 * The words that a case in plain lines is obeyed by: the English ones in every language, and beside
 * them those of the language in use. An English word never means anything else.
 */
final class Obeyed {
  /** Words that begin a line. */
  static final List<String> COMMANDS =
      List.of(
          "help",
          "list",
          "stairs",
          "drops",
          "log",
          "same",
          "points",
          "setups",
          "again",
          "why",
          "tree",
          "cant",
          "never",
          "wont",
          "alone",
          "back",
          "fix",
          "measure",
          "look",
          "learn",
          "swapped",
          "mended",
          "meter",
          "take",
          "mine",
          "program",
          "smoke",
          "burnt",
          "hot",
          "heat",
          "fuel",
          "smell",
          "isolated",
          "gone",
          "stop");

  /** Words that stand behind those. */
  static final List<String> DETAILS =
      List.of(
          "all",
          "on",
          "off",
          "volts",
          "millivolts",
          "ohms",
          "diode",
          "setup",
          "never",
          "alone",
          "mended",
          "swapped",
          "photo",
          "cant",
          "wont");

  private Obeyed() {}

  /** A line with its first word in English, if that is one to be obeyed; else as it was typed. */
  static String line(String typed) {
    String[] words = typed.strip().split("\\s+", 2);
    String word = english(words[0], COMMANDS);
    boolean same = word.equalsIgnoreCase(words[0]);
    return same ? typed : words.length > 1 ? word + " " + words[1] : word;
  }

  /** A word behind the first in English, in small letters. */
  static String detail(String typed) {
    return english(typed, DETAILS);
  }

  /** The words of the language in use for an English one, the usual one first. */
  static List<String> said(String english) {
    return List.of(Speech.of("obey." + english).split(", "));
  }

  private static String english(String typed, List<String> words) {
    String word = typed.toLowerCase(Locale.ROOT);
    return words.contains(word)
        ? word
        : words.stream()
            .filter(w -> said(w).stream().anyMatch(word::equalsIgnoreCase))
            .findFirst()
            .orElse(word);
  }
}
