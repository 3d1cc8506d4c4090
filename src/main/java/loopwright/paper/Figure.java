package loopwright.paper;

import java.util.List;
import java.util.Objects;
import loopwright.model.Setting;

/**
 * A figure of the plan that has a limit.
 *
 * @param part id of the part it is about; a filament as {@code part:filament}
 * @param kind what is compared
 * @param value in the unit of the kind
 * @param limit in the same unit
 * @param at the setting it was worked out in
 * @param with ids of other parts that have to do with it, in the order that the kind says
 * @param said further numbers and words for the finding, in the order that the kind says
 */
public record Figure(
    String part,
    Kind kind,
    double value,
    double limit,
    Setting at,
    List<String> with,
    List<Object> said) {

  /** Copies the lists. */
  public Figure {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(at, "at");
    with = List.copyOf(with);
    said = List.copyOf(said);
  }

  /** A figure that needs no further words. */
  public Figure(String part, Kind kind, double value, double limit, Setting at, List<String> with) {
    this(part, kind, value, limit, at, with, List.of());
  }

  /** Whether the figure lies on the wrong side of its limit. */
  public boolean beyond() {
    return kind.atMost ? value > limit : value < limit;
  }

  /** The unit of a figure and its limit. */
  public enum Unit {
    AMPS("A"),
    /** Heat of a short, current squared by time. */
    AMPS_SQUARED_SECONDS("A2s"),
    VOLTS("V"),
    SECONDS("s"),
    CELSIUS("C"),
    AMP_HOURS("Ah"),
    PERCENT("%"),
    COUNT("");

    private final String symbol;

    Unit(String symbol) {
      this.symbol = symbol;
    }

    /** The symbol written after a number; empty for a count. */
    public String symbol() {
      return symbol;
    }
  }

  /** What is compared. The words are those that the rules of the plan use. */
  public enum Kind {
    /** Ways from the battery to the load at all; a count, at least 1. */
    FEEDS("feeds", Unit.COUNT, false),
    /** Ways from the load back to the battery; a count, at least 1. */
    RETURNS("returns", Unit.COUNT, false),
    /** Whether every way from the battery to the load goes through a fuse; a count, at least 1. */
    FUSES("fuses", Unit.COUNT, false),
    /** Whether a load belongs to a circuit or gets current in any other; a count, at least 1. */
    CIRCUITS("circuits", Unit.COUNT, false),
    /**
     * Terminals of a part with nothing on them that aren't named as spare; a count, at most 0.
     * Said: their names.
     */
    BARE_TERMINALS("bare-terminals", Unit.COUNT, true),
    /**
     * Rating of the fuse before a wire, against the greatest that protects it where it runs. With:
     * the fuse. Said: the thinnest wire that would do, in words, or empty.
     */
    FUSE_AMPS("fuse-amps", Unit.AMPS, true),
    /**
     * Working current of a wire, against what its size carries where it runs. Said: about what its
     * copper comes to in degrees C; the thinnest wire that would do, in words, or empty.
     */
    WIRE_AMPS("wire-amps", Unit.AMPS, true),
    /**
     * What the wires of a large loom carry together with everything on that may be on for long, in
     * percent of what they could, against what the chart of fuses holds for. The part is its most
     * loaded wire. With: all its wires. Said: the loom's name; how many wires.
     */
    LOOM_LOAD("loom-load", Unit.PERCENT, true),
    /** Working current of a fuse, against 80 % of its rating. */
    LOAD_AMPS("load-amps", Unit.AMPS, true),
    /**
     * Current of a dead short at the far end, against twice the fuse's rating. With: the part at
     * whose end that is. Said: the longest that the fuse may take to open, in seconds.
     */
    FAR_SHORT_AMPS("far-short-amps", Unit.AMPS, false),
    /**
     * What a dead short behind a fuse puts into a wire before the fuse has opened, against what its
     * copper takes up. With: the fuse. Said: the thinnest wire that would do, in words, or empty.
     */
    SHORT_HEAT("short-heat", Unit.AMPS_SQUARED_SECONDS, true),
    /**
     * Volts lost from the battery to the load, against what is usual. With: the piece that loses
     * most, empty if none. Said: what that piece loses in volts; what the whole loss costs in
     * percent; which of {@code light}, {@code heat}, {@code speed} or {@code current} that is of;
     * the thinnest wire that would do, in words, or empty.
     */
    DROP_VOLTS("drop-volts", Unit.VOLTS, true),
    /**
     * Volts lost from the load to the battery's grounded post; with and said as before the load.
     */
    GROUND_DROP_VOLTS("ground-drop-volts", Unit.VOLTS, true),
    /** Working current of a contact, against its rating. Said: the contact. */
    CONTACT_AMPS("contact-amps", Unit.AMPS, true),
    /**
     * Current of a contact at the moment it closes (cold filaments, standing motors), against what
     * it stands for that moment. Said: the contact.
     */
    CONTACT_INRUSH_AMPS("contact-inrush-amps", Unit.AMPS, true),
    /**
     * The least time in which the fuse may open at the inrush of what it feeds, against how long
     * that lasts. Said: the inrush in amperes; {@code lamp} or {@code motor}.
     */
    INRUSH_SECONDS("inrush-seconds", Unit.SECONDS, false),
    /** Working current of a relay's coil, against what is usual. */
    COIL_AMPS("coil-amps", Unit.AMPS, true),
    /** Volts a coil gets where it should pull in, against what it needs. */
    COIL_VOLTS("coil-volts", Unit.VOLTS, false),
    /**
     * Things across a coil that take its kick; a count, at least 1. With: the driver that switches
     * it, if one does. Said: {@code driver} or {@code switch}.
     */
    COIL_SUPPRESSION("coil-suppression", Unit.COUNT, false),
    /** Diodes across a coil that conduct while it is fed; a count, at most 0. With: the diode. */
    DIODES_BACKWARDS("diodes-backwards", Unit.COUNT, true),
    /** Current of motors that a relay with a plain diode across its coil breaks. */
    DIODE_BREAKS_AMPS("diode-breaks-amps", Unit.AMPS, true),

    // What a load that shouldn't work does, in percent of its rated work, against the share from
    // which it is noticed. With: what was lost or let go first, then other loads that are woken
    // with it, then the way from the feed post to the grounded one. Said: {@code glows}, {@code
    // turns}, {@code sounds}, {@code pulls}, {@code warms} or {@code wakes}; its amperes; the relay
    // whose coil's way it is, or empty; how many things are lost; how many other loads are woken.

    /** With everything whole, through other loads or coils. */
    SNEAK("sneak", Unit.PERCENT, true),
    /** With everything whole, through a wire that feeds the other way in another circuit. */
    BACKFEED("backfeed", Unit.PERCENT, true),
    /** With everything whole, straight, though none of its circuits is on. */
    ALSO_ON("also-on", Unit.PERCENT, true),
    /** The same with every control at rest. */
    ALWAYS_ON("always-on", Unit.PERCENT, true),
    /** When a control is put back to rest, since a relay holds itself in. */
    STAYS_ON("stays-on", Unit.PERCENT, true),
    /** With one fuse out. */
    FUSE_SNEAK("fuse-sneak", Unit.PERCENT, true),
    /** With one ground lost. */
    GROUND_SNEAK("ground-sneak", Unit.PERCENT, true),
    /** With a fuse out that is on its way: another one feeds it too. */
    FUSE_BYPASSED("fuse-bypassed", Unit.PERCENT, true),
    /** Relays that pull in and by that take their own volts away; a count, at most 0. */
    BUZZES("buzzes", Unit.COUNT, true),

    /**
     * Current of what serves several circuits with all on that may be on for long, against 80 % of
     * its rating. With: a load of the circuit that draws most alone. Said: that circuit's amperes
     * alone; amperes with all on; how many circuits; the rating.
     */
    TOTAL_AMPS("total-amps", Unit.AMPS, true),
    /**
     * What a month's parking takes from the battery, against half of what it holds. With: what
     * takes most. Said: milliamperes; days until half; {@code stated} or {@code usual} for what it
     * holds.
     */
    REST_AMP_HOURS("rest-amp-hours", Unit.AMP_HOURS, true),
    /**
     * Current at charging volts with all on that may be on for long, against 80 % of what the
     * charging gives at working speed. With: what takes most. Said: what it gives at working speed;
     * at idle; hours at idle until the battery is at half, 0 if it gains; {@code stated} or {@code
     * usual} for the charging.
     */
    CHARGE_AMPS("charge-amps", Unit.AMPS, true),
    /**
     * Smallest usual fuse in the battery's lead that carries these circuits one by one, against the
     * largest that a plan is brought up with. With: a load of each circuit. Said: how many
     * circuits; how many aren't named.
     */
    BRING_UP_AMPS("bring-up-amps", Unit.AMPS, true),
    /** What the greatest of the circuits draws that no such fuse carries; the same otherwise. */
    OWN_FUSE_AMPS("own-fuse-amps", Unit.AMPS, false),
    /** Wires in one crimp or cavity; a count. With: the wires. Said: the terminal. */
    CRIMPED("crimped", Unit.COUNT, true),
    /** Copper of the thickest over that of the thinnest wire in one crimp; with, said as before. */
    UNLIKE_CRIMPED("unlike-crimped", Unit.COUNT, true),
    /** Rings on one stud; with and said as before. */
    RINGS("rings", Unit.COUNT, true),
    /**
     * Volts by which a heavy load moves the ground of a signal. With: the shared piece that loses
     * most; the heavy load. Said: amperes through that piece.
     */
    GROUND_MOVES_VOLTS("ground-moves-volts", Unit.VOLTS, true),
    /**
     * Joints in the loop of the load that has most; a count. With: connectors, splices, studs.
     * Said: percent of what is expected to fail in that loop that is expected in its joints.
     */
    JOINTS("joints", Unit.COUNT, false);

    private final String word;
    private final Unit unit;
    private final boolean atMost;

    Kind(String word, Unit unit, boolean atMost) {
      this.word = word;
      this.unit = unit;
      this.atMost = atMost;
    }

    /** The word that rules use. */
    public String word() {
      return word;
    }

    /** The unit of its values. */
    public Unit unit() {
      return unit;
    }

    /** Whether a value above the limit is beyond it; else one below. */
    public boolean atMost() {
      return atMost;
    }
  }
}
