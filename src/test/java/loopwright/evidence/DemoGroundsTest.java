package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.ground.DropProof;
import loopwright.ground.DropProofs;
import loopwright.ground.Ground;
import loopwright.ground.Grounds;
import loopwright.ground.Judgement;
import loopwright.ground.Judgement.Verdict;
import loopwright.ground.Limit;
import loopwright.ground.Side;
import loopwright.meter.MeterSpec;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;

/**
 * Verdicts on the demo vehicles' grounds, every value of the vehicle drawn from its spread and the
 * whole solved from rest, returns side by side and cranking among them. The ground in question is
 * drawn from sound to fifty times its limit, often near it.
 */
class DemoGroundsTest {
  private static final int DRAWS = Integer.getInteger("loopwright.grounds.draws", 12);

  private record Play(String of, Verdict verdict, boolean right, boolean holds, String told) {}

  @Test
  void noBadGroundPassesAndNoGoodOneIsCondemned() throws IOException {
    List<Play> plays = Bench.vehicles().parallelStream().flatMap(DemoGroundsTest::played).toList();
    report(plays);
    assertThat(plays).filteredOn(p -> !p.right()).extracting(Play::told).isEmpty();
    assertThat(plays).filteredOn(p -> !p.holds()).extracting(Play::told).isEmpty();
    for (Verdict verdict : Verdict.values()) {
      assertThat(plays)
          .filteredOn(p -> p.verdict() == verdict)
          .hasSizeGreaterThan(plays.size() / 20);
    }
  }

  private static Stream<Play> played(String name) {
    Grounds grounds = Grounds.of(Bench.vehicle(name), Bench.KNOWLEDGE);
    MeterSpec meter = Bench.KNOWLEDGE.meter("basic").orElseThrow();
    DropProofs proofs = new DropProofs(grounds, meter);
    Network network = Bench.network(Bench.vehicle(name));
    List<Play> plays = new ArrayList<>();
    for (Ground ground : grounds.all()) {
      for (DropProof proof : proofs.best(ground).stream().toList()) {
        IntStream.range(0, DRAWS)
            .mapToObj(i -> new Random((name + ground.id()).hashCode() * 1000L + i))
            .flatMap(random -> play(name, network, meter, proof, random).stream())
            .forEach(plays::add);
      }
    }
    return plays.stream();
  }

  /** One draw; none where what is switched on does not work with it, which would be seen. */
  private static java.util.Optional<Play> play(
      String name, Network network, MeterSpec meter, DropProof proof, Random random) {
    Variant healthy = Variant.healthy(network);
    Values values = Values.drawn(healthy, random);
    Side side = proof.bounds().side();
    double limit = proof.limit().ohms();
    double wanted =
        Math.max(
            proof.own().low(),
            switch (random.nextInt(3)) {
              case 0 -> proof.own().low() + random.nextDouble() * proof.own().width();
              case 1 -> limit * log(random, 0.8, 1.25);
              default -> limit * log(random, 0.1, 50);
            });
    double factor = wanted / side.ohms(network, e -> values.get(e, 0));
    for (int e : side.elements()) {
      values.set(e, 0, values.get(e, 0) * factor);
    }
    Solver solver = Solver.full(network);
    OperatingPoint typical = solver.solve(healthy, proof.setting());
    OperatingPoint point = solver.solve(healthy, proof.setting(), values, History.NONE);
    if (!works(typical, point)) {
      return java.util.Optional.empty();
    }
    double volts =
        point.volts(network.requireNode(proof.red()), network.requireNode(proof.black()));
    MeterSpec.Range range = meter.rangeFor(loopwright.meter.MeterFunction.VOLTS_DC, volts);
    double error = (2 * random.nextDouble() - 1) * (range.error(volts) - range.step());
    double shown = Math.rint((volts + error) / range.step()) * range.step();
    Judgement said = Judgement.of(proof, meter, shown, range.step());
    boolean byVolts = proof.limit().measure() == Limit.Measure.VOLTS;
    boolean keeps = byVolts ? volts <= proof.limit().volts() : wanted <= limit;
    boolean right =
        said.verdict() == Verdict.CANT_TELL || (said.verdict() == Verdict.GOOD) == keeps;
    boolean holds = said.lowOhms() <= wanted && said.highOhms() >= wanted;
    return java.util.Optional.of(
        new Play(
            name,
            said.verdict(),
            right,
            holds,
            name + " " + proof.ground().id() + " " + wanted + " " + volts + " " + said));
  }

  private static double log(Random random, double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  /** Whether relays, motors and fuses stand as in the typical vehicle. */
  private static boolean works(OperatingPoint typical, OperatingPoint point) {
    boolean same =
        typical.pulledIn().equals(point.pulledIn())
            && point.history().blown().isEmpty()
            && point.buzzing().isEmpty();
    for (int e = 0; e < point.variant().size(); e++) {
      same &=
          !(point.variant().element(e) instanceof Element.Motor)
              || typical.running(e) == point.running(e);
    }
    return same;
  }

  private static void report(List<Play> plays) throws IOException {
    StringBuilder text = new StringBuilder();
    for (String name : Bench.vehicles()) {
      List<Play> of = plays.stream().filter(p -> p.of().equals(name)).toList();
      text.append(String.format(Locale.ROOT, "%s: %d readings of grounds", name, of.size()));
      for (Verdict verdict : Verdict.values()) {
        long count = of.stream().filter(p -> p.verdict() == verdict).count();
        text.append(String.format(Locale.ROOT, ", %s %d", verdict, count));
      }
      text.append(", wrong ").append(of.stream().filter(p -> !p.right()).count());
      text.append(", truth outside the interval ");
      text.append(of.stream().filter(p -> !p.holds()).count()).append("\n");
    }
    Files.createDirectories(Path.of("target/evidence"));
    Files.writeString(Path.of("target/evidence/demo-grounds.txt"), text);
    System.out.print(text);
  }
}
