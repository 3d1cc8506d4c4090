package loopwright.casework.pattern;

import loopwright.casework.Problem;

/** The wires of a relay's coil. */
final class Coils {
  private Coils() {}

  /** Coil fuse, switch, coil, ground. */
  static void bySwitch(Harness h, Answers a, Harness.Fused coil, String s, String relay)
      throws Problem {
    h.wire(
        h.run(coil.side(), coil.amps()),
        coil.load(),
        Harness.at(s, "in"),
        a.number("to-switch"),
        h.words("wire.to-switch"));
    Run control = h.run(Side.CONTROL, coil.amps());
    h.wire(
        control,
        Harness.at(s, "out"),
        Harness.at(relay, "86"),
        a.number("to-switch"),
        h.words("wire.to-coil"));
    grounded(h, a, coil, relay);
  }

  /** The coil's other end to ground. */
  static void grounded(Harness h, Answers a, Harness.Fused coil, String relay) {
    h.wire(
        h.run(Side.GROUND, coil.amps()),
        Harness.at(relay, "85"),
        h.ground(a.words("coil-ground"), "relay"),
        0.5,
        h.words("wire.coil-ground"));
  }
}
