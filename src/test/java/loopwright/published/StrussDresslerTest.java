package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.diagnosis.belief.Candidates;
import loopwright.diagnosis.belief.Diagnoses;
import org.junit.jupiter.api.Test;

/**
 * Battery, six wires and three bulbs, of which two are dark (Struss and Dressler, Physical
 * negation, IJCAI 1989): the rows "bulb." of published/planning.csv. With models of sound pieces
 * alone 22 diagnoses are minimal, among them a dead battery with the third bulb lit by itself; with
 * models of how pieces fail one is left. That is why the program knows how parts fail.
 */
class StrussDresslerTest {
  private static final List<String> NAMES =
      List.of("S", "W1", "W2", "W3", "W4", "W5", "W6", "B1", "B2", "B3");
  private static final int BATTERY = 0;
  private static final int FIRST_BULB = 7;

  /** Ends of each piece: 0 and 1 at the battery, then a pair of joints for each bulb. */
  private static final int[][] ENDS = {
    {0, 1}, {0, 2}, {1, 3}, {2, 4}, {3, 5}, {4, 6}, {5, 7}, {2, 3}, {4, 5}, {6, 7}
  };

  private static final boolean[] LIT = {false, false, true};

  /** Joints that wires join, each named by the least of its kind. */
  private static int[] joined(Set<Integer> wires) {
    int[] joint = IntStream.range(0, 8).toArray();
    for (int w : wires) {
      if (w != BATTERY && w < FIRST_BULB) {
        int a = joint[ENDS[w][0]];
        int b = joint[ENDS[w][1]];
        merge(joint, a, b);
      }
    }
    return joint;
  }

  private static void merge(int[] joint, int a, int b) {
    for (int j = 0; j < joint.length; j++) {
      joint[j] = joint[j] == Math.max(a, b) ? Math.min(a, b) : joint[j];
    }
  }

  /** Sound pieces only: a sound bulb is lit if and only if its ends differ. */
  private static boolean agrees(Set<Integer> sound) {
    int[] joint = joined(sound);
    for (int bulb = 0; bulb < 3; bulb++) {
      if (sound.contains(FIRST_BULB + bulb) && !LIT[bulb]) {
        int[] ends = ENDS[FIRST_BULB + bulb];
        merge(joint, joint[ends[0]], joint[ends[1]]);
      }
    }
    boolean agrees = !sound.contains(BATTERY) || joint[0] != joint[1];
    for (int bulb = 0; bulb < 3; bulb++) {
      int[] ends = ENDS[FIRST_BULB + bulb];
      boolean must = sound.contains(FIRST_BULB + bulb) && LIT[bulb];
      agrees &= !must || joint[ends[0]] != joint[ends[1]];
    }
    return agrees;
  }

  /**
   * With failures: a broken wire is open, a broken bulb never lit, a dead battery gives nothing.
   */
  private static boolean explains(List<Integer> modes) {
    Set<Integer> sound =
        IntStream.range(0, modes.size())
            .filter(p -> modes.get(p) == 0)
            .boxed()
            .collect(Collectors.toSet());
    int[] joint = joined(sound);
    boolean explains = true;
    for (int bulb = 0; bulb < 3; bulb++) {
      int[] ends = ENDS[FIRST_BULB + bulb];
      boolean supplied =
          sound.contains(BATTERY) && joint[ends[0]] == joint[0] && joint[ends[1]] == joint[1];
      explains &= (supplied && sound.contains(FIRST_BULB + bulb)) == LIT[bulb];
    }
    return explains;
  }

  @Test
  void without_models_of_failure_the_published_number_of_diagnoses_is_minimal() {
    Diagnoses all = Diagnoses.of(NAMES.size(), StrussDresslerTest::agrees);
    assertEquals(PlanningRows.value("bulb.weak"), all.diagnoses().size(), 0);
    String bySize =
        all.diagnoses().stream()
            .collect(Collectors.groupingBy(Set::size, Collectors.counting()))
            .entrySet()
            .stream()
            .sorted(Map.Entry.comparingByKey())
            .map(e -> e.getKey() + ":" + e.getValue())
            .collect(Collectors.joining(" "));
    assertEquals(PlanningRows.text("bulb.weak.bysize"), bySize);
  }

  @Test
  void minimal_conflicts_are_those_named_beside_the_published_number() {
    Set<Set<String>> named =
        Arrays.stream(
                PlanningRows.row("bulb.weak.bysize")
                    .get("note")
                    .replace("minimal conflicts ", "")
                    .split(" / "))
            .map(c -> Set.of(c.trim().split(" ")))
            .collect(Collectors.toSet());
    Set<Set<String>> found =
        Diagnoses.of(NAMES.size(), StrussDresslerTest::agrees).conflicts().stream()
            .map(c -> c.stream().map(NAMES::get).collect(Collectors.toSet()))
            .collect(Collectors.toSet());
    assertEquals(named, found);
  }

  @Test
  void with_models_of_failure_two_broken_bulbs_are_the_only_explanation() {
    Candidates all =
        Candidates.of(
            Collections.nCopies(NAMES.size(), List.of(0.99, 0.01)), m -> explains(m) ? 1 : 0);
    assertEquals(PlanningRows.value("bulb.strong.n"), all.all().size(), 0);
    assertEquals(
        PlanningRows.text("bulb.strong"),
        all.all().get(0).failed().stream().map(NAMES::get).collect(Collectors.joining("+")));
  }
}
