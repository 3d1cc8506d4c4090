package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import loopwright.meter.MeterFunction;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.solver.Element;
import loopwright.solver.Meters;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * Turns operating points into what a check would give: expected values for planning, latent factors
 * for the joint likelihood, and the band of possible values for clearing.
 */
final class Predictor {

  /**
   * Factor on the linear reach of the spreads in a possible band. The linear reach adds up the
   * worst of every spread; the factor pays for the curvature in between. Our own choice, checked by
   * sampling in the tests.
   */
  static final double REACH = 1.5;

  /** Standard deviation of an even spread of width 1. */
  static final double EVEN = 1 / Math.sqrt(12);

  /** Failures in one hypothesis. */
  private static final int MOST_FAILURES = 2;

  private final Workbench bench;
  private final Network network;
  private final int batteryElement;
  private final int[] firstLatent;
  private final int latents;
  private final Kept<Hypothesis, List<Integer>> ranged = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Prediction>> table = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Prediction>> sights = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Factors>> factors = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Possible>> corners = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Possible>> possible = Kept.byIdentity();
  private final Kept<Hypothesis, Kept<Check, Optional<Possible>>> outer = Kept.byIdentity();

  private final InHand inHand;
  private final Substitutions substitutions;

  Predictor(Workbench bench) {
    this(bench, Optional.empty());
  }

  /**
   * Predicts for one vehicle.
   *
   * @param watched the load that is watched while a part is swapped or moved
   */
  Predictor(Workbench bench, Optional<LoadRef> watched) {
    this.bench = bench;
    this.inHand = new InHand(bench);
    this.substitutions = new Substitutions(bench, watched);
    this.network = bench.network();
    int n = network.elements().size();
    firstLatent = new int[n];
    int next = 0;
    for (int e = 0; e < n; e++) {
      firstLatent[e] = next;
      next += network.elements().get(e).values().length;
    }
    latents = next;
    batteryElement = network.element(bench.vehicle().battery().id(), "cell").orElseThrow();
  }

  /**
   * A numeric prediction with its dependence on the shared uncertain values.
   *
   * @param mean expected value in volts or ohms
   * @param loads change with one standard deviation of each latent; the last two are the failures'
   *     own ranges
   */
  record Factors(double mean, double[] loads) {
    private Factors asSecond() {
      double[] moved = loads.clone();
      moved[moved.length - 1] = loads[loads.length - 2];
      moved[moved.length - 2] = 0;
      return new Factors(mean, moved);
    }
  }

  /**
   * The values a meter without error could show, for any values inside the spreads.
   *
   * @param low least, in volts or ohms
   * @param high greatest; infinite where OL is among them
   */
  record Possible(double low, double high) {
    /** No value at all; joined with another it is that other. */
    static final Possible NOTHING =
        new Possible(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

    Possible join(Possible other) {
      return new Possible(Math.min(low, other.low), Math.max(high, other.high));
    }
  }

  /**
   * Expected result of a check under a hypothesis, good enough to plan by. Cheap.
   *
   * @see #exact
   */
  Prediction predict(Hypothesis h, Check check) {
    return kept(table, h, check, this::compute);
  }

  /**
   * Looks a result up, or works it out and keeps it. A part in the hand shows nothing of what has
   * failed elsewhere: all hypotheses that say the same of it share one result.
   */
  private <T> T kept(
      Kept<Hypothesis, Kept<Check, T>> results,
      Hypothesis h,
      Check check,
      BiFunction<Hypothesis, Check, T> compute) {
    return keptAs(inHand.solved(h, check), results, check, compute);
  }

  private <T> T keptAs(
      Hypothesis solved,
      Kept<Hypothesis, Kept<Check, T>> results,
      Check check,
      BiFunction<Hypothesis, Check, T> compute) {
    return results
        .get(solved, k -> Kept.byEquals())
        .get(check, c -> compute.apply(solved, inHand.solved(c)));
  }

  private Prediction compute(Hypothesis h, Check check) {
    if (substitutions.concerns(check)) {
      return substitutions.sight(h, check);
    }
    if (!check.kind().metered()) {
      return sight(h, check, List.of(bench.point(h, check.setting())));
    }
    return quick(h, check);
  }

  /** Expected result of a check under a hypothesis, with all spreads: for checks really taken. */
  Prediction exact(Hypothesis h, Check check) {
    if (substitutions.concerns(check)) {
      return predict(h, check);
    }
    if (!check.kind().metered()) {
      return kept(sights, h, check, (k, c) -> sight(k, c, bench.points(k, c.setting())));
    }
    Factors f = factors(h, check);
    double variance = 0;
    for (double load : f.loads()) {
      variance += load * load;
    }
    return new Prediction.Numeric(f.mean(), Math.sqrt(variance), 0);
  }

  /**
   * A number good enough for planning: solved at the middle and the ends of the failure's own
   * range, with the other spreads by rule of thumb. All volts of a resistive network scale with the
   * battery's; a divider's volts v move with its load's spread as v (1 - v / E).
   */
  private Prediction.Numeric quick(Hypothesis h, Check check) {
    List<OperatingPoint> points = bench.points(h, check.setting());
    int red = network.requireNode(check.red().orElseThrow());
    int black = network.requireNode(check.black().orElseThrow());
    double middle = rough(h, points.get(0), check, red, black);
    double mean = middle;
    double own = 0;
    int ranges = ownRanges(h).size();
    for (int range = 0; range < ranges; range++) {
      double low = rough(h, points.get(1 + 2 * range), check, red, black);
      double high = rough(h, points.get(2 + 2 * range), check, red, black);
      mean += (low - 2 * middle + high) / 6;
      own = Math.hypot(own, (high - low) * EVEN);
    }
    if (check.kind() == CheckKind.DIODE) {
      return new Prediction.Numeric(mean, Math.hypot(own, JUNCTION_SPREAD), 0);
    }
    if (check.kind() == CheckKind.DRAIN) {
      // All of it moves with the loads that are fed at rest.
      double rest = LOAD_SPREAD * Math.abs(mean) + DRAIN_FLOOR;
      return new Prediction.Numeric(mean, Math.hypot(own, rest), 0);
    }
    if (check.kind() == CheckKind.OHMS) {
      return new Prediction.Numeric(mean, Math.hypot(own, 0.1 + LOAD_SPREAD * mean), 0);
    }
    double source =
        Math.max(1, Math.abs(network.elements().get(batteryElement).values()[0].typical()));
    double size = Math.min(1, Math.abs(middle) / source);
    double rest = LOAD_SPREAD * Math.abs(middle) * (1 - size) + ROUGH * source;
    return new Prediction.Numeric(mean, Math.hypot(own, rest), middle / source * batterySd());
  }

  /** Spread of forward volts that planning reckons with, in volts. */
  private static final double JUNCTION_SPREAD = 0.05;

  /** What planning leaves open of a drain besides its loads' spreads, in volts across 1 ohm. */
  private static final double DRAIN_FLOOR = 0.0005;

  /** Spread of loads that planning reckons with, as a share. */
  private static final double LOAD_SPREAD = 0.06;

  /** What planning leaves open besides, as a share of the battery's volts. */
  private static final double ROUGH = 0.002;

  private double batterySd() {
    return network.elements().get(batteryElement).values()[0].width() * EVEN;
  }

  private double rough(Hypothesis h, OperatingPoint point, Check check, int red, int black) {
    if (check.kind() == CheckKind.DIODE || check.kind() == CheckKind.DRAIN) {
      return bench.shown(h, check, point).value();
    }
    if (check.kind() != CheckKind.OHMS) {
      return point.volts(red, black);
    }
    double ohms = point.ohmsSeen(red, black) + bench.meter().leadOhms().typical();
    return Math.min(ohms, 4 * bench.meter().fullScale(MeterFunction.OHMS));
  }

  /** A check as it is solved: one across a part that is out has the rest of the vehicle apart. */
  Check solved(Check check) {
    return inHand.solved(check);
  }

  /** Mean and latent factors, kept for checks that were really taken. */
  Factors factors(Hypothesis h, Check check) {
    Factors found = kept(factors, h, check, this::computeFactors);
    // The second of a pair by itself has its range in the place of the first.
    return h.pair() && inHand.solved(h, check) == h.members().get(1) ? found.asSecond() : found;
  }

  private Factors computeFactors(Hypothesis h, Check check) {
    List<OperatingPoint> points = bench.points(h, check.setting());
    Meters.Shown shown = bench.shown(h, check, points.get(0));
    double[] loads = new double[latents + MOST_FAILURES];
    double[][] slopes = shown.point().sensitivities(shown.red(), shown.black());
    Variant variant = h.variant();
    int base = firstLatent.length;
    for (int e = 0; e < base; e++) {
      Spread[] spreads = variant.element(e).values();
      boolean own = variant.element(e) != network.elements().get(e);
      int common = Math.min(spreads.length, slopes[e].length);
      for (int k = 0; k < common && firstLatent[e] + k < latents; k++) {
        if (own && wide(spreads[k])) {
          continue;
        }
        loads[firstLatent[e] + k] = slopes[e][k] * shown.slope() * spreads[k].width() * EVEN;
      }
    }
    double mean = shown.value();
    List<Integer> own = ownRanges(h);
    for (int range = 0; range < own.size(); range++) {
      double low = bench.shown(h, check, points.get(1 + 2 * range)).value();
      double high = bench.shown(h, check, points.get(2 + 2 * range)).value();
      if (Math.max(low, high) < 1e12) {
        loads[latents + own.get(range)] = (high - low) * EVEN;
        // Simpson's rule over the range: the mean of a bent curve is not its middle.
        mean += (low - 2 * shown.value() + high) / 6;
      }
    }
    return new Factors(mean, loads);
  }

  private static boolean wide(Spread spread) {
    return spread.high() > 1.5 * spread.low();
  }

  /** Which of the failures have a wide range of their own, by position. */
  private List<Integer> ownRanges(Hypothesis h) {
    return ranged.get(
        h,
        k -> {
          Values values = Values.typical(h.variant());
          List<Integer> own = new ArrayList<>();
          for (int i = 0; i < h.parts().size(); i++) {
            if (Workbench.own(h.variant(), values, true, h.parts().get(i)::equals)) {
              own.add(i);
            }
          }
          return own;
        });
  }

  /** The band of possible values, the meter's own error left out. */
  Possible possible(Hypothesis h, Check check) {
    return kept(possible, h, check, this::computePossible);
  }

  /**
   * The linear band joined with what full solves at its two corners give: where the network bends
   * (a starter dragging the battery down), the corner lies farther out than the slope says. The
   * corners are those that the slopes' signs name.
   */
  Possible possibleAtCorners(Hypothesis h, Check check) {
    Possible linear = possible(h, check);
    return kept(corners, h, check, (k, c) -> linear.join(computeCorners(k, c)));
  }

  private Possible computeCorners(Hypothesis h, Check c) {
    Possible all = Possible.NOTHING;
    for (OperatingPoint point : bench.extremePoints(h, c.setting())) {
      Meters.Shown shown = bench.shown(h, c, point);
      double[][] slopes = shown.point().sensitivities(shown.red(), shown.black());
      for (int end = 0; end < 2; end++) {
        Values values = corner(h, point, slopes, end == 0);
        OperatingPoint there =
            bench.solver(c.setting()).solve(h.variant(), c.setting(), values, point.history());
        Meters.Shown at = bench.shown(h, c, there);
        double beyond = CORNER_MARGIN * Math.abs(at.value() - shown.value());
        if (!at.overRange()) {
          all = all.join(new Possible(at.value() - beyond, at.value() + beyond));
        } else {
          all = all.join(new Possible(all.low(), Double.POSITIVE_INFINITY));
        }
      }
    }
    return all;
  }

  /**
   * Outer bounds of what a meter without error could show, for any values inside the spreads; empty
   * where none were found.
   */
  Optional<Possible> outer(Hypothesis h, Check check) {
    return keptAs(
        inHand.bounded(h, check),
        outer,
        check,
        (k, c) -> bench.outer(k, c).map(b -> new Possible(b.low(), b.high())));
  }

  /** Wider outer bounds, quick once a setting has been looked at; empty where there are none. */
  Optional<Possible> coarse(Hypothesis h, Check check) {
    return bench.coarse(h, check).map(b -> new Possible(b.low(), b.high()));
  }

  /** Share of the way to a corner that is added beyond it. Our own choice, checked by sampling. */
  private static final double CORNER_MARGIN = 0.1;

  private Values corner(Hypothesis h, OperatingPoint point, double[][] slopes, boolean lowest) {
    Values values = point.values().copy();
    for (int e = 0; e < h.variant().size(); e++) {
      Spread[] spreads = h.variant().element(e).values();
      boolean own = e >= firstLatent.length || h.variant().element(e) != network.elements().get(e);
      for (int k = 0; k < spreads.length && k < slopes[e].length; k++) {
        if (slopes[e][k] != 0 && !(own && wide(spreads[k]))) {
          values.set(e, k, (slopes[e][k] > 0) == lowest ? spreads[k].low() : spreads[k].high());
        }
      }
    }
    return values;
  }

  private Possible computePossible(Hypothesis h, Check check) {
    Possible all = Possible.NOTHING;
    for (OperatingPoint point : bench.extremePoints(h, check.setting())) {
      all = all.join(reach(h, check, point));
    }
    return all;
  }

  /** Around one operating point: every spread's worst by its slope, with {@link #REACH}. */
  private Possible reach(Hypothesis h, Check check, OperatingPoint point) {
    Meters.Shown shown = bench.shown(h, check, point);
    double up = 0;
    double down = 0;
    double[][] slopes = shown.point().sensitivities(shown.red(), shown.black());
    for (int e = 0; e < h.variant().size(); e++) {
      Spread[] spreads = h.variant().element(e).values();
      boolean own = e >= firstLatent.length || h.variant().element(e) != network.elements().get(e);
      for (int k = 0; k < spreads.length && k < slopes[e].length; k++) {
        double slope = slopes[e][k] * shown.slope();
        if (slope == 0 || (own && wide(spreads[k]))) {
          continue;
        }
        double at = point.values().get(e, k);
        double more = Math.max(0, spreads[k].high() - at);
        double less = Math.max(0, at - spreads[k].low());
        up += slope > 0 ? slope * more : -slope * less;
        down += slope > 0 ? slope * less : -slope * more;
      }
    }
    double low = shown.value() - REACH * down;
    double high = shown.value() + REACH * up;
    if (check.kind() == CheckKind.DIODE) {
      return new Possible(low, shown.overRange() ? Double.POSITIVE_INFINITY : high);
    }
    if (check.kind() != CheckKind.OHMS) {
      return new Possible(low, high);
    }
    double leads = bench.meter().leadOhms().width();
    double full = bench.meter().fullScale(MeterFunction.OHMS);
    low = Math.max(0, shown.overRange() ? Math.min(full, shown.value() / 2) : low - leads);
    high = shown.overRange() || high >= full * 0.98 ? Double.POSITIVE_INFINITY : high + leads;
    return new Possible(Math.min(low, high), high);
  }

  // ---- what can be seen -------------------------------------------------------------------

  private Prediction.Sight sight(Hypothesis h, Check check, List<OperatingPoint> points) {
    String subject = check.subject().orElseThrow();
    Part part = bench.vehicle().requirePart(LoadRef.parse(subject).part());
    if (part.kind() == PartKind.RELAY) {
      return relay(h, part, check.setting());
    }
    if (part.kind() == PartKind.FUSE) {
      return fuse(h, part);
    }
    return load(points, LoadRef.parse(subject));
  }

  /** Chance that somebody calls a sight something else than it is. Common practice. */
  static final double MISNAMED = 0.02;

  /** How a load looks, blurred where people call the same thing by different names. */
  Prediction.Sight load(Hypothesis h, LoadRef load, Setting setting) {
    return load(bench.points(h, setting), load);
  }

  private Prediction.Sight load(List<OperatingPoint> points, LoadRef load) {
    Setting fully = bench.vehicle().onSetting(load, points.get(0).setting());
    return Brightness.of(points.stream().map(p -> bench.level(p, load, fully)).toList());
  }

  private Prediction.Sight relay(Hypothesis h, Part relay, Setting setting) {
    int coil = network.element(relay.id(), "coil").orElseThrow();
    OperatingPoint at = bench.point(h, setting);
    OperatingPoint rest = bench.point(h, new Setting(Setting.REST.positions(), setting.apart()));
    boolean moves = at.pulledIn(coil) != rest.pulledIn(coil) || at.buzzing().contains(relay.id());
    double clicks = moves ? 0.95 : 0.03;
    return new Prediction.Sight(Map.of(Seen.CLICKS, clicks, Seen.SILENT, 1 - clicks));
  }

  private Prediction.Sight fuse(Hypothesis h, Part fuse) {
    int link = network.element(fuse.id(), "link").orElseThrow();
    boolean gone =
        h.variant().element(link) instanceof Element.Link
            && (h.history().blown().get(link) || isRemoved(h, link));
    double broken = gone ? 0.9 : MISNAMED;
    return new Prediction.Sight(Map.of(Seen.BROKEN, broken, Seen.WHOLE, 1 - broken));
  }

  private boolean isRemoved(Hypothesis h, int link) {
    return bench.point(h, Setting.REST).siemens(link) == 0;
  }

  /** Forgets what was worked out for hypotheses that are out of play. */
  void keepOnly(Set<Hypothesis> inPlay) {
    for (Kept<Hypothesis, ?> kept :
        List.of(ranged, table, sights, factors, possible, corners, outer)) {
      kept.keepOnly(inPlay::contains);
    }
  }
}
