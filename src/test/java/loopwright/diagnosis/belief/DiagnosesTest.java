package loopwright.diagnosis.belief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Minimal conflicts and diagnoses against trying every set of pieces. */
class DiagnosesTest {

  /** Made-up conflicts: pieces can be sound together unless they hold one of these sets. */
  private static List<Set<Integer>> conflicts(int pieces, Random random) {
    List<Set<Integer>> conflicts = new ArrayList<>();
    for (int k = random.nextInt(6); k > 0; k--) {
      Set<Integer> conflict = new HashSet<>();
      for (int m = 1 + random.nextInt(4); m > 0; m--) {
        conflict.add(random.nextInt(pieces));
      }
      conflicts.add(conflict);
    }
    return conflicts;
  }

  private static Set<Set<Integer>> minimalOf(List<Set<Integer>> sets) {
    Set<Set<Integer>> minimal = new HashSet<>();
    for (Set<Integer> s : sets) {
      if (sets.stream().noneMatch(t -> t.size() < s.size() && s.containsAll(t))) {
        minimal.add(s);
      }
    }
    return minimal;
  }

  @Test
  void agree_with_trying_every_set_of_pieces() {
    Random random = new Random(4);
    for (int trial = 0; trial < 200; trial++) {
      int pieces = 1 + random.nextInt(8);
      List<Set<Integer>> stated = conflicts(pieces, random);
      Consistency consistency = sound -> stated.stream().noneMatch(sound::containsAll);
      List<Set<Integer>> explaining = new ArrayList<>();
      for (int bits = 0; bits < 1 << pieces; bits++) {
        int failed = bits;
        Set<Integer> set = new HashSet<>();
        Set<Integer> sound = new HashSet<>();
        IntStream.range(0, pieces).forEach(p -> ((failed >> p & 1) == 1 ? set : sound).add(p));
        if (consistency.holds(sound)) {
          explaining.add(set);
        }
      }
      Diagnoses found = Diagnoses.of(pieces, consistency);
      assertEquals(minimalOf(explaining), new HashSet<Set<Integer>>(found.diagnoses()));
      assertEquals(minimalOf(stated), new HashSet<Set<Integer>>(found.conflicts()));
    }
  }

  @Test
  void one_conflict_is_minimal_and_made_of_later_pieces_where_possible() {
    Consistency consistency =
        sound -> !sound.containsAll(Set.of(0, 1)) && !sound.containsAll(Set.of(1, 2, 3));
    SortedSet<Integer> conflict =
        Diagnoses.conflictIn(List.of(0, 1, 2, 3), consistency).orElseThrow();
    assertEquals(new TreeSet<>(Set.of(1, 2, 3)), conflict);
    assertTrue(Diagnoses.conflictIn(List.of(0, 2, 3), consistency).isEmpty());
  }

  @Test
  void nothing_need_have_failed_where_all_can_be_sound() {
    Diagnoses none = Diagnoses.of(3, sound -> true);
    assertEquals(List.of(new TreeSet<Integer>()), none.diagnoses());
    assertTrue(none.conflicts().isEmpty());
  }

  @Test
  void observations_that_nothing_explains_are_refused_with_a_reason() {
    IllegalStateException e =
        assertThrows(IllegalStateException.class, () -> Diagnoses.of(2, sound -> false));
    assertTrue(e.getMessage().contains("even if every piece has failed"));
  }

  @Test
  void candidates_say_how_likely_each_piece_has_failed() {
    Candidates all =
        Candidates.of(
            List.of(List.of(0.9, 0.1), List.of(0.8, 0.2)), modes -> modes.contains(1) ? 1 : 0);
    // 0.1 x 0.8, 0.9 x 0.2 and 0.1 x 0.2 are left of what can be.
    assertEquals(0.28, all.observed(), 1e-12);
    assertEquals(0.1 / 0.28, all.failed(0), 1e-12);
    assertEquals(0.2 / 0.28, all.failed(1), 1e-12);
    assertEquals(List.of(1), all.all().get(0).failed());
    assertFalse(all.all().stream().anyMatch(c -> c.failed().isEmpty()));
  }

  @Test
  void wrong_chances_and_impossible_observations_are_refused() {
    assertThrows(
        IllegalArgumentException.class, () -> Candidates.of(List.of(List.of(0.9, 0.2)), m -> 1));
    assertThrows(
        IllegalStateException.class, () -> Candidates.of(List.of(List.of(0.9, 0.1)), m -> 0));
  }
}
