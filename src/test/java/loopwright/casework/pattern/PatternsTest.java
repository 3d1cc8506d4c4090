package loopwright.casework.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;
import loopwright.paper.Figure;
import loopwright.paper.PaperCheck;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every pattern on every voltage, either post grounded, with every key and return there is. */
class PatternsTest {
  static final Basis BASIS = new Basis(Bench.KNOWLEDGE, new PatternWords(Locale.ENGLISH));

  /**
   * What a person should know of but nobody can do without: a driver's relay wants the diode that
   * makes it let go slowly, and lamps that share a ground glow through each other once it is lost.
   */
  private static final Set<Figure.Kind> KNOWN =
      Set.of(
          Figure.Kind.DIODE_BREAKS_AMPS,
          Figure.Kind.GROUND_SNEAK,
          // Where charging isn't stated a usual one stands in, which is told as such.
          Figure.Kind.CHARGE_AMPS);

  static Stream<Arguments> everywhere() {
    List<Arguments> all = new ArrayList<>();
    for (Pattern pattern : Patterns.all()) {
      for (int volts : new int[] {6, 12, 24}) {
        for (GroundedPole pole : GroundedPole.values()) {
          all.add(
              Arguments.of(
                  pattern.id(),
                  volts,
                  pole,
                  NewVehicle.Key.RELAY,
                  NewVehicle.Return.BODY,
                  WireSize.Unit.MM2));
        }
      }
      all.add(
          Arguments.of(
              pattern.id(),
              12,
              GroundedPole.NEGATIVE,
              NewVehicle.Key.SWITCH,
              NewVehicle.Return.BLOCK,
              WireSize.Unit.AWG));
      all.add(
          Arguments.of(
              pattern.id(),
              12,
              GroundedPole.POSITIVE,
              NewVehicle.Key.NONE,
              NewVehicle.Return.BLOCK,
              WireSize.Unit.AWG));
    }
    return all.stream();
  }

  /** A vehicle with what the pattern hangs on, and the pattern itself. */
  static Outcome with(
      String pattern,
      int volts,
      GroundedPole pole,
      NewVehicle.Key key,
      NewVehicle.Return back,
      WireSize.Unit sizes)
      throws Problem {
    List<NewVehicle.Row> rows = new ArrayList<>();
    if (pattern.equals("trailer-socket")) {
      rows.add(new NewVehicle.Row("brake-turn", Map.of()));
      rows.add(
          new NewVehicle.Row(
              "lamp-switch", Map.of("name", "tail lamp", "power", "5 W", "count", "2")));
    }
    rows.add(new NewVehicle.Row(pattern, Map.of()));
    // The pattern's own fuse block wants a vehicle without one.
    NewVehicle.Key without = pattern.equals("main-relay") ? NewVehicle.Key.NONE : key;
    return new NewVehicle("rig", volts, pole, without, back, sizes, rows).make(BASIS);
  }

  @ParameterizedTest
  @MethodSource("everywhere")
  void itHoldsTogetherWorksAndKeepsAllLimits(
      String pattern,
      int volts,
      GroundedPole pole,
      NewVehicle.Key key,
      NewVehicle.Return back,
      WireSize.Unit sizes)
      throws Problem {
    Outcome outcome = with(pattern, volts, pole, key, back, sizes);
    Vehicle vehicle = outcome.vehicle();
    assertThat(VehicleCheck.check(vehicle)).isEmpty();
    Network network = Bench.network(vehicle);
    for (Circuit circuit : vehicle.circuits()) {
      OperatingPoint on = Solver.full(network).solve(Variant.healthy(network), circuit.onSetting());
      OperatingPoint off = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
      for (LoadRef load : circuit.loads()) {
        double asked = asked(vehicle, load);
        assertThat(amps(network, on, load))
            .as(circuit.name() + ", " + load)
            .isBetween(0.8 * asked, 1.2 * asked);
        if (!circuit.on().isEmpty()) {
          assertThat(amps(network, off, load)).as(circuit.name() + " at rest").isLessThan(0.001);
        }
      }
    }
    List<Figure> beyond = new ArrayList<>();
    for (Figure figure :
        PaperCheck.figures(network.vehicle(), Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS)) {
      if (figure.beyond() && !KNOWN.contains(figure.kind())) {
        beyond.add(figure);
      }
    }
    assertThat(beyond).as(outcome.told().toString()).isEmpty();
  }

  private static double amps(Network network, OperatingPoint point, LoadRef load) {
    return network.elementsOf(load.part()).stream()
        .filter(
            e -> {
              String role = network.elements().get(e).role();
              return load.filament().map(f -> role.equals("filament:" + f)).orElse(true);
            })
        .mapToDouble(e -> Math.abs(point.amps(e)))
        .max()
        .orElseThrow();
  }

  private static double asked(Vehicle vehicle, LoadRef load) {
    Part part = vehicle.requirePart(load.part());
    if (part.spec() instanceof PartSpec.Lamp l) {
      return l.watts().about() / vehicle.systemVolts();
    }
    if (part.spec() instanceof PartSpec.DualLamp d) {
      double watts =
          load.filament().orElseThrow().equals(d.first())
              ? d.firstWatts().about()
              : d.secondWatts().about();
      return watts / vehicle.systemVolts();
    }
    if (part.spec() instanceof PartSpec.Motor m) {
      return m.amps().about();
    }
    return ((PartSpec.PlainLoad) part.spec()).amps().about();
  }

  static Set<String> ids(List<Added> added) {
    Set<String> ids = new LinkedHashSet<>();
    added.forEach(a -> ids.add(a.part()));
    return ids;
  }
}
