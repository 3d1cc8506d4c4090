package loopwright.casework.pattern;

/** Which part of a circuit a wire belongs to; it decides its colour and how it is sized. */
enum Side {
  /** Before the load and live without any switch. */
  HOT("red"),
  /** Before the load and live with the key on. */
  KEYED("orange"),
  /** Before the load, behind its switch or relay. */
  SWITCHED("blue"),
  /** To a relay's coil and back: next to no current. */
  CONTROL("white"),
  /** From the load to the grounded post. */
  GROUND("black");

  private final String colour;

  Side(String colour) {
    this.colour = colour;
  }

  /** The colour by this program's own rule: one for each side, so that a look tells the side. */
  String colour() {
    return colour;
  }

  /** Whether it lies before the load. */
  boolean feeds() {
    return this == HOT || this == KEYED || this == SWITCHED;
  }
}
