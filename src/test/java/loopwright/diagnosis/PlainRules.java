package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;

/**
 * The fewest rules that a diagnosis can be tried with, and what it stated to them: whatever is out
 * of its band is cleared; every check within reach is allowed, one that drives a current only dead,
 * alone and after its proof.
 */
final class PlainRules implements RuleBook {

  static final String RULE = "plain";

  private final List<Conclusion> more = new ArrayList<>();
  private final Set<String> never;
  private boolean open;
  private List<Fact> stated = List.of();

  /** Rules that never clear these suspects, written as {@code W7/open}. */
  PlainRules(String... never) {
    this.never = Set.of(never);
  }

  /** Concludes this as well. */
  PlainRules and(Conclusion conclusion) {
    more.add(conclusion);
    return this;
  }

  /** Facts of one kind that were stated last. */
  <T extends Fact> List<T> stated(Class<T> kind) {
    return stated.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** Whether a session is open. */
  boolean isOpen() {
    return open;
  }

  @Override
  public Session open() {
    open = true;
    return new Session() {
      @Override
      public void state(Collection<? extends Fact> facts) {
        stated = List.copyOf(facts);
      }

      @Override
      public List<Conclusion> conclusions() {
        return conclude();
      }

      @Override
      public void close() {
        open = false;
      }
    };
  }

  private List<Conclusion> conclude() {
    List<Conclusion> all = new ArrayList<>();
    for (Fact.Margin m : stated(Fact.Margin.class)) {
      if (m.standing() == Fact.Standing.OUT && !never.contains(m.suspect().toString())) {
        all.add(new Conclusion.ClearedBy(m.suspect(), m.readings(), RULE, "out", List.of()));
      }
    }
    for (Fact.CheckIdea idea : stated(Fact.CheckIdea.class)) {
      boolean dead = !idea.powered() && idea.isolated() && idea.provenDead();
      boolean drives = idea.kind().drives();
      if (idea.reachable() && (!drives || dead)) {
        all.add(new Conclusion.AllowedBy(idea.id(), RULE));
      }
    }
    all.addAll(more);
    return List.copyOf(all);
  }

  @Override
  public int size() {
    return 2;
  }

  @Override
  public String words(String rule, String key, List<Object> args) {
    return key;
  }

  @Override
  public RuleNote note(String rule) {
    return new RuleNote(rule, "", rule, "", "");
  }
}
