package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;

/** What readings that were taken say of those to come, and cells judged in finer parts. */
class ExpectationTest {

  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  private final Vehicle vehicle = Bench.vehicle("motorcycle");
  private final Network network = Bench.network(vehicle);
  private final Workbench bench = new Workbench(network, Bench.KNOWLEDGE, METER);
  private final Predictor predictor = new Predictor(bench);
  private final TerminalRef post = vehicle.groundedPost();
  private final Circuit circuit =
      vehicle.circuits().stream().filter(c -> c.id().equals("neutral-lamp")).findFirst().get();
  private final Setting on = circuit.onSetting();

  private List<Hypothesis> suspects() {
    List<Hypothesis> all = new ArrayList<>(List.of(bench.healthy()));
    for (String part : List.of("L3", "G2", "W36", "W37")) {
      all.addAll(
          bench.singles(vehicle.requirePart(part), Context.IN_SERVICE, on, v -> false, h -> true));
    }
    return all;
  }

  private List<Check> checks() {
    Loop loop = Loop.trace(bench, on, bench.loadElement(circuit.loads().get(0))).orElseThrow();
    List<Check> checks = new ArrayList<>();
    for (int node : loop.nodes()) {
      network.terminals(node).stream()
          .findFirst()
          .filter(t -> !t.equals(post))
          .ifPresent(t -> checks.add(Check.measure(CheckKind.VOLTS, t, post, on)));
    }
    return checks;
  }

  private Reading near(Hypothesis h, Check check, int id) {
    // A little off the mean, so that a wrong mean shows.
    Predictor.Factors f = predictor.factors(h, check);
    return new Reading(id, check, new Reading.Value.Number(f.mean() + 0.002 * id, 0));
  }

  /** p(a, b) = p(a) p(b given a): the rule of the chain. */
  @Test
  void whatIsExpectedNextAgreesWithTheJointLikelihood() {
    Likelihood likelihood = new Likelihood(predictor, METER, vehicle.systemVolts(), 1e-12);
    List<Check> checks = checks();
    int compared = 0;
    for (Hypothesis h : suspects()) {
      List<Reading> readings = new ArrayList<>();
      for (int i = 0; i + 1 < checks.size() && i < 4; i++) {
        readings.add(near(h, checks.get(i), i + 1));
        Reading next = near(h, checks.get(i + 1), i + 2);
        double shown = ((Reading.Value.Number) next.value()).value();
        List<Reading> more = new ArrayList<>(readings);
        more.add(next);
        Prediction.Numeric expected =
            likelihood.new Expectation(h, readings, new double[readings.size()]).of(next.check());
        double z = (shown - expected.mean()) / expected.sd();
        double log = -z * z / 2 - Math.log(expected.sd() * Math.sqrt(2 * Math.PI));
        double chain = likelihood.of(h, more).log() - likelihood.of(h, readings).log();
        // The meter's error goes with what it shows there, with what is expected here.
        assertThat(log)
            .as("%s, %s after %d", h.suspect(), next.check().id(), i + 1)
            .isCloseTo(chain, within(0.1 + 0.02 * Math.abs(chain)));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(40);
  }

  @Test
  void aReadingSettlesTheNextOne() {
    Likelihood likelihood = new Likelihood(predictor, METER, vehicle.systemVolts(), 0.02);
    Check battery = Check.measure(CheckKind.VOLTS, vehicle.feedPost(), post, on);
    Check further = checks().get(2);
    Hypothesis h = bench.healthy();
    Prediction.Numeric before = likelihood.new Expectation(h, List.of(), new double[0]).of(further);
    Reading taken = near(h, battery, 1);
    Prediction.Numeric after =
        likelihood.new Expectation(h, List.of(taken), new double[1]).of(further);
    assertThat(after.sd()).isLessThan(0.5 * before.sd());
    // A slip settles nothing.
    Prediction.Numeric slipped =
        likelihood.new Expectation(h, List.of(taken), new double[] {0.9}).of(further);
    assertThat(slipped.sd()).isCloseTo(before.sd(), within(1e-12));
    assertThat(slipped.mean()).isCloseTo(before.mean(), within(1e-12));
  }

  /** Against the same cell cut into 64, the plain way: average of the likelihoods. */
  @Test
  void aCellInFinerPartsIsJudgedMoreTruly() {
    Likelihood likelihood = new Likelihood(predictor, METER, vehicle.systemVolts(), 0.02);
    Finer finer = new Finer(bench, likelihood, h -> 1);
    List<Check> checks = checks();
    double coarseError = 0;
    double finerError = 0;
    int count = 0;
    for (Hypothesis cell : suspects()) {
      if (cell.cell().isEmpty() || cell.failures().size() != 1) {
        continue;
      }
      List<Reading> readings = new ArrayList<>();
      Spread range = cell.cell().get();
      double ohms = range.low() * Math.pow(range.high() / range.low(), 0.3);
      Variant truth =
          Variant.healthy(network)
              .with(cell.failures().get(0).changes(network, Spread.exactly(ohms)));
      var point = Solver.full(network).solve(truth, on, Values.typical(truth), cell.history());
      for (int i = 0; i < 3; i++) {
        Check check = checks.get(i * (checks.size() - 1) / 2);
        double shown = point.volts(network.requireNode(check.red().orElseThrow()), -1);
        readings.add(new Reading(i + 1, check, new Reading.Value.Number(shown, 0)));
      }
      double plain = 0;
      for (Spread small : Workbench.cells(range, Math.pow(range.high() / range.low(), 1 / 64.0))) {
        Variant variant =
            Variant.healthy(network).with(cell.failures().get(0).changes(network, small));
        Hypothesis one =
            new Hypothesis(
                cell.suspect(),
                cell.parts(),
                cell.failures(),
                java.util.Optional.of(small),
                variant,
                cell.history(),
                cell.prior());
        plain += Math.exp(likelihood.of(one, readings).log()) / 64;
      }
      coarseError += Math.abs(likelihood.of(cell, readings).log() - Math.log(plain));
      finerError += Math.abs(finer.of(cell, readings).log() - Math.log(plain));
      count++;
    }
    System.out.printf(
        "cells of resistance: log likelihood off by %.2f as a whole, %.2f in four parts, %d cells%n",
        coarseError / count, finerError / count, count);
    assertThat(count).isGreaterThan(10);
    assertThat(finerError).isLessThan(0.6 * coarseError);
    assertThat(finerError / count).isLessThan(0.5);
  }
}
