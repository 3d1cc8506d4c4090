package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.knowledge.WireFuses;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.PartSpec.Suppression;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;

/**
 * A circuit being put into a vehicle: parts get free ids, wires their size, values their source.
 */
final class Harness {
  /** Share by which a length that is asked for may be off. Common practice. */
  private static final double LENGTH_SHARE = 0.15;

  /** Ohms of a closed contact times its rating: 8 mohm at 10 A, the usual switch, in proportion. */
  private static final double CONTACT_VOLTS = 0.08;

  private final Vehicle before;
  private final Basis basis;
  private final String name;
  private final String mark;
  private final List<Part> parts;
  private final List<List<TerminalRef>> joins;
  private final List<Circuit> circuits;
  private final Map<String, String> sources = new LinkedHashMap<>();
  private final Map<String, String> added = new LinkedHashMap<>();
  private final Map<String, TerminalRef> groundsHere = new HashMap<>();
  private final List<Run> runs = new ArrayList<>();
  private final List<String> told = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final Set<String> taken = new HashSet<>();
  private final WireSize.Unit unit;
  private int label;

  /**
   * Begins a circuit.
   *
   * @param name what a person calls it, for instance "work lamp"; the parts are named after it
   */
  Harness(Vehicle before, Basis basis, String name) {
    this(before, basis, name, unit(before));
  }

  private static WireSize.Unit unit(Vehicle vehicle) {
    return vehicle.parts().stream()
        .filter(p -> p.spec() instanceof PartSpec.Wire)
        .map(p -> ((PartSpec.Wire) p.spec()).size().unit())
        .findFirst()
        .orElse(WireSize.Unit.MM2);
  }

  /**
   * Begins a circuit on a vehicle that may have no wire yet.
   *
   * @param unit how its wire sizes are written
   */
  Harness(Vehicle before, Basis basis, String name, WireSize.Unit unit) {
    this.before = before;
    this.basis = basis;
    this.name = name;
    this.parts = new ArrayList<>(before.parts());
    this.joins = new ArrayList<>(before.joins());
    this.circuits = new ArrayList<>(before.circuits());
    before.parts().forEach(p -> taken.add(p.id()));
    String letters = name.toUpperCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+.*", "");
    this.mark = letters.substring(0, Math.min(5, letters.length()));
    this.unit = unit;
  }

  Basis basis() {
    return basis;
  }

  int volts() {
    return before.systemVolts();
  }

  /** What the vehicle has now, with what has been added so far. */
  Existing existing() {
    return new Existing(vehicle());
  }

  Vehicle vehicle() {
    return before.with(parts, joins, circuits);
  }

  /** A part of the vehicle, or one that has been added. */
  private Part part(String id) {
    return parts.stream().filter(p -> p.id().equals(id)).findFirst().orElseThrow();
  }

  List<Run> runs() {
    return runs;
  }

  /** The circuits that came, in order. */
  List<Circuit> newCircuits() {
    return circuits.subList(before.circuits().size(), circuits.size());
  }

  /** Words of the bundle, with the circuit's name as their first argument. */
  String words(String key, Object... more) {
    Object[] args = new Object[more.length + 1];
    args[0] = name;
    System.arraycopy(more, 0, args, 1, more.length);
    return basis.words().say(key, args);
  }

  /** Why a value is as it is. */
  String why(Answers answers, String question) {
    return answers.why(basis.words(), question);
  }

  /** What the wire to a load is called. */
  String feedOf(String load) {
    return basis.words().say("wire.feed-of", part(load).name());
  }

  /** What the ground wire of a load is called. */
  String groundOf(String load) {
    return basis.words().say("wire.ground-of", part(load).name());
  }

  /** Says something that the person should know of. */
  void tell(String key, Object... args) {
    told.add(words(key, args));
  }

  /** Says how the circuit is simplified, or works; kept with it. */
  void note(String key, Object... args) {
    notes.add(words(key, args));
  }

  // Parts.

  /** The next free id of a letter. */
  String free(String letter) {
    int number = 1;
    while (!taken.add(letter + number)) {
      number++;
    }
    return letter + number;
  }

  /**
   * Adds a part.
   *
   * @param letter first letter of its id
   * @param called what a person calls it
   * @param source why it has the values it has
   */
  String add(String letter, String called, PartSpec spec, String where, String source) {
    String id = free(letter);
    Minutes minutes = Minutes.of(spec.kind());
    parts.add(
        new Part(
            id,
            called,
            "",
            spec,
            Map.of(),
            minutes.apart(),
            minutes.swap(),
            Set.of(),
            where.isEmpty() ? "" : basis.words().say("where." + where)));
    sources.put(id, source);
    added.put(id, source);
    return id;
  }

  static TerminalRef at(String part, String terminal) {
    return new TerminalRef(part, terminal);
  }

  void join(TerminalRef one, TerminalRef other) {
    for (int i = 0; i < joins.size(); i++) {
      List<TerminalRef> join = joins.get(i);
      if (join.contains(one) || join.contains(other)) {
        List<TerminalRef> longer = new ArrayList<>(join);
        if (!join.contains(one)) {
          longer.add(one);
        }
        if (!join.contains(other)) {
          longer.add(other);
        }
        joins.set(i, longer);
        return;
      }
    }
    joins.add(List.of(one, other));
  }

  /** A plug and socket. */
  String plug(String called, List<String> cavities, String where) {
    return add(
        "C", called, new PartSpec.Connector(cavities, Optional.empty()), where, words("why.plug"));
  }

  /** Marks terminals that are meant to stay free. */
  void spare(String part, Set<String> terminals) {
    parts.replaceAll(p -> p.id().equals(part) ? p.withSpare(terminals) : p);
  }

  /** A free leg of a bar; the bar gets one more if all are taken. */
  TerminalRef leg(String bar) {
    Part part = part(bar);
    PartSpec.Splice splice = (PartSpec.Splice) part.spec();
    Set<TerminalRef> used = Vehicle.usedTerminals(parts, joins);
    for (String leg : splice.legs()) {
      if (!used.contains(at(bar, leg))) {
        Set<String> spare = new HashSet<>(part.spare());
        spare.remove(leg);
        spare(bar, spare);
        return at(bar, leg);
      }
    }
    String next = nextLeg(splice.legs());
    List<String> legs = new ArrayList<>(splice.legs());
    legs.add(next);
    PartSpec longer = new PartSpec.Splice(legs, splice.ohms());
    parts.replaceAll(p -> p.id().equals(bar) ? p.withSpec(longer) : p);
    added.putIfAbsent(bar, words("why.leg"));
    return at(bar, next);
  }

  private static String nextLeg(List<String> legs) {
    for (char c = 'a'; c <= 'z'; c++) {
      if (!legs.contains(String.valueOf(c))) {
        return String.valueOf(c);
      }
    }
    int number = legs.size();
    while (legs.contains("n" + number)) {
      number++;
    }
    return "n" + number;
  }

  /**
   * A splice with its legs.
   *
   * @return its id; legs are a, b, c and so on
   */
  String splice(String called, int legs) {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < legs; i++) {
      names.add(String.valueOf((char) ('a' + i)));
    }
    return add("SP", called, new PartSpec.Splice(names, Optional.empty()), "", words("why.splice"));
  }

  /** A fuse with what lies behind it. */
  record Fused(String id, double amps, Side side, Map<String, String> on) {
    TerminalRef load() {
      return at(id, "load");
    }
  }

  /**
   * A fuse of its own for a load, fed from a bar or by a short wire.
   *
   * @param amps what it carries at work, in amperes
   */
  Fused fuse(Feed feed, double amps, String called) {
    return fuse(feed, rating(amps), amps, called, volts() == 6 ? "why.fuse-six" : "why.fuse");
  }

  /**
   * The rating of a fuse for a load, in amperes. On 6 V it is chosen for half as much again: near
   * its rating a fuse would lose a third of the volts that may be lost.
   */
  double rating(double amps) {
    return Sizes.fuse(volts() == 6 ? 1.5 * amps : amps);
  }

  /**
   * A fuse of its own for a motor, which draws about four times its current while it starts: the
   * fuse must stand that for a third of a second (ISO 8820-3, from memory).
   */
  Fused motorFuse(Feed feed, double amps, String called) {
    return fuse(feed, Sizes.fuse(2.2 * amps), amps, called, "why.fuse-motor");
  }

  /** A fuse of a stated rating. */
  Fused fuse(Feed feed, double rating, double amps, String called) {
    return fuse(feed, rating, amps, called, "why.fuse");
  }

  private Fused fuse(Feed feed, double rating, double amps, String called, String why) {
    String id =
        add(
            "F",
            called,
            new PartSpec.Fuse(rating, Optional.empty()),
            feed.bar().isPresent() ? "fuse-block" : "inline",
            words(why, amps, rating));
    Side side = feed.on().isEmpty() ? Side.HOT : Side.KEYED;
    if (feed.bar().isPresent()) {
      join(leg(feed.bar().get().id()), at(id, "feed"));
    } else {
      Run run = run(side, feed.fuse().orElse(rating));
      wire(run, feed.at(), at(id, "feed"), 0.2, words("part.fuse-feed", called));
      if (feed.fuse().isEmpty()) {
        tell("told.unfused", called);
      }
    }
    return new Fused(id, rating, side, feed.on());
  }

  /**
   * The small fuse that coils are fed from: one for all relays of the vehicle on this feed.
   *
   * @param feed what the coils are fed from
   */
  Fused coilFuse(Feed feed) {
    String called =
        basis.words().say(feed.on().isEmpty() ? "part.coil-fuse" : "part.coil-fuse-key");
    Optional<Part> there = existing().smallFuse(feed, COIL_FUSE, called);
    Side side = feed.on().isEmpty() ? Side.HOT : Side.KEYED;
    if (there.isPresent()) {
      double amps = ((PartSpec.Fuse) there.get().spec()).amps();
      return new Fused(there.get().id(), amps, side, feed.on());
    }
    return fuse(feed, COIL_FUSE, coilAmps(), called);
  }

  /** Rating of the fuse of all coils in amperes. Common practice. */
  private static final double COIL_FUSE = 5;

  /** What one coil takes, in amperes. */
  double coilAmps() {
    double ohms = basis.knowledge().typicals().usual(PartKind.RELAY, "coilOhms", volts()).typical();
    return volts() * 1.05 / ohms;
  }

  /** A switch with one contact; in and out. */
  String plainSwitch(
      String called,
      PartSpec.Control control,
      String rest,
      String on,
      boolean closedAtRest,
      boolean momentary,
      double amps,
      String where) {
    return add(
        "S",
        called,
        new PartSpec.Switch(
            List.of("in", "out"),
            List.of(rest, on),
            List.of(new PartSpec.SwitchContact("in", "out", Set.of(closedAtRest ? rest : on))),
            control,
            momentary,
            contactOhms(contact(amps)),
            Optional.of(contact(amps))),
        where,
        whyContact(amps));
  }

  /**
   * The rating of a contact for a load, in amperes: three times the load, since cold lamps draw
   * fifteen times that for a moment and a contact stands about five times its rating (data sheet of
   * a plug-in relay: 120 A for 25 A); on 24 V eight times, where the arc lasts longer (FAA AC
   * 43.13-1B, Table 11-4: 8 for lamps at 28 V).
   */
  double contact(double amps) {
    return Sizes.contact(volts() == 24 ? 6.4 * amps : 2.6 * amps);
  }

  /** Why a contact has its rating. */
  String whyContact(double amps) {
    return words(volts() == 24 ? "why.switch-24" : "why.switch", amps, contact(amps));
  }

  /** Resistance of a closed contact by its rating; empty where the usual value will do. */
  static Optional<Estimate> contactOhms(double rating) {
    double about = Math.round(CONTACT_VOLTS / rating * 1e4) / 1e4;
    return rating > 10
        ? Optional.of(Estimate.between(about / 4, about, about * 2.5))
        : Optional.empty();
  }

  /** What closes a relay's coil circuit. */
  enum Coil {
    /** A hand or foot: a resistor is enough, and can't be fitted the wrong way round. */
    BY_SWITCH,
    /** A transistor, which a coil's kick kills: a diode. */
    BY_DRIVER
  }

  /**
   * A plug-in relay. Its 86 lies on the feed side, 85 on the ground side.
   *
   * @param load what its contact carries, in amperes
   * @throws Problem if that is more than such relays stand
   */
  String relay(String called, Coil coil, String where, double load) throws Problem {
    boolean heavy = volts() == 6 && load > 5;
    double amps = volts() == 24 ? 20 : heavy ? 70 : 40;
    if (load > amps) {
      throw new Problem(
          "power",
          Answers.number(load) + " A",
          basis.words().say("problem.relay", Answers.number(amps)));
    }
    return add(
        "K",
        called,
        new PartSpec.Relay(
            false,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            heavy ? Optional.of(HEAVY_CONTACT) : Optional.empty(),
            suppression(coil),
            Optional.of(amps)),
        where,
        words(heavy ? "why.relay-six" : "why.relay", amps)
            + " "
            + words(coil == Coil.BY_SWITCH ? "why.resistor" : "why.diode", cathode()));
  }

  /** The contact of a heavy relay, in ohms. Common practice. */
  static final Estimate HEAVY_CONTACT = Estimate.between(0.001, 0.003, 0.01);

  private Suppression suppression(Coil coil) {
    return coil == Coil.BY_SWITCH ? Suppression.RESISTOR : diode();
  }

  /** The diode that blocks while the coil is fed: its cathode lies at the positive end. */
  Suppression diode() {
    return negativeGround() ? Suppression.DIODE_CATHODE_86 : Suppression.DIODE_CATHODE_85;
  }

  private String cathode() {
    return negativeGround() ? "86" : "85";
  }

  boolean negativeGround() {
    return before.grounded() == GroundedPole.NEGATIVE;
  }

  /** A lamp of so many watts. */
  String lamp(String called, double watts, String where, String source) {
    return add("L", called, new PartSpec.Lamp(Optional.empty(), Estimate.of(watts)), where, source);
  }

  /** The small lamp in the dash that tells something. */
  String tellTale(String called) {
    double watts = basis.knowledge().patternValues().load("tell-tale", volts()).amount().typical();
    return lamp(called, watts, "dash", words("why.tell-tale"));
  }

  /**
   * The terminal of a ground point or block that a person chose, or of a new point; also of a new
   * one where the stud has as many rings as it takes.
   */
  TerminalRef ground(String answer, String place) {
    if (!answer.equals(Questions.NEW)) {
      Part there = part(answer);
      if (there.kind() == PartKind.BATTERY) {
        return before.groundedPost();
      }
      if (there.kind() == PartKind.SPLICE) {
        return leg(answer);
      }
      TerminalRef stud = at(answer, "lug");
      if (Existing.hasRoom(parts, stud) || existing().body().isEmpty()) {
        return stud;
      }
    }
    TerminalRef here = groundsHere.get(place);
    if (here == null || !Existing.hasRoom(parts, here)) {
      here = newGround(place);
      groundsHere.put(place, here);
    }
    return here;
  }

  private TerminalRef newGround(String place) {
    Part body = existing().body().orElseThrow();
    String id =
        add(
            "G",
            words("part.ground", basis.words().say("where." + place)),
            new PartSpec.Ground(Optional.empty()),
            place,
            words("why.ground"));
    join(at(id, "metal"), at(body.id(), "metal"));
    return at(id, "lug");
  }

  // Wires.

  /**
   * Wires of one size.
   *
   * @param fuse rating of the fuse that protects them in amperes; 0 where none does
   */
  Run run(Side side, double fuse) {
    return run(side, fuse, 0);
  }

  /** Wires of one size with at least so many square millimetres of copper. */
  Run run(Side side, double fuse, double least) {
    WireSize byFuse = Sizes.forFuse(basis.knowledge().wireFuses(), unit, fuse);
    WireSize size = byFuse.mm2() < least ? Sizes.atLeast(unit, least) : byFuse;
    Run run = new Run(side, fuse, size);
    runs.add(run);
    return run;
  }

  /** The thinnest size of the vehicle's own unit with so much copper. */
  WireSize atLeast(double mm2) {
    return Sizes.atLeast(unit, mm2);
  }

  /** Adds a wire to a run. */
  String wire(Run run, TerminalRef from, TerminalRef to, double metres, String called) {
    return cable(PartKind.WIRE, run, from, to, metres, called, Optional.empty());
  }

  /** Adds a wire of its own size behind a fuse. */
  String wire(Fused from, TerminalRef to, double metres, String called) {
    return wire(run(from.side(), from.amps()), from.load(), to, metres, called);
  }

  /**
   * Adds the ground wire of a coil or another small thing beside the fuse block.
   *
   * @param answer the ground point or block that a person chose
   * @param fuse rating of the fuse that protects it in amperes; 0 where none does
   */
  String smallGround(String answer, double fuse, TerminalRef from, String called) {
    return wire(run(Side.GROUND, fuse), from, ground(answer, "relay"), 0.5, called);
  }

  /** Adds a wire or strap, with bolted ends where an end's resistance is given. */
  String cable(
      PartKind kind,
      Run run,
      TerminalRef from,
      TerminalRef to,
      double metres,
      String called,
      Optional<Estimate> endOhms) {
    String id = free(kind == PartKind.STRAP ? "STR" : "W");
    taken(from);
    taken(to);
    PartSpec.Wire spec =
        new PartSpec.Wire(
            kind, from, to, run.size(), about(metres), endOhms, run.side().colour(), "");
    label++;
    Minutes minutes = Minutes.of(kind);
    parts.add(
        new Part(
            id,
            called,
            mark + label,
            spec,
            Map.of(),
            minutes.apart(),
            minutes.swap(),
            Set.of(),
            ""));
    run.wires().add(id);
    added.put(id, "");
    return id;
  }

  /** What a wire lies on isn't meant to stay free. */
  private void taken(TerminalRef at) {
    Part part = part(at.part());
    if (part.spare().contains(at.terminal())) {
      Set<String> spare = new HashSet<>(part.spare());
      spare.remove(at.terminal());
      spare(part.id(), spare);
    }
  }

  /** About so many metres, give or take a share. */
  private static Estimate about(double metres) {
    return Estimate.between(
        hundredths(metres * (1 - LENGTH_SHARE)), metres, hundredths(metres * (1 + LENGTH_SHARE)));
  }

  private static double hundredths(double metres) {
    return Math.max(0.01, Math.round(metres * 100) / 100.0);
  }

  /** Puts the sizes of the runs into their wires. */
  void settle() {
    Map<String, Run> byWire = new HashMap<>();
    runs.forEach(run -> run.wires().forEach(w -> byWire.put(w, run)));
    parts.replaceAll(
        p -> {
          Run run = byWire.get(p.id());
          if (run == null || !(p.spec() instanceof PartSpec.Wire w)) {
            return p;
          }
          return p.withSpec(
              new PartSpec.Wire(
                  w.kind(),
                  w.from(),
                  w.to(),
                  run.size(),
                  w.metres(),
                  w.endOhms().or(() -> ends(run.size())),
                  w.colour(),
                  w.loom()));
        });
  }

  /** One end of a thick wire, in ohms: a big crimp has more metal to touch. Common practice. */
  private static final Estimate THICK_END = Estimate.between(0.0002, 0.0005, 0.002);

  /** The resistance of an end of a wire; empty where the usual one will do. */
  private static Optional<Estimate> ends(WireSize size) {
    return size.mm2() > 2 ? Optional.of(THICK_END) : Optional.empty();
  }

  // Circuits.

  /** Adds a function. */
  void circuit(String called, List<LoadRef> loads, List<Map<String, String>> on) {
    Map<String, String> all = new LinkedHashMap<>();
    on.forEach(all::putAll);
    Set<String> ids = new HashSet<>();
    circuits.forEach(c -> ids.add(c.id()));
    String plain =
        called.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    String stem = plain.substring(0, Math.min(30, plain.length()));
    String id = stem;
    for (int n = 2; ids.contains(id); n++) {
      id = stem + "-" + n;
    }
    circuits.add(new Circuit(id, called, loads, all, ""));
  }

  // The end.

  /**
   * Sizes the wires, writes the notes and says what came.
   *
   * @param cranks whether a motor among the new loads cranks the engine
   */
  Outcome finish(boolean cranks) {
    return finish(new Sizing(this, cranks).size());
  }

  /** Does without sizing by lost volts: for what has no load yet. */
  Outcome finishUnloaded() {
    return finish(List.of());
  }

  private Outcome finish(List<Sizing.Loss> losses) {
    settle();
    List<String> why = new ArrayList<>();
    parts.stream()
        .filter(p -> p.kind() == PartKind.FUSE && sources.containsKey(p.id()))
        .forEach(p -> why.add(p.title() + ": " + sources.get(p.id())));
    for (int i = before.circuits().size(); i < circuits.size(); i++) {
      Circuit c = circuits.get(i);
      List<String> note = new ArrayList<>(notes);
      losses.stream().filter(l -> l.circuit().equals(c.id())).forEach(l -> note.add(said(l)));
      if (i == before.circuits().size()) {
        note.addAll(why);
      }
      circuits.set(i, new Circuit(c.id(), c.name(), c.loads(), c.on(), String.join(" ", note)));
    }
    losses.forEach(l -> told.add(said(l)));
    Map<String, Run> byWire = new HashMap<>();
    runs.forEach(run -> run.wires().forEach(w -> byWire.put(w, run)));
    Vehicle after = vehicle();
    List<Added> list = new ArrayList<>();
    added.forEach(
        (id, source) -> {
          Part part = after.requirePart(id);
          String why1 = byWire.containsKey(id) ? whySize(byWire.get(id)) : source;
          list.add(new Added(id, part.title(), PartValues.of(part), why1));
        });
    Map<String, String> names = new LinkedHashMap<>();
    newCircuits().forEach(c -> names.put(c.id(), c.name()));
    return new Outcome(after, list, names, told);
  }

  private String said(Sizing.Loss loss) {
    String circuit =
        circuits.stream()
            .filter(c -> c.id().equals(loss.circuit()))
            .map(Circuit::name)
            .findFirst()
            .orElse("");
    return basis
        .words()
        .say(
            loss.within() ? "told.drop" : "told.drop-beyond",
            circuit,
            loss.feed(),
            loss.feedLimit().volts(),
            loss.ground(),
            loss.groundLimit().volts(),
            basis.words().source(loss.feedLimit().source()));
  }

  private String whySize(Run run) {
    Optional<WireFuses.Row> row = basis.knowledge().wireFuses().row(run.size().mm2());
    String carries =
        run.fuse() > 0 && row.isPresent()
            ? words(
                "why.wire-fuse",
                run.fuse(),
                row.get().amps(),
                basis.words().source(row.get().source()))
            : words(whyUnfused(run));
    return run.thicker() ? carries + " " + words("why.wire-drop") : carries;
  }

  private static String whyUnfused(Run run) {
    if (run.side() == Side.CONTROL || run.size().mm2() < THIN) {
      return "why.wire-control";
    }
    return run.side() == Side.GROUND ? "why.wire-ground-cable" : "why.wire-cable";
  }

  /** Up to here a wire without a fuse carries next to nothing, in square millimetres. */
  private static final double THIN = 2;

  /** Working times by kind of part. Common practice. */
  private record Minutes(Optional<Double> apart, Optional<Double> swap) {
    static Minutes of(PartKind kind) {
      return switch (kind) {
        case FUSE -> new Minutes(Optional.of(0.2), Optional.of(0.5));
        case RELAY -> new Minutes(Optional.of(0.5), Optional.of(1.0));
        case LAMP, DUAL_LAMP -> new Minutes(Optional.of(1.0), Optional.of(2.0));
        case CONNECTOR -> new Minutes(Optional.of(0.5), Optional.empty());
        case MOTOR, HORN, HEATER, SOLENOID, ELECTRONICS ->
            new Minutes(Optional.of(1.0), Optional.of(15.0));
        case SWITCH, WIRE, STRAP -> new Minutes(Optional.empty(), Optional.of(15.0));
        case GROUND -> new Minutes(Optional.empty(), Optional.of(8.0));
        default -> new Minutes(Optional.empty(), Optional.empty());
      };
    }
  }

  /** Loads of a new circuit. */
  static List<LoadRef> loads(List<String> ids) {
    return ids.stream().map(LoadRef::of).sorted(Comparator.naturalOrder()).toList();
  }
}
