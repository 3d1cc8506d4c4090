package loopwright.ui.drawing;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.ui.drawing.LoopPlan.Box;
import loopwright.ui.drawing.LoopPlan.Piece;

/** Which piece a press means: the one under it, else the nearest within half a finger's breadth. */
final class Aim {
  /** 22 pixels at the normal size of text (WCAG 2.2, 2.5.5), in em. */
  static final double REACH = 22.0 / 16;

  /** What a press may be nearest to; a fold keeps its neighbours from answering for it. */
  private record Target(Box cell, Optional<Piece> piece) {}

  private Aim() {}

  /** The piece that a press at this place of the drawing takes. */
  static Optional<Piece> at(LoopPlan plan, double x, double y) {
    return Stream.concat(
            plan.allPieces().map(p -> new Target(p.cell(), Optional.of(p))),
            plan.folds().stream().map(f -> new Target(f.cell(), Optional.empty())))
        .filter(t -> t.cell().distance(x, y) <= REACH)
        .min(Comparator.comparingDouble(t -> t.cell().distance(x, y)))
        .flatMap(Target::piece);
  }
}
