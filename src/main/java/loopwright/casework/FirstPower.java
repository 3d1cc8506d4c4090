package loopwright.casework;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * How far a vehicle is powered up: behind a small fuse in the battery's lead, and with fuses and
 * relays that are not fitted yet.
 *
 * @param fuse rating of the small fuse in amperes; empty: none but the vehicle's own
 * @param out ids of fuses and relays that are not fitted
 */
public record FirstPower(Optional<Double> fuse, SortedSet<String> out) {

  /** The vehicle as it is meant to be. */
  public static final FirstPower WHOLE = new FirstPower(Optional.empty(), new TreeSet<>());

  private static final String FUSE = "SF";
  private static final String EMPTY_SEAT = "empty";

  /** Copies the set. */
  public FirstPower {
    out = Collections.unmodifiableSortedSet(new TreeSet<>(out));
  }

  /** The same with some of what is out fitted. */
  public FirstPower fitted(Set<String> parts) {
    SortedSet<String> less = new TreeSet<>(out);
    less.removeAll(parts);
    return new FirstPower(fuse, less);
  }

  /** The vehicle in this state, to be solved and worked on in its place. */
  public Vehicle of(Vehicle vehicle, Phrases phrases) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(p -> out.contains(p.id()) ? emptySeat(p) : p);
    Vehicle seats = vehicle.with(parts, vehicle.joins(), vehicle.circuits());
    return fuse.map(amps -> behind(seats, amps, phrases)).orElse(seats);
  }

  /** Where the feed begins in this state: behind the small fuse, where there is one. */
  public TerminalRef feed(Vehicle vehicle) {
    return fuse.isPresent() ? new TerminalRef(fuseId(vehicle), "load") : vehicle.feedPost();
  }

  /** Id of the small fuse; the same before and after it is put in. */
  public static String fuseId(Vehicle vehicle) {
    String id = FUSE;
    for (int n = 2; vehicle.part(id).filter(p -> !p.label().equals(FUSE)).isPresent(); n++) {
      id = FUSE + n;
    }
    return id;
  }

  /** A seat with nothing in it keeps its terminals and joins none of them. */
  private static Part emptySeat(Part part) {
    return part.withSpec(
        new PartSpec.Switch(
            part.spec().terminals(),
            List.of(EMPTY_SEAT),
            List.of(),
            PartSpec.Control.MANUAL,
            false,
            Optional.empty(),
            Optional.empty()));
  }

  /** All that lay on the feed post now lies behind the fuse. */
  private static Vehicle behind(Vehicle vehicle, double amps, Phrases phrases) {
    String id = fuseId(vehicle);
    TerminalRef post = vehicle.feedPost();
    TerminalRef load = new TerminalRef(id, "load");
    List<Part> parts = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      parts.add(
          part.spec() instanceof PartSpec.Wire w && (w.from().equals(post) || w.to().equals(post))
              ? part.withSpec(
                  new PartSpec.Wire(
                      w.kind(),
                      w.from().equals(post) ? load : w.from(),
                      w.to().equals(post) ? load : w.to(),
                      w.size(),
                      w.metres(),
                      w.endOhms(),
                      w.colour(),
                      w.loom()))
              : part);
    }
    parts.add(
        new Part(
            id,
            phrases.say("first-power.fuse"),
            FUSE,
            new PartSpec.Fuse(amps, Optional.empty()),
            Map.of(),
            Optional.of(0.5),
            Optional.of(0.5),
            new HashSet<>(),
            phrases.say("first-power.where")));
    List<List<TerminalRef>> joins = new ArrayList<>();
    for (List<TerminalRef> join : vehicle.joins()) {
      joins.add(join.stream().map(t -> t.equals(post) ? load : t).toList());
    }
    joins.add(List.of(post, new TerminalRef(id, "feed")));
    return vehicle.with(parts, joins, vehicle.circuits());
  }
}
