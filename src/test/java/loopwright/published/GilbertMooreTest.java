package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import loopwright.diagnosis.plan.Evaluation;
import loopwright.diagnosis.plan.Exact;
import loopwright.diagnosis.plan.Greedy;
import loopwright.diagnosis.plan.HalfSplit;
import loopwright.diagnosis.plan.Information;
import loopwright.diagnosis.plan.PlanProblem;
import loopwright.diagnosis.plan.PlanState;
import loopwright.diagnosis.plan.Planning;
import loopwright.diagnosis.plan.Policy;
import loopwright.diagnosis.plan.Rollout;
import loopwright.diagnosis.plan.Ties;
import loopwright.diagnosis.plan.Walking;
import org.junit.jupiter.api.Test;

/**
 * The 27 symbols of Gilbert and Moore (Variable-length binary encodings, Bell System Technical
 * Journal 38, 1959) as a loop of 27 pieces, of which one is open. Checks are volts from each joint
 * to the battery alone, so that each of them tells on which side of the joint the piece lies, and
 * nothing else: with volts across single pieces as well the least number would be lower. Values and
 * their origins in published/planning.csv.
 */
class GilbertMooreTest {
  private final PlanProblem loop =
      PlanningRows.loop(PlanningRows.row("gm.alphabetic").get("input"));
  private final PlanState start = PlanState.start(loop);

  private void follows(String id, Policy policy) {
    assertEquals(
        PlanningRows.value(id),
        Evaluation.of(loop, start, policy).minutes(),
        PlanningRows.tolerance(id),
        id);
  }

  @Test
  void entropy_is_the_published_one() {
    assertEquals(
        PlanningRows.value("gm.entropy"),
        Information.aboutGroups(loop, start).entropy(),
        PlanningRows.tolerance("gm.entropy"));
  }

  @Test
  void exact_search_finds_the_published_optimum() {
    assertEquals(
        PlanningRows.value("gm.alphabetic"),
        new Exact().minutes(loop, start).orElseThrow(),
        PlanningRows.tolerance("gm.alphabetic"));
  }

  @Test
  void what_the_live_planner_does_reaches_the_published_optimum() {
    follows("gm.alphabetic", new Planning());
  }

  @Test
  void greedy_costs_what_splitting_by_weight_costs() {
    follows("gm.greedy", new Greedy());
  }

  @Test
  void rollout_lies_between_greedy_and_the_optimum() {
    double rollout = Evaluation.of(loop, start, new Rollout()).minutes();
    assertEquals(PlanningRows.value("gm.alphabetic"), rollout, 0.02);
  }

  @Test
  void half_split_by_count_costs_what_is_published_for_both_roundings() {
    follows("gm.half.floor", new HalfSplit(Ties.FIRST));
    follows("gm.half.ceil", new HalfSplit(Ties.LAST));
  }

  @Test
  void walking_costs_what_is_published_from_either_end() {
    follows("gm.linear.source", new Walking(IntStream.range(0, 26).toArray()));
    follows("gm.linear.far", new Walking(IntStream.range(0, 26).map(k -> 25 - k).toArray()));
  }
}
