package loopwright.casework.pattern;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.knowledge.PatternValues;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;

/**
 * A starter whose relay coil returns through the clutch switch or the neutral switch:
 *
 * <pre>
 * battery -- cable -- 30 (solenoid) 87 -- starter -- engine -- ground cable -- battery
 * bar -- fuse -- 30 (start relay) 87 -- 86 (solenoid) 85 -- engine
 * coil fuse -- button or key -- 86 (start relay) 85 --+-- clutch switch -- ground
 *                                                     +-- diode --+-- neutral switch -- engine
 * coil fuse -- neutral lamp --------------------------------------+
 * </pre>
 *
 * Without the diode the pressed clutch would light the neutral lamp.
 */
final class StarterWithInterlock extends Pattern {
  private static final String ENGINE = "engine";

  StarterWithInterlock() {
    super("starter");
  }

  @Override
  boolean cranks() {
    return true;
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "starter", 600);
    ask.power("solenoid", "starter-solenoid", 30);
    boolean key = ask.existing().start().isPresent();
    ask.choice(
        "by",
        key ? List.of("key", "button") : List.of("button"),
        key ? "key" : "button",
        PatternValues.COMMON_PRACTICE);
    ask.yes("clutch", true);
    ask.yes("neutral", true);
    if (!ask.is("neutral", Questions.NO)) {
      ask.yes("neutral-lamp", true);
    }
    ask.metres("to-starter", 1);
    ask.metres("engine-ground", 0.6);
    ask.metres("to-relay", 0.5);
    ask.metres("to-button", 1);
    ask.metres("to-switches", 1.5);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    TerminalRef engine = engine(h, a);
    String motor = starter(h, a, engine);
    String solenoid = motorSide(h, a, engine, motor);
    Existing.Feed hot = feed(h, false);
    double pull = a.amps("solenoid");
    Harness.Fused fuse = h.fuse(hot, pull, h.words("part.fuse"));
    String k = h.relay(h.words("part.relay"), Harness.Coil.BY_SWITCH, "relay", pull);
    h.wire(fuse, Harness.at(k, "30"), a.number("to-relay"), h.words("wire.to-relay"));
    h.wire(
        h.run(Side.SWITCHED, fuse.amps()),
        Harness.at(k, "87"),
        Harness.at(solenoid, "86"),
        a.number("to-starter"),
        h.words("starter.wire.to-solenoid"));
    Map<String, String> on = new LinkedHashMap<>(command(h, a, k));
    interlock(h, a, k, engine, motor, on);
    h.note("starter.note");
  }

  /** The engine as a piece of metal, with a ground cable of its own to the battery. */
  private static TerminalRef engine(Harness h, Answers a) throws Problem {
    String called = h.basis().words().say("part.engine");
    Optional<Part> there =
        h.vehicle().parts().stream()
            .filter(p -> p.kind() == PartKind.BODY && p.name().equals(called))
            .findFirst();
    String body =
        there
            .map(Part::id)
            .orElseGet(() -> h.add("ENG", called, new PartSpec.Body(), "", h.words("why.engine")));
    String bolt =
        h.add(
            "G",
            h.words("starter.ground"),
            new PartSpec.Ground(Optional.of(Bolted.JOINT)),
            "engine",
            h.words("why.bolted"));
    h.join(Harness.at(bolt, "metal"), Harness.at(body, "metal"));
    h.cable(
        PartKind.STRAP,
        h.run(Side.GROUND, 0, Bolted.mm2(a.amps("power"))),
        h.vehicle().groundedPost(),
        Harness.at(bolt, "lug"),
        a.number("engine-ground"),
        h.words("starter.wire.engine-ground"),
        Optional.of(Bolted.END));
    return Harness.at(body, "metal");
  }

  private static String starter(Harness h, Answers a, TerminalRef engine) throws Problem {
    String motor =
        h.add(
            "M",
            h.words("starter.motor"),
            new PartSpec.Motor(Estimate.of(a.amps("power")), Optional.empty()),
            ENGINE,
            h.why(a, "power"));
    h.join(Harness.at(motor, "out"), engine);
    return motor;
  }

  private static String motorSide(Harness h, Answers a, TerminalRef engine, String motor)
      throws Problem {
    double ohms = Math.max(0.5, h.volts() * 1.05 / a.amps("solenoid"));
    double contact = 0.0006 * h.volts() / 12;
    String solenoid =
        h.add(
            "K",
            h.words("starter.solenoid"),
            new PartSpec.Relay(
                false,
                Optional.of(Estimate.of(ohms)),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Estimate.between(contact / 3, contact, contact * 2.5)),
                h.diode(),
                Optional.of(2 * a.amps("power"))),
            ENGINE,
            h.why(a, "solenoid") + " " + h.words("starter.why.solenoid"));
    h.join(Harness.at(solenoid, "85"), engine);
    Run cable = h.run(Side.HOT, 0, Bolted.mm2(a.amps("power")));
    h.cable(
        PartKind.WIRE,
        cable,
        h.vehicle().feedPost(),
        Harness.at(solenoid, "30"),
        a.number("to-starter"),
        h.words("starter.wire.battery"),
        Optional.of(Bolted.END));
    h.cable(
        PartKind.WIRE,
        cable,
        Harness.at(solenoid, "87"),
        Harness.at(motor, "in"),
        0.2,
        h.words("starter.wire.motor"),
        Optional.of(Bolted.END));
    h.tell("starter.told.unfused");
    return solenoid;
  }

  /** What feeds the start relay's coil, and how it must stand. */
  private static Map<String, String> command(Harness h, Answers a, String relay) throws Problem {
    Map<String, String> on = new LinkedHashMap<>();
    Run control = h.run(Side.CONTROL, 5);
    if (a.is("by", "key")) {
      Feed start = h.existing().start().orElseThrow();
      Harness.Fused fuse = h.fuse(start, 5, h.coilAmps(), h.words("starter.start-fuse"));
      h.wire(
          control,
          fuse.load(),
          Harness.at(relay, "86"),
          a.number("to-button"),
          h.words("wire.to-coil"));
      on.putAll(start.on());
      return on;
    }
    Harness.Fused coil = h.coilFuse(feed(h, true));
    String button =
        h.plainSwitch(
            h.words("part.button"),
            PartSpec.Control.MANUAL,
            "up",
            "pressed",
            false,
            true,
            h.coilAmps(),
            "dash");
    h.wire(coil, Harness.at(button, "in"), a.number("to-button"), h.words("wire.to-button"));
    h.wire(
        control,
        Harness.at(button, "out"),
        Harness.at(relay, "86"),
        a.number("to-button"),
        h.words("wire.to-coil"));
    on.putAll(coil.on());
    on.put(button, "pressed");
    return on;
  }

  private static void interlock(
      Harness h, Answers a, String relay, TerminalRef engine, String motor, Map<String, String> on)
      throws Problem {
    boolean clutch = a.is("clutch", Questions.YES);
    boolean neutral = a.is("neutral", Questions.YES);
    boolean lamp = neutral && a.is("neutral-lamp", Questions.YES);
    List<LoadRef> load = List.of(LoadRef.of(motor));
    TerminalRef coil = Harness.at(relay, "85");
    Run back = h.run(Side.CONTROL, 0);
    if (neutral) {
      String ns =
          h.plainSwitch(
              h.basis().words().say("part.neutral-switch"),
              PartSpec.Control.NEUTRAL,
              "in-gear",
              "neutral",
              false,
              false,
              h.coilAmps(),
              "gearbox");
      h.join(Harness.at(ns, "out"), engine);
      TerminalRef to = Harness.at(ns, "in");
      if (clutch || lamp) {
        to = diode(h, coil, to, back, a.number("to-switches"));
      } else {
        h.wire(back, coil, to, a.number("to-switches"), h.words("starter.wire.to-neutral"));
      }
      Map<String, String> also = new LinkedHashMap<>(on);
      also.put(ns, "neutral");
      h.circuit(h.words("starter.circuit.neutral"), load, List.of(also));
      if (lamp) {
        neutralLamp(h, a, ns);
      }
    }
    if (clutch) {
      String cs =
          h.plainSwitch(
              h.basis().words().say("part.clutch-switch"),
              PartSpec.Control.CLUTCH,
              "up",
              "pressed",
              false,
              true,
              h.coilAmps(),
              "pedals");
      h.wire(
          back,
          coil,
          Harness.at(cs, "in"),
          a.number("to-switches"),
          h.words("starter.wire.to-clutch"));
      h.smallGround(
          a.words("coil-ground"), 0, Harness.at(cs, "out"), h.words("starter.wire.clutch-ground"));
      Map<String, String> also = new LinkedHashMap<>(on);
      also.put(cs, "pressed");
      h.circuit(h.words("starter.circuit.clutch"), load, List.of(also));
    }
    if (!clutch && !neutral) {
      Coils.grounded(h, a, 0, relay);
      h.circuit(Names.capital(a.words("name")), load, List.of(on));
      h.tell("starter.told.no-interlock");
    }
  }

  /** The isolating diode: it lets current from the coil to the neutral switch, and none back. */
  private static TerminalRef diode(
      Harness h, TerminalRef coil, TerminalRef neutral, Run run, double metres) {
    String d =
        h.add(
            "D",
            h.words("starter.diode"),
            new PartSpec.Diode(Optional.empty()),
            "loom",
            h.words(h.negativeGround() ? "starter.why.diode" : "starter.why.diode-positive"));
    String near = h.negativeGround() ? "anode" : "cathode";
    String far = h.negativeGround() ? "cathode" : "anode";
    h.wire(run, coil, Harness.at(d, near), metres / 2, h.words("starter.wire.to-diode"));
    h.wire(run, Harness.at(d, far), neutral, metres / 2, h.words("starter.wire.to-neutral"));
    return neutral;
  }

  private record Lead(TerminalRef at, double fuse, Side side, Map<String, String> on) {}

  /**
   * What feeds the neutral lamp: the key's own terminal where its fuse is small. Behind a main
   * relay the lamp's feed could die while the key cranks; the start relay would then find ground
   * backwards through the lamp, in gear.
   */
  private static Lead lampFeed(Harness h) throws Problem {
    Optional<Feed> key = h.existing().keyTerminal();
    double rating = key.isPresent() ? key.get().fuse().orElse(100) : 100;
    if (rating <= 7.5) {
      return new Lead(key.get().at(), rating, Side.KEYED, key.get().on());
    }
    Harness.Fused fuse = h.coilFuse(feed(h, true));
    return new Lead(fuse.load(), fuse.amps(), fuse.side(), fuse.on());
  }

  private static void neutralLamp(Harness h, Answers a, String ns) throws Problem {
    Lead lead = lampFeed(h);
    String lamp = h.tellTale(h.basis().words().say("part.neutral-lamp"));
    h.wire(
        h.run(lead.side(), lead.fuse()),
        lead.at(),
        Harness.at(lamp, "in"),
        a.number("to-button"),
        h.words("wire.to-tell-tale"));
    h.wire(
        h.run(Side.CONTROL, lead.fuse()),
        Harness.at(lamp, "out"),
        Harness.at(ns, "in"),
        a.number("to-switches"),
        h.words("starter.wire.lamp-to-neutral"));
    Map<String, String> on = new LinkedHashMap<>(lead.on());
    on.put(ns, "neutral");
    h.circuit(
        h.basis().words().say("starter.circuit.neutral-lamp"),
        List.of(LoadRef.of(lamp)),
        List.of(on));
  }
}
