package loopwright.rules;

import java.util.Map;
import java.util.Optional;
import loopwright.diagnosis.rulebook.RuleBook.RuleNote;

/**
 * One rule, read and checked.
 *
 * @param path its folder, {@code area/slug}
 * @param note what the reader sees of it
 * @param drl the rule itself
 * @param texts texts by key, by language
 */
record RuleFolder(String path, RuleNote note, String drl, Map<String, Map<String, String>> texts) {

  private static final String FALLBACK = "en";

  RuleFolder {
    texts = Map.copyOf(texts);
  }

  /** The text in a language, else in English. */
  Optional<String> text(String language, String key) {
    String own = texts.getOrDefault(language, Map.of()).get(key);
    return Optional.ofNullable(own != null ? own : texts.getOrDefault(FALLBACK, Map.of()).get(key));
  }
}
