package loopwright.casework.practise;

import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Of which parts somebody said beforehand that a check would tell, held against what it can tell: a
 * check tells of a part if that part's failure would show something else than health.
 *
 * @param right how many were rightly said, or rightly not said; and how many wrongly
 * @param vain said, though its failure would show what health shows
 * @param missed not said, though its failure would show
 * @param settled said, though it was as good as ruled out before
 */
record Foretold(Tally right, Set<String> vain, Set<String> missed, Set<String> settled) {

  /** From which difference of the results a failure would show, up to which not. Our own choice. */
  private static final double WOULD = 0.8;

  private static final double WOULD_NOT = 0.2;

  /**
   * Holds it.
   *
   * @param said ids of the parts said
   * @param asked ids of the parts that were asked for
   * @param shows how far the results would differ from health's, by the parts still possible; what
   *     lies between depends on how a part has failed and counts neither way
   */
  static Foretold of(Set<String> said, Collection<String> asked, Map<String, Double> shows) {
    Set<String> vain = new TreeSet<>();
    Set<String> missed = new TreeSet<>();
    Set<String> settled = new TreeSet<>();
    Set<String> all = new TreeSet<>(asked);
    all.addAll(said);
    int right = 0;
    for (String part : all) {
      boolean named = said.contains(part);
      if (!shows.containsKey(part)) {
        if (named) {
          settled.add(part);
        }
      } else if (shows.get(part) >= WOULD) {
        right += named ? 1 : 0;
        if (!named) {
          missed.add(part);
        }
      } else if (shows.get(part) <= WOULD_NOT) {
        right += named ? 0 : 1;
        if (named) {
          vain.add(part);
        }
      }
    }
    return new Foretold(new Tally(right, vain.size() + missed.size()), vain, missed, settled);
  }
}
