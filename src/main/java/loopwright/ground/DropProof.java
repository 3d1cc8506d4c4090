package loopwright.ground;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;

/**
 * How a ground is proven by the volts that it loses: what to switch on, where the leads go, what is
 * healthy, and between which readings it can't be told. All volts are those a meter without error
 * would read with red at the far end, their sign left out.
 *
 * @param ground the ground
 * @param setting how the controls stand
 * @param works the loads that must be at work, greatest current first: without current nothing is
 *     proven
 * @param red where the red lead goes
 * @param black where the black lead goes
 * @param amps current expected through it, in amperes
 * @param own what lies between the leads should have, in ohms
 * @param healthy volts that a sound vehicle shows: outer limits, and the typical value between them
 * @param limit what it is held against
 * @param goodBelow volts below which it is surely within its limit
 * @param badAbove volts above which it surely isn't
 * @param beside ids of other parts that the reading proves with it, since they lie beside it
 * @param without volts that it would read with the piece itself off, if others lie beside it
 * @param cranks whether the starter turns meanwhile
 * @param bounds which volts go with which resistance
 */
public record DropProof(
    Ground ground,
    Setting setting,
    List<LoadRef> works,
    TerminalRef red,
    TerminalRef black,
    double amps,
    Spread own,
    Spread healthy,
    Limit limit,
    double goodBelow,
    double badAbove,
    List<String> beside,
    OptionalDouble without,
    boolean cranks,
    DropBounds bounds) {

  /** Copies the lists. */
  public DropProof {
    Objects.requireNonNull(ground, "ground");
    Objects.requireNonNull(bounds, "bounds");
    works = List.copyOf(works);
    beside = List.copyOf(beside);
  }
}
