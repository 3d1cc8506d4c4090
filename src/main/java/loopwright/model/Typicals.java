package loopwright.model;

/**
 * Usual values of the trade for what an owner left empty, and the usual spread of what they wrote.
 * Implementations name a source for each row.
 */
public interface Typicals {

  /**
   * The usual value of a quantity of a kind of part.
   *
   * @param kind kind of part
   * @param quantity for instance {@code coilOhms}, {@code contactOhms}, {@code endOhms}
   * @param systemVolts 6, 12 or 24
   * @throws IllegalArgumentException if the tables have no such row
   */
  Spread usual(PartKind kind, String quantity, int systemVolts);

  /**
   * The share by which a stated value without limits may be off, for instance 0.1.
   *
   * @throws IllegalArgumentException if the tables have no such row
   */
  double relative(PartKind kind, String quantity);

  /** Cold resistance of a fuse of this rating in ohms, holder included. */
  Spread fuseOhms(double ratedAmps);

  /** A general constant, for instance {@code copper-resistivity}, in the unit of its row. */
  Spread constant(String name);
}
