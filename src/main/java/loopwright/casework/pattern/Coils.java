package loopwright.casework.pattern;

import loopwright.casework.Problem;

/** The wires of a relay's coil. */
final class Coils {
  private Coils() {}

  /** Coil fuse, switch, coil, ground. */
  static void bySwitch(Harness h, Answers a, Harness.Fused coil, String s, String relay)
      throws Problem {
    h.wire(coil, Harness.at(s, "in"), a.number("to-switch"), h.words("wire.to-switch"));
    h.wire(
        h.run(Side.CONTROL, coil.amps()),
        Harness.at(s, "out"),
        Harness.at(relay, "86"),
        a.number("to-switch"),
        h.words("wire.to-coil"));
    grounded(h, a, coil.amps(), relay);
  }

  /**
   * The coil's other end to ground.
   *
   * @param fuse rating of the coil's fuse in amperes; 0 where there is none
   */
  static void grounded(Harness h, Answers a, double fuse, String relay) {
    h.smallGround(
        a.words("coil-ground"), fuse, Harness.at(relay, "85"), h.words("wire.coil-ground"));
  }
}
