package loopwright.solver;

import java.util.Random;
import loopwright.model.Spread;

/**
 * One choice of value for every uncertain quantity of a variant's elements: the typical one, a
 * corner of the box of spreads, or a draw from it.
 */
public final class Values {
  private final double[][] values;

  private Values(double[][] values) {
    this.values = values;
  }

  /** Every value typical. */
  public static Values typical(Variant variant) {
    double[][] v = new double[variant.size()][];
    for (int e = 0; e < v.length; e++) {
      Spread[] spreads = variant.element(e).values();
      v[e] = new double[spreads.length];
      for (int k = 0; k < spreads.length; k++) {
        v[e][k] = spreads[k].typical();
      }
    }
    return new Values(v);
  }

  /**
   * Every value drawn from its spread: below and above the typical value with equal chance, evenly
   * within each side.
   */
  public static Values drawn(Variant variant, Random random) {
    Values values = typical(variant);
    for (int e = 0; e < values.values.length; e++) {
      Spread[] spreads = variant.element(e).values();
      for (int k = 0; k < spreads.length; k++) {
        Spread s = spreads[k];
        double u = random.nextDouble();
        values.values[e][k] =
            u < 0.5
                ? s.low() + 2 * u * (s.typical() - s.low())
                : s.typical() + (2 * u - 1) * (s.high() - s.typical());
      }
    }
    return values;
  }

  /** A copy that can be changed without touching this one. */
  public Values copy() {
    double[][] v = new double[values.length][];
    for (int e = 0; e < v.length; e++) {
      v[e] = values[e].clone();
    }
    return new Values(v);
  }

  /** These values, with typical ones for elements that the larger variant adds. */
  public Values extended(Variant larger) {
    Values all = typical(larger);
    System.arraycopy(values, 0, all.values, 0, Math.min(values.length, all.values.length));
    return all;
  }

  /** The k-th value of an element. */
  public double get(int element, int k) {
    return values[element][k];
  }

  /** Sets the k-th value of an element. */
  public void set(int element, int k, double value) {
    values[element][k] = value;
  }

  /** Number of values of an element. */
  public int count(int element) {
    return values[element].length;
  }

  /** Number of elements. */
  public int size() {
    return values.length;
  }
}
