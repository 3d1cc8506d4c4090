package loopwright.casework.prove;

import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import loopwright.casework.Answer;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;

/**
 * What happened while a vehicle was proven, as its journal keeps it. Replayed in order it tells
 * what is proven.
 */
public sealed interface ProofEvent {

  /** When it happened. */
  Instant at();

  /**
   * The proof of something began, or began anew: what was answered about it before no longer
   * counts.
   *
   * @param subject what is proven: a circuit's id, or a stage that belongs to no circuit
   * @param power how far the vehicle is powered up for it
   * @param prints print by id of every part that the proof rests on
   */
  record Begun(Instant at, String subject, FirstPower power, SortedMap<String, String> prints)
      implements ProofEvent {
    /** Copies the map. */
    public Begun {
      prints = copy(prints);
    }
  }

  /**
   * A check of a step was answered.
   *
   * @param step the step's id within the subject
   */
  record Checked(Instant at, String subject, String step, OwnCheck check, Answer answer)
      implements ProofEvent {}

  /**
   * A step without a reading was answered.
   *
   * @param right whether all was as it should be
   */
  record Confirmed(Instant at, String subject, String step, boolean right) implements ProofEvent {}

  /** All steps of the subject were as they should be. */
  record Passed(Instant at, String subject) implements ProofEvent {}

  /**
   * A step was not as it should be, and a case was opened over it.
   *
   * @param caseId the case's id
   */
  record Failed(Instant at, String subject, String step, String caseId) implements ProofEvent {}

  /**
   * A ground was held against its limit by its drop under load.
   *
   * @param ground the ground's id
   * @param check what was measured, and how the vehicle stood
   * @param lowOhms least resistance that the reading leaves, in ohms
   * @param highOhms greatest, in ohms
   * @param prints print by id of every part that the proof rests on
   */
  record GroundProved(
      Instant at,
      String ground,
      OwnCheck check,
      Answer answer,
      Verdict verdict,
      double lowOhms,
      double highOhms,
      SortedMap<String, String> prints)
      implements ProofEvent {
    /** Copies the map. */
    public GroundProved {
      prints = copy(prints);
    }
  }

  /** What a reading says about a ground. */
  enum Verdict {
    GOOD("good"),
    BAD("bad"),
    CANT_TELL("can't tell");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  private static SortedMap<String, String> copy(Map<String, String> prints) {
    return Collections.unmodifiableSortedMap(new TreeMap<>(prints));
  }
}
