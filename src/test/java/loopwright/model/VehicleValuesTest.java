package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * Limits of every value of every kind of part: what lies on them is accepted, what lies beyond is
 * named with its place. The limits are common practice and wide on purpose.
 */
class VehicleValuesTest {

  private static final Optional<Estimate> NONE = Optional.empty();
  private static final Optional<Double> NO = Optional.empty();

  private static Optional<Estimate> about(double value) {
    return Optional.of(Estimate.of(value));
  }

  /** Paths of the findings that a part gives, those of its free terminals and loops left out. */
  private static List<String> wrong(int volts, Part part) {
    Vehicle vehicle =
        new Vehicle(
            "v",
            "v",
            volts,
            GroundedPole.NEGATIVE,
            List.of(part),
            List.of(),
            List.of(new Circuit("c", "", List.of(), Map.of(), "")),
            "");
    return VehicleCheck.check(vehicle, VehicleCheck.Scope.PIECES, Set.of()).stream()
        .map(VehicleCheck.Finding::path)
        .filter(p -> p.startsWith("parts[0]."))
        .map(p -> p.substring("parts[0].".length()))
        .toList();
  }

  private static List<String> wrong(PartSpec spec) {
    return wrong(12, Part.of("X", "", spec));
  }

  private record Limit(String field, double low, double high, DoubleFunction<PartSpec> spec) {}

  private static PartSpec.Relay relay(
      Optional<Estimate> coil,
      Optional<Estimate> pullIn,
      Optional<Estimate> dropOut,
      Optional<Estimate> contact,
      Optional<Double> amps) {
    return new PartSpec.Relay(
        false, coil, pullIn, dropOut, contact, PartSpec.Suppression.NONE, amps);
  }

  private static PartSpec onOff(Optional<Estimate> ohms, Optional<Double> amps) {
    return new PartSpec.Switch(
        List.of("in", "out"),
        List.of("off", "on"),
        List.of(new PartSpec.SwitchContact("in", "out", Set.of("on"))),
        PartSpec.Control.MANUAL,
        false,
        ohms,
        amps);
  }

  private static PartSpec supply(
      Optional<Double> ampHours, Optional<Double> idle, Optional<Double> working) {
    return new PartSpec.Battery(NONE, NONE, ampHours, idle, working);
  }

  private static PartSpec wire(Estimate metres, Optional<Estimate> ends) {
    return new PartSpec.Wire(
        PartKind.WIRE,
        new TerminalRef("A", "a"),
        new TerminalRef("A", "b"),
        WireSize.parse("1 mm2"),
        metres,
        ends,
        "",
        "");
  }

  private static List<Limit> limits() {
    List<Limit> all = new ArrayList<>();
    all.add(new Limit("ohms", 1e-5, 10, v -> new PartSpec.Battery(NONE, about(v))));
    all.add(new Limit("volts", 3.6, 15.6, v -> new PartSpec.Battery(about(v), NONE)));
    all.add(new Limit("amp_hours", 0.5, 2_000, v -> supply(Optional.of(v), NO, NO)));
    all.add(new Limit("charge_idle_amps", 0, 1_000, v -> supply(NO, Optional.of(v), NO)));
    all.add(new Limit("charge_amps", 0, 1_000, v -> supply(NO, NO, Optional.of(v))));
    all.add(new Limit("end_ohms", 1e-6, 1e7, v -> wire(Estimate.of(1), about(v))));
    all.add(new Limit("amps", 0.1, 500, v -> new PartSpec.Fuse(v, NONE)));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> new PartSpec.Fuse(10, about(v))));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> onOff(about(v), Optional.empty())));
    all.add(new Limit("amps", 0.1, 2_000, v -> onOff(NONE, Optional.of(v))));
    all.add(
        new Limit(
            "coil_ohms", 0.5, 20_000, v -> relay(about(v), NONE, NONE, NONE, Optional.empty())));
    all.add(
        new Limit(
            "pull_in_volts", 0.5, 32, v -> relay(NONE, about(v), NONE, NONE, Optional.empty())));
    all.add(
        new Limit(
            "drop_out_volts", 0.5, 32, v -> relay(NONE, NONE, about(v), NONE, Optional.empty())));
    all.add(
        new Limit(
            "contact_ohms", 1e-6, 1e7, v -> relay(NONE, NONE, NONE, about(v), Optional.empty())));
    all.add(new Limit("amps", 0.1, 2_000, v -> relay(NONE, NONE, NONE, NONE, Optional.of(v))));
    all.add(
        new Limit("watts", 0.1, 2_000, v -> new PartSpec.Lamp(Optional.empty(), Estimate.of(v))));
    all.add(
        new Limit("rated_volts", 1, 48, v -> new PartSpec.Lamp(Optional.of(v), Estimate.of(21))));
    all.add(new Limit("filaments[0].watts", 0.1, 2_000, v -> dual(v, 21, Optional.empty())));
    all.add(new Limit("filaments[1].watts", 0.1, 2_000, v -> dual(5, v, Optional.empty())));
    all.add(new Limit("rated_volts", 1, 48, v -> dual(5, 21, Optional.of(v))));
    all.add(new Limit("forward_volts", 0.1, 24, v -> new PartSpec.Led(about(v), Estimate.of(1))));
    all.add(new Limit("amps", 0.001, 2_000, v -> new PartSpec.Led(NONE, Estimate.of(v))));
    all.add(new Limit("forward_volts", 0.1, 24, v -> new PartSpec.Diode(about(v))));
    all.add(new Limit("amps", 0.001, 2_000, v -> new PartSpec.Motor(Estimate.of(v), NONE)));
    all.add(
        new Limit(
            "amps", 0.001, 2_000, v -> new PartSpec.PlainLoad(PartKind.HORN, Estimate.of(v))));
    all.add(new Limit("ohms", 0, 1e7, v -> new PartSpec.Sender(Spread.exactly(v))));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> new PartSpec.Driver(about(v), "")));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> new PartSpec.Connector(List.of("1"), about(v))));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> new PartSpec.Splice(List.of("a", "b"), about(v))));
    all.add(new Limit("ohms", 1e-6, 1e7, v -> new PartSpec.Ground(about(v))));
    return all;
  }

  private static PartSpec dual(double first, double second, Optional<Double> volts) {
    return new PartSpec.DualLamp("tail", Estimate.of(first), "stop", Estimate.of(second), volts);
  }

  @Test
  void everyValueIsAcceptedUpToItsLimitsAndNamedBeyond() {
    for (Limit limit : limits()) {
      String what = limit.spec().apply(limit.high()) + " " + limit.field();
      boolean ends = limit.field().equals("end_ohms");
      for (double within : new double[] {limit.low(), limit.high()}) {
        assertThat(wrong(limit.spec().apply(within))).as(what).doesNotContain(limit.field());
      }
      double below = limit.low() == 0 ? -1 : limit.low() * 0.99;
      for (double beyond : new double[] {below, limit.high() * 1.01}) {
        List<String> wrong = wrong(limit.spec().apply(beyond));
        assertThat(wrong).as(what).contains(limit.field());
        // The wire's ends lie on a part that isn't there, which is said too.
        assertThat(wrong).as(what).hasSize(ends ? 3 : 1);
      }
    }
  }

  @Test
  void theBatterysLimitsGoWithTheSystemVolts() {
    for (int system : new int[] {6, 24}) {
      for (double share : new double[] {0.29, 0.31, 1.29, 1.31}) {
        Part battery = Part.of("B", "", new PartSpec.Battery(about(share * system), NONE));
        assertThat(wrong(system, battery).contains("volts"))
            .as("%s of %s V", share, system)
            .isEqualTo(share < 0.3 || share > 1.3);
      }
    }
    // Without a system voltage there is nothing to hold it against.
    assertThat(wrong(9, Part.of("B", "", new PartSpec.Battery(about(900), NONE)))).isEmpty();
  }

  @Test
  void statedLimitsCountAsMuchAsTheValueItself() {
    assertThat(wrong(new PartSpec.Ground(Optional.of(Estimate.between(1e-7, 1, 2)))))
        .containsExactly("ohms");
    assertThat(wrong(new PartSpec.Ground(Optional.of(Estimate.between(1, 1, 2e7)))))
        .containsExactly("ohms");
    assertThat(wrong(new PartSpec.Ground(Optional.of(Estimate.between(1, 1, 2))))).isEmpty();
  }

  @Test
  void aWiresMetresAreMoreThanNothingAndAtMostAHundred() {
    assertThat(metres(Estimate.of(100))).doesNotContain("metres");
    assertThat(metres(Estimate.of(100.5))).contains("metres");
    assertThat(metres(Estimate.of(0))).contains("metres");
    assertThat(metres(Estimate.of(0.01))).doesNotContain("metres");
    assertThat(metres(Estimate.between(0, 1, 2))).contains("metres");
    assertThat(metres(Estimate.between(1, 2, 101))).contains("metres");
  }

  private static List<String> metres(Estimate metres) {
    return wrong(wire(metres, NONE));
  }

  @Test
  void aRelayDropsOutBelowWhatPullsItInAndAMotorStallsAboveWhatItRunsOn() {
    assertThat(wrong(relay(NONE, about(6), about(6), NONE, Optional.empty())))
        .containsExactly("drop_out_volts");
    assertThat(wrong(relay(NONE, about(6), about(5.9), NONE, Optional.empty()))).isEmpty();
    assertThat(wrong(new PartSpec.Motor(Estimate.of(4), about(3.9)))).containsExactly("stall_amps");
    assertThat(wrong(new PartSpec.Motor(Estimate.of(4), about(4)))).isEmpty();
    assertThat(wrong(new PartSpec.Motor(Estimate.of(4), about(2_001))))
        .containsExactly("stall_amps");
  }

  @Test
  void minutesAreThoseOfADayAtMost() {
    for (double minutes : new double[] {-1, 0, 1_440, 1_441}) {
      boolean bad = minutes < 0 || minutes > 1_440;
      Part timed =
          new Part(
              "X",
              "",
              "",
              new PartSpec.Body(),
              minutes < 0 ? Map.of() : Map.of("metal", new Access(minutes, "", true)),
              Optional.of(minutes),
              Optional.of(minutes),
              Set.of(),
              "");
      List<String> wrong = wrong(12, timed);
      assertThat(wrong.contains("apart_minutes")).as("%s", minutes).isEqualTo(bad);
      assertThat(wrong.contains("swap_minutes")).as("%s", minutes).isEqualTo(bad);
      assertThat(wrong.contains("access.metal.minutes")).isEqualTo(minutes > 1_440);
    }
  }

  @Test
  void aNumberIsWrittenAsAPersonWritesIt() {
    VehicleCheck.Finding finding =
        VehicleCheck.check(
                new Vehicle(
                    "v",
                    "v",
                    12,
                    GroundedPole.NEGATIVE,
                    List.of(Part.of("F1", "", new PartSpec.Fuse(1234.56789, NONE))),
                    List.of(),
                    List.of(),
                    ""),
                VehicleCheck.Scope.PIECES,
                Set.of())
            .get(0);
    assertThat(finding.message())
        .isEqualTo("fuse F1: amps is 1234.57 A, must be 0.1 to 500 A [parts[0].amps]");
    assertThat(finding.value()).isEqualTo("1234.57 A");
    assertThat(finding.limit()).isEqualTo("0.1 to 500 A");
    for (double odd : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThat(wrong(new PartSpec.Fuse(odd, NONE))).containsExactly("amps");
    }
  }

  // ---- names ----------------------------------------------------------------------------------

  @Test
  void namesWithinAPartAreThereOnce() {
    assertThat(
            wrong(
                new PartSpec.Switch(
                    List.of("in", "out", "in"),
                    List.of("off", "on", "on"),
                    List.of(),
                    PartSpec.Control.MANUAL,
                    false,
                    NONE,
                    Optional.empty())))
        .containsExactly("terminals[2]", "positions[2]");
    assertThat(wrong(new PartSpec.Connector(List.of("1", "2", "2"), NONE)))
        .containsExactly("cavities[2]");
    assertThat(wrong(new PartSpec.Splice(List.of("a", "a"), NONE))).containsExactly("legs[1]");
    assertThat(
            wrong(
                new PartSpec.DualLamp(
                    "stop", Estimate.of(5), "stop", Estimate.of(21), Optional.empty())))
        .containsExactly("filaments[1].name");
    assertThat(
            wrong(
                new PartSpec.DualLamp(
                    "tail", Estimate.of(5), "common", Estimate.of(21), Optional.empty())))
        .containsExactly("filaments[1].name");
    assertThat(
            wrong(
                new PartSpec.DualLamp(
                    "common", Estimate.of(5), "stop", Estimate.of(21), Optional.empty())))
        .containsExactly("filaments[0].name");
  }

  @Test
  void aSystemOfAnotherVoltageAndOneWithoutCircuitsAreNamed() {
    Vehicle nine =
        new Vehicle("v", "v", 9, GroundedPole.NEGATIVE, List.of(), List.of(), List.of(), "");
    assertThat(VehicleCheck.check(nine))
        .extracting(VehicleCheck.Finding::path)
        .containsExactly("system_volts", "circuits", "parts");
    assertThat(VehicleCheck.check(nine, VehicleCheck.Scope.PIECES, Set.of()))
        .extracting(VehicleCheck.Finding::path)
        .containsExactly("system_volts", "circuits");
  }

  @Test
  void aContactThatJoinsATerminalToItselfAndALonelyJoinAreNamed() {
    assertThat(
            wrong(
                new PartSpec.Switch(
                    List.of("in", "out"),
                    List.of("off", "on"),
                    List.of(new PartSpec.SwitchContact("in", "in", Set.of("on"))),
                    PartSpec.Control.MANUAL,
                    false,
                    NONE,
                    Optional.empty())))
        .containsExactly("contacts[0].between");
    Vehicle lonely =
        new Vehicle(
            "v",
            "v",
            12,
            GroundedPole.NEGATIVE,
            List.of(Part.of("B", "", new PartSpec.Body())),
            List.of(
                List.of(new TerminalRef("B", "metal")),
                List.of(new TerminalRef("B", "metal"), new TerminalRef("B", "metal"))),
            List.of(new Circuit("c", "", List.of(), Map.of(), "")),
            "");
    assertThat(VehicleCheck.check(lonely, VehicleCheck.Scope.PIECES, Set.of()))
        .extracting(VehicleCheck.Finding::path)
        .containsExactly("joins[0]", "joins[1][1]", "circuits[0].loads");
  }
}
