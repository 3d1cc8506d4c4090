package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import loopwright.evidence.Bench;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/**
 * Laws that hold for every circuit, on seeded made-up ones: chains, branches and bridges of
 * resistors over six decades, lamps, diodes, LEDs, motors, switches and relays, on 6, 12 and 24 V,
 * either post to ground.
 */
class GeneratedNetworksTest {

  private static final int RUNS = 400;

  /** A made-up circuit: its parts, and which node each terminal lies on. */
  private record Made(
      int volts, GroundedPole grounded, List<Part> parts, List<List<TerminalRef>> nodes) {

    Vehicle vehicle(List<Part> order) {
      return new Vehicle(
          "made",
          "made",
          volts,
          grounded,
          order,
          nodes.stream().filter(l -> l.size() > 1).toList(),
          List.of(),
          "");
    }

    Network network() {
      return Network.of(vehicle(parts), Bench.KNOWLEDGE.typicals());
    }
  }

  private static double ohms(Random random, double decades) {
    return Math.pow(10, -2 + decades * random.nextDouble());
  }

  private static PartSpec any(Random random, int volts, boolean linear) {
    double pick = linear ? 0 : random.nextDouble();
    if (pick < 0.5) {
      return new PartSpec.Sender(Spread.exactly(ohms(random, 6)));
    }
    if (pick < 0.68) {
      return new PartSpec.Lamp(Optional.of((double) volts), exactly(2 + 58 * random.nextDouble()));
    }
    if (pick < 0.78) {
      return new PartSpec.Diode(Optional.empty());
    }
    if (pick < 0.84) {
      return new PartSpec.Led(Optional.empty(), exactly(0.01 + 0.02 * random.nextDouble()));
    }
    if (pick < 0.9) {
      return new PartSpec.Motor(exactly(1 + 6 * random.nextDouble()), Optional.empty());
    }
    return new PartSpec.Relay(
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        random.nextBoolean()
            ? PartSpec.Suppression.RESISTOR
            : PartSpec.Suppression.DIODE_CATHODE_85,
        Optional.empty());
  }

  /** Node 0 is ground, node 1 the live post. */
  private static Made make(Random random, boolean linear) {
    int volts = new int[] {6, 12, 24}[random.nextInt(3)];
    GroundedPole grounded = random.nextBoolean() ? GroundedPole.NEGATIVE : GroundedPole.POSITIVE;
    int count = 3 + random.nextInt(7);
    List<List<TerminalRef>> nodes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      nodes.add(new ArrayList<>());
    }
    List<Part> parts = new ArrayList<>();
    PartSpec battery =
        new PartSpec.Battery(
            Optional.of(exactly(1.05 * volts)),
            Optional.of(exactly(0.005 + 0.05 * random.nextDouble())));
    parts.add(Part.of("BAT", "BAT", battery));
    boolean negative = grounded == GroundedPole.NEGATIVE;
    nodes.get(negative ? 1 : 0).add(new TerminalRef("BAT", "pos"));
    nodes.get(negative ? 0 : 1).add(new TerminalRef("BAT", "neg"));
    // A chain from the live post through every node to ground, then branches and bridges across.
    int extra = random.nextInt(2 * count);
    for (int k = 0; k < count - 1 + extra; k++) {
      int from = k < count - 1 ? k + 1 : random.nextInt(count);
      int to = k < count - 1 ? (k + 2) % count : random.nextInt(count);
      if (from == to) {
        continue;
      }
      PartSpec spec = any(random, volts, linear);
      String id = "P" + k;
      parts.add(Part.of(id, id, spec));
      List<String> terminals = spec.terminals();
      for (int t = 0; t < terminals.size(); t++) {
        int node = t == 0 ? from : t == 1 ? to : random.nextInt(count);
        nodes.get(node).add(new TerminalRef(id, terminals.get(t)));
      }
    }
    return new Made(volts, grounded, List.copyOf(parts), nodes);
  }

  private static OperatingPoint solve(Network network) {
    return Solver.full(network).solve(Variant.healthy(network), Setting.REST);
  }

  /**
   * Current of an element by its law, written out here once more: nothing of the solver's own
   * linear steps is used.
   */
  private static double lawAmps(Network network, OperatingPoint point, int e) {
    Element element = network.elements().get(e);
    Values values = point.values();
    double v = point.across(e);
    if (element instanceof Element.Cell) {
      return (v - values.get(e, 0)) / values.get(e, 1);
    }
    if (element instanceof Element.Filament f) {
      double hot = values.get(e, 0) * Math.pow(Math.abs(v) / f.ratedVolts(), 0.55);
      return Math.signum(v) * Math.min(hot, Math.abs(v) / values.get(e, 1));
    }
    if (element instanceof Element.Junction) {
      return v > values.get(e, 0) ? (v - values.get(e, 0)) / values.get(e, 1) : 1e-9 * v;
    }
    if (element instanceof Element.Motor) {
      return v / values.get(e, point.running(e) ? 0 : 1);
    }
    if (element instanceof Element.Contact) {
      int coil = network.element(element.part(), "coil").orElseThrow();
      return point.pulledIn(coil) ? v / values.get(e, 0) : 0;
    }
    return v / values.get(e, 0);
  }

  /** Conductance by which a change of volts at an element's end changes its current. */
  private static double slope(Network network, OperatingPoint point, int e) {
    return Math.abs(point.siemens(e));
  }

  @Test
  void currentsAtEveryNodeAddUpToNothing() {
    Random random = new Random(1847);
    double worst = 0;
    int buzzing = 0;
    int nodes = 0;
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, false).network();
      OperatingPoint point = solve(network);
      if (point.ending() == OperatingPoint.Ending.BUZZING) {
        buzzing++;
        continue;
      }
      double[] left = new double[network.nodes()];
      double[] allowed = new double[network.nodes()];
      for (int n = 0; n < left.length; n++) {
        left[n] = -1e-9 * point.volts(n);
        allowed[n] = 1e-12;
      }
      for (int e = 0; e < network.elements().size(); e++) {
        Element element = network.elements().get(e);
        double amps = lawAmps(network, point, e);
        // The last step moved less than 1e-9 V and closes in by squares (1e-18 is nothing): what
        // is left are last digits, 25 V x 2^-52 and a few roundings of each.
        double slack =
            slope(network, point, e) * (50 * 0x1p-52 * (Math.abs(point.volts(element.a())) + 25));
        for (int side = 0; side < 2; side++) {
          int n = side == 0 ? element.a() : element.b();
          if (n >= 0) {
            left[n] -= side == 0 ? amps : -amps;
            allowed[n] += slack;
          }
        }
      }
      for (int n = 0; n < left.length; n++) {
        nodes++;
        worst = Math.max(worst, Math.abs(left[n]) / allowed[n]);
        assertThat(Math.abs(left[n]))
            .as("run %d node %d %s", run, n, network.terminals(n))
            .isLessThanOrEqualTo(allowed[n]);
      }
    }
    System.out.printf(
        "Kirchhoff: %d networks, %d nodes, %d buzzing left out, worst share of the allowance %.3g%n",
        RUNS, nodes, buzzing, worst);
    assertThat(buzzing).isLessThan(RUNS / 10);
  }

  @Test
  void whatTheBatteryGivesIsWhatThePartsTake() {
    Random random = new Random(1879);
    double worst = 0;
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, false).network();
      OperatingPoint point = solve(network);
      if (point.ending() == OperatingPoint.Ending.BUZZING) {
        continue;
      }
      int cell = network.element("BAT", "cell").orElseThrow();
      double amps = -lawAmps(network, point, cell);
      double given = point.values().get(cell, 0) * amps - amps * amps * point.values().get(cell, 1);
      double taken = 0;
      for (int e = 0; e < network.elements().size(); e++) {
        if (e != cell) {
          double watts = point.across(e) * lawAmps(network, point, e);
          assertThat(watts).as("no part gives power").isGreaterThanOrEqualTo(-1e-9);
          taken += watts;
        }
      }
      for (int n = 0; n < network.nodes(); n++) {
        taken += 1e-9 * point.volts(n) * point.volts(n);
      }
      // Volts settled to 1e-9 V at a conductance of at most 1/5 mohm carry 2e-7 A at 25 V.
      double off = Math.abs(given - taken);
      worst = Math.max(worst, off);
      assertThat(off).as("run %d", run).isLessThan(5e-6 + 1e-9 * given);
    }
    System.out.printf("power balance: %d networks, worst %.3g W%n", RUNS, worst);
  }

  @Test
  void scalingEveryResistanceLeavesTheVolts() {
    Random random = new Random(1900);
    double worst = 0;
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, true).network();
      Variant healthy = Variant.healthy(network);
      Solver solver = Solver.full(network);
      OperatingPoint one = solver.solve(healthy, Setting.REST);
      double factor = Math.pow(10, -1 + 2 * random.nextDouble());
      Values scaled = Values.typical(healthy);
      for (int e = 0; e < network.elements().size(); e++) {
        int k = network.elements().get(e) instanceof Element.Cell ? 1 : 0;
        scaled.set(e, k, scaled.get(e, k) * factor);
      }
      OperatingPoint two = solver.solve(healthy, Setting.REST, scaled, History.NONE);
      for (int n = 0; n < network.nodes(); n++) {
        // Only the leaks of a gigaohm, ten of them at most, do not scale.
        double seen = Math.max(one.ohmsSeen(n, Network.REFERENCE), 1);
        double allowed = 1e-9 + 12 * 25e-9 * seen * Math.max(1, factor);
        double off = Math.abs(one.volts(n) - two.volts(n));
        if (!network.terminals(n).isEmpty()) {
          worst = Math.max(worst, off);
        }
        assertThat(off).as("run %d node %d", run, n).isLessThanOrEqualTo(allowed);
      }
    }
    System.out.printf("scaling: %d networks, worst %.3g V%n", RUNS, worst);
  }

  @Test
  void voltsScaleWithTheBatteryInALinearNetwork() {
    Random random = new Random(1911);
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, true).network();
      Variant healthy = Variant.healthy(network);
      Solver solver = Solver.full(network);
      OperatingPoint one = solver.solve(healthy, Setting.REST);
      Values doubled = Values.typical(healthy);
      int cell = network.element("BAT", "cell").orElseThrow();
      doubled.set(cell, 0, 2 * doubled.get(cell, 0));
      OperatingPoint two = solver.solve(healthy, Setting.REST, doubled, History.NONE);
      for (int n = 0; n < network.nodes(); n++) {
        assertThat(two.volts(n)).isEqualTo(2 * one.volts(n), within(1e-9));
      }
    }
  }

  @Test
  void reversedLeadsNegateTheReading() {
    Random random = new Random(1923);
    var meter = Bench.KNOWLEDGE.meter("basic").orElseThrow();
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, false).network();
      Solver solver = Solver.full(network);
      OperatingPoint point = solver.solve(Variant.healthy(network), Setting.REST);
      int red = random.nextInt(network.nodes() - Network.SPARES);
      int black = random.nextInt(network.nodes() - Network.SPARES + 1) - 1;
      double there = Meters.volts(solver, point, red, black, meter).value();
      double back = Meters.volts(solver, point, black, red, meter).value();
      assertThat(there).as("run %d", run).isEqualTo(-back, within(1e-7));
    }
  }

  @Test
  void orderOfPartsDoesNotMatter() {
    Random random = new Random(1931);
    double worst = 0;
    for (int run = 0; run < RUNS; run++) {
      Made made = make(random, false);
      Network one = made.network();
      List<Part> shuffled = new ArrayList<>(made.parts());
      Collections.shuffle(shuffled, random);
      Network two = Network.of(made.vehicle(shuffled), Bench.KNOWLEDGE.typicals());
      OperatingPoint p = solve(one);
      OperatingPoint q = solve(two);
      assertThat(q.ending()).as("run %d", run).isEqualTo(p.ending());
      if (p.ending() == OperatingPoint.Ending.BUZZING) {
        continue;
      }
      for (TerminalRef t : one.vehicle().terminals()) {
        int a = one.requireNode(t);
        double stiff = 1e-8 + 1e-14 * Math.max(0, p.ohmsSeen(a, Network.REFERENCE)) * 25;
        double off = Math.abs(p.volts(a) - q.volts(two.requireNode(t)));
        worst = Math.max(worst, off);
        assertThat(off).as("run %d %s", run, t).isLessThan(stiff);
      }
    }
    System.out.printf("order of parts: %d networks, worst %.3g V%n", RUNS, worst);
  }

  @Test
  void bothKernelsAgreeOnEveryMadeUpNetworkWithOnePartOpen() {
    Random random = new Random(1949);
    double worst = 0;
    for (int run = 0; run < RUNS; run++) {
      Network network = make(random, false).network();
      Solver low = Solver.lowRank(network, Setting.REST);
      Solver full = Solver.full(network);
      Variant open =
          Variant.healthy(network)
              .with(List.of(new Change.Remove(random.nextInt(network.elements().size()))));
      OperatingPoint p = low.solve(open, Setting.REST);
      OperatingPoint q = full.solve(open, Setting.REST);
      assertThat(p.ending()).isEqualTo(q.ending());
      if (p.ending() == OperatingPoint.Ending.BUZZING) {
        continue;
      }
      assertThat(p.pulledIn()).as("run %d", run).isEqualTo(q.pulledIn());
      for (int n = 0; n < network.nodes(); n++) {
        // A picoampere may be left over at a node: over what it sees, at most a gigaohm.
        double allowed = 1e-8 + 2e-12 * q.ohmsSeen(n, Network.REFERENCE);
        double off = Math.abs(p.volts(n) - q.volts(n));
        worst = Math.max(worst, off / allowed);
        assertThat(off).as("run %d node %d", run, n).isLessThan(allowed);
      }
    }
    System.out.printf("kernels, made-up networks: worst share of the allowance %.3g%n", worst);
  }
}
