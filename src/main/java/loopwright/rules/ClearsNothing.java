package loopwright.rules;

import java.util.Objects;

/**
 * Known to the rules only: a reading that is right and still must not clear anything, for instance
 * one taken while a circuit that fails now and then happens to work.
 *
 * @param reading its number
 * @param rule the rule that says so
 */
public record ClearsNothing(int reading, String rule) {
  /** Rejects a missing rule. */
  public ClearsNothing {
    Objects.requireNonNull(rule, "rule");
  }
}
