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
  private final Map<Object, FactHandle> stated = new LinkedHashMap<>();
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
    Set<Object> wanted = new LinkedHashSet<>(facts);
    wanted.addAll(places(facts));
    Iterator<Map.Entry<Object, FactHandle>> old = stated.entrySet().iterator();
    while (old.hasNext()) {
      Map.Entry<Object, FactHandle> entry = old.next();
      if (!wanted.contains(entry.getKey())) {
        session.delete(entry.getValue());
        old.remove();
      }
    }
    for (Object fact : wanted) {
      if (!stated.containsKey(fact)) {
        stated.put(fact, session.insert(fact));
      }
    }
    fire();
    conclusions = Words.sorted(session.getObjects(Conclusion.class::isInstance), titles(), locale);
  }

  /** Which pieces the hand gets to in each check. */
  private static List<At> places(Collection<? extends Fact> facts) {
    Map<String, List<Fact.Piece>> pieces = new HashMap<>();
    for (Fact fact : facts) {
      if (fact instanceof Fact.Piece piece) {
        pieces.computeIfAbsent(piece.id(), id -> new ArrayList<>()).add(piece);
      }
    }
    List<At> places = new ArrayList<>();
    for (Fact fact : facts) {
      if (fact instanceof Fact.CheckIdea idea) {
        pieces
            .getOrDefault(Trade.part(idea.red()), List.of())
            .forEach(piece -> places.add(new At(idea, At.Tip.RED, piece)));
        pieces
            .getOrDefault(Trade.part(idea.black()), List.of())
            .forEach(piece -> places.add(new At(idea, At.Tip.BLACK, piece)));
      }
    }
    return places;
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

  private Map<String, String> titles() {
    Map<String, String> titles = new HashMap<>();
    for (Object fact : stated.keySet()) {
      if (fact instanceof Fact.Piece piece) {
        // Two titles for one part are a mistake elsewhere; the order they came in must not show.
        titles.merge(piece.id(), piece.title(), (a, b) -> a.compareTo(b) <= 0 ? a : b);
      }
    }
    return titles;
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
