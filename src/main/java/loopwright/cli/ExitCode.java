package loopwright.cli;

/** How a command ended, as the number given back to the shell. */
public enum ExitCode {
  /** Done; a case was ended or kept. */
  DONE(0, "ended, or kept to go on with later"),
  /** The program failed; a case is kept as far as it was answered. */
  FAILED(1, "the program failed; the case is kept as far as answered"),
  /** The command line, the complaint or a name on it was not understood. */
  USAGE(2, "the command line was not understood"),
  /** The vehicle can't be used. */
  VEHICLE(3, "the vehicle can't be read or has defects"),
  /** The case can't be opened. */
  CASE(4, "the case can't be opened or read");

  private final int number;
  private final String words;

  ExitCode(int number, String words) {
    this.number = number;
    this.words = words;
  }

  /** The number. */
  public int number() {
    return number;
  }

  /** What it means. */
  public String words() {
    return words;
  }
}
