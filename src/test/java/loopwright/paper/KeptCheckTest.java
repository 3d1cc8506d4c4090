package loopwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.edit.CircuitEdits;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.PartEdits;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.Fleet;
import loopwright.evidence.generated.MadeUp;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The check that remembers against one that doesn't, over random edits. {@code
 * -Dloopwright.edits=400} makes thousands of them.
 */
class KeptCheckTest {

  /** Edits of each vehicle. */
  private static final int EDITS = Integer.getInteger("loopwright.edits", 12);

  /**
   * Share of a figure, or of its limit where that is greater, by which two ways to work it out may
   * differ.
   */
  private static final double ALIKE = 1e-6;

  private static List<Figure> whole(Vehicle vehicle) {
    return PaperCheck.figures(vehicle, Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
  }

  private static List<Figure> again(PaperCheck check, Vehicle vehicle) {
    return check.figures(vehicle, PaperCheck.USUAL_SURROUNDINGS, () -> false);
  }

  private static void same(List<Figure> kept, List<Figure> whole, String after) {
    List<String> more = new ArrayList<>(words(kept));
    List<String> less = new ArrayList<>(words(whole));
    more.removeAll(words(whole));
    less.removeAll(words(kept));
    assertThat(more).as(after).isEqualTo(less);
    assertThat(words(kept).equals(words(whole))).as(after + ": order").isTrue();
    for (int i = 0; i < kept.size(); i++) {
      Figure k = kept.get(i);
      Figure w = whole.get(i);
      double most = Math.max(Math.abs(w.value()), Math.abs(w.limit()));
      assertThat(k.limit()).as(after).isEqualTo(w.limit(), within(most));
      assertThat(k.value()).as("%s: %s", after, w).isEqualTo(w.value(), within(most));
    }
  }

  private static org.assertj.core.data.Offset<Double> within(double most) {
    return org.assertj.core.data.Offset.offset(ALIKE * most);
  }

  private static List<String> words(List<Figure> figures) {
    return figures.stream().map(KeptCheckTest::words).toList();
  }

  private static String words(Figure f) {
    return f.part() + " " + f.kind() + " " + f.at() + " " + f.with();
  }

  // Random edits.

  static Stream<Vehicle> vehicles() {
    return Stream.concat(
        Stream.of("motorcycle", "tractor", "truck", "pumper").map(Bench::vehicle),
        Stream.concat(
            IntStream.of(1, 4, 9, 16, 25, 36).mapToObj(MadeUp::vehicle),
            Stream.of(Fleet.vehicle(60))));
  }

  @ParameterizedTest
  @MethodSource("vehicles")
  void randomEditsGiveTheFiguresOfAWholeCheck(Vehicle first) {
    Random random = new Random(first.id().hashCode());
    PaperCheck check = new PaperCheck(Bench.KNOWLEDGE);
    Deque<Vehicle> before = new ArrayDeque<>();
    Vehicle now = first;
    again(check, now);
    int made = 0;
    while (made < EDITS) {
      Vehicle next;
      String title;
      if (!before.isEmpty() && random.nextInt(5) == 0) {
        next = before.pop();
        title = "undo";
      } else {
        Edit edit = edit(now, random);
        title = edit.title();
        try {
          next = edit.make(now).vehicle();
        } catch (Problem e) {
          continue;
        }
        if (!solvable(next)) {
          continue;
        }
        before.push(now);
      }
      now = next;
      made++;
      same(again(check, now), whole(now), first.id() + " after edit " + made + ", " + title);
    }
  }

  private static boolean solvable(Vehicle vehicle) {
    return vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY)
        && VehicleCheck.check(vehicle, VehicleCheck.Scope.PIECES, Set.of()).isEmpty();
  }

  private static <T> T any(List<T> from, Random random) {
    return from.get(random.nextInt(from.size()));
  }

  private static Edit edit(Vehicle v, Random random) {
    Part part = any(v.parts(), random);
    return switch (random.nextInt(10)) {
      case 0 -> PartEdits.remove(part.id());
      case 1 -> wire(v, random);
      case 2 -> {
        Circuit circuit = any(v.circuits(), random);
        yield random.nextInt(3) > 0
            ? CircuitEdits.duplicate(circuit.id(), circuit.name() + " again")
            : CircuitEdits.remove(circuit.id());
      }
      case 3 -> joint(v, random);
      default -> PartEdits.spec(part.id(), other(part.spec(), random));
    };
  }

  /** A wire between any two terminals. */
  private static Edit wire(Vehicle v, Random random) {
    List<TerminalRef> all = List.copyOf(v.terminals());
    PartSpec.Wire like =
        (PartSpec.Wire)
            any(v.parts().stream().filter(p -> p.spec() instanceof PartSpec.Wire).toList(), random)
                .spec();
    PartSpec.Wire wire =
        like.withKind(PartKind.WIRE)
            .withEnds(any(all, random), any(all, random))
            .withColour("")
            .withLoom("");
    return PartEdits.add(Part.of("W" + (1000 + random.nextInt(9000)), "", wire));
  }

  /** Two terminals that touch from now on. */
  private static Edit joint(Vehicle v, Random random) {
    List<TerminalRef> all = List.copyOf(v.terminals());
    List<List<TerminalRef>> joins = new ArrayList<>(v.joins());
    joins.add(List.of(any(all, random), any(all, random)));
    return new Edit() {
      @Override
      public String title() {
        return "join " + joins.get(joins.size() - 1);
      }

      @Override
      public Made make(Vehicle before) {
        return new Made(before.with(before.parts(), joins, before.circuits()), List.of());
      }
    };
  }

  private static Estimate times(Estimate e, double factor) {
    return Estimate.of(e.about() * factor);
  }

  /** The same kind of thing with another value. */
  private static PartSpec other(PartSpec spec, Random random) {
    double factor = Math.exp(random.nextGaussian());
    if (spec instanceof PartSpec.Wire w) {
      return w.withMetres(times(w.metres(), factor));
    } else if (spec instanceof PartSpec.Lamp l) {
      return new PartSpec.Lamp(l.ratedVolts(), times(l.watts(), factor));
    } else if (spec instanceof PartSpec.Fuse f) {
      return new PartSpec.Fuse(f.amps() * (random.nextBoolean() ? 2 : 0.5), f.ohms());
    } else if (spec instanceof PartSpec.Motor m) {
      return new PartSpec.Motor(times(m.amps(), factor), Optional.empty());
    } else if (spec instanceof PartSpec.Relay r) {
      boolean weak = random.nextBoolean();
      double pulls = (weak ? 11 : 7) * Math.min(1.1, factor);
      return r.withCoilOhms(Optional.of(Estimate.of(90 * factor)))
          .withPullInVolts(Optional.of(Estimate.of(pulls)))
          .withDropOutVolts(Optional.of(Estimate.of(pulls / 3)))
          .withSuppression(
              random.nextInt(3) == 0 ? PartSpec.Suppression.DIODE_CATHODE_86 : r.suppression());
    } else if (spec instanceof PartSpec.Switch s) {
      // Another position at rest.
      List<String> turned = new ArrayList<>(s.positions());
      turned.add(turned.remove(0));
      return s.withPositions(turned)
          .withMomentary(random.nextInt(4) == 0 != s.momentary())
          .withOhms(Optional.of(Estimate.of(0.02 * factor)));
    } else if (spec instanceof PartSpec.Battery b) {
      return b.withOhms(Optional.of(Estimate.of(0.01 * factor)));
    }
    return spec;
  }

  @Test
  void turningTheBatteryRoundIsNoticed() {
    Vehicle tractor = Bench.vehicle("tractor");
    PaperCheck check = new PaperCheck(Bench.KNOWLEDGE);
    again(check, tractor);
    GroundedPole other =
        tractor.grounded() == GroundedPole.NEGATIVE ? GroundedPole.POSITIVE : GroundedPole.NEGATIVE;
    Vehicle turned = tractor.withSupply(12, other);
    same(again(check, turned), whole(turned), "turned");
    Vehicle another = Bench.vehicle("truck");
    same(again(check, another), whole(another), "another vehicle");
  }

  // What is solved.

  private static Vehicle after(Vehicle vehicle, Edit edit) throws Problem {
    return edit.make(vehicle).vehicle();
  }

  @Test
  void anEditInOneCircuitSolvesOnlyWhatItChanges() throws Problem {
    Vehicle fleet = Fleet.vehicle(200);
    PaperCheck check = new PaperCheck(Bench.KNOWLEDGE);
    again(check, fleet);
    int states = check.states();
    assertThat(check.solved()).isEqualTo(states).isGreaterThan(100);
    again(check, fleet);
    assertThat(check.solved()).isZero();
    for (String lamp : List.of("L1", "L4", "L9")) {
      PartSpec.Lamp now = (PartSpec.Lamp) fleet.requirePart(lamp).spec();
      fleet =
          after(
              fleet,
              PartEdits.spec(lamp, new PartSpec.Lamp(Optional.empty(), times(now.watts(), 1.4))));
      same(again(check, fleet), whole(fleet), lamp);
      assertThat(check.solved()).as(lamp).isBetween(1, states / 12);
    }
    // It feeds them all.
    PartSpec.Battery weak = new PartSpec.Battery(Optional.empty(), Optional.of(Estimate.of(0.05)));
    Vehicle weaker = after(fleet, PartEdits.spec(fleet.battery().id(), weak));
    same(again(check, weaker), whole(weaker), "battery");
    assertThat(check.solved()).isGreaterThan(states / 2);
  }

  @Test
  void wordsSolveNothing() throws Problem {
    Vehicle pumper = Bench.vehicle("pumper");
    PaperCheck check = new PaperCheck(Bench.KNOWLEDGE);
    again(check, pumper);
    Part wire =
        pumper.parts().stream().filter(p -> p.kind() == PartKind.WIRE).findFirst().orElseThrow();
    PartSpec.Wire w = (PartSpec.Wire) wire.spec();
    Vehicle named = after(pumper, PartEdits.name(wire.id(), "another name"));
    again(check, named);
    assertThat(check.solved()).isZero();
    Vehicle coloured = after(named, PartEdits.spec(wire.id(), w.withColour("pink")));
    again(check, coloured);
    assertThat(check.solved()).isZero();
  }

  @Test
  void aCheckThatNobodyWaitsForStopsAndLosesNothing() {
    Vehicle pumper = Bench.vehicle("pumper");
    PaperCheck check = new PaperCheck(Bench.KNOWLEDGE);
    again(check, pumper);
    AtomicInteger asked = new AtomicInteger();
    assertThatThrownBy(
            () ->
                check.figures(
                    Bench.vehicle("truck"),
                    PaperCheck.USUAL_SURROUNDINGS,
                    () -> asked.incrementAndGet() > 5))
        .isInstanceOf(CancellationException.class);
    assertThat(asked).hasValue(6);
    again(check, pumper);
    assertThat(check.solved()).isZero();
  }
}
