package loopwright.casework;

/**
 * A line or an entry that could not be accepted. Nothing has changed.
 *
 * <p>The message names the field, the value that came in and what is accepted.
 */
public final class Problem extends Exception {
  private static final long serialVersionUID = 1L;
  private final String field;
  private final String value;
  private final String accepted;

  /**
   * Makes a problem.
   *
   * @param field what was wrong, for instance {@code red}
   * @param value what came in
   * @param accepted what is accepted, in words
   */
  public Problem(String field, String value, String accepted) {
    super(field + " '" + value + "': " + accepted);
    this.field = field;
    this.value = value;
    this.accepted = accepted;
  }

  /** What was wrong. */
  public String field() {
    return field;
  }

  /** What came in. */
  public String value() {
    return value;
  }

  /** What is accepted. */
  public String accepted() {
    return accepted;
  }
}
