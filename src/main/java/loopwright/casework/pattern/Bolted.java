package loopwright.casework.pattern;

import java.util.List;
import java.util.Optional;
import loopwright.model.Estimate;
import loopwright.model.PartSpec;

/** What is bolted rather than pushed on: battery cables, engine grounds, main fuses. */
final class Bolted {
  /** One bolted end of a cable, in ohms. Common practice. */
  static final Estimate END = Estimate.between(0.00005, 0.0002, 0.0006);

  /** A cable lug on bare metal, both faces bright, in ohms. Common practice. */
  static final Estimate JOINT = Estimate.between(0.0001, 0.0002, 0.001);

  /** A bolted main fuse without clips, in ohms. Common practice. */
  static final Estimate MAIN_FUSE = Estimate.between(0.0005, 0.001, 0.002);

  private Bolted() {}

  /** A bar with a bolt for what feeds it and one more, to which others are added. */
  static PartSpec bar() {
    return new PartSpec.Splice(
        List.of("in", "a"), Optional.of(Estimate.between(0.0001, 0.0003, 0.001)));
  }

  /** Copper to begin with for a cable that cranks, six amperes a square millimetre. */
  static double mm2(double amps) {
    return amps / 6;
  }
}
