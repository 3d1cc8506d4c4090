package loopwright.diagnosis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.solver.Failure;
import loopwright.solver.History;
import loopwright.solver.Variant;

/**
 * One way the vehicle may be: a suspect, or one cell of a suspect's resistance range, or two of
 * these at once, ready to be solved.
 *
 * @param suspect the suspect it belongs to; for a pair a name made of both
 * @param parts the parts that have failed in it; empty for health and for the unlisted rest
 * @param failures the failures put in
 * @param cell added resistance in ohms where the suspect is a continuum
 * @param variant the network with the failures in
 * @param history fuses that have blown by the time the complaint was made
 * @param prior chance before any reading, complaint not yet counted
 * @param members the two single hypotheses of a pair; empty for all others
 * @param spentIn the setting in which fuses had their say, where it isn't the one complained of
 */
public record Hypothesis(
    SuspectId suspect,
    List<String> parts,
    List<Failure> failures,
    Optional<Spread> cell,
    Variant variant,
    History history,
    double prior,
    List<Hypothesis> members,
    Optional<Setting> spentIn) {

  /** By suspect and cell: the same in every run. */
  static final Comparator<Hypothesis> ORDER =
      Comparator.comparing(Hypothesis::suspect)
          .thenComparingDouble(h -> h.low(0))
          .thenComparingDouble(h -> h.low(1));

  /** Copies the lists. */
  public Hypothesis {
    parts = List.copyOf(parts);
    failures = List.copyOf(failures);
    members = List.copyOf(members);
  }

  /** A hypothesis that is no pair, whose fuses had their say where it is complained of. */
  public Hypothesis(
      SuspectId suspect,
      List<String> parts,
      List<Failure> failures,
      Optional<Spread> cell,
      Variant variant,
      History history,
      double prior) {
    this(suspect, parts, failures, cell, variant, history, prior, List.of(), Optional.empty());
  }

  /** The single hypotheses in it: itself, or the two of a pair. */
  List<Hypothesis> singles() {
    return members.isEmpty() ? List.of(this) : members;
  }

  /** Whether two failures are put in. */
  boolean pair() {
    return !members.isEmpty();
  }

  /** The single hypothesis of a part in it; empty if that part is sound. */
  Optional<Hypothesis> of(String part) {
    return singles().stream().filter(h -> h.parts().contains(part)).findFirst();
  }

  /** A pair without one of its parts. */
  Hypothesis without(String part) {
    return members.stream().filter(h -> !h.parts().contains(part)).findFirst().orElseThrow();
  }

  private double low(int member) {
    return member < singles().size()
        ? singles().get(member).cell().map(Spread::low).orElse(Double.NEGATIVE_INFINITY)
        : Double.NEGATIVE_INFINITY;
  }

  /** Whether this is the rest that no table lists. */
  public boolean unlisted() {
    return suspect.equals(SuspectId.UNLISTED);
  }

  /** The part that has failed; a single failure has exactly one, of a pair it is the first. */
  public String part() {
    return parts.isEmpty() ? SuspectId.NONE : parts.get(0);
  }
}
