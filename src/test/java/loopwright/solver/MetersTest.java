package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.published.Csv;
import org.junit.jupiter.api.Test;

/**
 * What a meter shows before its own error. The leak of a gigaohm at every node is allowed for by
 * tolerance, see {@link ClosedFormsTest}. Ids in quotes are rows of published-methods.csv.
 */
class MetersTest {

  /** 10 Mohm on volts, 0.5 V behind 1 kohm on ohms, 0.3 ohm leads; up to 2 Mohm. */
  private static final MeterSpec TEN_MEGOHM = meter(1e7, 0.5);

  private static final MeterSpec ONE_MEGOHM = meter(1e6, 0.5);

  private static MeterSpec meter(double inputOhms, double testVolts) {
    return new MeterSpec(
        "test",
        "test",
        List.of(new MeterSpec.Range(1000, 0.01, 0.5, 2)),
        List.of(new MeterSpec.Range(1.999e6, 0.1, 0.8, 2)),
        new Spread(0.1, 0.3, 0.5),
        inputOhms,
        testVolts,
        1000,
        "made up for the test");
  }

  private static double volts(Rig rig, String red, String black, MeterSpec meter) {
    Network network = rig.network();
    double[] both = new double[2];
    for (int k = 0; k < 2; k++) {
      Solver solver = k == 0 ? Solver.full(network) : Solver.lowRank(network, Setting.REST);
      OperatingPoint point = solver.solve(Variant.healthy(network), Setting.REST);
      both[k] =
          Meters.volts(
                  solver,
                  point,
                  network.requireNode(rig.terminal(red)),
                  network.requireNode(rig.terminal(black)),
                  meter)
              .value();
    }
    assertThat(both[0]).as("both kernels").isEqualTo(both[1], within(1e-5));
    return both[0];
  }

  private static Meters.Shown ohms(Rig rig, String red, String black, MeterSpec meter) {
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    return Meters.ohms(
        Solver.full(network),
        healthy,
        Setting.REST.without("BAT"),
        Values.typical(healthy),
        History.NONE,
        network.requireNode(rig.terminal(red)),
        network.requireNode(rig.terminal(black)),
        meter,
        meter.leadOhms().typical());
  }

  @Test
  void tenMegohmsLoadAHighResistanceNode() {
    // BAT 12.6 V -- top -- RA 1 Mohm -- mid -- RB 2.2 Mohm -- ground, meter on mid
    Rig rig =
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .resistor("RA", 1e6, "top", "mid")
            .resistor("RB", 2.2e6, "mid", "0");
    double shown = volts(rig, "mid", "0", TEN_MEGOHM);
    // The leak takes 0.643 Mohm in a gigaohm of it: 0.064 percent.
    assertThat(shown).isEqualTo(Csv.method("net.div.meter"), within(0.0053));
    // By hand: 1 Mohm instead puts 12.6 V over 1 Mohm and (2.2 | 1) Mohm: 5.133 V.
    double one = volts(rig, "mid", "0", ONE_MEGOHM);
    assertThat(one).isEqualTo(12.6 * 0.6875 / 1.6875, within(0.003));
    assertThat(shown - one).isGreaterThan(2.9);
  }

  @Test
  void faultInSeriesReadsAsPublishedWithAndWithoutItsLamp() {
    // BAT 12.6 V -- top -- R -- in -- (lamp, a plain 5.76 ohm) -- ground
    double[] ohms = {10000, 100, 1, 0.1};
    String[] ids = {"load.10k", "load.100", "load.1", "load.0.1"};
    for (int i = 0; i < ohms.length; i++) {
      Rig unplugged =
          Rig.of(12)
              .battery(12.6, 1e-7, "top")
              .resistor("R", ohms[i], "top", "in")
              .resistor("OPEN", 1e12, "in", "0");
      assertThat(volts(unplugged, "in", "0", TEN_MEGOHM))
          .isEqualTo(Csv.method(ids[i] + ".open"), within(1.3e-4));
      Rig fitted =
          Rig.of(12)
              .battery(12.6, 1e-7, "top")
              .resistor("R", ohms[i], "top", "in")
              .resistor("LAMP", Csv.method("load.lamp"), "in", "0");
      assertThat(volts(fitted, "in", "0", TEN_MEGOHM))
          .isEqualTo(Csv.method(ids[i] + ".lamp"), within(1e-6));
      // 2.2 A through 1e-7 ohm of source.
      assertThat(volts(fitted, "top", "in", TEN_MEGOHM))
          .isEqualTo(Csv.method(ids[i] + ".drop"), within(1.3e-5));
    }
  }

  @Test
  void floatingNodeReadsNothing() {
    // BAT 12.6 V -- top -- open switch S1 -- cut -- RW 1 ohm -- end, nothing beyond
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.008, "top", "cut")
            .resistor("RW", 1, "cut", "end")
            .resistor("ELSE", 10, "top", "0");
    assertThat(volts(rig, "end", "0", TEN_MEGOHM)).isEqualTo(0, within(1e-6));
    // From the feed to the floating piece the meter shows the leak's doing: 12.6 V over 10 Mohm
    // and half a gigaohm. A real meter shows some such ghost too.
    assertThat(volts(rig, "top", "end", TEN_MEGOHM)).isBetween(0.0, 0.5);
  }

  @Test
  void reversedLeadsShowTheSameWithTheOtherSign() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .resistor("RA", 1e6, "top", "mid")
            .resistor("RB", 2.2e6, "mid", "0");
    assertThat(volts(rig, "0", "mid", TEN_MEGOHM))
        .isEqualTo(-volts(rig, "mid", "0", TEN_MEGOHM), within(1e-9));
  }

  @Test
  void ohmsCountEverythingInParallelAndTheLeads() {
    // battery lead off; a -- R1 30 ohm -- ground and a -- R2 60 ohm -- ground: 20 ohm, leads 0.3
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .resistor("R1", 30, "a", "0")
            .resistor("R2", 60, "a", "0");
    Meters.Shown shown = ohms(rig, "a", "0", TEN_MEGOHM);
    assertThat(shown.overRange()).isFalse();
    assertThat(shown.value()).isEqualTo(20.3, within(1e-5));
  }

  @Test
  void openPieceIsOverRangeAndATouchIsTheLeadsAlone() {
    // a -- S1 open -- b; c -- 1 microohm -- d
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .onOff("S1", 0.008, "a", "b")
            .resistor("T", 1e-6, "c", "d");
    assertThat(ohms(rig, "a", "b", TEN_MEGOHM).overRange()).isTrue();
    assertThat(ohms(rig, "c", "d", TEN_MEGOHM).value()).isEqualTo(0.3, within(1e-5));
  }

  @Test
  void foreignVoltsUnderTheOhmsLeadsShowOverRangeAndStayFinite() {
    // BAT 12.6 V left on -- top -- R 100 ohm -- a: the battery drives the test source back
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .resistor("R", 100, "top", "a")
            .resistor("R2", 1000, "a", "0");
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    Meters.Shown shown =
        Meters.ohms(
            Solver.full(network),
            healthy,
            Setting.REST,
            Values.typical(healthy),
            History.NONE,
            network.requireNode(rig.terminal("a")),
            Network.REFERENCE,
            TEN_MEGOHM,
            0.3);
    assertThat(shown.overRange()).isTrue();
    assertThat(shown.value()).isEqualTo(2 * 1.999e6);
    assertThat(shown.slope()).isZero();
  }

  @Test
  void resistanceJustInsideAndOutsideTheLargestRange() {
    for (double ohms : new double[] {1.98e6, 2.02e6}) {
      Rig rig = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", ohms, "a", "0");
      // The leaks of a gigaohm take 0.2 percent: 1.976 and 2.016 Mohm against 1.999.
      assertThat(ohms(rig, "a", "0", TEN_MEGOHM).overRange()).isEqualTo(ohms > 2e6);
    }
  }

  @Test
  void smallTestVoltageDoesNotTurnOnASiliconJunction() {
    // a -- D1 0.65 V -- ground, beside R1 100 ohm
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.65))), "a", "0")
            .resistor("R1", 100, "a", "0");
    assertThat(ohms(rig, "a", "0", TEN_MEGOHM).value()).isEqualTo(100.3, within(1e-4));
    // A 3 V source behind 1 kohm stays below 0.65 V across 100 ohm (0.27 V), but not across 1 k.
    assertThat(ohms(rig, "a", "0", meter(1e7, 3)).value()).isEqualTo(100.3, within(1e-4));
    Rig high =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.65))), "a", "0")
            .resistor("R1", 1000, "a", "0");
    assertThat(ohms(high, "a", "0", TEN_MEGOHM).value()).isEqualTo(1000.3, within(0.01));
    // By hand: the junction holds about 0.65 V; 2.35 mA come, 0.65 mA go through R1.
    double shown = ohms(high, "a", "0", meter(1e7, 3)).value();
    assertThat(shown).isEqualTo(0.65 / 0.00235 + 0.3, within(0.1));
    // Leads the other way round: the junction blocks.
    assertThat(ohms(high, "0", "a", meter(1e7, 3)).value()).isEqualTo(1000.3, within(0.01));
  }

  @Test
  void coldFilamentReadsAFewTenthsOfAnOhm() {
    // lamp 21 W at 12 V out of circuit: cold 6.857 ohm over 13 (typical-values.csv), leads 0.3
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").lamp("L1", 21, 12, "a", "0");
    Meters.Shown shown = ohms(rig, "a", "0", TEN_MEGOHM);
    assertThat(shown.value()).isEqualTo(Csv.method("lamp.r21") / 13 + 0.3, within(1e-5));
  }

  @Test
  void slopeIsTheDerivativeOfWhatIsShown() {
    // a -- R -- ground; volts at the test source against shown ohms, by a small change of R
    MeterSpec meter = TEN_MEGOHM;
    for (double r : new double[] {1, 100, 5000}) {
      Rig one = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", r, "a", "0");
      Rig two = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", r * 1.0001, "a", "0");
      Meters.Shown s1 = ohms(one, "a", "0", meter);
      Meters.Shown s2 = ohms(two, "a", "0", meter);
      double volts1 = s1.point().volts(s1.red(), s1.black());
      double volts2 = s2.point().volts(s2.red(), s2.black());
      double numeric = (s2.value() - s1.value()) / (volts2 - volts1);
      assertThat(s1.slope()).isEqualTo(numeric, within(1e-3 * numeric));
    }
    assertThat(meter.fullScale(MeterFunction.OHMS)).isEqualTo(1.999e6);
  }

  @Test
  void theMeterTakesAllOfWhatLittleAJunctionCarries() {
    // top -- D1 0.6 V -- n -- 1 Gohm -- ground: 24 nA through it, its leak of a gigaohm included.
    // Across D1 the meter's 10 Mohm take all of that at a quarter of a volt, and D1 blocks.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.6))), "top", "n")
            .resistor("R", 1e9, "n", "0");
    assertThat(volts(rig, "top", "n", TEN_MEGOHM)).isEqualTo(12.6 * 10 / 510, within(0.003));
    // With a load of 1 Mohm it carries 12 uA, of which the meter's 60 nA are nothing.
    Rig loaded =
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .part("D1", new PartSpec.Diode(Optional.of(exactly(0.6))), "top", "n")
            .resistor("R", 1e6, "n", "0");
    assertThat(volts(loaded, "top", "n", TEN_MEGOHM)).isEqualTo(0.6, within(1e-4));
  }

  @Test
  void aResistorOnTheDiodeTestIsADividerOfItsSource() {
    // 3.2 V behind 2.4 kohm.
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", 800, "top", "0");
    Meters.Shown shown = driven(MeterFunction.DIODE, rig, "top");
    assertThat(shown.value()).isEqualTo(3.2 * 800 / 3200, within(1e-5));
    assertThat(shown.slope()).isEqualTo(1);
    Rig open = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", 1e9, "top", "0");
    Meters.Shown none = driven(MeterFunction.DIODE, open, "top");
    assertThat(none.overRange()).isTrue();
    assertThat(none.value()).isEqualTo(MeterSpec.DIODE_VOLTS);
    assertThat(none.slope()).isZero();
  }

  @Test
  void onVoltsAMeterDrivesNoCurrentOfItsOwn() {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").resistor("R", 800, "top", "0");
    assertThatThrownBy(() -> driven(MeterFunction.VOLTS_DC, rig, "top"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("volts");
    assertThat(driven(MeterFunction.OHMS, rig, "top").value()).isEqualTo(800.3, within(1e-2));
  }

  private static Meters.Shown driven(MeterFunction function, Rig rig, String red) {
    Network network = rig.network();
    Variant healthy = Variant.healthy(network);
    return Meters.driven(
        function,
        Solver.full(network),
        healthy,
        Setting.REST.without("BAT"),
        Values.typical(healthy),
        History.NONE,
        network.requireNode(rig.terminal(red)),
        Network.REFERENCE,
        TEN_MEGOHM,
        TEN_MEGOHM.leadOhms().typical());
  }
}
