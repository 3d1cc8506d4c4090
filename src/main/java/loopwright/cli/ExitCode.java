package loopwright.cli;

/** How a command ended, as the number given back to the shell. */
public enum ExitCode {
  /** Done; a case was ended or kept. */
  DONE(0),
  /** The program failed; a case is kept as far as it was answered. */
  FAILED(1),
  /** The command line, the complaint or a name on it was not understood. */
  USAGE(2),
  /** The vehicle can't be used. */
  VEHICLE(3),
  /** The case can't be opened. */
  CASE(4);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  /** The number. */
  public int number() {
    return number;
  }
}
