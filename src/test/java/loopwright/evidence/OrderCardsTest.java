package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.bench.HiddenTruth;
import loopwright.casework.CaseDesk;
import loopwright.casework.OrderCard;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.OrderOfChecks;
import loopwright.diagnosis.Reading;
import loopwright.meter.MeterSpec;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.report.OrderSheet;
import loopwright.report.PageSize;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The order-of-checks card of each complaint, with the checks that its printed page holds, followed
 * step by step with a simulated meter and eyes that see right: for every single failure that shows
 * as that complaint it must end where that failure's part is still held. True values lie anywhere
 * inside their spreads, a third of them at the ends; the meter errs within its description. Fixed
 * seeds. Two complaints of the tractor; all of all demo vehicles with {@code
 * -Dloopwright.cards=all}, one vehicle's with {@code tractor}, the third eighth of them with {@code
 * pumper:3/8}. Shorts between two wires of one loom are thinned out.
 */
class OrderCardsTest {
  private static final String WANTED = System.getProperty("loopwright.cards", "tractor:1/10");

  private static final int THIN_NEIGHBOURS = 25;
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);
  private static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();

  static List<String> vehicles() {
    return WANTED.equals("all") ? Bench.vehicles() : List.of(WANTED.split(":")[0]);
  }

  /** Whether the complaint of this number is among those wanted. */
  private static boolean wanted(int number) {
    if (!WANTED.contains(":")) {
      return true;
    }
    String[] share = WANTED.split(":")[1].split("/");
    return number % Integer.parseInt(share[1]) == Integer.parseInt(share[0]) - 1;
  }

  /** How following a card ended. */
  private record End(Map<String, Double> left, int steps) {}

  @ParameterizedTest
  @MethodSource("vehicles")
  void aCardHoldsWhateverHasFailedToItsEnd(String name) throws Problem {
    Vehicle vehicle = Bench.vehicle(name);
    List<String> lost = new ArrayList<>();
    int failures = 0;
    int told = 0;
    int steps = 0;
    int cards = 0;
    double group = 0;
    int held = 0;
    int begun = 0;
    int number = 0;
    for (Map.Entry<Complaint, List<Plays.Single>> e : plays(name, vehicle).entrySet()) {
      if (!wanted(number++)) {
        continue;
      }
      Complaint c = e.getKey();
      OrderCard card =
          Bench.cardDesk()
              .card(
                  vehicle,
                  new CaseDesk.Complaint(c.circuit(), Optional.of(c.load().toString()), c.kind()));
      OrderOfChecks order = card.order().upTo(OrderSheet.checks(card, PageSize.A4, PHRASES));
      cards++;
      for (Plays.Single play : e.getValue()) {
        End end = follow(vehicle, c, order, play.truth());
        String part = play.failure().part().id();
        List<String> named = OrderCard.told(end.left());
        failures++;
        steps += end.steps();
        group += named.size();
        held += end.left().size();
        begun += order.stages().get(0).left().size();
        told += named.contains(part) ? 1 : 0;
        if (!end.left().containsKey(part)) {
          lost.add(c.circuit() + " " + c.kind() + ": " + part + "/" + play.failure().name());
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%s: %d cards, %d failures, held at the end %d, told there %d (%.1f %%), parts told %.1f,"
            + " held %.1f of %.1f, steps %.2f%n",
        name,
        cards,
        failures,
        failures - lost.size(),
        told,
        100.0 * told / failures,
        group / failures,
        1.0 * held / failures,
        1.0 * begun / failures,
        1.0 * steps / failures);
    assertThat(lost).as("failures that a card led away from").isEmpty();
    // Shorts of a wire to ground or feed are the bulk of what is held and not told by name.
    assertThat(100.0 * told / failures).as("percent told at the end").isGreaterThan(50);
    // Bounds alone let go of a part, and a look has none; so fewer are named, not fewer held.
    assertThat(held).as("parts held at the ends").isLessThanOrEqualTo(begun);
    assertThat(group).as("parts told at the ends").isLessThan(begun / 2.0);
  }

  private static Map<Complaint, List<Plays.Single>> plays(String name, Vehicle vehicle) {
    Network network = Bench.network(vehicle);
    Map<Complaint, List<Plays.Single>> plays = new LinkedHashMap<>();
    int number = 0;
    for (Part part : vehicle.parts()) {
      for (Failure failure : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
        number++;
        if (failure.name().startsWith("short-to-neighbour") && number % THIN_NEIGHBOURS != 0) {
          continue;
        }
        Plays.single(name, number, network, failure, METER)
            .ifPresent(s -> plays.computeIfAbsent(s.complaint(), k -> new ArrayList<>()).add(s));
      }
    }
    return plays;
  }

  private static End follow(
      Vehicle vehicle, Complaint complaint, OrderOfChecks order, HiddenTruth truth) {
    int at = 0;
    int steps = 0;
    while (order.stages().get(at).asked().isPresent()) {
      OrderOfChecks.Asked asked = order.stages().get(at).asked().get();
      Check check = asked.check();
      steps++;
      if (asked.deadFirst()) {
        Check proof =
            Check.measure(
                CheckKind.VOLTS,
                check.red().orElseThrow(),
                check.black().orElseThrow(),
                check.setting());
        Reading.Value volts = Plays.measure(vehicle, truth, complaint.load(), proof);
        if (!(volts instanceof Reading.Value.Number n) || Math.abs(n.value()) >= 0.05) {
          break;
        }
      }
      Reading.Value value = Plays.measure(vehicle, truth, complaint.load(), check);
      Optional<OrderOfChecks.Result> result =
          asked.results().stream().filter(r -> r.takes(value)).findFirst();
      if (result.isEmpty()) {
        // Not on the card: it says to go on in Find the fault with all that this step holds.
        break;
      }
      at = result.get().stage();
    }
    return new End(order.stages().get(at).left(), steps);
  }
}
