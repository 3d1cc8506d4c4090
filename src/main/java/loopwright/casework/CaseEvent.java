package loopwright.casework;

import java.time.Instant;
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

  /** The case began. */
  record Opened(
      Instant at,
      String caseId,
      String vehicleName,
      String vehicleId,
      String circuit,
      Optional<String> load,
      ComplaintKind kind,
      Context context,
      String meter)
      implements CaseEvent {}

  /** A reading was taken. */
  record Taken(Instant at, int reading, OwnCheck check, Answer answer) implements CaseEvent {}

  /** A reading was taken back. */
  record Withdrawn(Instant at, int reading) implements CaseEvent {}

  /** A reading's value was corrected. */
  record Corrected(Instant at, int reading, Answer answer) implements CaseEvent {}

  /** A check was refused. */
  record Refused(Instant at, OwnCheck check, FindCase.Refusal refusal) implements CaseEvent {}

  /** A part was replaced on suspicion. */
  record Swapped(Instant at, String part, FindCase.Helped helped) implements CaseEvent {}

  /** A part was mended. */
  record Repaired(Instant at, String part) implements CaseEvent {}

  /** Smoke, heat or fuel was reported. */
  record Warned(Instant at, Warning warning) implements CaseEvent {}

  /** The battery was isolated after smoke or heat. */
  record Isolated(Instant at) implements CaseEvent {}

  /** What was warned of is gone, or never was. */
  record Gone(Instant at) implements CaseEvent {}

  /** The person stopped. */
  record Stopped(Instant at) implements CaseEvent {}
}
