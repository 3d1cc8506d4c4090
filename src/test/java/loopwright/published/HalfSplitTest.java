package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import loopwright.diagnosis.plan.Costs;
import loopwright.diagnosis.plan.Evaluation;
import loopwright.diagnosis.plan.Exact;
import loopwright.diagnosis.plan.HalfSplit;
import loopwright.diagnosis.plan.PlanProblem;
import loopwright.diagnosis.plan.PlanState;
import loopwright.diagnosis.plan.Ties;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Half-splitting of 2 to 32 equally likely segments: the rows "half." of published/planning.csv,
 * which follow from the closed form L + 2 - 2^(L+1)/n.
 */
class HalfSplitTest {

  @ParameterizedTest
  @EnumSource(Ties.class)
  void mean_and_worst_number_of_checks_are_those_of_the_closed_form(Ties ties) {
    for (int n = 2; n <= 32; n++) {
      PlanProblem loop = even(n);
      Evaluation split = Evaluation.of(loop, PlanState.start(loop), new HalfSplit(ties));
      String id = String.format("half.%02d.", n);
      assertEquals(PlanningRows.value(id + "mean"), split.checks(), 1e-9, id);
      assertEquals(PlanningRows.value(id + "worst"), split.mostChecks(), 0, id);
      assertEquals(
          PlanningRows.value(id + "mean"),
          new Exact().minutes(loop, PlanState.start(loop)).orElseThrow(),
          1e-9,
          "no plan does better on equal chances");
    }
  }

  private static PlanProblem even(int n) {
    double[] weights = new double[n];
    Arrays.fill(weights, 1);
    double[] minutes = new double[n - 1];
    Arrays.fill(minutes, 1);
    return PlanningRows.loop(weights, Costs.fixed(minutes));
  }
}
