package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import loopwright.evidence.Bench;
import loopwright.meter.MeterSpec;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import org.junit.jupiter.api.Test;

/** The lamp in a fuse's place and the diode test, against the laws by hand. */
class TestLampTest {

  private static final TestLamp LAMP = TestLamp.forFuse(12, Bench.KNOWLEDGE.typicals());

  private static double level(double shortOhms) {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.001, "live")
            .part("F", new PartSpec.Fuse(10, Optional.empty()), "live", "behind")
            .resistor("R", shortOhms, "behind", "0");
    Network network = rig.network();
    Variant lit =
        LAMP.inPlaceOf(Variant.healthy(network), network.element("F", "link").orElseThrow());
    OperatingPoint point =
        Solver.full(network).solve(lit, Setting.REST, Values.typical(lit), History.NONE);
    return LAMP.level(point, 12.6);
  }

  /** The same by halving: the volts at which lamp and resistor pass the same current. */
  private static double byHand(double shortOhms) {
    double low = 0;
    double high = 12.6;
    for (int n = 0; n < 100; n++) {
      double v = (low + high) / 2;
      if (lampAmps(v) < (12.6 - v) / shortOhms) {
        low = v;
      } else {
        high = v;
      }
    }
    return low * lampAmps(low) / (12.6 * lampAmps(12.6));
  }

  /** 1.75 A at 12 V, the 0.55th power of the volts, 13 times colder when cold. */
  private static double lampAmps(double volts) {
    return Math.min(volts * 13 * 1.75 / 12, 1.75 * Math.pow(volts / 12, 0.55));
  }

  @Test
  void itTakesTheWholeSupplyBeforeADeadShortAndLessBeforeALeak() {
    assertThat(level(0.001)).isEqualTo(1, within(0.01));
    for (double ohms : new double[] {0.1, 1, 5, 20, 200}) {
      assertThat(level(ohms)).as("%s ohm", ohms).isEqualTo(byHand(ohms), within(0.002));
    }
    assertThat(level(1e6)).isLessThan(1e-6);
  }

  @Test
  void sixVoltsTakeASmallerLamp() {
    assertThat(TestLamp.forFuse(6, Bench.KNOWLEDGE.typicals()).watts()).isEqualTo(5);
    assertThat(TestLamp.forFuse(24, Bench.KNOWLEDGE.typicals()).watts()).isEqualTo(21);
  }

  @Test
  void inTheGroundedLeadItCarriesWhatTheBatteryGives() {
    TestLamp drain = TestLamp.forDrain(12, Bench.KNOWLEDGE.typicals());
    Rig rig = Rig.of(12).battery(12.6, 0.001, "live").resistor("R", 12, "live", "0");
    Network network = rig.network();
    Variant lit = drain.inGroundedLead(Variant.healthy(network));
    OperatingPoint point =
        Solver.full(network).solve(lit, Setting.REST, Values.typical(lit), History.NONE);
    int lamp = lit.size() - 1;
    int r = network.element("R", "element").orElseThrow();
    assertThat(Math.abs(point.amps(lamp))).isEqualTo(Math.abs(point.amps(r)), within(1e-6));
    assertThat(Math.abs(point.across(lamp)) + Math.abs(point.across(r)))
        .isEqualTo(12.6, within(0.001));
  }

  @Test
  void theDiodeTestReadsTheForwardVoltsAndOlTheOtherWay() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.001, "live")
            .part("D", new PartSpec.Diode(Optional.of(Rig.exactly(0.6))), "a", "b")
            .resistor("R", 1e9, "a", "0");
    Network network = rig.network();
    Setting off = Setting.REST.without("BAT");
    MeterSpec meter = Bench.KNOWLEDGE.meter("basic").orElseThrow();
    int a = network.requireNode(rig.terminal("a"));
    int b = network.requireNode(rig.terminal("b"));
    Variant sound = Variant.healthy(network);
    Meters.Shown forward =
        Meters.diode(
            Solver.full(network), sound, off, Values.typical(sound), History.NONE, a, b, meter);
    // 0.6 V and the millivolt or so that a milliampere drops in its own ohms.
    assertThat(forward.overRange()).isFalse();
    assertThat(forward.value()).isEqualTo(0.6, within(0.02));
    assertThat(
            Meters.diode(
                    Solver.full(network),
                    sound,
                    off,
                    Values.typical(sound),
                    History.NONE,
                    b,
                    a,
                    meter)
                .overRange())
        .isTrue();
  }
}
