package loopwright.knowledge;

/** What makes a fault that comes and goes show itself, while somebody watches. */
public enum Provocation {
  /** The part is moved by hand. */
  MOVED("moved"),
  /** The part is warmed, no hotter than a hand bears. */
  WARM("warm"),
  /** The circuit stays on under its own load for ten minutes. */
  LOAD("load");

  private final String word;

  Provocation(String word) {
    this.word = word;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }
}
