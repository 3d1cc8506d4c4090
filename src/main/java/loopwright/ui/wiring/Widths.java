package loopwright.ui.wiring;

import loopwright.casework.table.Column;

/** How wide columns begin, in em. */
final class Widths {
  private Widths() {}

  static double ems(Column column) {
    return switch (column) {
      // Not 5: a column of 80 pixels, the toolkit's usual width, is fitted to its content once.
      case ID -> 5.5;
      case NAME, WHERE, TOUCHES, NOTE, COMMAND -> 12;
      case LOADS, ON, CLOSED -> 14;
      case FROM, TO, TERMINALS, POSITIONS -> 8;
      case SUPPRESSION -> 10;
      case METRES, AMPS, OHMS, VOLTS, WATTS, COIL_OHMS, CONTROL -> 9;
      default -> 7;
    };
  }
}
