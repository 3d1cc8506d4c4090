package loopwright.casework;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Warning;
import loopwright.knowledge.Context;

/**
 * What happened in a case, as its journal keeps it. Replayed in order it gives the case's state.
 */
public sealed interface CaseEvent {

  /** When it happened. */
  Instant at();

  /** The events that count: without those that were undone. */
  static List<CaseEvent> counting(List<CaseEvent> events) {
    List<CaseEvent> counting = new ArrayList<>();
    for (CaseEvent event : events) {
      if (event instanceof Undone undone) {
        int at = counting.lastIndexOf(undone.what());
        if (at >= 0) {
          counting.remove(at);
        }
      }
      counting.add(event);
    }
    return counting;
  }

  /**
   * The case began.
   *
   * @param practice whether the fault is a made-up one
   * @param power how far the vehicle is powered up
   */
  record Opened(
      Instant at,
      String caseId,
      String vehicleName,
      String vehicleId,
      String circuit,
      Optional<String> load,
      ComplaintKind kind,
      Context context,
      String meter,
      boolean practice,
      FirstPower power)
      implements CaseEvent {
    /** A case of a vehicle that somebody really has, as it is meant to be. */
    public Opened(
        Instant at,
        String caseId,
        String vehicleName,
        String vehicleId,
        String circuit,
        Optional<String> load,
        ComplaintKind kind,
        Context context,
        String meter) {
      this(
          at,
          caseId,
          vehicleName,
          vehicleId,
          circuit,
          load,
          kind,
          context,
          meter,
          false,
          FirstPower.WHOLE);
    }
  }

  /** A reading was taken. */
  record Taken(Instant at, int reading, OwnCheck check, Answer answer) implements CaseEvent {}

  /** A reading was taken back. */
  record Withdrawn(Instant at, int reading) implements CaseEvent {}

  /** A reading's value was corrected. */
  record Corrected(Instant at, int reading, Answer answer) implements CaseEvent {}

  /** What was told besides readings and can be taken back. */
  sealed interface Deed extends CaseEvent {}

  /** A check was refused. */
  record Refused(Instant at, OwnCheck check, FindCase.Refusal refusal) implements Deed {}

  /** A part was replaced on suspicion. */
  record Swapped(Instant at, String part, FindCase.Helped helped) implements Deed {}

  /** A part was mended. */
  record Repaired(Instant at, String part) implements Deed {}

  /**
   * It was taken back, as if it had never been told.
   *
   * @param what that event, as it stands before this one
   */
  record Undone(Instant at, Deed what) implements CaseEvent {}

  /** Smoke, heat or fuel was reported. */
  record Warned(Instant at, Warning warning) implements CaseEvent {}

  /** The battery was isolated after smoke or heat. */
  record Isolated(Instant at) implements CaseEvent {}

  /** What was warned of is gone, or never was. */
  record Gone(Instant at) implements CaseEvent {}

  /**
   * What the case said: once a failure was isolated, before a mend, with a proof and when it was
   * left. It changes nothing in the case; it is what a record rests on.
   */
  record Told(Instant at, Account account) implements CaseEvent {}

  /**
   * A photo was put to the case.
   *
   * @param file its path below the folder of the cases
   * @param caption what it shows; may be empty
   */
  record Photographed(Instant at, String file, String caption) implements Deed {}

  /** What this vehicle had before that counted from the beginning of the case. */
  record Weighed(Instant at, List<OwnRate> rates) implements CaseEvent {
    /** Copies the list. */
    public Weighed {
      rates = List.copyOf(rates);
    }
  }

  /** From here on somebody proposes each check first. */
  record Proposing(Instant at, Proposer first) implements CaseEvent {}

  /**
   * Both had proposed a check, and it was settled which is taken.
   *
   * @param learners what the learner had proposed
   * @param programs what the program would have proposed
   * @param taken whose is taken
   */
  record Settled(Instant at, OwnCheck learners, OwnCheck programs, Proposer taken)
      implements CaseEvent {
    /** The check that is taken. */
    public OwnCheck check() {
      return taken == Proposer.LEARNER ? learners : programs;
    }
  }

  /** The person stopped. */
  record Stopped(Instant at) implements CaseEvent {}
}
