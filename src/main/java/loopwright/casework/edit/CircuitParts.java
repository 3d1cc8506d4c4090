package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import loopwright.casework.Problem;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.CircuitWays.Pass;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * The ways of a circuit, and which parts on them are its own: its loads, and what lies on no other
 * circuit's way.
 *
 * @param circuit the circuit
 * @param ways its ways, from the feed post to the grounded post
 * @param own ids of its own parts
 */
record CircuitParts(Circuit circuit, List<List<Pass>> ways, Set<String> own) {

  /**
   * Looks the circuit up.
   *
   * @throws Problem if there is none of this id, or no current can flow through its loads
   */
  static CircuitParts of(Vehicle vehicle, String id) throws Problem {
    Circuit circuit =
        vehicle
            .circuit(id)
            .orElseThrow(() -> EditWords.problem("circuit", id, "circuit.id", vehicle.name()));
    if (vehicle.parts().stream().noneMatch(p -> p.kind() == PartKind.BATTERY)) {
      throw EditWords.problem("circuit", id, "circuit.battery");
    }
    CircuitWays search = new CircuitWays(vehicle);
    List<List<Pass>> ways = search.of(circuit);
    if (ways.isEmpty()) {
      throw EditWords.problem("circuit", id, "circuit.way");
    }
    Set<String> own = new LinkedHashSet<>();
    ways.forEach(way -> way.forEach(pass -> own.add(pass.part())));
    for (Circuit other : vehicle.circuits()) {
      if (!other.id().equals(id)) {
        search.of(other).forEach(way -> way.forEach(pass -> own.remove(pass.part())));
      }
    }
    circuit.loads().stream().map(LoadRef::part).forEach(own::add);
    return new CircuitParts(circuit, ways, Set.copyOf(own));
  }

  /** Whether a part is this circuit's own. */
  boolean owns(String part) {
    return own.contains(part);
  }

  /** The terminals of its own parts that its ways pass. */
  Set<TerminalRef> passed() {
    Set<TerminalRef> passed = new HashSet<>();
    for (List<Pass> way : ways) {
      for (Pass pass : way) {
        List<TerminalRef> ends = new ArrayList<>(pass.in());
        ends.addAll(pass.out());
        ends.stream()
            .filter(t -> t.part().equals(pass.part()) && owns(t.part()))
            .forEach(passed::add);
      }
    }
    return passed;
  }

  /** The terminals passed on which a wire lies that is on the way but serves other circuits too. */
  Set<TerminalRef> tied(Vehicle vehicle) {
    Set<TerminalRef> ends = new TreeSet<>();
    for (List<Pass> way : ways) {
      for (Pass pass : way) {
        if (!owns(pass.part())
            && vehicle.requirePart(pass.part()).spec() instanceof PartSpec.Wire w) {
          ends.add(w.from());
          ends.add(w.to());
        }
      }
    }
    ends.retainAll(passed());
    return ends;
  }
}
