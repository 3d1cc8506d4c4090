package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import loopwright.diagnosis.rulebook.Conclusion;

/**
 * The order of checks of one complaint, settled before any reading: what to check first, and after
 * each result where to go. A stage holds every single failure that can give the results which lead
 * to it, over all spreads and the meter's greatest error; one that lies on both sides of an edge is
 * held on both. Stages that hold the same are one.
 *
 * @param stages where one gets to; the first is where to begin
 * @param cautions cautions that hold from the first step to the last
 */
public record OrderOfChecks(List<Stage> stages, List<Conclusion.Caution> cautions) {

  /** Copies the lists. */
  public OrderOfChecks {
    stages = List.copyOf(stages);
    cautions = List.copyOf(cautions);
  }

  /**
   * Where one gets to.
   *
   * @param left share by part of what is still held, greatest first; {@link SuspectId#NONE} stands
   *     for nothing failed at all
   * @param asked the check that is made there; empty at an end
   */
  public record Stage(Map<String, Double> left, Optional<Asked> asked) {}

  /**
   * A check that is made.
   *
   * @param rank its place among all checks of the order, from 0: greater ones part less
   * @param check the check
   * @param deadFirst whether 0.00 V must be read between the same points first
   * @param results its results: by value from the lowest up, or by what is seen
   * @param cautions cautions that belong to it
   */
  public record Asked(
      int rank,
      Check check,
      boolean deadFirst,
      List<Result> results,
      List<Conclusion.Caution> cautions) {
    /** Copies the lists. */
    public Asked {
      results = List.copyOf(results);
      cautions = List.copyOf(cautions);
    }
  }

  /**
   * A result.
   *
   * @param low least value in volts or ohms; minus infinity where open
   * @param high values from here on belong to the next result; infinite where open, OL included
   * @param seen what is seen, for a look
   * @param stage index of the stage it leads to
   */
  public record Result(double low, double high, Optional<Seen> seen, int stage) {
    /** Whether a reading is this result. */
    public boolean takes(Reading.Value value) {
      if (value instanceof Reading.Value.Sight sight) {
        return seen.filter(sight.seen()::equals).isPresent();
      }
      if (value instanceof Reading.Value.OverRange) {
        return Double.isInfinite(high);
      }
      return value instanceof Reading.Value.Number n && low <= n.value() && n.value() < high;
    }
  }

  /** The same order with the first so many checks only; stages behind them become ends. */
  public OrderOfChecks upTo(int checks) {
    return new OrderOfChecks(
        stages.stream()
            .map(s -> new Stage(s.left(), s.asked().filter(a -> a.rank() < checks)))
            .toList(),
        cautions);
  }

  /** Grows an order check by check, where most is left to part. */
  static final class Growth {
    private final Sorting sorting;
    private final BiFunction<List<Reading>, Diagnosis.Circumstances, Findings> findings;
    private final List<Shoot> shoots = new ArrayList<>();
    private final Map<Hypothesis, Integer> numbers = new IdentityHashMap<>();
    private final Map<BitSet, Integer> byHeld = new HashMap<>();
    private List<Conclusion.Caution> cautions = List.of();

    /**
     * Begins with nothing.
     *
     * @param findings what readings amount to, as in a case
     */
    Growth(Sorting sorting, BiFunction<List<Reading>, Diagnosis.Circumstances, Findings> findings) {
      this.sorting = sorting;
      this.findings = findings;
    }

    /** A stage while the order grows. */
    private static final class Shoot {
      private final List<Planner.Weighted> held;
      private final List<Reading> supposed;
      private final Optional<Check> last;
      private Optional<Asked> asked = Optional.empty();
      private double open;

      private Shoot(List<Planner.Weighted> held, List<Reading> supposed, Optional<Check> last) {
        this.held = held;
        this.supposed = supposed;
        this.last = last;
        this.open = Sorting.open(held);
      }
    }

    /**
     * Grows an order.
     *
     * @param held all single failures with their chances, and that nothing has failed
     * @param most checks it has at most
     */
    OrderOfChecks grow(List<Planner.Weighted> held, int most) {
      held.forEach(w -> numbers.put(w.hypothesis(), numbers.size()));
      shoots.add(new Shoot(held, List.of(), Optional.empty()));
      int checks = 0;
      while (checks < most) {
        Shoot next = Collections.max(shoots, Comparator.comparingDouble(s -> s.open));
        if (next.open <= 0) {
          break;
        }
        next.open = 0;
        next.asked = ask(next, checks);
        checks += next.asked.isPresent() ? 1 : 0;
      }
      return new OrderOfChecks(
          shoots.stream().map(s -> new Stage(Sorting.shares(s.held), s.asked)).toList(), cautions);
    }

    private Optional<Asked> ask(Shoot at, int rank) {
      Findings now =
          findings.apply(
              at.supposed, new Diagnosis.Circumstances(Set.of(), Set.of(), Map.of(), at.last));
      if (at.supposed.isEmpty()) {
        cautions = cautions(now, "");
      }
      if (now.status() != Findings.Status.SEARCHING) {
        return Optional.empty();
      }
      return sorting.best(now.ranked(), at.held).map(p -> asked(at, rank, p, now));
    }

    private static Check asked(Findings.Proposal proposal) {
      return proposal.forWhat().orElse(proposal.check());
    }

    private Asked asked(Shoot at, int rank, Findings.Proposal proposal, Findings now) {
      Check check = asked(proposal);
      List<Reading> before = new ArrayList<>(at.supposed);
      List<Conclusion.Caution> careful = new ArrayList<>(cautions(now, check.id()));
      if (proposal.forWhat().isPresent()) {
        before.add(
            new Reading(before.size() + 1, proposal.check(), new Reading.Value.Number(0, 0.01)));
        careful.addAll(cautions(now, check.id() + CaseFacts.SUPPOSED));
        careful.addAll(cautions(now, proposal.check().id()));
      }
      List<Result> results = new ArrayList<>();
      for (Sorting.Sorted s : sorting.sort(check, at.held)) {
        List<Reading> supposed = new ArrayList<>(before);
        supposed.add(new Reading(before.size() + 1, check, s.value()));
        int stage = stage(at, new Shoot(s.held(), supposed, Optional.of(check)));
        results.add(new Result(s.low(), s.high(), s.seen(), stage));
      }
      return new Asked(rank, check, deadFirst(before, check), results, careful);
    }

    /** Whoever comes here by another way hasn't proven it dead: it is asked for in each step. */
    private static boolean deadFirst(List<Reading> before, Check check) {
      return check.kind().drives() && before.stream().anyMatch(r -> r.check().readsWhere(check));
    }

    /** The stage that holds just this: one that is there already, unless that leads back. */
    private int stage(Shoot from, Shoot shoot) {
      if (shoot.held.size() < from.held.size()) {
        BitSet held = new BitSet();
        shoot.held.forEach(w -> held.set(numbers.get(w.hypothesis())));
        Integer known = byHeld.putIfAbsent(held, shoots.size());
        if (known != null) {
          return known;
        }
      }
      shoots.add(shoot);
      return shoots.size() - 1;
    }

    private static List<Conclusion.Caution> cautions(Findings findings, String check) {
      return findings.conclusions().stream()
          .filter(Conclusion.Caution.class::isInstance)
          .map(Conclusion.Caution.class::cast)
          .filter(c -> c.check().equals(check))
          .distinct()
          .toList();
    }
  }
}
