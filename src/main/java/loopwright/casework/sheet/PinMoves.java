package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.casework.edit.Terminals;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** What a pinout list makes of the wires that end on its connectors: other cavities, colours. */
final class PinMoves {

  /** One of the two ends of a wire. */
  private record End(String wire, boolean from) {}

  private final Vehicle vehicle;
  private final Map<End, TerminalRef> moves = new HashMap<>();
  private final Map<String, String> colours = new HashMap<>();

  PinMoves(Vehicle vehicle) {
    this.vehicle = vehicle;
  }

  /**
   * Puts a wire's end on a cavity.
   *
   * @return why that can't be told from the list; empty if it can
   */
  Optional<String> put(Part wire, TerminalRef at) {
    PartSpec.Wire spec = (PartSpec.Wire) wire.spec();
    List<End> here = new ArrayList<>();
    if (spec.from().part().equals(at.part())) {
      here.add(new End(wire.id(), true));
    }
    if (spec.to().part().equals(at.part())) {
      here.add(new End(wire.id(), false));
    }
    if (here.isEmpty()) {
      return Optional.of(SheetWords.say("move.elsewhere", wire.id(), at.part()));
    }
    End end = here.stream().filter(e -> at.equals(now(e))).findFirst().orElse(here.get(0));
    if (here.size() > 1 && !at.equals(now(end))) {
      return Optional.of(SheetWords.say("move.both", wire.id(), at.part()));
    }
    TerminalRef before = moves.putIfAbsent(end, at);
    return before == null || before.equals(at)
        ? Optional.empty()
        : Optional.of(SheetWords.say("move.already", wire.id(), before));
  }

  private TerminalRef now(End end) {
    PartSpec.Wire spec = (PartSpec.Wire) vehicle.requirePart(end.wire()).spec();
    return end.from() ? spec.from() : spec.to();
  }

  /** Whether the list puts the end of a wire that lies on a terminal anywhere. */
  boolean places(Part wire, TerminalRef at) {
    return moves.keySet().stream().anyMatch(e -> e.wire().equals(wire.id()) && at.equals(now(e)));
  }

  /** Gives a wire another colour. */
  void colour(Part wire, String colour) {
    colours.put(wire.id(), colour);
  }

  /** The vehicle with all of it. */
  Vehicle applied() {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(this::moved);
    Set<TerminalRef> before = vehicle.usedTerminals();
    return vehicle.with(
        Terminals.settled(parts, vehicle.joins(), before::contains),
        vehicle.joins(),
        vehicle.circuits());
  }

  private Part moved(Part part) {
    if (!(part.spec() instanceof PartSpec.Wire w)) {
      return part;
    }
    return part.withSpec(
        w.withEnds(
                moves.getOrDefault(new End(part.id(), true), w.from()),
                moves.getOrDefault(new End(part.id(), false), w.to()))
            .withColour(colours.getOrDefault(part.id(), w.colour())));
  }

  /** The ids of wires, as sentences name them. */
  static String names(List<Part> wires) {
    return wires.stream().map(Part::id).collect(Collectors.joining(SheetWords.say("and")));
  }
}
