package loopwright.knowledge;

/** What happened to the vehicle before the complaint; failure rates depend on it. */
public enum Context {
  /** Newly wired, never worked yet. */
  FRESH_BUILD("fresh-build"),
  /** Worked until it didn't. */
  IN_SERVICE("in-service"),
  /** Somebody just worked on it. */
  AFTER_WORK("after-work");

  private final String word;

  Context(String word) {
    this.word = word;
  }

  /** The word used in files, options and lines. */
  public String word() {
    return word;
  }

  /**
   * The context with this word.
   *
   * @throws IllegalArgumentException naming the accepted words
   */
  public static Context ofWord(String word) {
    for (Context context : values()) {
      if (context.word.equals(word)) {
        return context;
      }
    }
    throw new IllegalArgumentException(
        "'" + word + "' is not a context: fresh-build, in-service or after-work");
  }
}
