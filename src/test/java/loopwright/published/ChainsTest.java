package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.diagnosis.plan.Choice;
import loopwright.diagnosis.plan.Evaluation;
import loopwright.diagnosis.plan.Exact;
import loopwright.diagnosis.plan.Greedy;
import loopwright.diagnosis.plan.PlanProblem;
import loopwright.diagnosis.plan.PlanState;
import loopwright.diagnosis.plan.Policy;
import loopwright.diagnosis.plan.Rollout;
import loopwright.diagnosis.plan.Ties;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Chains of segments of which one is open, with weights, costs and set-up changes: the rows
 * "chain." of published/planning.csv. Their values follow from the definition and were worked out
 * by another program, in fractions, the optimum also by trying every decision tree.
 */
class ChainsTest {

  @TestFactory
  List<DynamicTest> planner_agrees_with_every_row() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : PlanningRows.startingWith("chain.")) {
      tests.add(DynamicTest.dynamicTest(row.get("id"), () -> holds(row)));
    }
    assertEquals(70, tests.size());
    return tests;
  }

  private static void holds(Map<String, String> row) {
    PlanProblem chain = PlanningRows.loop(row.get("input"));
    PlanState start = PlanState.start(chain);
    String expected = row.get("value");
    switch (row.get("quantity")) {
      case "optimal expected cost" ->
          assertMinutes(row, new Exact().minutes(chain, start).orElseThrow());
      case "optimal first probe" -> assertEquals(expected, optimalFirst(chain, start));
      case "greedy expected cost" -> assertMinutes(row, follow(chain, start, new Greedy()));
      case "greedy first probe" ->
          assertEquals(expected, "" + (1 + new Greedy().next(chain, start).getAsInt()));
      case "greedy expected cost (ties to highest k)" ->
          assertMinutes(row, follow(chain, start, new Greedy(Ties.LAST)));
      default -> throw new IllegalStateException("quantity " + row.get("quantity"));
    }
  }

  private static void assertMinutes(Map<String, String> row, double minutes) {
    assertEquals(Double.parseDouble(row.get("value")), minutes, 1e-9);
  }

  private static double follow(PlanProblem chain, PlanState start, Policy policy) {
    return Evaluation.of(chain, start, policy).minutes();
  }

  private static String optimalFirst(PlanProblem chain, PlanState start) {
    List<Choice> ranked = new Exact().rank(chain, start).orElseThrow();
    double least = ranked.get(0).expectedMinutes().orElseThrow();
    return ranked.stream()
        .filter(c -> c.expectedMinutes().orElseThrow() < least + 1e-9)
        .map(c -> c.check() + 1)
        .sorted()
        .map(String::valueOf)
        .collect(Collectors.joining(" "));
  }

  @Test
  void looking_ahead_earns_its_place_where_greedy_loses() {
    for (String id : List.of("chain.a2", "chain.b", "chain.r1", "chain.r2s", "chain.r3s")) {
      PlanProblem chain = PlanningRows.loop(PlanningRows.row(id + ".opt").get("input"));
      double rollout = follow(chain, PlanState.start(chain), new Rollout());
      assertEquals(PlanningRows.value(id + ".opt"), rollout, 1e-9, id);
      assertTrue(rollout < PlanningRows.value(id + ".greedy") - 0.1, id);
    }
  }

  @Test
  void rollout_of_the_bare_greedy_plan_finds_the_two_chains_that_are_known_for_it() {
    Policy bare = new Rollout(Rollout.Effort.WHOLE);
    for (String id : List.of("chain.a2", "chain.b")) {
      PlanProblem chain = PlanningRows.loop(PlanningRows.row(id + ".opt").get("input"));
      double minutes = follow(chain, PlanState.start(chain), bare);
      assertEquals(PlanningRows.value(id + ".opt"), minutes, 1e-9, id);
    }
  }
}
