package loopwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.evidence.Bench;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.solver.Rig;
import org.junit.jupiter.api.Test;

/** Figures of a plan as a whole: totals, the supply, bringing up, terminals, grounds, joints. */
class WholePlanFiguresTest {

  private static List<Figure> figures(Vehicle vehicle, Figure.Kind kind) {
    return PaperCheck.figures(vehicle, Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS).stream()
        .filter(f -> f.kind() == kind)
        .toList();
  }

  private static Figure only(Vehicle vehicle, Figure.Kind kind) {
    List<Figure> figures = figures(vehicle, kind);
    assertThat(figures).hasSize(1);
    return figures.get(0);
  }

  private static PartSpec battery(double ampHours, double idle, double working) {
    return new PartSpec.Battery(
        Optional.of(Rig.exactly(12.6)),
        Optional.of(Rig.exactly(0.01)),
        Optional.of(ampHours),
        Optional.of(idle),
        Optional.of(working));
  }

  private static PartSpec load(PartKind kind, double amps) {
    return new PartSpec.PlainLoad(kind, Rig.exactly(amps));
  }

  /** BAT - top - F - CLK - ground; F - S - L1, L2 (55 W) - ground. */
  private static Rig lamps(PartSpec battery) {
    return Rig.of(12)
        .part("BAT", battery, "top", "0")
        .fuse("F", 15, 0.005, "top", "f")
        .part("CLK", load(PartKind.ELECTRONICS, 0.05), "f", "0")
        .onOff("S", 0.01, "f", "s")
        .lamp("L1", 55, 12, "s", "0")
        .lamp("L2", 55, 12, "s", "0")
        .circuit("clock", "CLK")
        .circuit("one", "L1", "S=on")
        .circuit("two", "L2", "S=on");
  }

  @Test
  void aMonthsParkingIsHeldAgainstHalfOfWhatTheBatteryHolds() {
    // About 50 mA for 720 h are 36 Ah: more than half of 60 Ah, less than half of 100.
    Figure small = only(lamps(battery(60, 15, 45)).vehicle(), Figure.Kind.REST_AMP_HOURS);
    assertThat(small.limit()).isEqualTo(30);
    assertThat(small.value()).isBetween(32.0, 40.0);
    assertThat(small.beyond()).isTrue();
    assertThat(small.with()).containsExactly("CLK");
    assertThat(small.said().get(2)).isEqualTo("stated");
    double milliamps = (Double) small.said().get(0);
    assertThat(small.value()).isCloseTo(milliamps / 1000 * 720, within(1e-9));
    assertThat((Double) small.said().get(1)).isCloseTo(30 / (milliamps / 1000) / 24, within(1e-9));
    assertThat(only(lamps(battery(100, 15, 45)).vehicle(), Figure.Kind.REST_AMP_HOURS).beyond())
        .isFalse();
  }

  @Test
  void chargingMustCarryWhatMayBeOnForLongAndChargeTheBattery() {
    // 55 W at 12 V is 4.58 A; at 14.2 V times (14.2 / 12) to the power of 0.55: 5.03 A each, and
    // the clock. Battery, fuse and switch lose some of it.
    Figure f = only(lamps(battery(60, 5, 12)).vehicle(), Figure.Kind.CHARGE_AMPS);
    assertThat(f.value()).isBetween(9.7, 10.13);
    assertThat(f.limit()).isCloseTo(0.8 * 12, within(1e-9));
    assertThat(f.beyond()).isTrue();
    assertThat((Double) f.said().get(2)).isCloseTo(30 / (f.value() - 5), within(1e-9));
    assertThat(f.said().get(3)).isEqualTo("stated");
    assertThat(f.with()).containsExactlyInAnyOrder("L1", "L2");
    assertThat(only(lamps(battery(60, 5, 13)).vehicle(), Figure.Kind.CHARGE_AMPS).beyond())
        .isFalse();
  }

  @Test
  void whereNoChargingIsStatedAUsualOneStandsInAndWhereThereIsNoneNothingIsSaid() {
    PartSpec unknown = new PartSpec.Battery(Optional.empty(), Optional.empty());
    Figure f = only(lamps(unknown).vehicle(), Figure.Kind.CHARGE_AMPS);
    // typical-values.csv: 45 A at working speed, common practice.
    assertThat(f.limit()).isCloseTo(36, within(1e-9));
    assertThat(f.said().get(3)).isEqualTo("usual");
    assertThat(figures(lamps(battery(60, 0, 0)).vehicle(), Figure.Kind.CHARGE_AMPS)).isEmpty();
  }

  @Test
  void aSmallFuseCarriesWhatItOutlastsAtTheMomentOfSwitchingOn() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.02, "top")
            .onOff("S1", 0.01, "top", "a")
            .lamp("SMALL", 5, 12, "a", "0")
            .onOff("S2", 0.01, "top", "b")
            .lamp("MIDDLE", 21, 12, "b", "0")
            .onOff("S3", 0.01, "top", "c")
            .part("BIG", load(PartKind.HEATER, 12), "c", "0")
            .circuit("small", "SMALL", "S1=on")
            .circuit("middle", "MIDDLE", "S2=on")
            .circuit("big", "BIG", "S3=on");
    // 21 W: 1.8 A, cold 13 times as much, 23 A: 4.5 times 5 A, which opens in 35 ms at the least;
    // the inrush lasts 20. 12 A is more than 10 carry.
    Figure small = only(rig.vehicle(), Figure.Kind.BRING_UP_AMPS);
    assertThat(small.value()).isEqualTo(5);
    assertThat(small.with()).containsExactly("SMALL", "MIDDLE");
    Figure own = only(rig.vehicle(), Figure.Kind.OWN_FUSE_AMPS);
    assertThat(own.value()).isBetween(11.0, 13.5);
    assertThat(own.with()).containsExactly("BIG");
  }

  @Test
  void aHeadlampIsTooMuchForASmallFuseWhileItIsCold() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.02, "top")
            .onOff("S1", 0.01, "top", "a")
            .lamp("L", 55, 12, "a", "0")
            .circuit("l", "L", "S1=on");
    // 4.6 A at work; cold about 55 A: eleven times 5 A, which may open within 6 ms.
    assertThat(only(rig.vehicle(), Figure.Kind.BRING_UP_AMPS).value()).isGreaterThan(5);
  }

  @Test
  void whatServesSeveralCircuitsIsToldAloneLikelyAndAll() {
    // A relay contact that two switches share, one of them a button.
    PartSpec horn =
        new PartSpec.Switch(
            List.of("in", "out"),
            List.of("off", "on"),
            List.of(new PartSpec.SwitchContact("in", "out", Set.of("on"))),
            PartSpec.Control.MANUAL,
            true,
            Optional.of(Rig.exactly(0.001)),
            Optional.empty());
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.001, "top")
            .fuse("F", 20, 0.001, "top", "f")
            .onOff("S1", 0.001, "f", "a")
            .part("A", load(PartKind.HEATER, 9), "a", "0")
            .onOff("S2", 0.001, "f", "b")
            .part("B", load(PartKind.HEATER, 4), "b", "0")
            .part("S3", horn, "f", "c")
            .part("H", load(PartKind.HORN, 5), "c", "0")
            .circuit("a", "A", "S1=on")
            .circuit("b", "B", "S2=on")
            .circuit("h", "H", "S3=on");
    Figure f = only(rig.vehicle(), Figure.Kind.TOTAL_AMPS);
    assertThat(f.part()).isEqualTo("F");
    assertThat(f.limit()).isCloseTo(16, within(1e-9));
    assertThat(f.with()).containsExactly("A");
    double alone = (Double) f.said().get(0);
    double all = (Double) f.said().get(1);
    assertThat(f.value() / alone).isCloseTo(13.0 / 9, within(0.01));
    assertThat(all / alone).isCloseTo(18.0 / 9, within(0.01));
    assertThat(f.said().subList(2, 5)).containsExactly(3, 20.0, "main");
  }

  @Test
  void wiresInOneTerminalAreCounted() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F", 10, 0.01, "far", "f")
            .lamp("L1", 5, 12, "one", "0")
            .lamp("L2", 5, 12, "two", "0")
            .wire("W0", "14 AWG", 1, "top", "far")
            .wire("W1", "18 AWG", 1, "f", "one")
            .wire("W2", "10 AWG", 1, "f", "two")
            .circuit("l", "L1");
    // On the fuse's load side two: 0.82 and 5.26 mm2.
    Figure crimped = only(rig.vehicle(), Figure.Kind.CRIMPED);
    assertThat(crimped.part()).isEqualTo("F");
    assertThat(crimped.with()).containsExactly("W1", "W2");
    assertThat(crimped.said()).containsExactly("load");
    assertThat(crimped.beyond()).isFalse();
    Figure unlike = only(rig.vehicle(), Figure.Kind.UNLIKE_CRIMPED);
    assertThat(unlike.value()).isCloseTo(5.26 / 0.823, within(0.05));
    assertThat(unlike.beyond()).isTrue();
    rig.lamp("L3", 5, 12, "three", "0").wire("W3", "18 AWG", 1, "f", "three");
    assertThat(only(rig.vehicle(), Figure.Kind.CRIMPED).beyond()).isTrue();
  }

  @Test
  void fourRingsOnAStudAreUsualAndFiveAreNot() {
    Rig rig = Rig.of(12).battery(12.6, 0.01, "top").fuse("F", 10, 0.01, "top", "f");
    rig.part("G", new PartSpec.Ground(Optional.empty()), "lug", "0");
    for (int n = 1; n <= 5; n++) {
      rig.lamp("L" + n, 5, 12, "f", "out" + n).wire("W" + n, 1, "out" + n, "lug");
      rig.circuit("c" + n, "L" + n);
      boolean beyond = figures(rig.vehicle(), Figure.Kind.RINGS).stream().anyMatch(Figure::beyond);
      assertThat(beyond).as(n + " rings").isEqualTo(n > 4);
    }
  }

  /**
   * A gauge whose sender shares a ground wire with a fan, or has its own.
   *
   * <pre>
   * BAT - F - GAUGE - SND - g      F - S - M - g or h      g, h - wires - G - ground
   * </pre>
   */
  private static Rig gauge(String fanGround) {
    return Rig.of(12)
        .battery(12.6, 0.001, "top")
        .fuse("F", 20, 0.001, "top", "f")
        .part("GAUGE", load(PartKind.ELECTRONICS, 0.2), "f", "s")
        .part("SND", new PartSpec.Sender(new Spread(10, 60, 180)), "s", "g")
        .onOff("S", 0.001, "f", "m")
        .part("M", load(PartKind.HEATER, 10), "m", fanGround)
        .part("STUD", new PartSpec.Ground(Optional.of(Rig.exactly(0.001))), "lug", "0")
        .part("END", new PartSpec.Connector(List.of("1"), Optional.empty()), "h", "g2")
        .wire("WG", "16 AWG", 1.5, "g", "lug")
        .wire("WH", "16 AWG", 1.5, "h", "lug")
        .circuit("gauge", "GAUGE")
        .circuit("fan", "M", "S=on");
  }

  @Test
  void aHeavyLoadOnTheGroundOfASenderMovesIt() {
    List<Figure> shared = figures(gauge("g").vehicle(), Figure.Kind.GROUND_MOVES_VOLTS);
    Figure f = shared.stream().filter(s -> s.part().equals("SND")).findFirst().orElseThrow();
    // 16 AWG is 13.2 mohm a metre and the ends take 2 more: 22 mohm and a stud at about 10 A.
    assertThat(f.value()).isBetween(0.19, 0.26);
    assertThat(f.with()).containsExactly("WG", "M");
    assertThat(f.beyond()).isTrue();
  }

  @Test
  void withAWireOfItsOwnItIsQuiet() {
    assertThat(figures(gauge("h").vehicle(), Figure.Kind.GROUND_MOVES_VOLTS))
        .noneMatch(Figure::beyond);
  }

  @Test
  void theLoopWithTheMostJointsIsNamed() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F", 10, 0.01, "far", "f")
            .lamp("L1", 5, 12, "f", "0")
            .part("C", new PartSpec.Connector(List.of("1"), Optional.empty()), "f", "c")
            .lamp("L2", 5, 12, "c", "0")
            .wire("W0", 1, "top", "far")
            .circuit("one", "L1")
            .circuit("two", "L2");
    Figure f = only(rig.vehicle(), Figure.Kind.JOINTS);
    // Both ends of W0, both clips of F, the pair in C, both contacts of the lamp.
    assertThat(f.part()).isEqualTo("L2");
    assertThat(f.value()).isEqualTo(7);
    assertThat(f.with()).containsExactly("C");
  }
}
