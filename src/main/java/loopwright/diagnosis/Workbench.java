package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loopwright.knowledge.Context;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Enclosure;
import loopwright.solver.Failure;
import loopwright.solver.GroundedLead;
import loopwright.solver.History;
import loopwright.solver.Meters;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * Solves hypotheses in settings and keeps the results: what each of them would show at any two
 * points, as a mean with its sensitivities and as the band of possible values. Independent of any
 * readings. Several threads may ask at a time.
 */
public final class Workbench {

  /** Cells of a resistance range: two for each factor of ten. */
  static final double CELL_RATIO = Math.sqrt(10);

  /** Cells of a short's range: coarser, since most of it blows the fuse all the same. */
  static final double BRIDGE_RATIO = 10;

  private final Network network;
  private final Vehicle vehicle;
  private final Knowledge knowledge;
  private final MeterSpec meter;
  // Solvers keep what they have factored: one for each thread, so that threads don't wait.
  private final Kept<Thread, Kept<Setting, Solver>> solvers = Kept.byIdentity();
  private final Kept<Key, List<OperatingPoint>> points = Kept.byEquals();
  private final Kept<Key, List<OperatingPoint>> extremes = Kept.byEquals();
  private final Kept<Key, OperatingPoint> typical = Kept.byEquals();
  private final Kept<String, Double> healthyWatts = Kept.byEquals();
  private final Kept<Hypothesis, List<History>> histories = Kept.byIdentity();
  private final Kept<Key, Optional<Enclosure.Survey>> surveys = Kept.byEquals();
  private final Kept<Hypothesis, Optional<Set<History>>> blownBefore = Kept.byIdentity();
  private final Kept<Hypothesis, OperatingPoint> first = Kept.byIdentity();
  private final Kept<Hypothesis, List<OperatingPoint>> courses = Kept.byIdentity();
  private final Hypothesis healthy;
  private volatile Setting complainedIn;

  private record Key(Hypothesis hypothesis, Setting setting) {
    // Hypotheses are kept by identity: comparing their networks would cost more than solving them.
    @Override
    public boolean equals(Object other) {
      return other instanceof Key k && k.hypothesis == hypothesis && k.setting.equals(setting);
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(hypothesis) * 31 + setting.hashCode();
    }
  }

  /** Sets up for a vehicle. */
  public Workbench(Network network, Knowledge knowledge, MeterSpec meter) {
    this.network = Objects.requireNonNull(network, "network");
    this.knowledge = Objects.requireNonNull(knowledge, "knowledge");
    this.meter = Objects.requireNonNull(meter, "meter");
    this.vehicle = network.vehicle();
    this.healthy =
        new Hypothesis(
            SuspectId.HEALTHY,
            List.of(),
            List.of(),
            Optional.empty(),
            Variant.healthy(network),
            History.NONE,
            0);
  }

  /** The vehicle's network. */
  public Network network() {
    return network;
  }

  /** The vehicle. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /** The meter in use. */
  public MeterSpec meter() {
    return meter;
  }

  /** What the trade knows. */
  public Knowledge knowledge() {
    return knowledge;
  }

  /** The vehicle without any failure. */
  public Hypothesis healthy() {
    return healthy;
  }

  /** The solver for variants of one setting. */
  Solver solver(Setting setting) {
    return solvers
        .get(Thread.currentThread(), t -> Kept.byEquals())
        .get(setting, s -> Solver.lowRank(network, s));
  }

  /**
   * A failure of a part, or one cell of its resistance range, before it is solved.
   *
   * @param rate its chance before any reading
   * @param worst whether nothing else in its range can do more than this cell
   * @param adds whether it may let more current pass than before
   */
  record Cut(
      SuspectId id,
      Failure failure,
      Optional<Spread> cell,
      double rate,
      List<Change> changes,
      boolean worst,
      boolean adds) {}

  /** A failure's resistance range cut into cells, the greatest resistance first. */
  private List<Cut> cut(Failure failure, double rate) {
    SuspectId id = new SuspectId(failure.part().id(), failure.name());
    if (failure.continuum().isEmpty()) {
      List<Change> changes = failure.changes(network, Spread.exactly(0));
      return List.of(new Cut(id, failure, Optional.empty(), rate, changes, false, true));
    }
    Spread range = failure.continuum().get();
    List<Spread> cells = cells(range, failure.bridges() ? BRIDGE_RATIO : CELL_RATIO);
    List<Cut> all = new ArrayList<>();
    for (int c = cells.size() - 1; c >= 0; c--) {
      Spread cell = cells.get(c);
      double share = Math.log(cell.high() / cell.low()) / Math.log(range.high() / range.low());
      boolean worst = c == cells.size() - 1 && !failure.bridges();
      List<Change> changes = failure.changes(network, cell);
      all.add(
          new Cut(id, failure, Optional.of(cell), rate * share, changes, worst, failure.bridges()));
    }
    return all;
  }

  /** All failures of a part that can be in a context, each cut into cells. */
  Stream<List<Cut>> cuts(Part part, Context context) {
    return Failure.of(network, part, knowledge.faults()).stream()
        .filter(f -> f.rate(context) > 0)
        .map(f -> cut(f, f.rate(context)));
  }

  /**
   * All single failures of a part that could matter, resistance ranges cut into cells. A range is
   * left out whole if even its greatest resistance leaves the load as it is: what a series
   * resistance does grows with it.
   *
   * @param idle whether what a failure changes can't bear on the complaint, told without solving it
   * @param matters whether a hypothesis bears on the complaint at all
   */
  List<Hypothesis> singles(
      Part part,
      Context context,
      Setting complaintSetting,
      Predicate<List<Change>> idle,
      Predicate<Hypothesis> matters) {
    complainedIn = complaintSetting;
    List<Hypothesis> all = new ArrayList<>();
    cuts(part, context)
        .forEach(
            cuts -> {
              for (Cut c : cuts) {
                if (idle.test(c.changes())) {
                  continue;
                }
                Hypothesis h = single(c, Optional.empty());
                if (c.worst() && !matters.test(h)) {
                  break;
                }
                all.add(h);
              }
            });
    return all;
  }

  /** A failure whose fuses had their say in another setting than the one complained of. */
  Hypothesis spent(Cut cut, Setting in) {
    return single(cut, Optional.of(in));
  }

  private Hypothesis single(Cut cut, Optional<Setting> spentIn) {
    return single(
        cut.id(),
        cut.failure(),
        cut.cell(),
        Variant.healthy(network).with(cut.changes()),
        cut.rate(),
        spentIn);
  }

  private Hypothesis single(
      SuspectId id,
      Failure failure,
      Optional<Spread> cell,
      Variant variant,
      double prior,
      Optional<Setting> spentIn) {
    return solved(
        variant,
        spentIn,
        history ->
            new Hypothesis(
                id,
                List.of(failure.part().id()),
                List.of(failure),
                cell,
                variant,
                history,
                prior,
                List.of(),
                spentIn));
  }

  /** Two single hypotheses of different parts at once; their chances are independent. */
  Hypothesis pair(Hypothesis one, Hypothesis other) {
    Variant variant =
        one.variant()
            .with(
                other
                    .failures()
                    .get(0)
                    .changes(one.variant(), other.cell().orElse(Spread.exactly(0))));
    Optional<Setting> spentIn = one.spentIn().or(other::spentIn);
    return solved(
        variant,
        spentIn,
        history ->
            new Hypothesis(
                new SuspectId(
                    one.part() + "+" + other.part(),
                    one.suspect().mode() + "+" + other.suspect().mode()),
                List.of(one.part(), other.part()),
                List.of(one.failures().get(0), other.failures().get(0)),
                Optional.empty(),
                variant,
                history,
                one.prior() * other.prior(),
                List.of(one, other),
                spentIn));
  }

  /** By the time somebody complains the circuit has been switched on: fuses have had their say. */
  private Hypothesis solved(
      Variant variant, Optional<Setting> spentIn, Function<History, Hypothesis> of) {
    Setting setting = spentIn.orElse(complainedIn);
    OperatingPoint point =
        solver(setting).solve(variant, setting, Values.typical(variant), History.NONE);
    Hypothesis h = of.apply(point.history());
    typical.put(new Key(h, setting), point);
    first.put(h, point);
    return h;
  }

  /**
   * A cell of a resistance range cut finer, in the complaint's own setting; empty for a hypothesis
   * without such a range.
   */
  List<Hypothesis> finer(Hypothesis h) {
    if (h.cell().isEmpty() || h.failures().size() != 1 || complainedIn == null) {
      return List.of();
    }
    Failure failure = h.failures().get(0);
    double ratio = h.cell().get().high() / h.cell().get().low();
    List<Hypothesis> finer = new ArrayList<>();
    for (Spread cell : cells(h.cell().get(), Math.pow(ratio, 1.0 / FINER))) {
      Variant variant = Variant.healthy(network).with(failure.changes(network, cell));
      finer.add(
          single(h.suspect(), failure, Optional.of(cell), variant, h.prior() / FINER, h.spentIn()));
    }
    return finer;
  }

  /**
   * Tries a failure at some resistance in the complaint's own setting, and forgets it again.
   *
   * @param added added resistance in ohms
   * @param look what is asked of it
   */
  <T> T tried(Failure failure, Spread added, Function<Hypothesis, T> look) {
    Objects.requireNonNull(complainedIn, "complainedIn");
    Hypothesis h =
        single(
            new SuspectId(failure.part().id(), failure.name()),
            failure,
            Optional.of(added),
            Variant.healthy(network).with(failure.changes(network, added)),
            0,
            Optional.empty());
    T seen = look.apply(h);
    keepOnly(other -> other != h);
    return seen;
  }

  /** Into how many parts a cell is cut once it is looked at closely. */
  private static final int FINER = 4;

  /**
   * What may have blown by the time of the complaint: the typical course first, then others that
   * the failure's own range and the spread of fuses leave open.
   */
  private List<History> histories(Hypothesis h) {
    if (h.failures().isEmpty() || complainedIn == null) {
      return List.of(h.history());
    }
    return histories.get(
        h,
        k -> {
          List<History> all = new ArrayList<>(List.of(h.history()));
          for (OperatingPoint course : courses(h)) {
            if (!all.contains(course.history())) {
              all.add(course.history());
            }
          }
          return List.copyOf(all);
        });
  }

  /**
   * How the setting in which fuses had their say may end at both ends of what the failure itself
   * and fuses near their limit leave open, every fuse whole before; empty where neither leaves
   * anything open.
   */
  List<OperatingPoint> courses(Hypothesis h) {
    return courses.get(
        h,
        k -> {
          List<OperatingPoint> all = new ArrayList<>();
          Values middle = Values.typical(h.variant());
          for (int end = 0; end < 2; end++) {
            Values values = middle.copy();
            boolean low = end == 0;
            boolean open = own(h.variant(), values, low);
            open |= thresholds(typicalFirst(h), values, low) || !h.history().blown().isEmpty();
            if (open) {
              links(h.variant(), values, low);
              all.add(solver(spentIn(h)).solve(h.variant(), spentIn(h), values, History.NONE));
            }
          }
          return List.copyOf(all);
        });
  }

  /** Puts every fuse's blowing current at one end. */
  private static void links(Variant variant, Values values, boolean low) {
    for (int e = 0; e < variant.size(); e++) {
      if (variant.element(e) instanceof Element.Link l) {
        values.set(e, 1, low ? l.blowsAt().low() : l.blowsAt().high());
      }
    }
  }

  /** Cuts a range of resistance into cells of equal ratio. */
  static List<Spread> cells(Spread range, double wanted) {
    int count =
        Math.max(1, (int) Math.round(Math.log(range.high() / range.low()) / Math.log(wanted)));
    double ratio = Math.pow(range.high() / range.low(), 1.0 / count);
    List<Spread> cells = new ArrayList<>();
    double low = range.low();
    for (int i = 0; i < count; i++) {
      double high = i == count - 1 ? range.high() : low * ratio;
      cells.add(new Spread(low, Math.sqrt(low * high), high));
      low = high;
    }
    return cells;
  }

  /** The typical operating point of a hypothesis in a setting. */
  public OperatingPoint point(Hypothesis h, Setting setting) {
    return typical.get(
        new Key(h, setting),
        k -> solver(setting).solve(h.variant(), setting, Values.typical(h.variant()), h.history()));
  }

  /** Forgets all points of hypotheses that are out of play. */
  void keepOnly(Set<Hypothesis> inPlay) {
    keepOnly(inPlay::contains);
  }

  private void keepOnly(Predicate<Hypothesis> stays) {
    for (Kept<Key, ?> kept : List.of(points, extremes, surveys, typical)) {
      kept.keepOnly(k -> stays.test(k.hypothesis()));
    }
    for (Kept<Hypothesis, ?> kept : List.of(histories, blownBefore, first, courses)) {
      kept.keepOnly(stays);
    }
  }

  /**
   * The typical operating point first, then those at the low and the high end of what each failure
   * itself leaves open, and those in which a contact, fuse or motor near its threshold has gone the
   * other way.
   */
  List<OperatingPoint> points(Hypothesis h, Setting setting) {
    return points.get(new Key(h, setting), k -> solveAll(h, setting));
  }

  private List<OperatingPoint> solveAll(Hypothesis h, Setting setting) {
    Solver solver = solver(setting);
    List<OperatingPoint> found = new ArrayList<>();
    found.add(point(h, setting));
    Values middle = found.get(0).values();
    List<Values> ends = new ArrayList<>();
    for (String part : h.parts()) {
      for (int end = 0; end < 2; end++) {
        Values values = middle.copy();
        if (own(h.variant(), values, end == 0, part::equals)) {
          ends.add(values);
        }
      }
    }
    for (Values values : ends) {
      found.add(solver.solve(h.variant(), setting, values, h.history()));
    }
    for (History other : histories(h).subList(1, histories(h).size())) {
      for (OperatingPoint point : List.copyOf(found)) {
        found.add(solver.solve(h.variant(), setting, point.values(), other));
      }
    }
    for (OperatingPoint point : List.copyOf(found)) {
      for (int end = 0; end < 2; end++) {
        Values values = point.values().copy();
        if (thresholds(point, values, end == 0)) {
          found.add(solver.solve(h.variant(), setting, values, point.history()));
        }
      }
    }
    return List.copyOf(found);
  }

  /**
   * All points a reading has to be held against before it may clear anything: besides {@link
   * #points} those in which a contact, motor or fuse stands otherwise with a weak or strong supply
   * and with thresholds at either end.
   */
  List<OperatingPoint> extremePoints(Hypothesis h, Setting setting) {
    return extremes.get(
        new Key(h, setting),
        k -> {
          List<OperatingPoint> all = new ArrayList<>(points(h, setting));
          Set<Object> states = new HashSet<>();
          all.forEach(p -> states.add(state(p)));
          Solver solver = solver(setting);
          for (OperatingPoint point : List.copyOf(all)) {
            for (int corner = 0; corner < 4; corner++) {
              Values values = point.values().copy();
              push(h.variant(), values, (corner & 1) == 0, (corner & 2) == 0);
              OperatingPoint there = solver.solve(h.variant(), setting, values, point.history());
              if (states.add(state(there))) {
                all.add(there);
              }
            }
          }
          return List.copyOf(all);
        });
  }

  /**
   * Outer bounds of what the meter shows in a check under a hypothesis, for all values inside the
   * spreads; empty where none were found, which says nothing either way.
   */
  Optional<Enclosure.Bounds> outer(Hypothesis h, Check check) {
    if (function(check) == MeterFunction.DIODE) {
      // No bounds are worked out for the diode test, so it weighs and never clears.
      return Optional.empty();
    }
    if (function(check) == MeterFunction.VOLTS_DC && survey(h, check.setting()).isEmpty()) {
      // Where the whole setting has no bounds, one pair of points has none either.
      return Optional.empty();
    }
    if (check.kind() == CheckKind.DRAIN) {
      Solver solver = solver(check.setting());
      return starts(h, check.setting(), p -> Meters.inGroundedLead(solver, p).point())
          .flatMap(s -> encloseDrain(h, check, s));
    }
    return starts(h, check.setting(), p -> p).flatMap(s -> enclose(h, check, s));
  }

  /** Bounds of the drop across the resistor in the grounded lead. */
  private Optional<Enclosure.Bounds> encloseDrain(
      Hypothesis h, Check check, Enclosure.Starts starts) {
    return new Enclosure(GroundedLead.resistor(h.variant()), check.setting())
        .volts(starts, Network.REFERENCE, GroundedLead.post(h.variant()), meter.inputOhms());
  }

  private Optional<Enclosure.Bounds> enclose(Hypothesis h, Check check, Enclosure.Starts starts) {
    int red = network.requireNode(check.red().orElseThrow());
    int black = network.requireNode(check.black().orElseThrow());
    Enclosure enclosure = new Enclosure(h.variant(), check.setting());
    return function(check) == MeterFunction.VOLTS_DC
        ? enclosure.volts(starts, red, black, meter.inputOhms())
        : enclosure.ohms(starts, red, black, meter);
  }

  /** The same, wider, from bounds of all nodes that are kept for the setting; volts only. */
  Optional<Enclosure.Bounds> coarse(Hypothesis h, Check check) {
    if (!check.kind().reads()) {
      return Optional.empty();
    }
    return survey(h, check.setting())
        .flatMap(
            s ->
                s.volts(
                    network.requireNode(check.red().orElseThrow()),
                    network.requireNode(check.black().orElseThrow()),
                    meter.inputOhms()));
  }

  /** Bounds of all nodes in a setting; empty where none were found. */
  private Optional<Enclosure.Survey> survey(Hypothesis h, Setting setting) {
    return surveys.get(
        new Key(h, setting),
        k ->
            starts(h, setting, p -> p).flatMap(s -> new Enclosure(h.variant(), setting).survey(s)));
  }

  /**
   * From where to look for all ways to stand, whatever may have blown before.
   *
   * @param with what each state comes to with the meter in place, where that changes the network
   */
  private Optional<Enclosure.Starts> starts(
      Hypothesis h, Setting setting, UnaryOperator<OperatingPoint> with) {
    return blownBefore(h)
        .map(
            blown -> {
              List<OperatingPoint> all = new ArrayList<>(extremePoints(h, setting));
              for (History history : blown) {
                all.add(
                    solver(setting)
                        .solve(h.variant(), setting, Values.typical(h.variant()), history));
              }
              all.replaceAll(with);
              return Enclosure.Starts.of(all, blown);
            });
  }

  /** Which fuses may have blown by the time of the complaint, for all values inside the spreads. */
  private Optional<Set<History>> blownBefore(Hypothesis h) {
    if (h.failures().isEmpty() || complainedIn == null) {
      return Optional.of(Set.of(h.history()));
    }
    return blownBefore.get(
        h,
        k ->
            new Enclosure(h.variant(), spentIn(h))
                .histories(Enclosure.Starts.of(List.of(typicalFirst(h)), List.of(History.NONE))));
  }

  /** Whether a part's link is among those blown by the time of the complaint, as far as tried. */
  boolean mayHaveBlown(Hypothesis h, String part) {
    return histories(h).stream().anyMatch(history -> blown(history, part));
  }

  /** Whether it is not, for all values inside the spreads. */
  boolean cannotHaveBlown(Hypothesis h, String part) {
    return network.elementsOf(part).stream()
            .noneMatch(e -> network.elements().get(e) instanceof Element.Link)
        || blownBefore(h)
            .map(all -> all.stream().noneMatch(history -> blown(history, part)))
            .orElse(false);
  }

  /** Whether a part's link is among those blown. */
  boolean blown(History history, String part) {
    return network.elementsOf(part).stream().anyMatch(e -> history.blown().get(e));
  }

  /** The typical operating point of the setting in which fuses had their say, all whole before. */
  private OperatingPoint typicalFirst(Hypothesis h) {
    return first.get(
        h,
        k ->
            solver(spentIn(h))
                .solve(h.variant(), spentIn(h), Values.typical(h.variant()), History.NONE));
  }

  /** The setting in which fuses had their say. */
  Setting spentIn(Hypothesis h) {
    return h.spentIn().orElse(complainedIn);
  }

  /** What stands discretely in a point: relays, motors, fuses, buzzing. */
  private static Object state(OperatingPoint point) {
    BitSet running = new BitSet();
    for (int e = 0; e < point.variant().size(); e++) {
      if (point.variant().element(e) instanceof Element.Motor && point.running(e)) {
        running.set(e);
      }
    }
    return List.of(point.pulledIn(), running, point.history(), point.buzzing());
  }

  /**
   * Puts the supply and motors at their weak or strong end, thresholds at their high or low end.
   */
  private static void push(Variant variant, Values values, boolean weak, boolean reluctant) {
    for (int e = 0; e < variant.size(); e++) {
      Element element = variant.element(e);
      if (element instanceof Element.Cell c) {
        values.set(e, 0, weak ? c.volts().low() : c.volts().high());
        values.set(e, 1, weak ? c.ohms().high() : c.ohms().low());
      } else if (element instanceof Element.Coil c) {
        values.set(e, 1, reluctant ? c.pullInVolts().high() : c.pullInVolts().low());
        values.set(e, 2, reluctant ? c.dropOutVolts().high() : c.dropOutVolts().low());
      } else if (element instanceof Element.Motor m) {
        values.set(e, 1, weak ? m.stallOhms().low() : m.stallOhms().high());
        values.set(e, 2, reluctant ? m.startVolts().high() : m.startVolts().low());
      } else if (element instanceof Element.Link l) {
        values.set(e, 0, weak ? l.ohms().high() : l.ohms().low());
        values.set(e, 1, reluctant ? l.blowsAt().high() : l.blowsAt().low());
      } else if (element instanceof Element.Contact c) {
        values.set(e, 0, weak ? c.ohms().high() : c.ohms().low());
      } else if (element instanceof Element.Resistor r && IN_THE_WAY.test(r.role())) {
        values.set(e, 0, weak ? r.ohms().high() : r.ohms().low());
      }
    }
  }

  /** Roles of resistances that lie between the battery and a load, not of loads themselves. */
  static final Predicate<String> IN_THE_WAY =
      role ->
          role.equals("conductor")
              || role.equals("joint")
              || role.equals("common")
              || role.startsWith("cavity:")
              || role.startsWith("leg:");

  /** Puts the failures' own wide values at one end; false if there are none. */
  static boolean own(Variant variant, Values values, boolean low) {
    return own(variant, values, low, part -> true);
  }

  /** The same for the failures of some parts. */
  static boolean own(Variant variant, Values values, boolean low, Predicate<String> parts) {
    boolean any = false;
    int base = variant.base().elements().size();
    for (int e = 0; e < variant.size(); e++) {
      boolean changed = e >= base || variant.element(e) != variant.base().elements().get(e);
      if (!changed || !parts.test(variant.element(e).part())) {
        continue;
      }
      Spread[] spreads = variant.element(e).values();
      for (int k = 0; k < spreads.length; k++) {
        if (spreads[k].high() > 1.5 * spreads[k].low()) {
          values.set(e, k, low ? spreads[k].low() : spreads[k].high());
          any = true;
        }
      }
    }
    return any;
  }

  /** Share by which volts or amperes near a threshold count as undecided. */
  private static final double UNDECIDED = 0.12;

  /** Moves thresholds that the point comes near to one end; false if it is near none. */
  private static boolean thresholds(OperatingPoint point, Values values, boolean low) {
    boolean any = false;
    Variant variant = point.variant();
    for (int e = 0; e < variant.size(); e++) {
      Element element = variant.element(e);
      if (element instanceof Element.Coil c) {
        any |= near(Math.abs(point.across(e)), c.pullInVolts(), values, e, 1, low);
      } else if (element instanceof Element.Motor m) {
        any |= near(Math.abs(point.across(e)), m.startVolts(), values, e, 2, low);
      } else if (element instanceof Element.Link l && point.siemens(e) > 0) {
        any |= near(Math.abs(point.amps(e)), l.blowsAt(), values, e, 1, low);
      }
    }
    return any;
  }

  private static boolean near(
      double at, Spread threshold, Values values, int e, int k, boolean low) {
    if (at < threshold.low() * (1 - UNDECIDED) || at > threshold.high() * (1 + UNDECIDED)) {
      return false;
    }
    values.set(e, k, low ? threshold.low() * (1 - UNDECIDED) : threshold.high() * (1 + UNDECIDED));
    return true;
  }

  /** What the meter would show at one of a hypothesis's points. */
  Meters.Shown shown(Hypothesis h, Check check, OperatingPoint point) {
    Solver solver = solver(check.setting());
    if (check.kind() == CheckKind.DRAIN) {
      return Meters.inGroundedLead(solver, point);
    }
    int red = network.requireNode(check.red().orElseThrow());
    int black = network.requireNode(check.black().orElseThrow());
    if (check.kind().drives()) {
      return Meters.driven(
          function(check),
          solver,
          h.variant(),
          check.setting(),
          point.values(),
          point.history(),
          red,
          black,
          meter,
          meter.leadOhms().typical());
    }
    return Meters.volts(solver, point, red, black, meter);
  }

  /** The meter function a check uses. */
  static MeterFunction function(Check check) {
    return switch (check.kind()) {
      case OHMS -> MeterFunction.OHMS;
      case DIODE -> MeterFunction.DIODE;
      default -> MeterFunction.VOLTS_DC;
    };
  }

  /** How a load works: its electrical power over that of the healthy circuit, 0 and up. */
  double level(OperatingPoint point, LoadRef load, Setting healthyOn) {
    int e = loadElement(load);
    double watts = watts(point, e);
    double rated =
        healthyWatts.get(
            load + " " + healthyOn.positions(), k -> watts(point(healthy, healthyOn), e));
    if (rated <= 1e-9) {
      return 0;
    }
    Element element = point.variant().element(e);
    if (element instanceof Element.Motor && !point.running(e)) {
      return 0;
    }
    return Math.max(0, watts / rated);
  }

  /** Whether a load that a healthy vehicle leaves dead in a setting does something visible. */
  boolean wakes(Hypothesis h, Setting setting, LoadRef load) {
    Setting on = onSetting(load);
    return level(point(h, setting), load, on) > 0.05
        && level(point(healthy, setting), load, on) < 0.01;
  }

  private static double watts(OperatingPoint point, int e) {
    return point.across(e) * point.amps(e);
  }

  /** Number of the element that does a load's work. */
  public int loadElement(LoadRef load) {
    return network.loadElement(load);
  }

  /**
   * The setting in which a complaint shows: the circuit's own for most; for a load that stays on,
   * its own with the control nearest to the load at rest, so that a healthy one would be off; at
   * rest for a drained battery.
   */
  public Setting shows(Complaint complaint) {
    if (complaint.kind() == ComplaintKind.DRAINS_BATTERY) {
      return Setting.REST;
    }
    if (complaint.kind() != ComplaintKind.STUCK_ON) {
      return complaint.on();
    }
    List<String> controls = new ArrayList<>();
    Loop.trace(this, complaint.on(), loadElement(complaint.load()))
        .ifPresent(
            loop -> loop.all().forEach(l -> l.pieces().forEach(p -> controls.add(0, p.part()))));
    controls.retainAll(complaint.on().positions().keySet());
    controls.addAll(complaint.on().positions().keySet());
    for (String control : controls) {
      Setting without = complaint.on().resting(control);
      if (level(point(healthy, without), complaint.load(), complaint.on()) < 0.01) {
        return without;
      }
    }
    return Setting.REST;
  }

  /** The first circuit that is on in just this setting. */
  Optional<Circuit> circuitOn(Setting setting) {
    return vehicle.circuits().stream().filter(c -> c.onSetting().equals(setting)).findFirst();
  }

  /** The setting in which a load should work, the first it serves. */
  Setting onSetting(LoadRef load) {
    return vehicle.onSetting(load, Setting.REST);
  }

  /** Access minutes of a point. */
  double minutes(TerminalRef at) {
    return vehicle.access(at).minutes();
  }

  /** Number of hypotheses and settings whose points are kept, for tests. */
  int kept() {
    return points.size();
  }
}
