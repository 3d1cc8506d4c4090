package loopwright.ui.find;

import java.util.List;
import loopwright.diagnosis.CheckKind;

/** The units a value can be entered in, each with the letter that sets it. */
public enum EntryUnit {
  VOLT("V", 'v'),
  MILLIVOLT("mV", 'm'),
  OHM("ohm", 'o'),
  KILOHM("kohm", 'k'),
  /** Over range: the whole entry, without digits. */
  OVER("OL", 'l');

  private final String word;
  private final char key;

  EntryUnit(String word, char key) {
    this.word = word;
    this.key = key;
  }

  /** The word put behind the digits. */
  public String word() {
    return word;
  }

  /** The letter that sets it, in lower case. */
  public char key() {
    return key;
  }

  /** The units that a meter can show for a kind of check, the usual one first. */
  public static List<EntryUnit> of(CheckKind kind) {
    return switch (kind) {
      case VOLTS, DIODE -> List.of(VOLT, MILLIVOLT, OVER);
      case MILLIVOLTS, DRAIN -> List.of(MILLIVOLT, VOLT, OVER);
      case OHMS -> List.of(OHM, KILOHM, OVER);
      default -> List.of();
    };
  }
}
