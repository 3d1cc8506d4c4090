package loopwright.diagnosis;

/** What the person saw. */
public enum ComplaintKind {
  DEAD("dead"),
  DIM("dim"),
  STUCK_ON("stuck on"),
  BLOWS_FUSE("blows its fuse"),
  WAKES_OTHER("wakes something else"),
  WORKS_SOMETIMES("works sometimes"),
  DRAINS_BATTERY("drains the battery");

  private final String words;

  ComplaintKind(String words) {
    this.words = words;
  }

  /** The words used on screens, in lines and files. */
  public String words() {
    return words;
  }
}
