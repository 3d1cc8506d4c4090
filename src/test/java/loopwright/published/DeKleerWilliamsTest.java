package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loopwright.diagnosis.belief.Candidates;
import loopwright.diagnosis.belief.Diagnoses;
import loopwright.diagnosis.plan.Costs;
import loopwright.diagnosis.plan.Greedy;
import loopwright.diagnosis.plan.Information;
import loopwright.diagnosis.plan.Outcomes;
import loopwright.diagnosis.plan.PlanProblem;
import loopwright.diagnosis.plan.PlanState;
import org.junit.jupiter.api.Test;

/**
 * Three multipliers and two adders, and a cascade of four inverters (de Kleer and Williams,
 * Diagnosing multiple faults, Artificial Intelligence 32, 1987), and their behavioural modes (IJCAI
 * 1989): the rows "poly.", "casc", "sher." of published/planning.csv. What the devices do is
 * modelled here; conflicts, diagnoses, chances and the next point are worked out by the program.
 */
class DeKleerWilliamsTest {

  // ---- three multipliers, two adders ------------------------------------------------------

  private static final List<String> NAMES = List.of("A1", "A2", "M1", "M2", "M3");
  private static final int A1 = 0;
  private static final int A2 = 1;
  private static final int M1 = 2;
  private static final int M2 = 3;
  private static final int M3 = 4;

  /**
   * Values of X, Y, Z that follow if these pieces are sound, with A=3, B=2, C=2, D=3, E=3, F=10,
   * G=12; empty if there is a contradiction. Passing values on until nothing new follows decides
   * it, since each of the two sums holds one unknown more than it must.
   */
  private static Optional<Map<String, Double>> values(Set<Integer> sound) {
    Map<String, Double> v = new HashMap<>();
    boolean agrees = true;
    agrees &= !sound.contains(M1) || put(v, "X", 3 * 2);
    agrees &= !sound.contains(M2) || put(v, "Y", 2 * 3);
    agrees &= !sound.contains(M3) || put(v, "Z", 2 * 3);
    for (int pass = 0; pass < 3; pass++) {
      agrees &= !sound.contains(A1) || sum(v, "X", "Y", 10);
      agrees &= !sound.contains(A2) || sum(v, "Y", "Z", 12);
    }
    return agrees ? Optional.of(v) : Optional.empty();
  }

  private static boolean sum(Map<String, Double> v, String a, String b, double total) {
    boolean agrees = true;
    if (v.containsKey(a)) {
      agrees = put(v, b, total - v.get(a));
    }
    if (v.containsKey(b)) {
      agrees &= put(v, a, total - v.get(b));
    }
    return agrees;
  }

  private static boolean put(Map<String, Double> v, String name, double value) {
    Double before = v.putIfAbsent(name, value);
    return before == null || before == value;
  }

  private static String text(List<? extends Set<Integer>> sets) {
    return sets.stream()
        .map(s -> s.stream().map(NAMES::get).sorted().collect(Collectors.joining("+")))
        .sorted()
        .collect(Collectors.joining(";"));
  }

  private final Diagnoses polybox = Diagnoses.of(5, s -> values(s).isPresent());

  @Test
  void conflicts_and_minimal_diagnoses_are_the_published_ones() {
    assertEquals(PlanningRows.text("poly.conflicts"), text(polybox.conflicts()));
    assertEquals(PlanningRows.text("poly.diagnoses"), text(polybox.diagnoses()));
  }

  @Test
  void twenty_seven_of_thirty_two_sets_of_failed_pieces_explain_the_outputs() {
    Candidates all =
        Candidates.of(
            Collections.nCopies(5, List.of(0.99, 0.01)),
            modes -> values(sound(modes)).isPresent() ? 1 : 0);
    assertEquals(PlanningRows.value("poly.count"), all.all().size(), 0);
  }

  private static Set<Integer> sound(List<Integer> modes) {
    return IntStream.range(0, modes.size())
        .filter(p -> modes.get(p) == 0)
        .boxed()
        .collect(Collectors.toSet());
  }

  @Test
  void chances_of_the_minimal_diagnoses_and_the_best_next_point_are_the_published_ones() {
    Candidates four = Candidates.among(polybox.diagnoses(), Collections.nCopies(5, 0.01));
    for (Candidates.Candidate c : four.all()) {
      String id = "poly.post." + text(List.of(Set.copyOf(c.failed())));
      assertEquals(PlanningRows.value(id), c.chance(), 1e-9, id);
    }
    List<String> points = List.of("X", "Y", "Z");
    List<Outcomes> checks =
        points.stream()
            .map(
                point ->
                    Outcomes.classes(
                        four.all().stream()
                            .mapToInt(
                                c -> values(sound(c.modes())).orElseThrow().get(point).intValue())
                            .toArray()))
            .toList();
    nextPoint(four, checks, points, "poly.");
  }

  /** Entropy before and after each point, and the point to be taken. */
  private static void nextPoint(
      Candidates candidates, List<Outcomes> checks, List<String> points, String prefix) {
    double[] minutes = new double[checks.size()];
    Arrays.fill(minutes, 1);
    int n = candidates.all().size();
    PlanProblem problem =
        new PlanProblem(
            candidates.all().stream().mapToDouble(Candidates.Candidate::chance).toArray(),
            IntStream.range(0, n).toArray(),
            checks,
            Costs.fixed(minutes),
            PlanProblem.End.CERTAIN);
    PlanState start = PlanState.start(problem);
    Information information = Information.aboutHypotheses(problem, start);
    assertEquals(PlanningRows.value(prefix + "H"), information.entropy(), 1e-9);
    for (int c = 0; c < points.size(); c++) {
      String id = prefix + "He." + points.get(c);
      assertEquals(
          PlanningRows.value(id), information.entropyAfter(c), PlanningRows.tolerance(id), id);
    }
    if (!PlanningRows.startingWith(prefix + "best").isEmpty()) {
      int next = new Greedy().next(problem, start).getAsInt();
      assertEquals(PlanningRows.text(prefix + "best"), points.get(next));
    }
  }

  // ---- chains of inverters -----------------------------------------------------------------

  /**
   * Chance of the outputs of a chain of inverters.
   *
   * @param input its input
   * @param outputs the output of each inverter
   * @param one for each inverter the chance of a 1 at its output, given its input
   */
  private static double chance(
      int input, List<Integer> outputs, List<Function<Integer, Double>> one) {
    double chance = 1;
    int in = input;
    for (int i = 0; i < outputs.size(); i++) {
      double p = one.get(i).apply(in);
      chance *= outputs.get(i) == 1 ? p : 1 - p;
      in = outputs.get(i);
    }
    return chance;
  }

  /** Chance that the output at a place has a value and the last output has another. */
  private static double chance(
      int input, List<Function<Integer, Double>> one, Map<Integer, Integer> seen) {
    double sum = 0;
    for (int bits = 0; bits < 1 << one.size(); bits++) {
      int all = bits;
      List<Integer> outputs = IntStream.range(0, one.size()).mapToObj(i -> all >> i & 1).toList();
      if (seen.entrySet().stream().allMatch(e -> outputs.get(e.getKey()).equals(e.getValue()))) {
        sum += chance(input, outputs, one);
      }
    }
    return sum;
  }

  private static List<Function<Integer, Double>> cascade(List<Integer> modes) {
    return modes.stream()
        .map(m -> (Function<Integer, Double>) in -> m == 0 ? 1.0 - in : 0.5)
        .toList();
  }

  private void cascade(Candidates candidates, String prefix) {
    List<Outcomes> checks = new ArrayList<>();
    for (int place = 0; place < 3; place++) {
      double[][] rows = new double[candidates.all().size()][2];
      for (int c = 0; c < rows.length; c++) {
        List<Function<Integer, Double>> one = cascade(candidates.all().get(c).modes());
        double e = chance(1, one, Map.of(3, 0));
        rows[c][0] = chance(1, one, Map.of(3, 0, place, 0)) / e;
        rows[c][1] = chance(1, one, Map.of(3, 0, place, 1)) / e;
      }
      checks.add(Outcomes.chances(rows));
    }
    nextPoint(candidates, checks, List.of("b", "c", "d"), prefix);
  }

  @Test
  void cascade_with_all_multiple_failures_gives_the_published_entropies_and_point() {
    Candidates fifteen =
        Candidates.of(
            Collections.nCopies(4, List.of(0.99, 0.01)), m -> chance(1, cascade(m), Map.of(3, 0)));
    assertEquals(15, fifteen.all().size());
    cascade(fifteen, "casc.");
    for (String point : List.of("b", "c", "d")) {
      // The same value as printed and to more places.
      assertEquals(
          PlanningRows.value("casc.He." + point + ".c"),
          PlanningRows.value("casc.He." + point),
          5e-5);
    }
  }

  @Test
  void cascade_with_single_failures_only_gives_other_entropies() {
    List<SortedSet<Integer>> singles =
        IntStream.range(0, 4).mapToObj(i -> (SortedSet<Integer>) new TreeSet<>(Set.of(i))).toList();
    cascade(Candidates.among(singles, Collections.nCopies(4, 0.01)), "casc1.");
  }

  @Test
  void behavioural_modes_give_the_published_chances() {
    List<Double> modes = List.of(0.99, 0.008, 0.001, 0.001);
    Candidates all =
        Candidates.of(
            Collections.nCopies(3, modes),
            chosen ->
                chance(
                    0,
                    chosen.stream()
                        .map(
                            m ->
                                (Function<Integer, Double>)
                                    in ->
                                        switch (m) {
                                          case 0 -> 1.0 - in;
                                          case 1 -> 1.0;
                                          case 2 -> 0.0;
                                          default -> 0.5;
                                        })
                        .toList(),
                    Map.of(2, 0)));
    assertEquals(PlanningRows.value("sher.obs"), all.observed(), 1e-9);
    assertEquals(PlanningRows.value("sher.BS1"), all.chance(List.of(0, 1, 0)), 5e-5);
    assertEquals(PlanningRows.value("sher.BS1.c"), all.chance(List.of(0, 1, 0)), 1e-9);
    assertEquals(PlanningRows.value("sher.CS0"), all.chance(List.of(0, 0, 2)), 1e-9);
    assertEquals(PlanningRows.value("sher.AS0"), all.chance(List.of(2, 0, 0)), 1e-9);
    assertEquals(PlanningRows.value("sher.AU"), all.chance(List.of(3, 0, 0)), 1e-9);
    assertEquals(PlanningRows.value("sher.BU"), all.chance(List.of(0, 3, 0)), 1e-9);
    assertEquals(PlanningRows.value("sher.CU"), all.chance(List.of(0, 0, 3)), 1e-9);
  }
}
