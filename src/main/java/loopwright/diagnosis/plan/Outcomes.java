package loopwright.diagnosis.plan;

import java.util.Arrays;

/**
 * What one check may show: for each hypothesis the chances of its outcomes, which are numbered from
 * 0. Only chances that matter are kept.
 */
public final class Outcomes {

  /** A chance below this is left out, and the others of its hypothesis make up for it. */
  private static final double LEFT_OUT = 1e-6;

  private final int count;
  private final int[] start;
  private final int[] outcome;
  private final double[] chance;

  private Outcomes(int count, int[] start, int[] outcome, double[] chance) {
    this.count = count;
    this.start = start;
    this.outcome = outcome;
    this.chance = chance;
  }

  /** A check that shows one sure outcome under each hypothesis. */
  public static Outcomes classes(int... outcomeOf) {
    int[] start = new int[outcomeOf.length + 1];
    double[] chance = new double[outcomeOf.length];
    Arrays.fill(chance, 1);
    int count = 0;
    for (int h = 0; h < outcomeOf.length; h++) {
      if (outcomeOf[h] < 0) {
        throw new IllegalArgumentException("hypothesis " + h + " has outcome " + outcomeOf[h]);
      }
      start[h + 1] = h + 1;
      count = Math.max(count, outcomeOf[h] + 1);
    }
    return new Outcomes(count, start, outcomeOf.clone(), chance);
  }

  /**
   * A check with chances.
   *
   * @param chances for each hypothesis the chance of each outcome; each row sums to 1
   * @throws IllegalArgumentException if a row has another sum, a negative chance, or another length
   */
  public static Outcomes chances(double[][] chances) {
    int n = chances.length;
    int count = n == 0 ? 0 : chances[0].length;
    int[] start = new int[n + 1];
    int[] outcome = new int[n * count];
    double[] chance = new double[n * count];
    int used = 0;
    for (int h = 0; h < n; h++) {
      if (chances[h].length != count) {
        throw new IllegalArgumentException(
            "hypothesis " + h + " has " + chances[h].length + " outcomes, others " + count);
      }
      double sum = 0;
      double kept = 0;
      for (double p : chances[h]) {
        if (!(p >= 0)) {
          throw new IllegalArgumentException("hypothesis " + h + " has chance " + p);
        }
        sum += p;
        kept += p >= LEFT_OUT ? p : 0;
      }
      if (Math.abs(sum - 1) > 1e-6) {
        throw new IllegalArgumentException(
            "outcomes of hypothesis " + h + " sum to " + sum + "; must be 1");
      }
      for (int o = 0; o < count; o++) {
        if (chances[h][o] >= LEFT_OUT) {
          outcome[used] = o;
          chance[used++] = chances[h][o] / kept;
        }
      }
      start[h + 1] = used;
    }
    return new Outcomes(count, start, Arrays.copyOf(outcome, used), Arrays.copyOf(chance, used));
  }

  /** Number of outcomes. */
  public int count() {
    return count;
  }

  /** Number of hypotheses. */
  public int hypotheses() {
    return start.length - 1;
  }

  /** Whether every hypothesis has one sure outcome. */
  public boolean sure() {
    return outcome.length == start.length - 1;
  }

  /** Chance of an outcome under a hypothesis. */
  public double chance(int hypothesis, int of) {
    for (int k = start[hypothesis]; k < start[hypothesis + 1]; k++) {
      if (outcome[k] == of) {
        return chance[k];
      }
    }
    return 0;
  }

  /** Position of the first kept outcome of a hypothesis. */
  int from(int hypothesis) {
    return start[hypothesis];
  }

  /** Position after the last kept outcome of a hypothesis. */
  int to(int hypothesis) {
    return start[hypothesis + 1];
  }

  /** The outcome at a position. */
  int outcomeAt(int position) {
    return outcome[position];
  }

  /** Its chance. */
  double chanceAt(int position) {
    return chance[position];
  }

  /** Whether two hypotheses have the very same chances. */
  boolean same(int a, int b) {
    return Arrays.equals(outcome, start[a], start[a + 1], outcome, start[b], start[b + 1])
        && Arrays.equals(chance, start[a], start[a + 1], chance, start[b], start[b + 1]);
  }

  /** A number that is the same where {@link #same} holds. */
  int hash(int h) {
    int hash = 1;
    for (int k = start[h]; k < start[h + 1]; k++) {
      hash = 31 * (31 * hash + outcome[k]) + Double.hashCode(chance[k]);
    }
    return hash;
  }

  /**
   * How far the check tells two hypotheses apart: the total variation between their outcomes, from
   * 0 (not at all) to 1 (surely).
   */
  public double apart(int a, int b) {
    // Outcomes of a hypothesis are in rising order unless they are sure ones, of which there is
    // one.
    double common = 0;
    int i = start[a];
    int j = start[b];
    while (i < start[a + 1] && j < start[b + 1]) {
      if (outcome[i] == outcome[j]) {
        common += Math.min(chance[i++], chance[j++]);
      } else if (outcome[i] < outcome[j]) {
        i++;
      } else {
        j++;
      }
    }
    return Math.max(0, 1 - common);
  }

  /** The same check for some of the hypotheses only, in this order. */
  Outcomes only(int[] hypotheses) {
    int size = 0;
    for (int h : hypotheses) {
      size += start[h + 1] - start[h];
    }
    int[] s = new int[hypotheses.length + 1];
    int[] o = new int[size];
    double[] c = new double[size];
    int used = 0;
    for (int i = 0; i < hypotheses.length; i++) {
      int h = hypotheses[i];
      int length = start[h + 1] - start[h];
      System.arraycopy(outcome, start[h], o, used, length);
      System.arraycopy(chance, start[h], c, used, length);
      used += length;
      s[i + 1] = used;
    }
    return new Outcomes(count, s, o, c);
  }
}
