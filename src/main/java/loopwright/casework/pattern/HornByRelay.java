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
    double amps = a.amps("power");
    Harness.Fused fuse = h.fuse(feed(h, a), amps + h.coilAmps(), h.words("part.fuse"));
    String s = wire(h, a, fuse, fuse.load(), amps);
    h.circuit(
        Names.capital(a.words("name")),
        List.of(LoadRef.of(horn(h))),
        List.of(fuse.on(), Map.of(s, "pressed")));
  }

  /** The horn that was added last. */
  static String horn(Harness h) {
    return h.vehicle().parts().stream()
        .filter(p -> p.kind() == PartKind.HORN)
        .reduce((first, second) -> second)
        .orElseThrow()
        .id();
  }

  /**
   * Relay, horn and button, fed from a point behind their fuse.
   *
   * @return id of the button
   */
  static String wire(Harness h, Answers a, Harness.Fused fuse, TerminalRef from, double amps)
      throws Problem {
    String k = h.relay(h.words("part.relay"), Harness.Coil.BY_SWITCH, "relay", amps);
    String horn =
        h.add(
            "H",
            a.words("name"),
            new PartSpec.PlainLoad(PartKind.HORN, Estimate.of(amps)),
            "front",
            h.why(a, "power"));
    Run feed = h.run(fuse.side(), fuse.amps());
    h.wire(feed, from, Harness.at(k, "30"), a.number("to-relay"), h.words("wire.to-relay"));
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
    h.wire(
        h.run(Side.GROUND, 0),
        Harness.at(s, "out"),
        h.ground(a.words("coil-ground"), "relay"),
        0.5,
        h.words("wire.button-ground"));
    h.note("horn.note");
    return s;
  }
}
