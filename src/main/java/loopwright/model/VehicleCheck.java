package loopwright.model;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Checks that a vehicle holds together: names that are unique, references that lead somewhere,
 * values that can be, and for every load a way from the feed post through it to the grounded post.
 * It finds what makes a model useless for solving, not what makes wiring poor.
 *
 * <p>The limits of values are wide on purpose (common practice): they catch slipped decimal points
 * and units, not odd vehicles.
 */
public final class VehicleCheck {
  /** The system voltages a vehicle may have. */
  public static final Set<Integer> SYSTEM_VOLTS =
      java.util.Collections.unmodifiableSet(new LinkedHashSet<>(List.of(6, 12, 24)));

  /** Words are looked up for this many misspelt references; the rest are only reported. */
  private static final int MOST_SUGGESTIONS = 200;

  /**
   * One thing wrong.
   *
   * @param object what it is about, for instance {@code wire W7}
   * @param value what the model says
   * @param limit what is accepted
   * @param path where in the vehicle, as a vehicle file spells it, for instance {@code
   *     parts[6].metres}; indices count the vehicle's own lists
   * @param what the rest of the sentence that begins with the object
   */
  public record Finding(String object, String value, String limit, String path, String what) {
    /** Rejects missing components. */
    public Finding {
      Objects.requireNonNull(object, "object");
      Objects.requireNonNull(value, "value");
      Objects.requireNonNull(limit, "limit");
      Objects.requireNonNull(path, "path");
      Objects.requireNonNull(what, "what");
    }

    /** The whole sentence with its place. */
    public String message() {
      return object + ": " + what + " [" + path + "]";
    }
  }

  /** How much of a vehicle is there to be checked. */
  public enum Scope {
    /** All of it. */
    WHOLE,
    /**
     * Some parts or joins are missing since they could not be read: what depends on the whole
     * network is left out.
     */
    PIECES
  }

  private final Vehicle vehicle;
  private final Set<String> unreadable;
  private final Map<String, List<String>> controls;
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, Part> byId = new LinkedHashMap<>();
  private final Map<TerminalRef, TerminalRef> meant = new HashMap<>();
  private final Set<TerminalRef> connected = new HashSet<>();
  private int suggestions;

  private VehicleCheck(Vehicle vehicle, Set<String> unreadable) {
    this.vehicle = vehicle;
    this.unreadable = unreadable;
    this.controls = vehicle.controls();
    for (Part part : vehicle.parts()) {
      byId.putIfAbsent(part.id(), part);
    }
  }

  /** Everything wrong with a vehicle; empty if it holds together. */
  public static List<Finding> check(Vehicle vehicle) {
    return check(vehicle, Scope.WHOLE, Set.of());
  }

  /**
   * Everything wrong with as much of a vehicle as could be read.
   *
   * @param unreadable ids of parts that exist but could not be read; references to them are fine
   */
  public static List<Finding> check(Vehicle vehicle, Scope scope, Set<String> unreadable) {
    VehicleCheck check = new VehicleCheck(vehicle, Set.copyOf(unreadable));
    check.names();
    check.values();
    check.wires();
    check.joins();
    check.partReferences();
    check.circuits();
    if (scope == Scope.WHOLE) {
      check.danglingTerminals();
      check.loops();
    }
    return List.copyOf(check.findings);
  }

  private void add(String path, String object, String value, String limit, String what) {
    findings.add(new Finding(object, value, limit, path, what));
  }

  private static String title(Part part) {
    return part.kind().word() + " " + part.id();
  }

  private static String at(int part) {
    return "parts[" + part + "]";
  }

  // Names.

  private void names() {
    if (!SYSTEM_VOLTS.contains(vehicle.systemVolts())) {
      add(
          "system_volts",
          "vehicle",
          Integer.toString(vehicle.systemVolts()),
          "6, 12 or 24",
          "system_volts is " + vehicle.systemVolts() + ", must be 6, 12 or 24");
    }
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      Integer before = first.putIfAbsent(part.id(), i);
      if (before != null) {
        duplicate(at(i) + ".id", title(part), part.id(), "part", at(before));
      }
      partNames(part, at(i));
    }
    first.clear();
    for (int i = 0; i < vehicle.circuits().size(); i++) {
      String id = vehicle.circuits().get(i).id();
      Integer before = first.putIfAbsent(id, i);
      if (before != null) {
        duplicate(
            "circuits[" + i + "].id", "circuit " + id, id, "circuit", "circuits[" + before + "]");
      }
    }
  }

  private void duplicate(String path, String object, String name, String kind, String before) {
    add(
        path,
        object,
        name,
        "a name that no other " + kind + " has",
        "the name " + name + " is taken by " + before);
  }

  private void partNames(Part part, String path) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Switch s) {
      unique(part, path + ".terminals", "terminal", s.terminals());
      unique(part, path + ".positions", "position", s.positions());
    } else if (spec instanceof PartSpec.Connector c) {
      unique(part, path + ".cavities", "cavity", c.cavities());
    } else if (spec instanceof PartSpec.Splice s) {
      unique(part, path + ".legs", "leg", s.legs());
    } else if (spec instanceof PartSpec.DualLamp d) {
      if (d.second().equals(d.first())) {
        duplicate(path + ".filaments[1].name", title(part), d.second(), "filament", "filaments[0]");
      }
      List<String> names = List.of(d.first(), d.second());
      if (names.contains("common")) {
        add(
            path + ".filaments[" + names.indexOf("common") + "].name",
            title(part),
            "common",
            "any other name",
            "a filament is called common, which is the name of the shared terminal");
      }
    }
  }

  private void unique(Part part, String path, String kind, List<String> names) {
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      Integer before = first.putIfAbsent(names.get(i), i);
      if (before != null) {
        duplicate(path + "[" + i + "]", title(part), names.get(i), kind, "entry " + before);
      }
    }
  }

  // Values.

  private enum Range {
    OHMS(1e-6, 1e7, "ohm"),
    SENDER_OHMS(0, 1e7, "ohm"),
    COIL_OHMS(0.5, 20_000, "ohm"),
    BATTERY_OHMS(1e-5, 10, "ohm"),
    AMP_HOURS(0.5, 2_000, "Ah"),
    CHARGE_AMPS(0, 1_000, "A"),
    WATTS(0.1, 2_000, "W"),
    FUSE_AMPS(0.1, 500, "A"),
    LOAD_AMPS(0.001, 2_000, "A"),
    CONTACT_AMPS(0.1, 2_000, "A"),
    RATED_VOLTS(1, 48, "V"),
    COIL_VOLTS(0.5, 32, "V"),
    FORWARD_VOLTS(0.1, 24, "V"),
    MINUTES(0, 1_440, "minutes");

    private final double low;
    private final double high;
    private final String unit;

    Range(double low, double high, String unit) {
      this.low = low;
      this.high = high;
      this.unit = unit;
    }
  }

  private void values() {
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      partValues(part, at(i));
      String path = at(i);
      part.apartMinutes().ifPresent(m -> within(part, path, "apart_minutes", m, Range.MINUTES));
      part.swapMinutes().ifPresent(m -> within(part, path, "swap_minutes", m, Range.MINUTES));
      part.access()
          .forEach(
              (terminal, access) ->
                  within(
                      part,
                      path,
                      "access." + terminal + ".minutes",
                      access.minutes(),
                      Range.MINUTES));
    }
  }

  private void partValues(Part part, String path) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Battery b) {
      batteryVolts(part, path, b);
      estimate(part, path, "ohms", b.ohms(), Range.BATTERY_OHMS);
      b.ampHours().ifPresent(h -> within(part, path, "amp_hours", h, Range.AMP_HOURS));
      b.chargeIdleAmps()
          .ifPresent(a -> within(part, path, "charge_idle_amps", a, Range.CHARGE_AMPS));
      b.chargeAmps().ifPresent(a -> within(part, path, "charge_amps", a, Range.CHARGE_AMPS));
    } else if (spec instanceof PartSpec.Wire w) {
      metres(part, path, w.metres());
      estimate(part, path, "end_ohms", w.endOhms(), Range.OHMS);
    } else if (spec instanceof PartSpec.Fuse f) {
      within(part, path, "amps", f.amps(), Range.FUSE_AMPS);
      estimate(part, path, "ohms", f.ohms(), Range.OHMS);
    } else if (spec instanceof PartSpec.Switch s) {
      estimate(part, path, "ohms", s.ohms(), Range.OHMS);
      s.amps().ifPresent(a -> within(part, path, "amps", a, Range.CONTACT_AMPS));
    } else if (spec instanceof PartSpec.Relay r) {
      relay(part, path, r);
    } else if (spec instanceof PartSpec.Lamp l) {
      l.ratedVolts().ifPresent(v -> within(part, path, "rated_volts", v, Range.RATED_VOLTS));
      estimate(part, path, "watts", Optional.of(l.watts()), Range.WATTS);
    } else if (spec instanceof PartSpec.DualLamp d) {
      d.ratedVolts().ifPresent(v -> within(part, path, "rated_volts", v, Range.RATED_VOLTS));
      estimate(part, path, "filaments[0].watts", Optional.of(d.firstWatts()), Range.WATTS);
      estimate(part, path, "filaments[1].watts", Optional.of(d.secondWatts()), Range.WATTS);
    } else if (spec instanceof PartSpec.Led l) {
      estimate(part, path, "forward_volts", l.forwardVolts(), Range.FORWARD_VOLTS);
      estimate(part, path, "amps", Optional.of(l.amps()), Range.LOAD_AMPS);
    } else if (spec instanceof PartSpec.Diode d) {
      estimate(part, path, "forward_volts", d.forwardVolts(), Range.FORWARD_VOLTS);
    } else if (spec instanceof PartSpec.Motor m) {
      motor(part, path, m);
    } else if (spec instanceof PartSpec.PlainLoad l) {
      estimate(part, path, "amps", Optional.of(l.amps()), Range.LOAD_AMPS);
    } else if (spec instanceof PartSpec.Sender s) {
      estimate(
          part,
          path,
          "ohms",
          Optional.of(new Estimate(s.ohms().typical(), Optional.of(s.ohms()))),
          Range.SENDER_OHMS);
    } else if (spec instanceof PartSpec.Driver d) {
      estimate(part, path, "ohms", d.ohms(), Range.OHMS);
    } else if (spec instanceof PartSpec.Connector c) {
      estimate(part, path, "ohms", c.ohms(), Range.OHMS);
    } else if (spec instanceof PartSpec.Splice s) {
      estimate(part, path, "ohms", s.ohms(), Range.OHMS);
    } else if (spec instanceof PartSpec.Ground g) {
      estimate(part, path, "ohms", g.ohms(), Range.OHMS);
    }
  }

  /** A single battery of a series pair carries half the system voltage: 0.3 leaves room for it. */
  private void batteryVolts(Part part, String path, PartSpec.Battery battery) {
    if (!SYSTEM_VOLTS.contains(vehicle.systemVolts())) {
      return;
    }
    double low = vehicle.systemVolts() * 0.3;
    double high = vehicle.systemVolts() * 1.3;
    battery.volts().ifPresent(v -> between(part, path, "volts", v, low, high, "V"));
  }

  private void relay(Part part, String path, PartSpec.Relay relay) {
    estimate(part, path, "coil_ohms", relay.coilOhms(), Range.COIL_OHMS);
    estimate(part, path, "pull_in_volts", relay.pullInVolts(), Range.COIL_VOLTS);
    estimate(part, path, "drop_out_volts", relay.dropOutVolts(), Range.COIL_VOLTS);
    estimate(part, path, "contact_ohms", relay.contactOhms(), Range.OHMS);
    relay.amps().ifPresent(a -> within(part, path, "amps", a, Range.CONTACT_AMPS));
    if (relay.pullInVolts().isPresent() && relay.dropOutVolts().isPresent()) {
      double pull = relay.pullInVolts().get().about();
      double drop = relay.dropOutVolts().get().about();
      if (!(drop < pull)) {
        add(
            path + ".drop_out_volts",
            title(part),
            plain(drop) + " V",
            "less than pull_in_volts, " + plain(pull) + " V",
            "drop_out_volts is "
                + plain(drop)
                + " V, must be less than pull_in_volts, "
                + plain(pull)
                + " V");
      }
    }
  }

  private void motor(Part part, String path, PartSpec.Motor motor) {
    estimate(part, path, "amps", Optional.of(motor.amps()), Range.LOAD_AMPS);
    estimate(part, path, "stall_amps", motor.stallAmps(), Range.LOAD_AMPS);
    double running = motor.amps().about();
    motor
        .stallAmps()
        .filter(s -> s.about() < running)
        .ifPresent(
            s ->
                add(
                    path + ".stall_amps",
                    title(part),
                    plain(s.about()) + " A",
                    "at least amps, " + plain(running) + " A",
                    "stall_amps is "
                        + plain(s.about())
                        + " A, must be at least amps, "
                        + plain(running)
                        + " A"));
  }

  private void metres(Part part, String path, Estimate metres) {
    String limit = "more than 0 and at most 100 m";
    double about = metres.about();
    double low = metres.limits().map(Spread::low).orElse(about);
    double high = metres.limits().map(Spread::high).orElse(about);
    if (!(low > 0)) {
      add(
          path + ".metres",
          title(part),
          plain(low) + " m",
          limit,
          "metres is " + plain(low) + " m, must be " + limit);
    } else if (high > 100) {
      add(
          path + ".metres",
          title(part),
          plain(high) + " m",
          limit,
          "metres is " + plain(high) + " m, must be " + limit);
    }
  }

  private void estimate(
      Part part, String path, String field, Optional<Estimate> estimate, Range range) {
    estimate.ifPresent(e -> between(part, path, field, e, range.low, range.high, range.unit));
  }

  private void between(
      Part part, String path, String field, Estimate e, double low, double high, String unit) {
    List<Double> values = new ArrayList<>(List.of(e.about()));
    e.limits()
        .ifPresent(
            limits -> {
              values.add(limits.low());
              values.add(limits.high());
            });
    for (double value : values) {
      if (!(value >= low && value <= high)) {
        outside(part, path, field, value, low, high, unit);
        return;
      }
    }
  }

  private void within(Part part, String path, String field, double value, Range range) {
    if (!(value >= range.low && value <= range.high)) {
      outside(part, path, field, value, range.low, range.high, range.unit);
    }
  }

  private void outside(
      Part part, String path, String field, double value, double low, double high, String unit) {
    String limit = plain(low) + " to " + plain(high) + " " + unit;
    add(
        path + "." + field,
        title(part),
        plain(value) + " " + unit,
        limit,
        field + " is " + plain(value) + " " + unit + ", must be " + limit);
  }

  /** A number as a person writes it, to six digits. */
  private static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    java.math.BigDecimal rounded =
        new java.math.BigDecimal(value).round(new java.math.MathContext(6)).stripTrailingZeros();
    return Math.abs(rounded.scale()) > 12 ? rounded.toString() : rounded.toPlainString();
  }

  // References.

  private void wires() {
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      if (part.spec() instanceof PartSpec.Wire wire) {
        node(at(i) + ".from", title(part), "from", wire.from());
        node(at(i) + ".to", title(part), "to", wire.to());
        if (wire.from().equals(wire.to())) {
          add(
              at(i) + ".to",
              title(part),
              wire.to().toString(),
              "two different terminals",
              "both ends lie on " + wire.to() + ", must lie on two different terminals");
        }
      }
    }
  }

  private void joins() {
    for (int i = 0; i < vehicle.joins().size(); i++) {
      List<TerminalRef> join = vehicle.joins().get(i);
      String path = "joins[" + i + "]";
      Set<TerminalRef> seen = new HashSet<>();
      for (int j = 0; j < join.size(); j++) {
        TerminalRef ref = join.get(j);
        String at = path + "[" + j + "]";
        if (!seen.add(ref)) {
          add(
              at,
              path,
              ref.toString(),
              "each terminal once",
              ref + " stands in it twice, must stand once");
        } else {
          node(at, path, "entry " + j, ref);
        }
      }
      if (join.size() < 2) {
        add(
            path,
            path,
            "a list of " + join.size(),
            "a list of at least 2 terminals",
            "is a list of " + join.size() + ", must be a list of at least 2 terminals");
      }
    }
  }

  /** Looks a terminal up, and notes that something lies on it. */
  private void node(String path, String object, String field, TerminalRef ref) {
    if (unreadable.contains(ref.part())) {
      return;
    }
    Part part = byId.get(ref.part());
    if (part != null && part.spec().terminals().contains(ref.terminal())) {
      connected.add(ref);
      return;
    }
    Optional<TerminalRef> near = nearest(ref);
    near.ifPresent(
        n -> {
          meant.put(ref, n);
          connected.add(n);
        });
    String hint = near.map(n -> "; did you mean " + n + "?").orElse("");
    if (part == null) {
      add(
          path,
          object,
          ref.toString(),
          "a terminal of a part of this vehicle",
          field + " is " + ref + ", but there is no part " + ref.part() + hint);
    } else if (part.spec() instanceof PartSpec.Wire) {
      add(
          path,
          object,
          ref.toString(),
          "a terminal of a part that has terminals",
          field
              + " is "
              + ref
              + ", but a "
              + part.kind().word()
              + " has no terminals of its own; name the terminal its end lies on");
    } else {
      String terminals = String.join(", ", part.spec().terminals());
      add(
          path,
          object,
          ref.toString(),
          "one of " + terminals,
          field + " is " + ref + ", but " + title(part) + " has only " + terminals + hint);
    }
  }

  private Optional<TerminalRef> nearest(TerminalRef ref) {
    if (suggestions++ >= MOST_SUGGESTIONS) {
      return Optional.empty();
    }
    Part part = byId.get(ref.part());
    if (part != null) {
      return Nearest.to(ref.terminal(), part.spec().terminals())
          .map(t -> new TerminalRef(ref.part(), t));
    }
    List<String> candidates =
        byId.values().stream()
            .filter(p -> p.spec().terminals().contains(ref.terminal()))
            .map(Part::id)
            .toList();
    return Nearest.to(ref.part(), candidates).map(p -> new TerminalRef(p, ref.terminal()));
  }

  private void partReferences() {
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      String path = at(i);
      for (String terminal : part.access().keySet().stream().sorted().toList()) {
        known(path + ".access." + terminal, part, "access", terminal, part.spec().terminals());
      }
      for (String terminal : part.spare().stream().sorted().toList()) {
        known(path + ".spare", part, "spare", terminal, part.spec().terminals());
      }
      for (int p = 0; p < part.photos().size(); p++) {
        String at = path + ".photos[" + p + "].at";
        Optional<String> terminal = part.photos().get(p).terminal();
        terminal.ifPresent(t -> known(at, part, "photos", t, part.spec().terminals()));
      }
      if (part.spec() instanceof PartSpec.Switch s) {
        contacts(part, path, s);
      }
    }
  }

  private void contacts(Part part, String path, PartSpec.Switch s) {
    for (int c = 0; c < s.contacts().size(); c++) {
      PartSpec.SwitchContact contact = s.contacts().get(c);
      String at = path + ".contacts[" + c + "]";
      String field = "contacts[" + c + "]";
      known(at + ".between[0]", part, field, contact.a(), s.terminals());
      known(at + ".between[1]", part, field, contact.b(), s.terminals());
      if (contact.a().equals(contact.b())) {
        add(
            at + ".between",
            title(part),
            contact.role(),
            "two different terminals",
            field + " joins " + contact.a() + " to itself, must join two different terminals");
      }
      for (String position : contact.closedIn().stream().sorted().toList()) {
        if (!s.positions().contains(position)) {
          unknown(at + ".closed_in", part, field, "position", position, s.positions());
        }
      }
    }
  }

  private void known(String path, Part part, String field, String terminal, List<String> known) {
    if (!known.contains(terminal)) {
      unknown(path, part, field, "terminal", terminal, known);
    }
  }

  private void unknown(
      String path, Part part, String field, String kind, String word, List<String> known) {
    String list = known.isEmpty() ? "none" : "one of " + String.join(", ", known);
    add(
        path,
        title(part),
        word,
        list,
        field
            + " names the "
            + kind
            + " "
            + word
            + ", must be "
            + list
            + Nearest.to(word, known).map(n -> "; did you mean " + n + "?").orElse(""));
  }

  private void circuits() {
    if (vehicle.circuits().isEmpty()) {
      add(
          "circuits",
          "vehicle",
          "no circuits",
          "at least 1 circuit",
          "has no circuits, must have at least 1");
    }
    for (int i = 0; i < vehicle.circuits().size(); i++) {
      Circuit circuit = vehicle.circuits().get(i);
      String path = "circuits[" + i + "]";
      String object = "circuit " + circuit.id();
      if (circuit.loads().isEmpty()) {
        add(path + ".loads", object, "no loads", "at least 1 load", "has no loads, must have 1");
      }
      for (int l = 0; l < circuit.loads().size(); l++) {
        load(path + ".loads[" + l + "]", object, circuit.loads().get(l));
      }
      for (String control : circuit.on().keySet().stream().sorted().toList()) {
        String at = path + ".on." + control;
        if (unreadable.contains(control)) {
          continue;
        }
        List<String> positions = controls.get(control);
        String position = circuit.on().get(control);
        if (positions == null) {
          String hint =
              Nearest.to(control, controls.keySet())
                  .map(n -> "; did you mean " + n + "?")
                  .orElse("");
          String what =
              byId.containsKey(control)
                  ? title(byId.get(control)) + " has no positions"
                  : "there is no part " + control;
          add(
              at,
              object,
              control,
              "a switch or driver of this vehicle",
              "on names the control " + control + ", but " + what + hint);
        } else if (!positions.contains(position)) {
          add(
              at,
              object,
              position,
              "one of " + String.join(", ", positions),
              "on sets "
                  + control
                  + " to "
                  + position
                  + ", must be one of "
                  + String.join(", ", positions)
                  + Nearest.to(position, positions)
                      .map(n -> "; did you mean " + n + "?")
                      .orElse(""));
        }
      }
    }
  }

  private void load(String path, String object, LoadRef load) {
    if (unreadable.contains(load.part())) {
      return;
    }
    Part part = byId.get(load.part());
    if (part == null) {
      List<String> loads =
          byId.values().stream().filter(p -> p.kind().isLoad()).map(Part::id).toList();
      add(
          path,
          object,
          load.toString(),
          "a load of this vehicle",
          "names the load "
              + load
              + ", but there is no part "
              + load.part()
              + Nearest.to(load.part(), loads).map(n -> "; did you mean " + n + "?").orElse(""));
    } else if (!part.kind().isLoad()) {
      add(
          path,
          object,
          load.toString(),
          "a lamp, motor or other load",
          "names the load " + load + ", but " + title(part) + " is not a load");
    } else if (part.spec() instanceof PartSpec.DualLamp d) {
      List<String> names = List.of(d.first(), d.second());
      if (load.filament().isEmpty() || !names.contains(load.filament().get())) {
        String limit = load.part() + ":" + d.first() + " or " + load.part() + ":" + d.second();
        add(
            path,
            object,
            load.toString(),
            limit,
            "names the load " + load + ", must name a filament: " + limit);
      }
    } else if (load.filament().isPresent()) {
      add(
          path,
          object,
          load.toString(),
          load.part(),
          "names the load " + load + ", but " + title(part) + " has no filaments to choose from");
    }
  }

  // The network.

  private void danglingTerminals() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      if (!seen.add(part.id())) {
        continue;
      }
      for (String terminal : part.spec().terminals()) {
        TerminalRef ref = new TerminalRef(part.id(), terminal);
        if (!connected.contains(ref) && !part.spare().contains(terminal)) {
          add(
              at(i),
              title(part),
              ref.toString(),
              "a wire or a join on it, or named in spare",
              "nothing lies on its terminal "
                  + terminal
                  + ", must have a wire or a join on it or be named in spare");
        }
      }
    }
  }

  private void loops() {
    boolean battery = vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY);
    if (!battery) {
      add(
          "parts",
          "vehicle",
          "no battery",
          "at least 1 battery",
          "has no battery, must have at least 1");
      return;
    }
    LoopSearch search = new LoopSearch(vehicle, byId, meant);
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      if (part.spec() instanceof PartSpec.Wire wire
          && !wire.from().equals(wire.to())
          && search.oneNode(wire.from(), wire.to())) {
        add(
            at(i) + ".to",
            title(part),
            wire.from() + " and " + wire.to(),
            "two terminals that are not joined",
            "its ends "
                + wire.from()
                + " and "
                + wire.to()
                + " are joined to each other, must lie on two different nodes");
      }
    }
    for (int i = 0; i < vehicle.circuits().size(); i++) {
      Circuit circuit = vehicle.circuits().get(i);
      if (!settable(circuit)) {
        continue;
      }
      for (int l = 0; l < circuit.loads().size(); l++) {
        LoadRef load = circuit.loads().get(l);
        String path = "circuits[" + i + "].loads[" + l + "]";
        search.missing(circuit, load).ifPresent(side -> noLoop(path, circuit, load, side));
      }
    }
  }

  /** Whether the circuit's setting can be made at all; if not, that has been found already. */
  private boolean settable(Circuit circuit) {
    return circuit.on().entrySet().stream()
        .allMatch(e -> controls.getOrDefault(e.getKey(), List.of()).contains(e.getValue()));
  }

  private void noLoop(String path, Circuit circuit, LoadRef load, LoopSearch.Missing side) {
    String setting =
        circuit.on().isEmpty()
            ? "with all controls at rest"
            : "with "
                + String.join(
                    ", ",
                    circuit.on().entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue())
                        .sorted()
                        .toList());
    String feed = vehicle.feedPost().toString();
    String ground = vehicle.groundedPost().toString();
    String what =
        switch (side) {
          case FEED -> "load " + load + " has no feed: no way from " + feed + " to it " + setting;
          case RETURN ->
              "load " + load + " has no return: no way from it to " + ground + " " + setting;
          case BOTH ->
              "load "
                  + load
                  + " has neither feed nor return: no way from "
                  + feed
                  + " to it and none from it to "
                  + ground
                  + " "
                  + setting;
          case APART ->
              "load "
                  + load
                  + " has no loop of its own: feed and return reach it only through one and the"
                  + " same node "
                  + setting;
          case BLOCKED ->
              "load " + load + " gets no current: a diode or LED blocks its loop " + setting;
        };
    add(
        path,
        "circuit " + circuit.id(),
        side.word(),
        "a conducting way from " + feed + " through the load to " + ground,
        what);
  }
}
