package loopwright.solver;

import java.util.Random;
import loopwright.model.Spread;

/** Draws of all values of a variant inside their spreads. */
public final class Draws {
  private Draws() {}

  /** Even draws, or every value at one end or the other. */
  public static Values of(Variant variant, Random random, boolean atTheEnds) {
    if (!atTheEnds) {
      return Values.drawn(variant, random);
    }
    Values values = Values.typical(variant);
    for (int e = 0; e < variant.size(); e++) {
      Spread[] spreads = variant.element(e).values();
      for (int k = 0; k < spreads.length; k++) {
        values.set(e, k, random.nextBoolean() ? spreads[k].low() : spreads[k].high());
      }
    }
    return values;
  }
}
