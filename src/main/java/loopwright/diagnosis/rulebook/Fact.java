package loopwright.diagnosis.rulebook;

import java.util.List;
import java.util.Set;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;

/** What the engine states to the rules. */
public sealed interface Fact {

  /**
   * The case as a whole.
   *
   * @param complaint what the person saw
   * @param context what happened to the vehicle before
   * @param systemVolts 6, 12 or 24
   * @param positiveGround whether the positive post is tied to the body
   * @param healthySourceVolts least rest voltage of a healthy battery, in volts
   * @param warning what the person reported: empty, {@code smoke}, {@code heat} or {@code fuel}
   */
  record CaseFact(
      ComplaintKind complaint,
      Context context,
      int systemVolts,
      boolean positiveGround,
      double healthySourceVolts,
      String warning)
      implements Fact {}

  /**
   * A part in play.
   *
   * @param id the part
   * @param kind its kind
   * @param title name with id
   * @param hazards words out of: {@code starter}, {@code charging}, {@code fuel}, {@code
   *     electronics}, {@code battery}, {@code airbag}, {@code hot}, {@code moving}
   */
  record Piece(String id, PartKind kind, String title, Set<String> hazards) implements Fact {}

  /** What a reading is. */
  enum ValueClass {
    NUMBER,
    OVER_RANGE,
    SEEN
  }

  /**
   * One reading, as taken.
   *
   * @param id its number
   * @param kind kind of check
   * @param red part under the red lead, or the part looked at
   * @param black part under the black lead; empty for a look
   * @param blackIsPost whether black lies on the battery's grounded post
   * @param valueClass number, OL or something seen
   * @param value the number in volts or ohms; 0 where there is none
   * @param error greatest error of the meter at this value, in volts or ohms
   * @param seen what was seen; null unless the class is SEEN
   * @param powered whether the battery was connected
   * @param healthyLow least value a healthy circuit shows here, in volts or ohms
   * @param healthyHigh greatest value a healthy circuit shows here
   * @param sourceOhms resistance the healthy network shows to the leads, in ohms
   * @param loadOn whether a healthy circuit would carry load current in this setting
   * @param explained whether health or any suspect at all can give this value
   * @param whole whether the controls stood as for the circuit and nothing was apart but loads, the
   *     battery and the fuse that is read at
   */
  record ReadingFact(
      int id,
      CheckKind kind,
      String red,
      String black,
      boolean blackIsPost,
      ValueClass valueClass,
      double value,
      double error,
      Seen seen,
      boolean powered,
      double healthyLow,
      double healthyHigh,
      double sourceOhms,
      boolean loadOn,
      boolean explained,
      boolean whole)
      implements Fact {}

  /** Where a reading lies against what a suspect could give. */
  enum Standing {
    /** No value inside the spreads and the meter's error explains it. */
    OUT,
    /** Within, but close to the edge. */
    EDGE,
    /** Well within. */
    IN
  }

  /**
   * What the solver says of one suspect and one reading (or several together, where a resistance is
   * ruled out piecewise).
   *
   * @param suspect the suspect
   * @param readings the readings concerned
   * @param standing where they lie against the suspect's own band
   * @param direct whether the reading was taken across the part itself while it carried a known
   *     current, so that it speaks for the part whatever else has failed
   */
  record Margin(SuspectId suspect, Set<Integer> readings, Standing standing, boolean direct)
      implements Fact {}

  /**
   * A suspect, as the tables describe it.
   *
   * @param id part and mode
   * @param kind kind of part
   * @param belief chance that this is the failure, 0 to 1, in steps of a percent
   * @param lone whether it is the only one left in its group
   */
  record Suspected(SuspectId id, PartKind kind, double belief, boolean lone) implements Fact {}

  /** Readings that no single failure, nor any pair considered, explains together. */
  record Conflict(Set<Integer> readings) implements Fact {}

  /**
   * A check that the planner could propose.
   *
   * @param id its id
   * @param kind kind of check
   * @param red part under the red lead, or the part looked at or taken out
   * @param black part under the black lead; empty without one
   * @param powered whether the battery is connected in its setting
   * @param isolated whether all parallel paths around what is measured on ohms are open
   * @param loadOn whether a healthy circuit would carry load current; for a lamp in a fuse's place
   *     whether it would glow for a healthy circuit's loads
   * @param provenDead whether 0.00 V between the same two points has been read with the same
   *     setting of the battery
   * @param reachable whether both points can be reached and none was refused
   * @param minutes working time in minutes
   * @param cranks whether the setting turns the starter
   * @param bridges whether the leads lie on two bare terminals of unlike volts within a finger's
   *     breadth
   * @param inHand whether both leads lie on one part that is out of the vehicle
   */
  record CheckIdea(
      String id,
      CheckKind kind,
      String red,
      String black,
      boolean powered,
      boolean isolated,
      boolean loadOn,
      boolean provenDead,
      boolean reachable,
      double minutes,
      boolean cranks,
      boolean bridges,
      boolean inHand)
      implements Fact {
    /** The same idea under another id. */
    public CheckIdea named(String other) {
      return new CheckIdea(
          other,
          kind,
          red,
          black,
          powered,
          isolated,
          loadOn,
          provenDead,
          reachable,
          minutes,
          cranks,
          bridges,
          inHand);
    }
  }

  /** The one failure that the case ended on. */
  record Isolated(SuspectId suspect, PartKind kind) implements Fact {}

  /** A fuse that is blown or missing under the failure the case ended on, and why it blew. */
  record BlownFuse(String fuse, boolean shortExcluded) implements Fact {}

  /**
   * A figure of the plan itself, for the paper check.
   *
   * @param id its number
   * @param part the part; a filament as {@code part:filament}
   * @param kind the part's kind
   * @param figure what is compared, for instance {@code fuse-amps}, {@code wire-amps}
   * @param value its value in SI
   * @param limit the limit in SI
   * @param with ids of other parts that have to do with it, in the order that the figure says
   * @param said further numbers and words, in the order that the figure says
   */
  record PlanFigure(
      int id,
      String part,
      PartKind kind,
      String figure,
      double value,
      double limit,
      List<String> with,
      List<Object> said)
      implements Fact {
    /** Copies the lists. */
    public PlanFigure {
      with = List.copyOf(with);
      said = List.copyOf(said);
    }

    /** The other part at this place; empty if there is none. */
    public String with(int place) {
      return place < with.size() ? with.get(place) : "";
    }

    /** The further number or word at this place; empty if there is none. */
    public Object said(int place) {
      return place < said.size() ? said.get(place) : "";
    }
  }
}
