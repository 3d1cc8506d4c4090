package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Draws;
import loopwright.solver.History;
import loopwright.solver.Meters;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bounds that clear, against draws: whatever values inside the spreads, half of them all at their
 * ends, solved by the whole matrix from rest, no display may lie outside the bounds that clear, nor
 * may a true hypothesis be called out by one.
 *
 * <p>Seeded and small by default; {@code -Dloopwright.draws=} and {@code -Dloopwright.one-in=1}
 * take more draws and more parts.
 */
class OuterBoundTest {

  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  private static final int DRAWS = Integer.getInteger("loopwright.draws", 24);

  /** Of so many parts one gets a failure. */
  private static final int ONE_IN = Integer.getInteger("loopwright.one-in", 8);

  /** Checks of one suspect. */
  private static final int CHECKS = 16;

  /** Volts and ohms by which a draw may lie outside: what two solvers may differ by. */
  private static final double SAME = 1e-5;

  private static final class Tally {
    int readings;
    int pairs;
    int undecided;
    long nanos;
    final List<String> outside = new ArrayList<>();
    final List<Double> widths = new ArrayList<>();
    final Map<String, Integer> unbounded = new LinkedHashMap<>();

    Optional<Predictor.Possible> outer(Predictor predictor, Hypothesis h, Check check) {
      long start = System.nanoTime();
      Optional<Predictor.Possible> outer = predictor.outer(h, check);
      nanos += System.nanoTime() - start;
      pairs++;
      if (outer.isEmpty()) {
        undecided++;
        unbounded.merge(h.suspect() + " " + check.setting(), 1, Integer::sum);
      }
      return outer;
    }

    void print(String title) {
      widths.sort(null);
      System.out.printf(
          "%s: %d readings, %d outside; %d bounds, %.1f %% not found, %.2f ms each; width over"
              + " drawn width median %.2f, 90 %% %.2f%n",
          title,
          readings,
          outside.size(),
          pairs,
          100.0 * undecided / Math.max(1, pairs),
          nanos / 1e6 / Math.max(1, pairs),
          widths.isEmpty() ? 0 : widths.get(widths.size() / 2),
          widths.isEmpty() ? 0 : widths.get(widths.size() * 9 / 10));
      outside.stream().limit(12).forEach(o -> System.out.println("    " + o));
      unbounded.entrySet().stream()
          .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
          .limit(6)
          .forEach(e -> System.out.println("    not found: " + e.getValue() + " x " + e.getKey()));
    }
  }

  @ParameterizedTest
  @MethodSource("loopwright.evidence.Bench#vehicles")
  void noDrawLiesOutsideTheBoundsThatClear(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    Solver full = Solver.full(network);
    Random random = new Random(77);
    Tally healthy = new Tally();
    int[] coarseOutside = new int[2];
    Tally failed = new Tally();
    for (Circuit circuit : vehicle.circuits()) {
      Workbench bench = new Workbench(network, Bench.KNOWLEDGE, METER);
      Predictor predictor = new Predictor(bench);
      Clearing clearing = new Clearing(predictor, METER);
      LoadRef load = circuit.loads().get(0);
      Setting on = circuit.onSetting();
      Optional<Loop> loop = Loop.trace(bench, on, bench.loadElement(load));
      if (loop.isEmpty()) {
        continue;
      }
      List<Check> checks = checks(bench, loop.get(), load, on);
      Set<String> parts = new LinkedHashSet<>();
      loop.get().all().forEach(l -> l.pieces().forEach(p -> parts.add(p.part())));
      List<Hypothesis> suspects = new ArrayList<>(List.of(bench.healthy()));
      for (String id : parts) {
        Part part = vehicle.requirePart(id);
        List<Hypothesis> singles =
            bench.singles(part, Context.IN_SERVICE, on, v -> false, h -> true);
        if (random.nextInt(ONE_IN) == 0 && !singles.isEmpty()) {
          suspects.add(singles.get(random.nextInt(singles.size())));
        }
      }
      for (Hypothesis h : suspects) {
        Tally tally = h == bench.healthy() ? healthy : failed;
        Map<Check, Predictor.Possible> bounds = new LinkedHashMap<>();
        Map<Check, double[]> drawn = new LinkedHashMap<>();
        List<Check> some = new ArrayList<>(checks);
        Collections.shuffle(some, random);
        for (Check check : some.subList(0, Math.min(CHECKS, some.size()))) {
          tally.outer(predictor, h, check).ifPresent(b -> bounds.put(check, b));
        }
        for (int draw = 0; draw < DRAWS; draw++) {
          Values values = Draws.of(h.variant(), random, draw % 2 == 0);
          OperatingPoint point = full.solve(h.variant(), on, values, History.NONE);
          for (Map.Entry<Check, Predictor.Possible> e : bounds.entrySet()) {
            if (e.getKey().kind() == CheckKind.OHMS && draw % 8 > 1) {
              continue;
            }
            Meters.Shown shown = shown(full, point, h, values, e.getKey());
            tally.readings++;
            double[] d =
                drawn.computeIfAbsent(
                    e.getKey(),
                    c -> new double[] {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY});
            d[0] = Math.min(d[0], shown.value());
            d[1] = Math.max(d[1], shown.value());
            double same = SAME * Math.max(1, Math.abs(shown.value()));
            boolean out =
                shown.overRange()
                    ? !Double.isInfinite(e.getValue().high())
                    : shown.value() < e.getValue().low() - same
                        || shown.value() > e.getValue().high() + same;
            if (!shown.overRange()) {
              Reading reading =
                  new Reading(1, e.getKey(), new Reading.Value.Number(shown.value(), 0));
              if (clearing.standing(h, reading) == Fact.Standing.OUT) {
                tally.outside.add("cleared: " + h.suspect() + " by " + e.getKey().id());
              }
            }
            Optional<Predictor.Possible> coarse = predictor.coarse(h, e.getKey());
            if (coarse.isPresent()) {
              coarseOutside[0]++;
              if (shown.value() < coarse.get().low() - same
                  || shown.value() > coarse.get().high() + same) {
                coarseOutside[1]++;
                tally.outside.add(
                    "coarse: "
                        + h.suspect()
                        + " "
                        + e.getKey().id()
                        + " "
                        + shown.value()
                        + " "
                        + coarse.get());
              }
            }
            if (out) {
              tally.outside.add(
                  String.format(
                      "%s, %s, %s: %.7g not in %.7g to %.7g",
                      circuit.id(),
                      h.suspect(),
                      e.getKey().id(),
                      shown.value(),
                      e.getValue().low(),
                      e.getValue().high()));
            }
          }
        }
        drawn.forEach(
            (check, d) -> {
              Predictor.Possible b = bounds.get(check);
              if (check.kind() != CheckKind.OHMS && d[1] - d[0] > 0.02) {
                tally.widths.add((b.high() - b.low()) / (d[1] - d[0]));
              }
            });
      }
    }
    healthy.print("outer bounds, sound " + name);
    failed.print("outer bounds, " + name + " with a failure");
    System.out.println(coarseOutside[0] + " coarse, " + coarseOutside[1] + " outside");
    assertThat(healthy.outside).as("readings of sound vehicles outside their bounds").isEmpty();
    assertThat(failed.outside).as("readings of failures outside their bounds").isEmpty();
  }

  private static List<Check> checks(Workbench bench, Loop loop, LoadRef load, Setting on) {
    TerminalRef post = bench.vehicle().groundedPost();
    Setting apart = on.without(bench.vehicle().battery().id());
    Set<Check> checks = new LinkedHashSet<>();
    for (Loop l : loop.all()) {
      for (int node : l.nodes()) {
        bench.network().terminals(node).stream()
            .findFirst()
            .filter(t -> !t.equals(post))
            .ifPresent(
                t -> {
                  checks.add(Check.measure(CheckKind.VOLTS, t, post, on));
                  checks.add(Check.measure(CheckKind.OHMS, t, post, apart.without(load.part())));
                });
      }
      for (Loop.Piece piece : l.pieces()) {
        Optional<TerminalRef> in = bench.network().terminals(piece.in()).stream().findFirst();
        Optional<TerminalRef> out = bench.network().terminals(piece.out()).stream().findFirst();
        if (in.isPresent() && out.isPresent() && piece.in() != piece.out()) {
          checks.add(Check.measure(CheckKind.MILLIVOLTS, in.get(), out.get(), on));
        }
      }
    }
    return List.copyOf(checks);
  }

  private static Meters.Shown shown(
      Solver solver, OperatingPoint point, Hypothesis h, Values values, Check check) {
    Network network = solver.network();
    int red = network.requireNode(check.red().orElseThrow());
    int black = network.requireNode(check.black().orElseThrow());
    if (check.kind() != CheckKind.OHMS) {
      return Meters.volts(solver, point, red, black, METER);
    }
    return Meters.ohms(
        solver,
        h.variant(),
        check.setting(),
        values,
        point.history(),
        red,
        black,
        METER,
        METER.leadOhms().typical());
  }
}
