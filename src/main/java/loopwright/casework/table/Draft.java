package loopwright.casework.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.edit.Ends;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A vehicle in which cells are read, and changed one after another. Of several parts of one id the
 * first is meant.
 */
final class Draft {
  private final Vehicle before;
  private final List<Part> parts;
  private final List<Circuit> circuits;
  private final Map<String, Integer> partIndex = new HashMap<>();
  private final Map<String, Integer> circuitIndex = new HashMap<>();
  private final List<List<TerminalRef>> joins;
  private Optional<Map<TerminalRef, Integer>> joinIndex = Optional.empty();
  private Optional<Ends> ends = Optional.empty();

  Draft(Vehicle vehicle) {
    before = vehicle;
    parts = new ArrayList<>(vehicle.parts());
    circuits = new ArrayList<>(vehicle.circuits());
    joins = new ArrayList<>(vehicle.joins());
    for (int i = 0; i < parts.size(); i++) {
      partIndex.putIfAbsent(parts.get(i).id(), i);
    }
    for (int i = 0; i < circuits.size(); i++) {
      circuitIndex.putIfAbsent(circuits.get(i).id(), i);
    }
  }

  /** The vehicle with what was changed. */
  Vehicle vehicle() {
    return before.with(parts, joins, circuits);
  }

  /** The same vehicle's head with one part alone. */
  Vehicle with(Part part) {
    return before.with(List.of(part), List.of(), List.of());
  }

  int systemVolts() {
    return before.systemVolts();
  }

  List<Part> parts() {
    return parts;
  }

  List<Circuit> circuits() {
    return circuits;
  }

  Optional<Part> part(String id) {
    return Optional.ofNullable(partIndex.get(id)).map(parts::get);
  }

  Optional<Circuit> circuit(String id) {
    return Optional.ofNullable(circuitIndex.get(id)).map(circuits::get);
  }

  /** Puts a part in the place of the one of its id, or at the end. */
  void put(Part part) {
    Integer at = partIndex.get(part.id());
    if (at == null) {
      partIndex.put(part.id(), parts.size());
      parts.add(part);
    } else {
      parts.set(at, part);
    }
    // Nothing ends on a wire.
    if (!(part.spec() instanceof PartSpec.Wire)) {
      ends = Optional.empty();
    }
  }

  /** Puts a circuit in the place of the one of its id, or at the end. */
  void put(Circuit circuit) {
    Integer at = circuitIndex.get(circuit.id());
    if (at == null) {
      circuitIndex.put(circuit.id(), circuits.size());
      circuits.add(circuit);
    } else {
      circuits.set(at, circuit);
    }
  }

  /** Finds terminals as people write them. */
  Ends ends() {
    if (ends.isEmpty()) {
      ends = Optional.of(new Ends(parts));
    }
    return ends.get();
  }

  /** The terminals of other parts that touch a terminal without a wire. */
  List<TerminalRef> touching(TerminalRef at) {
    if (joinIndex.isEmpty()) {
      Map<TerminalRef, Integer> index = new HashMap<>();
      for (int i = 0; i < joins.size(); i++) {
        int join = i;
        joins.get(i).forEach(t -> index.putIfAbsent(t, join));
      }
      joinIndex = Optional.of(index);
    }
    Integer join = joinIndex.get().get(at);
    return join == null ? List.of() : joins.get(join).stream().filter(t -> !t.equals(at)).toList();
  }

  /** Makes a terminal touch those others and no longer what it touched. */
  void touch(TerminalRef at, List<TerminalRef> others) {
    List<TerminalRef> now = new ArrayList<>();
    for (int i = joins.size() - 1; i >= 0; i--) {
      List<TerminalRef> join = joins.get(i);
      boolean taken = join.stream().anyMatch(others::contains);
      if (!taken && !join.contains(at)) {
        continue;
      }
      List<TerminalRef> rest = join.stream().filter(t -> !t.equals(at)).toList();
      if (taken) {
        now.addAll(0, rest);
        joins.remove(i);
      } else if (rest.size() > 1) {
        joins.set(i, rest);
      } else {
        joins.remove(i);
      }
    }
    others.stream().filter(t -> !now.contains(t)).forEach(now::add);
    if (!others.isEmpty()) {
      now.add(at);
      joins.add(now);
    }
    joinIndex = Optional.empty();
  }
}
