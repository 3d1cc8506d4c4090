package loopwright.ui.practise;

import loopwright.diagnosis.CheckKind;

/** What the learner is about to do. */
public enum Doing {
  VOLTS("V"),
  OHMS("O"),
  DIODE("D"),
  AMPS("A"),
  LOOK("L"),
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
    return this != LOOK && this != NAME;
  }

  /** Whether it is a reading or a look of which something can be expected. */
  public boolean expects() {
    return this != AMPS && this != NAME;
  }

  /** The kind of check; amperes are none that is weighed. */
  CheckKind kind() {
    return switch (this) {
      case OHMS -> CheckKind.OHMS;
      case DIODE -> CheckKind.DIODE;
      case LOOK, NAME -> CheckKind.LOOK;
      case VOLTS, AMPS -> CheckKind.VOLTS;
    };
  }
}
