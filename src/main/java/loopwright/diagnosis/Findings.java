package loopwright.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.model.Spread;

/**
 * What the readings so far amount to.
 *
 * @param status where the search stands
 * @param parts suspected parts, strongest first
 * @param together pairs of parts that may have failed at once, strongest first
 * @param group parts of the answer when isolated: one, several that no check tells apart, or two
 *     that have both failed
 * @param held chance that the answer is right: that one of the group has failed, or both have
 * @param unlisted chance that it is something no table lists
 * @param healthy chance that nothing has failed
 * @param cleared for each part that is wholly ruled out, what ruled it out
 * @param outOfPlay parts that could not cause the complaint to begin with
 * @param conclusions all that the rules conclude
 * @param ranked checks that may be proposed, best first
 * @param odd chance of each reading to be a slip, by reading number
 * @param atOdds readings that contradict each other; empty without a contradiction
 */
public record Findings(
    Status status,
    List<PartBelief> parts,
    List<PairBelief> together,
    List<String> group,
    double held,
    double unlisted,
    double healthy,
    Map<String, List<Conclusion.ClearedBy>> cleared,
    Set<String> outOfPlay,
    List<Conclusion> conclusions,
    List<Proposal> ranked,
    Map<Integer, Double> odd,
    List<Integer> atOdds) {

  /** Least information in bits for which a check tells anything. */
  private static final double TELLS = 1e-4;

  /** Nothing known. */
  public static final Findings NONE =
      new Findings(
          Status.SEARCHING,
          List.of(),
          List.of(),
          List.of(),
          0,
          0,
          0,
          Map.of(),
          Set.of(),
          List.of(),
          List.of(),
          Map.of(),
          List.of());

  /** Where the search stands. */
  public enum Status {
    SEARCHING,
    ISOLATED,
    HEALTHY,
    CONTRADICTION
  }

  /**
   * One part's share of the belief.
   *
   * @param part its id
   * @param belief chance that it has failed, alone or with another
   * @param modes its failure modes that are still held, strongest first
   */
  public record PartBelief(String part, double belief, List<ModeBelief> modes) {
    /** Copies the list. */
    public PartBelief {
      modes = List.copyOf(modes);
    }
  }

  /**
   * The chance of two failures at once.
   *
   * @param parts ids of the two parts, in alphabetical order
   * @param belief chance that just these two have failed
   */
  public record PairBelief(List<String> parts, double belief) {
    /** Copies the list. */
    public PairBelief {
      parts = List.copyOf(parts);
    }
  }

  /**
   * One failure mode's share.
   *
   * @param suspect the suspect
   * @param title what a mechanic calls the mode
   * @param belief its chance
   * @param ohms live range of added resistance in ohms, for a continuum
   */
  public record ModeBelief(SuspectId suspect, String title, double belief, Optional<Spread> ohms) {}

  /**
   * A result a check may have.
   *
   * @param low least value in volts or ohms; minus infinity where open
   * @param high greatest value; infinite where open
   * @param seen what is seen, for a look
   * @param chance how likely it is
   * @param parts chance of each part after it
   */
  public record Outcome(
      double low, double high, Optional<Seen> seen, double chance, Map<String, Double> parts) {}

  /**
   * A check that may be proposed.
   *
   * @param check the check
   * @param bits expected information about the failed part
   * @param minutes working time
   * @param worth what it is ranked by
   * @param outcomes its results
   * @param forWhat for a check that only prepares another one: that one
   */
  public record Proposal(
      Check check,
      double bits,
      double minutes,
      double worth,
      List<Outcome> outcomes,
      Optional<Check> forWhat) {

    /** Whether it tells anything at all. */
    public boolean tells() {
      return bits >= TELLS;
    }

    /** Whether what it is expected to tell is worth its minutes. */
    public boolean worthAsking() {
      return bits >= Ranking.WORTH_ASKING;
    }
  }

  /** Whether the answer is that both parts of the group have failed. */
  public boolean both() {
    return status == Status.ISOLATED
        && !together.isEmpty()
        && together.get(0).belief() >= Diagnosis.SURE
        && together.get(0).parts().equals(group);
  }

  /** Copies the collections. */
  public Findings {
    parts = List.copyOf(parts);
    together = List.copyOf(together);
    group = List.copyOf(group);
    cleared = Map.copyOf(cleared);
    outOfPlay = Set.copyOf(outOfPlay);
    conclusions = List.copyOf(conclusions);
    ranked = List.copyOf(ranked);
    odd = Map.copyOf(odd);
    atOdds = List.copyOf(atOdds);
  }
}
