package loopwright.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.paper.DropLimits;
import loopwright.paper.Plan;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Gate;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Variant;

/**
 * The proofs of a vehicle's grounds by the volts they lose: for each the loads that may be switched
 * on, what is healthy then and what isn't. Not for several threads.
 */
public final class DropProofs {

  /**
   * Volts that a connection which carries much may lose, whatever the system's volts: SAE
   * recommended maximum drops, second hand; see voltage-drop-limits.csv.
   */
  private static final double CONNECTION = 0.1;

  /** Volts that the ground of a control unit or sender may lose. Common practice, ground.csv. */
  private static final double SIGNAL = 0.05;

  /** Electronics up to this current count as signals, in amperes. Common practice. */
  private static final double SIGNAL_AMPS = 2;

  /** Share of the starter's current from which a ground counts as part of its circuit. */
  private static final double CRANKED = 0.5;

  /** Share of a side's current from which a drop across it tells of one piece of it. */
  private static final double MOST_OF = 0.5;

  /** Times by which a current must be greater to be worth another setting. */
  private static final double GREATER = 1.2;

  /** Settings without cranking that are offered. */
  private static final int MOST_SETTINGS = 3;

  /** Share of the limit that the meter's error may take for a reading to settle it. */
  private static final double FINE = 0.15;

  private final Grounds grounds;
  private final Plan plan;
  private final Network network;
  private final MeterSpec meter;

  /**
   * Proofs by one meter.
   *
   * @param grounds the vehicle's grounds
   */
  public DropProofs(Grounds grounds, MeterSpec meter) {
    this.grounds = Objects.requireNonNull(grounds, "grounds");
    this.plan = grounds.plan();
    this.network = plan.network();
    this.meter = Objects.requireNonNull(meter, "meter");
  }

  /** The meter that is used. */
  public MeterSpec meter() {
    return meter;
  }

  /**
   * The settings in which a ground can be proven, in the order in which they are worth trying: one
   * circuit on by itself, the greatest current first; cranking; all on that may be on together.
   * None if nothing that draws current returns by it, or only in the shadow of what lies beside it.
   */
  public List<Setting> settings(Ground ground) {
    List<Setting> alone = new ArrayList<>(plan.alone());
    if (ground.kind() == Ground.Kind.LOAD) {
      alone.removeIf(s -> circuits(ground, s).isEmpty());
    }
    alone.removeIf(s -> amps(ground, s) < Grounds.FLOWS || shadowed(ground, s));
    alone.sort(Comparator.comparingDouble(s -> -amps(ground, s)));
    List<Setting> worth =
        new ArrayList<>(alone.stream().filter(s -> !plan.cranks(s)).limit(MOST_SETTINGS).toList());
    double most = worth.isEmpty() ? 0 : amps(ground, worth.get(0));
    alone.stream()
        .filter(s -> plan.cranks(s) && amps(ground, s) > most)
        .findFirst()
        .ifPresent(worth::add);
    if (ground.kind() != Ground.Kind.LOAD && amps(ground, plan.likely()) > GREATER * most) {
      worth.add(plan.likely());
    }
    return worth;
  }

  /**
   * The best proof of a ground: the first that the meter at hand settles clearly, or else the one
   * with the greatest current; empty if there is none.
   */
  public Optional<DropProof> best(Ground ground) {
    Optional<DropProof> greatest = Optional.empty();
    for (Setting setting : settings(ground)) {
      Optional<DropProof> proof = proof(ground, setting);
      if (proof.filter(this::clear).isPresent()) {
        return proof;
      }
      if (proof.isPresent() && greatest.filter(g -> g.amps() >= proof.get().amps()).isEmpty()) {
        greatest = proof;
      }
    }
    return greatest;
  }

  /** A proof of the same ground with a greater current, the least of them; empty if none has. */
  public Optional<DropProof> greater(DropProof than) {
    return settingsOfMore(than)
        .sorted(Comparator.comparingDouble(s -> amps(than.ground(), s)))
        .flatMap(s -> proof(than.ground(), s).stream())
        .findFirst();
  }

  /** Whether a setting gives the same ground a greater current; costs next to nothing. */
  public boolean hasGreater(DropProof than) {
    return settingsOfMore(than).findAny().isPresent();
  }

  private Stream<Setting> settingsOfMore(DropProof than) {
    return settings(than.ground()).stream()
        .filter(s -> amps(than.ground(), s) > GREATER * than.amps());
  }

  /** Whether the meter's error is small beside the limit and a sound ground clearly within it. */
  public boolean clear(DropProof proof) {
    double error = meter.error(MeterFunction.VOLTS_DC, proof.goodBelow());
    return error <= FINE * proof.goodBelow()
        && proof.healthy().typical() + error <= proof.goodBelow();
  }

  /**
   * Whether the meter's last digit is small beside the limit in a setting; costs next to nothing.
   */
  public boolean fine(Ground ground, Setting setting) {
    List<Side> row = row(ground, setting);
    if (row.isEmpty()) {
      return false;
    }
    Side side = Side.inRow(row);
    double volts = limit(ground, side, setting).ohms() * side.amps(plan.point(setting));
    return meter.error(MeterFunction.VOLTS_DC, volts) <= FINE * volts;
  }

  /** Whether the starter turns in a setting. */
  public boolean cranks(Setting setting) {
    return plan.cranks(setting);
  }

  /** Whether it is the setting with all on that may be on together. */
  public boolean allOn(Setting setting) {
    return setting.equals(plan.likely());
  }

  /** Whether others lie beside a piece and so little comes to them that the meter can't see it. */
  private boolean shadowed(Ground ground, Setting setting) {
    List<Side> row = row(ground, setting);
    boolean beside = !ground.kind().whole() && Side.inRow(row).elements().size() > 1;
    return beside && !fine(ground, setting);
  }

  /** Circuits that are on in just this setting and have a load that is grounded here. */
  private List<Circuit> circuits(Ground ground, Setting setting) {
    return plan.vehicle().circuits().stream()
        .filter(c -> c.onSetting().equals(setting))
        .filter(c -> c.loads().stream().anyMatch(l -> ground.loads().contains(l.part())))
        .toList();
  }

  /** Current through a ground in a setting, in amperes; 0 where its drop would be another's. */
  public double amps(Ground ground, Setting setting) {
    List<Side> row = row(ground, setting);
    return row.isEmpty() ? 0 : row.get(0).amps(plan.point(setting));
  }

  /**
   * What a drop would prove in a setting, in a row; empty where most current takes another way than
   * by this ground, so that the drop would be that one's.
   */
  private List<Side> row(Ground ground, Setting setting) {
    Returns returns = grounds.returns(setting);
    if (ground.kind().whole()) {
      int from = network.requireNode(ground.from());
      return returns.inRow(from, returns.way(from));
    }
    int e = network.elementsOf(ground.id()).get(0);
    OperatingPoint point = plan.point(setting);
    return returns
        .of(e)
        .filter(s -> Math.abs(point.amps(e)) >= MOST_OF * s.amps(point))
        .map(List::of)
        .orElse(List.of());
  }

  /**
   * The proof of a ground in one setting; empty if none is to be had there.
   *
   * @param setting one of {@link #settings}
   */
  public Optional<DropProof> proof(Ground ground, Setting setting) {
    List<Side> row = row(ground, setting);
    if (row.isEmpty()) {
      return Optional.empty();
    }
    Side side = Side.inRow(row);
    Optional<TerminalRef> far = lead(ground, ground.from(), side.from());
    Optional<TerminalRef> near = lead(ground, ground.to(), side.to());
    if (far.isEmpty() || near.isEmpty()) {
      return Optional.empty();
    }
    OperatingPoint point = plan.point(setting);
    double volts = point.volts(side.from(), side.to());
    // With plus grounded the current comes out of the post: red goes there, and the sign is plus.
    boolean plus = volts >= 0;
    Variant seen = seen(point);
    DropBounds bounds = new DropBounds(side, seen, point);
    Limit limit = limit(ground, side, setting);
    Optional<double[]> at =
        limit.measure() == Limit.Measure.VOLTS
            ? Optional.of(new double[] {limit.volts(), limit.volts()})
            : bounds.volts(limit.ohms());
    List<DropBounds> sides =
        row.size() == 1
            ? List.of(bounds)
            : row.stream().map(s -> new DropBounds(s, seen, point)).toList();
    Optional<Spread> healthy = healthy(sides, Math.abs(volts));
    if (at.isEmpty() || at.get()[0] <= 0 || healthy.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new DropProof(
            ground,
            setting,
            works(ground, side, setting),
            plus ? far.get() : near.get(),
            plus ? near.get() : far.get(),
            side.amps(point),
            side.ohms(network),
            healthy.get(),
            limit,
            at.get()[0],
            at.get()[1],
            beside(ground, side),
            without(ground, side, setting),
            plan.cranks(setting),
            bounds));
  }

  private Optional<TerminalRef> lead(Ground ground, TerminalRef end, int node) {
    return network.requireNode(end) == node
        ? Optional.of(end)
        : grounds.terminal(node, ground.id());
  }

  /**
   * The vehicle as somebody sees it who makes sure that what is switched on works: motors run,
   * relays stand as they should, fuses are whole.
   */
  private Variant seen(OperatingPoint point) {
    List<Change> changes = new ArrayList<>();
    for (int e = 0; e < network.elements().size(); e++) {
      Element element = network.elements().get(e);
      if (element instanceof Element.Motor m && point.running(e)) {
        changes.add(fixed(e, m, m.runOhms()));
      } else if (element instanceof Element.Coil c) {
        changes.add(fixed(e, c, c.ohms()));
      } else if (element instanceof Element.Link l) {
        changes.add(fixed(e, l, l.ohms()));
      } else if (element instanceof Element.Contact c && c.gate() instanceof Gate.ByCoil) {
        changes.add(point.siemens(e) > 0 ? fixed(e, c, c.ohms()) : new Change.Remove(e));
      }
    }
    return Variant.healthy(network).with(changes);
  }

  private static Change fixed(int e, Element element, Spread ohms) {
    return new Change.Replace(
        e, new Element.Resistor(element.part(), element.role(), element.a(), element.b(), ohms));
  }

  /** What a row loses if each of its sides has what it should have. */
  private Optional<Spread> healthy(List<DropBounds> row, double typical) {
    double low = 0;
    double high = 0;
    for (DropBounds bounds : row) {
      Spread ohms = bounds.side().ohms(network);
      Optional<double[]> least = bounds.volts(ohms.low());
      Optional<double[]> most = bounds.volts(ohms.high());
      if (least.isEmpty() || most.isEmpty()) {
        return Optional.empty();
      }
      low += least.get()[0];
      high += most.get()[1];
    }
    return Optional.of(new Spread(Math.min(low, typical), typical, Math.max(high, typical)));
  }

  /** Volts with typical values if the piece itself were off, what lies beside it left alone. */
  private OptionalDouble without(Ground ground, Side side, Setting setting) {
    if (ground.kind().whole() || side.elements().size() == 1) {
      return OptionalDouble.empty();
    }
    int e = network.elementsOf(ground.id()).get(0);
    return OptionalDouble.of(Math.abs(plan.without(setting, e).volts(side.from(), side.to())));
  }

  /** Least and greatest size of what lies between two values. */
  static double[] sizes(double low, double high) {
    double least = low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
    return new double[] {least, Math.max(Math.abs(low), Math.abs(high))};
  }

  // ---- what it may lose ----------------------------------------------------------------------

  private Limit limit(Ground ground, Side side, Setting setting) {
    if (ground.kind() == Ground.Kind.LOAD) {
      return ofLoad(ground, setting, side.amps(plan.point(setting)));
    }
    double steady = Grounds.FLOWS;
    double cranked = 0;
    for (Setting s : plan.settings()) {
      double amps = side.amps(plan.point(s));
      if (!plan.cranks(s)) {
        steady = Math.max(steady, amps);
      } else if (amps > CRANKED * starterAmps(s)) {
        cranked = Math.max(cranked, amps);
      }
    }
    Limit lasting = new Limit(Limit.Measure.OHMS, CONNECTION, steady, Limit.Source.CONNECTION);
    if (cranked == 0) {
      return lasting;
    }
    double starts =
        ground.kind().whole()
            ? DropLimits.starterGround(plan.vehicle().systemVolts(), cranked)
            : DropLimits.STARTER_OHMS * cranked;
    Limit starting = new Limit(Limit.Measure.OHMS, starts, cranked, Limit.Source.STARTER);
    return starting.ohms() < lasting.ohms() ? starting : lasting;
  }

  private double starterAmps(Setting setting) {
    return plan.vehicle().parts().stream()
        .filter(plan::starter)
        .flatMap(p -> network.elementsOf(p.id()).stream())
        .mapToDouble(e -> Math.abs(plan.point(setting).amps(e)))
        .max()
        .orElse(0);
  }

  private Limit ofLoad(Ground ground, Setting setting, double amps) {
    Circuit circuit = circuits(ground, setting).get(0);
    LoadRef load =
        circuit.loads().stream()
            .filter(l -> ground.loads().contains(l.part()))
            .findFirst()
            .orElseThrow();
    Part part = plan.vehicle().requirePart(load.part());
    if (part.kind() == PartKind.ELECTRONICS
        && ((PartSpec.PlainLoad) part.spec()).amps().about() <= SIGNAL_AMPS) {
      return new Limit(Limit.Measure.VOLTS, SIGNAL, amps, Limit.Source.SIGNAL);
    }
    int e = network.loadElement(load);
    DropLimits limits =
        new DropLimits(plan, circuit, part, network.elements().get(e), plan.point(setting).amps(e));
    Limit.Source source =
        plan.starter(part)
            ? Limit.Source.STARTER
            : limits.light() ? Limit.Source.LAMP : Limit.Source.OTHER;
    return new Limit(Limit.Measure.VOLTS, limits.ground(), amps, source);
  }

  // ---- what goes with it ---------------------------------------------------------------------

  /** The loads that are on and whose current comes through here; of a load's way only that load. */
  private List<LoadRef> works(Ground ground, Side side, Setting setting) {
    OperatingPoint point = plan.point(setting);
    Returns returns = grounds.returns(setting);
    return plan.vehicle().circuits().stream()
        .filter(c -> setting.positions().entrySet().containsAll(c.on().entrySet()))
        .flatMap(c -> c.loads().stream())
        .distinct()
        .filter(l -> ground.kind() != Ground.Kind.LOAD || ground.loads().contains(l.part()))
        .filter(l -> Math.abs(point.amps(network.loadElement(l))) >= Grounds.FLOWS)
        .filter(
            l ->
                returns.way(grounds.groundedEnd(l, point)).stream()
                    .anyMatch(side.elements()::contains))
        .sorted(Comparator.comparingDouble(l -> -Math.abs(point.amps(network.loadElement(l)))))
        .toList();
  }

  /** Other parts that the same drop proves; of a whole way those beside its own pieces. */
  private List<String> beside(Ground ground, Side side) {
    Set<String> beside = new TreeSet<>();
    side.elements().forEach(e -> beside.add(network.elements().get(e).part()));
    ground.pieces().forEach(beside::remove);
    return List.copyOf(beside);
  }
}
