package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A search to be planned: one hypothesis is true, each blames one piece, and checks tell which. It
 * has ended when one piece, or one group of pieces that no check tells apart, holds the belief.
 *
 * <p>Immutable to those who use it, but remembers what it worked out: one thread at a time.
 */
public final class PlanProblem {

  /**
   * When a search has ended.
   *
   * @param apart total variation between the outcomes of two hypotheses, up to which a check is
   *     said not to tell them apart; from 0 to below 1
   * @param sure belief at which one piece or group is the answer; above 0.5, at most 1
   */
  public record End(double apart, double sure) {
    /** Every hypothesis but those of one group ruled out, and told apart means surely different. */
    public static final End CERTAIN = new End(0, 1);

    /** Checks the bounds. */
    public End {
      if (!(apart >= 0 && apart < 1)) {
        throw new IllegalArgumentException("apart is " + apart + "; must be from 0 to below 1");
      }
      if (!(sure > 0.5 && sure <= 1)) {
        throw new IllegalArgumentException("sure is " + sure + "; must be above 0.5, at most 1");
      }
    }
  }

  private final double[] chances;
  private final int[] pieces;
  private final int pieceCount;
  private final List<Outcomes> checks;
  private final Costs costs;
  private final End end;
  private final Linkage linkage;

  /**
   * States a search.
   *
   * @param chances of the hypotheses; any scale, they are made to sum to 1
   * @param pieces the piece that each hypothesis blames, numbered from 0
   * @param checks outcomes of each check
   * @param costs minutes of the checks
   * @param end when it has ended
   * @throws IllegalArgumentException if there is no hypothesis with a chance, or lengths differ
   */
  public PlanProblem(double[] chances, int[] pieces, List<Outcomes> checks, Costs costs, End end) {
    if (chances.length != pieces.length) {
      throw new IllegalArgumentException(
          chances.length + " chances, but " + pieces.length + " pieces");
    }
    double sum = 0;
    for (int h = 0; h < chances.length; h++) {
      if (!(chances[h] >= 0) || Double.isInfinite(chances[h])) {
        throw new IllegalArgumentException("hypothesis " + h + " has chance " + chances[h]);
      }
      if (pieces[h] < 0) {
        throw new IllegalArgumentException("hypothesis " + h + " blames piece " + pieces[h]);
      }
      sum += chances[h];
    }
    if (sum <= 0) {
      throw new IllegalArgumentException("no hypothesis has a chance above 0");
    }
    for (int c = 0; c < checks.size(); c++) {
      if (checks.get(c).hypotheses() != chances.length) {
        throw new IllegalArgumentException(
            "check "
                + c
                + " has outcomes for "
                + checks.get(c).hypotheses()
                + " hypotheses; there are "
                + chances.length);
      }
    }
    this.chances = chances.clone();
    for (int h = 0; h < chances.length; h++) {
      this.chances[h] /= sum;
    }
    this.pieces = pieces.clone();
    this.pieceCount = Arrays.stream(pieces).max().orElse(-1) + 1;
    this.checks = List.copyOf(checks);
    this.costs = costs;
    this.end = end;
    this.linkage = new Linkage(this.checks, end.apart());
  }

  /** Number of hypotheses. */
  public int hypotheses() {
    return chances.length;
  }

  /** Number of checks. */
  public int checks() {
    return checks.size();
  }

  /** One more than the highest number of a piece. */
  public int pieces() {
    return pieceCount;
  }

  /** Chance of a hypothesis before any check; all sum to 1. */
  public double chance(int hypothesis) {
    return chances[hypothesis];
  }

  /** The piece that a hypothesis blames. */
  public int piece(int hypothesis) {
    return pieces[hypothesis];
  }

  /** Outcomes of a check. */
  public Outcomes check(int number) {
    return checks.get(number);
  }

  /** Minutes of the checks. */
  public Costs costs() {
    return costs;
  }

  /** When the search has ended. */
  public End end() {
    return end;
  }

  /** Whether all checks show one sure outcome under each hypothesis. */
  public boolean sure() {
    return checks.stream().allMatch(Outcomes::sure);
  }

  /** Whether no check tells the two hypotheses apart. */
  public boolean alike(int a, int b) {
    return linkage.alike(a, b);
  }

  /**
   * For each hypothesis the number of the group that its piece belongs to at the start. Information
   * is counted about these groups: what tells apart only pieces that can't be told apart in the end
   * is worth nothing.
   */
  int[] labels() {
    if (linkage.labels.length == 0) {
      linkage.labels = new Groups(this, PlanState.start(this)).labels();
    }
    return linkage.labels;
  }

  /**
   * The same search with fewer hypotheses: those of one piece that no check tells apart at all
   * become one, and those below a chance are left out.
   *
   * @param least least chance that stays
   */
  public PlanProblem compact(double least) {
    Map<Integer, List<Integer>> byHash = new HashMap<>();
    List<Integer> kept = new ArrayList<>();
    double[] sum = new double[chances.length];
    for (int h = 0; h < chances.length; h++) {
      if (chances[h] <= 0) {
        continue;
      }
      int hash = pieces[h];
      for (Outcomes check : checks) {
        hash = 31 * hash + check.hash(h);
      }
      List<Integer> same = byHash.computeIfAbsent(hash, k -> new ArrayList<>());
      int twin = h;
      for (int other : same) {
        if (pieces[other] == pieces[h] && sameRows(other, h)) {
          twin = other;
          break;
        }
      }
      if (twin == h) {
        same.add(h);
        kept.add(h);
      }
      sum[twin] += chances[h];
    }
    int[] keep = kept.stream().mapToInt(Integer::intValue).filter(h -> sum[h] >= least).toArray();
    if (keep.length == 0 || keep.length == chances.length) {
      return this;
    }
    double[] fewerChances = new double[keep.length];
    int[] fewerPieces = new int[keep.length];
    for (int i = 0; i < keep.length; i++) {
      fewerChances[i] = sum[keep[i]];
      fewerPieces[i] = pieces[keep[i]];
    }
    List<Outcomes> fewer = checks.stream().map(c -> c.only(keep)).toList();
    return new PlanProblem(fewerChances, fewerPieces, fewer, costs, end);
  }

  private boolean sameRows(int a, int b) {
    for (Outcomes check : checks) {
      if (!check.same(a, b)) {
        return false;
      }
    }
    return true;
  }

  /** Which hypotheses are told apart, worked out as asked for. */
  private static final class Linkage {
    private static final byte UNKNOWN = 0;
    private static final byte TOLD_APART = 1;
    private static final byte ALIKE = 2;

    private final List<Outcomes> checks;
    private final double apart;
    private final int n;
    private final byte[] known;
    private int[] labels = {};

    Linkage(List<Outcomes> checks, double apart) {
      this.checks = checks;
      this.apart = apart;
      this.n = checks.isEmpty() ? 0 : checks.get(0).hypotheses();
      this.known = new byte[n * n];
    }

    boolean alike(int a, int b) {
      if (a == b || checks.isEmpty()) {
        return true;
      }
      int at = a < b ? a * n + b : b * n + a;
      if (known[at] == UNKNOWN) {
        known[at] = ALIKE;
        for (Outcomes check : checks) {
          if (check.apart(a, b) > apart + 1e-12) {
            known[at] = TOLD_APART;
            break;
          }
        }
      }
      return known[at] == ALIKE;
    }
  }
}
