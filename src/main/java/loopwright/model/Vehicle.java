package loopwright.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * The whole loaded model: supply, parts, wires, circuits.
 *
 * <p>Parts meet at terminals. A wire's end lies on a terminal of another part; two terminals that
 * touch without a wire (a fuse pushed on a bus bar) are joined. A node is a set of terminals that
 * are electrically one.
 *
 * @param id short name
 * @param name what people call the vehicle
 * @param systemVolts 6, 12 or 24
 * @param grounded which battery post is tied to the body
 * @param parts every part, wires included, in the order of the file
 * @param joins sets of terminals that touch without a wire
 * @param circuits the functions
 * @param note anything worth knowing; may be empty
 */
public record Vehicle(
    String id,
    String name,
    int systemVolts,
    GroundedPole grounded,
    List<Part> parts,
    List<List<TerminalRef>> joins,
    List<Circuit> circuits,
    String note) {

  /** Most parts of one vehicle, wires included, that files and lists may hold. */
  public static final int MOST_PARTS = 20_000;

  /** Copies the lists. */
  public Vehicle {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(grounded, "grounded");
    Objects.requireNonNull(note, "note");
    parts = PartList.copyOf(parts);
    joins = joins.stream().map(List::copyOf).toList();
    circuits = List.copyOf(circuits);
  }

  /** This vehicle with other parts, joins and circuits. */
  public Vehicle with(List<Part> parts, List<List<TerminalRef>> joins, List<Circuit> circuits) {
    return new Vehicle(id, name, systemVolts, grounded, parts, joins, circuits, note);
  }

  /** This vehicle called otherwise. */
  public Vehicle withName(String name) {
    return new Vehicle(id, name, systemVolts, grounded, parts, joins, circuits, note);
  }

  /** This vehicle with another system voltage and grounded post. */
  public Vehicle withSupply(int systemVolts, GroundedPole grounded) {
    return new Vehicle(id, name, systemVolts, grounded, parts, joins, circuits, note);
  }

  /** The part with this id. */
  public Optional<Part> part(String id) {
    // Always one, since the constructor makes it so.
    return ((PartList) parts).part(id);
  }

  /**
   * The part with this id.
   *
   * @throws IllegalArgumentException if there is none
   */
  public Part requirePart(String id) {
    return part(id)
        .orElseThrow(
            () -> new IllegalArgumentException("vehicle " + name + " has no part '" + id + "'"));
  }

  /** The circuit with this id. */
  public Optional<Circuit> circuit(String id) {
    return circuits.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /** The first battery. */
  public Part battery() {
    return parts.stream()
        .filter(p -> p.kind() == PartKind.BATTERY)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("vehicle " + name + " has no battery"));
  }

  /** The battery post tied to the body: where the black lead rests for volts to ground. */
  public TerminalRef groundedPost() {
    return new TerminalRef(battery().id(), grounded == GroundedPole.NEGATIVE ? "neg" : "pos");
  }

  /** The other post: where the feed begins. */
  public TerminalRef feedPost() {
    return new TerminalRef(battery().id(), grounded == GroundedPole.NEGATIVE ? "pos" : "neg");
  }

  /** Parts that can be set to positions, by id. */
  public Map<String, List<String>> controls() {
    Map<String, List<String>> controls = new LinkedHashMap<>();
    for (Part part : parts) {
      if (!part.spec().positions().isEmpty()) {
        controls.put(part.id(), part.spec().positions());
      }
    }
    return Collections.unmodifiableMap(controls);
  }

  /** The position a control has in a setting. */
  public String position(String control, Setting setting) {
    String set = setting.positions().get(control);
    return set != null ? set : requirePart(control).spec().positions().get(0);
  }

  /**
   * The setting in which a load should work: that of the circuit which is on right now if one of
   * the load's circuits is (a fan may have two speeds), else of the first it serves.
   *
   * @param load the load
   * @param now how the controls stand
   * @return the setting; at rest for a load of no circuit
   */
  public Setting onSetting(LoadRef load, Setting now) {
    Optional<Setting> first = Optional.empty();
    for (Circuit circuit : circuits) {
      if (circuit.loads().contains(load)) {
        Setting on = circuit.onSetting();
        if (on.positions().equals(now.positions())) {
          return on;
        }
        first = first.or(() -> Optional.of(on));
      }
    }
    return first.orElse(Setting.REST);
  }

  /** Every terminal of every part, in file order. Wires have none of their own. */
  public List<TerminalRef> terminals() {
    List<TerminalRef> all = new ArrayList<>();
    for (Part part : parts) {
      for (String terminal : part.spec().terminals()) {
        all.add(new TerminalRef(part.id(), terminal));
      }
    }
    return all;
  }

  /** The terminals that a wire or a join lies on. */
  public Set<TerminalRef> usedTerminals() {
    return usedTerminals(parts, joins);
  }

  /** The terminals that a wire or a join lies on, of parts and joins that are no vehicle yet. */
  public static Set<TerminalRef> usedTerminals(List<Part> parts, List<List<TerminalRef>> joins) {
    Set<TerminalRef> used = new HashSet<>();
    joins.forEach(used::addAll);
    for (Part part : parts) {
      if (part.spec() instanceof PartSpec.Wire w) {
        used.add(w.from());
        used.add(w.to());
      }
    }
    return used;
  }

  /**
   * Whether both points lie on one part that is out of the vehicle in a setting, contacts and all,
   * so that leads on them see that part alone.
   */
  public boolean inHand(TerminalRef one, TerminalRef other, Setting setting) {
    return one.part().equals(other.part())
        && setting.apart().contains(one.part())
        && requirePart(one.part()).kind().comesOutWhole();
  }

  /** The setting in which every part but one is apart. */
  public Setting only(String part) {
    Set<String> others = new HashSet<>();
    parts.forEach(p -> others.add(p.id()));
    others.remove(part);
    return Setting.REST.without(others);
  }

  /** What it takes to reach a terminal. */
  public Access access(TerminalRef at) {
    return requirePart(at.part()).access(at.terminal());
  }
}
