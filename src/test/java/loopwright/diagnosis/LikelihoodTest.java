package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import org.junit.jupiter.api.Test;

/**
 * The joint likelihood against a plain second way: the density of every subset of readings, the
 * others being slips, each by elimination of its own matrix.
 */
class LikelihoodTest {

  private static final double SLIP = 0.02;

  private final Workbench bench = Cart.bench();
  private final Predictor predictor = new Predictor(bench);
  private final Likelihood likelihood = new Likelihood(predictor, Cart.METER, 12, SLIP);

  private final List<Check> checks =
      List.of(
          Cart.volts("BAT.pos", Cart.LAMP_ON),
          Cart.volts("K1.87", Cart.LAMP_ON),
          Cart.volts("L1.in", Cart.LAMP_ON),
          Check.measure(CheckKind.MILLIVOLTS, Cart.at("L1.out"), Cart.at("G1.lug"), Cart.LAMP_ON));

  private List<Hypothesis> suspects() {
    List<Hypothesis> all = new ArrayList<>(List.of(bench.healthy()));
    all.addAll(Cart.suspects(bench, "W9", "high-resistance").subList(0, 4));
    all.add(Cart.suspect(bench, "L1", "wrong-lamp"));
    return all;
  }

  // ---- the plain second way -------------------------------------------------------------------

  /** Greatest error as one standard deviation of an even spread, at least 2 mV or 20 mohm. */
  private static double digits(Reading r) {
    double value = ((Reading.Value.Number) r.value()).value();
    double step = ((Reading.Value.Number) r.value()).step();
    boolean ohms = r.check().kind() == CheckKind.OHMS;
    MeterFunction f = ohms ? MeterFunction.OHMS : MeterFunction.VOLTS_DC;
    MeterSpec.Range range = Cart.METER.rangeFor(f, value);
    double sd = Math.max(range.digits() * range.step(), step / 2) / Math.sqrt(3);
    if (ohms) {
      sd = Math.hypot(sd, Cart.METER.leadOhms().width() / Math.sqrt(12));
    }
    return Math.max(sd, ohms ? 0.02 : 0.002);
  }

  private static double gain(Reading r) {
    double value = ((Reading.Value.Number) r.value()).value();
    MeterFunction f =
        r.check().kind() == CheckKind.OHMS ? MeterFunction.OHMS : MeterFunction.VOLTS_DC;
    return Cart.METER.rangeFor(f, value).percent() / 100 / Math.sqrt(3) * value;
  }

  private static double slipDensity(Reading r) {
    double value = Math.abs(((Reading.Value.Number) r.value()).value());
    if (r.check().kind() == CheckKind.OHMS) {
      return 1 / ((value + 0.5) * Math.log(1e8));
    }
    double reach = 3 * digits(r);
    double even = 2.0 / 3 / (2.4 * 12);
    return value < reach ? 1.0 / 3 / (2 * reach) + even : even;
  }

  /** Chance density of all readings, and for each reading that part of it in which it slipped. */
  private double[] plain(Hypothesis h, List<Reading> readings) {
    int n = readings.size();
    double[] result = new double[n + 1];
    for (int subset = 0; subset < 1 << n; subset++) {
      if (Integer.bitCount(subset) > 2) {
        continue;
      }
      List<Reading> good = new ArrayList<>();
      double density = 1;
      for (int i = 0; i < n; i++) {
        if ((subset >> i & 1) == 1) {
          density *= SLIP * slipDensity(readings.get(i));
        } else {
          density *= 1 - SLIP;
          good.add(readings.get(i));
        }
      }
      density *= normal(h, good);
      result[n] += density;
      for (int i = 0; i < n; i++) {
        result[i] += (subset >> i & 1) == 1 ? density : 0;
      }
    }
    return result;
  }

  private double normal(Hypothesis h, List<Reading> readings) {
    int n = readings.size();
    double[][] m = new double[n][n + 1];
    double[] residual = new double[n];
    for (int i = 0; i < n; i++) {
      Predictor.Factors f = predictor.factors(h, readings.get(i).check());
      residual[i] = ((Reading.Value.Number) readings.get(i).value()).value() - f.mean();
      for (int j = 0; j < n; j++) {
        Predictor.Factors g = predictor.factors(h, readings.get(j).check());
        for (int k = 0; k < f.loads().length; k++) {
          m[i][j] += f.loads()[k] * g.loads()[k];
        }
        Reading a = readings.get(i);
        Reading b = readings.get(j);
        boolean one = (a.check().kind() == CheckKind.OHMS) == (b.check().kind() == CheckKind.OHMS);
        m[i][j] += one ? gain(a) * gain(b) : 0;
        double d = digits(a) * digits(a);
        m[i][j] += i == j ? d : a.check().equals(b.check()) ? 0.9 * d : 0;
      }
      m[i][n] = residual[i];
    }
    double det = 1;
    for (int k = 0; k < n; k++) {
      det *= m[k][k];
      for (int i = k + 1; i < n; i++) {
        double f = m[i][k] / m[k][k];
        for (int j = k; j <= n; j++) {
          m[i][j] -= f * m[k][j];
        }
      }
    }
    double quadratic = 0;
    double[] x = new double[n];
    for (int i = n - 1; i >= 0; i--) {
      double s = m[i][n];
      for (int j = i + 1; j < n; j++) {
        s -= m[i][j] * x[j];
      }
      x[i] = s / m[i][i];
      quadratic += x[i] * residual[i];
    }
    return Math.exp(-quadratic / 2) / Math.sqrt(det * Math.pow(2 * Math.PI, n));
  }

  private void agrees(Hypothesis h, List<Reading> readings) {
    double[] plain = plain(h, readings);
    int n = readings.size();
    Likelihood.Result result = likelihood.of(h, readings);
    assertThat(result.log()).as("%s", h.suspect()).isEqualTo(Math.log(plain[n]), within(1e-4));
    for (int i = 0; i < n; i++) {
      assertThat(result.odd()[i])
          .as("%s, slip of %s", h.suspect(), readings.get(i).check().id())
          .isEqualTo(plain[i] / plain[n], within(1e-4));
    }
    assertThat(result.parts()).hasSize(1);
    assertThat(result.parts().get(0).weight()).isEqualTo(1);
  }

  private Reading off(Hypothesis h, Check check, int id, double by) {
    return new Reading(
        id, check, new Reading.Value.Number(predictor.factors(h, check).mean() + by, 0.01));
  }

  @Test
  void oneToFourReadingsAgreeWithTheSumOverAllSubsets() {
    Random random = new Random(6);
    for (Hypothesis h : suspects()) {
      for (int n = 1; n <= 4; n++) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
          readings.add(off(h, checks.get(i), i + 1, 0.05 * random.nextGaussian()));
        }
        Collections.shuffle(readings, random);
        agrees(h, readings);
      }
    }
  }

  @Test
  void oneOrTwoSlipsAmongThemAreSeenAsSuch() {
    for (Hypothesis h : suspects()) {
      List<Reading> readings =
          List.of(
              off(h, checks.get(0), 1, 0.01),
              off(h, checks.get(1), 2, -1.5),
              off(h, checks.get(2), 3, 0.01),
              off(h, checks.get(3), 4, 0.8));
      agrees(h, readings);
      // Under most of them those two can hardly be right.
      assertThat(likelihood.of(bench.healthy(), readings).odd()[1]).isGreaterThan(0.5);
    }
  }

  @Test
  void aReadingTakenTwiceIsNotTwoWitnesses() {
    Hypothesis h = bench.healthy();
    Reading once = off(h, checks.get(2), 1, 0.1);
    Reading again = new Reading(2, once.check(), once.value());
    agrees(h, List.of(once, again));
    double one = likelihood.of(h, List.of(once)).log();
    double right = likelihood.of(h, List.of(off(h, checks.get(2), 1, 0))).log();
    double two = likelihood.of(h, List.of(once, again)).log();
    double bothRight =
        likelihood.of(h, List.of(off(h, checks.get(2), 1, 0), off(h, checks.get(2), 2, 0))).log();
    assertThat(bothRight - two).isLessThan(1.5 * (right - one));
  }

  @Test
  void zeroVoltsAreALikelierSlipThanAnyOtherWrongValue() {
    Hypothesis h = bench.healthy();
    Reading zero = new Reading(1, checks.get(2), new Reading.Value.Number(0, 0.01));
    Reading three = new Reading(1, checks.get(2), new Reading.Value.Number(3, 0.01));
    assertThat(likelihood.of(h, List.of(zero)).log())
        .isGreaterThan(likelihood.of(h, List.of(three)).log() + 1);
    agrees(h, List.of(zero));
    agrees(h, List.of(three));
  }

  @Test
  void ohmsHaveAGainAndLeadsOfTheirOwn() {
    Check ohms =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), Cart.LAMP_ON.without("BAT"));
    Hypothesis h = bench.healthy();
    agrees(h, List.of(off(h, ohms, 1, 0.1)));
    agrees(h, List.of(off(h, ohms, 1, 0.1), off(h, checks.get(2), 2, 0.05)));
    agrees(h, List.of(off(h, ohms, 1, 3), off(h, checks.get(2), 2, 0.05)));
  }

  @Test
  void theOrderOfReadingsChangesNothing() {
    Hypothesis h = suspects().get(2);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      readings.add(off(h, checks.get(i), i + 1, 0.03 * i));
    }
    double log = likelihood.of(h, readings).log();
    double[] odd = likelihood.of(h, readings).odd();
    Collections.reverse(readings);
    assertThat(likelihood.of(h, readings).log()).isEqualTo(log);
    for (int i = 0; i < 4; i++) {
      assertThat(likelihood.of(h, readings).odd()[3 - i]).isEqualTo(odd[i]);
    }
  }

  @Test
  void whatIsSeenCountsByItsChanceAndAsASlipByAThird() {
    Check look = Check.look("L1", Cart.LAMP_ON);
    Reading on = new Reading(1, look, new Reading.Value.Sight(Seen.ON));
    double chance = 0.98 + 0.02 / 3;
    double all = (1 - SLIP) * chance + SLIP / 3;
    Likelihood.Result result = likelihood.of(bench.healthy(), List.of(on));
    assertThat(result.log()).isEqualTo(Math.log(all), within(1e-9));
    assertThat(result.odd()[0]).isEqualTo(SLIP / 3 / all, within(1e-9));
    // What nobody would see of a lamp is as good as impossible.
    Reading click = new Reading(1, look, new Reading.Value.Sight(Seen.CLICKS));
    assertThat(likelihood.of(bench.healthy(), List.of(click)).log())
        .isEqualTo(Math.log((1 - SLIP) * 1e-6 + SLIP / 3), within(1e-9));
  }

  @Test
  void aRangeCountsByTheChanceToLieInIt() {
    Check check = checks.get(2);
    Prediction.Numeric p = (Prediction.Numeric) predictor.exact(bench.healthy(), check);
    double error = Cart.METER.error(MeterFunction.VOLTS_DC, p.mean()) / Math.sqrt(3);
    double sd = Math.hypot(p.sd(1), error);
    // One deviation either side holds 68.27 %.
    Reading around = new Reading(1, check, new Reading.Value.Between(p.mean() - sd, p.mean() + sd));
    double bad = Math.max(0.02, 2 * sd / 28.8);
    assertThat(Math.exp(likelihood.of(bench.healthy(), List.of(around)).log()))
        .isEqualTo((1 - SLIP) * 0.682689 + SLIP * bad, within(1e-5));
    // All above the mean: half.
    Reading above =
        new Reading(1, check, new Reading.Value.Between(p.mean(), Double.POSITIVE_INFINITY));
    assertThat(Math.exp(likelihood.of(bench.healthy(), List.of(above)).log()))
        .isEqualTo((1 - SLIP) * 0.5 + SLIP * 1, within(1e-5));
  }

  @Test
  void overRangeOnOhmsIsExpectedOfAnOpenWayOnly() {
    Check ohms =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), Cart.LAMP_ON.without("BAT"));
    Reading ol = new Reading(1, ohms, new Reading.Value.OverRange());
    Hypothesis open = Cart.suspect(bench, "L1", "burnt-out");
    assertThat(Math.exp(likelihood.of(open, List.of(ol)).log()))
        .isEqualTo((1 - SLIP) + SLIP * 0.3, within(0.01));
    assertThat(Math.exp(likelihood.of(bench.healthy(), List.of(ol)).log()))
        .isEqualTo(SLIP * 0.3, within(1e-6));
    // On volts nothing is expected to be over range.
    Reading volts = new Reading(1, checks.get(2), new Reading.Value.OverRange());
    assertThat(Math.exp(likelihood.of(bench.healthy(), List.of(volts)).log()))
        .isEqualTo(SLIP * 0.3, within(1e-6));
  }

  @Test
  void theUnlistedRestGivesEveryReadingAsASlipWould() {
    Hypothesis unlisted =
        new Hypothesis(
            SuspectId.UNLISTED,
            List.of(),
            List.of(),
            java.util.Optional.empty(),
            bench.healthy().variant(),
            loopwright.solver.History.NONE,
            0.1);
    Reading three = new Reading(1, checks.get(2), new Reading.Value.Number(3, 0.01));
    Reading seen =
        new Reading(2, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF));
    assertThat(likelihood.of(unlisted, List.of(three, seen)).log())
        .isEqualTo(Math.log(slipDensity(three)) + Math.log(1 / 3.0), within(1e-9));
  }

  @Test
  void whatNoDigitCouldHoldIsASlipFromTheStart() {
    // A thousand volts, tens of thousands of deviations off: one slip, the rest as it is.
    Hypothesis h = bench.healthy();
    Reading fine = off(h, checks.get(0), 1, 0.01);
    Reading mad = new Reading(2, checks.get(3), new Reading.Value.Number(900, 0.1));
    Likelihood.Result both = likelihood.of(h, List.of(fine, mad));
    assertThat(both.odd()[1]).isEqualTo(1, within(1e-6));
    assertThat(both.odd()[0]).isLessThan(0.1);
    assertThat(both.log()).isFinite();
  }
}
