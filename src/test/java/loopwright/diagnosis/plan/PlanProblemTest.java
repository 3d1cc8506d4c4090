package loopwright.diagnosis.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a search is, how it goes on, and when it has ended. */
class PlanProblemTest {

  private static PlanProblem problem(
      double[] chances, int[] pieces, PlanProblem.End end, Outcomes... checks) {
    double[] minutes = new double[checks.length];
    Arrays.fill(minutes, 1);
    return new PlanProblem(chances, pieces, List.of(checks), Costs.fixed(minutes), end);
  }

  @Test
  void pieces_that_fail_alike_in_every_way_end_as_one_group() {
    // Open and bad contact of pieces 0 and 1 look alike; piece 2 stands apart.
    PlanProblem p =
        problem(
            new double[] {3, 1, 2, 5, 4},
            new int[] {0, 0, 1, 1, 2},
            PlanProblem.End.CERTAIN,
            Outcomes.classes(0, 1, 0, 1, 2));
    PlanState start = PlanState.start(p);
    assertEquals(List.of(List.of(1, 0), List.of(2)), new Groups(p, start).all());
    assertFalse(Groups.ended(p, start));
    for (PlanState.Branch b : start.split(p, 0)) {
      assertTrue(Groups.ended(p, b.state()));
    }
  }

  @Test
  void what_only_tells_open_from_bad_contact_within_a_group_is_worth_nothing() {
    PlanProblem p =
        problem(
            new double[] {3, 1, 1, 3, 1},
            new int[] {0, 0, 1, 1, 2},
            PlanProblem.End.CERTAIN,
            Outcomes.classes(0, 1, 0, 1, 0),
            Outcomes.classes(0, 0, 0, 0, 1));
    PlanState start = PlanState.start(p);
    assertEquals(1, new Greedy().next(p, start).getAsInt());
    assertEquals(1, new Exact().minutes(p, start).orElseThrow(), 1e-12);
  }

  @Test
  void a_group_needs_each_piece_alike_to_every_other_not_only_to_a_neighbour() {
    // Each neighbour differs by 0.2, the ends by 0.4; 0.3 counts as told apart.
    PlanProblem p =
        problem(
            new double[] {1, 1, 1},
            new int[] {0, 1, 2},
            new PlanProblem.End(0.3, 0.99),
            Outcomes.chances(new double[][] {{0.3, 0.7}, {0.5, 0.5}, {0.7, 0.3}}));
    assertTrue(p.alike(0, 1));
    assertTrue(p.alike(1, 2));
    assertFalse(p.alike(0, 2));
    assertEquals(2, new Groups(p, PlanState.start(p)).all().size());
    assertFalse(Groups.ended(p, PlanState.start(p)));
  }

  @Test
  void one_piece_that_holds_enough_belief_ends_the_search() {
    PlanProblem p =
        problem(
            new double[] {0.995, 0.005},
            new int[] {7, 3},
            new PlanProblem.End(0.05, 0.99),
            Outcomes.classes(0, 1));
    assertArrayEquals(new int[] {7}, new Groups(p, PlanState.start(p)).answer());
    assertTrue(new Planning().rank(p, PlanState.start(p)).isEmpty());
  }

  @Test
  void belief_after_an_outcome_follows_bayes() {
    PlanProblem p =
        problem(
            new double[] {0.5, 0.5},
            new int[] {0, 1},
            PlanProblem.End.CERTAIN,
            Outcomes.chances(new double[][] {{0.9, 0.1}, {0.3, 0.7}}));
    PlanState.Branch first = PlanState.start(p).split(p, 0).get(0);
    assertEquals(0.6, first.chance(), 1e-12);
    assertEquals(0.75, first.state().chance(0), 1e-12);
    assertTrue(first.state().made(0));
  }

  @Test
  void a_check_is_never_proposed_twice() {
    PlanProblem p =
        problem(
            new double[] {0.5, 0.5},
            new int[] {0, 1},
            PlanProblem.End.CERTAIN,
            Outcomes.chances(new double[][] {{0.9, 0.1}, {0.3, 0.7}}));
    PlanState after = PlanState.start(p).split(p, 0).get(0).state();
    assertTrue(new Greedy().next(p, after).isEmpty());
    assertTrue(new Rollout().rank(p, after).isEmpty());
    assertEquals(1, Evaluation.of(p, PlanState.start(p), new Greedy()).open(), 1e-12);
  }

  @Test
  void access_is_paid_once_and_a_change_of_setting_each_time() {
    WorkCosts costs =
        new WorkCosts(
            List.of(new WorkCosts.Work(1, 0, List.of(0)), new WorkCosts.Work(1, 1, List.of(0, 1))),
            new double[][] {{0, 2}, {3, 0}},
            new double[] {10, 20},
            0);
    Setup start = costs.start();
    assertEquals(11, costs.minutes(0, start));
    Setup opened = costs.after(0, start);
    assertEquals(1, costs.minutes(0, opened));
    assertEquals(23, costs.minutes(1, opened));
    assertEquals(4, costs.minutes(0, costs.after(1, opened)));
    assertEquals(costs.after(1, opened), costs.after(1, costs.after(1, start)));
  }

  @Test
  void minutes_may_depend_on_the_check_before() {
    LastCheckCosts costs =
        new LastCheckCosts(new double[] {5, 7}, (check, before) -> 1 + check + 10 * before);
    assertEquals(7, costs.minutes(1, costs.start()));
    assertEquals(11, costs.minutes(0, costs.after(1, costs.start())));
    assertEquals(2, costs.minutes(1, costs.after(0, costs.start())));
    refused("check 1 takes 0.0 min", () -> new LastCheckCosts(new double[] {1, 0}, (a, b) -> 1));
  }

  @Test
  void the_order_of_checks_follows_minutes_that_depend_on_the_check_before() {
    // Both checks are needed; first 0 then 1 costs 1 + 1, the other way round 1 + 9.
    PlanProblem p =
        new PlanProblem(
            new double[] {1, 1, 1, 1},
            new int[] {0, 1, 2, 3},
            List.of(Outcomes.classes(0, 0, 1, 1), Outcomes.classes(0, 1, 0, 1)),
            new LastCheckCosts(new double[] {1, 1}, (check, before) -> before == 0 ? 1 : 9),
            PlanProblem.End.CERTAIN);
    PlanState start = PlanState.start(p);
    assertEquals(2, new Exact().minutes(p, start).orElseThrow(), 1e-12);
    List<Choice> ranked = new Rollout().rank(p, start);
    assertEquals(0, ranked.get(0).check());
    assertEquals(2, ranked.get(0).expectedMinutes().orElseThrow(), 1e-12);
    assertEquals(10, ranked.get(1).expectedMinutes().orElseThrow(), 1e-12);
  }

  @Test
  void fewer_hypotheses_leave_the_same_plan() {
    // The first two are one piece alike in all checks; the last is too unlikely to plan for.
    PlanProblem p =
        problem(
            new double[] {0.2, 0.3, 0.5, 1e-7},
            new int[] {0, 0, 1, 2},
            PlanProblem.End.CERTAIN,
            Outcomes.classes(0, 0, 1, 2));
    PlanProblem fewer = p.compact(1e-5);
    assertEquals(2, fewer.hypotheses());
    assertEquals(0.5, fewer.chance(0), 1e-6);
    assertEquals(1, fewer.piece(1));
  }

  @Test
  void exact_search_refuses_what_is_too_large_or_not_sure() {
    PlanProblem unsure =
        problem(
            new double[] {1, 1},
            new int[] {0, 1},
            PlanProblem.End.CERTAIN,
            Outcomes.chances(new double[][] {{0.9, 0.1}, {0.3, 0.7}}));
    assertEquals(Optional.empty(), new Exact().rank(unsure, PlanState.start(unsure)));
    PlanProblem loop = MadeUpCircuits.of(MadeUpCircuits.Shape.PLAIN_LOOP, 10, 1).problem();
    assertTrue(new Exact(3).minutes(loop, PlanState.start(loop)).isEmpty());
    assertFalse(new Planning().rank(loop, PlanState.start(loop)).isEmpty());
  }

  @Test
  void wrong_input_is_refused_with_a_reason() {
    refused(
        "outcomes of hypothesis 1 sum to 0.9",
        () -> Outcomes.chances(new double[][] {{0.5, 0.5}, {0.5, 0.4}}));
    refused("hypothesis 0 has outcome -1", () -> Outcomes.classes(-1));
    refused(
        "check 0 has outcomes for 1 hypotheses; there are 2",
        () ->
            problem(
                new double[] {1, 1},
                new int[] {0, 1},
                PlanProblem.End.CERTAIN,
                Outcomes.classes(0)));
    refused(
        "no hypothesis has a chance",
        () -> problem(new double[] {0}, new int[] {0}, PlanProblem.End.CERTAIN));
    refused(
        "hypothesis 0 has chance NaN",
        () -> problem(new double[] {Double.NaN}, new int[] {0}, PlanProblem.End.CERTAIN));
    refused("sure is 0.5", () -> new PlanProblem.End(0, 0.5));
    refused("apart is 1.0", () -> new PlanProblem.End(1, 0.9));
    refused("candidates is 0", () -> new Rollout.Effort(0, 1, 0, 1, 0));
    refused("a check takes 0.0 min", () -> new WorkCosts.Work(0, 0, List.of()));
    refused(
        "check 0 needs place 4",
        () ->
            new WorkCosts(
                List.of(new WorkCosts.Work(1, 0, List.of(4))),
                new double[][] {{0}},
                new double[2],
                0));
  }

  private static void refused(String reason, Runnable wrong) {
    IllegalArgumentException e = assertThrows(IllegalArgumentException.class, wrong::run);
    assertTrue(e.getMessage().contains(reason), e.getMessage());
  }
}
