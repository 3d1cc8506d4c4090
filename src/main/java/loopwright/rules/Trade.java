package loopwright.rules;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Fact.CaseFact;
import loopwright.diagnosis.rulebook.Fact.PlanFigure;
import loopwright.diagnosis.rulebook.Fact.ReadingFact;
import loopwright.diagnosis.rulebook.Fact.ValueClass;
import loopwright.model.PartKind;

/**
 * Words that the rules use in their conditions and texts. On a vehicle with the positive post
 * grounded the healthy volts are negative; every comparison here is by size towards the healthy
 * side, so that a rule needs not be written twice.
 */
public final class Trade {

  /** Nothing a display shows beyond this, in volts, is called "no volts": leakage and noise. */
  private static final double NO_VOLTS = 0.05;

  /** Share of the supply from which all of it is said to lie across a piece. */
  private static final double WHOLE = 0.9;

  /** From here a hand-held meter on ohms may show OL on a healthy circuit, in ohms. */
  private static final double OVER_RANGE_OHMS = 2e6;

  private Trade() {}

  /** A part, to be written with its title. */
  public static Argument name(String part) {
    return new Argument.Title(part);
  }

  /** Parts, to be written with their titles. */
  public static Argument names(List<String> parts) {
    return new Argument.Titles(parts);
  }

  /** What is lost or let go in a figure of a sneak path, to be written with titles. */
  public static Argument lost(PlanFigure f) {
    return names(f.with().subList(0, count(f, 3)));
  }

  /** The other loads that a sneak path wakes, to be written with titles. */
  public static Argument others(PlanFigure f) {
    return names(f.with().subList(count(f, 3), count(f, 3) + count(f, 4)));
  }

  /** The way of a sneak path from the feed post to the grounded one, to be written with titles. */
  public static Argument way(PlanFigure f) {
    return names(f.with().subList(count(f, 3) + count(f, 4), f.with().size()));
  }

  private static int count(PlanFigure f, int place) {
    return ((Number) f.said(place)).intValue();
  }

  /** What a reading showed, to be written with its unit. */
  public static Argument shown(ReadingFact r) {
    return switch (r.valueClass()) {
      case OVER_RANGE -> new Argument.Word("OL");
      case SEEN -> new Argument.Word(r.seen().word());
      case NUMBER ->
          r.kind() == CheckKind.OHMS ? new Argument.Ohms(r.value()) : new Argument.Volts(r.value());
    };
  }

  /** Volts, to be written with their unit. */
  public static Argument volts(double volts) {
    return new Argument.Volts(volts);
  }

  /** What a healthy circuit shows, to be written as a band with its unit. */
  public static Argument healthy(ReadingFact r) {
    return r.kind() == CheckKind.OHMS
        ? new Argument.Band(new Argument.Ohms(r.healthyLow()), new Argument.Ohms(r.healthyHigh()))
        : new Argument.Band(
            new Argument.Volts(r.healthyLow()), new Argument.Volts(r.healthyHigh()));
  }

  /** A failure mode in words: {@code high resistance}, {@code open (tail)}. */
  public static Argument mode(SuspectId suspect) {
    String words = base(suspect.mode()).replace('-', ' ');
    String element = element(suspect.mode());
    return word(element.isEmpty() ? words : words + " (" + element.replace(':', ' ') + ")");
  }

  /** A temperature with its unit. */
  public static Argument celsius(Object degrees) {
    return new Argument.Celsius(((Number) degrees).doubleValue());
  }

  /** A word of the trade: what a load does, what lost volts cost. */
  public static Argument word(Object word) {
    return new Argument.Word(word.toString());
  }

  /**
   * The part that is meant where one filament of a lamp may be named: {@code L1} of {@code
   * L1:stop}.
   */
  public static String part(String partOrFilament) {
    return base(partOrFilament);
  }

  /** The mode without the element it names: {@code open} of {@code open:tail}. */
  public static String base(String mode) {
    int colon = mode.indexOf(':');
    return colon < 0 ? mode : mode.substring(0, colon);
  }

  /** The element a mode names, or nothing. */
  public static String element(String mode) {
    int colon = mode.indexOf(':');
    return colon < 0 ? "" : mode.substring(colon + 1);
  }

  /** Whether this mode lets current out of its way and so can blow a fuse. */
  public static boolean isShort(SuspectId suspect) {
    return switch (base(suspect.mode())) {
      case "short-to-ground",
          "short-to-neighbour",
          "diode-shorted",
          "diode-backwards",
          "coil-shorted",
          "shorted",
          "seized",
          "wrong-lamp-large" ->
          true;
      default -> false;
    };
  }

  /** Reading numbers, in order, with commas. */
  public static String list(Set<Integer> readings) {
    return new TreeSet<>(readings).stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  /** Whether a healthy circuit could show this. Something seen is not judged here. */
  public static boolean asHealthy(ReadingFact r) {
    return switch (r.valueClass()) {
      case SEEN -> false;
      case OVER_RANGE -> r.kind() == CheckKind.OHMS && r.healthyHigh() >= OVER_RANGE_OHMS;
      case NUMBER ->
          r.value() + r.error() >= r.healthyLow() && r.value() - r.error() <= r.healthyHigh();
    };
  }

  /** Whether a number lies nearer to zero than any healthy one. */
  public static boolean less(ReadingFact r) {
    return r.valueClass() == ValueClass.NUMBER
        && !spansZero(r)
        && towards(r) * r.value() + r.error() < least(r);
  }

  /** Whether a number lies farther from zero than any healthy one, the meter's error allowed. */
  public static boolean more(ReadingFact r) {
    if (r.valueClass() != ValueClass.NUMBER) {
      return false;
    }
    if (spansZero(r)) {
      return r.value() - r.error() > r.healthyHigh() || r.value() + r.error() < r.healthyLow();
    }
    return towards(r) * r.value() - r.error() > most(r);
  }

  /** Whether no volts are shown. */
  public static boolean noVolts(ReadingFact r) {
    return r.valueClass() == ValueClass.NUMBER && Math.abs(r.value()) <= NO_VOLTS + r.error();
  }

  /** Whether a healthy circuit shows less than half a volt here: ground side, or across a joint. */
  public static boolean healthyNearZero(ReadingFact r) {
    return Math.abs(r.healthyLow()) < 0.5 && Math.abs(r.healthyHigh()) < 0.5;
  }

  /** Whether a healthy circuit shows more than a volt here. */
  public static boolean healthyLive(ReadingFact r) {
    return !spansZero(r) && least(r) > 1;
  }

  /** Whether the reading would be healthy with the leads changed over, and isn't as it stands. */
  public static boolean mirrored(ReadingFact r) {
    return r.valueClass() == ValueClass.NUMBER
        && healthyLive(r)
        && !asHealthy(r)
        && -r.value() + r.error() >= r.healthyLow()
        && -r.value() - r.error() <= r.healthyHigh();
  }

  /** Whether the whole supply shows, within a tenth. */
  public static boolean wholeSupply(ReadingFact r, CaseFact c) {
    return r.valueClass() == ValueClass.NUMBER
        && Math.abs(r.value()) + r.error() >= WHOLE * c.healthySourceVolts();
  }

  /** Whether part of the supply shows: some, and not the whole. */
  public static boolean between(ReadingFact r, CaseFact c) {
    return r.valueClass() == ValueClass.NUMBER && !noVolts(r) && !wholeSupply(r, c);
  }

  /** Whether the kind of check puts the meter's own current through the circuit. */
  public static boolean drives(CheckKind kind) {
    return kind.drives();
  }

  /** Whether the kind of check reads volts, of any size. */
  public static boolean reads(CheckKind kind) {
    return kind.reads();
  }

  /** Whether hands take something apart or move it. */
  public static boolean handles(CheckKind kind) {
    return kind == CheckKind.UNPLUG_AND_LOOK
        || kind == CheckKind.SWAP
        || kind == CheckKind.WIGGLE
        || kind == CheckKind.LAMP_FOR_FUSE
        || kind == CheckKind.DRAIN;
  }

  /** Whether it is one piece on the way to a load that must not drop much while current flows. */
  public static boolean passes(PartKind kind) {
    return switch (kind) {
      case WIRE, STRAP, FUSE, SWITCH, RELAY, CONNECTOR, SPLICE, GROUND, BODY -> true;
      default -> false;
    };
  }

  private static boolean spansZero(ReadingFact r) {
    return r.healthyLow() <= 0 && r.healthyHigh() >= 0;
  }

  private static double towards(ReadingFact r) {
    return r.healthyHigh() < 0 ? -1 : 1;
  }

  private static double least(ReadingFact r) {
    return Math.min(Math.abs(r.healthyLow()), Math.abs(r.healthyHigh()));
  }

  private static double most(ReadingFact r) {
    return Math.max(Math.abs(r.healthyLow()), Math.abs(r.healthyHigh()));
  }
}
