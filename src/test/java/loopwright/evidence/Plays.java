package loopwright.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import loopwright.bench.HiddenTruth;
import loopwright.casework.Eye;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/** Plays a diagnosis against a hidden truth to its end. */
public final class Plays {

  private Plays() {}

  /**
   * How a play ended.
   *
   * @param status status at the end
   * @param group parts of the answer
   * @param cleared whether the true part was ever wholly cleared, or its true mode ever cleared
   * @param checks number of checks
   * @param minutes working time
   * @param trail the checks and answers
   */
  public record Result(
      Findings.Status status,
      List<String> group,
      boolean cleared,
      int checks,
      double minutes,
      List<String> trail) {}

  public static Result play(
      Vehicle vehicle,
      Diagnosis diagnosis,
      HiddenTruth truth,
      String truePart,
      String trueMode,
      int most) {
    LoadRef watched = diagnosis.complaint().load();
    return play(
        diagnosis, check -> measure(vehicle, truth, watched, check), truePart, trueMode, most);
  }

  /**
   * The same with somebody who answers each check.
   *
   * @param shown what a check gives just now
   */
  static Result play(
      Diagnosis diagnosis,
      Function<Check, Reading.Value> shown,
      String truePart,
      String trueMode,
      int most) {
    List<Reading> readings = new ArrayList<>();
    Optional<Check> last = Optional.empty();
    double minutes = 0;
    boolean cleared = false;
    List<String> trail = new ArrayList<>();
    Findings findings = diagnosis.findings(readings, Diagnosis.Circumstances.NONE);
    while (findings.status() != Findings.Status.ISOLATED
        && findings.status() != Findings.Status.HEALTHY
        && readings.size() < most
        && !findings.ranked().isEmpty()
        && findings.ranked().get(0).bits() > 1e-4) {
      Check check = findings.ranked().get(0).check();
      minutes += diagnosis.minutes(check, last);
      last = Optional.of(check);
      Reading reading = new Reading(readings.size() + 1, check, shown.apply(check));
      readings.add(reading);
      findings =
          diagnosis.findings(
              readings, new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of(), last));
      trail.add(check.id() + " -> " + reading.value() + " | " + top(findings));
      for (Conclusion c : findings.conclusions()) {
        if (c instanceof Conclusion.ClearedBy by
            && by.suspect().part().equals(truePart)
            && by.suspect().mode().equals(trueMode)) {
          cleared = true;
          trail.add("CLEARED by " + by);
        }
      }
    }
    return new Result(
        findings.status(), findings.group(), cleared, readings.size(), minutes, trail);
  }

  private static String top(Findings f) {
    return f.parts().stream()
        .limit(4)
        .map(p -> String.format("%s %.3f", p.part(), p.belief()))
        .toList()
        .toString();
  }

  /**
   * What a check gives.
   *
   * @param watched the load that is watched while a part is swapped or moved
   */
  public static Reading.Value measure(
      Vehicle vehicle, HiddenTruth truth, LoadRef watched, Check check) {
    if (!check.kind().metered()) {
      return new Reading.Value.Sight(
          new Eye(vehicle, Bench.KNOWLEDGE.typicals(), truth, watched)
              .sees(check.kind(), LoadRef.parse(check.subject().orElseThrow()), check.setting()));
    }
    TerminalRef red = check.red().orElseThrow();
    TerminalRef black = check.black().orElseThrow();
    return value(
        switch (check.kind()) {
          case OHMS -> truth.ohms(red, black, check.setting());
          case DRAIN -> truth.drain(check.setting());
          case DIODE -> truth.diode(red, black, check.setting());
          default -> truth.volts(red, black, check.setting());
        });
  }

  private static Reading.Value value(HiddenTruth.Display display) {
    return display instanceof HiddenTruth.Display.Number n
        ? new Reading.Value.Number(n.value(), n.step())
        : new Reading.Value.OverRange();
  }

  /**
   * What a person would complain of first with this truth; empty if nothing shows. Only what the
   * same vehicle without the failure does right counts: a heater that hardly starts in the first
   * place is no complaint.
   */
  static Optional<Complaint> complaint(Vehicle vehicle, HiddenTruth truth, HiddenTruth sound) {
    List<Complaint> dim = new ArrayList<>();
    for (var circuit : vehicle.circuits()) {
      for (LoadRef load : circuit.loads()) {
        if (sound.look(load, circuit.onSetting(), circuit.onSetting()) != HiddenTruth.Sight.ON) {
          continue;
        }
        HiddenTruth.Sight seen = truth.look(load, circuit.onSetting(), circuit.onSetting());
        if (seen == HiddenTruth.Sight.OFF) {
          return Optional.of(
              new Complaint(ComplaintKind.DEAD, circuit.id(), load, circuit.onSetting()));
        }
        if (seen == HiddenTruth.Sight.DIM) {
          dim.add(new Complaint(ComplaintKind.DIM, circuit.id(), load, circuit.onSetting()));
        }
      }
    }
    if (!dim.isEmpty()) {
      return Optional.of(dim.get(0));
    }
    for (var circuit : vehicle.circuits()) {
      for (LoadRef load : circuit.loads()) {
        if (!circuit.onSetting().positions().isEmpty()
            && sound.look(load, Setting.REST, circuit.onSetting()) == HiddenTruth.Sight.OFF
            && truth.look(load, Setting.REST, circuit.onSetting()) != HiddenTruth.Sight.OFF) {
          return Optional.of(
              new Complaint(ComplaintKind.STUCK_ON, circuit.id(), load, circuit.onSetting()));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * A single failure that shows as a complaint.
   *
   * @param truth the vehicle with it, of which only the complaint's own circuit has been tried
   */
  record Single(Failure failure, Complaint complaint, HiddenTruth truth) {}

  /**
   * One of a vehicle's failures by itself; empty if it shows as nothing. True values lie anywhere
   * inside their spreads, at the ends with every third failure.
   *
   * @param name the vehicle's name; with the number it settles all chance
   * @param number the failure's number among all of the vehicle's
   */
  static Optional<Single> single(
      String name, int number, Network network, Failure failure, MeterSpec meter) {
    long seed = 31L * number + name.hashCode();
    HiddenTruth.Draw draw = number % 3 == 0 ? HiddenTruth.Draw.AT_LIMITS : HiddenTruth.Draw.WITHIN;
    Function<List<Failure>, HiddenTruth> truth =
        failures -> new HiddenTruth(network, failures, Map.of(), meter, draw, seed);
    return complaint(network.vehicle(), truth.apply(List.of(failure)), truth.apply(List.of()))
        .map(
            complaint -> {
              HiddenTruth fresh = truth.apply(List.of(failure));
              fresh.run(complaint.on());
              return new Single(failure, complaint, fresh);
            });
  }

  // ---- the two plain ways to compare with ---------------------------------------------------

  /**
   * Readings that walking from the battery takes, and that half-splitting by count takes: volts to
   * the grounded post at the nodes of the loop, good while inside the healthy band; a relay contact
   * that is dead sends one on to its coil's loop.
   */
  static int[] plain(Diagnosis diagnosis, HiddenTruth truth, Vehicle vehicle, Network network) {
    if (diagnosis.loop().isEmpty()) {
      return new int[] {0, 0};
    }
    int[] sum = new int[2];
    plain(diagnosis, truth, vehicle, network, diagnosis.loop().get(), sum);
    return sum;
  }

  private static void plain(
      Diagnosis diagnosis,
      HiddenTruth truth,
      Vehicle vehicle,
      Network network,
      Loop loop,
      int[] sum) {
    List<Boolean> good = new ArrayList<>();
    for (int node : loop.nodes()) {
      List<TerminalRef> terminals =
          network.terminals(node).stream().filter(t -> vehicle.access(t).reachable()).toList();
      if (terminals.isEmpty() || terminals.contains(vehicle.groundedPost())) {
        continue;
      }
      Check check =
          Check.measure(
              CheckKind.VOLTS,
              terminals.get(0),
              vehicle.groundedPost(),
              diagnosis.complaint().on());
      good.add(
          diagnosis.healthyGives(
              new Reading(1, check, measure(vehicle, truth, diagnosis.complaint().load(), check))));
    }
    int first = good.indexOf(false);
    sum[0] += first < 0 ? good.size() : first + 1;
    // Half-splitting needs as many readings as it takes to tell the pieces apart.
    sum[1] += (int) Math.ceil(Math.log(good.size() + 1) / Math.log(2));
    boolean dead = first >= 0;
    if (dead) {
      for (Loop branch : loop.branches()) {
        plain(diagnosis, truth, vehicle, network, branch, sum);
      }
    }
  }

  static Set<String> names(List<String> list) {
    return new TreeSet<>(list);
  }
}
