package loopwright.diagnosis;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Spread;
import loopwright.solver.Failure;

/**
 * The numbers behind "why still?" and "why not?": what a part would have to be to give a reading,
 * which of its failures can, and what a failure would have shown at most. Decides nothing; it
 * speaks of the same bounds that clear and the same likelihood that weighs.
 */
public final class Explainer {

  /** Least resistance looked at, in ohms: below it a joint is as good as sound. */
  static final double LEAST_OHMS = 1e-3;

  /** Greatest resistance looked at, in ohms: to a meter of 10 Mohm it is as good as open. */
  static final double MOST_OHMS = 1e7;

  /** Steps a factor of ten on the first pass over the resistances. */
  private static final int STEPS = 3;

  /** Ratio to which an end of the range is found: two figures. */
  private static final double CLOSE = 1.01;

  private final Workbench bench;
  private final Clearing clearing;
  private final HealthyBands bands;
  private final Likelihood likelihood;
  private final List<Hypothesis> inPlay;
  private final Map<Hypothesis, Double> prior;

  Explainer(
      Workbench bench,
      Clearing clearing,
      HealthyBands bands,
      Likelihood likelihood,
      List<Hypothesis> inPlay,
      Map<Hypothesis, Double> prior) {
    this.bench = bench;
    this.clearing = clearing;
    this.bands = bands;
    this.likelihood = likelihood;
    this.inPlay = inPlay;
    this.prior = prior;
  }

  /** Whether a failure mode can give a reading. */
  public enum Can {
    /** The reading lies where this failure's values lie. */
    GIVES,
    /** It lies beside them, but nothing proves that no value inside the spreads reaches it. */
    HARDLY,
    /** No value inside the spreads gives it, the meter's error included. */
    NEVER
  }

  /**
   * One failure mode beside a reading.
   *
   * @param suspect the suspect
   * @param title what a mechanic calls the mode
   * @param can whether it can give the reading
   */
  public record Mode(SuspectId suspect, String title, Can can) {}

  /** All suspects of a part that are in play, whether held or cleared. */
  public List<SuspectId> suspects(String part) {
    return of(part).stream().map(Hypothesis::suspect).distinct().toList();
  }

  /** Each of some suspects beside a meter reading. */
  public List<Mode> modes(Collection<SuspectId> suspects, Reading reading) {
    Map<SuspectId, Mode> modes = new LinkedHashMap<>();
    for (Hypothesis h : of(suspects)) {
      Mode mode = new Mode(h.suspect(), h.failures().get(0).mode().title(), can(h, reading));
      modes.merge(h.suspect(), mode, (a, b) -> a.can().compareTo(b.can()) <= 0 ? a : b);
    }
    return List.copyOf(modes.values());
  }

  private Can can(Hypothesis h, Reading reading) {
    if (clearing.standing(h, reading) == Fact.Standing.OUT) {
      return Can.NEVER;
    }
    return reaches(bands.band(h, reading.check()), reading.value()) == 0 ? Can.GIVES : Can.HARDLY;
  }

  private List<Hypothesis> of(String part) {
    return inPlay.stream().filter(h -> h.part().equals(part)).toList();
  }

  private List<Hypothesis> of(Collection<SuspectId> suspects) {
    return inPlay.stream().filter(h -> suspects.contains(h.suspect())).toList();
  }

  /** Where a value lies against a band: below it, in it or above it, as -1, 0 and 1. */
  private static int reaches(double[] band, Reading.Value value) {
    double low;
    double high;
    if (value instanceof Reading.Value.Number n) {
      low = n.value() - n.step() / 2;
      high = n.value() + n.step() / 2;
    } else if (value instanceof Reading.Value.Between b) {
      low = b.low();
      high = b.high();
    } else {
      low = Double.POSITIVE_INFINITY;
      high = low;
    }
    if (high < band[0]) {
      return -1;
    }
    return low > band[1] ? 1 : 0;
  }

  // ---- the resistance that a reading asks for -------------------------------------------------

  /**
   * The resistance that a part would have to have in the way for a reading, all other values inside
   * their spreads.
   *
   * @param low least, in ohms; 0 if a sound part gives the reading too
   * @param high greatest, in ohms; infinite if an open one gives it too
   */
  public record Needed(double low, double high) {
    /** Whether any resistance at all gives the reading, so that it says nothing of this part. */
    public boolean any() {
      return low <= 0 && Double.isInfinite(high);
    }
  }

  /** What {@link #needed} finds. */
  public sealed interface Resistance {
    /** The part has no joint whose resistance could be asked for, or the reading is no value. */
    record Unasked() implements Resistance {}

    /** No resistance of it, however great, gives the reading. */
    record None() implements Resistance {}

    /**
     * These resistances give it.
     *
     * @param joint which of the part's joints; empty if it has one
     * @param ohms the resistances
     */
    record Between(String joint, Needed ohms) implements Resistance {}
  }

  /**
   * The resistance in a part that gives a reading. Where it has several joints in the way, the
   * first of which the reading says anything speaks for it.
   *
   * @param suspects suspects of one part, those whose joints are to be tried first coming first
   * @param reading a meter reading
   */
  public Resistance needed(List<SuspectId> suspects, Reading reading) {
    Resistance first = new Resistance.Unasked();
    if (!reading.check().kind().metered() || suspects.isEmpty()) {
      return first;
    }
    for (Failure joint : joints(suspects)) {
      String where = joint.name().substring(1 + joint.name().indexOf(':'));
      Resistance found =
          new Search(joint, reading)
              .range()
              .<Resistance>map(
                  ohms -> new Resistance.Between(joint.name().contains(":") ? where : "", ohms))
              .orElseGet(Resistance.None::new);
      if (found instanceof Resistance.Between b && !b.ohms().any()) {
        return found;
      }
      first = first instanceof Resistance.Unasked ? found : first;
    }
    return first;
  }

  /** Most joints of one part that are tried. */
  private static final int MOST_JOINTS = 3;

  /** The failures of these suspects that put a resistance in the way, else those of their part. */
  private List<Failure> joints(List<SuspectId> suspects) {
    String part = suspects.get(0).part();
    List<Failure> joints =
        suspects.stream()
            .flatMap(s -> inPlay.stream().filter(h -> h.suspect().equals(s)).limit(1))
            .map(h -> h.failures().get(0))
            .filter(Explainer::inTheWay)
            .limit(MOST_JOINTS)
            .toList();
    return joints.isEmpty()
        ? Failure.of(bench.network(), bench.vehicle().requirePart(part), bench.knowledge().faults())
            .stream()
            .filter(Explainer::inTheWay)
            .limit(1)
            .toList()
        : joints;
  }

  private static boolean inTheWay(Failure failure) {
    return failure.continuum().isPresent() && !failure.bridges();
  }

  /** Looks for the resistances of one joint that give one reading. */
  private final class Search {
    private final Failure joint;
    private final Reading reading;

    /** Bands of their own: what is tried here is forgotten again. */
    private final HealthyBands tried = new HealthyBands(bench);

    Search(Failure joint, Reading reading) {
      this.joint = joint;
      this.reading = reading;
    }

    /** The range; empty if no resistance gives the reading. */
    Optional<Needed> range() {
      int count = (int) Math.round(STEPS * Math.log10(MOST_OHMS / LEAST_OHMS)) + 1;
      double[] ohms = new double[count];
      int[] at = new int[count];
      int first = -1;
      int last = -1;
      for (int i = 0; i < count; i++) {
        ohms[i] = LEAST_OHMS * Math.pow(10, (double) i / STEPS);
        at[i] = at(ohms[i]);
        if (at[i] == 0) {
          first = first < 0 ? i : first;
          last = i;
        }
      }
      if (first >= 0) {
        double low = first == 0 ? 0 : edge(ohms[first], ohms[first - 1]);
        double high =
            last == count - 1 ? Double.POSITIVE_INFINITY : edge(ohms[last], ohms[last + 1]);
        return Optional.of(new Needed(low, high));
      }
      for (int i = 1; i < count; i++) {
        if (at[i - 1] != at[i]) {
          return within(ohms[i - 1], at[i - 1], ohms[i]);
        }
      }
      return Optional.empty();
    }

    /** The band passes over the reading between two resistances: halves down to where. */
    private Optional<Needed> within(double low, int atLow, double high) {
      double from = low;
      double to = high;
      while (to / from > CLOSE) {
        double middle = Math.sqrt(from * to);
        int at = at(middle);
        if (at == 0) {
          return Optional.of(new Needed(edge(middle, from), edge(middle, to)));
        }
        if (at == atLow) {
          from = middle;
        } else {
          to = middle;
        }
      }
      return Optional.empty();
    }

    private double edge(double inside, double outside) {
      double in = inside;
      double out = outside;
      while (Math.max(in / out, out / in) > CLOSE) {
        double middle = Math.sqrt(in * out);
        if (at(middle) == 0) {
          in = middle;
        } else {
          out = middle;
        }
      }
      return in;
    }

    /** Where the reading lies against what this resistance shows. */
    private int at(double ohms) {
      return bench.tried(
          joint,
          Spread.exactly(ohms),
          h -> reaches(tried.band(h, reading.check()), reading.value()));
    }
  }

  // ---- what ruled a part out -----------------------------------------------------------------

  /**
   * What the failures that a reading rules out would have shown instead.
   *
   * @param most greatest value of those that would have shown less, the meter's error included
   * @param least least value of those that would have shown more
   */
  public record Instead(Optional<Double> most, Optional<Double> least) {}

  /**
   * What suspects would have shown at most and at least in place of a reading that rules them out:
   * the bounds that cleared them.
   */
  public Instead instead(Collection<SuspectId> suspects, Reading reading) {
    double most = Double.NEGATIVE_INFINITY;
    double least = Double.POSITIVE_INFINITY;
    MeterSpec meter = bench.meter();
    MeterFunction function = Workbench.function(reading.check());
    for (Hypothesis h : of(suspects)) {
      Optional<Predictor.Possible> bounds = clearing.bounds(h, reading);
      if (bounds.isEmpty()) {
        continue;
      }
      double low = bounds.get().low();
      double high = bounds.get().high();
      if (reaches(new double[] {low, high}, reading.value()) > 0) {
        most = Math.max(most, high + meter.error(function, high));
      } else {
        least = Math.min(least, low - meter.error(function, low));
      }
    }
    return new Instead(
        Double.isInfinite(most) ? Optional.empty() : Optional.of(most),
        Double.isInfinite(least) ? Optional.empty() : Optional.of(least));
  }

  // ---- how the belief came about ----------------------------------------------------------------

  /** Share of suspects in the chances before any reading, 0 to 1. */
  public double before(Collection<SuspectId> suspects) {
    double all = inPlay.stream().mapToDouble(prior::get).sum();
    return of(suspects).stream().mapToDouble(prior::get).sum() / all;
  }

  /**
   * The reading that speaks most against suspects: the one that would have to be a slip if the
   * failure were among them.
   *
   * @param reading its number
   * @param slip chance of the slip, given one of these failures, 0 to 1
   */
  public record Odd(int reading, double slip) {}

  /** The reading that speaks most against some suspects; empty without readings. */
  public Optional<Odd> against(Collection<SuspectId> suspects, List<Reading> readings) {
    List<Hypothesis> all = of(suspects);
    if (all.isEmpty() || readings.isEmpty()) {
      return Optional.empty();
    }
    return Belief.weigh(all, prior::get, likelihood.of(all, readings), readings)
        .odd()
        .entrySet()
        .stream()
        .max(Map.Entry.comparingByValue())
        .map(e -> new Odd(e.getKey(), e.getValue()));
  }
}
