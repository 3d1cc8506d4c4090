package loopwright.model;

/** The kinds of part a vehicle is made of, with the word that files and the fault tables use. */
public enum PartKind {
  BATTERY("battery"),
  WIRE("wire"),
  STRAP("strap"),
  FUSE("fuse"),
  SWITCH("switch"),
  RELAY("relay"),
  LAMP("lamp"),
  DUAL_LAMP("dual-lamp"),
  LED("led"),
  DIODE("diode"),
  MOTOR("motor"),
  HEATER("heater"),
  SOLENOID("solenoid"),
  HORN("horn"),
  ELECTRONICS("electronics"),
  SENDER("sender"),
  DRIVER("driver"),
  CONNECTOR("connector"),
  SPLICE("splice"),
  GROUND("ground"),
  BODY("body");

  private final String word;

  PartKind(String word) {
    this.word = word;
  }

  /** The word used in vehicle files and in the fault tables. */
  public String word() {
    return word;
  }

  /** What it is called in the language in use. */
  public String said() {
    return Words.say("kind." + word);
  }

  /**
   * Whether a part of this kind keeps its own contacts when it is taken out, so that both leads on
   * them see it alone. A battery that is apart still has its posts in the vehicle's clamps.
   */
  public boolean comesOutWhole() {
    return isLoad() || this == FUSE || this == RELAY || this == DIODE;
  }

  /** Whether parts of this kind do the work a circuit is there for. */
  public boolean isLoad() {
    return switch (this) {
      case LAMP, DUAL_LAMP, LED, MOTOR, HEATER, SOLENOID, HORN, ELECTRONICS -> true;
      default -> false;
    };
  }
}
