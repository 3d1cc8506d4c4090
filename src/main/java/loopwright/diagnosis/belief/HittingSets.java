package loopwright.diagnosis.belief;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Minimal hitting sets: the smallest sets that share a member with each of the given ones. What
 * hits every conflict is a diagnosis, and what hits every diagnosis is a conflict (Reiter, A theory
 * of diagnosis from first principles, Artificial Intelligence 32, 1987; from memory). Worked out
 * one set after the other (Berge).
 */
public final class HittingSets {

  /** Sets that are carried at most. */
  public static final int MOST = 20_000;

  private HittingSets() {}

  /**
   * All minimal hitting sets, smallest first, then in the order of their members. One empty set if
   * nothing is to be hit; none if an empty set is to be hit.
   *
   * @throws IllegalStateException if more than {@value #MOST} have to be carried on the way
   */
  public static List<SortedSet<Integer>> minimal(Collection<? extends Set<Integer>> toHit) {
    List<SortedSet<Integer>> sets = new ArrayList<>();
    sets.add(new TreeSet<>());
    for (Set<Integer> next : toHit) {
      List<SortedSet<Integer>> hit = new ArrayList<>();
      List<SortedSet<Integer>> missed = new ArrayList<>();
      for (SortedSet<Integer> set : sets) {
        (set.stream().anyMatch(next::contains) ? hit : missed).add(set);
      }
      List<SortedSet<Integer>> grown = new ArrayList<>(hit);
      for (SortedSet<Integer> set : missed) {
        for (int member : next) {
          SortedSet<Integer> more = new TreeSet<>(set);
          more.add(member);
          // Only sets that hit before can lie inside one that just grew by one member.
          if (hit.stream().noneMatch(more::containsAll)) {
            grown.add(more);
          }
        }
        if (grown.size() > MOST) {
          throw new IllegalStateException("more than " + MOST + " minimal sets");
        }
      }
      sets = grown;
    }
    sets.sort(ORDER);
    return sets;
  }

  /** Smallest first, then in the order of members. */
  static final Comparator<SortedSet<Integer>> ORDER =
      Comparator.<SortedSet<Integer>>comparingInt(SortedSet::size)
          .thenComparing(
              (a, b) -> {
                var i = a.iterator();
                var j = b.iterator();
                while (i.hasNext() && j.hasNext()) {
                  int c = Integer.compare(i.next(), j.next());
                  if (c != 0) {
                    return c;
                  }
                }
                return 0;
              });
}
