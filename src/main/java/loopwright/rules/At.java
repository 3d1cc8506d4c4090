package loopwright.rules;

import java.util.Objects;
import loopwright.diagnosis.rulebook.Fact.CheckIdea;
import loopwright.diagnosis.rulebook.Fact.Piece;

/**
 * A check and a piece that a hand gets to in it. Stated by the session for every check, so that
 * rules about a place need not search all pieces.
 *
 * @param idea the check
 * @param tip what the hand brings there
 * @param piece the piece
 */
public record At(CheckIdea idea, Tip tip, Piece piece) {

  /** What the hand brings to a piece. */
  public enum Tip {
    /** The red lead, or the eye or hand itself where no lead is used. */
    RED,
    /** The black lead. */
    BLACK
  }

  /** Rejects missing parts. */
  public At {
    Objects.requireNonNull(idea, "idea");
    Objects.requireNonNull(tip, "tip");
    Objects.requireNonNull(piece, "piece");
  }
}
