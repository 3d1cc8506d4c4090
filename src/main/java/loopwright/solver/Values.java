package loopwright.solver;

import java.util.Arrays;
import java.util.Random;
import loopwright.model.Spread;

/**
 * One choice of value for every uncertain quantity of a variant's elements: the typical one, a
 * corner of the box of spreads, or a draw from it.
 */
public final class Values {
  // A row is shared with other choices until somebody sets a value in it.
  private final double[][] values;
  private boolean[] owned;

  private Values(double[][] values) {
    this.values = values;
  }

  /** Every value typical. */
  public static Values typical(Variant variant) {
    double[][] rows = Arrays.copyOf(variant.base().typicalRows(), variant.size());
    for (int e : variant.different()) {
      rows[e] = typicalRow(variant.element(e));
    }
    return new Values(rows);
  }

  /** The typical values of one element. */
  static double[] typicalRow(Element element) {
    Spread[] spreads = element.values();
    double[] row = new double[spreads.length];
    for (int k = 0; k < row.length; k++) {
      row[k] = spreads[k].typical();
    }
    return row;
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
        values.set(
            e,
            k,
            u < 0.5
                ? s.low() + 2 * u * (s.typical() - s.low())
                : s.typical() + (2 * u - 1) * (s.high() - s.typical()));
      }
    }
    return values;
  }

  /** A copy that can be changed without touching this one. */
  public Values copy() {
    owned = null;
    return new Values(values.clone());
  }

  /** These values, with typical ones for elements that the larger variant adds. */
  public Values extended(Variant larger) {
    double[][] rows = Arrays.copyOf(values, Math.max(values.length, larger.size()));
    for (int e = values.length; e < rows.length; e++) {
      rows[e] = typicalRow(larger.element(e));
    }
    owned = null;
    return new Values(rows);
  }

  /** The k-th value of an element. */
  public double get(int element, int k) {
    return values[element][k];
  }

  /** Sets the k-th value of an element. */
  public void set(int element, int k, double value) {
    if (owned == null) {
      owned = new boolean[values.length];
    }
    if (!owned[element]) {
      values[element] = values[element].clone();
      owned[element] = true;
    }
    values[element][k] = value;
  }

  /** Whether an element's values are the typical ones of a network, never set. */
  boolean typicalIn(Network network, int element) {
    return values[element] == network.typicalRows()[element];
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
