package loopwright.knowledge;

/** How many wires may end together. */
public final class WireEnds {

  /** Wires that one crimp takes. Common practice: one is usual, two of like size may do. */
  public static final int IN_ONE_CRIMP = 2;

  /** Rings that a stud takes: four, by FAA-H-8083-31 and AC 43.13-1B (from memory). */
  public static final int ON_A_STUD = 4;

  private WireEnds() {}
}
