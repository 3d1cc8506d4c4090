package loopwright.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.FactHandle;

/** One case's facts in the rule engine. */
final class DroolsSession implements RuleBook.Session {

  /** Firings allowed for each fact stated; the rules shipped need a handful. */
  private static final int FIRINGS_PER_FACT = 200;

  private static final int FIRINGS_AT_LEAST = 10_000;

  private final KieSession session;
  private final Locale locale;
  private final Map<Fact, FactHandle> stated = new LinkedHashMap<>();
  private List<Conclusion> conclusions = List.of();

  DroolsSession(KieSession session, Locale locale) {
    this.session = session;
    this.locale = locale;
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalStateException naming a rule, if the rules go on firing without end
   */
  @Override
  public void state(Collection<? extends Fact> facts) {
    Set<Fact> wanted = new LinkedHashSet<>(facts);
    Iterator<Map.Entry<Fact, FactHandle>> old = stated.entrySet().iterator();
    while (old.hasNext()) {
      Map.Entry<Fact, FactHandle> entry = old.next();
      if (!wanted.contains(entry.getKey())) {
        session.delete(entry.getValue());
        old.remove();
      }
    }
    for (Fact fact : wanted) {
      if (!stated.containsKey(fact)) {
        stated.put(fact, session.insert(fact));
      }
    }
    fire();
    conclusions = read();
  }

  private void fire() {
    int limit = FIRINGS_AT_LEAST + FIRINGS_PER_FACT * stated.size();
    List<String> last = new ArrayList<>(List.of(""));
    int fired =
        session.fireAllRules(
            match -> {
              last.set(0, match.getRule().getName());
              return true;
            },
            limit);
    if (fired >= limit) {
      throw new IllegalStateException(
          "the rules go on firing; stopped after " + fired + ", last at rule " + last.get(0));
    }
  }

  private List<Conclusion> read() {
    Map<String, String> titles = new HashMap<>();
    for (Fact fact : stated.keySet()) {
      if (fact instanceof Fact.Piece piece) {
        // Two titles for one part are a mistake elsewhere; the order they came in must not show.
        titles.merge(piece.id(), piece.title(), (a, b) -> a.compareTo(b) <= 0 ? a : b);
      }
    }
    return session.getObjects(Conclusion.class::isInstance).stream()
        .map(c -> Words.of((Conclusion) c, titles, locale))
        .distinct()
        .sorted(Words.ORDER)
        .toList();
  }

  @Override
  public List<Conclusion> conclusions() {
    return conclusions;
  }

  @Override
  public void close() {
    session.dispose();
  }
}
