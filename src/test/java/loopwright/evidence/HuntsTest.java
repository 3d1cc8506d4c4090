package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The hunts for what no dead lamp leads to, played to their end by a simulated meter: a battery
 * that goes flat, a fuse that blows. Fixed seeds; {@code -Dloopwright.hunt-every=1} plays all.
 */
class HuntsTest {

  /** Extra current at rest that is complained of, in amperes. Common practice: 50 mA. */
  private static final double DRAIN_AMPS = 0.06;

  /** Beyond this something is hot, turns or shines, and that is complained of instead. */
  private static final double SEEN_AMPS = 8;

  private record Tally(int plays, int right, List<String> missed, List<String> wronged) {
    Tally() {
      this(0, 0, new ArrayList<>(), new ArrayList<>());
    }

    Tally with(Plays.Result result, String part, String what) {
      boolean isolated =
          result.status() == Findings.Status.ISOLATED && result.group().contains(part);
      String trail =
          what
              + ": "
              + result.status()
              + " "
              + result.group()
              + "\n    "
              + String.join("\n    ", result.trail());
      if (!isolated) {
        missed.add(trail);
      }
      if (result.cleared()) {
        wronged.add(trail);
      }
      return new Tally(plays + 1, right + (isolated ? 1 : 0), missed, wronged);
    }
  }

  /** A tenth may be missed; of the few plays of the ordinary build one. */
  private static int mostMissed(int plays) {
    return Math.max(1, plays / 10);
  }

  private static int every(String name) {
    return Integer.getInteger("loopwright.hunt-every", name.equals("pumper") ? 150 : 20);
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "truck", "pumper"})
  void whatDrainsTheBatteryIsFoundByMilliamperesAndFuses(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    MeterSpec meter = Bench.KNOWLEDGE.meter("basic").orElseThrow();
    int cell = network.element(vehicle.battery().id(), "cell").orElseThrow();
    Circuit any = vehicle.circuits().get(0);
    Complaint complaint =
        new Complaint(ComplaintKind.DRAINS_BATTERY, any.id(), any.loads().get(0), any.onSetting());
    Tally tally = new Tally();
    int number = 0;
    try (Diagnosis diagnosis = open(network, meter, complaint)) {
      for (Part part : vehicle.parts()) {
        for (Failure failure : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
          long seed = 53L * number + name.hashCode();
          HiddenTruth truth = truth(network, meter, List.of(failure), seed);
          HiddenTruth sound = truth(network, meter, List.of(), seed);
          double drain =
              Math.abs(truth.run(Setting.REST).amps(cell))
                  - Math.abs(sound.run(Setting.REST).amps(cell));
          if (drain < DRAIN_AMPS || drain > SEEN_AMPS || number++ % every(name) != 0) {
            continue;
          }
          tally =
              tally.with(
                  Plays.play(vehicle, diagnosis, truth, part.id(), failure.name(), 25),
                  part.id(),
                  String.format(
                      Locale.ROOT, "%s/%s %.0f mA", part.id(), failure.name(), 1000 * drain));
        }
      }
    }
    say(name + " drains", tally);
    assertThat(tally.wronged()).isEmpty();
    assertThat(tally.missed().size()).isLessThanOrEqualTo(mostMissed(tally.plays()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "truck", "pumper"})
  void aFuseThatBlowsCostsNoSecondFuse(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    Network network = Bench.network(vehicle);
    MeterSpec meter = Bench.KNOWLEDGE.meter("basic").orElseThrow();
    Workbench bench = new Workbench(network, Bench.KNOWLEDGE, meter);
    Map<String, Optional<Loop>> loops = new HashMap<>();
    for (Circuit c : vehicle.circuits()) {
      loops.put(c.id(), Loop.trace(bench, c.onSetting(), bench.loadElement(c.loads().get(0))));
    }
    Map<String, List<Failure>> byCircuit = new TreeMap<>();
    int number = 0;
    for (Part part : vehicle.parts()) {
      for (Failure failure : Failure.of(network, part, Bench.KNOWLEDGE.faults())) {
        Optional<Circuit> blown =
            vehicle.circuits().stream()
                .filter(c -> !c.onSetting().positions().isEmpty())
                .filter(c -> blowsItsFuse(network, meter, failure, c, loops.get(c.id())))
                .findFirst();
        if (blown.isPresent() && number++ % every(name) == 0) {
          byCircuit.computeIfAbsent(blown.get().id(), k -> new ArrayList<>()).add(failure);
        }
      }
    }
    Tally tally = new Tally();
    List<String> spent = new ArrayList<>();
    for (Map.Entry<String, List<Failure>> entry : byCircuit.entrySet()) {
      Circuit circuit = vehicle.circuit(entry.getKey()).orElseThrow();
      LoadRef load = circuit.loads().get(0);
      Complaint complaint =
          new Complaint(ComplaintKind.BLOWS_FUSE, circuit.id(), load, circuit.onSetting());
      try (Diagnosis diagnosis = open(network, meter, complaint)) {
        for (Failure failure : entry.getValue()) {
          HiddenTruth truth = truth(network, meter, List.of(failure), 7);
          truth.run(circuit.onSetting());
          String what = failure.part().id() + "/" + failure.name() + " in " + circuit.id();
          Plays.Result result =
              Plays.play(vehicle, diagnosis, truth, failure.part().id(), failure.name(), 25);
          tally = tally.with(result, failure.part().id(), what);
          // A fuse that is itself the failure is found by fitting one.
          if (failure.part().kind() != PartKind.FUSE
              && result.trail().stream().anyMatch(t -> fitsFuse(vehicle, t))) {
            spent.add(what + "\n    " + String.join("\n    ", result.trail()));
          }
        }
      }
    }
    say(name + " blown fuses", tally);
    assertThat(spent).isEmpty();
    assertThat(tally.wronged()).isEmpty();
    assertThat(tally.missed().size()).isLessThanOrEqualTo(mostMissed(tally.plays()));
  }

  /** Whether a fuse on the way of the circuit's load blows when the circuit is switched on. */
  private static boolean blowsItsFuse(
      Network network, MeterSpec meter, Failure failure, Circuit circuit, Optional<Loop> loop) {
    OperatingPoint failed = truth(network, meter, List.of(failure), 7).run(circuit.onSetting());
    return failed.history().blown().stream()
        .mapToObj(e -> network.elements().get(e).part())
        .anyMatch(fuse -> loop.filter(l -> l.holds(fuse)).isPresent());
  }

  private static boolean fitsFuse(Vehicle vehicle, String step) {
    String[] words = step.split(" ");
    return words[0].equals("swap")
        && vehicle.part(words[1]).filter(p -> p.kind() == PartKind.FUSE).isPresent();
  }

  private static Diagnosis open(Network network, MeterSpec meter, Complaint complaint) {
    return Diagnosis.open(
        new Workbench(network, Bench.KNOWLEDGE, meter),
        Bench.rules(),
        complaint,
        Context.IN_SERVICE,
        Step.SILENT);
  }

  private static HiddenTruth truth(
      Network network, MeterSpec meter, List<Failure> failures, long seed) {
    return new HiddenTruth(network, failures, Map.of(), meter, HiddenTruth.Draw.WITHIN, seed);
  }

  private static void say(String what, Tally tally) {
    System.out.printf(
        Locale.ROOT,
        "%s: %d plays, isolated right %.1f %%, true failure cleared %d%n%s%n",
        what,
        tally.plays(),
        100.0 * tally.right() / Math.max(1, tally.plays()),
        tally.wronged().size(),
        String.join("\n", tally.missed()));
  }
}
