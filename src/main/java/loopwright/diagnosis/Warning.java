package loopwright.diagnosis;

/** What the person smells, feels or sees that must end work under power at once. */
public enum Warning {
  /** Smoke, or a smell of burnt insulation. */
  SMOKE("smoke"),
  /** A wire or part too hot to touch that shouldn't be. */
  HEAT("heat"),
  /** A smell of fuel, or fuel spilled. */
  FUEL("fuel");

  private final String word;

  Warning(String word) {
    this.word = word;
  }

  /** The word used in lines and in the rules. */
  public String word() {
    return word;
  }
}
