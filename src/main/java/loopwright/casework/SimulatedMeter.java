package loopwright.casework;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Seen;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Typicals;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/**
 * The practice meter: takes the checks of a ready-made case on a simulated vehicle in which the
 * case's truth has failed. The vehicle's true values and the meter's errors lie anywhere within
 * their limits; the same seed gives the same ones. It knows nothing of the diagnosis. Not
 * thread-safe: use it where its case is used.
 */
public final class SimulatedMeter {
  private record Fault(Failure failure, Optional<Double> ohms) {}

  private final Vehicle vehicle;
  private final Network network;
  private final MeterSpec meter;
  private final Setting on;
  private final LoadRef watched;
  private final Typicals typicals;
  private final long seed;
  private final List<Fault> faults = new ArrayList<>();

  /** Ids of the parts that were mended, once for each time. */
  private final List<String> good = new ArrayList<>();

  private HiddenTruth truth;

  /**
   * Sets the vehicle up and switches the circuit complained of on once, so that fuses which blow
   * have blown.
   *
   * @param vehicle the case's vehicle
   * @param knowledge usual values, failure tables and meters
   * @param ready the case
   * @param seed of all chance
   * @throws Problem if the circuit, a part, a failure mode or the meter isn't known
   */
  public SimulatedMeter(Vehicle vehicle, Knowledge knowledge, ReadyCase ready, long seed)
      throws Problem {
    this.vehicle = Objects.requireNonNull(vehicle, "vehicle");
    this.network = Network.of(vehicle, knowledge.typicals());
    this.seed = seed;
    String of = "case " + ready.id() + ", ";
    Optional<MeterSpec> spec = knowledge.meter(ready.meter());
    if (spec.isEmpty()) {
      throw new Problem(
          of + "meter",
          ready.meter(),
          Phrases.inUse().oneOf(knowledge.meters().stream().map(MeterSpec::id).toList()));
    }
    this.meter = spec.get();
    Optional<Circuit> circuit = vehicle.circuit(ready.circuit());
    if (circuit.isEmpty()) {
      throw new Problem(
          of + "circuit",
          ready.circuit(),
          Phrases.inUse().oneOf(vehicle.circuits().stream().map(Circuit::id).toList()));
    }
    this.on = circuit.get().onSetting();
    this.watched = circuit.get().loads().get(0);
    this.typicals = knowledge.typicals();
    for (ReadyCase.Fault fault : ready.truth()) {
      faults.add(new Fault(failure(of, knowledge, fault), fault.ohms()));
    }
    this.truth = simulated();
  }

  private Failure failure(String of, Knowledge knowledge, ReadyCase.Fault fault) throws Problem {
    Optional<Part> part = vehicle.part(fault.part());
    if (part.isEmpty()) {
      throw new Problem(of + "part", fault.part(), say("ready.part", vehicle.name()));
    }
    List<Failure> all = Failure.of(network, part.get(), knowledge.faults());
    for (Failure failure : all) {
      if (failure.name().equals(fault.mode())) {
        return failure;
      }
    }
    throw new Problem(
        of + "mode of " + fault.part(),
        fault.mode(),
        Phrases.inUse().oneOf(all.stream().map(Failure::name).toList()));
  }

  private static String say(String key, String vehicle) {
    return Phrases.inUse().say("problem." + key, vehicle);
  }

  private HiddenTruth simulated() {
    Map<Failure, Double> ohms = new HashMap<>();
    List<Fault> left =
        faults.stream().filter(f -> !good.contains(f.failure().part().id())).toList();
    left.forEach(f -> f.ohms().ifPresent(o -> ohms.put(f.failure(), o)));
    HiddenTruth made =
        new HiddenTruth(
            network,
            left.stream().map(Fault::failure).toList(),
            ohms,
            meter,
            HiddenTruth.Draw.WITHIN,
            seed);
    made.run(on);
    return made;
  }

  /**
   * Does a proposed check and answers what it shows.
   *
   * @throws Problem if it is a kind of check the practice meter can't do
   */
  public Answer read(CheckView check) throws Problem {
    return read(OwnCheck.of(check));
  }

  /**
   * Does a check of the person's own choice and answers what it shows.
   *
   * @throws Problem if it is a kind of check the practice meter can't do, or a point or part isn't
   *     known
   */
  public Answer read(OwnCheck check) throws Problem {
    return switch (check.kind()) {
      case VOLTS, MILLIVOLTS ->
          text(truth.volts(point(check.red()), point(check.black()), check.setting()), "V");
      case DRAIN -> text(truth.drain(check.setting()), "V");
      case OHMS ->
          text(truth.ohms(point(check.red()), point(check.black()), check.setting()), "ohm");
      case DIODE ->
          text(truth.diode(point(check.red()), point(check.black()), check.setting()), "V");
      case LOOK, UNPLUG_AND_LOOK, SWAP, LAMP_FOR_FUSE, WIGGLE, WARM, LOAD ->
          new Answer.Saw(seen(check));
    };
  }

  /**
   * Amperes between two points, as the jack for amperes shows them.
   *
   * @return empty if that blew the meter's fuse
   * @throws Problem if a point isn't known
   */
  public Optional<Answer> amps(TerminalRef red, TerminalRef black, Setting setting) throws Problem {
    return truth
        .amps(point(Optional.of(red)), point(Optional.of(black)), setting)
        .map(shown -> text(shown, "A"));
  }

  /**
   * Volts that stand between two points whatever the meter is set to.
   *
   * @throws Problem if a point isn't known
   */
  public double standing(TerminalRef red, TerminalRef black, Setting setting) throws Problem {
    return truth.standing(point(Optional.of(red)), point(Optional.of(black)), setting);
  }

  /** Whether a new fuse fitted in a setting blows at once. */
  public boolean spends(String fuse, Setting setting) {
    return truth.spends(fuse, setting);
  }

  /** Ids of the fuses that have blown by now. */
  public Set<String> blown() {
    return truth.blown();
  }

  private Seen seen(OwnCheck check) throws Problem {
    String at = check.lookAt().orElse("");
    Optional<LoadRef> subject = at.isEmpty() ? Optional.empty() : Optional.of(LoadRef.parse(at));
    Optional<Part> part = subject.flatMap(s -> vehicle.part(s.part()));
    if (part.isEmpty() || !check.takes(part.get())) {
      String wanted =
          switch (check.kind()) {
            case SWAP, WIGGLE, WARM -> "part-of";
            case LAMP_FOR_FUSE -> "fuse-of";
            default -> "look-of";
          };
      throw new Problem("look", at, say(wanted, vehicle.name()));
    }
    return new Eye(vehicle, typicals, truth, watched)
        .sees(check.kind(), subject.orElseThrow(), check.setting());
  }

  private TerminalRef point(Optional<TerminalRef> point) throws Problem {
    if (point.isEmpty() || network.node(point.get()).isEmpty()) {
      throw new Problem(
          "point", point.map(TerminalRef::toString).orElse(""), say("point-of", vehicle.name()));
    }
    return point.get();
  }

  private static Answer text(HiddenTruth.Display display, String unit) {
    if (display instanceof HiddenTruth.Display.Number n) {
      return new Answer.Text(Figures.displayed(n.value(), n.step(), unit));
    }
    return new Answer.Text("OL");
  }

  /** A part was mended or replaced by a good one; fuses that had blown are replaced with it. */
  public void mended(String part) {
    good.add(part);
    truth = simulated();
  }

  /** It wasn't mended or replaced after all. */
  private void undone(String part) {
    good.remove(part);
    truth = simulated();
  }

  /**
   * The same case, such that what is mended or replaced in it is so on the simulated vehicle too,
   * and no longer if that is taken back.
   */
  public FindCase following(FindCase findCase) {
    return new Followed(findCase);
  }

  private final class Followed extends ForwardingCase {
    Followed(FindCase to) {
      super(to);
    }

    @Override
    public CaseView swapped(String part, Helped helped) throws Problem {
      CaseView view = super.swapped(part, helped);
      mended(part);
      return view;
    }

    @Override
    public CaseView repaired(String part) throws Problem {
      CaseView view = super.repaired(part);
      mended(part);
      return view;
    }

    @Override
    public CaseView undo(int deed) throws Problem {
      List<DeedView> before = view().deeds();
      CaseView view = super.undo(deed);
      for (DeedView done : before) {
        if (done.number() == deed && done.deed() instanceof CaseEvent.Repaired mend) {
          undone(mend.part());
        } else if (done.number() == deed && done.deed() instanceof CaseEvent.Swapped swap) {
          undone(swap.part());
        }
      }
      return view;
    }
  }
}
