package loopwright.knowledge;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loopwright.model.PartKind;

/**
 * One way in which a kind of part fails.
 *
 * @param kind kind of part
 * @param mode short name, unique within the kind, for instance {@code open}
 * @param title what a mechanic calls it, for instance "corroded or loose joint"
 * @param effects what it does to the network; all of them together
 * @param per what the rate counts
 * @param rates chance by context that one such part, metre or contact has this failure when a
 *     circuit is complained of
 * @param condition when the mode applies at all
 * @param visible whether a look at the part can show it
 * @param stays whether it stays behind in the holder, socket or wiring when the part is taken out,
 *     so that a good twin in its place has it too
 * @param shows chance that it comes or goes when provoked in a way, where it comes and goes at all;
 *     none for a way that isn't there
 * @param source where the rate comes from
 */
public record FaultMode(
    PartKind kind,
    String mode,
    String title,
    List<Effect> effects,
    Per per,
    Map<Context, Double> rates,
    Condition condition,
    boolean visible,
    boolean stays,
    Map<Provocation, Double> shows,
    String source) {

  /** What a rate counts. */
  public enum Per {
    PART("part"),
    METRE("metre"),
    CONTACT("contact");

    private final String word;

    Per(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /** When a mode applies. */
  public enum Condition {
    ALWAYS("always"),
    /** Only a relay with terminal 87a. */
    CHANGEOVER("changeover"),
    /** Only a relay whose coil has a diode. */
    COIL_DIODE("coil-diode"),
    /** Only a relay whose coil has a diode or a resistor across it. */
    COIL_SUPPRESSED("coil-suppressed"),
    /** Only a wire that shares its loom with others. */
    LOOM("loom");

    private final String word;

    Condition(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /** Copies the collections; rejects a missing context and rates outside 0 to 1. */
  public FaultMode {
    Objects.requireNonNull(kind, "kind");
    effects = List.copyOf(effects);
    rates = Map.copyOf(rates);
    shows = Map.copyOf(shows);
    for (Context context : Context.values()) {
      Double rate = rates.get(context);
      if (rate == null || !(rate >= 0 && rate <= 1)) {
        throw new IllegalArgumentException(
            kind.word()
                + "/"
                + mode
                + ": rate for "
                + context.word()
                + " must be 0 to 1, not "
                + rate);
      }
    }
  }

  /** Chance that it shows when provoked in this way, if it comes and goes; 0 to 1. */
  public double shows(Provocation way) {
    return shows.getOrDefault(way, 0.0);
  }

  /** The same with its rates multiplied; none becomes more than 1. */
  FaultMode rated(double factor) {
    if (factor == 1) {
      return this;
    }
    Map<Context, Double> rated = new EnumMap<>(Context.class);
    rates.forEach((context, rate) -> rated.put(context, Math.min(1, rate * factor)));
    return new FaultMode(
        kind, mode, title, effects, per, rated, condition, visible, stays, shows, source);
  }
}
