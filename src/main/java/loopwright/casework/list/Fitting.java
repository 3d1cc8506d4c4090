package loopwright.casework.list;

import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartSpec;

/**
 * What is crimped or done to a wire's end, by what the end lies on. The model doesn't say what a
 * part's terminals look like, so this is what is usual (common practice); the part itself decides.
 */
public enum Fitting {
  /** A ring terminal under a nut or bolt. */
  RING("ring"),
  /** A 6.3 mm receptacle pushed on a blade. */
  BLADE("blade"),
  /** A 9.5 mm receptacle, for heavy wire on a relay, fuse holder or switch. */
  WIDE_BLADE("wide-blade"),
  /** A socket contact in a connector's housing on the feed side. */
  SOCKET("socket"),
  /** A pin contact in a connector's housing on the load side. */
  PIN("pin"),
  /** No terminal: stripped and joined. */
  JOINT("joint"),
  /** A lamp's holder: its lead or contact. */
  HOLDER("holder");

  /** Copper area in mm2 above which no 6.3 mm receptacle is made (10 AWG or 6 mm2). */
  static final double MOST_BLADE = 6.05;

  /** Copper area in mm2 above which no 9.5 mm receptacle is made (8 AWG or 10 mm2). */
  static final double MOST_WIDE_BLADE = 10.1;

  /** Rating in amperes above which fuses and relay contacts have studs. */
  private static final double STUDS_ABOVE = 80;

  private final String word;

  Fitting(String word) {
    this.word = word;
  }

  /** The word that phrases use. */
  String word() {
    return word;
  }

  /**
   * What is usual for a wire of a size on a terminal of a part.
   *
   * @param mm2 copper area in mm2
   * @param bars ids of the splices that are bars with studs
   */
  static Fitting of(Part on, String terminal, double mm2, Set<String> bars) {
    return switch (on.kind()) {
      case BATTERY, GROUND, BODY, STRAP -> RING;
      case CONNECTOR -> terminal.endsWith("a") ? SOCKET : PIN;
      case SPLICE -> bars.contains(on.id()) ? RING : JOINT;
      case DIODE, WIRE -> JOINT;
      case LAMP, DUAL_LAMP, LED -> HOLDER;
      case RELAY, FUSE, SWITCH -> studs(on.spec(), terminal) ? RING : blade(mm2);
      case MOTOR, HEATER, SOLENOID, HORN, ELECTRONICS, SENDER, DRIVER ->
          mm2 > MOST_BLADE ? RING : BLADE;
    };
  }

  private static Fitting blade(double mm2) {
    return mm2 > MOST_WIDE_BLADE ? RING : mm2 > MOST_BLADE ? WIDE_BLADE : BLADE;
  }

  private static boolean studs(PartSpec spec, String terminal) {
    if (spec instanceof PartSpec.Fuse fuse) {
      return fuse.amps() > STUDS_ABOVE;
    }
    return spec instanceof PartSpec.Relay relay
        && !terminal.startsWith("85")
        && !terminal.startsWith("86")
        && relay.amps().filter(a -> a > STUDS_ABOVE).isPresent();
  }

  /**
   * How far the end is stripped in mm (common practice; the terminal's maker decides).
   *
   * @param mm2 copper area in mm2
   */
  int stripMillimetres(double mm2) {
    return switch (this) {
      case SOCKET, PIN -> 5;
      case BLADE -> 6;
      case WIDE_BLADE, JOINT, HOLDER -> 8;
      case RING -> mm2 <= MOST_BLADE ? 7 : mm2 <= 16.5 ? 12 : mm2 <= 36 ? 16 : 20;
    };
  }
}
