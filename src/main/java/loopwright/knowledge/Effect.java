package loopwright.knowledge;

import loopwright.model.Spread;

/**
 * What a failure mode does to the network, in terms of the part's own elements (see {@code
 * loopwright.solver.Network} for the roles each kind of part has). In the tables a role may end in
 * {@code *}: the mode then stands once for each matching element.
 */
public sealed interface Effect {

  /** The element carries no current at all. */
  record Open(String role) implements Effect {}

  /**
   * Resistance in series with the element, anywhere between the limits: a corroded or loose joint.
   *
   * @param lowOhms least added resistance in ohms
   * @param highOhms greatest, in ohms
   */
  record Series(String role, double lowOhms, double highOhms) implements Effect {}

  /** The element's resistance is this instead of its own, in ohms. */
  record Ohms(String role, Spread ohms) implements Effect {}

  /** The element's rated value (lamp watts, fuse amps, battery volts) times a factor. */
  record Scale(String role, Spread factor) implements Effect {}

  /** Where the far end of an unwanted connection lies. */
  enum Target {
    /** The nearest body metal. */
    GROUND,
    /** The battery's feed post, by way of a live neighbour. */
    FEED,
    /** Another terminal of the same part. */
    TERMINAL,
    /** Each wire of the same loom. */
    NEIGHBOUR
  }

  /**
   * An unwanted connection.
   *
   * @param terminal terminal of the part it starts at; {@code from} or {@code to} for a wire
   * @param target where it leads
   * @param otherTerminal the other terminal for {@link Target#TERMINAL}, else empty
   * @param ohms its resistance in ohms
   */
  record Bridge(String terminal, Target target, String otherTerminal, Spread ohms)
      implements Effect {}

  /** A contact that no longer moves. */
  record Stuck(String role, boolean closed) implements Effect {}

  /** A junction fitted the wrong way round. */
  record Reversed(String role) implements Effect {}

  /** The wires of two terminals changed over. */
  record Swapped(String terminal, String otherTerminal) implements Effect {}
}
