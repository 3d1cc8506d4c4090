package loopwright.evidence.generated;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;

/** A vehicle being put together part by part. */
final class Draft {
  /** Ratings on the shelf, in amperes. */
  private static final double[] RATINGS = {1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 60, 80};

  private static final List<String> COLOURS =
      List.of("red", "brown", "green", "white", "yellow", "blue", "violet", "grey", "orange");

  /**
   * A place on the vehicle.
   *
   * @param words where, in words
   * @param how what it takes to get there
   * @param minutes working time in minutes
   */
  record Spot(String words, String how, double minutes) {}

  private static final List<Spot> SPOTS =
      List.of(
          new Spot("under the bonnet", "lift the bonnet", 0.3),
          new Spot("behind the dash", "two screws, tip the dash out", 1.5),
          new Spot("under the seat", "lift the seat", 0.6),
          new Spot("at the tail", "lens off, two screws", 0.8),
          new Spot("under the floor", "four screws, floor plate up", 2.5),
          new Spot("on the roof", "ladder, cover off", 2),
          new Spot("inside the left wing", "kneel, mud flap aside", 1.2),
          new Spot("on the fire wall", "at hand", 0.1));

  final int volts;
  final GroundedPole pole;
  final Random random;
  private final Map<String, Part> parts = new LinkedHashMap<>();
  private final List<List<TerminalRef>> joins = new ArrayList<>();
  private final List<Circuit> circuits = new ArrayList<>();
  private final Map<String, Integer> counts = new HashMap<>();

  Draft(int volts, GroundedPole pole, Random random) {
    this.volts = volts;
    this.pole = pole;
    this.random = random;
  }

  static TerminalRef at(String part, String terminal) {
    return new TerminalRef(part, terminal);
  }

  String id(String prefix) {
    return prefix + counts.merge(prefix, 1, Integer::sum);
  }

  Spot spot() {
    Spot s = SPOTS.get(random.nextInt(SPOTS.size()));
    double minutes = Math.round(s.minutes() * (0.6 + 0.8 * random.nextDouble()) * 10) / 10.0;
    return new Spot(s.words(), s.how(), minutes);
  }

  <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  boolean chance(double p) {
    return random.nextDouble() < p;
  }

  String part(String prefix, String name, PartSpec spec, Spot spot) {
    return part(prefix, name, spec, spot, true);
  }

  String part(String prefix, String name, PartSpec spec, Spot spot, boolean reachable) {
    String id = id(prefix);
    Map<String, Access> access = new HashMap<>();
    for (String terminal : spec.terminals()) {
      access.put(terminal, new Access(spot.minutes(), spot.how(), reachable));
    }
    Set<String> spare =
        spec instanceof PartSpec.Relay r && r.changeover() ? Set.of("87a") : Set.of();
    parts.put(
        id,
        new Part(
            id,
            name,
            "",
            spec,
            access,
            apart(spec.kind(), spot),
            swap(spec.kind(), spot),
            spare,
            spot.words()));
    return id;
  }

  private static Optional<Double> apart(PartKind kind, Spot spot) {
    return switch (kind) {
      case FUSE, RELAY -> Optional.of(0.2 + spot.minutes());
      case CONNECTOR, LAMP, LED -> Optional.of(0.5 + spot.minutes());
      case BATTERY -> Optional.of(1.0);
      default -> Optional.empty();
    };
  }

  private static Optional<Double> swap(PartKind kind, Spot spot) {
    return switch (kind) {
      case FUSE, RELAY -> Optional.of(0.5 + spot.minutes());
      case LAMP, LED -> Optional.of(1 + spot.minutes());
      default -> Optional.of(10 + spot.minutes());
    };
  }

  /** Mains of the vehicle: battery, strap, ground bolt, body. Gives the feed post. */
  TerminalRef mains() {
    parts.put(
        "BATT",
        new Part(
            "BATT",
            "battery",
            "",
            new PartSpec.Battery(Optional.empty(), Optional.empty()),
            Map.of(),
            Optional.of(1.0),
            Optional.of(15.0),
            Set.of(),
            "in its tray"));
    parts.put("BODY", Part.of("BODY", "frame", new PartSpec.Body()));
    boolean negative = pole == GroundedPole.NEGATIVE;
    String bolt = ground("main ground bolt", spot());
    String strap = id("STR");
    parts.put(
        strap,
        Part.of(
            strap,
            "battery ground strap",
            new PartSpec.Wire(
                PartKind.STRAP,
                at("BATT", negative ? "neg" : "pos"),
                at(bolt, "lug"),
                WireSize.parse(one(List.of("2 AWG", "4 AWG", "25 mm2"))),
                Estimate.of(metres(0.3, 0.9)),
                Optional.empty(),
                "black",
                "")));
    return at("BATT", negative ? "pos" : "neg");
  }

  double metres(double low, double high) {
    return Math.round((low + random.nextDouble() * (high - low)) * 10) / 10.0;
  }

  /** A wire thick enough for its current (about 6 A for each square millimetre). */
  String wire(TerminalRef from, TerminalRef to, double amps, String name, String loom) {
    String id = id("W");
    double most = 24 / (0.35 * Math.max(6, volts) / 6);
    List<String> sizes =
        amps > 40
            ? List.of("6 AWG", "16 mm2")
            : amps > 18
                ? List.of("10 AWG", "6 mm2")
                : amps > 8
                    ? List.of("12 AWG", "2.5 mm2", "4 mm2")
                    : amps > 4
                        ? List.of("14 AWG", "16 AWG", "1.5 mm2")
                        : List.of("18 AWG", "16 AWG", "1 mm2", "20 AWG");
    double longest = Math.min(6, Math.max(1.5, most / Math.max(1, amps)));
    parts.put(
        id,
        new Part(
            id,
            name,
            "",
            new PartSpec.Wire(
                PartKind.WIRE,
                from,
                to,
                WireSize.parse(one(sizes)),
                Estimate.of(metres(0.2, longest)),
                Optional.empty(),
                one(COLOURS),
                loom),
            Map.of(),
            Optional.empty(),
            Optional.of(15.0),
            Set.of(),
            ""));
    return id;
  }

  /** A wire, or two with a connector or a taped splice between them. */
  void run(TerminalRef from, TerminalRef to, double amps, String name, String loom, double broken) {
    if (!chance(broken)) {
      wire(from, to, amps, name, loom);
      return;
    }
    Spot spot = spot();
    if (chance(0.8)) {
      String c =
          part(
              "C",
              name + " plug",
              new PartSpec.Connector(List.of("1"), Optional.empty()),
              spot,
              true);
      wire(from, at(c, "1a"), amps, name + " to the plug", loom);
      wire(at(c, "1b"), to, amps, name + " from the plug", loom);
    } else {
      String s =
          part(
              "SP",
              name + " taped joint",
              new PartSpec.Splice(List.of("a", "b"), Optional.empty()),
              spot,
              false);
      wire(from, at(s, "a"), amps, name + " to the joint", loom);
      wire(at(s, "b"), to, amps, name + " from the joint", loom);
    }
  }

  /** A fuse for a running current, fed by a join from a bar. */
  String fuse(String name, double amps, Spot spot) {
    double rating = RATINGS[RATINGS.length - 1];
    for (double r : RATINGS) {
      if (r >= 1.5 * amps) {
        rating = r;
        break;
      }
    }
    return part("F", name, new PartSpec.Fuse(rating, Optional.empty()), spot);
  }

  String ground(String name, Spot spot) {
    String id = part("G", name, new PartSpec.Ground(Optional.empty()), spot);
    join(at(id, "metal"), at("BODY", "metal"));
    return id;
  }

  void join(TerminalRef... together) {
    joins.add(List.of(together));
  }

  void circuit(String id, String name, List<String> loads, Map<String, String> on) {
    circuits.add(
        new Circuit(id, name, loads.stream().map(LoadRef::parse).toList(), Map.copyOf(on), ""));
  }

  Optional<PartSpec> spec(String part) {
    return Optional.ofNullable(parts.get(part)).map(Part::spec);
  }

  /**
   * The finished vehicle.
   *
   * @throws IllegalStateException if it does not hold together
   */
  Vehicle vehicle(String id, String name) {
    Vehicle vehicle =
        new Vehicle(
            id,
            name,
            volts,
            pole,
            List.copyOf(parts.values()),
            joins,
            circuits,
            "Made up from a seed.");
    List<VehicleCheck.Finding> wrong = VehicleCheck.check(vehicle);
    if (!wrong.isEmpty()) {
      throw new IllegalStateException(
          id
              + ": "
              + wrong.stream()
                  .map(VehicleCheck.Finding::message)
                  .collect(Collectors.joining("; ")));
    }
    return vehicle;
  }
}
