package loopwright.knowledge;

import loopwright.model.PartSpec;

/** Motors that crank an engine: they have limits of their own and, as a rule, no fuse. */
public final class Starters {

  /** Power from which a motor counts as a starter, in watts. Common practice. */
  public static final double WATTS = 400;

  private Starters() {}

  /** Whether a part is a motor that cranks an engine. */
  public static boolean is(PartSpec spec, int systemVolts) {
    return spec instanceof PartSpec.Motor m && m.amps().about() * systemVolts > WATTS;
  }
}
