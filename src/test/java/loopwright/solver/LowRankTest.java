package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The quick way against the plain one: every single failure of every part of the demo vehicles, in
 * the setting of every circuit, solved by changes of one factorisation and by factoring anew.
 *
 * <p>Of shorts to a neighbouring wire, of which there are hundreds, every seventeenth. A resistance
 * range is tried low, in the middle and high, in turn.
 *
 * <p>Tolerance: both ways stop when a linear step moves no node by more than 1e-9 V. The quick way
 * may leave over at a node a picoampere and {@link Balance#TOLERANCE} of the volts times
 * conductances that meet there; over the resistance that the node sees, this moves its volts. A
 * cut-off node sees its leak of a gigaohm. Nodes tied together share what is left over, so those
 * next to a node count too.
 */
class LowRankTest {

  private static final double SETTLED = 1e-8;
  private static final double LEFT_OVER_AMPS = 1e-12;
  private static final int NEIGHBOURS = 17;

  /** Nodes that see less than this count as part of a working circuit in the figures printed. */
  private static final double STIFF = 1e5;

  @ParameterizedTest
  @MethodSource("loopwright.evidence.Bench#vehicles")
  void everySingleFailureGivesTheSameBothWays(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    Set<Setting> settings = new LinkedHashSet<>();
    settings.add(Setting.REST);
    vehicle.circuits().stream().map(Circuit::onSetting).forEach(settings::add);
    List<Variant> variants = variants(network);
    double worstStiff = 0;
    double worstSoft = 0;
    double worstShare = 0;
    double fallback = 0;
    long lowNanos = 0;
    long fullNanos = 0;
    int solved = 0;
    int buzzing = 0;
    List<String> wrong = new ArrayList<>();
    Solver full = Solver.full(network);
    for (Setting setting : settings) {
      Solver low = Solver.lowRank(network, setting);
      for (Variant variant : variants) {
        long t0 = System.nanoTime();
        OperatingPoint p = low.solve(variant, setting);
        long t1 = System.nanoTime();
        OperatingPoint q = full.solve(variant, setting);
        long t2 = System.nanoTime();
        lowNanos += t1 - t0;
        fullNanos += t2 - t1;
        solved++;
        String what = what(variant) + " in " + setting;
        if (p.ending() != q.ending()) {
          wrong.add(what + ": " + p.ending() + " against " + q.ending());
          continue;
        }
        if (p.ending() == OperatingPoint.Ending.BUZZING) {
          buzzing++;
          continue;
        }
        if (!p.pulledIn().equals(q.pulledIn())) {
          wrong.add(what + ": pulled in " + p.pulledIn() + " against " + q.pulledIn());
          continue;
        }
        if (!p.history().blown().equals(q.history().blown())) {
          wrong.add(what + ": blown " + p.history() + " against " + q.history());
          continue;
        }
        for (int e = 0; e < variant.size(); e++) {
          if (p.running(e) != q.running(e)) {
            wrong.add(what + ": motor " + e + " runs " + p.running(e));
          }
        }
        for (int node = 0; node < network.nodes(); node++) {
          double off = Math.abs(p.volts(node) - q.volts(node));
          if (off < SETTLED) {
            continue;
          }
          double seen = q.ohmsSeen(node, Network.REFERENCE);
          double allowed = SETTLED + seen * leftOver(q, node);
          worstShare = Math.max(worstShare, off / allowed);
          if (seen < STIFF) {
            worstStiff = Math.max(worstStiff, off);
          } else {
            worstSoft = Math.max(worstSoft, off);
          }
          if (off > allowed) {
            wrong.add(
                String.format(
                    "%s: node %d %s is %.9g against %.9g V, sees %.3g ohm",
                    what, node, network.terminals(node), p.volts(node), q.volts(node), seen));
            break;
          }
        }
      }
      fallback += low.fallbackShare();
    }
    System.out.printf(
        "low rank, %s: %d variants x %d settings = %d solves, %d buzzing; worst difference %.2g V"
            + " at nodes that see under 100 kohm, %.2g V at cut-off ones (share of allowance"
            + " %.2g); factored anew in %.2f %% of linear steps; %.0f us against %.0f us a solve;"
            + " %d wrong%n",
        name,
        variants.size(),
        settings.size(),
        solved,
        buzzing,
        worstStiff,
        worstSoft,
        worstShare,
        100 * fallback / settings.size(),
        lowNanos / 1e3 / solved,
        fullNanos / 1e3 / solved,
        wrong.size());
    assertThat(wrong.stream().limit(20)).isEmpty();
    assertThat(fallback / settings.size()).as("mostly without a fresh factor").isLessThan(0.5);
  }

  /** Amperes that may be left over at a node and its neighbours. */
  private static double leftOver(OperatingPoint point, int node) {
    double own = meeting(point, node);
    double most = own;
    Variant variant = point.variant();
    for (int e = 0; e < variant.size(); e++) {
      if (point.siemens(e) > 0) {
        Element element = variant.element(e);
        if (element.a() == node && element.b() >= 0) {
          most = Math.max(most, meeting(point, element.b()));
        } else if (element.b() == node && element.a() >= 0) {
          most = Math.max(most, meeting(point, element.a()));
        }
      }
    }
    return 2 * (LEFT_OVER_AMPS + Balance.TOLERANCE * most);
  }

  private static double meeting(OperatingPoint point, int node) {
    double sum = 0;
    Variant variant = point.variant();
    for (int e = 0; e < variant.size(); e++) {
      Element element = variant.element(e);
      if (element.a() == node || element.b() == node) {
        sum +=
            point.siemens(e)
                * (Math.abs(point.volts(element.a())) + Math.abs(point.volts(element.b())));
      }
    }
    return sum;
  }

  private static String what(Variant variant) {
    StringBuilder text = new StringBuilder();
    for (int e = 0; e < variant.size(); e++) {
      if (variant.removed(e) || variant.touched(e) || e >= variant.baseCount()) {
        Element element = variant.element(e);
        text.append(variant.removed(e) ? " no " : " changed ")
            .append(element.part())
            .append('/')
            .append(element.role());
      }
    }
    return text.toString();
  }

  private static List<Variant> variants(Network network) {
    List<Variant> variants = new ArrayList<>();
    int neighbour = 0;
    int range = 0;
    for (Part part : network.vehicle().parts()) {
      for (Failure failure : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
        if (failure.name().startsWith("short-to-neighbour") && neighbour++ % NEIGHBOURS != 0) {
          continue;
        }
        Optional<Spread> continuum = failure.continuum();
        Spread added = Spread.exactly(0);
        if (continuum.isPresent()) {
          Spread s = continuum.get();
          double[] choice = {s.low(), s.typical(), s.high()};
          added = Spread.exactly(choice[range++ % 3]);
        }
        variants.add(Variant.healthy(network).with(failure.changes(network, added)));
      }
    }
    return variants;
  }
}
