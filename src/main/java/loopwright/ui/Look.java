package loopwright.ui;

/** The colours of the window. */
public enum Look {
  /** Warm paper and ink, by day. */
  PAPER("paper.css"),
  /** Dim amber on near-black, by night. */
  NIGHT("night.css"),
  /** Black and white; only the red lead keeps its colour. */
  CONTRAST("contrast.css");

  private final String sheet;

  Look(String sheet) {
    this.sheet = sheet;
  }

  /** Name of its style sheet in the ui resources. */
  public String sheet() {
    return sheet;
  }

  /** The look after this one. */
  public Look next() {
    return values()[(ordinal() + 1) % values().length];
  }

  /** The style class that the root carries. */
  public String styleClass() {
    return "look-" + sheet.substring(0, sheet.indexOf('.'));
  }
}
