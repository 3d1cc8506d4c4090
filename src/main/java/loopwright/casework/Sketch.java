package loopwright.casework;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.CircuitWays.Pass;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Circuits drawn from the wiring alone, without solving anything, so that the drawing keeps up with
 * whoever types. Its nodes have no healthy band. Not for several threads.
 */
public final class Sketch {
  private final Vehicle vehicle;
  private final Optional<CircuitWays> ways;

  /** The ways searched so far, since a part's circuit is looked for at each step of the cursor. */
  private final Map<Circuit, List<List<Pass>>> known = new HashMap<>();

  /** Prepares the drawings of a vehicle, which need not hold together. */
  public Sketch(Vehicle vehicle) {
    this.vehicle = vehicle;
    boolean battery = vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY);
    this.ways = battery ? Optional.of(new CircuitWays(vehicle)) : Optional.empty();
  }

  /**
   * A circuit's loop: the way through its first load, with the other loads' ways and those of the
   * relay coils as branches.
   *
   * @return empty for an unknown circuit, or one without a way from feed to ground
   */
  public Optional<LoopView> of(String circuit) {
    return vehicle.circuit(circuit).flatMap(this::view);
  }

  private Optional<LoopView> view(Circuit circuit) {
    List<LoopView> views = new ArrayList<>();
    Set<List<Pass>> drawn = new HashSet<>();
    for (List<Pass> way : ways(circuit)) {
      if (drawn.add(way)) {
        String title = views.isEmpty() ? circuit.name() : title(way);
        views.add(view(title, way));
      }
    }
    if (views.isEmpty()) {
      return Optional.empty();
    }
    LoopView first = views.get(0);
    return Optional.of(
        new LoopView(
            first.title(), first.pieces(), first.stairs(), views.subList(1, views.size())));
  }

  private List<List<Pass>> ways(Circuit circuit) {
    return known.computeIfAbsent(circuit, c -> ways.map(search -> search.of(c)).orElse(List.of()));
  }

  /** What does the work on a way: its load, or the relay whose coil it feeds. */
  private String title(List<Pass> way) {
    return way.stream()
        .filter(pass -> pass.works(vehicle))
        .findFirst()
        .map(pass -> vehicle.requirePart(pass.part()).title())
        .orElse("");
  }

  private LoopView view(String title, List<Pass> way) {
    List<LoopView.PieceView> pieces = new ArrayList<>();
    List<LoopView.Stair> stairs = new ArrayList<>();
    for (int i = 0; i < way.size(); i++) {
      Pass from = way.get(i);
      // A splice is passed leg by leg.
      while (i + 1 < way.size() && way.get(i + 1).part().equals(from.part())) {
        i++;
      }
      stairs.add(stair(from.in()));
      pieces.add(piece(from, way.get(i)));
    }
    stairs.add(stair(way.get(way.size() - 1).out()));
    return new LoopView(title, pieces, stairs, List.of());
  }

  private LoopView.PieceView piece(Pass from, Pass to) {
    Part part = vehicle.requirePart(from.part());
    return new LoopView.PieceView(
        part.id(),
        part.title(),
        part.label(),
        part.kind(),
        own(part, from.in()),
        own(part, to.out()),
        LoopViews.detail(part),
        LoopView.Standing.HELD,
        0,
        List.of());
  }

  private static Optional<TerminalRef> own(Part part, Set<TerminalRef> node) {
    return new TreeSet<>(node).stream().filter(t -> t.part().equals(part.id())).findFirst();
  }

  private LoopView.Stair stair(Set<TerminalRef> node) {
    List<TerminalRef> terminals = new ArrayList<>(new TreeSet<>(node));
    TerminalRef point = terminals.isEmpty() ? vehicle.groundedPost() : terminals.remove(0);
    return new LoopView.Stair(point, terminals, LoopView.Stair.NOT_WORKED_OUT, List.of(), true);
  }

  /**
   * A circuit that a part belongs to: its load or switch, or on its way.
   *
   * @param likely ids of circuits to look at first
   */
  public Optional<String> circuitOf(String part, List<String> likely) {
    Set<String> order = new LinkedHashSet<>(likely);
    vehicle.circuits().stream().filter(c -> names(c, part)).map(Circuit::id).forEach(order::add);
    vehicle.circuits().stream().map(Circuit::id).forEach(order::add);
    return order.stream()
        .flatMap(id -> vehicle.circuit(id).stream())
        .filter(c -> names(c, part) || passes(c, part))
        .map(Circuit::id)
        .findFirst();
  }

  private static boolean names(Circuit circuit, String part) {
    return circuit.on().containsKey(part)
        || circuit.loads().stream().map(LoadRef::part).anyMatch(part::equals);
  }

  private boolean passes(Circuit circuit, String part) {
    return ways(circuit).stream().flatMap(List::stream).anyMatch(p -> p.part().equals(part));
  }
}
