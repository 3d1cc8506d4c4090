package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * In which order to try repairs when trying is cheaper than testing: one cause is present, each
 * action cures some causes with some chance, independently of the others given the cause, and the
 * work stops as soon as the fault is gone.
 *
 * <p>Method: order by chance over cost, as in decision-theoretic troubleshooting (Heckerman, Breese
 * and Rommelse, Commun. ACM 38, 1995).
 */
public final class RepairOrder {

  /** Most actions of which all orders are tried. */
  public static final int MOST_ACTIONS = 8;

  /** Chance of an uncured fault that counts as none: it is lost in rounding. */
  private static final double NONE = 1e-12;

  /**
   * Something that can be done.
   *
   * @param cost in minutes or money; above 0
   * @param cures chance that it cures each cause
   */
  public record Action(double cost, List<Double> cures) {
    /** Copies the list and checks the bounds. */
    public Action {
      cures = List.copyOf(cures);
      if (!(cost > 0)) {
        throw new IllegalArgumentException("an action costs " + cost + "; must be above 0");
      }
      for (double c : cures) {
        if (!(c >= 0 && c <= 1)) {
          throw new IllegalArgumentException("an action cures with chance " + c);
        }
      }
    }
  }

  private final List<Double> causes;
  private final List<Action> actions;

  /**
   * States what may be wrong and what can be done.
   *
   * @param causes chance of each cause
   * @param actions what can be done, each with a chance of cure for every cause
   */
  public RepairOrder(List<Double> causes, List<Action> actions) {
    for (Action a : actions) {
      if (a.cures().size() != causes.size()) {
        throw new IllegalArgumentException(
            "an action names " + a.cures().size() + " causes; there are " + causes.size());
      }
    }
    this.causes = List.copyOf(causes);
    this.actions = List.copyOf(actions);
  }

  /** Expected cost of the actions in this order, until one has cured the fault or all are done. */
  public double expectedCost(List<Integer> order) {
    double cost = 0;
    for (int k = 0; k < order.size(); k++) {
      cost += actions.get(order.get(k)).cost() * open(order.subList(0, k));
    }
    return cost;
  }

  /** Chance that the fault is still there after these actions. */
  public double open(List<Integer> done) {
    double open = 0;
    for (int c = 0; c < causes.size(); c++) {
      double left = causes.get(c);
      for (int a : done) {
        left *= 1 - actions.get(a).cures().get(c);
      }
      open += left;
    }
    return open;
  }

  /** Chance over cost of an action done first. */
  public double efficiency(int action) {
    return (1 - open(List.of(action)) / open(List.of())) / actions.get(action).cost();
  }

  /** All actions by falling {@link #efficiency}. */
  public List<Integer> byEfficiency() {
    return IntStream.range(0, actions.size())
        .boxed()
        .sorted(Comparator.comparingDouble(this::efficiency).reversed())
        .toList();
  }

  /**
   * Every order of different actions that surely ends with the fault gone and has no action after
   * that, the cheapest first.
   *
   * @throws IllegalStateException if there are more than {@value #MOST_ACTIONS} actions
   */
  public List<List<Integer>> allByCost() {
    if (actions.size() > MOST_ACTIONS) {
      throw new IllegalStateException(
          actions.size() + " actions; all orders are tried of at most " + MOST_ACTIONS);
    }
    List<List<Integer>> orders = new ArrayList<>();
    extend(List.of(), orders);
    orders.sort(Comparator.comparingDouble(this::expectedCost));
    return orders;
  }

  private void extend(List<Integer> done, List<List<Integer>> orders) {
    if (open(done) < NONE) {
      orders.add(done);
      return;
    }
    for (int a = 0; a < actions.size(); a++) {
      if (!done.contains(a)) {
        List<Integer> more = new ArrayList<>(done);
        more.add(a);
        extend(List.copyOf(more), orders);
      }
    }
  }

  /**
   * Whether swapping a piece at once is expected to cost less than testing it first and swapping it
   * if it is to blame. Swapping a good piece is wasted with the chance that it is good, testing
   * always costs: so it pays if swap x (1 - chance) is below test.
   *
   * @param chance that the piece is to blame
   * @param swap cost of swapping it
   * @param test cost of a test that surely tells
   */
  public static boolean swapRatherThanTest(double chance, double swap, double test) {
    return swap * (1 - chance) < test;
  }
}
