package loopwright.diagnosis.belief;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * The minimal diagnoses of what was observed: sets of pieces such that it can be true if they, and
 * no others, are not sound, while no smaller part of the set would do. And the minimal conflicts:
 * sets of pieces that can't all be sound (de Kleer and Williams, Diagnosing multiple faults,
 * Artificial Intelligence 32, 1987).
 *
 * @param diagnoses minimal diagnoses, smallest first; one empty set if nothing need have failed
 * @param conflicts minimal conflicts, smallest first
 */
public record Diagnoses(List<SortedSet<Integer>> diagnoses, List<SortedSet<Integer>> conflicts) {

  /** Copies the lists. */
  public Diagnoses {
    diagnoses = List.copyOf(diagnoses);
    conflicts = List.copyOf(conflicts);
  }

  /**
   * Works both out. Whatever hits all conflicts known so far is tried; where it doesn't agree with
   * what was observed there is another conflict among the other pieces, until all are known.
   *
   * @param pieces number of pieces, numbered from 0
   * @param consistency what agrees with the observations
   * @throws IllegalStateException if they don't even agree when every piece has failed, or if there
   *     are too many sets
   */
  public static Diagnoses of(int pieces, Consistency consistency) {
    List<SortedSet<Integer>> found = new ArrayList<>();
    Set<Set<Integer>> tried = new HashSet<>();
    List<SortedSet<Integer>> diagnoses = HittingSets.minimal(found);
    boolean more = true;
    while (more) {
      more = false;
      for (SortedSet<Integer> failed : diagnoses) {
        if (tried.contains(failed)) {
          continue;
        }
        List<Integer> sound =
            IntStream.range(0, pieces).filter(p -> !failed.contains(p)).boxed().toList();
        Optional<SortedSet<Integer>> conflict = conflictIn(sound, consistency);
        if (conflict.isPresent()) {
          found.add(conflict.get());
          more = true;
          break;
        }
        tried.add(failed);
      }
      if (more) {
        diagnoses = HittingSets.minimal(found);
      }
    }
    // All minimal conflicts, not only those met on the way, are what hits every diagnosis.
    List<SortedSet<Integer>> conflicts =
        found.isEmpty() ? List.of() : HittingSets.minimal(diagnoses);
    return new Diagnoses(diagnoses, conflicts);
  }

  /**
   * One minimal conflict among these pieces, empty if they can all be sound. Pieces that come
   * earlier are kept out of it where possible, so that it is made of the later ones.
   *
   * <p>QuickXplain (Junker, AAAI 2004; from memory).
   *
   * @throws IllegalStateException if the observations disagree with no piece sound at all
   */
  public static Optional<SortedSet<Integer>> conflictIn(
      List<Integer> pieces, Consistency consistency) {
    if (consistency.holds(Set.copyOf(pieces))) {
      return Optional.empty();
    }
    if (!consistency.holds(Set.of())) {
      throw new IllegalStateException(
          "the observations contradict each other even if every piece has failed");
    }
    List<Integer> reversed = new ArrayList<>(pieces);
    Collections.reverse(reversed);
    return Optional.of(explain(new TreeSet<>(), false, reversed, consistency));
  }

  private static SortedSet<Integer> explain(
      Set<Integer> background, boolean grown, List<Integer> pieces, Consistency consistency) {
    if (grown && !consistency.holds(background)) {
      return new TreeSet<>();
    }
    if (pieces.size() == 1) {
      return new TreeSet<>(pieces);
    }
    List<Integer> first = pieces.subList(0, pieces.size() / 2);
    List<Integer> second = pieces.subList(pieces.size() / 2, pieces.size());
    Set<Integer> withFirst = new TreeSet<>(background);
    withFirst.addAll(first);
    SortedSet<Integer> fromSecond = explain(withFirst, !first.isEmpty(), second, consistency);
    Set<Integer> withSecond = new TreeSet<>(background);
    withSecond.addAll(fromSecond);
    SortedSet<Integer> all = explain(withSecond, !fromSecond.isEmpty(), first, consistency);
    all.addAll(fromSecond);
    return all;
  }
}
