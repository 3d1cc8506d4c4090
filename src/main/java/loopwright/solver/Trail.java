package loopwright.solver;

import java.util.List;

/**
 * The volts at which a search settled, event after event, so that the same search in an edited
 * network can take them up again: where they still answer to Kirchhoff's current law nothing needs
 * to be solved. Immutable.
 */
public final class Trail {

  /** Nothing to take up. */
  public static final Trail NONE = new Trail(List.of(), false);

  private final List<double[]> settled;
  private final boolean certain;

  private Trail(List<double[]> settled, boolean certain) {
    this.settled = List.copyOf(settled);
    this.certain = certain;
  }

  /** Of a search that settled at these volts. */
  static Trail of(List<double[]> settled) {
    return new Trail(settled, false);
  }

  /** The same in the numbers of another network. */
  public Trail in(Renumbering numbers) {
    return new Trail(numbers.volts(settled), numbers.alike());
  }

  /** Whether it is one of the very same network, so that nothing need be looked at again. */
  boolean certain() {
    return certain;
  }

  List<double[]> settled() {
    return settled;
  }
}
