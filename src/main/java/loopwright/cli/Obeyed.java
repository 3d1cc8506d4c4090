package loopwright.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The words that a conversation in lines is obeyed by: the English ones in every language, and
 * beside them those of the language in use. An English word never means anything else.
 *
 * @param commands words that begin a line
 * @param details words that stand behind those
 */
record Obeyed(List<String> commands, List<String> details) {
  /** A case in plain lines. */
  static final Obeyed FIND =
      new Obeyed(
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
              "show",
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
              "stop"),
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
              "wont"));

  /** Grounds, one after the other. */
  static final Obeyed GROUND =
      new Obeyed(List.of("help", "list", "show", "more", "ohms", "skip", "stop"), List.of());

  /** First power. */
  static final Obeyed PROVE =
      new Obeyed(List.of("help", "list", "why", "again", "go", "find", "done", "stop"), List.of());

  /** A drill. */
  static final Obeyed DRILL =
      new Obeyed(
          List.of(
              "help",
              "draw",
              "points",
              "volts",
              "millivolts",
              "ohms",
              "diode",
              "amps",
              "look",
              "wiggle",
              "swap",
              "lamp",
              "on",
              "rest",
              "set",
              "pull",
              "unplug",
              "back",
              "accuse",
              "fuse",
              "done",
              "stop"),
          List.of("as", "to", "open", "high-resistance", "short", "stuck", "other"));

  /** A line with its first word in English, if that is one to be obeyed; else as it was typed. */
  String line(String typed) {
    String[] words = typed.strip().split("\\s+", 2);
    String word = english(words[0], commands);
    return words.length > 1 ? word + " " + words[1] : word;
  }

  /** A word behind the first in English, in small letters. */
  String detail(String typed) {
    return english(typed, details).toLowerCase(Locale.ROOT);
  }

  /** Words behind the first, those to be obeyed in English and the others as they were typed. */
  String details(String typed) {
    return Arrays.stream(typed.split("\\s+"))
        .map(word -> english(word, details))
        .collect(Collectors.joining(" "));
  }

  /** The words of the language in use for an English one, the usual one first. */
  static List<String> said(String english) {
    return split(Speech.of("obey." + english));
  }

  /** The usual word of the language in use for an English one. */
  static String usual(String english) {
    return said(english).get(0);
  }

  /**
   * Whether an answer is a word to be obeyed. Where anything may be typed for an answer, only the
   * usual word is.
   */
  static boolean says(String english, String answer) {
    return answer.equalsIgnoreCase(english) || answer.equalsIgnoreCase(usual(english));
  }

  private static List<String> split(String words) {
    return List.of(words.split(", "));
  }

  private static String english(String typed, List<String> words) {
    return Stream.<Function<String, List<String>>>of(
            List::of, word -> split(Speech.inEnglish("obey." + word)), Obeyed::said)
        .flatMap(
            spellings ->
                words.stream()
                    .filter(word -> spellings.apply(word).stream().anyMatch(w -> same(w, typed))))
        .findFirst()
        .orElse(typed);
  }

  /** A word of several may be typed with hyphens between them or without. */
  private static boolean same(String one, String other) {
    return one.replace('-', ' ').equalsIgnoreCase(other.replace('-', ' '));
  }
}
