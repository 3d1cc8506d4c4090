package loopwright.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The ways the current of a circuit takes, by the wiring alone: for each load the shortest way from
 * the feed post through it to the grounded post, and the same for the coil of every relay whose
 * contact lies on one. A way through other loads or diodes counts as long. Where conductors lie
 * side by side, one of them is on the way.
 */
public final class CircuitWays {

  /**
   * A part passed on a way.
   *
   * @param part its id
   * @param in the terminals of the node before it
   * @param out the terminals of the node after it
   */
  public record Pass(String part, Set<TerminalRef> in, Set<TerminalRef> out) {
    /** Copies the sets. */
    public Pass {
      in = Set.copyOf(in);
      out = Set.copyOf(out);
    }

    /** Whether work is done here: by a load, or by the coil of a relay. */
    public boolean works(Vehicle vehicle) {
      PartKind kind = vehicle.requirePart(part).kind();
      return kind.isLoad() || (kind == PartKind.RELAY && between("86", "85"));
    }

    private boolean between(String one, String other) {
      TerminalRef a = new TerminalRef(part, one);
      TerminalRef b = new TerminalRef(part, other);
      return (in.contains(a) && out.contains(b)) || (in.contains(b) && out.contains(a));
    }
  }

  private final LoopSearch search;

  /**
   * Prepares the ways of a vehicle.
   *
   * @throws IllegalStateException if it has no battery
   */
  public CircuitWays(Vehicle vehicle) {
    Map<String, Part> byId = new LinkedHashMap<>();
    vehicle.parts().forEach(p -> byId.putIfAbsent(p.id(), p));
    search = new LoopSearch(vehicle, byId, Map.of());
  }

  /**
   * The ways of a circuit, each from the feed post to the grounded post; none where there is no
   * way.
   */
  public List<List<Pass>> of(Circuit circuit) {
    List<List<Pass>> ways = new ArrayList<>();
    for (LoadRef load : circuit.loads()) {
      ways.addAll(search.ways(circuit, load));
    }
    return List.copyOf(ways);
  }

  /**
   * Ids of all parts that can carry current from the battery in a setting; more are named than do.
   * Every conductor counts both ways, and a relay counts as pulled in if its coil can get current.
   * Whatever else there is hangs off them by one node and carries none.
   */
  public Set<String> live(Setting setting) {
    return search.partsThrough(setting.positions());
  }
}
