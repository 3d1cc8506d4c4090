package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import loopwright.ground.DropProof;
import loopwright.ground.DropProofs;
import loopwright.ground.Grounds;
import loopwright.ground.Judgement;
import loopwright.ground.Judgement.Verdict;
import loopwright.ground.Judgement.Why;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Element;
import loopwright.solver.Network;
import loopwright.solver.Rig;
import org.junit.jupiter.api.Test;

/**
 * Verdicts on grounds against exact arithmetic, on made-up straps, studs, loads and meters.
 *
 * <pre>
 *   BAT+ --F1--S1--(L)--G1--body--STR1-- BAT-      one loop, so that volts are E R / (Z + R)
 * </pre>
 *
 * <p>All that lies in the loop but the piece in question is known within its spread, the reading
 * within the meter's error. What resistances are then possible follows by hand: that is the best
 * that anybody could say. The lamps' law is the solver's own (current by the 0.55th power of the
 * volts), turned round here by halving.
 */
class GroundVerdictsTest {
  private static final int CASES = Integer.getInteger("loopwright.grounds", 10_000);
  private static final MathContext DIGITS = new MathContext(40);

  /** Beyond this share two exact numbers count as different, since the program has 16 digits. */
  private static final double SAME = 1e-6;

  /**
   * One reading of one ground.
   *
   * @param verdict what the program says
   * @param right false where a bad one passed or a good one was condemned
   * @param forced whether nobody could have told
   * @param threshold how many times as far from the limit as by hand the thresholds lie
   * @param interval how many times as wide as by hand the interval of ohms is
   * @param holds whether the interval holds the truth
   * @param told all of it, for whoever looks for a mistake
   */
  private record Outcome(
      Verdict verdict,
      boolean right,
      boolean forced,
      double threshold,
      double interval,
      boolean holds,
      String told) {}

  @Test
  void noBadGroundPassesNoGoodOneIsCondemnedAndCantTellIsForcedByTheMeter() throws IOException {
    List<Outcome> outcomes =
        IntStream.range(0, CASES)
            .parallel()
            .mapToObj(i -> played(new Random(20_261 + 7919L * i)))
            .toList();
    report(outcomes);
    assertThat(outcomes).allMatch(Outcome::right, "right").allMatch(Outcome::holds, "holds");
    assertThat(outcomes)
        .filteredOn(o -> o.verdict() == Verdict.CANT_TELL)
        .allMatch(Outcome::forced, "nobody could have told");
    for (Verdict verdict : Verdict.values()) {
      assertThat(outcomes).filteredOn(o -> o.verdict() == verdict).hasSizeGreaterThan(CASES / 10);
    }
    assertThat(outcomes).allMatch(o -> o.threshold() < 1.02, "thresholds next to those by hand");
  }

  private static Outcome played(Random random) {
    while (true) {
      Loop loop = new Loop(random);
      Grounds grounds = Grounds.of(loop.vehicle, Bench.KNOWLEDGE);
      DropProofs proofs = new DropProofs(grounds, loop.meter);
      DropProof proof = proofs.best(grounds.ground(loop.piece).orElseThrow()).orElseThrow();
      double truth = loop.drawTruth(random, proof.limit().ohms());
      Optional<double[]> display = loop.display(random, loop.drawVolts(random, truth));
      if (display.isPresent()) {
        return outcome(loop, proof, truth, display.get());
      }
    }
  }

  private static Outcome outcome(Loop loop, DropProof proof, double truth, double[] display) {
    double limit = proof.limit().ohms();
    Judgement said = Judgement.of(proof, loop.meter, display[0], display[1]);
    // By hand: the thresholds, and what the reading leaves at best.
    double least = loop.volts(limit, false);
    double most = loop.volts(limit, true);
    double error = loop.meter.error(MeterFunction.VOLTS_DC, display[0], display[1]);
    double low = loop.ohms(Math.max(0, display[0] - error), true);
    double high = loop.ohms(display[0] + error, false);
    boolean keeps = truth <= limit;
    boolean right =
        said.verdict() == Verdict.CANT_TELL || (said.verdict() == Verdict.GOOD) == keeps;
    boolean forced = high >= limit * (1 - SAME) && low <= limit * (1 + SAME);
    boolean holds =
        said.lowOhms() <= truth * (1 + 1e-9)
            && said.highOhms() >= truth * (1 - 1e-9)
            && proof.goodBelow() <= least * (1 + 1e-7)
            && proof.badAbove() >= most * (1 - 1e-7)
            && !said.turned()
            && said.why() != Why.NO_CURRENT;
    double interval =
        low > 0 && !Double.isInfinite(high) ? said.highOhms() / said.lowOhms() / (high / low) : 1;
    return new Outcome(
        said.verdict(),
        right,
        forced,
        Math.max(least / proof.goodBelow(), proof.badAbove() / most),
        interval,
        holds,
        said + " truth " + truth + " limit " + limit + " display " + display[0] + " " + loop);
  }

  private static void report(List<Outcome> outcomes) throws IOException {
    StringBuilder text = new StringBuilder();
    text.append(outcomes.size()).append(" readings of made-up grounds: ");
    for (Verdict verdict : Verdict.values()) {
      text.append(verdict).append(' ');
      text.append(outcomes.stream().filter(o -> o.verdict() == verdict).count()).append(", ");
    }
    text.append(
        String.format(
            Locale.ROOT,
            "wrong %d, can't tell where it could be told %d, as forced %d; thresholds at most"
                + " %.6f times as far off, intervals of ohms at most %.4f times as wide as by"
                + " hand%n",
            outcomes.stream().filter(o -> !o.right()).count(),
            outcomes.stream().filter(o -> o.verdict() == Verdict.CANT_TELL && !o.forced()).count(),
            outcomes.stream().filter(Outcome::forced).count(),
            outcomes.stream().mapToDouble(Outcome::threshold).max().orElse(0),
            outcomes.stream().mapToDouble(Outcome::interval).max().orElse(0)));
    Files.createDirectories(Path.of("target/evidence"));
    Files.writeString(Path.of("target/evidence/grounds.txt"), text);
    System.out.print(text);
  }

  /** One loop with a piece in question and a meter, and its arithmetic by hand. */
  private static final class Loop {
    final Vehicle vehicle;
    final String piece;
    final MeterSpec meter;
    private final Spread volts;
    private final double restLow;
    private final double restHigh;
    private final Spread own;
    private final Element load;

    Loop(Random random) {
      int system = List.of(6, 12, 24).get(random.nextInt(3));
      Rig rig = random.nextBoolean() ? Rig.of(system) : Rig.positiveGround(system);
      boolean lamp = random.nextBoolean();
      double watts = log(random, 1, 150);
      PartSpec spec =
          lamp
              ? new PartSpec.Lamp(Optional.of((double) system), around(random, watts, 0.3))
              : new PartSpec.PlainLoad(
                  PartKind.HEATER, around(random, log(random, 0.05, 300), 0.5));
      rig.battery(
              around(random, system * 1.05, 0.05),
              around(random, log(random, 2e-3, 2e-2), 1),
              "top")
          .fuse("F1", 10_000, log(random, 1e-4, 1e-2), "top", "fed")
          .onOff("S1", log(random, 1e-3, 3e-2), "fed", "on")
          .part("L", spec, "on", "back")
          .part("B", new PartSpec.Body(), "metal")
          .part(
              "G1",
              new PartSpec.Ground(Optional.of(around(random, log(random, 1e-4, 1e-2), 2))),
              "back",
              "metal")
          .strap(
              "STR1",
              List.of("1.5 mm2", "6 mm2", "16 mm2", "35 mm2", "70 mm2").get(random.nextInt(5)),
              around(random, log(random, 0.1, 3), 0.3),
              around(random, log(random, 1e-4, 3e-3), 2),
              "metal",
              "0")
          .circuit("c", "L", "S1=on");
      vehicle = rig.vehicle();
      piece = random.nextBoolean() ? "STR1" : "G1";
      meter = meter(random);
      Network network = Network.of(vehicle, Bench.KNOWLEDGE.typicals());
      Element.Cell cell = (Element.Cell) network.elements().get(network.elementsOf("BAT").get(0));
      volts = cell.volts();
      load = network.elements().get(network.elementsOf("L").get(0));
      own = network.elements().get(network.elementsOf(piece).get(0)).values()[0];
      double low = cell.ohms().low();
      double high = cell.ohms().high();
      for (String id : List.of("F1", "S1", "G1", "STR1")) {
        Spread ohms = network.elements().get(network.elementsOf(id).get(0)).values()[0];
        low += id.equals(piece) ? 0 : ohms.low();
        high += id.equals(piece) ? 0 : ohms.high();
      }
      restLow = low;
      restHigh = high;
    }

    private static double log(Random random, double low, double high) {
      return low * Math.pow(high / low, random.nextDouble());
    }

    /** A value with limits some share off it each way, the upper ones as a factor. */
    private static Estimate around(Random random, double value, double most) {
      double down = 1 + most * random.nextDouble();
      double up = 1 + most * random.nextDouble();
      return Estimate.between(value / down, value, value * up);
    }

    private static MeterSpec meter(Random random) {
      double finest = List.of(1e-5, 1e-4, 1e-3).get(random.nextInt(3));
      double counts = List.of(1999, 5999, 19_999).get(random.nextInt(3));
      double percent = log(random, 0.05, 3);
      double digits = 1 + random.nextInt(5);
      List<MeterSpec.Range> ranges = new ArrayList<>();
      for (double step = finest; ranges.isEmpty() || step * counts / 10 < 100; step *= 10) {
        ranges.add(new MeterSpec.Range(counts * step, step, percent, digits));
      }
      return new MeterSpec(
          "made-up", "made-up", ranges, ranges, new Spread(0.1, 0.3, 0.5), 1e7, 0.5, 1000, "");
    }

    /** A resistance no better than the piece's own, often near the limit. */
    double drawTruth(Random random, double limit) {
      double truth =
          switch (random.nextInt(4)) {
            case 0 -> own.low() + random.nextDouble() * own.width();
            case 1 -> limit * log(random, 0.9, 1.1);
            case 2 -> limit * log(random, 0.999, 1.001);
            default -> limit * log(random, 0.1, 100);
          };
      return Math.max(own.low(), truth);
    }

    /** The volts across the piece, everything else anywhere in its spread or at its ends. */
    double drawVolts(Random random, double ohms) {
      boolean ends = random.nextInt(3) == 0;
      double source = draw(random, volts, ends);
      double rest = draw(random, new Spread(restLow, restLow, restHigh), ends);
      if (load instanceof Element.Filament f) {
        return lamp(
            ohms, source, rest, draw(random, f.amps(), ends), draw(random, f.coldOhms(), ends));
      }
      double l = draw(random, load.values()[0], ends);
      return exact(ohms, source, rest, l);
    }

    private static double draw(Random random, Spread spread, boolean ends) {
      return ends
          ? random.nextBoolean() ? spread.low() : spread.high()
          : spread.low() + random.nextDouble() * spread.width();
    }

    /** E R / (Z + L + R), in 40 digits. */
    private static double exact(double ohms, double source, double rest, double load) {
      BigDecimal r = new BigDecimal(ohms);
      BigDecimal sum = r.add(new BigDecimal(rest)).add(new BigDecimal(load));
      return new BigDecimal(source).multiply(r).divide(sum, DIGITS).doubleValue();
    }

    /** Volts with these ohms: the least there can be, or the most. */
    double volts(double ohms, boolean most) {
      double source = most ? volts.high() : volts.low();
      double rest = most ? restLow : restHigh;
      if (load instanceof Element.Filament f) {
        return lamp(
            ohms,
            source,
            rest,
            most ? f.amps().high() : f.amps().low(),
            most ? f.coldOhms().low() : f.coldOhms().high());
      }
      Spread l = load.values()[0];
      return exact(ohms, source, rest, most ? l.low() : l.high());
    }

    /**
     * The same for a lamp: the current at which its volts and those of the rest make the source.
     */
    private double lamp(double ohms, double source, double rest, double amps, double cold) {
      double rated = ((Element.Filament) load).ratedVolts();
      double low = 0;
      double high = source / (ohms + rest);
      for (int i = 0; i < 200; i++) {
        double middle = (low + high) / 2;
        double across = Math.max(middle * cold, rated * Math.pow(middle / amps, 1 / 0.55));
        if (across + middle * (ohms + rest) > source) {
          high = middle;
        } else {
          low = middle;
        }
      }
      return ohms * low;
    }

    /** Ohms with which these volts are just the most there can be, or the least. */
    double ohms(double at, boolean most) {
      if (at <= 0) {
        return 0;
      }
      double low = 0;
      double high = 1e9;
      if (volts(high, most) < at) {
        return Double.POSITIVE_INFINITY;
      }
      for (int i = 0; i < 400 && high - low > 1e-13 * high; i++) {
        double middle = low == 0 ? high / 10 : Math.sqrt(low * high);
        if (volts(middle, most) < at) {
          low = middle;
        } else {
          high = middle;
        }
        if (high < 1e-12) {
          break;
        }
      }
      return high;
    }

    /** What the display may show, and its last digit; empty where no display is within limits. */
    Optional<double[]> display(Random random, double volts) {
      List<MeterSpec.Range> ranges = meter.volts();
      // Now and then the range knob stands one or two too high.
      int first = 0;
      while (first < ranges.size() - 1 && volts > ranges.get(first).full()) {
        first++;
      }
      int at = Math.min(ranges.size() - 1, first + Math.max(0, random.nextInt(6) - 3));
      MeterSpec.Range range = ranges.get(at);
      double most = range.error(volts);
      boolean ends = random.nextInt(3) == 0;
      for (int tries = 0; tries < 50; tries++) {
        double error =
            ends ? (random.nextBoolean() ? most : -most) : (2 * random.nextDouble() - 1) * most;
        double shown = Math.rint((volts + error) / range.step()) * range.step();
        if (shown >= 0
            && shown <= range.full()
            && Math.abs(shown - volts) <= range.error(shown) * (1 - 1e-12)) {
          return Optional.of(new double[] {shown, range.step()});
        }
      }
      return Optional.empty();
    }

    @Override
    public String toString() {
      return vehicle.systemVolts() + " V, " + piece + ", " + load;
    }
  }
}
