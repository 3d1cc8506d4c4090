package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.knowledge.Context;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.Meters;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/** What the rules are told of a case: its circumstances, its readings, and the checks it has. */
final class CaseFacts {

  private final Workbench bench;
  private final Vehicle vehicle;
  private final Predictor predictor;
  private final Complaint complaint;
  private final Context context;
  private final Predicate<Reading> explained;
  private final Substitutions substitutions;
  private final Map<Check, Fact.CheckIdea> ideas = new HashMap<>();

  /**
   * Facts of one case.
   *
   * @param explained whether health or any suspect can give a reading
   */
  CaseFacts(
      Workbench bench,
      Predictor predictor,
      Complaint complaint,
      Context context,
      Predicate<Reading> explained) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.predictor = predictor;
    this.complaint = complaint;
    this.context = context;
    this.explained = explained;
    this.substitutions = new Substitutions(bench, Optional.of(complaint.load()));
  }

  Fact caseFact(String warning) {
    double healthyVolts =
        bench.knowledge().typicals().usual(PartKind.BATTERY, "volts", vehicle.systemVolts()).low();
    return new Fact.CaseFact(
        complaint.kind(),
        context,
        vehicle.systemVolts(),
        vehicle.grounded() == GroundedPole.POSITIVE,
        healthyVolts,
        warning);
  }

  Fact piece(Part part) {
    return new Fact.Piece(part.id(), part.kind(), part.title(), Hazards.of(part));
  }

  List<Fact> readingFacts(List<Reading> readings) {
    List<Fact> facts = new ArrayList<>();
    for (Reading r : readings) {
      facts.add(readingFact(r));
    }
    return facts;
  }

  private Fact.ReadingFact readingFact(Reading r) {
    Check check = r.check();
    Fact.ValueClass valueClass = Fact.ValueClass.NUMBER;
    double value = 0;
    Seen seen = null;
    if (r.value() instanceof Reading.Value.Number n) {
      value = n.value();
    } else if (r.value() instanceof Reading.Value.Between b) {
      value =
          Double.isInfinite(b.high())
              ? b.low()
              : Double.isInfinite(b.low()) ? b.high() : (b.low() + b.high()) / 2;
    } else if (r.value() instanceof Reading.Value.OverRange) {
      valueClass = Fact.ValueClass.OVER_RANGE;
    } else {
      valueClass = Fact.ValueClass.SEEN;
      seen = ((Reading.Value.Sight) r.value()).seen();
    }
    boolean powered = powered(check);
    double low = 0;
    double high = 0;
    double seenOhms = 0;
    double error = 0;
    boolean understood = true;
    if (check.kind().metered()) {
      Predictor.Possible band = predictor.possibleAtCorners(bench.healthy(), check);
      low = band.low();
      high = band.high();
      error = bench.meter().error(Workbench.function(check), value);
      int red = bench.network().requireNode(check.red().orElseThrow());
      int black = bench.network().requireNode(check.black().orElseThrow());
      Setting solved = predictor.solved(check).setting();
      seenOhms = bench.point(bench.healthy(), solved).ohmsSeen(red, black);
      understood = explained.test(r);
    }
    return new Fact.ReadingFact(
        r.id(),
        check.kind(),
        check.at(),
        check.black().map(TerminalRef::part).orElse(""),
        check.black().filter(vehicle.groundedPost()::equals).isPresent(),
        valueClass,
        value,
        error,
        seen,
        powered,
        low,
        high,
        seenOhms,
        powered && loadOn(check),
        understood,
        whole(check));
  }

  /**
   * Whether a check has all of the circuit in it: the controls stand as for the circuit, and
   * nothing is apart but loads, the battery and the fuse that is read at.
   */
  private boolean whole(Check check) {
    String here = check.red().map(TerminalRef::part).orElse("");
    return check.setting().positions().equals(complaint.on().positions())
        && check.setting().apart().stream()
            .allMatch(
                p ->
                    vehicle.requirePart(p).kind().isLoad()
                        || p.equals(vehicle.battery().id())
                        || p.equals(here));
  }

  /**
   * Whether the battery is on the circuit that the check is taken in; never for a part that is out.
   */
  private boolean powered(Check check) {
    return powered(check.setting()) && !check.inHand(vehicle);
  }

  /** For a lamp in a fuse's place: whether it glows for a healthy circuit's own loads. */
  private boolean loadOn(Check check) {
    if (check.kind() == CheckKind.LAMP_FOR_FUSE) {
      String fuse = check.subject().orElseThrow();
      return !Brightness.dark(substitutions.lamp(bench.healthy(), fuse, check.setting()).get(0));
    }
    return loadOn(check.setting());
  }

  boolean powered(Setting setting) {
    return !setting.apart().contains(vehicle.battery().id());
  }

  boolean loadOn(Setting setting) {
    return bench.level(bench.point(bench.healthy(), setting), complaint.load(), complaint.on())
        > 0.5;
  }

  /** Suffix of an idea that supposes the 0.00 V proof has been taken. */
  static final String SUPPOSED = " (0.00 V proven)";

  /**
   * The check as the rules judge it.
   *
   * @param warned whether smoke, heat or fuel is reported: then a battery that is on counts, even
   *     for a part that is out
   */
  Fact.CheckIdea idea(
      Check check, Set<TerminalRef> unreachable, boolean provenDead, boolean warned) {
    Fact.CheckIdea base = ideas.computeIfAbsent(check, this::plainIdea);
    boolean reachable =
        base.reachable()
            && check.red().filter(unreachable::contains).isEmpty()
            && check.black().filter(unreachable::contains).isEmpty();
    return new Fact.CheckIdea(
        base.id(),
        base.kind(),
        base.red(),
        base.black(),
        base.powered() || (warned && powered(check.setting())),
        base.isolated(),
        base.loadOn(),
        provenDead,
        reachable,
        base.minutes(),
        base.cranks(),
        base.bridges(),
        base.inHand());
  }

  private Fact.CheckIdea plainIdea(Check check) {
    boolean reachable =
        check.red().map(t -> vehicle.access(t).reachable()).orElse(true)
            && check.black().map(t -> vehicle.access(t).reachable()).orElse(true);
    double minutes =
        check.red().map(bench::minutes).orElse(0.0) + check.black().map(bench::minutes).orElse(0.0);
    return new Fact.CheckIdea(
        check.id(),
        check.kind(),
        check.at(),
        check.black().map(TerminalRef::part).orElse(""),
        powered(check),
        !check.kind().drives() || check.inHand(vehicle) || isolated(check),
        powered(check) && loadOn(check),
        false,
        reachable,
        minutes,
        cranks(check.setting()),
        false,
        check.inHand(vehicle));
  }

  /**
   * Whether an ohms reading speaks of the piece between the leads: without that piece the network
   * would show the meter at least ten times as much.
   */
  private boolean isolated(Check check) {
    int red = bench.network().requireNode(check.red().orElseThrow());
    int black = bench.network().requireNode(check.black().orElseThrow());
    Meters.Shown whole =
        bench.shown(bench.healthy(), check, bench.point(bench.healthy(), check.setting()));
    if (whole.overRange()
        || (check.kind() == CheckKind.OHMS && whole.value() > CheckSource.LOOSE_OHMS)) {
      return true;
    }
    List<Change> gone = new ArrayList<>();
    for (int e = 0; e < bench.network().elements().size(); e++) {
      Element element = bench.network().elements().get(e);
      if ((element.a() == red && element.b() == black)
          || (element.a() == black && element.b() == red)
          || between(check, element)) {
        gone.add(new Change.Remove(e));
      }
    }
    if (gone.isEmpty()) {
      return false;
    }
    Variant without = Variant.healthy(bench.network()).with(gone);
    Meters.Shown rest =
        Meters.driven(
            Workbench.function(check),
            bench.solver(check.setting()),
            without,
            check.setting(),
            Values.typical(without),
            History.NONE,
            red,
            black,
            bench.meter(),
            bench.meter().leadOhms().typical());
    return check.kind() == CheckKind.DIODE ? rest.overRange() : rest.value() > 10 * whole.value();
  }

  private static boolean between(Check check, Element element) {
    return check.red().orElseThrow().part().equals(element.part())
        && check.black().orElseThrow().part().equals(element.part());
  }

  private boolean cranks(Setting setting) {
    OperatingPoint point = bench.point(bench.healthy(), setting);
    for (int e = 0; e < bench.network().elements().size(); e++) {
      if (bench.network().elements().get(e) instanceof Element.Motor
          && Math.abs(point.amps(e)) > Hazards.STARTER_AMPS) {
        return true;
      }
    }
    return false;
  }
}
