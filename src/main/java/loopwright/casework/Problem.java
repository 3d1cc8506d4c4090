package loopwright.casework;

/**
 * A line or an entry that could not be accepted. Nothing has changed.
 *
 * <p>The message names the field, the value that came in and what is accepted.
 */
public final class Problem extends Exception {
  private static final long serialVersionUID = 1L;
  private final String field;
  private final String named;
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
    this(field, field, value, accepted);
  }

  /**
   * Makes a problem whose field is called otherwise in the language in use.
   *
   * @param field what was wrong, the same in every language
   * @param named what a person calls it
   * @param value what came in
   * @param accepted what is accepted, in words
   */
  public Problem(String field, String named, String value, String accepted) {
    super(named + " '" + value + "': " + accepted);
    this.field = field;
    this.named = named;
    this.value = value;
    this.accepted = accepted;
  }

  /** What was wrong, the same in every language: programs and codes to end with go by it. */
  public String field() {
    return field;
  }

  /** What was wrong, as a person calls it. */
  public String named() {
    return named;
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
