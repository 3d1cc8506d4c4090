package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.knowledge.Context;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.Meters;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import org.junit.jupiter.api.Test;

/** What suspects of the hand cart may show, what that clears, and how their ranges are cut. */
class BoundsOfSuspectsTest {

  private final Workbench bench = Cart.bench();
  private final Predictor predictor = new Predictor(bench);
  private final Clearing clearing = new Clearing(predictor, Cart.METER);
  private final Check atLamp = Cart.volts("L1.in", Cart.LAMP_ON);
  private final Check atFuse = Cart.volts("F1.load", Cart.LAMP_ON);

  private static Reading number(int id, Check check, double value) {
    return new Reading(id, check, new Reading.Value.Number(value, 0.01));
  }

  // ---- cells ----------------------------------------------------------------------------------

  @Test
  void aRangeIsCutIntoCellsOfEqualRatioThatMeet() {
    List<Spread> cells = Workbench.cells(new Spread(0.03, 30, 30_000), Math.sqrt(10));
    // Six decades at two a decade.
    assertThat(cells).hasSize(12);
    assertThat(cells.get(0).low()).isEqualTo(0.03);
    assertThat(cells.get(11).high()).isEqualTo(30_000);
    for (int c = 0; c < 12; c++) {
      Spread cell = cells.get(c);
      assertThat(cell.high() / cell.low()).isEqualTo(Math.sqrt(10), within(1e-9));
      assertThat(cell.typical()).isEqualTo(Math.sqrt(cell.low() * cell.high()), within(1e-9));
      if (c > 0) {
        assertThat(cell.low()).isEqualTo(cells.get(c - 1).high());
      }
    }
    assertThat(Workbench.cells(new Spread(1, 1.05, 1.1), 10)).hasSize(1);
  }

  @Test
  void theChancesOfTheCellsAddUpToThatOfTheMode() {
    for (String part : List.of("W9", "F1", "G1")) {
      var failure =
          part.equals("G1")
              ? Cart.failure(part, "on-paint")
              : Cart.failure(part, "high-resistance");
      List<Hypothesis> cells = Cart.suspects(bench, part, failure.name());
      assertThat(cells.stream().mapToDouble(Hypothesis::prior).sum())
          .isEqualTo(failure.rate(Context.IN_SERVICE), within(1e-12));
    }
    // Shorts are cut coarser: three decades, three cells.
    assertThat(Cart.suspects(bench, "W8", "short-to-ground")).hasSize(3);
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    assertThat(open.cell()).isEmpty();
    assertThat(open.prior())
        .isEqualTo(Cart.failure("W8", "open").rate(Context.IN_SERVICE), within(1e-15));
  }

  @Test
  void aRangeWhoseGreatestOhmsChangeNothingIsLeftOutWhole() {
    var part = Cart.VEHICLE.requirePart("W9");
    List<Hypothesis> none =
        bench.singles(part, Context.IN_SERVICE, Cart.LAMP_ON, v -> false, h -> h.cell().isEmpty());
    assertThat(none)
        .noneMatch(h -> h.suspect().mode().equals("high-resistance"))
        .anyMatch(h -> h.suspect().mode().equals("short-to-feed"));
  }

  @Test
  void aCellIsCutIntoFourFinerOnes() {
    Hypothesis cell = Cart.suspects(bench, "W9", "high-resistance").get(4);
    List<Hypothesis> finer = bench.finer(cell);
    assertThat(finer).hasSize(4);
    assertThat(finer.get(0).cell().orElseThrow().low()).isEqualTo(cell.cell().orElseThrow().low());
    assertThat(finer.get(3).cell().orElseThrow().high())
        .isEqualTo(cell.cell().orElseThrow().high());
    assertThat(finer.stream().mapToDouble(Hypothesis::prior).sum())
        .isEqualTo(cell.prior(), within(1e-15));
    assertThat(finer).allMatch(h -> h.suspect().equals(cell.suspect()));
    assertThat(bench.finer(Cart.suspect(bench, "W8", "open"))).isEmpty();
  }

  @Test
  void theFinestCellsWithAnyBeliefAreLookedAtCloselyStrongestFirst() {
    List<Hypothesis> cells = new ArrayList<>(Cart.suspects(bench, "W9", "high-resistance"));
    cells.addAll(Cart.suspects(bench, "G1", "on-paint"));
    Map<Hypothesis, Double> belief = new IdentityHashMap<>();
    for (int k = 0; k < cells.size(); k++) {
      belief.put(cells.get(k), k == 0 ? 1e-7 : 0.001 * (k + 1));
    }
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    belief.put(open, 0.9);
    List<Hypothesis> worth = Finer.worthIt(belief);
    assertThat(worth).hasSize(12).doesNotContain(open, cells.get(0));
    assertThat(worth.get(0)).isSameAs(cells.get(cells.size() - 1));
    for (int k = 1; k < worth.size(); k++) {
      assertThat(belief.get(worth.get(k))).isLessThanOrEqualTo(belief.get(worth.get(k - 1)));
    }
  }

  @Test
  void aCellsLikelihoodIsTheMeanOfItsParts() {
    Likelihood likelihood = new Likelihood(predictor, Cart.METER, 12, 0.02);
    Hypothesis cell = Cart.suspects(bench, "W9", "high-resistance").get(4);
    Finer finer = new Finer(bench, likelihood, h -> 1);
    List<Reading> readings = List.of(number(1, atLamp, 12.1), number(2, atFuse, 12.4));
    Likelihood.Result result = finer.of(cell, readings);
    double sum = 0;
    double odd = 0;
    for (Likelihood.Part part : result.parts()) {
      Likelihood.Result own = likelihood.of(part.hypothesis(), readings);
      sum += Math.exp(own.log()) / 4;
      odd += part.weight() * own.odd()[0];
      assertThat(part.weight()).isEqualTo(Math.exp(own.log() - result.log()) / 4, within(1e-9));
    }
    assertThat(result.parts()).hasSize(4);
    assertThat(result.log()).isEqualTo(Math.log(sum), within(1e-9));
    assertThat(result.odd()[0]).isEqualTo(odd, within(1e-12));
    // Parts that can't cause the complaint are left out, and nothing is left of a sure one.
    Finer upper =
        new Finer(
            bench,
            likelihood,
            h -> h.cell().orElseThrow().low() > cell.cell().orElseThrow().typical() * 0.99 ? 2 : 0);
    assertThat(upper.of(cell, readings).parts()).hasSize(2);
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    assertThat(finer.of(open, readings).log()).isEqualTo(likelihood.of(open, readings).log());
  }

  // ---- bounds against draws ---------------------------------------------------------------------

  private Values drawn(Hypothesis h, Random random) {
    Values values = Values.typical(h.variant());
    for (int e = 0; e < h.variant().size(); e++) {
      Spread[] spreads = h.variant().element(e).values();
      for (int k = 0; k < spreads.length; k++) {
        values.set(e, k, random.nextBoolean() ? spreads[k].low() : spreads[k].high());
      }
    }
    return values;
  }

  private List<Hypothesis> some() {
    List<Hypothesis> all = new ArrayList<>(List.of(bench.healthy()));
    all.add(Cart.suspects(bench, "W9", "high-resistance").get(4));
    all.add(Cart.suspects(bench, "W8", "short-to-ground").get(1));
    all.add(Cart.suspect(bench, "K1", "coil-open"));
    all.add(Cart.suspect(bench, "L1", "wrong-lamp"));
    all.add(Cart.suspect(bench, "BAT", "flat"));
    return all;
  }

  @Test
  void noDrawLiesOutsideOfWhatIsPossible() {
    Random random = new Random(12);
    Solver full = Solver.full(Cart.NETWORK);
    Check ohms =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), Cart.LAMP_ON.without("BAT"));
    for (Hypothesis h : some()) {
      for (Check check : List.of(atLamp, atFuse, ohms)) {
        Predictor.Possible quick = predictor.possible(h, check);
        Predictor.Possible corners = predictor.possibleAtCorners(h, check);
        Predictor.Possible outer = predictor.outer(h, check).orElseThrow();
        Optional<Predictor.Possible> coarse = predictor.coarse(h, check);
        assertThat(coarse.isPresent()).isEqualTo(check != ohms);
        assertThat(corners.low()).isLessThanOrEqualTo(quick.low());
        assertThat(corners.high()).isGreaterThanOrEqualTo(quick.high());
        for (int draw = 0; draw < 12; draw++) {
          Values values = drawn(h, random);
          History before = full.solve(h.variant(), Cart.LAMP_ON, values, History.NONE).history();
          OperatingPoint point = full.solve(h.variant(), check.setting(), values, before);
          Meters.Shown shown =
              check == ohms
                  ? Meters.ohms(
                      full,
                      h.variant(),
                      check.setting(),
                      values,
                      before,
                      Cart.NETWORK.requireNode(check.red().orElseThrow()),
                      Cart.NETWORK.requireNode(check.black().orElseThrow()),
                      Cart.METER,
                      random.nextBoolean()
                          ? Cart.METER.leadOhms().low()
                          : Cart.METER.leadOhms().high())
                  : Meters.volts(
                      full,
                      point,
                      Cart.NETWORK.requireNode(check.red().orElseThrow()),
                      Cart.NETWORK.requireNode(check.black().orElseThrow()),
                      Cart.METER);
          String what = h.suspect() + " " + check.id();
          double slack = 1e-4 * Math.max(1, Math.abs(shown.value()));
          assertThat(shown.value()).as(what).isBetween(outer.low() - slack, outer.high() + slack);
          coarse.ifPresent(
              c -> assertThat(shown.value()).as(what).isBetween(c.low() - slack, c.high() + slack));
        }
      }
    }
  }

  @Test
  void outerBoundsOfManyAreThoseOfEach() {
    Predictor one = new Predictor(Cart.bench());
    List<Hypothesis> all = some();
    all.parallelStream().forEach(h -> predictor.outer(h, atLamp));
    for (Hypothesis h : all) {
      assertThat(predictor.outer(h, atLamp)).isPresent();
    }
    assertThat(one.outer(bench.healthy(), atLamp).orElseThrow().low())
        .isEqualTo(predictor.outer(bench.healthy(), atLamp).orElseThrow().low(), within(1e-9));
    Check diode =
        Check.measure(
            CheckKind.DIODE, Cart.at("K1.86"), Cart.at("K1.85"), Setting.REST.without("K1"));
    // No bounds are worked out for the diode test, so it never clears.
    assertThat(predictor.outer(bench.healthy(), diode)).isEmpty();
  }

  @Test
  void exactPredictionsLieAmidTheDraws() {
    Random random = new Random(4);
    for (Hypothesis h : List.of(bench.healthy(), some().get(1), some().get(4))) {
      Prediction.Numeric p = (Prediction.Numeric) predictor.exact(h, atLamp);
      Solver full = Solver.full(Cart.NETWORK);
      double sum = 0;
      double square = 0;
      int n = 300;
      for (int k = 0; k < n; k++) {
        Values values = Values.typical(h.variant());
        for (int e = 0; e < h.variant().size(); e++) {
          Spread[] spreads = h.variant().element(e).values();
          for (int v = 0; v < spreads.length; v++) {
            double u = random.nextDouble();
            values.set(e, v, spreads[v].low() + u * (spreads[v].high() - spreads[v].low()));
          }
        }
        double shown =
            full.solve(h.variant(), Cart.LAMP_ON, values, History.NONE)
                .volts(Cart.NETWORK.requireNode(Cart.at("L1.in")));
        sum += shown;
        square += shown * shown;
      }
      double mean = sum / n;
      double sd = Math.sqrt(square / n - mean * mean);
      // Even spreads around their middle instead of around the typical value: a deviation.
      assertThat(p.mean()).as("%s", h.suspect()).isEqualTo(mean, within(sd + 0.05));
      assertThat(p.sd()).as("%s", h.suspect()).isBetween(0.6 * sd, 1.6 * sd);
      assertThat(p.battery()).isZero();
      Prediction.Numeric quick = (Prediction.Numeric) predictor.predict(h, atLamp);
      assertThat(quick.mean()).isEqualTo(p.mean(), within(0.3));
      assertThat(quick.sd(1)).isBetween(0.3 * sd, 4 * sd + 0.1);
    }
  }

  @Test
  void relaysClickAndFusesAreSeenBroken() {
    Check listen = Check.look("K1", Cart.LAMP_ON);
    assertThat(sight(bench.healthy(), listen).chance(Seen.CLICKS)).isEqualTo(0.95);
    Hypothesis coil = Cart.suspect(bench, "K1", "coil-open");
    assertThat(sight(coil, listen).chance(Seen.CLICKS)).isEqualTo(0.03);
    assertThat(sight(coil, listen).chance(Seen.SILENT)).isEqualTo(0.97);
    Check look = Check.look("F1", Cart.LAMP_ON);
    assertThat(sight(bench.healthy(), look).chance(Seen.BROKEN)).isEqualTo(0.02);
    assertThat(sight(Cart.suspect(bench, "F1", "blown"), look).chance(Seen.BROKEN)).isEqualTo(0.9);
    assertThat(sight(Cart.suspect(bench, "W8", "short-to-ground"), look).chance(Seen.BROKEN))
        .isEqualTo(0.9);
    assertThat(sight(Cart.suspect(bench, "W8", "open"), look).chance(Seen.WHOLE)).isEqualTo(0.98);
  }

  private Prediction.Sight sight(Hypothesis h, Check check) {
    Prediction.Sight quick = (Prediction.Sight) predictor.predict(h, check);
    assertThat(predictor.exact(h, check)).isEqualTo(quick);
    return quick;
  }

  // ---- levels and settings ----------------------------------------------------------------------

  @Test
  void aLoadsLevelIsItsShareOfTheHealthyPower() {
    OperatingPoint on = bench.point(bench.healthy(), Cart.LAMP_ON);
    assertThat(bench.level(on, Cart.LAMP, Cart.LAMP_ON)).isEqualTo(1, within(1e-9));
    assertThat(bench.level(on, Cart.TAIL, Cart.TAIL_ON)).isEqualTo(0, within(1e-6));
    Hypothesis dim = Cart.suspects(bench, "W9", "high-resistance").get(4);
    OperatingPoint weak = bench.point(dim, Cart.LAMP_ON);
    int filament = bench.loadElement(Cart.LAMP);
    double watts = weak.across(filament) * weak.amps(filament);
    double full = on.across(filament) * on.amps(filament);
    assertThat(bench.level(weak, Cart.LAMP, Cart.LAMP_ON)).isEqualTo(watts / full, within(1e-9));
    // No healthy power, no share.
    assertThat(bench.level(on, Cart.LAMP, Setting.REST)).isZero();
    assertThat(Cart.NETWORK.elements().get(filament)).isInstanceOf(Element.Filament.class);
  }

  @Test
  void aComplaintShowsInItsOwnSetting() {
    for (ComplaintKind kind : ComplaintKind.values()) {
      Setting expected =
          switch (kind) {
            case STUCK_ON, DRAINS_BATTERY -> Setting.REST;
            default -> Cart.LAMP_ON;
          };
      Setting shows = bench.shows(Cart.complaint(kind));
      assertThat(shows.apart()).as("%s", kind).isEmpty();
      assertThat(Cart.VEHICLE.position("S1", shows))
          .as("%s", kind)
          .isEqualTo(Cart.VEHICLE.position("S1", expected));
    }
  }

  @Test
  void pointsOfHypothesesOutOfPlayAreForgotten() {
    Hypothesis open = Cart.suspect(bench, "W8", "open");
    bench.points(open, Cart.LAMP_ON);
    bench.points(bench.healthy(), Cart.LAMP_ON);
    int kept = bench.kept();
    assertThat(kept).isEqualTo(2);
    Set<Hypothesis> play = Collections.newSetFromMap(new IdentityHashMap<>());
    play.add(bench.healthy());
    bench.keepOnly(play);
    assertThat(bench.kept()).isEqualTo(1);
    assertThat(bench.points(open, Cart.LAMP_ON).get(0).setting()).isEqualTo(Cart.LAMP_ON);
  }

  @Test
  void pointsHoldTheEndsOfTheFailuresOwnRange() {
    Hypothesis cell = Cart.suspects(bench, "W9", "high-resistance").get(4);
    List<OperatingPoint> points = bench.points(cell, Cart.LAMP_ON);
    int wire = Cart.NETWORK.element("W9", "conductor").orElseThrow();
    Spread ohms = cell.variant().element(wire).values()[0];
    assertThat(points.get(0).values().get(wire, 0)).isEqualTo(ohms.typical());
    assertThat(points.get(1).values().get(wire, 0)).isEqualTo(ohms.low());
    assertThat(points.get(2).values().get(wire, 0)).isEqualTo(ohms.high());
    assertThat(bench.points(cell, Cart.LAMP_ON)).isSameAs(points);
    assertThat(bench.points(bench.healthy(), Cart.LAMP_ON)).hasSize(1);
    assertThat(bench.extremePoints(cell, Cart.LAMP_ON)).containsAll(points);
  }

  // ---- clearing -------------------------------------------------------------------------------

  @Test
  void aReadingOutsideItsBandByMoreThanTheMetersErrorIsOut() {
    Hypothesis h = bench.healthy();
    // The quick band lets pass what it holds; beyond it only the outer bounds count.
    Predictor.Possible outer =
        predictor.outer(h, atLamp).orElseThrow().join(predictor.possible(h, atLamp));
    double low = outer.low();
    double guard = Cart.METER.error(loopwright.meter.MeterFunction.VOLTS_DC, low) + 0.01 / 2;
    assertThat(clearing.standing(h, number(1, atLamp, 12.5))).isEqualTo(Fact.Standing.IN);
    assertThat(clearing.standing(h, number(1, atLamp, low - 3 * guard)))
        .isEqualTo(Fact.Standing.OUT);
    assertThat(clearing.standing(h, number(1, atLamp, low - guard / 2)))
        .isNotEqualTo(Fact.Standing.OUT);
    assertThat(clearing.standing(h, number(1, atLamp, outer.high() + 3 * guard)))
        .isEqualTo(Fact.Standing.OUT);
    assertThat(clearing.odd(h, number(1, atLamp, low - 10 * guard))).isTrue();
    assertThat(clearing.odd(h, number(1, atLamp, 12.5))).isFalse();
  }

  private Fact.Standing between(Hypothesis h, double low, double high) {
    return clearing.standing(h, new Reading(1, atLamp, new Reading.Value.Between(low, high)));
  }

  @Test
  void aRangeIsOutOnlyIfAllOfItIs() {
    Hypothesis h = bench.healthy();
    double infinite = Double.POSITIVE_INFINITY;
    assertThat(between(h, 5, 20)).isEqualTo(Fact.Standing.IN);
    assertThat(between(h, 1, 9)).isEqualTo(Fact.Standing.OUT);
    assertThat(between(h, 14, 20)).isEqualTo(Fact.Standing.OUT);
    assertThat(between(h, 14, infinite)).isEqualTo(Fact.Standing.OUT);
    assertThat(between(h, 9, infinite)).isEqualTo(Fact.Standing.IN);
    assertThat(between(h, -infinite, 9)).isEqualTo(Fact.Standing.OUT);
  }

  @Test
  void sightsAndTheUnlistedRestClearNothing() {
    Reading off = new Reading(1, Check.look("L1", Cart.LAMP_ON), new Reading.Value.Sight(Seen.OFF));
    assertThat(clearing.standing(bench.healthy(), off)).isEqualTo(Fact.Standing.IN);
    assertThat(clearing.odd(bench.healthy(), off)).isFalse();
    Hypothesis unlisted =
        new Hypothesis(
            SuspectId.UNLISTED,
            List.of(),
            List.of(),
            Optional.empty(),
            bench.healthy().variant(),
            History.NONE,
            0.1);
    assertThat(clearing.standing(unlisted, number(1, atLamp, 40))).isEqualTo(Fact.Standing.IN);
    assertThat(clearing.odd(unlisted, number(1, atLamp, 40))).isFalse();
    assertThat(clearing.margins(List.of(unlisted), List.of(number(1, atLamp, 40)), Set.of()))
        .isEmpty();
  }

  @Test
  void overRangeIsOutUnlessTheWayMayBeOpen() {
    Check ohms =
        Check.measure(
            CheckKind.OHMS, Cart.at("L1.in"), Cart.at("G1.lug"), Setting.REST.without("BAT"));
    Reading ol = new Reading(1, ohms, new Reading.Value.OverRange());
    assertThat(clearing.standing(bench.healthy(), ol)).isEqualTo(Fact.Standing.OUT);
    assertThat(clearing.standing(Cart.suspect(bench, "L1", "burnt-out"), ol))
        .isEqualTo(Fact.Standing.IN);
  }

  @Test
  void aRangeIsOutByAFewReadingsThatTogetherRuleOutEveryCell() {
    List<Hypothesis> cells = Cart.suspects(bench, "W9", "high-resistance");
    // A tenth of a volt on the ground side, then nine of them: 1.7 A make that of two cells.
    Check before = Cart.volts("L1.out", Cart.LAMP_ON);
    List<Reading> readings =
        List.of(number(1, atFuse, 12.5), number(2, before, 0.1), number(3, before, 9));
    List<Fact.Margin> margins = clearing.margins(cells, readings, Set.of());
    assertThat(margins).hasSize(1);
    Fact.Margin margin = margins.get(0);
    assertThat(margin.standing()).isEqualTo(Fact.Standing.OUT);
    assertThat(margin.suspect()).isEqualTo(new SuspectId("W9", "high-resistance"));
    // Small ohms are out by the 9 V, great ones by the 30 mV; the fuse's volts tell nothing.
    assertThat(margin.readings()).containsExactlyInAnyOrder(2, 3);
    assertThat(margin.direct()).isFalse();
    // By one reading alone it isn't.
    assertThat(clearing.margins(cells, readings.subList(0, 2), Set.of()))
        .noneMatch(m -> m.standing() == Fact.Standing.OUT);
    List<Fact.Margin> good =
        clearing.margins(cells, readings, Set.of(new SuspectId("W9", "high-resistance")));
    assertThat(good.get(0).direct()).isTrue();
  }

  @Test
  void whatOneReadingRulesOutIsNotRuledOutTwice() {
    Hypothesis fuse = Cart.suspect(bench, "F1", "blown");
    Reading full = number(1, atFuse, 12.5);
    Reading again = number(2, atFuse, 12.5);
    Reading lamp = number(3, atLamp, 12.4);
    assertThat(clearing.outTwice(List.of(fuse), List.of(full))).isEmpty();
    assertThat(clearing.outTwice(List.of(fuse), List.of(full, again))).isEmpty();
    assertThat(clearing.outTwice(List.of(fuse), List.of(full, lamp)))
        .containsExactly(fuse.suspect());
    // Every cell has to be.
    List<Hypothesis> cells = Cart.suspects(bench, "F1", "high-resistance");
    assertThat(clearing.outTwice(cells, List.of(full, lamp))).isEmpty();
  }

  @Test
  void aPartShownGoodIsToldSoEvenWhereItIsNotOut() {
    Check across =
        Check.measure(CheckKind.MILLIVOLTS, Cart.at("F1.feed"), Cart.at("F1.load"), Cart.LAMP_ON);
    Reading drop = number(4, across, 0.02);
    List<Hypothesis> cells = Cart.suspects(bench, "F1", "high-resistance");
    List<Fact.Margin> margins =
        clearing.margins(
            cells.subList(0, 1),
            List.of(drop, number(5, atFuse, 12.5)),
            Set.of(new SuspectId("F1", "high-resistance")));
    assertThat(margins).hasSize(1);
    assertThat(margins.get(0).direct()).isTrue();
    if (margins.get(0).standing() == Fact.Standing.IN) {
      assertThat(margins.get(0).readings()).containsExactly(4);
    }
  }
}
