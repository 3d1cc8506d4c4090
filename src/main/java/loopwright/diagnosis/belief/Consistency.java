package loopwright.diagnosis.belief;

import java.util.Set;

/** Whether something agrees with what was observed. */
@FunctionalInterface
public interface Consistency {

  /**
   * Whether what was observed can be true while all of these pieces are sound, whatever the others
   * do. Fewer sound pieces never turn agreement into disagreement.
   *
   * @param sound pieces taken to be sound
   */
  boolean holds(Set<Integer> sound);
}
