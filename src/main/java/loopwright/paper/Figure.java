package loopwright.paper;

import java.util.List;
import java.util.Objects;
import loopwright.model.Setting;

/**
 * A figure of the plan that has a limit.
 *
 * @param part id of the part it is about
 * @param kind what is compared
 * @param value in amperes, volts or a count
 * @param limit in the same unit
 * @param at the setting it was worked out in
 * @param with ids of other parts that have to do with it, the nearest first
 */
public record Figure(
    String part, Kind kind, double value, double limit, Setting at, List<String> with) {

  /** Copies the list. */
  public Figure {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(at, "at");
    with = List.copyOf(with);
  }

  /** Whether the figure lies on the wrong side of its limit. */
  public boolean beyond() {
    return kind.atMost ? value > limit : value < limit;
  }

  /** What is compared. The words are those that the rules of the plan use. */
  public enum Kind {
    /** Rating of the fuse before a wire, against the greatest that protects it; amperes. */
    FUSE_AMPS("fuse-amps", true),
    /** Working current of a wire, against what its size carries; amperes. */
    WIRE_AMPS("wire-amps", true),
    /** Working current of a fuse, against 80 % of its rating; amperes. */
    LOAD_AMPS("load-amps", true),
    /** Current of a dead short at the far end, against what opens the fuse in seconds; amperes. */
    FAR_SHORT_AMPS("far-short-amps", false),
    /** Volts lost from the battery to the load, against what is usual; volts. */
    DROP_VOLTS("drop-volts", true),
    /** Volts lost from the load to the battery's grounded post, against what is usual; volts. */
    GROUND_DROP_VOLTS("ground-drop-volts", true),
    /** Ways from the battery to the load through a fuse; a count. */
    FUSES("fuses", false),
    /** Ways from the load back to the battery; a count. */
    RETURNS("returns", false),
    /** Ways from the battery to the load at all; a count. */
    FEEDS("feeds", false),
    /** Working current of a contact, against its rating; amperes. */
    CONTACT_AMPS("contact-amps", true),
    /** Things across a coil that take its kick; a count. */
    COIL_SUPPRESSION("coil-suppression", false);

    private final String word;
    private final boolean atMost;

    Kind(String word, boolean atMost) {
      this.word = word;
      this.atMost = atMost;
    }

    /** The word that rules use. */
    public String word() {
      return word;
    }
  }
}
