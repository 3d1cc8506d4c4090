package loopwright.diagnosis.belief;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Candidates with their chances after what was observed. A candidate says of each piece which mode
 * it is in; mode 0 is sound.
 *
 * @param all candidates that are possible, likeliest first; their chances sum to 1
 * @param observed chance, before it was observed, of what was observed
 */
public record Candidates(List<Candidate> all, double observed) {

  /** Candidates that are looked at, at most. */
  public static final int MOST = 2_000_000;

  /**
   * One candidate.
   *
   * @param modes mode of each piece
   * @param chance its chance
   */
  public record Candidate(List<Integer> modes, double chance) {
    /** Copies the list. */
    public Candidate {
      modes = List.copyOf(modes);
    }

    /** Pieces that are not sound. */
    public List<Integer> failed() {
      return IntStream.range(0, modes.size()).filter(p -> modes.get(p) != 0).boxed().toList();
    }
  }

  /** Copies the list. */
  public Candidates {
    all = List.copyOf(all);
  }

  /**
   * All candidates, pieces failing independently of each other.
   *
   * @param modes for each piece the chance of each of its modes; each sums to 1
   * @param likelihood chance of what was observed under the modes of a candidate
   * @throws IllegalArgumentException if the chances of a piece don't sum to 1 or there are more
   *     than {@value #MOST} candidates
   * @throws IllegalStateException if no candidate makes what was observed possible
   */
  public static Candidates of(
      List<List<Double>> modes, ToDoubleFunction<List<Integer>> likelihood) {
    long count = 1;
    for (int p = 0; p < modes.size(); p++) {
      double sum = modes.get(p).stream().mapToDouble(Double::doubleValue).sum();
      if (Math.abs(sum - 1) > 1e-9) {
        throw new IllegalArgumentException("modes of piece " + p + " sum to " + sum);
      }
      count *= modes.get(p).size();
      if (count > MOST) {
        throw new IllegalArgumentException("more than " + MOST + " candidates");
      }
    }
    List<Candidate> weighed = new ArrayList<>();
    for (long number = 0; number < count; number++) {
      List<Integer> chosen = new ArrayList<>();
      double weight = 1;
      long rest = number;
      for (List<Double> of : modes) {
        int mode = (int) (rest % of.size());
        rest /= of.size();
        chosen.add(mode);
        weight *= of.get(mode);
      }
      weight *= weight > 0 ? likelihood.applyAsDouble(List.copyOf(chosen)) : 1;
      if (weight > 0) {
        weighed.add(new Candidate(chosen, weight));
      }
    }
    return normalised(weighed);
  }

  /**
   * Candidates that are given as sets of failed pieces, each piece failing by itself.
   *
   * @param diagnoses sets of failed pieces
   * @param failing chance of each piece to fail
   */
  public static Candidates among(
      Collection<? extends Set<Integer>> diagnoses, List<Double> failing) {
    List<Candidate> weighed = new ArrayList<>();
    for (Set<Integer> failed : diagnoses) {
      List<Integer> modes = new ArrayList<>();
      double weight = 1;
      for (int p = 0; p < failing.size(); p++) {
        boolean out = failed.contains(p);
        modes.add(out ? 1 : 0);
        weight *= out ? failing.get(p) : 1 - failing.get(p);
      }
      weighed.add(new Candidate(modes, weight));
    }
    return normalised(weighed);
  }

  private static Candidates normalised(List<Candidate> weighed) {
    double sum = weighed.stream().mapToDouble(Candidate::chance).sum();
    if (sum <= 0) {
      throw new IllegalStateException("no candidate makes what was observed possible");
    }
    List<Candidate> all =
        weighed.stream()
            .map(c -> new Candidate(c.modes(), c.chance() / sum))
            .sorted(Comparator.comparingDouble(Candidate::chance).reversed())
            .toList();
    return new Candidates(all, sum);
  }

  /** Chance of a candidate; 0 if it is not possible. */
  public double chance(List<Integer> modes) {
    return all.stream().filter(c -> c.modes().equals(modes)).mapToDouble(Candidate::chance).sum();
  }

  /** Chance that a piece is not sound. */
  public double failed(int piece) {
    return all.stream().filter(c -> c.modes().get(piece) != 0).mapToDouble(Candidate::chance).sum();
  }
}
