package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import loopwright.casework.Problem;
import loopwright.knowledge.PatternValues.Pin;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.LoadRef;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A trailer socket whose lamps are fed by relays, so that the vehicle's own switches, flasher and
 * fuses carry no more than before:
 *
 * <pre>
 * bar -- fuse -- splice -- 30 (relays) 87 -- socket pins -- trailer lamps -- splice
 * splice -- socket ground pin -- ground
 * lamp of the vehicle -- 86 (relay) 85 -- ground
 * </pre>
 */
final class TrailerSocket extends Pattern {
  private static final String STOP = "stop";
  private static final String LEFT = "left-turn";
  private static final String RIGHT = "right-turn";
  private static final String TAIL = "tail";
  private static final List<String> TAPS = List.of(STOP, LEFT, RIGHT, TAIL);

  TrailerSocket() {
    super("trailer-socket");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.circuit(STOP, List.of("brake"));
    ask.circuit(LEFT, List.of("left"));
    ask.circuit(RIGHT, List.of("right"));
    ask.circuit(TAIL, List.of("tail"));
    ask.power("power", "stop-lamp", 6);
    ask.power("tail-power", "tail-lamp", 3);
    ask.metres("to-tap", 1);
    ask.metres("to-relay", 0.3);
    ask.metres("to-socket", 4);
    ask.metres("on-trailer", 4);
    ask.ground("ground");
    ask.metres("to-ground", 0.5);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    Map<String, Circuit> tapped = new LinkedHashMap<>();
    for (String tap : TAPS) {
      if (!a.is(tap, Questions.NO)) {
        tapped.put(tap, h.vehicle().circuit(a.words(tap)).orElseThrow());
      }
    }
    if (tapped.isEmpty()) {
      throw new Problem(STOP, a.words(STOP), h.basis().words().say("problem.follows"));
    }
    List<Pin> pins = h.basis().knowledge().patternValues().socket(h.volts());
    double amps = amps(a, tapped);
    Harness.Fused fuse = h.fuse(feed(h, false), amps, h.words("part.fuse"));
    String socket = socket(h, pins);
    Set<String> used = new TreeSet<>();
    Pin groundPin = pin(pins, "ground");
    Run out = h.run(Side.SWITCHED, fuse.amps());
    Run ground = h.run(Side.GROUND, fuse.amps());
    h.wire(
        ground,
        Harness.at(socket, groundPin.pin() + "a"),
        h.ground(a.words("ground"), "rear"),
        a.number("to-ground"),
        h.words("wire.ground"));
    Map<String, String> relays = new LinkedHashMap<>();
    for (Map.Entry<String, Circuit> tap : tapped.entrySet()) {
      String k =
          h.relay(
              h.words("trailer-socket.relay." + tap.getKey()),
              Harness.Coil.BY_SWITCH,
              "relay",
              amps);
      tap(h, a, tap.getValue(), tapped, k);
      relays.put(tap.getKey(), k);
    }
    Branches.feed(
        h,
        h.run(fuse.side(), fuse.amps()),
        fuse.load(),
        List.copyOf(relays.values()),
        "30",
        a.number("to-relay"),
        0.1);
    List<String> all = new ArrayList<>();
    for (Map.Entry<String, Circuit> tap : tapped.entrySet()) {
      List<String> lamps = new ArrayList<>();
      for (Pin pin : pins(pins, tap.getKey())) {
        used.add(pin.pin());
        h.wire(
            out,
            Harness.at(relays.get(tap.getKey()), "87"),
            Harness.at(socket, pin.pin() + "a"),
            a.number("to-socket"),
            h.words("trailer-socket.wire.to-pin", pin.pin(), pin.marking()));
        lamps.addAll(lamps(h, a, socket, pin, out));
      }
      h.circuit(
          h.words("trailer-socket.circuit." + tap.getKey()),
          Harness.loads(lamps),
          List.of(tap.getValue().on()));
      all.addAll(lamps);
    }
    Branches.ground(
        h, ground, Harness.at(socket, groundPin.pin() + "b"), all, a.number("on-trailer"), 1);
    Set<String> spare = new TreeSet<>();
    for (Pin pin : pins) {
      if (!used.contains(pin.pin()) && pin != groundPin) {
        spare.add(pin.pin() + "a");
        spare.add(pin.pin() + "b");
      }
    }
    h.spare(socket, spare);
    h.note("trailer-socket.note");
  }

  private static double amps(Answers a, Map<String, Circuit> tapped) throws Problem {
    double lamp = a.amps("power");
    double amps = 0;
    amps += tapped.containsKey(STOP) ? 2 * lamp : 0;
    amps += tapped.containsKey(LEFT) || tapped.containsKey(RIGHT) ? 2 * lamp : 0;
    return amps + (tapped.containsKey(TAIL) ? 2 * a.amps("tail-power") : 0);
  }

  private static String socket(Harness h, List<Pin> pins) {
    Pin first = pins.get(0);
    if (h.volts() == 6) {
      h.tell("trailer-socket.told.six-volts", first.standard());
    }
    return h.plug(
        h.words("trailer-socket.socket", first.standard()),
        pins.stream().map(Pin::pin).toList(),
        "rear");
  }

  private static Pin pin(List<Pin> pins, String function) {
    return pins.stream().filter(p -> p.function().equals(function)).findFirst().orElseThrow();
  }

  private static List<Pin> pins(List<Pin> pins, String tap) {
    return pins.stream().filter(p -> p.function().endsWith(tap)).toList();
  }

  private static List<String> lamps(Harness h, Answers a, String socket, Pin pin, Run out)
      throws Problem {
    boolean tail = pin.function().endsWith(TAIL);
    List<String> sides =
        pin.function().equals(STOP) ? List.of("stop-left", "stop-right") : List.of(pin.function());
    List<String> lamps = new ArrayList<>();
    for (String side : sides) {
      String lamp =
          h.lamp(
              h.words("trailer-socket.lamp." + side),
              tail ? a.watts("tail-power") : a.watts("power"),
              "trailer",
              h.words("why.pin", pin.pin(), pin.marking(), h.basis().words().source(pin.source())));
      lamps.add(lamp);
      h.wire(
          out,
          Harness.at(socket, pin.pin() + "b"),
          Harness.at(lamp, "in"),
          a.number("on-trailer"),
          h.feedOf(lamp));
    }
    return lamps;
  }

  /** The coil of a relay on what feeds a lamp of the vehicle. */
  private static void tap(
      Harness h, Answers a, Circuit circuit, Map<String, Circuit> tapped, String relay)
      throws Problem {
    double fuse = fuse(h.vehicle(), circuit).orElse(0);
    h.wire(
        h.run(Side.CONTROL, fuse),
        point(h.vehicle(), circuit, tapped),
        Harness.at(relay, "86"),
        a.number("to-tap"),
        h.words("trailer-socket.wire.tap", circuit.name()));
    Coils.grounded(h, a, fuse, relay);
  }

  /** The greatest rating of a fuse that feeds a circuit's loads. */
  private static OptionalDouble fuse(Vehicle vehicle, Circuit circuit) {
    return new CircuitWays(vehicle)
        .of(circuit).stream()
            .flatMap(
                way ->
                    way.stream()
                        .map(pass -> vehicle.requirePart(pass.part()).spec())
                        .filter(s -> s instanceof PartSpec.Fuse)
                        .reduce((before, last) -> last)
                        .stream())
            .mapToDouble(s -> ((PartSpec.Fuse) s).amps())
            .max();
  }

  /**
   * Where a circuit is tapped: at the feed contact of a load that no other tapped circuit has, else
   * behind the switch that is its own (brake lamps that also flash).
   */
  private static TerminalRef point(Vehicle vehicle, Circuit circuit, Map<String, Circuit> tapped)
      throws Problem {
    for (LoadRef load : circuit.loads()) {
      boolean shared =
          tapped.values().stream().anyMatch(c -> c != circuit && c.loads().contains(load));
      if (!shared) {
        return Harness.at(load.part(), load.filament().orElse("in"));
      }
    }
    for (String control : circuit.on().keySet().stream().sorted().toList()) {
      if (vehicle.requirePart(control).spec() instanceof PartSpec.Switch s
          && s.control() != PartSpec.Control.KEY
          && s.contacts().size() == 1) {
        return Harness.at(control, s.contacts().get(0).b());
      }
    }
    throw new Problem("circuit", circuit.id(), PatternWords.inUse().say("problem.tap"));
  }
}
