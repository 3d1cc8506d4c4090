package loopwright.casework.prove;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.bench.HiddenTruth;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.evidence.Bench;
import loopwright.evidence.Player;
import loopwright.evidence.Plays;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/** Proves a vehicle with hidden failures, doing and answering what each step says. */
final class FirstPowerPlay {
  private final Vehicle vehicle;
  private final Map<String, Double> failures;
  private final HiddenTruth.Draw draw;
  private final long seed;
  private final CaseDesk desk;
  private final Proving proving;
  private final Map<Vehicle, HiddenTruth> truths = new HashMap<>();

  /**
   * A play.
   *
   * @param failures {@code part/mode} with its ohms; 0 where it has none
   */
  FirstPowerPlay(
      Vehicle vehicle,
      Map<String, Double> failures,
      HiddenTruth.Draw draw,
      long seed,
      CaseDesk desk,
      ProofStore store)
      throws Problem {
    this.vehicle = vehicle;
    this.failures = failures;
    this.draw = draw;
    this.seed = seed;
    this.desk = desk;
    this.proving = proving(vehicle, desk, store);
  }

  static Proving proving(Vehicle vehicle, CaseDesk desk, ProofStore store) throws Problem {
    return Bench.proveDesk(desk, store).open(vehicle.id(), vehicle, "basic");
  }

  Proving proving() {
    return proving;
  }

  /** The vehicle with its failures, as far as it is powered up. */
  private HiddenTruth truth(Vehicle powered) {
    return truths.computeIfAbsent(
        powered,
        p -> {
          Network network = Bench.network(p);
          List<Failure> failed =
              p.parts().stream()
                  .flatMap(part -> Failure.of(network, part, Bench.KNOWLEDGE.faults()).stream())
                  .filter(f -> failures.containsKey(f.part().id() + "/" + f.name()))
                  .toList();
          Map<Failure, Double> ohms =
              failed.stream()
                  .filter(f -> f.continuum().isPresent())
                  .collect(
                      Collectors.toMap(f -> f, f -> failures.get(f.part().id() + "/" + f.name())));
          return new HiddenTruth(
              network, failed, ohms, Bench.KNOWLEDGE.meter("basic").orElseThrow(), draw, seed);
        });
  }

  /** Goes on until something is not as it should be, all is proven, or so many steps are done. */
  ProveView play(int most) throws Problem {
    ProveView view = proving.view();
    for (int i = 0;
        i < most && view.now().isPresent() && view.now().get().trouble().isEmpty();
        i++) {
      view = step();
    }
    return view;
  }

  ProveView step() throws Problem {
    Step step = proving.step().orElseThrow();
    Vehicle powered = proving.powered(proving.atHand());
    HiddenTruth truth = truth(powered);
    if (step.byHand()) {
      return proving.confirm(done(step, powered, truth));
    }
    Check check = step.check().orElseThrow();
    Setting setting = check.setting();
    if (check.kind() == CheckKind.OHMS) {
      return proving.answer(text(truth.ohms(red(check), black(check), setting), "ohm"));
    }
    if (check.kind().metered()) {
      return proving.answer(text(truth.volts(red(check), black(check), setting), "V"));
    }
    LoadRef watched = LoadRef.parse(check.subject().orElseThrow());
    return proving.answer(
        new Answer.Saw(
            ((Reading.Value.Sight) Plays.measure(powered, truth, watched, check)).seen()));
  }

  private boolean done(Step step, Vehicle powered, HiddenTruth truth) {
    if (step.what() == Step.What.RATING) {
      return !failures.containsKey(step.about() + "/wrong-rating");
    }
    if (step.what() == Step.What.FIT || step.what() == Step.What.CONNECT) {
      Set<String> blown = new HashSet<>();
      var point = truth.run(Setting.REST);
      for (Part part : powered.parts()) {
        if (part.kind() == PartKind.FUSE
            && Bench.network(powered).elementsOf(part.id()).stream()
                .anyMatch(e -> point.history().blown().get(e))) {
          blown.add(part.id());
        }
      }
      return blown.isEmpty();
    }
    return true;
  }

  /** Opens the case over what is wrong and plays it to its answer. */
  CaseView find() throws Problem {
    Subject subject = proving.plan().circuitFor(proving.atHand()).orElseThrow();
    Circuit circuit = subject.circuit().orElseThrow();
    LoadRef watched = proving.step().flatMap(Step::load).orElseGet(() -> circuit.loads().get(0));
    String id = proving.findFault();
    try (FindCase found = desk.resume(id, vehicle, CaseDesk.Progress.SILENT)) {
      Vehicle powered =
          proving
              .plan()
              .power(
                  subject,
                  proving.plan().subjects().stream()
                      .filter(s -> proving.state(s) == ProveView.State.PROVEN)
                      .map(Subject::id)
                      .toList())
              .of(vehicle, new Phrases(Locale.ENGLISH));
      HiddenTruth truth = truth(powered);
      truth.run(circuit.onSetting());
      return new Player(powered, truth, watched).play(found, 25);
    }
  }

  private static TerminalRef red(Check check) {
    return check.red().orElseThrow();
  }

  private static TerminalRef black(Check check) {
    return check.black().orElseThrow();
  }

  private static Answer text(HiddenTruth.Display display, String unit) {
    if (display instanceof HiddenTruth.Display.Number n) {
      int places = (int) Math.max(0, Math.round(-Math.log10(n.step())));
      return new Answer.Text(String.format(Locale.ROOT, "%." + places + "f %s", n.value(), unit));
    }
    return new Answer.Text("OL");
  }
}
