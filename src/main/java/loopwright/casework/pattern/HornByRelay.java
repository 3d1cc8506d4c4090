package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import loopwright.casework.Problem;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;

/**
 * A horn whose relay is switched to ground:
 *
 * <pre>
 * bar -- fuse --+-- 30 (relay) 87 -- horn -- ground
 *               +-- 86 (coil)  85 -- button -- ground
 * </pre>
 */
final class HornByRelay extends Pattern {
  HornByRelay() {
    super("horn");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "horn", 25);
    ask.feed(Questions.HOT);
    ask.metres("to-relay", 0.3);
    ask.metres("to-load", 2);
    ask.metres("to-button", 1.2);
    ask.ground("ground");
    ask.metres("to-ground", 0.3);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    Harness.Fused fuse = h.fuse(feed(h, a), a.amps("power") + h.coilAmps(), h.words("part.fuse"));
    behind(h, a, fuse, fuse.load());
  }

  /** Relay, horn and button, fed from a point behind their fuse. */
  static void behind(Harness h, Answers a, Harness.Fused fuse, TerminalRef from) throws Problem {
    double amps = a.amps("power");
    String k = h.relay(h.words("part.relay"), Harness.Coil.BY_SWITCH, "relay", amps);
    String horn =
        h.add(
            "H",
            a.words("name"),
            new PartSpec.PlainLoad(PartKind.HORN, Estimate.of(amps)),
            "front",
            h.why(a, "power"));
    h.wire(
        h.run(fuse.side(), fuse.amps()),
        from,
        Harness.at(k, "30"),
        a.number("to-relay"),
        h.words("wire.to-relay"));
    h.wire(
        h.run(fuse.side(), fuse.amps()),
        Harness.at(k, "30"),
        Harness.at(k, "86"),
        0.1,
        h.words("wire.to-coil"));
    h.wire(
        h.run(Side.SWITCHED, fuse.amps()),
        Harness.at(k, "87"),
        Harness.at(horn, "in"),
        a.number("to-load"),
        h.words("wire.to-load"));
    h.wire(
        h.run(Side.GROUND, fuse.amps()),
        Harness.at(horn, "out"),
        h.ground(a.words("ground"), "front"),
        a.number("to-ground"),
        h.words("wire.ground"));
    String s =
        h.plainSwitch(
            h.words("part.button"),
            PartSpec.Control.MANUAL,
            "up",
            "pressed",
            false,
            true,
            h.coilAmps(),
            "wheel");
    h.wire(
        h.run(Side.CONTROL, 0),
        Harness.at(k, "85"),
        Harness.at(s, "in"),
        a.number("to-button"),
        h.words("wire.to-button"));
    h.smallGround(a.words("coil-ground"), 0, Harness.at(s, "out"), h.words("wire.button-ground"));
    h.note("horn.note");
    h.circuit(
        Names.capital(a.words("name")),
        List.of(LoadRef.of(horn)),
        List.of(fuse.on(), Map.of(s, "pressed")));
  }
}
