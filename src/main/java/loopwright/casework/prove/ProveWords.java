package loopwright.casework.prove;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.casework.Figures;
import loopwright.casework.Phrases;
import loopwright.casework.Words;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Seen;
import loopwright.meter.MeterSpec;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.paper.BringUp;

/** How far a vehicle is proven, in words. */
final class ProveWords {
  private static final int MOST_NAMED = 4;

  private final Vehicle vehicle;
  private final Phrases phrases;
  private final MeterSpec meter;

  ProveWords(Vehicle vehicle, Phrases phrases, MeterSpec meter) {
    this.vehicle = vehicle;
    this.phrases = phrases;
    this.meter = meter;
  }

  ProveView view(Proving proving, String said, String missing) {
    List<ProveView.Item> items = new ArrayList<>();
    for (Subject subject : proving.plan().subjects()) {
      ProveView.State state = proving.state(subject);
      items.add(
          new ProveView.Item(subject.id(), title(subject), state, note(proving, subject, state)));
    }
    return new ProveView(
        vehicle.name(),
        items,
        proving.atHand().id(),
        proving.step().map(s -> now(proving, proving.atHand(), s)),
        said,
        missing,
        plan(proving.plan()));
  }

  String title(Subject subject) {
    return switch (subject.kind()) {
      case SUPPLY -> phrases.say("prove.subject.supply");
      case FEED -> part(subject.part().orElseThrow());
      case CIRCUIT -> subject.circuit().orElseThrow().name();
      case FULL -> phrases.say("prove.subject.full");
    };
  }

  private String part(String id) {
    return new Words(vehicle, phrases).part(id);
  }

  private String note(Proving proving, Subject subject, ProveView.State state) {
    return switch (state) {
      case CHANGED ->
          phrases.say(
              "prove.note.changed",
              proving.changed(subject).stream()
                  .map(
                      id ->
                          id.equals(Prints.CIRCUIT) ? phrases.say("prove.note.circuit") : part(id))
                  .collect(Collectors.joining(", ")));
      case BEGUN ->
          phrases.say("prove.note.begun", proving.proof(subject).orElseThrow().answers().size());
      case FAILED -> phrases.say("prove.note.failed");
      case PROVEN, OPEN -> "";
    };
  }

  private String plan(ProvePlan plan) {
    List<String> large =
        plan.subjects().stream()
            .filter(s -> !s.small() && s.kind() == Subject.Kind.CIRCUIT)
            .map(this::title)
            .toList();
    String fuse =
        plan.fuse()
            .map(amps -> phrases.say("prove.plan.fuse", Figures.amps(amps), greatest(plan)))
            .orElseGet(() -> phrases.say("prove.plan.no-fuse"));
    return large.isEmpty() ? fuse : fuse + " " + phrases.say("prove.plan.large", listed(large));
  }

  /** What draws most of all that the small fuse carries. */
  private String greatest(ProvePlan plan) {
    return plan.draws().stream()
        .filter(d -> d.fuse().isPresent())
        .max(Comparator.comparingDouble(BringUp.Draw::amps))
        .map(d -> phrases.say("prove.plan.draw", d.circuit().name(), Figures.amps(d.amps())))
        .orElse("");
  }

  private String listed(List<String> titles) {
    return titles.size() <= MOST_NAMED
        ? String.join(", ", titles)
        : phrases.say(
            "list.more",
            String.join(", ", titles.subList(0, MOST_NAMED)),
            Integer.toString(titles.size() - MOST_NAMED));
  }

  // ---- the step at hand ----------------------------------------------------------------------

  private ProveView.Now now(Proving proving, Subject subject, Step step) {
    Vehicle powered = proving.powered(subject);
    Words words = new Words(powered, phrases);
    List<Step> steps = proving.steps(subject);
    int at = steps.indexOf(step);
    List<Seen> choices =
        step.check().filter(c -> !c.kind().metered()).map(words::choices).orElse(List.of());
    return new ProveView.Now(
        step.id(),
        title(subject),
        at + 1,
        steps.size(),
        task(words, step),
        step.check().map(Check::kind),
        set(proving, subject, steps, at, words),
        step.check().flatMap(Check::red).map(words::point),
        step.check().flatMap(Check::black).map(words::point),
        step.check().filter(c -> c.kind().metered()).map(words::meter).orElse(""),
        choices,
        step.check().isPresent()
            ? choices.stream().map(c -> words.seen(step.check().get(), c)).toList()
            : List.of(yes(step), phrases.say("prove.no." + step.what().word())),
        healthy(words, step),
        otherwise(step),
        because(words, step, proving.plan()),
        step.cautions().stream()
            .map(c -> phrases.say("prove.caution." + c.key(), c.about()))
            .toList(),
        trouble(proving, subject, step, words));
  }

  private String yes(Step step) {
    String key = "prove.yes." + step.what().word();
    return step.what() == Step.What.RATING
        ? phrases.say(key, amps(step.about()))
        : phrases.say(key);
  }

  private String amps(String fuse) {
    return vehicle
        .part(fuse)
        .filter(p -> p.spec() instanceof PartSpec.Fuse)
        .map(p -> Figures.amps(((PartSpec.Fuse) p.spec()).amps()))
        .orElse("");
  }

  private String task(Words words, Step step) {
    return step.seen().isPresent()
        ? words.question(step.check().orElseThrow())
        : phrases.say(
            "prove.task." + step.what().word(), words.part(step.about()), amps(step.about()));
  }

  private String because(Words words, Step step, ProvePlan plan) {
    return phrases.say(
        "prove.because." + step.what().word(),
        words.part(step.about()),
        plan.fuse().map(Figures::amps).orElse(""));
  }

  private String healthy(Words words, Step step) {
    if (step.check().isEmpty()) {
      return "";
    }
    Check check = step.check().get();
    return step.seen()
        .map(s -> words.seen(check, s))
        .orElseGet(
            () ->
                switch (step.what()) {
                  case ZERO -> phrases.say("prove.healthy.zero");
                  case DEAD -> phrases.say("prove.healthy.dead");
                  default -> words.outcome(check, step.low(), step.high());
                });
  }

  private String otherwise(Step step) {
    if (step.what() != Step.What.SHORT) {
      return "";
    }
    String shorted =
        phrases.say("prove.otherwise.short", Figures.ohms(ProveSteps.worstShort(meter)));
    return Double.isInfinite(step.high())
        ? shorted
        : shorted + " " + phrases.say("prove.otherwise.open");
  }

  /** What was understood of a right answer, in few words. */
  String right(Step step) {
    return phrases.say("prove.right." + step.what().word(), part(step.about()));
  }

  /** What an answer that isn't as it should be means, and what to do. */
  String wrong(Step step) {
    return wrong(new Words(vehicle, phrases), step);
  }

  private String wrong(Words words, Step step) {
    String key = "prove.wrong." + step.what().word();
    return step.what() == Step.What.PIECE
        ? phrases.say(
            key,
            words.point(step.check().orElseThrow().red().orElseThrow()).title(),
            words.point(step.check().orElseThrow().black().orElseThrow()).title())
        : phrases.say(key, words.part(step.about()), amps(step.about()));
  }

  private Optional<ProveView.Trouble> trouble(
      Proving proving, Subject subject, Step step, Words words) {
    Optional<String> caseId =
        proving
            .proof(subject)
            .filter(p -> proving.state(subject) == ProveView.State.FAILED)
            .flatMap(Proven.Proof::failed)
            .map(ProofEvent.Failed::caseId);
    Optional<ProofEvent> answer = proving.answer(subject, step);
    if (answer.isEmpty()) {
      return caseId.map(
          id -> new ProveView.Trouble(phrases.say("prove.trouble.case", id), false, caseId));
    }
    String came =
        Proving.value(step, answer.get())
            .map(
                v ->
                    phrases.say(
                        "prove.trouble.came",
                        words.value(step.check().orElseThrow(), v),
                        healthy(words, step)))
            .orElse("");
    boolean canFind = caseId.isEmpty() && proving.complaint(subject, step).isPresent();
    return Optional.of(
        new ProveView.Trouble((came + " " + wrong(words, step)).strip(), canFind, caseId));
  }

  // ---- the set-up ----------------------------------------------------------------------------

  /** What hands do before a step, as far as it isn't so since the step before. */
  private List<String> set(
      Proving proving, Subject subject, List<Step> steps, int at, Words words) {
    Step step = steps.get(at);
    Set<String> own = new TreeSet<>(proving.own(subject));
    Setting bare = Setting.REST.without(own);
    Setting before = standing(steps, at, bare);
    return switch (step.what()) {
      case BARE -> bare(proving);
      case RATING -> List.of(phrases.say("prove.set.in-hand", part(step.about())));
      case CONNECT -> {
        List<String> lines = new ArrayList<>();
        proving
            .plan()
            .fuse()
            .ifPresent(amps -> lines.add(phrases.say("prove.set.small-fuse", Figures.amps(amps))));
        lines.addAll(words.change(withoutBattery(bare), bare));
        yield lines;
      }
      case FIT -> {
        List<String> lines = new ArrayList<>(words.change(before, withoutBattery(bare)));
        proving.own(subject).forEach(p -> lines.add(fit(p)));
        lines.addAll(words.change(withoutBattery(Setting.REST), Setting.REST));
        yield lines;
      }
      case SWAP ->
          List.of(
              words.change(Setting.REST, withoutBattery(Setting.REST)).get(0),
              phrases.say("prove.set.full-fuse"),
              words.change(withoutBattery(Setting.REST), Setting.REST).get(0));
      default -> {
        Setting to = step.check().orElseThrow().setting();
        // The battery comes off before anything else is touched.
        Setting off = to.apart().contains(vehicle.battery().id()) ? withoutBattery(before) : before;
        List<String> lines = new ArrayList<>(words.change(before, off));
        lines.addAll(words.change(off, to));
        yield lines;
      }
    };
  }

  private String fit(String part) {
    return amps(part).isEmpty()
        ? phrases.say("prove.set.fit", part(part))
        : phrases.say("prove.set.fit-fuse", part(part), amps(part));
  }

  private Setting withoutBattery(Setting setting) {
    return setting.without(vehicle.battery().id());
  }

  private List<String> bare(Proving proving) {
    List<String> lines = new ArrayList<>();
    lines.add(phrases.say("prove.set.lead-off", part(vehicle.battery().id())));
    Set<String> all = proving.plan().allNeeds();
    lines.add(
        phrases.say(
            "prove.set.all-out",
            vehicle.parts().stream()
                .map(p -> p.id())
                .filter(all::contains)
                .collect(Collectors.joining(", "))));
    lines.add(phrases.say("prove.set.rest"));
    return lines;
  }

  /** How the vehicle stands when a step comes, by the steps before it. */
  private Setting standing(List<Step> steps, int at, Setting bare) {
    for (int i = at - 1; i >= 0; i--) {
      Step before = steps.get(i);
      if (before.check().isPresent()) {
        return before.check().get().setting();
      }
      switch (before.what()) {
        case FIT, CONNECT -> {
          return Setting.REST;
        }
        case BARE -> {
          // What is out from here on is out already, the small fuse too.
          return steps.get(i + 1).check().orElseThrow().setting();
        }
        default -> {}
      }
    }
    return bare;
  }
}
