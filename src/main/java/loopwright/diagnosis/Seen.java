package loopwright.diagnosis;

/** What a person can see, hear or feel when asked to look. */
public enum Seen {
  /** A load works as it should. */
  ON("on"),
  /** A load works weakly. */
  DIM("dim"),
  /** A load does nothing. */
  OFF("off"),
  /** A relay or solenoid is heard to move when it is switched. */
  CLICKS("clicks"),
  /** Nothing is heard. */
  SILENT("silent"),
  /** A fuse strip is visibly broken, or the fuse is missing. */
  BROKEN("broken"),
  /** A fuse strip looks whole; that clears nothing. */
  WHOLE("whole"),
  /** A load flickers, goes out or comes back while something is moved. */
  CHANGES("changes"),
  /** A load stays as it is while something is moved. */
  STEADY("steady");

  private final String word;

  Seen(String word) {
    this.word = word;
  }

  /** The word used in lines and files. */
  public String word() {
    return word;
  }
}
