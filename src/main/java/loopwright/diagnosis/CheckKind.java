package loopwright.diagnosis;

import java.util.List;
import java.util.Optional;
import loopwright.knowledge.Provocation;

/** The kinds of check. */
public enum CheckKind {
  /** Volts between two points, one of them usually the grounded post. */
  VOLTS("volts"),
  /** A small drop across a piece that carries current, on the lowest volt range. */
  MILLIVOLTS("millivolts"),
  /** Resistance between two points of a dead, isolated loop. */
  OHMS("ohms"),
  /** Forward volts of a junction. */
  DIODE("diode"),
  /** What a load, fuse or terminal looks or sounds like. */
  LOOK("look"),
  /** Unplug something and see what changes. */
  UNPLUG_AND_LOOK("unplug-and-look"),
  /** Fit a known-good twin and see what changes. */
  SWAP("swap"),
  /** A lamp in the fuse's place. */
  LAMP_FOR_FUSE("lamp-for-fuse"),
  /** Move a part and watch. */
  WIGGLE("wiggle"),
  /** Warm a part, no hotter than a hand bears, and watch. */
  WARM("warm"),
  /** Leave the load on for ten minutes and watch. */
  LOAD("load"),
  /** The drop across a resistor of 1 ohm in the battery's grounded lead: what the battery gives. */
  DRAIN("drain");

  private final String word;

  CheckKind(String word) {
    this.word = word;
  }

  /** The word used in lines and files. */
  public String word() {
    return word;
  }

  /** What can be seen in a check of this kind, whatever is looked at; nothing for a meter. */
  public List<Seen> answers() {
    return switch (this) {
      case VOLTS, MILLIVOLTS, OHMS, DIODE, DRAIN -> List.of();
      case LOOK ->
          List.of(Seen.ON, Seen.DIM, Seen.OFF, Seen.CLICKS, Seen.SILENT, Seen.BROKEN, Seen.WHOLE);
      case UNPLUG_AND_LOOK, SWAP, LAMP_FOR_FUSE -> List.of(Seen.ON, Seen.DIM, Seen.OFF);
      case WIGGLE, WARM, LOAD -> List.of(Seen.CHANGES, Seen.STEADY);
    };
  }

  /** The way in which a fault that comes and goes is provoked; empty for other checks. */
  public Optional<Provocation> provokes() {
    return switch (this) {
      case WIGGLE -> Optional.of(Provocation.MOVED);
      case WARM -> Optional.of(Provocation.WARM);
      case LOAD -> Optional.of(Provocation.LOAD);
      default -> Optional.empty();
    };
  }

  /** Whether meter leads are used. */
  public boolean metered() {
    return reads() || drives() || this == DRAIN;
  }

  /** Whether volts between two points of the vehicle are read, of any size. */
  public boolean reads() {
    return this == VOLTS || this == MILLIVOLTS;
  }

  /** Whether the meter puts a current of its own through what is measured. */
  public boolean drives() {
    return this == OHMS || this == DIODE;
  }
}
