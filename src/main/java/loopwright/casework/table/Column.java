package loopwright.casework.table;

/** The columns of all tables; each {@link Table} has some of them. */
public enum Column {
  /** The short name; another text renames everywhere. */
  ID,
  NAME,
  /** The word of a {@link loopwright.model.PartKind}. */
  KIND,
  /** The terminal a wire begins on. */
  FROM,
  /** The terminal a wire ends on. */
  TO,
  SIZE,
  /** A wire's length in metres. */
  METRES,
  COLOUR,
  LOOM,
  /** Rest voltage in volts. */
  VOLTS,
  /** What a battery holds in ampere-hours. */
  AMP_HOURS,
  /** What charges it at idle in amperes. */
  CHARGE_IDLE_AMPS,
  /** What charges it at working speed in amperes. */
  CHARGE_AMPS,
  /** Rating, or current at the system voltage, in amperes. */
  AMPS,
  /** Power in watts; of two filaments each with its name. */
  WATTS,
  /** Current while it stands in amperes. */
  STALL_AMPS,
  /** Voltage at which a lamp takes its watts. */
  RATED_VOLTS,
  /** Volts at which a diode conducts. */
  FORWARD_VOLTS,
  /** Make contact or changeover. */
  CONTACTS,
  COIL_OHMS,
  PULL_IN_VOLTS,
  DROP_OUT_VOLTS,
  /** Contact rating in amperes. */
  CONTACT_AMPS,
  /** Resistance of a closed contact in ohms. */
  CONTACT_OHMS,
  /** What lies across a relay's coil. */
  SUPPRESSION,
  /** What moves a switch. */
  CONTROL,
  /** Positions, the one at rest first. */
  POSITIONS,
  /** Terminals, cavities or legs. */
  TERMINALS,
  /** Which terminals are joined in which positions. */
  CLOSED,
  /** Whether it springs back. */
  MOMENTARY,
  /** Resistance in ohms. */
  OHMS,
  /** When a driver is on, in words. */
  COMMAND,
  /** Terminals of other parts that touch its own without a wire. */
  TOUCHES,
  /** What is written on it on the vehicle. */
  LABEL,
  WHERE,
  /** Terminals that are meant to stay free. */
  FREE,
  /** Loads of a circuit. */
  LOADS,
  /** How the controls must stand for a circuit. */
  ON,
  NOTE
}
