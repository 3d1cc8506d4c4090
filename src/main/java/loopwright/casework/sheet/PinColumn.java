package loopwright.casework.sheet;

import java.util.List;

/** The columns of a pinout list. */
public enum PinColumn implements SheetColumn {
  /** The connector. */
  CONNECTOR("connector", "plug", "conn", "part", "connector id", "plug and socket"),
  /** The cavity. */
  CAVITY("cavity", "pin", "way", "position", "cav", "pin no", "no", "terminal"),
  /** Wires on the socket side, where the feed comes in. */
  WIRE_IN("wire in", "wire label in", "in", "feed side", "socket side", "from wire", "side a"),
  /** Wires on the plug side. */
  WIRE_OUT("wire out", "wire label out", "out", "load side", "plug side", "to wire", "side b"),
  /** Colours of the wires on either side. */
  COLOUR("colour", "color", "wire colour", "wire color", "colours", "colors");

  private final List<String> headings;

  PinColumn(String... headings) {
    this.headings = List.of(headings);
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public boolean couldBe(String cell) {
    return false;
  }
}
