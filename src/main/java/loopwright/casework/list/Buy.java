package loopwright.casework.list;

import java.util.List;

/**
 * One line of what to buy.
 *
 * @param group what sort of thing
 * @param item what it is, with its values
 * @param quantity how much, more than zero
 * @param unit of what
 * @param parts the parts it is for
 * @param note what else to know; may be empty
 */
public record Buy(
    Group group, String item, double quantity, Unit unit, List<String> parts, String note) {

  /** Copies the list. */
  public Buy {
    if (!(quantity > 0)) {
      throw new IllegalArgumentException("quantity of " + item + " is " + quantity);
    }
    parts = List.copyOf(parts);
  }

  /** What sort of thing, in the order of the list. */
  public enum Group {
    WIRE("wire"),
    STRAP("strap"),
    FUSE("fuse"),
    RELAY("relay"),
    SWITCH("switch"),
    LAMP("lamp"),
    DIODE("diode"),
    LOAD("load"),
    CONNECTOR("connector"),
    TERMINAL("terminal"),
    SPLICE("splice"),
    GROUND("ground"),
    SLEEVE("sleeve"),
    OTHER("other");

    private final String word;

    Group(String word) {
      this.word = word;
    }

    /** The word that phrases use. */
    String word() {
      return word;
    }
  }

  /** Of what there is a quantity. */
  public enum Unit {
    PIECES,
    METRES
  }
}
