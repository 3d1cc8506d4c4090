package loopwright.casework.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Answer;
import loopwright.casework.CircuitLoops;
import loopwright.casework.Entry;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.prove.ProofEvent;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;

/**
 * What a vehicle reads when it is well, for the glove box: what is expected, beside what was read
 * good.
 *
 * @param vehicle the vehicle
 * @param circuits its circuits
 * @param grounds its grounds that are proven good now
 */
public record KnownGood(Vehicle vehicle, List<Card> circuits, List<GroundRow> grounds) {

  /** Copies the lists. */
  public KnownGood {
    circuits = List.copyOf(circuits);
    grounds = List.copyOf(grounds);
  }

  /**
   * A circuit.
   *
   * @param name its name
   * @param on the set-up in which it works, a line each
   * @param rows what to read
   */
  public record Card(String name, List<String> on, List<Row> rows) {
    /** Copies the lists. */
    public Card {
      on = List.copyOf(on);
      rows = List.copyOf(rows);
    }
  }

  /**
   * A reading to take.
   *
   * @param where where the leads go, in words
   * @param healthy what a healthy vehicle shows, in words
   * @param good what was read good there last; empty if nothing was
   */
  public record Row(String where, String healthy, Optional<Good> good) {}

  /**
   * A reading that was good when it was taken.
   *
   * @param value what was read
   * @param at when
   * @param from where it comes from
   * @param fits whether it is what the vehicle as it is now would show
   */
  public record Good(String value, Instant at, From from, boolean fits) {}

  /** Where a good reading comes from. */
  public enum From {
    /** The proof of a mend. */
    MEND,
    /** The proof of the circuit on first power, behind the small fuse. */
    FIRST_POWER
  }

  /** A reading of a circuit before it is put beside what is expected. */
  private record Taken(String circuit, OwnCheck check, Answer answer, Instant at, From from) {}

  /**
   * The card of a vehicle.
   *
   * @param loops tells what it shows when it is healthy
   * @param records kept cases, of whatever vehicles
   * @param proofs readings of what is proven, by circuit
   * @param grounds its grounds
   * @throws Problem if a circuit can't be worked out
   */
  public static KnownGood of(
      Vehicle vehicle,
      CircuitLoops loops,
      List<CaseRecord> records,
      Map<String, List<ProofEvent.Checked>> proofs,
      List<GroundRow> grounds)
      throws Problem {
    List<Taken> taken = taken(vehicle, records, proofs);
    List<Card> cards = new ArrayList<>();
    for (Circuit circuit : vehicle.circuits()) {
      cards.add(card(vehicle, loops, circuit, taken));
    }
    return new KnownGood(vehicle, cards, grounds.stream().filter(GroundRow::good).toList());
  }

  private static List<Taken> taken(
      Vehicle vehicle, List<CaseRecord> records, Map<String, List<ProofEvent.Checked>> proofs) {
    List<Taken> taken = new ArrayList<>();
    for (CaseRecord record : records) {
      if (record.opened().practice() || !record.opened().vehicleId().equals(vehicle.id())) {
        continue;
      }
      for (CaseRecord.Stage stage : record.stages()) {
        if (stage.proven().isPresent()) {
          stage.readings().stream()
              .filter(r -> !r.withdrawn())
              .map(
                  r ->
                      new Taken(
                          record.opened().circuit(), r.check(), r.answer(), r.at(), From.MEND))
              .forEach(taken::add);
        }
      }
    }
    proofs.forEach(
        (circuit, checks) ->
            checks.forEach(
                c ->
                    taken.add(
                        new Taken(circuit, c.check(), c.answer(), c.at(), From.FIRST_POWER))));
    // Volts of the vehicle as it stands put together: what is apart for a test is no card's matter.
    taken.removeIf(
        t -> t.check().kind() != CheckKind.VOLTS || !t.check().setting().apart().isEmpty());
    return taken;
  }

  private static Card card(Vehicle vehicle, CircuitLoops loops, Circuit circuit, List<Taken> taken)
      throws Problem {
    Map<OwnCheck, Optional<Taken>> rows = new LinkedHashMap<>();
    loops.worthKnowing(circuit).forEach(check -> rows.put(check, Optional.empty()));
    for (Taken t : taken) {
      if (t.circuit().equals(circuit.id()) && stillThere(vehicle, t.check())) {
        rows.merge(
            t.check(),
            Optional.of(t),
            (old, fresh) ->
                old.filter(o -> o.at().isAfter(fresh.orElseThrow().at())).isPresent()
                    ? old
                    : fresh);
      }
    }
    List<Row> lines = new ArrayList<>();
    rows.forEach(
        (check, good) -> {
          CircuitLoops.Known known = loops.known(check);
          lines.add(new Row(known.where(), known.words(), good.map(t -> good(t, known))));
        });
    return new Card(circuit.name(), loops.setting(circuit.onSetting()), lines);
  }

  private static boolean stillThere(Vehicle vehicle, OwnCheck check) {
    return check.red().filter(vehicle.terminals()::contains).isPresent()
        && check.black().filter(vehicle.terminals()::contains).isPresent()
        && check.setting().positions().entrySet().stream()
            .allMatch(
                e ->
                    vehicle.controls().containsKey(e.getKey())
                        && vehicle.controls().get(e.getKey()).contains(e.getValue()));
  }

  private static Good good(Taken taken, CircuitLoops.Known known) {
    boolean fits;
    try {
      Reading.Value value = Entry.understand(taken.check().kind(), taken.answer());
      fits =
          !(value instanceof Reading.Value.Number n)
              || n.value() >= known.healthy().low() && n.value() <= known.healthy().high();
    } catch (Problem p) {
      // Kept by another version.
      fits = false;
    }
    return new Good(taken.answer().words(), taken.at(), taken.from(), fits);
  }
}
