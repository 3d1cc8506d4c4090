package loopwright.published;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import loopwright.diagnosis.plan.Costs;
import loopwright.diagnosis.plan.Outcomes;
import loopwright.diagnosis.plan.PlanProblem;
import loopwright.diagnosis.plan.WorkCosts;

/** Rows of the table of published planning results, and the searches that they state. */
final class PlanningRows {

  private static final List<Map<String, String>> ROWS = Csv.rows("/published/planning.csv");

  private PlanningRows() {}

  static List<Map<String, String>> startingWith(String prefix) {
    return ROWS.stream().filter(r -> r.get("id").startsWith(prefix)).toList();
  }

  static Map<String, String> row(String id) {
    return ROWS.stream()
        .filter(r -> r.get("id").equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no row " + id));
  }

  static String text(String id) {
    return row(id).get("value");
  }

  static double value(String id) {
    return Double.parseDouble(text(id));
  }

  static double tolerance(String id) {
    return Double.parseDouble(row(id).get("tolerance"));
  }

  /**
   * The loop that a row's input states: segments in series, exactly one open, check k (from 0)
   * between segments k and k + 1 telling on which side of it; w the weights, c the costs, g the
   * set-up each check needs, s what a change of it costs, g0 the set-up at the start.
   */
  static PlanProblem loop(String input) {
    Map<String, double[]> given = new LinkedHashMap<>();
    for (String part : input.split(";")) {
      String[] sides = part.split("=");
      if (sides.length == 2) {
        given.put(
            sides[0].trim(),
            Arrays.stream(sides[1].trim().split(" ")).mapToDouble(Double::parseDouble).toArray());
      }
    }
    double[] w = given.get("w");
    double[] ones = new double[w.length - 1];
    Arrays.fill(ones, 1);
    double[] c = given.getOrDefault("c", ones);
    if (!given.containsKey("g")) {
      return loop(w, Costs.fixed(c));
    }
    double[] g = given.get("g");
    double s = given.get("s")[0];
    int start = (int) given.get("g0")[0];
    int settings = 1 + Math.max(start, (int) Arrays.stream(g).max().orElseThrow());
    double[][] change = new double[settings][settings];
    for (int a = 0; a < settings; a++) {
      for (int b = 0; b < settings; b++) {
        change[a][b] = a == b ? 0 : s;
      }
    }
    List<WorkCosts.Work> work =
        IntStream.range(0, c.length)
            .mapToObj(k -> new WorkCosts.Work(c[k], (int) g[k], List.of()))
            .toList();
    return loop(w, new WorkCosts(work, change, new double[0], start));
  }

  static PlanProblem loop(double[] weights, Costs costs) {
    int n = weights.length;
    List<Outcomes> checks =
        IntStream.range(0, n - 1)
            .mapToObj(
                k -> Outcomes.classes(IntStream.range(0, n).map(i -> i <= k ? 0 : 1).toArray()))
            .toList();
    return new PlanProblem(
        weights, IntStream.range(0, n).toArray(), checks, costs, PlanProblem.End.CERTAIN);
  }
}
