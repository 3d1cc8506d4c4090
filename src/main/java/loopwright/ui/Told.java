package loopwright.ui;

/**
 * What came of something a person did.
 *
 * @param tone whether it went well
 * @param words what is told; may be empty
 */
public record Told(Tone tone, String words) {
  /** Nothing is told. */
  public static final Told NOTHING = plain("");

  /** Whether it went well. */
  public enum Tone {
    PLAIN,
    PROBLEM
  }

  /** It went well. */
  public static Told plain(String words) {
    return new Told(Tone.PLAIN, words);
  }

  /** It did not. */
  public static Told problem(String words) {
    return new Told(Tone.PROBLEM, words);
  }
}
