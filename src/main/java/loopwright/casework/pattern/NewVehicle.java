package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.model.Circuit;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.ShortName;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;
import loopwright.solver.Network;
import loopwright.solver.Solver;
import loopwright.solver.Variant;

/**
 * A vehicle that is yet to be wired: what it is, and what needs power.
 *
 * @param name what people call it
 * @param systemVolts 6, 12 or 24
 * @param grounded which post is tied to the body
 * @param key what the key does
 * @param back how current gets back to the battery
 * @param sizes how wire sizes are written
 * @param rows what needs power
 */
public record NewVehicle(
    String name,
    int systemVolts,
    GroundedPole grounded,
    Key key,
    Return back,
    WireSize.Unit sizes,
    List<Row> rows) {

  /** What the key does. */
  public enum Key {
    /** There is none. */
    NONE,
    /** It switches all that works with the key on. */
    SWITCH,
    /** It switches a main relay, which feeds a fuse block. */
    RELAY;

    /** The word used in files of answers. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** How current gets back to the battery. */
  public enum Return {
    /** Through the metal of the body. */
    BODY,
    /** Through wires to a ground block. */
    BLOCK;

    /** The word used in files of answers. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * One thing that needs power.
   *
   * @param pattern id of the pattern that makes its circuit
   * @param answers to the pattern's questions; the usual ones stand in for what is missing
   */
  public record Row(String pattern, Map<String, String> answers) {
    /** Copies the answers. */
    public Row {
      Objects.requireNonNull(pattern, "pattern");
      answers = Map.copyOf(answers);
    }
  }

  /** Copies the rows. */
  public NewVehicle {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(grounded, "grounded");
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(back, "back");
    Objects.requireNonNull(sizes, "sizes");
    rows = List.copyOf(rows);
  }

  /** Ratings of a main fuse, in amperes. */
  private static final List<Double> MAIN = List.of(30.0, 40.0, 50.0, 60.0, 70.0, 100.0);

  /** Ratings of a fuse before a key switch that carries loads, in amperes. */
  private static final List<Double> KEYED = List.of(20.0, 25.0, 30.0, 40.0, 50.0);

  /**
   * Makes the vehicle. Main fuse and key fuse are as large as what can be on together asks for.
   *
   * @return the vehicle with all that was added
   * @throws Problem if an answer doesn't fit
   */
  public Outcome make(Basis basis) throws Problem {
    if (name.isBlank()) {
      throw new Problem("name", name, basis.words().say("problem.name"));
    }
    if (!VehicleCheck.SYSTEM_VOLTS.contains(systemVolts)) {
      throw new Problem("volts", Integer.toString(systemVolts), basis.words().say("problem.volts"));
    }
    // Behind the largest fuses: a small one would blow in the solve, and then nothing flows.
    Made made = make(basis, MAIN.get(MAIN.size() - 1), KEYED.get(KEYED.size() - 1));
    if (!VehicleCheck.check(made.outcome().vehicle()).isEmpty()) {
      return made.outcome();
    }
    Network network = Network.of(made.outcome().vehicle(), basis.knowledge().typicals());
    double main = rating(MAIN, amps(network, basis.words().say("part.main-fuse"), made.cranking()));
    double keyed =
        key == Key.SWITCH
            ? rating(KEYED, amps(network, basis.words().say("part.key-fuse"), made.cranking()))
            : KEYED.get(0);
    return make(basis, main, keyed).outcome();
  }

  /** The smallest rating that carries so much at four fifths; the largest if none does. */
  private static double rating(List<Double> ratings, double amps) {
    return ratings.stream()
        .filter(r -> Sizes.WORKING_SHARE * r >= amps)
        .findFirst()
        .orElse(ratings.get(ratings.size() - 1));
  }

  /**
   * The most that the part of this name carries, with each circuit on and all together; those that
   * crank don't go through it.
   */
  private static double amps(Network network, String called, Set<String> cranking) {
    Vehicle vehicle = network.vehicle();
    int link =
        vehicle.parts().stream()
            .filter(p -> p.name().equals(called) && p.kind() == PartKind.FUSE)
            .findFirst()
            .flatMap(p -> network.element(p.id(), "link"))
            .orElseThrow();
    Solver solver = Solver.full(network);
    ToDoubleFunction<Map<String, String>> carried =
        on -> Math.abs(solver.solve(Variant.healthy(network), Setting.of(on)).amps(link));
    Map<Map<String, String>, Double> alone = new LinkedHashMap<>();
    for (Circuit circuit : vehicle.circuits()) {
      if (!cranking.contains(circuit.id())) {
        alone.computeIfAbsent(circuit.on(), carried::applyAsDouble);
      }
    }
    // Where two want a control in different positions, the one that draws more has it.
    Map<String, String> together = new LinkedHashMap<>();
    alone.entrySet().stream()
        .sorted(Map.Entry.<Map<String, String>, Double>comparingByValue().reversed())
        .forEach(e -> e.getKey().forEach(together::putIfAbsent));
    return Math.max(
        carried.applyAsDouble(together),
        alone.values().stream().mapToDouble(Double::doubleValue).max().orElse(0));
  }

  /**
   * What has been made.
   *
   * @param cranking ids of the circuits that crank the engine
   */
  private record Made(Outcome outcome, Set<String> cranking) {}

  private Made make(Basis basis, double main, double keyed) throws Problem {
    Outcome outcome = bare(basis, main, keyed);
    List<Added> added = new ArrayList<>(outcome.added());
    Map<String, String> circuits = new LinkedHashMap<>();
    List<String> told = new ArrayList<>();
    Set<String> cranking = new HashSet<>();
    for (Row row : rows) {
      Pattern pattern =
          Patterns.find(row.pattern())
              .orElseThrow(
                  () ->
                      new Problem(
                          "pattern",
                          row.pattern(),
                          basis
                              .words()
                              .say(
                                  "problem.one-of",
                                  String.join(
                                      ", ", Patterns.all().stream().map(Pattern::id).toList()))));
      outcome = pattern.plan(outcome.vehicle(), basis, row.answers());
      added.addAll(outcome.added());
      circuits.putAll(outcome.circuits());
      if (pattern.cranks()) {
        cranking.addAll(motors(outcome));
      }
      told.addAll(outcome.told());
    }
    Set<String> seen = new HashSet<>();
    List<Added> once = added.stream().filter(a -> seen.add(a.part())).toList();
    return new Made(new Outcome(outcome.vehicle(), once, circuits, told), cranking);
  }

  /** The new circuits that turn a motor; a neutral lamp's doesn't. */
  private static List<String> motors(Outcome outcome) {
    Vehicle vehicle = outcome.vehicle();
    return vehicle.circuits().stream()
        .filter(c -> outcome.circuits().containsKey(c.id()))
        .filter(
            c ->
                c.loads().stream()
                    .anyMatch(l -> vehicle.requirePart(l.part()).kind() == PartKind.MOTOR))
        .map(Circuit::id)
        .toList();
  }

  /** Battery, main fuse, bars, key, ground; no circuit yet. */
  private Outcome bare(Basis basis, double main, double keyed) throws Problem {
    Part battery =
        Part.of(
            "BATT",
            basis.words().say("part.battery"),
            new PartSpec.Battery(Optional.empty(), Optional.empty()));
    Vehicle empty =
        new Vehicle(
            id(),
            name.strip(),
            systemVolts,
            grounded,
            List.of(battery),
            List.of(),
            List.of(),
            basis.words().say("new.note"));
    Harness h = new Harness(empty, basis, basis.words().say("new.supply"), sizes);
    String ground = back == Return.BODY ? body(h, main) : block(h, main);
    Feed hot = Supply.hotBar(h, main, 1.5);
    switch (key) {
      case NONE -> {}
      case SWITCH ->
          Supply.keyedBar(
              h,
              Supply.key(h, hot, keyed, Sizes.contact(keyed * Sizes.WORKING_SHARE), 1),
              keyed,
              1);
      case RELAY -> Supply.relayedBar(h, hot, Supply.coilKey(h, hot, 1), ground, 1);
    }
    return h.finishUnloaded();
  }

  private String id() {
    String plain =
        name.strip()
            .toLowerCase(java.util.Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-|-$", "");
    String shorter = plain.substring(0, Math.min(40, plain.length()));
    return ShortName.fits(shorter) ? shorter : "vehicle";
  }

  /** Battery ground cable to a stud on the body, and a second stud behind the dash. */
  private static String body(Harness h, double main) {
    String body =
        h.add(
            "BODY",
            h.basis().words().say("part.body"),
            new PartSpec.Body(),
            "",
            h.words("why.body"));
    String stud =
        h.add(
            "G",
            h.basis().words().say("part.battery-ground"),
            new PartSpec.Ground(Optional.of(Bolted.JOINT)),
            "battery",
            h.words("why.bolted"));
    h.join(Harness.at(stud, "metal"), Harness.at(body, "metal"));
    strap(h, main, Harness.at(stud, "lug"));
    String dash =
        h.add(
            "G",
            h.basis().words().say("part.dash-ground"),
            new PartSpec.Ground(Optional.empty()),
            "dash",
            h.words("why.ground"));
    h.join(Harness.at(dash, "metal"), Harness.at(body, "metal"));
    h.spare(dash, Set.of("lug"));
    return dash;
  }

  /** Battery ground cable to a block where all ground wires meet. */
  private static String block(Harness h, double main) {
    String block =
        h.add(
            "GB",
            h.basis().words().say("part.ground-block"),
            Bolted.bar(),
            "fuse-block",
            h.words("why.ground-block"));
    h.spare(block, Set.of("a"));
    strap(h, main, Harness.at(block, "in"));
    return block;
  }

  private static void strap(Harness h, double main, loopwright.model.TerminalRef to) {
    h.cable(
        PartKind.STRAP,
        h.run(Side.GROUND, main, h.volts() == 6 ? 25 : 16),
        h.vehicle().groundedPost(),
        to,
        0.5,
        h.basis().words().say("wire.battery-ground"),
        Optional.of(Bolted.END));
  }
}
