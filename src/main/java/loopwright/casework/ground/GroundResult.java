package loopwright.casework.ground;

/**
 * What a reading said about a ground.
 *
 * @param verdict the verdict
 * @param words the verdict in one sentence, with what is left of milliohms or millivolts and the
 *     limit
 * @param next what to do now, in a sentence or two; empty if nothing
 */
public record GroundResult(Verdict verdict, String words, String next) {

  /** Whether the limit is kept. */
  public enum Verdict {
    GOOD,
    BAD,
    CANT_TELL
  }
}
