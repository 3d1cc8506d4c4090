package loopwright.ui.practise;

import loopwright.diagnosis.CheckKind;

/** What the learner is about to do. */
public enum Doing {
  VOLTS("V"),
  MILLIVOLTS("M"),
  OHMS("O"),
  DIODE("D"),
  AMPS("A"),
  LOOK("L"),
  WIGGLE("W"),
  SWAP("G"),
  LAMP_FOR_FUSE("F"),
  NAME("N");

  private final String key;

  Doing(String key) {
    this.key = key;
  }

  /** The key that chooses it. */
  public String key() {
    return key;
  }

  /** Whether two leads are placed. */
  public boolean leads() {
    return kind().metered();
  }

  /** Whether a part is looked at, or taken in hand and something watched. */
  public boolean looks() {
    return !leads() && this != NAME;
  }

  /** Whether it is a reading or a look of which something can be expected. */
  public boolean expects() {
    return this != AMPS && this != NAME;
  }

  /** The kind of check; amperes are none that is weighed. */
  CheckKind kind() {
    return switch (this) {
      case AMPS -> CheckKind.VOLTS;
      case NAME -> CheckKind.LOOK;
      default -> CheckKind.valueOf(name());
    };
  }
}
