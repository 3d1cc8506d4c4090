package loopwright.diagnosis;

import java.util.Objects;

/**
 * One part in one failure mode, written {@code W7/open}.
 *
 * @param part id of the part; {@link #NONE} for "no fault here"
 * @param mode name of the failure mode, with the element where the part has several
 */
public record SuspectId(String part, String mode) implements Comparable<SuspectId> {

  /** The part name of suspects that are no part. */
  public static final String NONE = "-";

  /** No part has failed. */
  public static final SuspectId HEALTHY = new SuspectId(NONE, "healthy");

  /** Something that the tables do not list. */
  public static final SuspectId UNLISTED = new SuspectId(NONE, "unlisted");

  /** Rejects missing names. */
  public SuspectId {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(mode, "mode");
  }

  /** Name of the mode as the failure table has it, without the element. */
  public String row() {
    int colon = mode.indexOf(':');
    return colon < 0 ? mode : mode.substring(0, colon);
  }

  @Override
  public int compareTo(SuspectId other) {
    int byPart = part.compareTo(other.part);
    return byPart != 0 ? byPart : mode.compareTo(other.mode);
  }

  @Override
  public String toString() {
    return part + "/" + mode;
  }
}
