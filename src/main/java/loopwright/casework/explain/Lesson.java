package loopwright.casework.explain;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;

/**
 * A page: its controls, the board that they make, and what is told of it.
 *
 * @param id its name, and that of its texts
 * @param controls what can be moved
 * @param builder connects a board as the controls stand
 * @param teller takes the figures of a board
 */
record Lesson(
    String id,
    List<Control> controls,
    BiFunction<Board, Stand, Board> builder,
    BiConsumer<Probe, Stand> teller) {
  Lesson {
    controls = List.copyOf(controls);
  }
}
