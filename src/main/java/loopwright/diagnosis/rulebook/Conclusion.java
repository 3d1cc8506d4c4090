package loopwright.diagnosis.rulebook;

import java.util.List;
import java.util.Set;
import loopwright.diagnosis.SuspectId;

/** What the rules may conclude. Every conclusion names the rule it comes from. */
public sealed interface Conclusion {

  /** The id of the rule, which is the name of its folder. */
  String rule();

  /** What a reading means, in words under a key. */
  record Sense(int reading, String rule, String key, List<Object> args) implements Conclusion {}

  /** A reading that needs a second look before anything hangs on it. */
  record Doubt(int reading, String rule, String key, List<Object> args) implements Conclusion {}

  /** A suspect that these readings rule out. Accepted only with a matching OUT margin. */
  record ClearedBy(
      SuspectId suspect, Set<Integer> readings, String rule, String key, List<Object> args)
      implements Conclusion {}

  /** A suspect that a direct reading proves. */
  record CondemnedBy(
      SuspectId suspect, Set<Integer> readings, String rule, String key, List<Object> args)
      implements Conclusion {}

  /** A check that may be proposed. */
  record AllowedBy(String check, String rule) implements Conclusion {}

  /** A check that must not be proposed, and why. Stronger than any permission. */
  record ForbiddenBy(String check, String rule, String key, List<Object> args)
      implements Conclusion {}

  /**
   * A check that should come before (weight above 1) or after (below 1) others of equal worth.
   *
   * @param weight factor on the worth of the check, 0.1 to 10
   */
  record PreferredBy(String check, String rule, double weight, String key, List<Object> args)
      implements Conclusion {}

  /** Stages of the work after a failure is isolated. */
  enum Stage {
    WHY,
    INSPECT,
    REPAIR,
    PROOF
  }

  /** What to think of, look at, do and prove once a failure is isolated. */
  record Advice(SuspectId suspect, Stage stage, String rule, String key, List<Object> args)
      implements Conclusion {}

  /**
   * A caution.
   *
   * @param check the check it stands at; empty: for the whole case
   */
  record Caution(String check, String rule, String key, List<Object> args) implements Conclusion {}

  /** How bad a finding of the paper check is. */
  enum Severity {
    /** Something can overheat, burn or be destroyed. */
    BURNS,
    /** Something will not work, or something else will wake. */
    FAILS,
    /** It works, but poorly or not for long. */
    WEARS,
    /** Nothing is wrong; worth knowing before the key is turned. */
    KNOW
  }

  /**
   * A finding of the paper check.
   *
   * @param figure number of the figure it was drawn from
   * @param part the part
   * @param severity how bad it is
   * @param key what was found, in words under this key
   * @param consequence key of the words for what follows from it
   * @param cure key of the words for what to do
   */
  record Finding(
      int figure,
      String part,
      Severity severity,
      String rule,
      String key,
      String consequence,
      String cure,
      List<Object> args)
      implements Conclusion {}
}
