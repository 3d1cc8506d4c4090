package loopwright.casework.prove;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.FirstPower;
import loopwright.knowledge.Knowledge;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import loopwright.paper.BringUp;

/**
 * The order in which a vehicle is powered up: battery and grounds; the fuses and relays that feed
 * several circuits; the circuits, each time that which needs the fewest fuses and relays more, the
 * smallest draw first; all of them behind the smallest usual fuse that carries each by itself. Then
 * the swap back to the full fuse, and what no small fuse carries.
 */
public final class ProvePlan {
  private final Vehicle vehicle;
  private final List<BringUp.Draw> draws;
  private final Optional<Double> fuse;
  private final Map<String, List<List<CircuitWays.Pass>>> ways = new LinkedHashMap<>();

  /** How many fuses and relays lie before one, at most, by its id. */
  private final Map<String, Integer> depths = new HashMap<>();

  private final Map<String, List<String>> needs = new HashMap<>();
  private final List<Subject> subjects = new ArrayList<>();

  /** Makes the plan of a vehicle that can be solved. */
  public ProvePlan(Vehicle vehicle, Knowledge knowledge) {
    this.vehicle = vehicle;
    this.draws = BringUp.draws(vehicle, knowledge);
    this.fuse = draws.stream().flatMap(d -> d.fuse().stream()).max(Comparator.naturalOrder());
    CircuitWays all = new CircuitWays(vehicle);
    vehicle.circuits().forEach(c -> ways.put(c.id(), all.of(c)));
    for (List<List<CircuitWays.Pass>> of : ways.values()) {
      for (List<CircuitWays.Pass> way : of) {
        List<String> fits = fitsOf(way);
        for (int i = 0; i < fits.size(); i++) {
          depths.merge(fits.get(i), i, Math::max);
        }
      }
    }
    ways.forEach((circuit, of) -> needs.put(circuit, needs(of)));
    order();
  }

  /** Rating of the small fuse in amperes; empty where no circuit is so small. */
  public Optional<Double> fuse() {
    return fuse;
  }

  /** All that is proven, in its order. */
  public List<Subject> subjects() {
    return List.copyOf(subjects);
  }

  /** The subject of this id. */
  public Optional<Subject> subject(String id) {
    return subjects.stream().filter(s -> s.id().equals(id)).findFirst();
  }

  /** What each circuit draws by itself. */
  public List<BringUp.Draw> draws() {
    return draws;
  }

  /** The ways of a circuit's current, those of the relay coils that it needs among them. */
  List<List<CircuitWays.Pass>> ways(String circuit) {
    return ways.getOrDefault(circuit, List.of());
  }

  /** Whether the current of a circuit, or of a coil that it needs, passes a part. */
  boolean passes(String circuit, String part) {
    return ways(circuit).stream().anyMatch(w -> w.stream().anyMatch(p -> p.part().equals(part)));
  }

  /**
   * The circuit in which a fault of a subject is looked for: itself, or of those that need all that
   * it needs the one that is powered up next.
   */
  Optional<Subject> circuitFor(Subject subject) {
    return subject.circuit().isPresent()
        ? Optional.of(subject)
        : subjects.stream()
            .filter(s -> s.circuit().isPresent() && s.needs().containsAll(subject.needs()))
            .findFirst();
  }

  /** All fuses and relays that are fitted on the way. */
  Set<String> allNeeds() {
    return needs(subjects.stream());
  }

  /** What is fitted before a subject: what those of these ids need, itself aside. */
  Set<String> fittedBefore(Subject subject, Collection<String> proven) {
    return needs(
        subjects.stream().filter(s -> proven.contains(s.id()) && !s.id().equals(subject.id())));
  }

  private static Set<String> needs(Stream<Subject> subjects) {
    return subjects.flatMap(s -> s.needs().stream()).collect(Collectors.toCollection(TreeSet::new));
  }

  /**
   * How far the vehicle is powered up for a subject.
   *
   * @param proven ids of the subjects proven so far: what they need is fitted
   */
  FirstPower power(Subject subject, Collection<String> proven) {
    SortedSet<String> out = new TreeSet<>(allNeeds());
    out.removeAll(fittedBefore(subject, proven));
    out.removeAll(subject.needs());
    return new FirstPower(subject.small() ? fuse : Optional.empty(), out);
  }

  private void order() {
    Set<String> fitted = new LinkedHashSet<>();
    subjects.add(
        new Subject(
            Subject.SUPPLY,
            Subject.Kind.SUPPLY,
            Optional.empty(),
            Optional.empty(),
            List.of(),
            true));
    for (String part : feeds()) {
      subjects.add(Subject.feed(part, upTo(part)));
      fitted.add(part);
    }
    List<BringUp.Draw> left = new ArrayList<>(draws);
    while (!left.isEmpty()) {
      BringUp.Draw next =
          left.stream()
              .min(
                  Comparator.<BringUp.Draw>comparingInt(d -> d.fuse().isPresent() ? 0 : 1)
                      .thenComparing(BringUp.Draw::cranks)
                      .thenComparing(d -> missing(d.circuit(), fitted))
                      .thenComparing(BringUp.Draw::amps))
              .get();
      left.remove(next);
      boolean small = next.fuse().isPresent();
      if (!small && subjects.get(subjects.size() - 1).small()) {
        full();
      }
      Circuit circuit = next.circuit();
      List<String> needs = needs(circuit.id());
      subjects.add(
          new Subject(
              circuit.id(),
              Subject.Kind.CIRCUIT,
              Optional.empty(),
              Optional.of(circuit),
              needs,
              small));
      fitted.addAll(needs);
    }
    if (subject(Subject.FULL).isEmpty()) {
      full();
    }
  }

  private void full() {
    subjects.add(
        new Subject(
            Subject.FULL, Subject.Kind.FULL, Optional.empty(), Optional.empty(), List.of(), false));
  }

  private int missing(Circuit circuit, Set<String> fitted) {
    return (int) needs(circuit.id()).stream().filter(p -> !fitted.contains(p)).count();
  }

  /** Whether a part is fitted by hand: a fuse, or a relay that comes out of its seat. */
  private boolean fits(String id) {
    Part part = vehicle.requirePart(id);
    return part.kind() == PartKind.FUSE
        || part.kind() == PartKind.RELAY && part.apartMinutes().isPresent();
  }

  /** The fuses and relays of a circuit in the order in which its ways pass them. */
  List<String> needs(String circuit) {
    return needs.getOrDefault(circuit, List.of());
  }

  private List<String> needs(List<List<CircuitWays.Pass>> of) {
    // Ways of coils come behind that of the load; a relay's own feed is of no use without its coil.
    return of.stream()
        .flatMap(List::stream)
        .map(CircuitWays.Pass::part)
        .filter(this::fits)
        .distinct()
        .sorted(Comparator.comparing(depths::get))
        .toList();
  }

  private List<String> fitsOf(List<CircuitWays.Pass> way) {
    return way.stream().map(CircuitWays.Pass::part).filter(this::fits).distinct().toList();
  }

  /**
   * Fuses and relays before others that fewer circuits need, and what works those relays; such that
   * each comes after all that it needs.
   */
  private List<String> feeds() {
    Set<String> feeds = new LinkedHashSet<>();
    for (List<List<CircuitWays.Pass>> of : ways.values()) {
      for (List<CircuitWays.Pass> way : of) {
        List<String> fits = fitsOf(way);
        for (int i = 0; i + 1 < fits.size(); i++) {
          Set<String> here = circuitsOf(fits.get(i));
          Set<String> behind = circuitsOf(fits.get(i + 1));
          if (here.size() > behind.size() && here.containsAll(behind)) {
            feeds.add(fits.get(i));
          }
        }
      }
    }
    for (String feed : List.copyOf(feeds)) {
      feeds.addAll(upTo(feed));
    }
    List<String> ordered = new ArrayList<>();
    Set<String> left = new LinkedHashSet<>(feeds);
    while (!left.isEmpty()) {
      String next =
          left.stream()
              .filter(p -> upTo(p).stream().allMatch(u -> u.equals(p) || ordered.contains(u)))
              .findFirst()
              .orElse(left.iterator().next());
      ordered.add(next);
      left.remove(next);
    }
    return ordered;
  }

  private Set<String> circuitsOf(String part) {
    return ways.keySet().stream()
        .filter(c -> passes(c, part))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** A part with the fuses and relays before it, and all that works it if it is a relay. */
  List<String> upTo(String part) {
    Set<String> before = new LinkedHashSet<>();
    for (List<CircuitWays.Pass> way : waysTo(part)) {
      before.addAll(fitsOf(way));
    }
    before.remove(part);
    List<String> all = new ArrayList<>(before);
    all.sort(Comparator.comparing(depths::get));
    all.add(part);
    return all;
  }

  /**
   * The beginnings of all ways that pass a part, up to it; for a relay the whole ways of its coil
   * as well.
   */
  List<List<CircuitWays.Pass>> waysTo(String part) {
    Set<List<CircuitWays.Pass>> to = new LinkedHashSet<>();
    for (List<List<CircuitWays.Pass>> of : ways.values()) {
      for (List<CircuitWays.Pass> way : of) {
        for (int i = 0; i < way.size(); i++) {
          CircuitWays.Pass pass = way.get(i);
          if (pass.part().equals(part)) {
            to.add(coil(pass) ? way : way.subList(0, i + 1));
          }
        }
      }
    }
    return List.copyOf(to);
  }

  private boolean coil(CircuitWays.Pass pass) {
    return vehicle.requirePart(pass.part()).kind() == PartKind.RELAY && pass.works(vehicle);
  }
}
