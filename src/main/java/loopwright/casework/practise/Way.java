package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.List;

/**
 * A whole way through a drill, from the complaint to its end.
 *
 * @param steps what was done, in order
 * @param atEnd what was lost by ending there
 */
public record Way(List<Step> steps, List<Loss> atEnd) {
  /** Copies the lists. */
  public Way {
    steps = List.copyOf(steps);
    atEnd = List.copyOf(atEnd);
  }

  /** Working time in minutes. */
  public double minutes() {
    return steps.stream().mapToDouble(Step::minutes).sum();
  }

  /** Readings and looks. */
  public int checks() {
    return (int) steps.stream().filter(s -> s.kind() == Step.Kind.CHECK).count();
  }

  /** All that was lost. */
  public List<Loss> losses() {
    List<Loss> all = new ArrayList<>();
    steps.forEach(s -> all.addAll(s.losses()));
    all.addAll(atEnd);
    return all;
  }

  /** How often something was lost. */
  public int count(Loss loss) {
    return (int) losses().stream().filter(loss::equals).count();
  }

  /** How often something was risked. */
  public int risks() {
    return (int) losses().stream().filter(Loss::risk).count();
  }

  /** What was said beforehand of what checks tell. */
  public Tally foretold() {
    return steps.stream().map(Step::foretold).reduce(Tally.NONE, Tally::plus);
  }

  /** Greatest number of points that time can cost. Our own choice. */
  private static final double TIME_POINTS = 20;

  /**
   * The score: 100 less the points of all that was lost, less up to 20 for time beyond the best
   * way's: 20 x (1 - best minutes / own minutes). At least 0.
   */
  public int score(Way best) {
    int points = losses().stream().mapToInt(Loss::points).sum();
    double over = minutes() <= best.minutes() ? 0 : 1 - best.minutes() / minutes();
    return (int) Math.max(0, Math.round(100 - points - TIME_POINTS * over));
  }
}
