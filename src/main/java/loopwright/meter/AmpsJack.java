package loopwright.meter;

import loopwright.model.Spread;

/**
 * The jack for amperes of a cheap hand-held meter: close to a piece of wire with a fuse in it. All
 * figures are from memory of printed meter manuals.
 */
public final class AmpsJack {
  /** Shunt and fuse together, leads not counted, in ohms. */
  public static final double OHMS = 0.02;

  /** Amperes above which its 10 A fuse opens in the end. */
  public static final Spread BLOWS_AT = new Spread(11, 12, 13.5);

  /** Its one range in amperes: 20 A of display, 2 % and 5 digits. */
  public static final MeterSpec.Range RANGE = new MeterSpec.Range(20, 0.01, 2, 5);

  private AmpsJack() {}
}
