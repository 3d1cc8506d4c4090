package loopwright.diagnosis.rulebook;

import java.util.Collection;
import java.util.List;

/** The trade's rules, compiled. Thread-safe; each session belongs to one thread at a time. */
public interface RuleBook {

  /** Opens a session for one case. */
  Session open();

  /** Number of rules. */
  int size();

  /**
   * The words of a conclusion in the reader's language, with its arguments put in.
   *
   * @param rule rule id
   * @param key text key in the rule's folder
   * @param args arguments
   */
  String words(String rule, String key, List<Object> args);

  /** The rule's title, reason and source, for screens that explain. */
  RuleNote note(String rule);

  /** A rule as the reader sees it. */
  record RuleNote(String id, String area, String title, String reason, String source) {}

  /** One case's facts and what follows from them. */
  interface Session extends AutoCloseable {

    /**
     * Makes the stated facts exactly these: facts not yet stated are added, stated ones that are
     * missing here are taken back with all that followed from them. Then fires the rules.
     */
    void state(Collection<? extends Fact> facts);

    /** All conclusions that stand now, in a fixed order. */
    List<Conclusion> conclusions();

    @Override
    void close();
  }
}
