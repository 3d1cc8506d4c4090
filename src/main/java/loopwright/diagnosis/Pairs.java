package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import loopwright.knowledge.Context;

/**
 * Two failures at once. Of all pairs of suspects only those are solved that may explain the
 * readings at all: a reading that one of the two explains is taken as explained for this choice.
 * What was solved is kept; which pairs are weighed follows from the readings alone.
 */
final class Pairs {

  /** Belief in what no table lists from which single failures no longer explain the readings. */
  private static final double UNEXPLAINED = 0.02;

  /** Chance of a slip from which two failures are weighed against it. */
  private static final double DOUBTFUL = 0.3;

  /** Most pairs that are solved after one reading. */
  private static final int MOST = 40;

  /** Most pairs of cells of the same two resistance ranges among them. */
  private static final int MOST_CELLS = 4;

  /** Most pairs that are solved in order to find these: some don't cause the complaint. */
  private static final int MOST_TRIED = 100;

  /** Pairs that the choice is made from. */
  private static final int POOL = 1000;

  /** Share of the best single explanation below which a pair isn't worth solving. */
  private static final double HOPELESS = Math.log(1e-5);

  /** Solved pairs that are kept; more are forgotten and solved anew when wanted. */
  private static final int KEPT = 240;

  /** Least chance with which a pair must cause the complaint to be weighed. */
  private static final double CAUSES = 0.02;

  private final Workbench bench;
  private final Likelihood likelihood;
  private final ToDoubleFunction<Hypothesis> causes;
  private final boolean always;
  private final Map<Hypothesis, Map<Hypothesis, Solved>> solved = new IdentityHashMap<>();
  private int kept;

  /**
   * A pair that was solved.
   *
   * @param hypothesis the pair
   * @param weight its chance before any reading, the complaint counted
   */
  record Solved(Hypothesis hypothesis, double weight) {}

  private record Candidate(Hypothesis one, Hypothesis other, double score) {}

  private static final Comparator<Candidate> BEST_FIRST =
      Comparator.comparingDouble(Candidate::score)
          .reversed()
          .thenComparing(Candidate::one, Hypothesis.ORDER)
          .thenComparing(Candidate::other, Hypothesis.ORDER);

  /**
   * For one complaint.
   *
   * @param causes chance that a hypothesis causes the complaint
   */
  Pairs(
      Workbench bench,
      Likelihood likelihood,
      ToDoubleFunction<Hypothesis> causes,
      Context context) {
    this.bench = bench;
    this.likelihood = likelihood;
    this.causes = causes;
    // Where nothing has worked yet, nothing says that only one thing is wrong.
    this.always = context == Context.FRESH_BUILD;
  }

  /** Whether two failures at once are to be weighed, by what single ones leave unexplained. */
  boolean wanted(Belief singles, List<Reading> readings) {
    return !readings.isEmpty()
        && (always
            || singles.unlisted() > UNEXPLAINED
            || singles.odd().values().stream().anyMatch(chance -> chance > DOUBTFUL));
  }

  /** Pairs worth weighing, best first. */
  List<Solved> of(List<Hypothesis> inPlay, List<Reading> readings) {
    List<Hypothesis> singles = inPlay.stream().filter(h -> !h.failures().isEmpty()).toList();
    List<Solved> found = new ArrayList<>();
    Map<SuspectId, Map<SuspectId, Integer>> cells = new HashMap<>();
    int tried = 0;
    for (Candidate c : pool(singles, likelihood.alone(singles, readings))) {
      if (found.size() == MOST || tried == MOST_TRIED) {
        break;
      }
      int same =
          cells
              .computeIfAbsent(c.one().suspect(), k -> new HashMap<>())
              .merge(c.other().suspect(), 1, Integer::sum);
      if (same <= MOST_CELLS) {
        tried++;
        Solved pair = solved(c);
        if (pair.weight() > 0) {
          found.add(pair);
        }
      }
    }
    return found;
  }

  /** The pairs that look best by what each of the two alone would explain, best first. */
  private static List<Candidate> pool(List<Hypothesis> singles, double[][] fits) {
    int n = singles.size();
    double[] logPrior = new double[n];
    double best = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      logPrior[i] = Math.log(singles.get(i).prior());
      double alone = logPrior[i];
      for (double fit : fits[i]) {
        alone += fit;
      }
      best = Math.max(best, alone);
    }
    PriorityQueue<Candidate> pool = new PriorityQueue<>(BEST_FIRST.reversed());
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (singles.get(i).part().equals(singles.get(j).part())) {
          continue;
        }
        double score = logPrior[i] + logPrior[j];
        for (int r = 0; r < fits[i].length; r++) {
          score += Math.max(fits[i][r], fits[j][r]);
        }
        if (score < best + HOPELESS || pool.size() == POOL && score < pool.peek().score()) {
          continue;
        }
        pool.add(new Candidate(singles.get(i), singles.get(j), score));
        if (pool.size() > POOL) {
          pool.remove();
        }
      }
    }
    List<Candidate> sorted = new ArrayList<>(pool);
    sorted.sort(BEST_FIRST);
    return sorted;
  }

  private Solved solved(Candidate c) {
    Map<Hypothesis, Solved> others = solved.computeIfAbsent(c.one(), k -> new IdentityHashMap<>());
    Solved known = others.get(c.other());
    if (known == null) {
      Hypothesis pair = bench.pair(c.one(), c.other());
      double chance = causes.applyAsDouble(pair);
      known = new Solved(pair, chance < CAUSES ? 0 : pair.prior() * chance);
      others.put(c.other(), known);
      kept++;
    }
    return known;
  }

  /** Whether so many are kept that it is time to {@link #forget}. */
  boolean many() {
    return kept > KEPT;
  }

  /** Forgets all pairs but these. */
  void forget(Set<Hypothesis> but) {
    solved.values().forEach(m -> m.values().removeIf(s -> !but.contains(s.hypothesis())));
    kept = solved.values().stream().mapToInt(Map::size).sum();
  }

  /** The pairs alone. */
  static Set<Hypothesis> hypotheses(List<Solved> pairs) {
    Set<Hypothesis> all = Collections.newSetFromMap(new IdentityHashMap<>());
    pairs.forEach(p -> all.add(p.hypothesis()));
    return all;
  }
}
