package loopwright.casework.pattern;

import java.util.Objects;
import loopwright.knowledge.Knowledge;

/**
 * What patterns need to know besides the vehicle.
 *
 * @param knowledge usual values with their sources
 * @param words the words for questions and parts
 */
public record Basis(Knowledge knowledge, PatternWords words) {
  /** Rejects missing components. */
  public Basis {
    Objects.requireNonNull(knowledge, "knowledge");
    Objects.requireNonNull(words, "words");
  }
}
