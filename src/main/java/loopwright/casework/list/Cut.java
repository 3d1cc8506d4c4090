package loopwright.casework.list;

import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;

/**
 * One wire or strap to cut.
 *
 * @param part the wire
 * @param spec its size, colour, length, loom
 * @param metres length to cut in metres, allowance included
 * @param from one end
 * @param to the other
 */
public record Cut(Part part, PartSpec.Wire spec, double metres, End from, End to) {

  /**
   * One end of it.
   *
   * @param at the terminal it lies on
   * @param on the part that terminal belongs to
   * @param fitting what is put on the end
   * @param wires how many wires and straps end on that terminal
   */
  public record End(TerminalRef at, Part on, Fitting fitting, int wires) {}

  /** Whether its length is known only within limits and the upper one was taken. */
  boolean byUpperEnd() {
    return Allowance.reckoned(spec.metres()) > spec.metres().about();
  }

  /** Copper area in mm2. */
  double mm2() {
    return spec.size().mm2();
  }
}
