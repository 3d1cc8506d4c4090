package loopwright.casework.prove;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.Entry;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Reading;
import loopwright.knowledge.Context;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;

/**
 * A vehicle on its first power: what is proven of it, what to do now, and the answers. Each
 * accepted answer is in the vehicle's journal of proofs before it counts. Not for several threads.
 */
public final class Proving {
  private final String vehicleName;
  private final Vehicle vehicle;
  private final Knowledge knowledge;
  private final MeterSpec meter;
  private final CaseDesk cases;
  private final ProofStore store;
  private final Clock clock;
  private final Phrases phrases;
  private final ProvePlan plan;
  private final Map<Worked, ProveSteps> worked = new HashMap<>();
  private final Map<String, SortedMap<String, String>> prints = new HashMap<>();
  private Proven proven;

  /** Ids of what is proven now, in the order of the plan: asked for at every turn. */
  private Set<String> provenIds = Set.of();

  private String missing = "";
  private String said = "";
  private Optional<String> chosen = Optional.empty();

  /** Steps are worked out once for each state in which a subject is proven. */
  private record Worked(String subject, FirstPower power, List<String> own) {}

  Proving(
      String vehicleName,
      Vehicle vehicle,
      Knowledge knowledge,
      MeterSpec meter,
      CaseDesk cases,
      ProofStore store,
      Clock clock,
      Phrases phrases)
      throws Problem {
    this.vehicleName = vehicleName;
    this.vehicle = vehicle;
    this.knowledge = knowledge;
    this.meter = meter;
    this.cases = cases;
    this.store = store;
    this.clock = clock;
    this.phrases = phrases;
    this.plan = new ProvePlan(vehicle, knowledge);
    read();
  }

  /** The plan. */
  public ProvePlan plan() {
    return plan;
  }

  // ---- how it stands -------------------------------------------------------------------------

  /**
   * Takes up what was kept meanwhile.
   *
   * @throws Problem if it can't be read
   */
  public void refresh() throws Problem {
    read();
  }

  private void read() throws Problem {
    ProofStore.Kept kept = store.read(vehicle.id());
    proven = new Proven(kept.events());
    missing = kept.missing();
    provenIds =
        plan.subjects().stream()
            .filter(s -> proof(s).filter(Proven.Proof::passed).isPresent() && changed(s).isEmpty())
            .map(Subject::id)
            .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private SortedMap<String, String> prints(Subject subject) {
    return prints.computeIfAbsent(subject.id(), s -> Prints.of(subject, vehicle, plan));
  }

  /** How a subject stands. */
  ProveView.State state(Subject subject) {
    Optional<Proven.Proof> proof = proof(subject);
    if (proof.isEmpty()) {
      return ProveView.State.OPEN;
    }
    if (proof.get().passed()) {
      return provenIds.contains(subject.id()) ? ProveView.State.PROVEN : ProveView.State.CHANGED;
    }
    if (!changed(subject).isEmpty()) {
      return ProveView.State.OPEN;
    }
    if (proof.get().failed().isPresent()) {
      return ProveView.State.FAILED;
    }
    return current(subject).isPresent() ? ProveView.State.BEGUN : ProveView.State.OPEN;
  }

  /** Ids of what was changed since a subject's last proof was begun. */
  SortedSet<String> changed(Subject subject) {
    return Prints.changed(proof(subject).orElseThrow().begun().prints(), prints(subject));
  }

  Optional<Proven.Proof> proof(Subject subject) {
    return proven.proof(subject.id());
  }

  private FirstPower power(Subject subject) {
    return plan.power(subject, provenIds);
  }

  /** The readings of each subject that is proven now, by its id. */
  public Map<String, List<ProofEvent.Checked>> goodReadings() {
    Map<String, List<ProofEvent.Checked>> good = new LinkedHashMap<>();
    for (String id : provenIds) {
      good.put(id, proven.proof(id).orElseThrow().readings());
    }
    return good;
  }

  /** What is fitted for a subject and wasn't for those proven before. */
  List<String> own(Subject subject) {
    Set<String> before = plan.fittedBefore(subject, provenIds);
    return subject.needs().stream().filter(p -> !before.contains(p)).toList();
  }

  private ProveSteps workedOut(Subject subject) {
    Worked key = new Worked(subject.id(), power(subject), own(subject));
    return worked.computeIfAbsent(
        key,
        k -> ProveSteps.of(subject, k.own(), vehicle, plan, k.power(), knowledge, meter, phrases));
  }

  /**
   * The steps of a subject as the vehicle is powered up now; behind one that showed too much lost,
   * those by which it is traced.
   */
  List<Step> steps(Subject subject) {
    List<Step> all = new ArrayList<>();
    for (Step step : workedOut(subject).all()) {
      all.add(step);
      all.addAll(trace(subject, step));
    }
    return all;
  }

  /**
   * The readings that halve a way on which too much is lost until the stretch that loses it is
   * left, as far as they are answered, and the next one.
   */
  private List<Step> trace(Subject subject, Step way) {
    if (way.path().size() < 3 || answer(subject, way).isEmpty() || holds(subject, way)) {
      return List.of();
    }
    List<Step> pieces = new ArrayList<>();
    int from = 0;
    int to = way.path().size() - 1;
    while (to - from > 1) {
      int middle = (from + to) / 2;
      Step half = workedOut(subject).piece(way, from, middle);
      pieces.add(half);
      if (answer(subject, half).isEmpty()) {
        return pieces;
      }
      if (holds(subject, half)) {
        from = middle;
      } else {
        to = middle;
      }
    }
    Step last = workedOut(subject).piece(way, from, to);
    if (!pieces.contains(last)) {
      pieces.add(last);
    }
    return pieces;
  }

  /** The vehicle as it is powered up for a subject. */
  Vehicle powered(Subject subject) {
    return power(subject).of(vehicle, phrases);
  }

  /** The proof of a subject whose answers still count: of the same vehicle powered up as now. */
  private Optional<Proven.Proof> current(Subject subject) {
    return proof(subject)
        .filter(p -> changed(subject).isEmpty() && p.begun().power().equals(power(subject)));
  }

  /** The subject at hand: the one chosen, else the first that is to be proven. */
  Subject atHand() {
    return chosen
        .flatMap(plan::subject)
        .or(
            () ->
                plan.subjects().stream()
                    .filter(s -> state(s) != ProveView.State.PROVEN)
                    .min(Comparator.comparingInt(s -> state(s) == ProveView.State.FAILED ? 1 : 0)))
        .orElseGet(() -> plan.subjects().get(plan.subjects().size() - 1));
  }

  /**
   * The step at hand: the first that isn't answered or whose answer is not as it should be; empty
   * where the subject at hand is proven.
   */
  public Optional<Step> step() {
    Subject subject = atHand();
    if (state(subject) == ProveView.State.PROVEN) {
      return Optional.empty();
    }
    for (Step step : workedOut(subject).all()) {
      if (!holds(subject, step)) {
        return Optional.of(traced(subject, step));
      }
    }
    return Optional.empty();
  }

  /** A step, or the one of its trace that is at hand: the next reading, or the stretch found. */
  private Step traced(Subject subject, Step step) {
    List<Step> pieces = trace(subject, step);
    if (pieces.isEmpty()) {
      return step;
    }
    return pieces.stream()
        .filter(p -> answer(subject, p).isEmpty())
        .findFirst()
        .orElseGet(
            () ->
                // A later stretch that loses too much lies within an earlier one.
                pieces.stream()
                    .filter(p -> !holds(subject, p))
                    .reduce((wide, narrow) -> narrow)
                    .orElse(step));
  }

  private boolean holds(Subject subject, Step step) {
    Optional<ProofEvent> answer = answer(subject, step);
    if (answer.isEmpty()) {
      return false;
    }
    if (answer.get() instanceof ProofEvent.Confirmed c) {
      return c.right();
    }
    return value(step, answer.get()).filter(step::holds).isPresent();
  }

  /** The answer that counts for a step. */
  Optional<ProofEvent> answer(Subject subject, Step step) {
    return current(subject).flatMap(p -> Optional.ofNullable(p.answers().get(step.id())));
  }

  /** The value of an answer with a reading. */
  static Optional<Reading.Value> value(Step step, ProofEvent answer) {
    if (!(answer instanceof ProofEvent.Checked c) || step.check().isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Entry.understand(step.check().get().kind(), c.answer()));
    } catch (Problem p) {
      // Kept by another version; it is asked again.
      return Optional.empty();
    }
  }

  /** The view of it. */
  public ProveView view() {
    return new ProveWords(vehicle, phrases, meter).view(this, said, missing);
  }

  // ---- what comes in -------------------------------------------------------------------------

  /**
   * Turns to a subject, out of its order or again.
   *
   * @throws Problem if there is none of this id
   */
  public ProveView choose(String subject) throws Problem {
    if (plan.subject(subject).isEmpty()) {
      throw new Problem(
          "subject",
          subject,
          Phrases.inUse().oneOf(plan.subjects().stream().map(Subject::id).toList()));
    }
    chosen = Optional.of(subject);
    said = "";
    return view();
  }

  /**
   * Answers the step at hand.
   *
   * @throws Problem if there is none, the answer can't be understood or it can't be kept
   */
  public ProveView answer(Answer answer) throws Problem {
    Step step = require();
    Check check =
        step.check()
            .orElseThrow(() -> new Problem("answer", "", phrases.say("prove.problem.by-hand")));
    Reading.Value value = Entry.typed(check.kind(), answer);
    Subject subject = begun();
    keep(
        new ProofEvent.Checked(
            clock.instant(), subject.id(), step.id(), step.own().orElseThrow(), answer));
    return went(subject, step, step.holds(value));
  }

  /**
   * Answers a step by hand.
   *
   * @param right whether it is done and all is as it should be
   * @throws Problem if the step at hand is a reading, or the answer can't be kept
   */
  public ProveView confirm(boolean right) throws Problem {
    Step step = require();
    if (!step.byHand()) {
      throw new Problem("answer", "", phrases.say("prove.problem.reading"));
    }
    Subject subject = begun();
    keep(new ProofEvent.Confirmed(clock.instant(), subject.id(), step.id(), right));
    return went(subject, step, right);
  }

  private Step require() throws Problem {
    return step().orElseThrow(() -> new Problem("answer", "", phrases.say("prove.problem.proven")));
  }

  /** Begins the proof of the subject at hand, unless it goes on. */
  private Subject begun() throws Problem {
    Subject subject = atHand();
    if (current(subject).filter(p -> !p.passed()).isEmpty()) {
      begin(subject);
    }
    return subject;
  }

  private void begin(Subject subject) throws Problem {
    keep(new ProofEvent.Begun(clock.instant(), subject.id(), power(subject), prints(subject)));
  }

  private ProveView went(Subject subject, Step step, boolean right) throws Problem {
    said = right ? new ProveWords(powered(subject), phrases, meter).right(step) : "";
    if (right && workedOut(subject).all().stream().allMatch(s -> holds(subject, s))) {
      keep(new ProofEvent.Passed(clock.instant(), subject.id()));
      said =
          phrases.say("prove.said.proven", new ProveWords(vehicle, phrases, meter).title(subject));
      chosen = Optional.empty();
    } else {
      chosen = Optional.of(subject.id());
      if (!right && !step().equals(Optional.of(step))) {
        said = new ProveWords(powered(subject), phrases, meter).wrong(step);
      }
    }
    return view();
  }

  /**
   * Proves the subject at hand again from its first step.
   *
   * @throws Problem if it can't be kept
   */
  public ProveView again() throws Problem {
    Subject subject = atHand();
    begin(subject);
    chosen = Optional.of(subject.id());
    said = "";
    return view();
  }

  /** What can be complained of in a case over the last answer of a step. */
  Optional<ComplaintKind> complaint(Subject subject, Step step) {
    return plan.circuitFor(subject)
        .flatMap(c -> answer(subject, step))
        .flatMap(a -> step.complaint(value(step, a)));
  }

  /**
   * Opens a case over the step at hand, with all readings taken for its subject.
   *
   * @return the case's id
   * @throws Problem if the last answer of the step at hand is as it should be, or no case follows
   */
  public String findFault() throws Problem {
    Subject subject = atHand();
    Step step = require();
    ComplaintKind kind =
        complaint(subject, step)
            .orElseThrow(
                () -> new Problem("step", step.id(), phrases.say("prove.problem.no-case")));
    Subject circuit = plan.circuitFor(subject).orElseThrow();
    FirstPower power = power(subject);
    FirstPower asComplained = power.fitted(new HashSet<>(circuit.needs()));
    Set<String> notYet = new HashSet<>(power.out());
    notYet.removeAll(asComplained.out());
    String caseId =
        cases.handOver(
            new CaseDesk.NewCase(
                vehicle,
                vehicleName,
                circuit.id(),
                step.load().map(LoadRef::toString),
                kind,
                Context.FRESH_BUILD,
                meter.id(),
                false,
                asComplained),
            current(subject).orElseThrow().readings().stream()
                .map(c -> new CaseDesk.Before(without(notYet, c.check()), c.answer()))
                .toList());
    keep(new ProofEvent.Failed(clock.instant(), subject.id(), step.id(), caseId));
    chosen = Optional.of(subject.id());
    return caseId;
  }

  /** A check as it was made, for a case in which more is fitted. */
  private static OwnCheck without(Set<String> notYet, OwnCheck check) {
    return new OwnCheck(
        check.kind(), check.red(), check.black(), check.lookAt(), check.setting().without(notYet));
  }

  private void keep(ProofEvent event) throws Problem {
    store.append(vehicle.id(), event);
    read();
  }
}
