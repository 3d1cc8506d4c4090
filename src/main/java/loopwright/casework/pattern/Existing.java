package loopwright.casework.pattern;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loopwright.knowledge.WireEnds;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** What a vehicle has already that a new circuit can share: feeds, key switch, grounds. */
final class Existing {

  /**
   * A point to feed a circuit from.
   *
   * @param at a terminal of it
   * @param bar the bar that takes one more leg; empty: the terminal itself is the point
   * @param fuse rating of the fuse before it in amperes; empty if there is none
   * @param on how the key must stand for it to be live
   */
  record Feed(TerminalRef at, Optional<Part> bar, OptionalDouble fuse, Map<String, String> on) {}

  private record Edge(TerminalRef to, Part part) {}

  /** A bar behind less than this serves one circuit, not the vehicle; in amperes. */
  private static final double LEAST_BAR_FUSE = 20;

  /** What is reached, by terminal: the rating of the last fuse passed; infinite if none was. */
  private final Map<TerminalRef, Double> hot;

  private final Map<TerminalRef, Double> keyed = new HashMap<>();
  private final Set<TerminalRef> grounded;
  private final Vehicle vehicle;
  private final Map<TerminalRef, List<Edge>> edges = new HashMap<>();
  private final Map<TerminalRef, List<TerminalRef>> joined = new HashMap<>();

  Existing(Vehicle vehicle) {
    this.vehicle = vehicle;
    vehicle.joins().forEach(join -> join.forEach(t -> joined.put(t, join)));
    for (Part part : vehicle.parts()) {
      edges(part);
    }
    boolean battery = vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY);
    hot = battery ? reach(Map.of(vehicle.feedPost(), Double.POSITIVE_INFINITY)) : Map.of();
    grounded =
        battery ? Set.copyOf(reach(Map.of(vehicle.groundedPost(), 0.0)).keySet()) : new HashSet<>();
    key().ifPresent(this::throughKey);
  }

  private void edges(Part part) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Wire w) {
      edge(part, w.from(), w.to());
    } else if (spec instanceof PartSpec.Fuse) {
      edge(part, "feed", "load");
    } else if (spec instanceof PartSpec.Ground) {
      edge(part, "lug", "metal");
    } else if (spec instanceof PartSpec.Connector c) {
      c.cavities().forEach(n -> edge(part, n + "a", n + "b"));
    } else if (spec instanceof PartSpec.Splice s) {
      s.legs().forEach(leg -> edge(part, s.legs().get(0), leg));
    }
  }

  private void edge(Part part, String one, String other) {
    edge(part, new TerminalRef(part.id(), one), new TerminalRef(part.id(), other));
  }

  private void edge(Part part, TerminalRef one, TerminalRef other) {
    edges.computeIfAbsent(one, t -> new ArrayList<>()).add(new Edge(other, part));
    edges.computeIfAbsent(other, t -> new ArrayList<>()).add(new Edge(one, part));
  }

  /** Everything that conducts to a start without switches, relays or loads. */
  private Map<TerminalRef, Double> reach(Map<TerminalRef, Double> from) {
    Map<TerminalRef, Double> reached = new LinkedHashMap<>(from);
    Deque<TerminalRef> open = new ArrayDeque<>(from.keySet());
    while (!open.isEmpty()) {
      TerminalRef at = open.remove();
      double fuse = reached.get(at);
      for (TerminalRef beside : joined.getOrDefault(at, List.of())) {
        if (reached.putIfAbsent(beside, fuse) == null) {
          open.add(beside);
        }
      }
      for (Edge edge : edges.getOrDefault(at, List.of())) {
        double behind = edge.part().spec() instanceof PartSpec.Fuse f ? f.amps() : fuse;
        if (reached.putIfAbsent(edge.to(), behind) == null) {
          open.add(edge.to());
        }
      }
    }
    return reached;
  }

  /** What is live with the key on: behind its contacts, and behind relays whose coils it feeds. */
  private void throughKey(Part key) {
    PartSpec.Switch spec = (PartSpec.Switch) key.spec();
    String on = on(key).orElseThrow();
    Map<TerminalRef, Double> from = new LinkedHashMap<>();
    for (PartSpec.SwitchContact contact : spec.contacts()) {
      TerminalRef a = new TerminalRef(key.id(), contact.a());
      TerminalRef b = new TerminalRef(key.id(), contact.b());
      if (contact.closedIn().contains(on) && !contact.closedIn().contains(spec.rest())) {
        if (hot.containsKey(a) && !hot.containsKey(b)) {
          from.put(b, hot.get(a));
        } else if (hot.containsKey(b) && !hot.containsKey(a)) {
          from.put(a, hot.get(b));
        }
      }
    }
    keyed.putAll(reach(from));
    boolean more = true;
    while (more) {
      more = false;
      for (Part part : vehicle.parts()) {
        TerminalRef load = new TerminalRef(part.id(), "87");
        TerminalRef in = new TerminalRef(part.id(), "30");
        if (part.kind() == PartKind.RELAY
            && !keyed.containsKey(load)
            && pulledIn(part)
            && (hot.containsKey(in) || keyed.containsKey(in))) {
          double fuse = hot.containsKey(in) ? hot.get(in) : keyed.get(in);
          keyed.putAll(reach(Map.of(load, fuse)));
          more = true;
        }
      }
    }
    keyed.keySet().removeAll(hot.keySet());
  }

  private boolean pulledIn(Part relay) {
    TerminalRef one = new TerminalRef(relay.id(), "86");
    TerminalRef other = new TerminalRef(relay.id(), "85");
    return keyed.containsKey(one) && grounded.contains(other)
        || keyed.containsKey(other) && grounded.contains(one);
  }

  /** The key switch. */
  Optional<Part> key() {
    return vehicle.parts().stream()
        .filter(
            p ->
                p.spec() instanceof PartSpec.Switch s
                    && s.control() == PartSpec.Control.KEY
                    && s.positions().size() > 1)
        .findFirst();
  }

  /** The key's position for driving. */
  static Optional<String> on(Part key) {
    List<String> positions = key.spec().positions();
    return positions.stream()
        .skip(1)
        .filter(p -> List.of("on", "run", "drive", "ignition").contains(p))
        .findFirst()
        .or(() -> positions.stream().skip(1).findFirst());
  }

  /** The key's terminal that is live in its position for cranking, with that position. */
  Optional<Feed> start() {
    Optional<Part> key = key();
    if (key.isEmpty() || !key.get().spec().positions().contains("start")) {
      return Optional.empty();
    }
    String on = on(key.get()).orElseThrow();
    PartSpec.Switch spec = (PartSpec.Switch) key.get().spec();
    for (PartSpec.SwitchContact contact : spec.contacts()) {
      if (contact.closedIn().contains("start") && !contact.closedIn().contains(on)) {
        TerminalRef a = new TerminalRef(key.get().id(), contact.a());
        TerminalRef b = new TerminalRef(key.get().id(), contact.b());
        TerminalRef in = hot.containsKey(a) ? a : b;
        Optional<Double> fuse = Optional.ofNullable(hot.get(in));
        if (fuse.isPresent()) {
          return Optional.of(
              new Feed(
                  in.equals(a) ? b : a,
                  Optional.empty(),
                  rating(fuse.get()),
                  Map.of(key.get().id(), "start")));
        }
      }
    }
    return Optional.empty();
  }

  /** The best point that is always live; empty without a battery. */
  Optional<Feed> hot() {
    return bar(hot, Map.of()).or(() -> hot.isEmpty() ? Optional.empty() : Optional.of(post()));
  }

  /** The battery's own post, which no fuse protects. */
  Feed post() {
    return new Feed(vehicle.feedPost(), Optional.empty(), OptionalDouble.empty(), Map.of());
  }

  /** The best point that is live with the key on; empty without a key switch. */
  Optional<Feed> keyed() {
    Optional<Part> key = key();
    if (key.isEmpty() || keyed.isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> on = Map.of(key.get().id(), on(key.get()).orElseThrow());
    return bar(keyed, on).or(this::keyTerminal);
  }

  /** The key switch's own terminal that is live with the key on; empty without a key switch. */
  Optional<Feed> keyTerminal() {
    return key()
        .flatMap(
            key ->
                keyed.entrySet().stream()
                    .filter(e -> e.getKey().part().equals(key.id()))
                    .findFirst()
                    .map(
                        e ->
                            new Feed(
                                e.getKey(),
                                Optional.empty(),
                                rating(e.getValue()),
                                Map.of(key.id(), on(key).orElseThrow()))));
  }

  /** The bar with the greatest fuse before it, and of several the one with the most legs. */
  private Optional<Feed> bar(Map<TerminalRef, Double> live, Map<String, String> on) {
    return vehicle.parts().stream()
        .filter(p -> p.kind() == PartKind.SPLICE)
        .filter(p -> live.getOrDefault(leg(p), 0.0) >= LEAST_BAR_FUSE)
        .max(
            Comparator.comparingDouble((Part p) -> live.get(leg(p)))
                .thenComparingInt(p -> p.spec().terminals().size()))
        .map(p -> new Feed(leg(p), Optional.of(p), rating(live.get(leg(p))), on));
  }

  private static TerminalRef leg(Part bar) {
    return new TerminalRef(bar.id(), bar.spec().terminals().get(0));
  }

  private static OptionalDouble rating(double fuse) {
    return Double.isInfinite(fuse) ? OptionalDouble.empty() : OptionalDouble.of(fuse);
  }

  /**
   * A fuse of at most so many amperes that feeds small things from the same feed already and whose
   * terminal takes one wire more.
   */
  Optional<Part> smallFuse(Feed feed, double most, String name) {
    Map<TerminalRef, Double> live = feed.on().isEmpty() ? hot : keyed;
    return vehicle.parts().stream()
        .filter(p -> p.spec() instanceof PartSpec.Fuse f && f.amps() <= most)
        .filter(p -> p.name().equals(name))
        .filter(
            p -> {
              TerminalRef load = new TerminalRef(p.id(), "load");
              return live.containsKey(load) && wires(vehicle.parts(), load) < WireEnds.IN_ONE_CRIMP;
            })
        .findFirst();
  }

  /** Whether the stud of a ground point takes one ring more. */
  static boolean hasRoom(List<Part> parts, TerminalRef stud) {
    return wires(parts, stud) < WireEnds.ON_A_STUD;
  }

  private static long wires(List<Part> parts, TerminalRef at) {
    return parts.stream()
        .filter(
            p -> p.spec() instanceof PartSpec.Wire w && (w.from().equals(at) || w.to().equals(at)))
        .count();
  }

  /** Ground points and ground blocks. */
  List<Part> grounds() {
    return vehicle.parts().stream()
        .filter(
            p ->
                p.kind() == PartKind.GROUND && grounded.contains(new TerminalRef(p.id(), "lug"))
                    || p.kind() == PartKind.SPLICE && grounded.contains(leg(p)))
        .toList();
  }

  /** Metal that a new ground point can be bolted to. */
  Optional<Part> body() {
    return vehicle.parts().stream()
        .filter(
            p -> p.kind() == PartKind.BODY && grounded.contains(new TerminalRef(p.id(), "metal")))
        .findFirst();
  }
}
