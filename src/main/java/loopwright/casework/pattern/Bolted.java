package loopwright.casework.pattern;

import loopwright.model.Estimate;

/** What is bolted rather than pushed on: battery cables, engine grounds, main fuses. */
final class Bolted {
  /** One bolted end of a cable, in ohms. Common practice. */
  static final Estimate END = Estimate.between(0.00005, 0.0002, 0.0006);

  /** A cable lug on bare metal, both faces bright, in ohms. Common practice. */
  static final Estimate JOINT = Estimate.between(0.0001, 0.0002, 0.001);

  /** A bolted main fuse without clips, in ohms. Common practice. */
  static final Estimate MAIN_FUSE = Estimate.between(0.0005, 0.001, 0.002);

  private Bolted() {}

  /** Copper to begin with for a cable that cranks, six amperes a square millimetre. */
  static double mm2(double amps) {
    return amps / 6;
  }
}
