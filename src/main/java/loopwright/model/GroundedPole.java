package loopwright.model;

/** Which battery post is tied to the body. Both exist on older vehicles. */
public enum GroundedPole {
  NEGATIVE("negative"),
  POSITIVE("positive");

  private final String word;

  GroundedPole(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
