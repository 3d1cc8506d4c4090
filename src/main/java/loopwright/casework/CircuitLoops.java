package loopwright.casework;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Hazards;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Workbench;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;

/** The loops of a vehicle's circuits with what a healthy vehicle shows at each node. */
public final class CircuitLoops {
  private final Vehicle vehicle;
  private final Workbench bench;
  private final LiveBands bands;
  private final Words words;
  private final Phrases phrases;

  /** Solves nothing yet. */
  public CircuitLoops(Vehicle vehicle, Knowledge knowledge, MeterSpec meter, Phrases phrases) {
    this.vehicle = vehicle;
    this.bench = new Workbench(Network.of(vehicle, knowledge.typicals()), knowledge, meter);
    this.bands = new LiveBands(vehicle, knowledge, meter, new HealthyBands(bench));
    this.words = new Words(vehicle, phrases);
    this.phrases = phrases;
  }

  /**
   * The loop of a circuit's first load.
   *
   * @return empty for an unknown circuit, or one in which no current flows
   */
  public Optional<LoopView> loop(String circuitId) {
    Optional<Circuit> circuit = vehicle.circuit(circuitId);
    if (circuit.isEmpty()) {
      return Optional.empty();
    }
    return Loop.trace(
            bench, circuit.get().onSetting(), bench.loadElement(circuit.get().loads().get(0)))
        .map(
            loop ->
                new LoopViews(vehicle, bench, bands::band, words, circuit.get().onSetting())
                    .view(loop, circuit.get().name()));
  }

  /**
   * A circuit as it is drawn on paper, with the loops of all its loads.
   *
   * @throws Problem if the vehicle has no such circuit
   */
  public CircuitDrawing drawing(String circuitId) throws Problem {
    Circuit circuit =
        vehicle
            .circuit(circuitId)
            .orElseThrow(
                () ->
                    new Problem("circuit", circuitId, phrases.say("problem.circuit", circuits())));
    Setting on = circuit.onSetting();
    LoopViews views = new LoopViews(vehicle, bench, bands::band, words, on);
    List<Loop> loops = new ArrayList<>();
    List<CircuitDrawing.DrawnLoop> drawn = new ArrayList<>();
    for (LoadRef load : circuit.loads()) {
      Loop.trace(bench, on, bench.loadElement(load)).map(Loop::all).ifPresent(loops::addAll);
    }
    // The loads first, then what acts on them.
    loops.stream()
        .distinct()
        .sorted(Comparator.comparing(this::acts))
        .forEach(loop -> drawn.add(drawn(views, loop, on)));
    return new CircuitDrawing(circuit, words.setting(on), drawn, cautions(loops));
  }

  /**
   * A check with what a healthy vehicle shows.
   *
   * @param where where the leads go, in words
   * @param healthy least and greatest value
   * @param words the same in words
   */
  public record Known(String where, Band healthy, String words) {}

  /**
   * What a healthy vehicle shows in a meter check.
   *
   * @param own a check of this vehicle's points and controls
   */
  public Known known(OwnCheck own) {
    Check check = own.check();
    double[] band = bands.band(check);
    Band.Unit unit = Figures.unit(check);
    return new Known(
        words.where(check),
        new Band(band[0], band[1], unit),
        Figures.range(band[0], band[1], unit));
  }

  /**
   * The checks that tell of each load of a circuit that all is well: volts behind its fuse, across
   * the load, and what its return loses. Points out of reach are left out.
   */
  public List<OwnCheck> worthKnowing(Circuit circuit) {
    Setting on = circuit.onSetting();
    TerminalRef post = vehicle.groundedPost();
    Set<OwnCheck> checks = new LinkedHashSet<>();
    for (LoadRef load : circuit.loads()) {
      Optional<Loop> loop = Loop.trace(bench, on, bench.loadElement(load));
      List<String> ends = vehicle.requirePart(load.part()).spec().terminals();
      TerminalRef in = new TerminalRef(load.part(), load.filament().orElse(ends.get(0)));
      TerminalRef out = new TerminalRef(load.part(), ends.get(ends.size() - 1));
      loop.stream()
          .flatMap(l -> l.pieces().stream())
          .map(Loop.Piece::part)
          .filter(p -> vehicle.requirePart(p).kind() == PartKind.FUSE)
          .reduce((a, b) -> b)
          .ifPresent(fuse -> volts(new TerminalRef(fuse, "load"), post, on, checks));
      volts(in, out, on, checks);
      volts(out, post, on, checks);
    }
    return List.copyOf(checks);
  }

  private void volts(TerminalRef red, TerminalRef black, Setting on, Set<OwnCheck> into) {
    if (vehicle.access(red).reachable()
        && vehicle.access(black).reachable()
        && bench.network().node(red).isPresent()
        && bench.network().node(black).isPresent()) {
      into.add(
          new OwnCheck(
              CheckKind.VOLTS, Optional.of(red), Optional.of(black), Optional.empty(), on));
    }
  }

  /** How the vehicle stands in a setting, a line each. */
  public List<String> setting(Setting setting) {
    return words.setting(setting);
  }

  private String circuits() {
    return vehicle.circuits().stream().map(Circuit::id).collect(Collectors.joining(", "));
  }

  private boolean acts(Loop loop) {
    return vehicle.requirePart(loop.title()).kind() == PartKind.RELAY;
  }

  private CircuitDrawing.DrawnLoop drawn(LoopViews views, Loop loop, Setting on) {
    String title = words.part(loop.title());
    LoopView view = views.view(loop, acts(loop) ? phrases.say("drawn.coil", title) : title);
    List<String> volts =
        view.stairs().stream()
            .map(s -> Figures.range(s.healthy().low(), s.healthy().high(), Band.Unit.VOLT))
            .toList();
    List<String> drops = new ArrayList<>();
    double amps = 0;
    for (int i = 0; i < loop.pieces().size(); i++) {
      Loop.Piece piece = loop.pieces().get(i);
      boolean load = piece.part().equals(loop.title());
      if (load) {
        OperatingPoint point = bench.point(bench.healthy(), on);
        amps = Math.abs(point.amps(piece.elements().get(0)));
      }
      drops.add(drop(view.stairs().get(i).point(), view.stairs().get(i + 1).point(), on, load));
    }
    return new CircuitDrawing.DrawnLoop(
        view, phrases.say("drawn.amps", Figures.amps(amps)), volts, drops);
  }

  /** What is lost between two nodes, whichever way the current runs; a load's own as a range. */
  private String drop(TerminalRef from, TerminalRef to, Setting on, boolean load) {
    double[] band = bands.band(Check.measure(CheckKind.VOLTS, from, to, on));
    double most = Math.max(Math.abs(band[0]), Math.abs(band[1]));
    double least = Math.min(Math.abs(band[0]), Math.abs(band[1]));
    return load
        ? Figures.range(least, most, Band.Unit.VOLT)
        : phrases.say("drawn.drop", Figures.volts(most));
  }

  private List<String> cautions(List<Loop> loops) {
    Map<String, Set<String>> byHazard = new TreeMap<>();
    for (Loop loop : loops) {
      String title = words.part(loop.title());
      Hazards.of(vehicle.requirePart(loop.title()))
          .forEach(h -> byHazard.computeIfAbsent(h, x -> new LinkedHashSet<>()).add(title));
      if (loop.pieces().stream()
          .noneMatch(p -> vehicle.requirePart(p.part()).kind() == PartKind.FUSE)) {
        byHazard.computeIfAbsent("unfused", x -> new LinkedHashSet<>()).add(title);
      }
    }
    List<String> cautions = new ArrayList<>();
    byHazard.forEach(
        (hazard, titles) -> {
          if (phrases.has("drawn.caution." + hazard)) {
            cautions.add(phrases.say("drawn.caution." + hazard, String.join(", ", titles)));
          }
        });
    return cautions;
  }
}
