package loopwright.diagnosis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.meter.MeterSpec;

/**
 * Sorts the results of a check into few that a person tells apart at a glance: what is seen, or
 * values between round edges. Whatever can give a result is held by it.
 */
final class Sorting {

  /** Checks that the planner ranks first and that are tried with so few results. */
  private static final int TRIED = 6;

  /** Edges between values: few results fit a line each. */
  private static final int MOST_EDGES = 2;

  /** Places for an edge that are tried, the widest gaps first. */
  private static final int MOST_GAPS = 20;

  /** Volts, or share of ohms, that no meter shows: no round value need lie in so narrow a gap. */
  private static final double LEAST_GAP = 1e-6;

  /** Bits that an edge must add to be worth its line. */
  private static final double WORTH_A_LINE = 0.03;

  /** Standard deviations that count as the reach of what is expected. */
  private static final double EXPECTED = 2.5;

  /** Share of one that no bounds shut out of a result, though it isn't expected there. */
  private static final double HARDLY = 1e-3;

  /** Chance of what is seen up to which only a wrong name for something else explains it. */
  private static final double MISNAMED = Predictor.MISNAMED + 1e-9;

  private final Predictor predictor;
  private final MeterSpec meter;
  private final Clearing clearing;
  private final HealthyBands bands;
  private final Planner.Forecast quick;

  Sorting(Predictor predictor, MeterSpec meter, Clearing clearing, HealthyBands bands) {
    this.predictor = predictor;
    this.meter = meter;
    this.clearing = clearing;
    this.bands = bands;
    this.quick = new Planner(predictor, meter).quick(1);
  }

  /**
   * A result with what can give it.
   *
   * @param low least value; minus infinity where open
   * @param high end of the values; infinite where open
   * @param seen what is seen, for a look
   * @param held what can give it, with the chance of both
   */
  record Sorted(double low, double high, Optional<Seen> seen, List<Planner.Weighted> held) {
    /** The result as a reading. */
    Reading.Value value() {
      return seen.<Reading.Value>map(Reading.Value.Sight::new)
          .orElseGet(() -> new Reading.Value.Between(low, high));
    }
  }

  /** Share of each part, greatest first. */
  static Map<String, Double> shares(List<Planner.Weighted> held) {
    Map<String, Double> parts = new LinkedHashMap<>();
    held.forEach(w -> parts.merge(w.part(), w.belief(), Double::sum));
    return Planner.normalised(parts, chance(held));
  }

  private static double chance(List<Planner.Weighted> held) {
    return held.stream().mapToDouble(Planner.Weighted::belief).sum();
  }

  /** Bits that are open about the failed part, times the chance to get there. */
  static double open(List<Planner.Weighted> held) {
    double bits = 0;
    for (double share : shares(held).values()) {
      bits -= share > 0 ? share * Math.log(share) / Math.log(2) : 0;
    }
    return bits * chance(held);
  }

  private static double parted(List<Sorted> results) {
    return Planner.bits(
        results.stream()
            .filter(s -> !s.held().isEmpty())
            .map(
                s ->
                    new Findings.Outcome(
                        s.low(), s.high(), s.seen(), chance(s.held()), shares(s.held())))
            .toList());
  }

  /**
   * The proposal that parts most for its minutes with so few results; empty if none is worth it.
   */
  Optional<Findings.Proposal> best(List<Findings.Proposal> ranked, List<Planner.Weighted> held) {
    Findings.Proposal best = null;
    double most = 0;
    List<Findings.Proposal> few =
        ranked.stream().filter(Findings.Proposal::worthAsking).limit(TRIED).toList();
    for (Findings.Proposal p : few) {
      double parted = parted(expected(p.forWhat().orElse(p.check()), held));
      double worth = parted * p.worth() / p.bits();
      if (parted >= Ranking.WORTH_ASKING && worth > most) {
        best = p;
        most = worth;
      }
    }
    return Optional.ofNullable(best);
  }

  /** The results that are expected of a check: cheap, good enough to choose by. */
  private List<Sorted> expected(Check check, List<Planner.Weighted> held) {
    if (!check.kind().metered()) {
      return sights(check, held, MISNAMED);
    }
    List<double[]> reaches =
        held.stream()
            .map(
                w -> {
                  Prediction.Numeric p = quick.of(w.hypothesis(), check);
                  double reach = EXPECTED * p.sd(1);
                  return new double[] {p.mean() - reach, p.mean() + reach};
                })
            .toList();
    return between(check, held, reaches);
  }

  /** The results of a check, each with all that can give it. */
  List<Sorted> sort(Check check, List<Planner.Weighted> held) {
    if (!check.kind().metered()) {
      // No bounds shut anything out of what is seen, and a failure lies within a range.
      return sights(check, held, 0);
    }
    List<double[]> reaches =
        held.parallelStream().map(w -> bands.band(w.hypothesis(), check)).toList();
    return between(check, held, reaches).stream().map(s -> widened(check, held, s)).toList();
  }

  /** What is seen, where more than a wrong name for something else can give it. */
  private List<Sorted> sights(Check check, List<Planner.Weighted> held, double least) {
    List<Sorted> results = new ArrayList<>();
    for (Seen seen : check.kind().answers()) {
      List<Planner.Weighted> give = new ArrayList<>();
      boolean expected = false;
      for (Planner.Weighted w : held) {
        double chance = ((Prediction.Sight) predictor.exact(w.hypothesis(), check)).chance(seen);
        expected |= chance > MISNAMED;
        if (chance > least) {
          give.add(new Planner.Weighted(w.hypothesis(), w.belief() * chance));
        }
      }
      if (expected) {
        results.add(new Sorted(0, 0, Optional.of(seen), give));
      }
    }
    return results;
  }

  /** Puts edges where they part most. */
  private List<Sorted> between(Check check, List<Planner.Weighted> held, List<double[]> reaches) {
    List<Double> places = places(check, reaches);
    List<Sorted> best = split(check, held, reaches, new double[0]);
    double[] edges = {};
    double parted = 0;
    for (int more = 0; more < MOST_EDGES; more++) {
      double[] before = edges;
      double least = parted + WORTH_A_LINE;
      for (double place : places) {
        double[] tried = Arrays.copyOf(before, before.length + 1);
        tried[before.length] = place;
        Arrays.sort(tried);
        List<Sorted> split = split(check, held, reaches, tried);
        double bits = parted(split);
        if (bits > Math.max(least, parted)) {
          parted = bits;
          edges = tried;
          best = split;
        }
      }
    }
    return best;
  }

  private List<Sorted> split(
      Check check, List<Planner.Weighted> held, List<double[]> reaches, double[] edges) {
    List<Sorted> results = new ArrayList<>();
    for (int b = 0; b <= edges.length; b++) {
      double low = b == 0 ? Double.NEGATIVE_INFINITY : edges[b - 1];
      double high = b == edges.length ? Double.POSITIVE_INFINITY : edges[b];
      List<Planner.Weighted> inside = new ArrayList<>();
      for (int i = 0; i < held.size(); i++) {
        double share = share(check, reaches.get(i), low, high);
        if (share > 0) {
          Planner.Weighted w = held.get(i);
          inside.add(new Planner.Weighted(w.hypothesis(), w.belief() * share));
        }
      }
      results.add(new Sorted(low, high, Optional.empty(), inside));
    }
    return results;
  }

  /** Adds what no bounds shut out. */
  private Sorted widened(Check check, List<Planner.Weighted> held, Sorted result) {
    Reading reading = new Reading(1, check, result.value());
    Map<Hypothesis, Planner.Weighted> inside = new IdentityHashMap<>();
    result.held().forEach(w -> inside.put(w.hypothesis(), w));
    List<Planner.Weighted> all =
        held.parallelStream()
            .flatMap(
                w ->
                    Optional.ofNullable(inside.get(w.hypothesis()))
                        .or(
                            () ->
                                clearing.standing(w.hypothesis(), reading) == Fact.Standing.OUT
                                    ? Optional.empty()
                                    : Optional.of(
                                        new Planner.Weighted(w.hypothesis(), HARDLY * w.belief())))
                        .stream())
            .toList();
    return new Sorted(result.low(), result.high(), result.seen(), all);
  }

  /** How much of a reach lies between two values. */
  private double share(Check check, double[] reach, double low, double high) {
    double from = scale(check, reach[0]);
    double to = scale(check, reach[1]);
    double begin = Math.max(from, scale(check, low));
    double end = Math.min(to, scale(check, high));
    if (to - from < 1e-9) {
      return scale(check, low) <= from && from < scale(check, high) ? 1 : 0;
    }
    return Math.max(0, end - begin) / (to - from);
  }

  /** Ohms run over eight decades; OL lies at the upper end of every scale. */
  private double scale(Check check, double value) {
    double most = 2 * meter.fullScale(Workbench.function(check));
    if (check.kind() == CheckKind.OHMS) {
      return Math.log(Math.max(0, Math.min(most, value)) + Planner.FLOOR);
    }
    return Double.isInfinite(value) && value < 0 ? -most : Math.min(most, value);
  }

  /** Round values in the widest gaps between the ends of reaches. */
  private List<Double> places(Check check, List<double[]> reaches) {
    TreeSet<Double> ends = new TreeSet<>();
    reaches.forEach(r -> Arrays.stream(r).filter(Double::isFinite).forEach(ends::add));
    List<Double> sorted = new ArrayList<>(ends);
    double full = meter.fullScale(Workbench.function(check));
    return IntStream.range(1, sorted.size())
        .mapToObj(i -> new double[] {sorted.get(i - 1), sorted.get(i)})
        .filter(gap -> scale(check, gap[1]) - scale(check, gap[0]) > LEAST_GAP)
        .sorted(Comparator.comparingDouble(gap -> scale(check, gap[0]) - scale(check, gap[1])))
        .limit(MOST_GAPS)
        .map(gap -> round(check, gap[0], gap[1]))
        .filter(edge -> edge < full)
        .distinct()
        .toList();
  }

  /** The roundest value well inside a gap. */
  private static double round(Check check, double low, double high) {
    boolean decades = check.kind() == CheckKind.OHMS && high > 10 * Math.max(low, Planner.FLOOR);
    double from = decades ? 2 * Math.max(low, Planner.FLOOR) : low + (high - low) / 4;
    double to = decades ? high / 2 : high - (high - low) / 4;
    double edge = Double.NaN;
    for (double step = Math.pow(10, Math.ceil(Math.log10(to - from)));
        Double.isNaN(edge);
        step /= 10) {
      for (double part : new double[] {1, 0.5, 0.2}) {
        double multiple = Math.ceil(from / (step * part)) * step * part;
        edge = Double.isNaN(edge) && multiple <= to ? multiple : edge;
      }
    }
    // The digits it has, without those of the arithmetic.
    return new BigDecimal(edge).round(new MathContext(6)).doubleValue();
  }
}
