package loopwright.bench;

import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import loopwright.knowledge.Provocation;
import loopwright.meter.AmpsJack;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Failure;
import loopwright.solver.GroundedLead;
import loopwright.solver.History;
import loopwright.solver.Meters;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.TestLamp;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * One vehicle as it really is: every value drawn from its spread, the failures put in, fuses blown
 * as they would have; and a meter with errors of its own inside its description. Everything is
 * solved anew with the whole matrix; nothing is shared with the diagnosis but the vehicle.
 */
public final class HiddenTruth {

  /** What the display shows. */
  public sealed interface Display {
    /**
     * A number.
     *
     * @param value in volts or ohms, rounded as shown
     * @param step one digit of the last place
     */
    record Number(double value, double step) implements Display {}

    /** OL. */
    record OverRange() implements Display {}
  }

  /** How a load is seen to work. */
  public enum Sight {
    ON,
    DIM,
    OFF
  }

  private final Network network;
  private final Solver solver;
  private final Variant variant;
  private final Values values;
  private final Map<Failure, Spread> failures = new LinkedHashMap<>();
  private final Draw draw;
  private final long seed;
  private final Variant sound;
  private final Values soundValues;
  private final MeterSpec meter;
  private final Random random;
  private final Map<MeterFunction, Map<Double, Double>> gain = new HashMap<>();
  private final double leadOhms;
  private History history = History.NONE;

  /** How the true values are chosen. */
  public enum Draw {
    /** Every value typical, the meter without error. */
    TYPICAL,
    /** Every value and the meter's errors anywhere within their limits. */
    WITHIN,
    /** Every value at one end of its spread, the meter at one end of its error. */
    AT_LIMITS
  }

  /**
   * Makes a vehicle with hidden failures.
   *
   * @param network the healthy network
   * @param failures what has failed
   * @param ohms added resistance by failure for those that are a continuum, in ohms; empty map:
   *     drawn evenly on a log scale
   * @param meter the meter
   * @param draw how true values are chosen
   * @param seed of all chance: the same seed gives the same true values whatever has failed
   */
  public HiddenTruth(
      Network network,
      List<Failure> failures,
      Map<Failure, Double> ohms,
      MeterSpec meter,
      Draw draw,
      long seed) {
    this.network = network;
    this.meter = meter;
    this.draw = draw;
    this.seed = seed;
    this.random = new Random(seed ^ 0x5DEECE66DL);
    Random chance = new Random(seed ^ 0x2545F491L);
    this.solver = Solver.full(network);
    Variant failed = Variant.healthy(network);
    for (Failure failure : failures) {
      Spread added =
          failure
              .continuum()
              .map(
                  range ->
                      Spread.exactly(
                          ohms.getOrDefault(
                              failure,
                              range.low()
                                  * Math.pow(range.high() / range.low(), chance.nextDouble()))))
              .orElse(Spread.exactly(0));
      failed = failed.with(failure.changes(failed, added));
      this.failures.put(failure, added);
    }
    this.variant = failed;
    this.values = values(variant, draw, seed);
    this.sound = Variant.healthy(network);
    this.soundValues = values(sound, draw, seed);
    boolean exact = draw == Draw.TYPICAL;
    Spread leads = meter.leadOhms();
    this.leadOhms = exact ? leads.typical() : leads.low() + random.nextDouble() * leads.width();
    for (MeterFunction f : MeterFunction.values()) {
      Map<Double, Double> byRange = new HashMap<>();
      for (MeterSpec.Range range : meter.ranges(f)) {
        double unit =
            switch (draw) {
              case TYPICAL -> 0;
              case WITHIN -> 2 * random.nextDouble() - 1;
              case AT_LIMITS -> random.nextBoolean() ? 1 : -1;
            };
        byRange.put(range.full(), unit * range.percent() / 100);
      }
      gain.put(f, byRange);
    }
    this.exact = exact;
    this.limits = draw == Draw.AT_LIMITS;
  }

  private final boolean exact;
  private final boolean limits;

  private static Values values(Variant variant, Draw draw, long seed) {
    Values values = Values.typical(variant);
    if (draw == Draw.TYPICAL) {
      return values;
    }
    for (int e = 0; e < variant.size(); e++) {
      Spread[] spreads = variant.element(e).values();
      // Each element has its own chance, so that one that has failed shifts nothing of the others.
      SplittableRandom own = new SplittableRandom(seed * 1_000_003L + e);
      for (int k = 0; k < spreads.length; k++) {
        Spread s = spreads[k];
        if (draw == Draw.AT_LIMITS) {
          values.set(e, k, own.nextBoolean() ? s.low() : s.high());
        } else {
          double u = own.nextDouble();
          values.set(
              e,
              k,
              u < 0.5
                  ? s.low() + 2 * u * (s.typical() - s.low())
                  : s.typical() + (2 * u - 1) * (s.high() - s.typical()));
        }
      }
    }
    return values;
  }

  /** Switches the vehicle to a setting once: fuses that blow there stay blown. */
  public OperatingPoint run(Setting setting) {
    OperatingPoint point = solver.solve(variant, setting, values, history);
    history = point.history();
    return point;
  }

  /** Volts from red to black as displayed. */
  public Display volts(TerminalRef red, TerminalRef black, Setting setting) {
    OperatingPoint point = run(setting);
    int r = network.requireNode(red);
    int b = network.requireNode(black);
    Element load = new Element.Resistor("meter", "input", r, b, Spread.exactly(meter.inputOhms()));
    Variant loaded = variant.with(List.of(new Change.Add(load)));
    OperatingPoint with = solver.solve(loaded, setting, values.extended(loaded), point.history());
    return displayed(MeterFunction.VOLTS_DC, with.volts(r, b));
  }

  /**
   * Amperes from red to black through the meter's jack for amperes.
   *
   * @return empty if they blow the meter's own fuse
   */
  public Optional<Display> amps(TerminalRef red, TerminalRef black, Setting setting) {
    run(setting);
    Element jack =
        new Element.Link(
            "meter",
            "amps jack",
            network.requireNode(red),
            network.requireNode(black),
            Spread.exactly(leadOhms + AmpsJack.OHMS),
            AmpsJack.BLOWS_AT);
    Variant through = variant.with(List.of(new Change.Add(jack)));
    int link = through.size() - 1;
    OperatingPoint point = solver.solve(through, setting, values.extended(through), history);
    BitSet blown = point.history().blown();
    boolean spent = blown.get(link);
    blown.clear(link);
    history = new History(blown);
    return spent ? Optional.empty() : Optional.of(shown(point.amps(link), AmpsJack.RANGE, 0));
  }

  /** Volts that stand from red to black with nothing on them, in volts. */
  public double standing(TerminalRef red, TerminalRef black, Setting setting) {
    return run(setting).volts(network.requireNode(red), network.requireNode(black));
  }

  /** Ids of the fuses that have blown by now. */
  public Set<String> blown() {
    return history.blown().stream()
        .mapToObj(e -> network.elements().get(e).part())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Whether a new fuse blows as soon as it is fitted in a setting. */
  public boolean spends(String fuse, Setting setting) {
    int link = network.element(fuse, "link").orElseThrow();
    return fitted(fuse, setting).history().blown().get(link);
  }

  /**
   * Ohms between red and black as displayed; of a part by itself where both lie on one that is out.
   */
  public Display ohms(TerminalRef red, TerminalRef black, Setting setting) {
    return driven(MeterFunction.OHMS, red, black, setting);
  }

  /** The diode test from red to black as displayed. */
  public Display diode(TerminalRef red, TerminalRef black, Setting setting) {
    return driven(MeterFunction.DIODE, red, black, setting);
  }

  private Display driven(
      MeterFunction function, TerminalRef red, TerminalRef black, Setting setting) {
    Bare bare = bare(red, black, setting);
    Meters.Shown shown =
        Meters.driven(
            function,
            solver,
            bare.variant(),
            bare.setting(),
            bare.values(),
            history,
            network.requireNode(red),
            network.requireNode(black),
            meter,
            leadOhms);
    return displayed(function, shown.overRange() ? Double.MAX_VALUE : shown.value());
  }

  private record Bare(Variant variant, Setting setting, Values values) {}

  /** What the leads see: the vehicle, or one part on the bench if both lie on one that is out. */
  private Bare bare(TerminalRef red, TerminalRef black, Setting setting) {
    Vehicle vehicle = network.vehicle();
    if (!vehicle.inHand(red, black, setting)) {
      return new Bare(variant, setting, values);
    }
    String part = red.part();
    Variant alone = with(f -> f.part().id().equals(part) && !f.mode().stays());
    return new Bare(alone, vehicle.only(part), values(alone, draw, seed));
  }

  /** The vehicle with some of its failures only. */
  private Variant with(Predicate<Failure> kept) {
    Variant some = Variant.healthy(network);
    for (Map.Entry<Failure, Spread> failure : failures.entrySet()) {
      if (kept.test(failure.getKey())) {
        some = some.with(failure.getKey().changes(some, failure.getValue()));
      }
    }
    return some;
  }

  private Display displayed(MeterFunction function, double value) {
    if (Math.abs(value) > meter.fullScale(function)) {
      return new Display.OverRange();
    }
    MeterSpec.Range range = meter.rangeFor(function, value);
    return shown(value, range, gain.get(function).get(range.full()));
  }

  private Display shown(double value, MeterSpec.Range range, double gained) {
    double error = value * gained;
    if (!exact) {
      double digits = range.digits() - 0.5;
      error +=
          (limits ? (random.nextBoolean() ? 1 : -1) : 2 * random.nextDouble() - 1)
              * Math.max(0, digits)
              * range.step();
    }
    // No display shows a minus before nothing.
    double shown = Math.rint((value + error) / range.step()) * range.step() + 0.0;
    return new Display.Number(shown, range.step());
  }

  /**
   * How a load looks in a setting, judged by its power against what this very vehicle showed before
   * anything failed: people know their own lamps, not the rated ones.
   */
  public Sight look(LoadRef load, Setting setting, Setting healthyOn) {
    return look(run(setting), load, healthyOn);
  }

  private Sight look(OperatingPoint point, LoadRef load, Setting healthyOn) {
    OperatingPoint good = solver.solve(sound, healthyOn, soundValues, History.NONE);
    int e = network.loadElement(load);
    double watts = point.across(e) * point.amps(e);
    double rated = good.across(e) * good.amps(e);
    boolean stands = point.variant().element(e) instanceof Element.Motor && !point.running(e);
    return named(rated <= 1e-9 || stands ? 0 : watts / rated);
  }

  /** Thresholds in the middle of what people call dark, dim and lit. */
  private static Sight named(double level) {
    return level < 0.12 ? Sight.OFF : level < 0.82 ? Sight.DIM : Sight.ON;
  }

  /** How a lamp in a fuse's place burns, the fuse out. */
  public Sight lampForFuse(String fuse, Setting setting, TestLamp lamp) {
    int link = network.element(fuse, "link").orElseThrow();
    Variant lit = lamp.inPlaceOf(variant, link);
    return named(
        lamp.level(
            solver.solve(lit, setting, values(lit, draw, seed), whole(fuse)), supplyVolts()));
  }

  /** How a lamp between the battery's grounded post and its lead burns. */
  public Sight lampInLead(Setting setting, TestLamp lamp) {
    Variant lit = lamp.inGroundedLead(variant);
    return named(
        lamp.level(solver.solve(lit, setting, values(lit, draw, seed), history), supplyVolts()));
  }

  /** The drop across a resistor of 1 ohm in the battery's grounded lead, as displayed. */
  public Display drain(Setting setting) {
    Variant through = GroundedLead.resistor(variant);
    int resistor = through.size() - 1;
    OperatingPoint point =
        solver.solve(through, setting, values(through, draw, seed), run(setting).history());
    return displayed(MeterFunction.VOLTS_DC, -point.across(resistor));
  }

  private int cell() {
    return network.element(network.vehicle().battery().id(), "cell").orElseThrow();
  }

  private double supplyVolts() {
    return ((Element.Cell) network.elements().get(cell())).volts().typical();
  }

  /** What has blown but for this part. */
  private History whole(String part) {
    BitSet left = history.blown();
    network.elementsOf(part).forEach(left::clear);
    return new History(left);
  }

  /** How a load looks with a good twin in a part's place; what stays in its seat stays. */
  public Sight swapped(String part, LoadRef load, Setting setting, Setting healthyOn) {
    return look(fitted(part, setting), load, healthyOn);
  }

  private OperatingPoint fitted(String part, Setting setting) {
    Variant fitted = with(f -> !f.part().id().equals(part) || f.mode().stays());
    return solver.solve(fitted, setting, values(fitted, draw, seed), whole(part));
  }

  /**
   * Whether a load is seen to change while a fault that comes and goes is provoked.
   *
   * @param part what is moved or warmed; whatever it is, a load that stays on strains all
   */
  public boolean changes(
      Provocation way, String part, LoadRef load, Setting setting, Setting healthyOn) {
    Predicate<Failure> reached =
        f -> (way == Provocation.LOAD || f.part().id().equals(part)) && f.mode().shows(way) > 0;
    double shows =
        failures.keySet().stream()
            .filter(reached)
            .mapToDouble(f -> f.mode().shows(way))
            .max()
            .orElse(0);
    if (shows == 0) {
      return false;
    }
    Variant gone = with(reached.negate());
    Sight as = look(load, setting, healthyOn);
    Sight other =
        look(solver.solve(gone, setting, values(gone, draw, seed), history), load, healthyOn);
    return as != other && (exact || random.nextDouble() < shows);
  }

  /** Whether a relay is heard to move between rest and the setting. */
  public boolean clicks(String relay, Setting setting) {
    int coil = network.element(relay, "coil").orElseThrow();
    OperatingPoint rest =
        solver.solve(
            variant, new Setting(Setting.REST.positions(), setting.apart()), values, history);
    OperatingPoint at = run(setting);
    return at.pulledIn(coil) != rest.pulledIn(coil) || at.buzzing().contains(relay);
  }

  /** Whether a fuse is visibly broken or missing. */
  public boolean fuseGone(String fuse) {
    int link = network.element(fuse, "link").orElseThrow();
    OperatingPoint point = run(Setting.REST);
    return point.history().blown().get(link) || point.siemens(link) == 0;
  }

  /** Whether the load's circuit shows anything wrong at all with these true values. */
  public OperatingPoint point(Setting setting) {
    return solver.solve(variant, setting, values, history);
  }
}
