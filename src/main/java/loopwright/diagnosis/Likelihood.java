package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;

/**
 * How well a hypothesis explains all readings together.
 *
 * <p>Readings share parameters (the battery's volts, a wire's length, the meter's gain), so they
 * are not independent witnesses: y ~ N(mu, L L' + R) jointly, with L the change of each reading
 * with each shared value and R the meter's own error. Each reading may also be a slip (lead on
 * paint, wrong point), up to two of them at once; a slip tells nothing and counts by its chance.
 * Taking one or two readings out of a joint normal needs only its inverse covariance (leave-one-out
 * by partitioned inverse).
 */
final class Likelihood {

  private final Predictor predictor;
  private final MeterSpec meter;
  private final double systemVolts;
  private final double slip;
  private final Optional<Hypothesis> away;

  /** Of failures that are there whenever something is read. */
  Likelihood(Predictor predictor, MeterSpec meter, double systemVolts, double slip) {
    this(predictor, meter, systemVolts, slip, Optional.empty());
  }

  private Likelihood(
      Predictor predictor,
      MeterSpec meter,
      double systemVolts,
      double slip,
      Optional<Hypothesis> away) {
    this.predictor = predictor;
    this.meter = meter;
    this.systemVolts = systemVolts;
    this.slip = slip;
    this.away = away;
  }

  /**
   * Of failures that come and go: while one is away, what is read is as in health.
   *
   * @param healthy health
   */
  Likelihood comingAndGoing(Hypothesis healthy) {
    return new Likelihood(predictor, meter, systemVolts, slip, Optional.of(healthy));
  }

  /**
   * Log likelihood and, for each numeric reading, the log of how much better the rest is explained
   * without it.
   *
   * @param log natural log of the likelihood, slips included
   * @param odd by position in the list of readings: chance, given this hypothesis, that the reading
   *     is a slip
   * @param parts finer hypotheses that this one was put together from, or itself
   */
  record Result(double log, double[] odd, List<Part> parts) {}

  /**
   * A finer hypothesis within another.
   *
   * @param hypothesis the finer one
   * @param weight its chance, given the other and the readings
   * @param odd by position: chance of each reading to settle nothing of what is read while it is
   *     there, as a slip under it or as taken while it was away
   */
  record Part(Hypothesis hypothesis, double weight, double[] odd) {}

  /** Works out beforehand what a hypothesis shows in a check. */
  void prepare(Hypothesis h, Check check) {
    predictor.exact(h, check);
  }

  /**
   * Readings in an order that doesn't depend on the one they are given in.
   *
   * @param sorted the readings
   * @param place by position in that order: position among those given
   */
  private record Order(List<Reading> sorted, int[] place) {
    static Order of(List<Reading> readings) {
      List<String> ids = readings.stream().map(r -> r.check().id()).toList();
      int[] place =
          IntStream.range(0, readings.size())
              .boxed()
              .sorted(
                  Comparator.comparing((Integer i) -> ids.get(i))
                      .thenComparing(i -> readings.get(i).id()))
              .mapToInt(Integer::intValue)
              .toArray();
      return new Order(IntStream.of(place).mapToObj(readings::get).toList(), place);
    }

    /** Some of them, by position in this order, as if no others were given. */
    Order only(List<Integer> some) {
      return new Order(
          some.stream().map(sorted::get).toList(), IntStream.range(0, some.size()).toArray());
    }
  }

  /**
   * Log likelihood of each reading by itself under each hypothesis, slips included; readings in an
   * order that doesn't depend on the one they are given in.
   */
  double[][] alone(List<Hypothesis> hypotheses, List<Reading> readings) {
    List<Reading> sorted = Order.of(readings).sorted();
    double[][] logs = new double[hypotheses.size()][sorted.size()];
    for (int k = 0; k < sorted.size(); k++) {
      Map<Hypothesis, Result> each = of(hypotheses, List.of(sorted.get(k)));
      for (int i = 0; i < logs.length; i++) {
        logs[i][k] = each.get(hypotheses.get(i)).log();
      }
    }
    return logs;
  }

  /** Of readings in any order under each hypothesis, on all processors. */
  Map<Hypothesis, Result> of(List<Hypothesis> hypotheses, List<Reading> readings) {
    Order order = Order.of(readings);
    double[] working = working(order);
    return each(hypotheses, h -> of(h, order, working));
  }

  /** Works out a result for each hypothesis, on all processors. */
  static Map<Hypothesis, Result> each(
      List<Hypothesis> hypotheses, Function<Hypothesis, Result> work) {
    List<Result> results = hypotheses.parallelStream().map(work).toList();
    Map<Hypothesis, Result> all = new IdentityHashMap<>();
    for (int i = 0; i < results.size(); i++) {
      all.put(hypotheses.get(i), results.get(i));
    }
    return all;
  }

  /** Of readings in any order: they are put in a fixed order first. */
  Result of(Hypothesis h, List<Reading> readings) {
    Order order = Order.of(readings);
    return of(h, order, working(order));
  }

  private Result of(Hypothesis h, Order order, double[] working) {
    return away.isEmpty() || h.unlisted() || h.equals(away.get())
        ? throughout(h, order)
        : atTimes(h, order, working);
  }

  /** Log likelihood of each reading by itself in health; none where failures are always there. */
  private double[] working(Order order) {
    int readings = away.isEmpty() ? 0 : order.sorted().size();
    return IntStream.range(0, readings).mapToDouble(i -> single(away.get(), order, i)).toArray();
  }

  private double single(Hypothesis h, Order order, int reading) {
    return throughout(h, order.only(List.of(reading))).log();
  }

  /**
   * Chance that a fault which comes and goes is away for as long as somebody reads. It is counted
   * once, not for each reading: what works keeps working for a while, so that ten good readings in
   * a row are hardly more than one. Common practice, our own estimate.
   */
  private static final double STAYS_AWAY = 0.6;

  /**
   * Readings that fit health better than the failure were taken while it was away.
   *
   * @param working how well each fits health by itself, in this order
   */
  private Result atTimes(Hypothesis h, Order order, double[] working) {
    List<Integer> there = new ArrayList<>();
    List<Integer> gone = new ArrayList<>();
    for (int i = 0; i < working.length; i++) {
      boolean provoked = order.sorted().get(i).check().kind().provokes().isPresent();
      boolean works = !provoked && working[i] > single(h, order, i) + 1e-9;
      (works ? gone : there).add(i);
    }
    if (gone.isEmpty()) {
      return throughout(h, order);
    }
    Result failing = throughout(h, order.only(there));
    Result sound = throughout(away.get(), order.only(gone));
    double[] odd = new double[working.length];
    for (int k = 0; k < there.size(); k++) {
      odd[order.place()[there.get(k)]] = failing.odd()[k];
    }
    for (int k = 0; k < gone.size(); k++) {
      odd[order.place()[gone.get(k)]] = sound.odd()[k];
    }
    // What was read while it worked says nothing of what it would read while it fails.
    double[] settlesNothing = odd.clone();
    gone.forEach(i -> settlesNothing[order.place()[i]] = 1);
    double log = failing.log() + sound.log() + Math.log(STAYS_AWAY);
    return new Result(log, odd, List.of(new Part(h, 1, settlesNothing)));
  }

  private Result throughout(Hypothesis h, Order order) {
    List<Reading> numeric = new ArrayList<>();
    List<Integer> numericAt = new ArrayList<>();
    double[] odd = new double[order.place().length];
    double log = 0;
    for (int i = 0; i < odd.length; i++) {
      Reading r = order.sorted().get(i);
      if (h.unlisted()) {
        log += Math.log(slipDensity(r));
      } else if (r.value() instanceof Reading.Value.Number) {
        numeric.add(r);
        numericAt.add(order.place()[i]);
      } else {
        double good = categorical(h, r);
        double bad = slipDensity(r);
        double all = (1 - slip) * good + slip * bad;
        log += Math.log(all);
        odd[order.place()[i]] = slip * bad / all;
      }
    }
    if (!numeric.isEmpty()) {
      double[] numericOdd = new double[numeric.size()];
      log += joint(h, numeric, numericOdd);
      for (int i = 0; i < numericOdd.length; i++) {
        odd[numericAt.get(i)] = numericOdd[i];
      }
    }
    return new Result(log, odd, List.of(new Part(h, 1, odd)));
  }

  /** Share of slips in which a tip touches nothing. Common practice: paint, rust, a missed pin. */
  private static final double TOUCHES_NOTHING = 1.0 / 3;

  /** Last digits' errors within which a display still shows nothing. */
  private static final double ZERO_DIGITS = 3;

  /** Density of a value that was not taken as asked: anything the display may show. */
  private double slipDensity(Reading r) {
    if (r.value() instanceof Reading.Value.Number n) {
      if (r.check().kind() == CheckKind.OHMS) {
        // Even on a log scale over eight decades, with room at zero for the last digit.
        return 1 / ((Math.abs(n.value()) + 0.5) * Math.log(1e8));
      }
      // A tip that touches nothing shows nothing; one on a wrong point shows anything.
      double zero = 2 * ZERO_DIGITS * digits(r);
      double even = (1 - TOUCHES_NOTHING) / (2.4 * systemVolts);
      return Math.abs(n.value()) < zero / 2 ? TOUCHES_NOTHING / zero + even : even;
    }
    if (r.value() instanceof Reading.Value.Between b) {
      double share = Math.min(1, (b.high() - b.low()) / (2.4 * systemVolts));
      return r.check().kind() == CheckKind.OHMS ? 0.3 : Math.max(0.02, share);
    }
    return r.value() instanceof Reading.Value.OverRange ? 0.3 : 1.0 / 3;
  }

  private double categorical(Hypothesis h, Reading r) {
    Prediction prediction = predictor.exact(h, r.check());
    if (r.value() instanceof Reading.Value.Sight s) {
      return prediction instanceof Prediction.Sight p ? Math.max(1e-6, p.chance(s.seen())) : 1e-6;
    }
    if (!(prediction instanceof Prediction.Numeric n)) {
      return 1e-6;
    }
    double sd =
        Math.hypot(n.sd(1), meter.error(Workbench.function(r.check()), n.mean()) / Math.sqrt(3));
    if (r.value() instanceof Reading.Value.OverRange) {
      double full = meter.fullScale(Workbench.function(r.check()));
      if (Workbench.function(r.check()) == MeterFunction.VOLTS_DC) {
        full = Double.MAX_VALUE;
      }
      return Math.max(1e-9, Normal.above((full - n.mean()) / sd));
    }
    Reading.Value.Between b = (Reading.Value.Between) r.value();
    double above = Normal.above((b.low() - n.mean()) / sd);
    double beyond = Double.isInfinite(b.high()) ? 0 : Normal.above((b.high() - n.mean()) / sd);
    return Math.max(1e-9, above - beyond);
  }

  private double joint(Hypothesis h, List<Reading> readings, double[] odd) {
    int n = readings.size();
    double[] residual = new double[n];
    double[][] c = covariance(h, readings, residual, new double[n][]);
    return withSlips(residual, c, readings, odd);
  }

  /**
   * Correlation of the last digits' errors of one check taken twice: that is hardly two witnesses.
   * Where the two values lie in different ranges of the meter their digits differ, so that it is a
   * correlation and no covariance. Our own estimate.
   */
  private static final double TAKEN_AGAIN = 0.9;

  /** Covariance of readings under a hypothesis; fills in residuals and loads. */
  private double[][] covariance(
      Hypothesis h, List<Reading> readings, double[] residual, double[][] loads) {
    int n = readings.size();
    double[][] c = new double[n][n];
    for (int i = 0; i < n; i++) {
      Reading r = readings.get(i);
      Predictor.Factors f = predictor.factors(h, r.check());
      residual[i] = number(r) - f.mean();
      loads[i] = f.loads();
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        Reading a = readings.get(i);
        Reading b = readings.get(j);
        double dot = dot(loads[i], loads[j]) + gain(a.check(), number(a), b.check(), number(b));
        if (i == j) {
          dot += digits(a) * digits(a);
        } else if (a.check().equals(b.check())) {
          dot += TAKEN_AGAIN * digits(a) * digits(b);
        }
        c[i][j] = dot;
        c[j][i] = dot;
      }
    }
    return c;
  }

  /** Covariance of two values through the meter's gain, which is one for each function. */
  private double gain(Check a, double va, Check b, double vb) {
    return Workbench.function(a) == Workbench.function(b) ? gain(a, va) * gain(b, vb) : 0;
  }

  /** Standard deviation of what the meter's gain does to a value. */
  private double gain(Check check, double value) {
    MeterFunction f = Workbench.function(check);
    return meter.rangeFor(f, value).percent() / 100 / Math.sqrt(3) * value;
  }

  private static double number(Reading r) {
    return ((Reading.Value.Number) r.value()).value();
  }

  private double digits(Reading r) {
    return digits(r.check(), number(r), ((Reading.Value.Number) r.value()).step());
  }

  private double digits(Check check, double value, double step) {
    MeterSpec.Range range = meter.rangeFor(Workbench.function(check), value);
    double limit = Math.max(range.digits() * range.step(), step / 2);
    double sd = limit / Math.sqrt(3);
    if (check.kind() == CheckKind.OHMS) {
      sd = Math.hypot(sd, meter.leadOhms().width() * Predictor.EVEN);
    }
    // A floor for what no table lists: contact of the tip, drift between readings.
    return Math.max(sd, check.kind() == CheckKind.OHMS ? 0.02 : 0.002);
  }

  /**
   * What a hypothesis expects of further meter readings once some have been taken. Readings share
   * the battery, the wires and the meter's gain, so one that has been taken settles much of the
   * next: a conditional normal distribution.
   */
  final class Expectation {
    private final Hypothesis hypothesis;
    private final List<Reading> readings = new ArrayList<>();
    private final double[][] loads;
    private final double[][] inverse;
    private final double[] weighted;

    /**
     * After these readings.
     *
     * @param odd chance of each to be a slip under the hypothesis, by position; slips settle
     *     nothing
     */
    Expectation(Hypothesis hypothesis, List<Reading> taken, double[] odd) {
      this.hypothesis = hypothesis;
      for (int i = 0; i < taken.size(); i++) {
        if (taken.get(i).value() instanceof Reading.Value.Number && odd[i] < 0.5) {
          readings.add(taken.get(i));
        }
      }
      int n = readings.size();
      double[] residual = new double[n];
      loads = new double[n][];
      inverse = Normal.inverse(covariance(hypothesis, readings, residual, loads));
      weighted = new double[n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          weighted[i] += inverse[i][j] * residual[j];
        }
      }
    }

    /** Mean and standard deviation of what the meter will show, its own error included. */
    Prediction.Numeric of(Check check) {
      Predictor.Factors f = predictor.factors(hypothesis, check);
      double gain = gain(check, f.mean());
      double digits = digits(check, f.mean(), 0);
      double variance = dot(f.loads(), f.loads()) + gain * gain;
      int n = readings.size();
      double[] cross = new double[n];
      double mean = f.mean();
      for (int i = 0; i < n; i++) {
        Reading before = readings.get(i);
        cross[i] = dot(f.loads(), loads[i]) + gain(check, f.mean(), before.check(), number(before));
        mean += cross[i] * weighted[i];
      }
      double settled = 0;
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          settled += cross[i] * inverse[i][j] * cross[j];
        }
      }
      double left = Math.max(0, variance - settled) + digits * digits;
      return new Prediction.Numeric(mean, Math.sqrt(left), 0);
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }

  /**
   * Standard deviations beyond which a reading can only be a slip under a hypothesis. Its square is
   * then too large to be taken back out of a sum without losing the digits of everything else.
   */
  private static final double HOPELESS = 1e4;

  /**
   * Log likelihood over all ways to call up to {@link #MOST_SLIPS} readings slips. Readings that
   * are hopeless under the hypothesis are slips from the start, the worst ones first.
   */
  private double withSlips(double[] r, double[][] c, List<Reading> readings, double[] odd) {
    int n = r.length;
    List<Integer> hopeless = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      if (Math.abs(r[i]) > HOPELESS * Math.sqrt(c[i][i])) {
        hopeless.add(i);
      }
    }
    hopeless.sort(Comparator.comparingDouble((Integer i) -> -Math.abs(r[i]) / Math.sqrt(c[i][i])));
    double logGood = Math.log(1 - slip);
    double logSlip = Math.log(slip);
    double log = 0;
    List<Integer> forced = hopeless.subList(0, Math.min(MOST_SLIPS, hopeless.size()));
    for (int i : forced) {
      log += Math.log(slipDensity(readings.get(i))) + logSlip;
      odd[i] = 1;
    }
    List<Integer> rest = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      if (hopeless.contains(i) && !forced.contains(i)) {
        // More hopeless readings than slips are believed: as good as refuted.
        log += logGood - 0.5 * HOPELESS * HOPELESS;
      } else if (!forced.contains(i)) {
        rest.add(i);
      }
    }
    if (rest.isEmpty()) {
      return log;
    }
    int m = rest.size();
    double[] residual = new double[m];
    double[][] covariance = new double[m][m];
    double[] slipLog = new double[m];
    for (int i = 0; i < m; i++) {
      residual[i] = r[rest.get(i)];
      slipLog[i] = Math.log(slipDensity(readings.get(rest.get(i)))) + logSlip - logGood;
      for (int j = 0; j < m; j++) {
        covariance[i][j] = c[rest.get(i)][rest.get(j)];
      }
    }
    double[] restOdd = new double[m];
    log +=
        m * logGood + mixture(residual, covariance, slipLog, MOST_SLIPS - forced.size(), restOdd);
    for (int i = 0; i < m; i++) {
      odd[rest.get(i)] = restOdd[i];
    }
    return log;
  }

  /** Slips that are believed in one case. */
  private static final int MOST_SLIPS = 2;

  /** Sum over none, one and two readings left out; how often each is, goes to {@code odd}. */
  private static double mixture(
      double[] r, double[][] c, double[] slipLog, int mostSlips, double[] odd) {
    int n = r.length;
    double[][] k = Normal.inverse(c);
    double logDet = Normal.lastLogDeterminant(c);
    double[] a = new double[n];
    double quadratic = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i] += k[i][j] * r[j];
      }
      quadratic += a[i] * r[i];
    }
    double all = -0.5 * (quadratic + logDet + n * Math.log(2 * Math.PI));
    List<double[]> terms = new ArrayList<>();
    terms.add(new double[] {all, -1, -1});
    for (int i = 0; i < n && mostSlips > 0; i++) {
      double variance = 1 / k[i][i];
      double shift = a[i] * variance;
      double single = -0.5 * (shift * shift / variance + Math.log(2 * Math.PI * variance));
      terms.add(new double[] {all - single + slipLog[i], i, -1});
      for (int j = 0; j < i && mostSlips > 1; j++) {
        double det = k[i][i] * k[j][j] - k[i][j] * k[i][j];
        if (!(det > 0)) {
          continue;
        }
        double q =
            (k[j][j] * a[i] * a[i] - 2 * k[i][j] * a[i] * a[j] + k[i][i] * a[j] * a[j]) / det;
        double pair = -0.5 * (q - Math.log(det) + 2 * Math.log(2 * Math.PI));
        terms.add(new double[] {all - pair + slipLog[i] + slipLog[j], i, j});
      }
    }
    double top = Double.NEGATIVE_INFINITY;
    for (double[] t : terms) {
      top = Math.max(top, t[0]);
    }
    double sum = 0;
    for (double[] t : terms) {
      double w = Math.exp(t[0] - top);
      sum += w;
      if (t[1] >= 0) {
        odd[(int) t[1]] += w;
      }
      if (t[2] >= 0) {
        odd[(int) t[2]] += w;
      }
    }
    for (int i = 0; i < n; i++) {
      odd[i] /= sum;
    }
    return top + Math.log(sum);
  }
}
