package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import loopwright.bench.HiddenTruth;
import loopwright.casework.LoopView;
import loopwright.casework.ReadyCase;
import loopwright.casework.Sketch;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.knowledge.Effect;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/**
 * Draws the hidden fault of a drill. What is drawn is simulated first, and counts only if the
 * vehicle then behaves as the level asks. The same code gives the same drill wherever it is drawn.
 */
final class DrillDraw {
  private static final Context CONTEXT = Context.IN_SERVICE;

  /** Faults that are tried before a vehicle counts as having none of this level. */
  private static final int MOST_TRIALS = 400;

  /** The reading from which the slip may come, and how many later at most. */
  private static final int SLIP_FROM = 2;

  private static final int SLIP_SPAN = 2;

  private final Vehicle vehicle;
  private final Knowledge knowledge;
  private final Network network;
  private final MeterSpec meter;

  /** A circuit with what lies on its way. */
  private record Way(Circuit circuit, List<Part> main, Set<Part> relays) {
    LoadRef load() {
      return circuit.loads().get(0);
    }

    boolean holds(Part part) {
      return main.contains(part);
    }
  }

  private final List<Way> ways = new ArrayList<>();

  DrillDraw(Vehicle vehicle, Knowledge knowledge, MeterSpec meter) {
    this.vehicle = vehicle;
    this.knowledge = knowledge;
    this.network = Network.of(vehicle, knowledge.typicals());
    this.meter = meter;
    Sketch sketch = new Sketch(vehicle);
    for (Circuit circuit : vehicle.circuits()) {
      if (!circuit.on().isEmpty()) {
        sketch.of(circuit.id()).ifPresent(view -> ways.add(way(circuit, view)));
      }
    }
  }

  private Way way(Circuit circuit, LoopView view) {
    List<Part> main = parts(view);
    Set<Part> relays = new LinkedHashSet<>();
    List<Part> on = main.stream().filter(p -> p.kind() == PartKind.RELAY).toList();
    relays.addAll(on);
    for (LoopView branch : view.branches()) {
      List<Part> parts = parts(branch);
      if (parts.stream().anyMatch(on::contains)) {
        // What the coil's way has in common with the load's is no matter of the relay.
        parts.stream().filter(p -> !main.contains(p)).forEach(relays::add);
      }
    }
    return new Way(circuit, main, relays);
  }

  private List<Part> parts(LoopView view) {
    return view.pieces().stream()
        .map(p -> vehicle.requirePart(p.part()))
        .filter(p -> p.kind() != PartKind.BATTERY)
        .distinct()
        .toList();
  }

  /** Whether the vehicle has what a level needs at all. */
  boolean offers(Level level) {
    return ways.stream().anyMatch(w -> !suspects(level, w).isEmpty());
  }

  /** Parts of a circuit that may hide a fault of the level. */
  private List<Part> suspects(Level level, Way way) {
    PartKind load = vehicle.requirePart(way.load().part()).kind();
    return switch (level) {
      case DEAD_LAMP ->
          load == PartKind.LAMP || load == PartKind.DUAL_LAMP ? way.main() : List.of();
      case SHARED_GROUND ->
          way.main().stream()
              .filter(p -> p.kind() == PartKind.GROUND || p.kind() == PartKind.STRAP)
              .filter(p -> ways.stream().anyMatch(w -> w != way && w.holds(p)))
              .toList();
      case RELAY -> List.copyOf(way.relays());
      default -> way.main();
    };
  }

  private static boolean fits(Level level, Failure failure) {
    boolean bridges = failure.bridges();
    return switch (level) {
      case DEAD_LAMP -> failure.effects().stream().anyMatch(Effect.Open.class::isInstance);
      case HIGH_RESISTANCE -> failure.continuum().isPresent() && !bridges;
      case SHORT -> bridges;
      case RELAY, SHARED_GROUND -> true;
      case TWO_FAULTS, SLIP -> !bridges;
    };
  }

  private static boolean fits(Level level, ComplaintKind kind) {
    return switch (level) {
      case DEAD_LAMP -> kind == ComplaintKind.DEAD;
      case SHORT -> kind == ComplaintKind.BLOWS_FUSE;
      case RELAY ->
          kind == ComplaintKind.DEAD || kind == ComplaintKind.DIM || kind == ComplaintKind.STUCK_ON;
      default -> kind == ComplaintKind.DEAD || kind == ComplaintKind.DIM;
    };
  }

  /**
   * Draws.
   *
   * @param attempt counts up when an earlier drill of the code was no good
   * @return empty if nothing on the vehicle shows as the level asks
   */
  Optional<Drill> draw(DrillCode code, int attempt) {
    SplittableRandom random = new SplittableRandom(code.packed() * 1_000L + attempt);
    Level level = code.level();
    List<Way> able = ways.stream().filter(w -> !suspects(level, w).isEmpty()).toList();
    for (int trial = 0; trial < MOST_TRIALS && !able.isEmpty(); trial++) {
      Way way = able.get(random.nextInt(able.size()));
      long seed = random.nextLong();
      List<Failure> failures = new ArrayList<>();
      for (int n = 0; n < (level == Level.TWO_FAULTS ? 2 : 1); n++) {
        failure(level, way, random).ifPresent(failures::add);
      }
      Optional<ComplaintKind> kind = shown(level, way, failures, seed);
      if (kind.isPresent()) {
        OptionalInt slip =
            level == Level.SLIP
                ? OptionalInt.of(SLIP_FROM + random.nextInt(SLIP_SPAN))
                : OptionalInt.empty();
        return Optional.of(
            new Drill(
                code,
                vehicle,
                hidden(code, way.circuit(), kind.get(), failures),
                failures.stream().map(FaultKind::of).toList(),
                seed,
                slip));
      }
    }
    return Optional.empty();
  }

  private Optional<Failure> failure(Level level, Way way, SplittableRandom random) {
    List<Part> parts = suspects(level, way);
    Part part = parts.get(random.nextInt(parts.size()));
    List<Failure> all =
        Failure.of(network, part, knowledge.faults()).stream()
            .filter(f -> fits(level, f) && f.rate(CONTEXT) > 0)
            .toList();
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(random.nextInt(all.size())));
  }

  /** The complaint of these failures, if each by itself shows as the level asks. */
  private Optional<ComplaintKind> shown(Level level, Way way, List<Failure> failures, long seed) {
    long parts = failures.stream().map(f -> f.part().id()).distinct().count();
    if (parts != (level == Level.TWO_FAULTS ? 2 : 1)) {
      return Optional.empty();
    }
    Setting on = way.circuit().onSetting();
    HiddenTruth sound = truth(List.of(), seed);
    if (sound.look(way.load(), on, on) != HiddenTruth.Sight.ON || !sound.blown().isEmpty()) {
      return Optional.empty();
    }
    Function<List<Failure>, Optional<ComplaintKind>> fitting =
        failed -> complaint(way, sound, truth(failed, seed)).filter(kind -> fits(level, kind));
    boolean each =
        failures.size() == 1
            || failures.stream().allMatch(f -> fitting.apply(List.of(f)).isPresent());
    return each ? fitting.apply(failures) : Optional.empty();
  }

  /** What a person would complain of first about this circuit. */
  private Optional<ComplaintKind> complaint(Way way, HiddenTruth sound, HiddenTruth failed) {
    Setting on = way.circuit().onSetting();
    HiddenTruth.Sight seen = failed.look(way.load(), on, on);
    if (!failed.blown().isEmpty()) {
      return failed.blown().stream().map(vehicle::requirePart).anyMatch(way::holds)
          ? Optional.of(ComplaintKind.BLOWS_FUSE)
          : Optional.empty();
    }
    return switch (seen) {
      case OFF -> Optional.of(ComplaintKind.DEAD);
      case DIM -> Optional.of(ComplaintKind.DIM);
      case ON ->
          sound.look(way.load(), Setting.REST, on) == HiddenTruth.Sight.OFF
                  && failed.look(way.load(), Setting.REST, on) != HiddenTruth.Sight.OFF
              ? Optional.of(ComplaintKind.STUCK_ON)
              : Optional.empty();
    };
  }

  private HiddenTruth truth(List<Failure> failures, long seed) {
    return new HiddenTruth(network, failures, Map.of(), meter, HiddenTruth.Draw.WITHIN, seed);
  }

  private ReadyCase hidden(
      DrillCode code, Circuit circuit, ComplaintKind kind, List<Failure> failures) {
    return new ReadyCase(
        code.toString(),
        circuit.name(),
        vehicle.id(),
        circuit.name() + " " + kind.words(),
        circuit.id(),
        kind,
        CONTEXT,
        "",
        failures.stream()
            .map(f -> new ReadyCase.Fault(f.part().id(), f.name(), Optional.empty()))
            .toList(),
        meter.id());
  }
}
