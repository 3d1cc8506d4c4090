package loopwright.knowledge;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.model.Spread;

/**
 * What circuit patterns begin with where nobody says otherwise: loads, trailer sockets, and how
 * many volts may be lost on the way.
 *
 * @param loads usual loads by name and system volts
 * @param pins pins of trailer sockets
 * @param drops limits of lost volts
 */
public record PatternValues(List<Load> loads, List<Pin> pins, List<Drop> drops) {

  /** The source of what the trade does and nobody published. */
  public static final String COMMON_PRACTICE = "common practice";

  /** Copies the lists. */
  public PatternValues {
    loads = List.copyOf(loads);
    pins = List.copyOf(pins);
    drops = List.copyOf(drops);
  }

  /**
   * What one load takes.
   *
   * @param name for instance {@code horn}
   * @param systemVolts 6, 12 or 24; empty if it holds for all
   * @param amount usual amount with its limits, in its unit
   * @param unit {@code W} or {@code A}
   * @param source where it comes from
   */
  public record Load(
      String name, Optional<Integer> systemVolts, Spread amount, String unit, String source) {
    /** Rejects missing components. */
    public Load {
      Objects.requireNonNull(amount, "amount");
      Objects.requireNonNull(source, "source");
    }
  }

  /**
   * One pin of a trailer socket.
   *
   * @param standard for instance {@code ISO 1724}
   * @param systemVolts the volts the standard is for
   * @param pin the number moulded beside it
   * @param marking the terminal's mark by DIN 72552
   * @param function what it feeds, for instance {@code stop}; {@code ground} or {@code spare}
   * @param source where it comes from
   */
  public record Pin(
      String standard,
      int systemVolts,
      String pin,
      String marking,
      String function,
      String source) {}

  /** A stretch of which the lost volts have a limit. */
  public enum Stretch {
    /** From the battery to a load that works for long. */
    FEED("whole lighting feed, battery positive to lamp"),
    /** From a load to the battery's grounded post. */
    GROUND("lamp ground, lamp body to battery negative"),
    /** From the battery to a starter while it cranks. */
    STARTER_FEED("battery positive post to starter positive terminal"),
    /** From a starter to the battery's grounded post while it cranks. */
    STARTER_GROUND("starter ground side");

    private final String piece;

    Stretch(String piece) {
      this.piece = piece;
    }

    /** What the table calls it. */
    public String piece() {
      return piece;
    }
  }

  /**
   * How many volts may be lost.
   *
   * @param stretch where
   * @param systemVolts 6, 12 or 24
   * @param volts the limit in volts
   * @param source where it comes from
   */
  public record Drop(Stretch stretch, int systemVolts, double volts, String source) {}

  /**
   * What a load takes on a vehicle of these volts.
   *
   * @throws IllegalArgumentException if the table has no such load
   */
  public Load load(String name, int systemVolts) {
    return loads.stream()
        .filter(l -> l.name().equals(name))
        .filter(l -> l.systemVolts().map(v -> v == systemVolts).orElse(true))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("no usual load " + name + " at " + systemVolts));
  }

  /**
   * The pins of the trailer socket for these volts; the 12 V one for 6 V, which has no standard of
   * its own.
   */
  public List<Pin> socket(int systemVolts) {
    int volts = systemVolts == 24 ? 24 : 12;
    return pins.stream().filter(p -> p.systemVolts() == volts).toList();
  }

  /** The limit for these volts; where the table has none, that for 12 V in proportion. */
  public Drop drop(Stretch stretch, int systemVolts) {
    Optional<Drop> exact = find(stretch, systemVolts);
    if (exact.isPresent()) {
      return exact.get();
    }
    Drop twelve =
        find(stretch, 12)
            .orElseThrow(() -> new IllegalArgumentException("no limit for " + stretch.piece()));
    // A ground's joints are the same whatever the volts: it keeps its limit.
    double share = stretch == Stretch.GROUND ? 1 : systemVolts / 12.0;
    return new Drop(stretch, systemVolts, twelve.volts() * share, twelve.source());
  }

  private Optional<Drop> find(Stretch stretch, int systemVolts) {
    return drops.stream()
        .filter(d -> d.stretch() == stretch && d.systemVolts() == systemVolts)
        .findFirst();
  }
}
