package loopwright.published;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.diagnosis.plan.RepairOrder;
import org.junit.jupiter.api.Test;

/**
 * Repair order by chance over cost: the rows "pc." of published/planning.csv, an exercise with
 * three causes and four actions, solved as Heckerman, Breese and Rommelse (Commun. ACM 38, 1995)
 * do.
 */
class RepairOrderTest {
  private final RepairOrder order =
      new RepairOrder(
          List.of(0.8, 0.15, 0.05),
          List.of(
              new RepairOrder.Action(1, List.of(1.0, 0.0, 0.0)),
              new RepairOrder.Action(2, List.of(0.0, 0.95, 0.0)),
              new RepairOrder.Action(25, List.of(0.99, 0.99, 0.0)),
              new RepairOrder.Action(500, List.of(1.0, 1.0, 1.0))));

  private static String text(List<Integer> actions) {
    return actions.stream().map(a -> "" + (a + 1)).collect(Collectors.joining("-"));
  }

  @Test
  void the_four_cheapest_orders_and_their_costs_are_the_published_ones() {
    List<List<Integer>> all = order.allByCost();
    for (int rank = 1; rank <= 4; rank++) {
      List<Integer> actions = all.get(rank - 1);
      assertEquals(PlanningRows.text("pc." + rank + ".seq"), text(actions));
      assertEquals(PlanningRows.value("pc." + rank + ".cost"), order.expectedCost(actions), 1e-9);
    }
  }

  @Test
  void efficiency_gives_the_published_order() {
    for (int a = 1; a <= 4; a++) {
      assertEquals(PlanningRows.value("pc.eff." + a), order.efficiency(a - 1), 1e-9);
    }
    assertEquals(PlanningRows.text("pc.order"), text(order.byEfficiency()));
  }

  @Test
  void swapping_pays_where_the_wasted_swap_costs_less_than_the_test() {
    // Swap at 5 min, likely by 0.9: 0.5 min wasted on average.
    assertTrue(RepairOrder.swapRatherThanTest(0.9, 5, 0.6));
    assertFalse(RepairOrder.swapRatherThanTest(0.9, 5, 0.4));
  }

  @Test
  void impossible_actions_are_refused_with_a_reason() {
    assertThrows(IllegalArgumentException.class, () -> new RepairOrder.Action(0, List.of(1.0)));
    assertThrows(IllegalArgumentException.class, () -> new RepairOrder.Action(1, List.of(1.5)));
    List<RepairOrder.Action> nine = Collections.nCopies(9, new RepairOrder.Action(1, List.of(0.5)));
    assertThrows(
        IllegalStateException.class, () -> new RepairOrder(List.of(1.0), nine).allByCost());
  }
}
