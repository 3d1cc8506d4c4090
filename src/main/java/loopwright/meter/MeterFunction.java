package loopwright.meter;

/** What the meter is set to. */
public enum MeterFunction {
  /** Direct volts, shown in V or mV. */
  VOLTS_DC("volts"),
  /** Resistance, by the meter's own small test source. */
  OHMS("ohms"),
  /** Junction test: forward volts at about a milliampere. */
  DIODE("diode");

  private final String word;

  MeterFunction(String word) {
    this.word = word;
  }

  /** The word used in files and lines. */
  public String word() {
    return word;
  }
}
