package loopwright.casework.prove;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.casework.OwnCheck;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.model.LoadRef;
import loopwright.model.TerminalRef;

/**
 * One thing to do while something is proven, and what it shows if all is as it should be.
 *
 * @param id its id within the subject
 * @param what what it is for
 * @param check what is measured or looked at; empty where a hand says done or not
 * @param low least healthy value in volts or ohms; nothing else for a look
 * @param high greatest healthy value
 * @param seen what is healthy to see; empty for a reading
 * @param about id of the part that it is about
 * @param load the load it is about
 * @param path for what is lost on a way: the points of it that leads get at, in the order of the
 *     leads; else empty
 * @param cautions keys of phrases for what to be careful of, and what of
 */
public record Step(
    String id,
    What what,
    Optional<Check> check,
    double low,
    double high,
    Optional<Seen> seen,
    String about,
    Optional<LoadRef> load,
    List<TerminalRef> path,
    List<Caution> cautions) {

  /** Ohms below which a short, leads and all, blows a fuse of these vehicles. Common practice. */
  private static final double BLOWS = 3;

  /** Copies the lists. */
  public Step {
    Objects.requireNonNull(what, "what");
    path = List.copyOf(path);
    cautions = List.copyOf(cautions);
  }

  /** What a step is for. */
  public enum What {
    /** All fuses and relays out, all at rest, the battery's grounded lead off. */
    BARE("bare"),
    /** The fuse has the rating of the plan. */
    RATING("rating"),
    /** Nothing feeds the points that ohms are taken at. */
    ZERO("zero"),
    /** No short behind a fuse or relay, before power. */
    SHORT("short"),
    /** Two pieces of metal hang together. */
    BONDED("bonded"),
    /** The small fuse is in and the battery on. */
    CONNECT("connect"),
    /** What the circuit needs is fitted, and nothing sparked or got warm. */
    FIT("fit"),
    /** The battery's own volts. */
    BATTERY("battery"),
    /** Volts that should be there. */
    LIVE("live"),
    /** Nothing where nothing should be yet. */
    DEAD("dead"),
    /** The load does nothing while it is off. */
    REST("rest"),
    /** The load works. */
    WORKS("works"),
    /** What is lost on the way to the load. */
    FEED("feed"),
    /** What is lost on the way back. */
    RETURN("return"),
    /** What is lost on a stretch of a way on which too much is lost. */
    PIECE("piece"),
    /** The full fuse is back. */
    SWAP("swap");

    private final String word;

    What(String word) {
      this.word = word;
    }

    /** The word that the phrases use. */
    String word() {
      return word;
    }
  }

  /** A phrase of caution with what it is about. */
  public record Caution(String key, String about) {}

  /** Whether it is answered by done or not, without meter or look. */
  public boolean byHand() {
    return check.isEmpty();
  }

  /** The check as a case or a journal keeps it. */
  Optional<OwnCheck> own() {
    return check.map(OwnCheck::of);
  }

  /** Whether a reading is as it should be. */
  boolean holds(Reading.Value value) {
    if (value instanceof Reading.Value.Number n) {
      return n.value() >= low && n.value() <= high;
    }
    if (value instanceof Reading.Value.Between b) {
      return b.low() >= low && b.high() <= high;
    }
    if (value instanceof Reading.Value.OverRange) {
      return Double.isInfinite(high);
    }
    return seen.filter(((Reading.Value.Sight) value).seen()::equals).isPresent();
  }

  /**
   * What would be complained of if a reading isn't as it should be; empty where no case follows but
   * something is to be put right by hand.
   */
  Optional<ComplaintKind> complaint(Optional<Reading.Value> value) {
    return switch (what) {
      // A load that works and yet loses too much on its way is no complaint that could be searched
      // by: it is traced along the way, see Proving.
      case BARE, RATING, ZERO, CONNECT, BATTERY, SWAP, FEED, RETURN, PIECE -> Optional.empty();
      case FIT -> Optional.of(ComplaintKind.BLOWS_FUSE);
      case SHORT -> value.flatMap(this::ofOhms);
      case BONDED, LIVE -> Optional.of(ComplaintKind.DEAD);
      case DEAD, REST -> Optional.of(ComplaintKind.STUCK_ON);
      case WORKS ->
          Optional.of(
              value.filter(new Reading.Value.Sight(Seen.DIM)::equals).isPresent()
                  ? ComplaintKind.DIM
                  : ComplaintKind.DEAD);
    };
  }

  /** A short blows its fuse, an open way leaves the load dead; what lies between does neither. */
  private Optional<ComplaintKind> ofOhms(Reading.Value value) {
    double ohms =
        value instanceof Reading.Value.Number n
            ? n.value()
            : value instanceof Reading.Value.Between b ? b.high() : Double.POSITIVE_INFINITY;
    if (ohms > high) {
      return Optional.of(ComplaintKind.DEAD);
    }
    return ohms < BLOWS ? Optional.of(ComplaintKind.BLOWS_FUSE) : Optional.empty();
  }

  /** Whether the meter drives its current through a dead circuit. */
  boolean ohms() {
    return check.filter(c -> c.kind() == CheckKind.OHMS).isPresent();
  }
}
