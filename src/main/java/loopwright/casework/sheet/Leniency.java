package loopwright.casework.sheet;

/** What a person may allow a wire list to leave open; without it such rows are refused. */
public enum Leniency {
  /** Parts that the vehicle doesn't have are added, their kind and values guessed by the name. */
  ADD_PARTS("parts"),
  /** A wire without a length gets a usual one with a wide spread. */
  USUAL_LENGTHS("lengths"),
  /** An empty cell under a filled one repeats it, as where cells had been merged. */
  REPEAT_ABOVE("merged");

  private final String word;

  Leniency(String word) {
    this.word = word;
  }

  /** The word it is asked for by. */
  public String word() {
    return word;
  }
}
