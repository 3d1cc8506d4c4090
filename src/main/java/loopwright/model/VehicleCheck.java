package loopwright.model;

import java.util.ArrayList;
import java.util.Collection;
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
    return part.kind().said() + " " + part.id();
  }

  private static String say(String key, Object... args) {
    return Words.say("check." + key, args);
  }

  private static String title(Circuit circuit) {
    return say("circuit", circuit.id());
  }

  private static String at(int part) {
    return "parts[" + part + "]";
  }

  // Names.

  private void names() {
    if (!SYSTEM_VOLTS.contains(vehicle.systemVolts())) {
      add(
          "system_volts",
          say("vehicle"),
          Integer.toString(vehicle.systemVolts()),
          say("volts"),
          bad("system_volts", Integer.toString(vehicle.systemVolts()), say("volts")));
    }
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < vehicle.parts().size(); i++) {
      Part part = vehicle.parts().get(i);
      Integer before = first.putIfAbsent(part.id(), i);
      if (before != null) {
        duplicate(at(i) + ".id", title(part), part.id(), "of.part", at(before));
      }
      partNames(part, at(i));
    }
    first.clear();
    for (int i = 0; i < vehicle.circuits().size(); i++) {
      Circuit circuit = vehicle.circuits().get(i);
      Integer before = first.putIfAbsent(circuit.id(), i);
      if (before != null) {
        duplicate(
            "circuits[" + i + "].id",
            title(circuit),
            circuit.id(),
            "of.circuit",
            "circuits[" + before + "]");
      }
    }
  }

  private void duplicate(String path, String object, String name, String kind, String before) {
    add(path, object, name, say("name", say(kind)), say("name.taken", name, before));
  }

  private void partNames(Part part, String path) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Switch s) {
      unique(part, path + ".terminals", "of.terminal", s.terminals());
      unique(part, path + ".positions", "of.position", s.positions());
    } else if (spec instanceof PartSpec.Connector c) {
      unique(part, path + ".cavities", "of.cavity", c.cavities());
    } else if (spec instanceof PartSpec.Splice s) {
      unique(part, path + ".legs", "of.leg", s.legs());
    } else if (spec instanceof PartSpec.DualLamp d) {
      if (d.second().equals(d.first())) {
        duplicate(
            path + ".filaments[1].name", title(part), d.second(), "of.filament", "filaments[0]");
      }
      List<String> names = List.of(d.first(), d.second());
      if (names.contains("common")) {
        add(
            path + ".filaments[" + names.indexOf("common") + "].name",
            title(part),
            "common",
            say("name.other"),
            say("name.common"));
      }
    }
  }

  private void unique(Part part, String path, String kind, List<String> names) {
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      Integer before = first.putIfAbsent(names.get(i), i);
      if (before != null) {
        duplicate(
            path + "[" + i + "]", title(part), names.get(i), kind, say("entry", before.toString()));
      }
    }
  }

  // Values.

  private static final String OHM = "ohm";
  private static final String MINUTE = "minutes";

  private enum Range {
    OHMS(1e-6, 1e7, OHM),
    SENDER_OHMS(0, 1e7, OHM),
    COIL_OHMS(0.5, 20_000, OHM),
    BATTERY_OHMS(1e-5, 10, OHM),
    AMP_HOURS(0.5, 2_000, "Ah"),
    CHARGE_AMPS(0, 1_000, "A"),
    WATTS(0.1, 2_000, "W"),
    FUSE_AMPS(0.1, 500, "A"),
    LOAD_AMPS(0.001, 2_000, "A"),
    CONTACT_AMPS(0.1, 2_000, "A"),
    RATED_VOLTS(1, 48, "V"),
    COIL_VOLTS(0.5, 32, "V"),
    FORWARD_VOLTS(0.1, 24, "V"),
    MINUTES(0, 1_440, MINUTE);

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
        must(path, part, "drop_out_volts", plain(drop) + " V", say("drop-out", plain(pull) + " V"));
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
                must(
                    path,
                    part,
                    "stall_amps",
                    plain(s.about()) + " A",
                    say("stall", plain(running) + " A")));
  }

  private void metres(Part part, String path, Estimate metres) {
    double about = metres.about();
    double low = metres.limits().map(Spread::low).orElse(about);
    double high = metres.limits().map(Spread::high).orElse(about);
    if (!(low > 0)) {
      must(path, part, "metres", plain(low) + " m", say("metres"));
    } else if (high > 100) {
      must(path, part, "metres", plain(high) + " m", say("metres"));
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
    String spoken = spoken(unit);
    must(
        path,
        part,
        field,
        plain(value) + " " + spoken,
        Language.range(plain(low), plain(high)) + " " + spoken);
  }

  private static String spoken(String unit) {
    return switch (unit) {
      case OHM -> Language.ohm("");
      case MINUTE -> say("minutes");
      default -> unit;
    };
  }

  private void must(String path, Part part, String field, String value, String limit) {
    add(path + "." + field, title(part), value, limit, bad(field, value, limit));
  }

  private static String bad(String field, String value, String limit) {
    return say("bad", field, value, limit);
  }

  /** A number as a person writes it, to six digits. */
  private static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    java.math.BigDecimal rounded =
        new java.math.BigDecimal(value).round(new java.math.MathContext(6)).stripTrailingZeros();
    return Language.marked(
        Math.abs(rounded.scale()) > 12 ? rounded.toString() : rounded.toPlainString());
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
              say("two-terminals"),
              say("one-terminal", wire.to()));
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
          add(at, path, ref.toString(), say("once"), say("twice", ref));
        } else {
          node(at, path, say("entry", Integer.toString(j)), ref);
        }
      }
      if (join.size() < 2) {
        add(
            path,
            path,
            say("list", Integer.toString(join.size())),
            say("join"),
            say("join.bad", Integer.toString(join.size())));
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
    String hint = near.map(VehicleCheck::meant).orElse("");
    if (part == null) {
      add(
          path,
          object,
          ref.toString(),
          say("end"),
          say("end.no-part", field, ref, ref.part()) + hint);
    } else if (part.spec() instanceof PartSpec.Wire) {
      add(
          path,
          object,
          ref.toString(),
          say("end.not-wire"),
          say("end.wire", field, ref, part.kind().said()));
    } else {
      String terminals = String.join(", ", part.spec().terminals());
      add(
          path,
          object,
          ref.toString(),
          say("one-of", terminals),
          say("end.no-terminal", field, ref, title(part), terminals) + hint);
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
            say("two-terminals"),
            say("to-itself", field, contact.a()));
      }
      for (String position : contact.closedIn().stream().sorted().toList()) {
        if (!s.positions().contains(position)) {
          unknown(at + ".closed_in", part, field, "of.position", position, s.positions());
        }
      }
    }
  }

  private void known(String path, Part part, String field, String terminal, List<String> known) {
    if (!known.contains(terminal)) {
      unknown(path, part, field, "of.terminal", terminal, known);
    }
  }

  private void unknown(
      String path, Part part, String field, String kind, String word, List<String> known) {
    String list = known.isEmpty() ? say("none") : say("one-of", String.join(", ", known));
    add(
        path,
        title(part),
        word,
        list,
        say("unknown", field, say(kind), word, list) + meant(word, known));
  }

  private static String meant(String word, Collection<String> known) {
    return Nearest.to(word, known).map(VehicleCheck::meant).orElse("");
  }

  private static String meant(Object near) {
    return say("meant", near);
  }

  private void circuits() {
    if (vehicle.circuits().isEmpty()) {
      add("circuits", say("vehicle"), say("no-circuits"), say("circuits"), say("circuits.none"));
    }
    for (int i = 0; i < vehicle.circuits().size(); i++) {
      Circuit circuit = vehicle.circuits().get(i);
      String path = "circuits[" + i + "]";
      String object = title(circuit);
      if (circuit.loads().isEmpty()) {
        add(path + ".loads", object, say("no-loads"), say("loads"), say("loads.none"));
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
          String what =
              byId.containsKey(control)
                  ? say("control.no-positions", control, title(byId.get(control)))
                  : say("control.no-part", control);
          add(at, object, control, say("control"), what + meant(control, controls.keySet()));
        } else if (!positions.contains(position)) {
          add(
              at,
              object,
              position,
              say("one-of", String.join(", ", positions)),
              say("position", control, position, String.join(", ", positions))
                  + meant(position, positions));
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
          say("load"),
          say("load.no-part", load, load.part()) + meant(load.part(), loads));
    } else if (!part.kind().isLoad()) {
      add(path, object, load.toString(), say("load.kind"), say("load.other", load, title(part)));
    } else if (part.spec() instanceof PartSpec.DualLamp d) {
      List<String> names = List.of(d.first(), d.second());
      if (load.filament().isEmpty() || !names.contains(load.filament().get())) {
        String limit = say("or", load.part() + ":" + d.first(), load.part() + ":" + d.second());
        add(path, object, load.toString(), limit, say("load.filament", load, limit));
      }
    } else if (load.filament().isPresent()) {
      add(path, object, load.toString(), load.part(), say("load.no-filaments", load, title(part)));
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
          add(at(i), title(part), ref.toString(), say("bare"), say("bare.bad", terminal));
        }
      }
    }
  }

  private void loops() {
    boolean battery = vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY);
    if (!battery) {
      add("parts", say("vehicle"), say("no-battery"), say("battery"), say("battery.none"));
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
            say("and", wire.from(), wire.to()),
            say("apart"),
            say("joined", wire.from(), wire.to()));
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
            ? say("at-rest")
            : say(
                "with",
                String.join(
                    ", ",
                    circuit.on().entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue())
                        .sorted()
                        .toList()));
    String feed = vehicle.feedPost().toString();
    String ground = vehicle.groundedPost().toString();
    add(
        path,
        title(circuit),
        side.said(),
        say("way", feed, ground),
        say("way." + side.word(), load, feed, ground, setting));
  }
}
