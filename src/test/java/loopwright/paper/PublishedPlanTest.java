package loopwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.WireSize;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** The figures of a plan against published tables and worked examples. */
class PublishedPlanTest {

  /**
   * One lamp behind a fuse and one wire.
   *
   * <pre>BAT - F - W - L - ground</pre>
   */
  private static List<Figure> lamp(String size, double metres, double watts, double fuse) {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.005, "top")
            .fuse("F", fuse, 0.003, "top", "f")
            .wire("W", size, metres, "f", "l")
            .lamp("L", watts, 12, "l", "0")
            .circuit("lamp", "L");
    return PaperCheck.figures(rig.vehicle(), Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
  }

  private static Figure only(List<Figure> figures, Figure.Kind kind, String part) {
    return figures.stream()
        .filter(f -> f.kind() == kind && f.part().equals(part))
        .reduce(
            (a, b) -> {
              throw new AssertionError("two of " + kind);
            })
        .orElseThrow();
  }

  /** FAA AC 43.13-1B, Table 11-3 (DC wire and circuit protector chart), fuses, p. 11-15, 1998. */
  @ParameterizedTest
  @CsvSource({
    "22 AWG, 5, 7.5", "20 AWG, 5, 7.5", "18 AWG, 10, 15", "16 AWG, 10, 15", "14 AWG, 15, 20",
    "12 AWG, 20, 25", "10 AWG, 30, 35", "8 AWG, 50, 60", "6 AWG, 70, 80", "4 AWG, 70, 80",
    "2 AWG, 100, 125"
  })
  void aWireIsFusedAsTheChartSaysAndNotOneSizeMore(String size, double most, double next) {
    assertThat(only(lamp(size, 1, 20, most), Figure.Kind.FUSE_AMPS, "W").beyond()).isFalse();
    assertThat(only(lamp(size, 1, 20, next), Figure.Kind.FUSE_AMPS, "W").beyond()).isTrue();
  }

  /**
   * FAA AC 43.13-1B Chg 1, Tables 11-7 and 11-8, p. 11-22, 2001: the thinnest wire for a run, a
   * current and a drop. Two printed drops contradict the table's own ohms (11-7 third example 3.60
   * for 3.555 V, 11-8 second example 0.366 for 0.491 V): the true values are taken. The tables are
   * for tin-plated wire, which has up to 28 % more resistance than the bare copper of ASTM B258.
   */
  @ParameterizedTest
  @CsvFileSource(resources = "/published/wire-drop-examples.csv", numLinesToSkip = 1)
  void theWireOfTheExamplesKeepsTheDropAndTheNextThinnerDoesNot(
      String table,
      double maxDrop,
      double feet,
      double amps,
      int awg,
      double ohmPerFoot,
      double printed,
      double trueDrop) {
    assertThat(ohmPerFoot * feet * amps)
        .as("the table's own ohms")
        .isCloseTo(trueDrop, within(1e-3));
    double drop = copper(awg, feet) * amps;
    assertThat(drop).as("bare copper").isBetween(trueDrop / 1.30, trueDrop * 1.03);
    assertThat(drop).isLessThanOrEqualTo(maxDrop);
    // A wire two numbers thinner has 1.6 times the resistance and can't keep it.
    WireSize chosen =
        WireSizes.atLeast(
                new WireSize(WireSize.Unit.AWG, awg + 4),
                copper(awg + 4, feet) * 1.28 * amps / maxDrop)
            .orElseThrow();
    assertThat(chosen.number()).as("thinnest tin-plated wire").isBetween(awg - 2.0, awg + 2.0);
  }

  private static double copper(int awg, double feet) {
    Plan plan =
        new Plan(
            Rig.of(12).battery(12.6, 0.005, "top").resistor("R", 10, "top", "0").vehicle(),
            Bench.KNOWLEDGE.typicals(),
            Bench.KNOWLEDGE.wireFuses());
    return plan.copperOhms(wire(awg + " AWG", feet * 0.3048));
  }

  private static PartSpec.Wire wire(String size, double metres) {
    return new PartSpec.Wire(
        PartKind.WIRE,
        new TerminalRef("A", "out"),
        new TerminalRef("B", "in"),
        WireSize.parse(size),
        Estimate.of(metres),
        Optional.empty(),
        "",
        "");
  }

  /** Blade fuse opening times of SAE J1284:1988 and ISO 8820-3:2010 (both from memory). */
  @ParameterizedTest
  @CsvSource({
    "1.35, 0.75, 600, 1800",
    "1.60, 0.25, 50, 50",
    "2.00, 0.15, 5, 5",
    "3.50, 0.04, 0.25, 0.5",
    "6.00, 0.02, 0.1, 0.1"
  })
  void openingTimesAreThoseOfTheStandards(
      double times, double least, double mostNarrow, double mostWide) {
    assertThat(FuseTimes.least(times)).isCloseTo(least, within(1e-9));
    assertThat(FuseTimes.longest(times)).isBetween(mostNarrow * 0.999999, mostWide * 1.000001);
  }

  @Test
  void aFuseCarriesATenthMoreForAHundredHoursAndMayNeverOpenBelowThirtyFivePercent() {
    assertThat(FuseTimes.least(1.1)).isCloseTo(360_000, within(1e-6));
    assertThat(FuseTimes.longest(1.34)).isInfinite();
    assertThat(FuseTimes.longest(12)).isCloseTo(0.025, within(1e-9));
    double before = Double.POSITIVE_INFINITY;
    for (double times = 1.36; times < 20; times *= 1.07) {
      assertThat(FuseTimes.least(times)).isLessThan(FuseTimes.longest(times));
      assertThat(FuseTimes.longest(times)).isLessThan(before);
      before = FuseTimes.longest(times);
    }
  }

  /** Half a volt of 12.6 costs about 13 percent of the light (V to the 3.4th; common practice). */
  @Test
  void halfAVoltCostsAnEighthOfTheLight() {
    List<Figure> figures = lamp("18 AWG", 4.8, 55, 10);
    Figure drop = only(figures, Figure.Kind.DROP_VOLTS, "L");
    double expected = 100 * (1 - Math.pow(1 - drop.value() / (12.6 - 0.005 * 4.6), 3.4));
    assertThat((Double) drop.said().get(1)).isCloseTo(expected, within(0.3));
    assertThat(100 * (1 - Math.pow(12.1 / 12.6, 3.4))).isCloseTo(13, within(0.5));
  }

  /** FAA AC 43.13-1B Chg 1, par. 11-66: resistance goes with (234.5 + T) for copper. */
  @ParameterizedTest
  @CsvSource({"20, 1", "40, 1.0786", "60, 1.1572", "80, 1.2358", "105, 1.3340"})
  void copperWarmsAsTheFormulaSays(double celsius, double factor) {
    double alpha = Bench.KNOWLEDGE.typicals().constant("copper-temperature-coefficient").typical();
    assertThat(1 + alpha * (celsius - 20)).isCloseTo(factor, within(0.001));
    assertThat((234.5 + celsius) / 254.5).isCloseTo(factor, within(0.001));
  }

  /** A wire that carries its chart's current comes to what its insulation stands (SAE J1128). */
  @Test
  void theChartsCurrentBringsTheCopperToItsInsulationsLimit() {
    assertThat(LoomHeat.copper(57, 10, 10)).isCloseTo(80, within(1e-9));
    assertThat(LoomHeat.copper(57, 5, 10)).isCloseTo(57 + 23 / 4.0, within(1e-9));
    Plan plan =
        new Plan(
            Rig.of(12).battery(12.6, 0.005, "top").resistor("R", 10, "top", "0").vehicle(),
            Bench.KNOWLEDGE.typicals(),
            Bench.KNOWLEDGE.wireFuses());
    PartSpec.Wire w = wire("18 AWG", 1);
    assertThat(new LoomHeat(plan, 57).carries(w).orElseThrow()).isEqualTo(10);
    assertThat(new LoomHeat(plan, 20).carries(w).orElseThrow()).isEqualTo(10);
    // At 70 C only 10 of 23 degrees are left.
    assertThat(new LoomHeat(plan, 70).carries(w).orElseThrow())
        .isCloseTo(10 * Math.sqrt(10 / 23.0), within(1e-9));
  }

  /**
   * A far short is limited by the loop: battery 5 mohm, fuse 3 mohm, wire; by Ohm's law, against
   * solving the same circuit with the lamp replaced by nothing.
   */
  @Test
  void theFarShortIsThatOfOhmsLaw() {
    Figure far = only(lamp("18 AWG", 20, 20, 10), Figure.Kind.FAR_SHORT_AMPS, "F");
    Rig shorted =
        Rig.of(12)
            .battery(12.6, 0.005, "top")
            .resistor("F", 0.003, "top", "f")
            .wire("W", "18 AWG", 20, "f", "0");
    OperatingPoint point = shorted.solve().point();
    int wire = shorted.network().element("W", "conductor").orElseThrow();
    // The lamp at the same point is still there and takes a little; never more than without it.
    double amps = Math.abs(point.amps(wire));
    assertThat(far.value()).isBetween(0.96 * amps, amps);
    assertThat(far.with()).containsExactly("L");
  }

  /** Closed sides carry 30 A of 40 A (plug-in relay data sheet, 40 A class, 12 V). */
  @Test
  void theClosedSideOfAContactCarriesThreeQuarters() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.005, "top")
            .fuse("F", 60, 0.001, "top", "f")
            .part(
                "K",
                new PartSpec.Relay(
                    true,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    PartSpec.Suppression.RESISTOR,
                    Optional.of(40.0)),
                "c",
                "0",
                "f",
                "no",
                "nc")
            .onOff("S", 0.01, "f", "c")
            .part("H", new PartSpec.PlainLoad(PartKind.HEATER, Rig.exactly(33)), "nc", "0")
            .part("N", new PartSpec.PlainLoad(PartKind.HEATER, Rig.exactly(33)), "no", "0")
            .circuit("closed", "H")
            .circuit("open", "N", "S=on");
    List<Figure> contacts = new ArrayList<>();
    for (Figure f :
        PaperCheck.figures(rig.vehicle(), Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS)) {
      if (f.kind() == Figure.Kind.CONTACT_AMPS && f.part().equals("K")) {
        contacts.add(f);
      }
    }
    assertThat(contacts).hasSize(2);
    assertThat(contacts)
        .filteredOn(Figure::beyond)
        .singleElement()
        .satisfies(f -> assertThat(f.said()).containsExactly("87a"))
        .satisfies(f -> assertThat(f.limit()).isEqualTo(30));
  }
}
