package loopwright.solver;

/**
 * Solves the linear step of an operating point: conductances between nodes, a current into each
 * node, volts out. Two implementations agree to the last digits that the arithmetic allows: {@link
 * FullKernel} factors anew each time, {@link LowRankKernel} changes one factorisation.
 */
interface Kernel {

  /**
   * Takes the conductances of one linear step.
   *
   * @param variant the elements
   * @param siemens conductance by element; 0 where it carries no current
   */
  void load(Variant variant, double[] siemens);

  /** Whether the conductances loaded last are these very ones. */
  boolean holds(double[] siemens);

  /**
   * Node volts for the currents that flow into the nodes.
   *
   * @param amps current into each node in amperes
   * @return volts by node against the reference
   */
  double[] solve(double[] amps);

  /**
   * Node volts for one ampere that flows into one node and out of the other: the column that gives
   * sensitivities (Director and Rohrer 1969, from memory) and the resistance seen by a meter.
   */
  double[] column(int into, int outOf);
}
