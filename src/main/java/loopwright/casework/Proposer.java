package loopwright.casework;

/** Who proposes a check first. */
public enum Proposer {
  /** The program, as in any case. */
  PROGRAM("program"),
  /** The learner; what the program would propose stays hidden until then. */
  LEARNER("learner");

  private final String word;

  Proposer(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
