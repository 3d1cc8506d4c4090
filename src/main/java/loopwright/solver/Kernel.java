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
   * @param lively numbers of the elements whose conductance may differ from the healthy state that
   *     a kernel was made from, ascending
   */
  void load(Variant variant, double[] siemens, int[] lively);

  /** Whether the conductances loaded last are these very ones. */
  boolean holds(double[] siemens);

  /**
   * Node volts with what is loaded.
   *
   * @param offset current of each element at no volts, in amperes from its first end to its second
   * @return volts by node against the reference
   */
  double[] solve(double[] offset);

  /**
   * Whether volts answer to Kirchhoff's current law with what is loaded. An answer of {@link
   * #solve} need not, if the change from the kernel's base was too great for its digits; it is
   * refined in place first where that helps.
   */
  boolean addsUp(double[] volts, double[] offset);

  /** Gives up the base for what is solved next, until another variant is loaded. */
  void factorAnew();

  /**
   * Node volts for one ampere that flows into one node and out of the other: the column that gives
   * sensitivities (Director and Rohrer 1969, from memory) and the resistance seen by a meter.
   */
  double[] column(int into, int outOf);
}
