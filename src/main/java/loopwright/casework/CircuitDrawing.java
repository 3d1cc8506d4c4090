package loopwright.casework;

import java.util.List;
import loopwright.model.Circuit;

/**
 * A circuit as it is drawn on paper: its loops in the setting in which it works, with what a
 * healthy vehicle shows, in words.
 *
 * @param circuit the circuit
 * @param on how the controls stand, a line each
 * @param loops the loops of its loads, then those of the coils that act on them; empty if no
 *     current flows in that setting
 * @param cautions what to be careful of, a sentence each
 */
public record CircuitDrawing(
    Circuit circuit, List<String> on, List<DrawnLoop> loops, List<String> cautions) {

  /** Copies the lists. */
  public CircuitDrawing {
    on = List.copyOf(on);
    loops = List.copyOf(loops);
    cautions = List.copyOf(cautions);
  }

  /**
   * One loop with its values.
   *
   * @param view the loop
   * @param amps about the current through what it is for
   * @param volts what each node shows against the grounded post, one for each stair
   * @param drops the most volts lost in each piece, or what its load takes, one for each piece
   */
  public record DrawnLoop(LoopView view, String amps, List<String> volts, List<String> drops) {
    /** Copies the lists. */
    public DrawnLoop {
      volts = List.copyOf(volts);
      drops = List.copyOf(drops);
    }
  }
}
