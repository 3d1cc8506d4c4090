package loopwright.evidence.generated;

import static loopwright.evidence.generated.Draft.at;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.PartSpec.Control;
import loopwright.model.PartSpec.Suppression;
import loopwright.model.PartSpec.SwitchContact;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Whole small vehicles from a seed: a supply, a bar with one or two fuses more than the complaint
 * needs, one circuit of a chosen shape and a plain neighbour on the same bar.
 */
public final class MadeUp {

  /** The shape of the circuit that most of the vehicle is about. */
  public enum Shape {
    /** Fuse, switch, lamp, ground stud. */
    SERIES_LAMP,
    /** The load's own switch lies between it and ground. */
    GROUND_BUTTON,
    /** A relay whose coil is fed through the switch. */
    RELAY_FEED_SWITCHED,
    /** A relay whose coil is grounded through the switch. */
    RELAY_GROUND_SWITCHED,
    /** Two circuits that return by one stud. */
    SHARED_STUD,
    /** Unlike loads behind one switch. */
    BRANCHED,
    /** Like lamps side by side. */
    PARALLEL_LAMPS,
    /** A motor behind a switch. */
    MOTOR,
    /** An indicator behind a diode. */
    LED_WITH_DIODE
  }

  private static final List<String> LAMPS =
      List.of("gate lamp", "yard lamp", "hold lamp", "step lamp", "marker lamp", "bench lamp");
  private static final List<String> MOTORS =
      List.of("chaff blower", "cabin fan", "washer pump", "hoist pump", "wiper");
  private static final List<String> PLAIN =
      List.of("seat heater", "valve solenoid", "signal horn", "wave receiver");
  private static final List<String> VEHICLES =
      List.of("Hay wagon", "Market van", "Quarry lorry", "Ferry cart", "Orchard runabout");

  private final Draft d;
  private final Shape shape;
  private final Map<String, String> upstream = new LinkedHashMap<>();
  private int leg;
  private TerminalRef bus;
  private String bar;

  private MadeUp(Draft draft, Shape shape) {
    this.d = draft;
    this.shape = shape;
  }

  /** The shape that a number stands for; all shapes come round in turn. */
  public static Shape shape(int number) {
    return Shape.values()[Math.floorMod(number, Shape.values().length)];
  }

  /** The vehicle of a number: the same number gives the same vehicle in every run. */
  public static Vehicle vehicle(int number) {
    Random random = new Random(7_919L * number + 17);
    int volts = List.of(12, 12, 6, 24).get(random.nextInt(4));
    boolean positive = random.nextDouble() < (volts == 6 ? 0.6 : volts == 12 ? 0.25 : 0.1);
    Draft draft =
        new Draft(volts, positive ? GroundedPole.POSITIVE : GroundedPole.NEGATIVE, random);
    return new MadeUp(draft, shape(number)).build(number);
  }

  private Vehicle build(int number) {
    TerminalRef post = d.mains();
    Draft.Spot box = d.spot();
    double total = 25;
    TerminalRef feed = post;
    if (d.chance(0.4)) {
      String main = d.fuse("main fuse", total, d.spot());
      d.wire(post, at(main, "feed"), total, "battery feed", "");
      feed = at(main, "load");
    }
    if (d.chance(0.3)) {
      String key = toggle("KEY", "main key", Control.KEY, "run", false);
      d.wire(feed, at(key, "in"), total, "key feed", "");
      feed = at(key, "out");
      upstream.put(key, "run");
    }
    bar =
        d.part(
            "BAR",
            "fuse bar",
            new PartSpec.Splice(List.of("in", "a", "b", "c"), Optional.empty()),
            box,
            true);
    bus = at(bar, "in");
    d.wire(feed, bus, total, "bar feed", "");
    switch (shape) {
      case SERIES_LAMP -> series(box);
      case GROUND_BUTTON -> groundButton(box);
      case RELAY_FEED_SWITCHED -> relay(box, true);
      case RELAY_GROUND_SWITCHED -> relay(box, false);
      case SHARED_STUD -> sharedStud(box);
      case BRANCHED -> branched(box);
      case PARALLEL_LAMPS -> parallel(box);
      case MOTOR -> motor(box);
      case LED_WITH_DIODE -> led(box);
    }
    if (shape != Shape.SHARED_STUD) {
      neighbour(box);
    }
    while (leg < 3) {
      // Legs that nothing hangs on: an empty fuse place.
      String spare = d.fuse("spare fuse place", 3, box);
      d.join(nextLeg(), at(spare, "feed"));
      String end =
          d.part(
              "H",
              "hand lamp socket " + leg,
              new PartSpec.PlainLoad(PartKind.ELECTRONICS, Estimate.of(0.5)),
              d.spot());
      d.wire(at(spare, "load"), at(end, "in"), 1, "hand lamp feed " + leg, "");
      d.join(at(end, "out"), at("BODY", "metal"));
      Map<String, String> on = new LinkedHashMap<>(upstream);
      d.circuit("aux" + leg, "Hand lamp socket " + leg, List.of(end), on);
    }
    return d.vehicle(
        "made-" + number, d.one(VEHICLES) + " " + number + " (" + word(shape.name()) + ")");
  }

  private static String word(String name) {
    return name.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private TerminalRef nextLeg() {
    return at(bar, List.of("a", "b", "c").get(leg++));
  }

  // ---- pieces ---------------------------------------------------------------------------------

  private String toggle(String prefix, String name, Control control, String on, boolean momentary) {
    return d.part(
        prefix,
        name,
        new PartSpec.Switch(
            List.of("in", "out"),
            List.of("off", on),
            List.of(new SwitchContact("in", "out", java.util.Set.of(on))),
            control,
            momentary,
            Optional.empty(),
            Optional.empty()),
        d.spot());
  }

  /** A fuse joined or wired to the bar. */
  private TerminalRef fused(String name, double amps, Draft.Spot box) {
    String fuse = d.fuse(name + " fuse", amps, box);
    TerminalRef from = nextLeg();
    if (d.chance(0.7)) {
      d.join(from, at(fuse, "feed"));
    } else {
      d.wire(from, at(fuse, "feed"), amps, name + " fuse feed", "");
    }
    return at(fuse, "load");
  }

  private double watts() {
    double[] usual =
        switch (d.volts) {
          case 6 -> new double[] {1.2, 5, 15, 25};
          case 24 -> new double[] {5, 10, 21, 70};
          default -> new double[] {2, 5, 10, 21, 45};
        };
    return usual[d.random.nextInt(usual.length)];
  }

  private String lamp(String name, double watts) {
    return d.part("L", name, new PartSpec.Lamp(Optional.empty(), Estimate.of(watts)), d.spot());
  }

  /** Takes a load's return to ground by a stud of its own, the bare metal or a longer wire. */
  private void back(String load, double amps, String name) {
    double way = d.random.nextDouble();
    if (way < 0.25) {
      d.join(at(load, "out"), at("BODY", "metal"));
      return;
    }
    String stud = d.ground(name + " ground stud", d.spot());
    if (way < 0.4) {
      d.join(at(load, "out"), at(stud, "lug"));
    } else {
      d.run(at(load, "out"), at(stud, "lug"), amps, name + " return", "", 0.15);
    }
  }

  private Map<String, String> on(String control, String position) {
    Map<String, String> on = new LinkedHashMap<>(upstream);
    on.put(control, position);
    return on;
  }

  // ---- shapes ---------------------------------------------------------------------------------

  private void series(Draft.Spot box) {
    String name = d.one(LAMPS);
    double watts = watts();
    double amps = watts / d.volts;
    String loom = d.chance(0.5) ? "main loom" : "";
    TerminalRef feed = fused(name, amps, box);
    String s = toggle("S", name + " switch", Control.MANUAL, "on", false);
    String l = lamp(name, watts);
    d.run(feed, at(s, "in"), amps, name + " switch feed", loom, 0.2);
    d.run(at(s, "out"), at(l, "in"), amps, name + " feed", loom, 0.5);
    back(l, amps, name);
    d.circuit("main", capital(name), List.of(l), on(s, "on"));
  }

  private void groundButton(Draft.Spot box) {
    boolean horn = d.chance(0.6);
    String name = horn ? "signal horn" : d.one(LAMPS);
    double amps = horn ? 3 + 3 * d.random.nextDouble() : watts() / d.volts;
    TerminalRef feed = fused(name, amps, box);
    String load =
        horn
            ? d.part(
                "H",
                name,
                new PartSpec.PlainLoad(PartKind.HORN, Estimate.of(round(amps))),
                d.spot())
            : lamp(name, round(amps * d.volts));
    d.run(feed, at(load, "in"), amps, name + " feed", "nose loom", 0.4);
    String s = toggle("S", name + " button", Control.MANUAL, "pressed", true);
    d.run(at(load, "out"), at(s, "in"), amps, name + " button wire", "nose loom", 0.3);
    if (d.chance(0.5)) {
      d.join(at(s, "out"), at("BODY", "metal"));
    } else {
      String stud = d.ground(name + " button stud", d.spot());
      d.wire(at(s, "out"), at(stud, "lug"), amps, name + " button ground", "");
    }
    d.circuit("main", capital(name), List.of(load), on(s, "pressed"));
  }

  private void relay(Draft.Spot box, boolean feedSwitched) {
    boolean motor = d.chance(0.35);
    String name = motor ? d.one(MOTORS) : d.chance(0.5) ? d.one(LAMPS) : d.one(PLAIN);
    double amps;
    String load;
    if (motor) {
      amps = round(3 + 7 * d.random.nextDouble());
      load = motorPart(name, amps);
    } else if (LAMPS.contains(name)) {
      double watts = d.volts == 6 ? 36 : 55;
      amps = watts / d.volts;
      load = lamp(name, watts);
    } else {
      amps = round(2 + 6 * d.random.nextDouble());
      load = plain(name, amps);
    }
    boolean negative = d.pole == GroundedPole.NEGATIVE;
    Suppression suppression =
        d.one(
            List.of(
                Suppression.NONE,
                Suppression.RESISTOR,
                negative ? Suppression.DIODE_CATHODE_86 : Suppression.DIODE_CATHODE_85));
    String k =
        d.part(
            "K",
            name + " relay",
            new PartSpec.Relay(
                d.chance(0.3),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                suppression,
                Optional.empty()),
            d.spot());
    d.wire(fused(name, amps, box), at(k, "30"), amps, name + " relay feed", "");
    TerminalRef control = fused(name + " control", 1, box);
    String s =
        toggle("S", name + " switch", d.one(List.of(Control.MANUAL, Control.PEDAL)), "on", false);
    String stud = d.ground(name + " relay stud", d.spot());
    if (feedSwitched) {
      d.run(control, at(s, "in"), 1, name + " switch feed", "dash loom", 0.2);
      d.run(at(s, "out"), at(k, "86"), 1, name + " coil wire", "dash loom", 0.2);
      d.wire(at(k, "85"), at(stud, "lug"), 1, name + " coil ground", "");
    } else {
      d.run(control, at(k, "86"), 1, name + " coil feed", "dash loom", 0.2);
      d.run(at(k, "85"), at(s, "in"), 1, name + " coil wire", "dash loom", 0.2);
      d.wire(at(s, "out"), at(stud, "lug"), 1, name + " switch ground", "");
    }
    d.run(at(k, "87"), at(load, "in"), amps, name + " feed", "", 0.3);
    back(load, amps, name);
    d.circuit("main", capital(name), List.of(load), on(s, "on"));
  }

  private void sharedStud(Draft.Spot box) {
    String stud = d.ground("shared ground stud", d.spot());
    for (int n = 1; n <= 2; n++) {
      String name = LAMPS.get((d.random.nextInt(3) + 3 * (n - 1)) % LAMPS.size());
      double watts = watts();
      double amps = watts / d.volts;
      TerminalRef feed = fused(name, amps, box);
      String s = toggle("S", name + " switch", Control.MANUAL, "on", false);
      String l = lamp(name, watts);
      d.wire(feed, at(s, "in"), amps, name + " switch feed", "rear loom");
      d.run(at(s, "out"), at(l, "in"), amps, name + " feed", "rear loom", 0.3);
      d.wire(at(l, "out"), at(stud, "lug"), amps, name + " return", "");
      d.circuit(n == 1 ? "main" : "next", capital(name), List.of(l), on(s, "on"));
    }
  }

  private void branched(Draft.Spot box) {
    double watts = watts();
    boolean motor = d.chance(0.5);
    String second = motor ? d.one(MOTORS) : d.one(PLAIN);
    String first = d.one(LAMPS);
    double other = round(1 + 4 * d.random.nextDouble());
    double amps = watts / d.volts + other;
    TerminalRef feed = fused(first, amps, box);
    String s = toggle("S", first + " switch", Control.MANUAL, "on", false);
    d.wire(feed, at(s, "in"), amps, first + " switch feed", "");
    String splice =
        d.part(
            "SP",
            "branch splice",
            new PartSpec.Splice(List.of("in", "a", "b"), Optional.empty()),
            d.spot(),
            d.chance(0.3));
    d.run(at(s, "out"), at(splice, "in"), amps, "branch feed", "", 0.3);
    String l = lamp(first, watts);
    d.wire(at(splice, "a"), at(l, "in"), watts / d.volts, first + " feed", "");
    back(l, watts / d.volts, first);
    String m = motor ? motorPart(second, other) : plain(second, other);
    d.wire(at(splice, "b"), at(m, "in"), other, second + " feed", "");
    back(m, other, second);
    d.circuit("main", capital(first), List.of(l), on(s, "on"));
    d.circuit("branch", capital(second), List.of(m), on(s, "on"));
  }

  private void parallel(Draft.Spot box) {
    String name = d.one(LAMPS);
    int count = d.chance(0.3) ? 3 : 2;
    double watts = watts();
    double amps = count * watts / d.volts;
    TerminalRef feed = fused(name, amps, box);
    String s = toggle("S", name + " switch", Control.MANUAL, "on", false);
    d.wire(feed, at(s, "in"), amps, name + " switch feed", "");
    List<String> legs = count == 3 ? List.of("in", "a", "b", "c") : List.of("in", "a", "b");
    String splice =
        d.part(
            "SP",
            name + " splice",
            new PartSpec.Splice(legs, Optional.empty()),
            d.spot(),
            d.chance(0.3));
    d.run(at(s, "out"), at(splice, "in"), amps, name + " feed", "", 0.2);
    List<String> lamps = new java.util.ArrayList<>();
    boolean common = d.chance(0.4);
    String stud = common ? d.ground(name + " common stud", d.spot()) : "";
    for (int n = 1; n <= count; n++) {
      String each = List.of("left ", "right ", "middle ").get(n - 1) + name;
      String l = lamp(each, watts);
      lamps.add(l);
      d.wire(at(splice, legs.get(n)), at(l, "in"), watts / d.volts, each + " feed", "lamp loom");
      if (common) {
        d.wire(at(l, "out"), at(stud, "lug"), watts / d.volts, each + " return", "lamp loom");
      } else {
        back(l, watts / d.volts, each);
      }
    }
    d.circuit("main", capital(name) + "s", lamps, on(s, "on"));
  }

  private void motor(Draft.Spot box) {
    String name = d.one(MOTORS);
    double amps = round(2 + 8 * d.random.nextDouble());
    TerminalRef feed = fused(name, amps, box);
    String s = toggle("S", name + " switch", Control.MANUAL, "on", false);
    String m = motorPart(name, amps);
    d.run(feed, at(s, "in"), amps, name + " switch feed", "", 0.2);
    d.run(at(s, "out"), at(m, "in"), amps, name + " feed", "", 0.5);
    back(m, amps, name);
    d.circuit("main", capital(name), List.of(m), on(s, "on"));
  }

  private void led(Draft.Spot box) {
    String name = "warning light";
    boolean negative = d.pole == GroundedPole.NEGATIVE;
    TerminalRef feed = fused(name, 0.5, box);
    String s =
        toggle(
            "S",
            name + " switch",
            d.one(List.of(Control.PRESSURE, Control.TEMPERATURE, Control.MANUAL)),
            "closed",
            false);
    String diode = d.part("D", name + " diode", new PartSpec.Diode(Optional.empty()), d.spot());
    // Current runs from plus to minus: on a positive-ground vehicle from the body to the feed.
    String l =
        d.part(
            "L",
            name,
            new PartSpec.Led(
                Optional.empty(), Estimate.of(round(0.01 + 0.02 * d.random.nextDouble()))),
            d.spot());
    d.run(feed, at(s, "in"), 0.1, name + " switch feed", "dash loom", 0.2);
    d.wire(
        at(s, "out"),
        at(diode, negative ? "anode" : "cathode"),
        0.1,
        name + " diode feed",
        "dash loom");
    d.run(
        at(diode, negative ? "cathode" : "anode"),
        at(l, negative ? "in" : "out"),
        0.1,
        name + " feed",
        "dash loom",
        0.2);
    String stud = d.ground(name + " stud", d.spot());
    d.wire(at(l, negative ? "out" : "in"), at(stud, "lug"), 0.1, name + " return", "");
    d.circuit("main", capital(name), List.of(l), on(s, "closed"));
  }

  /** A plain circuit beside it: what works or not on the same bar tells something too. */
  private void neighbour(Draft.Spot box) {
    String name = d.one(List.of("shed lamp", "chart lamp", "tool lamp"));
    double watts = watts();
    double amps = watts / d.volts;
    TerminalRef feed = fused(name, amps, box);
    String s = toggle("S", name + " switch", Control.MANUAL, "on", false);
    String l = lamp(name, watts);
    d.wire(feed, at(s, "in"), amps, name + " switch feed", "");
    d.wire(at(s, "out"), at(l, "in"), amps, name + " feed", d.chance(0.4) ? "main loom" : "");
    back(l, amps, name);
    d.circuit("next", capital(name), List.of(l), on(s, "on"));
  }

  private String motorPart(String name, double amps) {
    return d.part("M", name, new PartSpec.Motor(Estimate.of(amps), Optional.empty()), d.spot());
  }

  private String plain(String name, double amps) {
    PartKind kind =
        name.contains("heater")
            ? PartKind.HEATER
            : name.contains("solenoid")
                ? PartKind.SOLENOID
                : name.contains("horn") ? PartKind.HORN : PartKind.ELECTRONICS;
    return d.part("H", name, new PartSpec.PlainLoad(kind, Estimate.of(amps)), d.spot());
  }

  private static double round(double value) {
    return Math.round(value * 1000) / 1000.0;
  }

  private static String capital(String name) {
    return Character.toUpperCase(name.charAt(0)) + name.substring(1);
  }
}
