package loopwright.casework.practise;

import java.util.Locale;
import loopwright.knowledge.Effect;
import loopwright.solver.Failure;

/** The kinds of fault that progress is told by. */
public enum FaultKind {
  /** Nothing passes. */
  OPEN,
  /** Too little passes. */
  HIGH_RESISTANCE,
  /** Something touches what it shouldn't. */
  SHORT,
  /** Contacts or a motor don't move. */
  STUCK,
  /** Anything else: swapped, reversed, worn out. */
  OTHER;

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The key of its words. */
  String key() {
    return "practise.kind." + word();
  }

  static FaultKind of(Failure failure) {
    if (failure.bridges()) {
      return SHORT;
    }
    if (failure.continuum().isPresent()) {
      return HIGH_RESISTANCE;
    }
    if (failure.effects().stream().anyMatch(Effect.Open.class::isInstance)) {
      return OPEN;
    }
    return failure.effects().stream().anyMatch(Effect.Stuck.class::isInstance) ? STUCK : OTHER;
  }
}
