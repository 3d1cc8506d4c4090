package loopwright.casework;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;
import loopwright.diagnosis.Workbench;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;

/** One case: its events, the diagnosis they lead to, and the view of it. */
final class Session implements FindCase {

  /** A reading as taken, with its epoch. */
  private record Entry0(
      int id, Check check, Answer answer, Reading.Value value, Instant at, int epoch) {}

  /** What was told besides readings, with the reading before it. */
  private record Deed0(int number, int after, CaseEvent.Deed deed) {}

  private final Vehicle vehicle;
  private final Workbench bench;
  private final RuleBook rules;
  private final Diagnosis diagnosis;
  private final Complaint complaint;
  private final Circuit circuit;
  private final String caseId;
  private final Phrases phrases;
  private final Clock clock;
  private final Words words;
  private final OutcomeViews outcomes;
  private final Map<SuspectId, String> titles;

  private CaseStore.Journal journal;
  private final Map<Integer, Entry0> readings = new LinkedHashMap<>();
  private final Set<String> refused = new LinkedHashSet<>();
  private final Set<TerminalRef> unreachable = new LinkedHashSet<>();
  private final Map<String, Double> factors = new HashMap<>();
  private final Map<String, Check> asked = new LinkedHashMap<>();

  /** All that happened and counts, for what is taken back. */
  private final List<CaseEvent> events = new ArrayList<>();

  private final List<Deed0> deeds = new ArrayList<>();
  private int lastDeed;
  private int nextReading = 1;
  private int accepted;
  private int epoch;
  private Optional<String> mended = Optional.empty();
  private boolean stopped;

  /** What this vehicle had before that counts, in words; empty if nothing does. */
  private final String ownRecord;

  /** What the journal says was told last. */
  private Optional<Account> told = Optional.empty();

  /** Whether something was accepted since the case was opened or taken up. */
  private boolean fresh;

  /** Who proposes each check first. */
  private Proposer first = Proposer.PROGRAM;

  /** The check that both have been compared for; empty while the learner is still to propose. */
  private Optional<CaseEvent.Settled> settled = Optional.empty();

  private final Set<Warning> warnings = EnumSet.noneOf(Warning.class);
  private boolean isolated;

  /** Cautions of the case while nothing is warned of. */
  private List<String> usualCautions = List.of();

  /** Whether the battery was taken off besides what the last check asked for. */
  private boolean batteryOff;

  private Optional<Check> last = Optional.empty();
  private String said = "";
  private double minutes;
  private Findings findings;
  private CaseView view;

  private Session(
      Knowledge knowledge,
      RuleBook rules,
      Vehicle vehicle,
      MeterSpec meter,
      CaseEvent.Opened opened,
      List<OwnRate> rates,
      Phrases phrases,
      Clock clock,
      CaseDesk.Progress progress) {
    Knowledge rated = OwnRates.rated(knowledge, rates);
    this.ownRecord = OwnRates.words(knowledge, rates, phrases);
    this.vehicle = vehicle;
    this.phrases = phrases;
    this.clock = clock;
    this.rules = rules;
    this.caseId = opened.caseId();
    this.circuit = vehicle.circuit(opened.circuit()).orElseThrow();
    progress.at(phrases.say("progress.network"), 0.05);
    Network network = Network.of(vehicle, rated.typicals());
    this.bench = new Workbench(network, rated, meter);
    this.complaint =
        new Complaint(
            opened.kind(),
            circuit.id(),
            LoadRef.parse(opened.load().orElse(circuit.loads().get(0).toString())),
            circuit.onSetting());
    String solving = phrases.say("progress.solving");
    this.diagnosis =
        Diagnosis.open(
            bench,
            rules,
            complaint,
            opened.context(),
            share -> {
              progress.at(solving, 0.1 + 0.85 * share);
              return !progress.cancelled();
            });
    this.titles = diagnosis.titles();
    this.words = new Words(vehicle, phrases, complaint.load(), diagnosis::twin);
    this.outcomes = new OutcomeViews(words);
    progress.at(phrases.say("progress.first"), 0.97);
    refresh(ownRecord);
  }

  static Session open(
      Knowledge knowledge,
      RuleBook rules,
      Vehicle vehicle,
      MeterSpec meter,
      CaseEvent.Opened opened,
      List<OwnRate> rates,
      Phrases phrases,
      Clock clock,
      CaseDesk.Progress progress) {
    return new Session(knowledge, rules, vehicle, meter, opened, rates, phrases, clock, progress);
  }

  /** From now on events go to this journal before they count. */
  void keepIn(CaseStore.Journal newJournal) {
    this.journal = newJournal;
    if (concluded()) {
      // The power may have gone off between the answer and what was said to it.
      tell();
    }
  }

  /** Brings back what a kept journal holds. */
  void replay(List<CaseEvent> events, String missing) throws Problem {
    for (CaseEvent event : events) {
      apply(event);
      accepted += event instanceof CaseEvent.Told || event instanceof CaseEvent.Weighed ? 0 : 1;
    }
    stopped = false;
    refresh(
        Stream.of(missing, ownRecord).filter(t -> !t.isEmpty()).collect(Collectors.joining(" ")));
  }

  private void keep(CaseEvent event) throws Problem {
    if (journal != null) {
      journal.append(event);
    }
    apply(event);
    accepted++;
    fresh = true;
  }

  /** Whether there is an answer, or its mend is proven. */
  private boolean concluded() {
    return view.move() == CaseView.Move.REPAIR || view.move() == CaseView.Move.END;
  }

  /** Puts what the case says now into its journal, unless that says so already. */
  private void tell() {
    if (journal == null || stopped) {
      return;
    }
    Account account = Accounts.of(view, findings, vehicle, proven());
    if (told.equals(Optional.of(account))) {
      return;
    }
    CaseEvent.Told event = new CaseEvent.Told(clock.instant(), account);
    try {
      journal.append(event);
      apply(event);
    } catch (Problem p) {
      // All that was answered is kept; what follows from it is told again at the next chance.
    }
  }

  /** The part whose mend is proven by what was seen and read since. */
  private Optional<String> proven() {
    boolean all = mended.isPresent() && warnings.isEmpty() && !current().isEmpty();
    return all && !proofFailed() && nextProof().isEmpty() ? mended : Optional.empty();
  }

  private void apply(CaseEvent event) throws Problem {
    if (event instanceof CaseEvent.Undone undone) {
      withoutDeed(undone.what());
      return;
    }
    events.add(event);
    if (event instanceof CaseEvent.Deed deed) {
      deeds.add(new Deed0(++lastDeed, nextReading - 1, deed));
    }
    follow(event);
  }

  /** Follows all that counts from the beginning, as if this had never been told. */
  private void withoutDeed(CaseEvent.Deed deed) throws Problem {
    if (!events.contains(deed)) {
      return;
    }
    events.remove(events.lastIndexOf(deed));
    deeds.remove(deeds.stream().map(Deed0::deed).toList().lastIndexOf(deed));
    boolean ended = stopped;
    readings.clear();
    refused.clear();
    unreachable.clear();
    factors.clear();
    warnings.clear();
    nextReading = 1;
    epoch = 0;
    minutes = 0;
    mended = Optional.empty();
    last = Optional.empty();
    first = Proposer.PROGRAM;
    settled = Optional.empty();
    told = Optional.empty();
    isolated = false;
    batteryOff = false;
    for (CaseEvent event : events) {
      follow(event);
    }
    stopped = ended;
  }

  private void follow(CaseEvent event) throws Problem {
    boolean goesOn =
        event instanceof CaseEvent.Told
            || event instanceof CaseEvent.Photographed
            || event instanceof CaseEvent.Stopped;
    if (!goesOn) {
      settled = Optional.empty();
    }
    if (event instanceof CaseEvent.Taken t) {
      Check check = t.check().check();
      Reading.Value value = Entry.understand(check.kind(), t.answer());
      readings.put(t.reading(), new Entry0(t.reading(), check, t.answer(), value, t.at(), epoch));
      nextReading = Math.max(nextReading, t.reading() + 1);
      minutes += diagnosis.minutes(check, last);
      last = Optional.of(check);
      batteryOff &= !powered(check.setting());
    } else if (event instanceof CaseEvent.Withdrawn w) {
      readings.remove(w.reading());
    } else if (event instanceof CaseEvent.Corrected c) {
      Entry0 old = readings.get(c.reading());
      if (old != null) {
        readings.put(
            c.reading(),
            new Entry0(
                old.id(),
                old.check(),
                c.answer(),
                Entry.understand(old.check().kind(), c.answer()),
                old.at(),
                old.epoch()));
      }
    } else if (event instanceof CaseEvent.Refused r) {
      refused.add(r.check().check().id());
      if (r.refusal() == Refusal.NEVER || r.refusal() == Refusal.CANT_REACH) {
        // The black lead usually lies on the post: the point meant is the red one.
        r.check().red().ifPresent(unreachable::add);
      }
    } else if (event instanceof CaseEvent.Swapped s) {
      factors.merge(s.part(), SWAPPED_FACTOR, (a, b) -> a * b);
      if (s.helped() == Helped.YES) {
        mended = Optional.of(s.part());
        epoch++;
      }
    } else if (event instanceof CaseEvent.Repaired r) {
      factors.merge(r.part(), SWAPPED_FACTOR, (a, b) -> a * b);
      mended = Optional.of(r.part());
      epoch++;
    } else if (event instanceof CaseEvent.Warned w) {
      warnings.add(w.warning());
      isolated = false;
    } else if (event instanceof CaseEvent.Isolated) {
      isolated = true;
      batteryOff = true;
    } else if (event instanceof CaseEvent.Gone) {
      warnings.clear();
      isolated = false;
    } else if (event instanceof CaseEvent.Told t) {
      told = Optional.of(t.account());
    } else if (event instanceof CaseEvent.Proposing p) {
      first = p.first();
    } else if (event instanceof CaseEvent.Settled s) {
      settled = Optional.of(s);
    } else if (event instanceof CaseEvent.Stopped) {
      stopped = true;
    }
  }

  /** What is left of a part's chance once a good one has been fitted. Common practice. */
  private static final double SWAPPED_FACTOR = 0.02;

  // ---- what comes in ------------------------------------------------------------------------

  @Override
  public void prepare(BooleanSupplier goOn) {
    view.next()
        .map(this::check)
        .ifPresent(check -> diagnosis.prepare(check, telling(), circumstances(last), goOn));
  }

  @Override
  public CaseView view() {
    return view;
  }

  private Check known(String checkId) throws Problem {
    Check check = asked.get(checkId);
    if (check == null) {
      throw new Problem(
          "check",
          checkId,
          view.next()
              .map(n -> phrases.say("problem.check", n.id()))
              .orElse(phrases.say("problem.no-check")));
    }
    return check;
  }

  @Override
  public Understood understand(String checkId, Answer answer) throws Problem {
    Check check = known(checkId);
    Reading.Value value = possible(check, answer);
    String shown = words.value(check, value);
    if (!check.kind().metered()) {
      return new Understood(shown, Optional.empty());
    }
    Reading reading = new Reading(0, check, value);
    if (!diagnosis.explained(reading)) {
      if (value instanceof Reading.Value.Number n
          && answer instanceof Answer.Text t
          && t.text().toLowerCase(java.util.Locale.ROOT).contains("mv")
          && Math.abs(n.value()) < 0.2) {
        return new Understood(shown, Optional.of(phrases.say("second.millivolts", shown)));
      }
      return new Understood(shown, Optional.of(phrases.say("second.unexplained", shown)));
    }
    return new Understood(shown, Optional.empty());
  }

  @Override
  public CaseView answer(String checkId, Answer answer) throws Problem {
    return take(OwnCheck.of(known(checkId)), answer);
  }

  @Override
  public CaseView take(OwnCheck check, Answer answer) throws Problem {
    ensureOpen();
    validate(check);
    if (forbidden(check.setting())) {
      throw new Problem(
          "setting", phrases.say("warned.connected"), phrases.say("problem.warned", warned()));
    }
    possible(check.check(), answer);
    int id = nextReading;
    Findings before = findings;
    keep(new CaseEvent.Taken(clock.instant(), id, check, answer));
    return refresh(before, id);
  }

  /** The value, if it is one that this check can have: a fuse looks whole or broken, never lit. */
  private Reading.Value possible(Check check, Answer answer) throws Problem {
    Reading.Value value = Entry.typed(check.kind(), answer);
    if (value instanceof Reading.Value.Sight sight
        && !words.choices(check).contains(sight.seen())) {
      throw new Problem(
          "seen",
          sight.seen().word(),
          phrases.oneOf(words.choices(check).stream().map(Seen::word).toList()));
    }
    return value;
  }

  private void ensureOpen() throws Problem {
    if (stopped) {
      throw new Problem("case", caseId, phrases.say("problem.ended"));
    }
  }

  private void validate(OwnCheck check) throws Problem {
    for (Map.Entry<String, String> e : check.setting().positions().entrySet()) {
      List<String> positions = vehicle.controls().get(e.getKey());
      if (positions == null) {
        throw new Problem(
            "setting",
            e.getKey(),
            phrases.say("problem.control", String.join(", ", vehicle.controls().keySet())));
      }
      if (!positions.contains(e.getValue())) {
        throw new Problem(
            "setting",
            e.getKey() + "=" + e.getValue(),
            phrases.say("problem.position", e.getKey(), String.join(", ", positions)));
      }
    }
    for (String part : check.setting().apart()) {
      if (vehicle.part(part).isEmpty()) {
        throw new Problem("setting", part, phrases.say("problem.part"));
      }
    }
    if (check.kind().metered()) {
      checkPoint("red", check.red());
      checkPoint("black", check.black());
      if (check.kind() == CheckKind.DRAIN) {
        checkInLead(check);
      } else if (check.red().equals(check.black())) {
        throw new Problem(
            "black", check.black().orElseThrow().toString(), phrases.say("problem.same-point"));
      }
    } else {
      String subject =
          check.lookAt().orElseThrow(() -> new Problem("look", "", phrases.say("problem.look")));
      LoadRef ref = LoadRef.parse(subject);
      Optional<Part> part = vehicle.part(ref.part());
      if (part.isEmpty()) {
        throw new Problem("look", subject, phrases.say("problem.part"));
      }
      if (!check.takes(part.get())) {
        throw new Problem("look", subject, phrases.say("problem.look"));
      }
      if (ref.filament().isPresent()
          && !part.get().spec().functions().contains(ref.filament().get())) {
        throw new Problem("look", subject, phrases.oneOf(part.get().spec().functions()));
      }
    }
  }

  /** A drain shows on the battery's grounded post alone. */
  private void checkInLead(OwnCheck check) throws Problem {
    TerminalRef post = vehicle.groundedPost();
    for (TerminalRef at : List.of(check.red().orElseThrow(), check.black().orElseThrow())) {
      if (!at.equals(post)) {
        throw new Problem("red", at.toString(), phrases.say("problem.drain", post.toString()));
      }
    }
  }

  private void checkPoint(String field, Optional<TerminalRef> at) throws Problem {
    if (at.isEmpty()) {
      throw new Problem(field, "", phrases.say("problem.point"));
    }
    if (bench.network().node(at.get()).isEmpty()) {
      throw new Problem(
          field,
          at.get().toString(),
          vehicle
              .part(at.get().part())
              .filter(p -> !p.spec().terminals().isEmpty())
              .map(
                  p ->
                      phrases.say(
                          "problem.terminal", p.id(), String.join(", ", p.spec().terminals())))
              .orElse(phrases.say("problem.point")));
    }
  }

  @Override
  public CaseView refuse(String checkId, Refusal refusal) throws Problem {
    ensureOpen();
    Check check = known(checkId);
    keep(new CaseEvent.Refused(clock.instant(), OwnCheck.of(check), refusal));
    return refresh(phrases.say("said.refused", refusal.words()));
  }

  @Override
  public CaseView withdraw(int reading) throws Problem {
    ensureOpen();
    require(reading);
    keep(new CaseEvent.Withdrawn(clock.instant(), reading));
    return refresh(phrases.say("said.withdrawn", Integer.toString(reading)));
  }

  @Override
  public CaseView correct(int reading, Answer answer) throws Problem {
    ensureOpen();
    Entry0 old = require(reading);
    possible(old.check(), answer);
    Findings before = findings;
    keep(new CaseEvent.Corrected(clock.instant(), reading, answer));
    return refresh(before, reading);
  }

  private Entry0 require(int reading) throws Problem {
    Entry0 entry = readings.get(reading);
    if (entry == null) {
      throw new Problem(
          "reading",
          Integer.toString(reading),
          readings.isEmpty()
              ? phrases.say("problem.no-readings")
              : phrases.oneOf(readings.keySet().stream().map(String::valueOf).toList()));
    }
    return entry;
  }

  @Override
  public CaseView swapped(String part, Helped helped) throws Problem {
    ensureOpen();
    requirePart(part);
    if (helped == Helped.YES) {
      tell();
    }
    keep(new CaseEvent.Swapped(clock.instant(), part, helped));
    return refresh(
        phrases.say(
            helped == Helped.YES ? "said.swap-helped" : "said.swap-no-help", words.part(part)));
  }

  @Override
  public CaseView repaired(String part) throws Problem {
    ensureOpen();
    requirePart(part);
    tell();
    keep(new CaseEvent.Repaired(clock.instant(), part));
    return refresh(phrases.say("said.repaired", words.part(part)));
  }

  private void requirePart(String part) throws Problem {
    if (vehicle.part(part).isEmpty()) {
      throw new Problem("part", part, phrases.say("problem.part"));
    }
  }

  @Override
  public CaseView undo(int number) throws Problem {
    Deed0 done = deeds.stream().filter(d -> d.number() == number).findFirst().orElse(null);
    if (done == null) {
      throw new Problem(
          "deed",
          Integer.toString(number),
          deeds.isEmpty()
              ? phrases.say("problem.no-deeds")
              : deeds.stream()
                  .map(d -> Integer.toString(d.number()))
                  .collect(Collectors.joining(", ")));
    }
    if (!(done.deed() instanceof CaseEvent.Photographed)) {
      ensureOpen();
    }
    keep(new CaseEvent.Undone(clock.instant(), done.deed()));
    return refresh(phrases.say("said.undone", words.deed(done.deed())));
  }

  @Override
  public CaseView attach(Path photo, String caption) throws Problem {
    if (journal == null) {
      throw new Problem("photo", photo.toString(), phrases.say("problem.not-kept"));
    }
    String file = journal.photo(photo);
    keep(new CaseEvent.Photographed(clock.instant(), file, caption));
    return refresh(phrases.say("said.photo", file));
  }

  @Override
  public CaseView warn(Warning warning) throws Problem {
    ensureOpen();
    keep(new CaseEvent.Warned(clock.instant(), warning));
    return refresh(phrases.say("said.warned", phrases.say("warning." + warning.word())));
  }

  @Override
  public CaseView isolated() throws Problem {
    ensureOpen();
    if (!warnings.contains(Warning.SMOKE) && !warnings.contains(Warning.HEAT)) {
      throw new Problem(
          "isolated",
          warnings.isEmpty() ? phrases.say("warned.nothing") : warned(),
          phrases.say("problem.isolated"));
    }
    keep(new CaseEvent.Isolated(clock.instant()));
    return refresh(phrases.say("said.isolated"));
  }

  @Override
  public CaseView gone() throws Problem {
    ensureOpen();
    if (warnings.isEmpty()) {
      throw new Problem("gone", phrases.say("warned.nothing"), phrases.say("problem.gone"));
    }
    String what = warned();
    keep(new CaseEvent.Gone(clock.instant()));
    return refresh(phrases.say("said.gone", what));
  }

  private String warned() {
    return warnings.stream()
        .map(w -> phrases.say("warning." + w.word()))
        .collect(Collectors.joining(", "));
  }

  private boolean powered(Setting setting) {
    return !setting.apart().contains(vehicle.battery().id());
  }

  /** Whether something is warned of, and this has the power on. */
  private boolean forbidden(Setting setting) {
    return !warnings.isEmpty() && powered(setting);
  }

  /** Whether nothing forbids going on: no fuel about, and the battery off after smoke or heat. */
  private boolean safe() {
    return warnings.isEmpty() || isolated && !warnings.contains(Warning.FUEL);
  }

  /** How the vehicle stands now. */
  private Setting standing() {
    Setting asked = last.map(Session::stands).orElse(Setting.REST);
    return batteryOff ? asked.without(vehicle.battery().id()) : asked;
  }

  /** How the vehicle stands in a check: the fuse is out where a lamp is in its place. */
  private static Setting stands(Check check) {
    return check.kind() == CheckKind.LAMP_FOR_FUSE
        ? check.setting().without(check.handled().orElseThrow())
        : check.setting();
  }

  // ---- the learner first --------------------------------------------------------------------

  @Override
  public Proposer first() {
    return first;
  }

  @Override
  public CaseView propose(Proposer who) throws Problem {
    ensureOpen();
    keep(new CaseEvent.Proposing(clock.instant(), who));
    return refresh(phrases.say("said.first." + who.word()));
  }

  @Override
  public Comparison compare(OwnCheck learners) throws Problem {
    ensureOpen();
    if (view.move() != CaseView.Move.PROPOSE) {
      throw new Problem("proposal", learners.check().id(), phrases.say("problem.no-proposal"));
    }
    validate(learners);
    Check check = learners.check();
    Findings.Proposal own = appraised(check, last);
    Findings.Proposal best = findings.ranked().get(0);
    Comparisons comparisons = new Comparisons(phrases, words, outcomes);
    return new Comparison(
        comparisons.side(own, cautions(check)),
        comparisons.side(best, cautions(best.check())),
        comparisons.verdict(own, best),
        blocked(check));
  }

  /** Why a check must not be taken now; empty if it may. */
  private String blocked(Check check) {
    if (forbidden(check.setting())) {
      return phrases.say("problem.warned", warned());
    }
    boolean live = check.kind().drives() && !diagnosis.provenDead(check, telling());
    return live ? phrases.say("compare.dead-first") : "";
  }

  @Override
  public CaseView settle(OwnCheck learners, Proposer taken) throws Problem {
    Comparison comparison = compare(learners);
    if (taken == Proposer.LEARNER && !comparison.blocked().isEmpty()) {
      throw new Problem("proposal", comparison.learners().what(), comparison.blocked());
    }
    OwnCheck programs = OwnCheck.of(findings.ranked().get(0).check());
    keep(new CaseEvent.Settled(clock.instant(), learners, programs, taken));
    return refresh(comparison.verdict());
  }

  @Override
  public CaseView stop() {
    if (!stopped) {
      tell();
      try {
        keep(new CaseEvent.Stopped(clock.instant()));
      } catch (Problem p) {
        stopped = true;
        return refresh(p.getMessage());
      }
    }
    return refresh(phrases.say("said.stopped"));
  }

  // ---- the view -----------------------------------------------------------------------------

  private List<Reading> current() {
    return readings.values().stream()
        .filter(e -> e.epoch() == epoch)
        .map(e -> new Reading(e.id(), e.check(), e.value()))
        .toList();
  }

  /** The current readings but for those that a loose contact only passed through. */
  private List<Reading> telling() {
    List<Reading> current = current();
    Set<Integer> passing = diagnosis.passing(current);
    return current.stream().filter(r -> !passing.contains(r.id())).toList();
  }

  private CaseView refresh(Findings before, int reading) {
    compute();
    said = did(before, reading);
    return answered();
  }

  private CaseView refresh(String text) {
    compute();
    said = text;
    return answered();
  }

  /** What is shown now; an answer and a proof are put into the journal as they stand. */
  private CaseView answered() {
    build();
    if (concluded()) {
      tell();
    }
    return view;
  }

  private void compute() {
    // While a repair is being proven nothing is suspected: the proof is about this part alone.
    boolean proving = mended.isPresent() && !proofFailed();
    if (proving && warnings.isEmpty()) {
      findings = Findings.NONE;
      return;
    }
    Findings found = diagnosis.findings(telling(), circumstances(last));
    findings = proving ? onlyConclusions(found) : found;
  }

  private Diagnosis.Circumstances circumstances(Optional<Check> before) {
    return new Diagnosis.Circumstances(unreachable, refused, factors, before, warnings);
  }

  /** What a warning still needs of the rules while nothing is suspected: their cautions. */
  private static Findings onlyConclusions(Findings found) {
    Findings none = Findings.NONE;
    return new Findings(
        none.status(),
        none.parts(),
        none.together(),
        none.group(),
        none.held(),
        none.unlisted(),
        none.healthy(),
        none.cleared(),
        none.outOfPlay(),
        found.conclusions().stream().filter(Conclusion.Caution.class::isInstance).toList(),
        none.ranked(),
        none.odd(),
        none.atOdds());
  }

  /** One sentence on what a reading did. */
  private String did(Findings before, int id) {
    Entry0 entry = readings.get(id);
    if (entry == null) {
      return "";
    }
    String value = shown(entry);
    String where = words.place(entry.check());
    if (diagnosis.passing(current()).contains(id)) {
      return phrases.say("did.passing", value, where);
    }
    for (Conclusion c : findings.conclusions()) {
      if (c instanceof Conclusion.Doubt d && d.reading() == id) {
        return phrases.say("did.doubt", value, where, rules.words(d.rule(), d.key(), d.args()));
      }
    }
    if (findings.status() == Findings.Status.HEALTHY) {
      return phrases.say("did.healthy", value, where);
    }
    List<String> cleared = new ArrayList<>();
    for (String part : findings.cleared().keySet()) {
      if (!before.cleared().containsKey(part)) {
        cleared.add(part);
      }
    }
    List<String> ordered = onLoopFirst(cleared);
    Optional<String> two = two();
    if (two.isPresent()) {
      // Where two have failed, what can't be it alone may still be the second.
      return (ordered.isEmpty()
              ? phrases.say("did.noted", value, where)
              : phrases.say("did.not-alone", value, where, words.parts(ordered, 6)))
          + " "
          + two.get();
    }
    if (!ordered.isEmpty()) {
      return phrases.say("did.cleared", value, where, words.parts(ordered, 6));
    }
    if (!findings.parts().isEmpty()) {
      String nothing =
          phrases.say(
              "did.nothing-cleared",
              value,
              where,
              words.part(findings.parts().get(0).part()),
              Figures.percent(findings.parts().get(0).belief()));
      // Why it rules nothing out: a ghost, no current, a look that proves nothing.
      return senses(id).stream().findFirst().map(s -> nothing + " " + s).orElse(nothing);
    }
    if (mended.isPresent() && !proofFailed() && nextProof().isEmpty()) {
      return phrases.say("did.proven", value, where, words.part(mended.get()));
    }
    return phrases.say("did.noted", value, where);
  }

  /** That two things have failed, as soon as that is likelier than one alone. */
  private Optional<String> two() {
    double all = findings.together().stream().mapToDouble(Findings.PairBelief::belief).sum();
    if (all <= 0.5) {
      return Optional.empty();
    }
    Findings.PairBelief best = findings.together().get(0);
    return Optional.of(
        phrases.say(
            "did.two",
            words.part(best.parts().get(0)),
            words.part(best.parts().get(1)),
            Figures.percent(best.belief())));
  }

  /** The rule that says of a reading no more than that it is as it should be. */
  private static final String AS_HEALTHY = "as-healthy";

  /** What the rules say a reading means, what says most first. */
  private List<String> senses(int id) {
    return findings.conclusions().stream()
        .filter(c -> c instanceof Conclusion.Sense s && s.reading() == id)
        .map(Conclusion.Sense.class::cast)
        .sorted(Comparator.comparing(s -> s.rule().equals(AS_HEALTHY)))
        .map(s -> rules.words(s.rule(), s.key(), s.args()))
        .toList();
  }

  /** The value, and for a drop across a fuse the current that it speaks of. */
  private String shown(Entry0 entry) {
    String value = words.value(entry.check(), entry.value());
    if (entry.check().kind() == CheckKind.DRAIN
        && entry.value() instanceof Reading.Value.Number n) {
      double[] sound = diagnosis.healthyBand(entry.check());
      // With the positive post grounded the display shows minus; what is drawn has no sign.
      double up = vehicle.grounded() == GroundedPole.POSITIVE ? -1 : 1;
      return phrases.say(
          "value.drain",
          value,
          Figures.amps(up * n.value()),
          Figures.amps(
              Math.max(0, Math.min(up * sound[0], up * sound[1])),
              Math.max(up * sound[0], up * sound[1])));
    }
    return diagnosis
        .fuseAmps(new Reading(entry.id(), entry.check(), entry.value()))
        .map(a -> phrases.say("value.fuse", value, Figures.amps(a[0], a[1])))
        .orElse(value);
  }

  private List<String> onLoopFirst(List<String> parts) {
    List<String> order = new ArrayList<>();
    diagnosis
        .loop()
        .ifPresent(l -> l.all().forEach(x -> x.pieces().forEach(p -> order.add(p.part()))));
    List<String> sorted = new ArrayList<>(parts);
    sorted.sort(
        Comparator.comparingInt(
                (String p) -> order.contains(p) ? order.indexOf(p) : Integer.MAX_VALUE)
            .thenComparing(p -> p));
    return sorted;
  }

  private CaseView.Status status(boolean proving, boolean proven) {
    if (proving) {
      return proven && safe() && warnings.isEmpty()
          ? CaseView.Status.HEALTHY
          : CaseView.Status.ISOLATED;
    }
    return switch (findings.status()) {
      case SEARCHING -> CaseView.Status.SEARCHING;
      case ISOLATED -> CaseView.Status.ISOLATED;
      case HEALTHY -> CaseView.Status.HEALTHY;
      case CONTRADICTION -> CaseView.Status.CONTRADICTION;
    };
  }

  private void build() {
    boolean proving = mended.isPresent() && !proofFailed();
    Optional<Check> proof = proving ? nextProof() : Optional.empty();
    CaseView.Status status = status(proving, proof.isEmpty());
    CaseView.Move move;
    Optional<CheckView> next = Optional.empty();
    Optional<RepairView> repair = Optional.empty();
    List<SuspectView> suspects = suspects();
    if (stopped) {
      move = CaseView.Move.END;
    } else if (!safe()) {
      move = CaseView.Move.MAKE_SAFE;
    } else if (proving && !warnings.isEmpty()) {
      move = CaseView.Move.STUCK;
    } else if (proof.isPresent()) {
      move = CaseView.Move.PROOF;
      next = Optional.of(view(proof.get(), List.of(), phrases.say("because.proof"), 0));
    } else if (proving) {
      move = CaseView.Move.END;
    } else if (findings.status() == Findings.Status.ISOLATED) {
      move = CaseView.Move.REPAIR;
      repair = Optional.of(repair(suspects));
    } else if (findings.status() == Findings.Status.HEALTHY) {
      move = warnings.isEmpty() ? CaseView.Move.END : CaseView.Move.STUCK;
    } else if (toTakeAgain().isPresent()) {
      move = CaseView.Move.CHECK;
      Check again = readings.get(toTakeAgain().get()).check();
      next =
          Optional.of(
              view(
                  again,
                  List.of(),
                  phrases.say("because.again", Integer.toString(toTakeAgain().get())),
                  0));
    } else if (findings.ranked().isEmpty() || !findings.ranked().get(0).tells()) {
      move = CaseView.Move.STUCK;
    } else if (first == Proposer.LEARNER && settled.isEmpty()) {
      move = CaseView.Move.PROPOSE;
    } else {
      move = CaseView.Move.CHECK;
      next = Optional.of(toTake());
    }
    next.ifPresent(n -> asked.putIfAbsent(n.id(), check(n)));
    view =
        new CaseView(
            caseId,
            accepted,
            complaint.kind() == ComplaintKind.DRAINS_BATTERY
                ? phrases.say("title.drain", vehicle.name())
                : phrases.say(
                    "title", circuit.name(), phrases.of(complaint.kind()), vehicle.name()),
            status,
            move,
            minutes,
            suspects,
            cleared(),
            readingViews(),
            deeds.stream()
                .map(d -> new DeedView(d.number(), d.after(), d.deed(), words.deed(d.deed())))
                .toList(),
            next,
            loopView(),
            said,
            caseCautions(),
            new ArrayList<>(warnings),
            makeSafe(),
            putBack(),
            repair,
            findings.atOdds(),
            oddsWords());
  }

  /** The check that is best, or that the learner has proposed. */
  private CheckView toTake() {
    Optional<Check> learners =
        settled.filter(s -> s.taken() == Proposer.LEARNER).map(s -> s.learners().check());
    if (learners.isPresent()) {
      Findings.Proposal own = appraised(learners.get(), last);
      return view(own.check(), own.outcomes(), phrases.say("because.learner"), own.minutes());
    }
    Findings.Proposal best = findings.ranked().get(0);
    return view(best.check(), best.outcomes(), because(best), best.minutes());
  }

  /** Times that one check is asked for before it is taken as it is. */
  private static final int MOST_TAKES = 3;

  /** The reading at odds with the others that is worth taking once more. */
  private Optional<Integer> toTakeAgain() {
    if (findings.status() != Findings.Status.CONTRADICTION) {
      return Optional.empty();
    }
    return findings.atOdds().stream()
        .filter(readings::containsKey)
        .filter(id -> !forbidden(readings.get(id).check().setting()))
        .filter(
            id ->
                readings.values().stream()
                        .filter(r -> r.check().equals(readings.get(id).check()))
                        .count()
                    < MOST_TAKES)
        .findFirst();
  }

  private Check check(CheckView n) {
    return OwnCheck.of(n).check();
  }

  private String oddsWords() {
    if (findings.status() != Findings.Status.CONTRADICTION || findings.atOdds().isEmpty()) {
      return "";
    }
    String ids = findings.atOdds().stream().map(String::valueOf).collect(Collectors.joining(", "));
    return phrases.say("odds", ids, Integer.toString(findings.atOdds().get(0)));
  }

  // ---- proof of the repair --------------------------------------------------------------------

  private List<Check> proofs() {
    List<Check> proofs = new ArrayList<>();
    proofs.add(Check.look(complaint.load().toString(), complaint.on()));
    if (complaint.kind() == loopwright.diagnosis.ComplaintKind.STUCK_ON) {
      proofs.add(Check.look(complaint.load().toString(), bench.shows(complaint)));
    }
    Part load = vehicle.requirePart(complaint.load().part());
    List<String> ends = load.spec().terminals();
    String in = complaint.load().filament().orElse(ends.get(0));
    String out = ends.get(ends.size() - 1);
    TerminalRef red = new TerminalRef(load.id(), in);
    TerminalRef black = new TerminalRef(load.id(), out);
    if (vehicle.access(red).reachable() && vehicle.access(black).reachable()) {
      proofs.add(Check.measure(CheckKind.VOLTS, red, black, complaint.on()));
    }
    mended.map(diagnosis::elsewhere).ifPresent(proofs::addAll);
    proofs.removeIf(p -> refused.contains(p.id()));
    return proofs;
  }

  private Optional<Check> nextProof() {
    Set<String> done = current().stream().map(r -> r.check().id()).collect(Collectors.toSet());
    return proofs().stream().filter(p -> !done.contains(p.id())).findFirst();
  }

  private boolean proofFailed() {
    for (Reading r : current()) {
      if (!diagnosis.healthyGives(r)) {
        return true;
      }
    }
    return false;
  }

  // ---- pieces of the view -----------------------------------------------------------------------

  private List<SuspectView> suspects() {
    List<SuspectView> list = new ArrayList<>();
    boolean grouped = findings.status() == Findings.Status.ISOLATED && findings.group().size() > 1;
    List<Findings.PartBelief> group = new ArrayList<>();
    for (Findings.PartBelief p : findings.parts()) {
      if (grouped && findings.group().contains(p.part())) {
        group.add(p);
      } else if (p.belief() >= 0.0005 || list.size() < 3) {
        list.add(suspect(List.of(p), ""));
      }
    }
    if (!group.isEmpty()) {
      list.add(0, group(group));
    }
    return list;
  }

  /** The answer where it is more than one part: two that have both failed, or one of these. */
  private SuspectView group(List<Findings.PartBelief> group) {
    SuspectView one = suspect(group, phrases.say(findings.both() ? "group.both" : "group.split"));
    String title =
        findings.both()
            ? phrases.say(
                "group.both-title", words.part(one.parts().get(0)), words.part(one.parts().get(1)))
            : one.title();
    return new SuspectView(
        one.parts(), title, one.modes(), findings.held(), one.suspects(), one.splitBy());
  }

  private SuspectView suspect(List<Findings.PartBelief> parts, String splitBy) {
    List<String> modes = new ArrayList<>();
    List<SuspectId> ids = new ArrayList<>();
    double belief = 0;
    for (Findings.PartBelief p : parts) {
      belief += p.belief();
      for (Findings.ModeBelief m : p.modes()) {
        ids.add(m.suspect());
        if (m.belief() >= 0.02 * p.belief() && modes.size() < 5) {
          String mode = words.mode(m);
          modes.add(parts.size() > 1 ? words.part(p.part()) + ": " + mode : mode);
        }
      }
    }
    List<String> names = parts.stream().map(Findings.PartBelief::part).toList();
    return new SuspectView(names, words.parts(names, 4), modes, belief, ids, splitBy);
  }

  private List<ClearedView> cleared() {
    List<ClearedView> list = new ArrayList<>();
    for (String part : onLoopFirst(new ArrayList<>(findings.cleared().keySet()))) {
      List<Conclusion.ClearedBy> why = findings.cleared().get(part);
      Set<Integer> ids = new java.util.TreeSet<>();
      why.forEach(w -> ids.addAll(w.readings()));
      String text =
          why.isEmpty() ? "" : rules.words(why.get(0).rule(), why.get(0).key(), why.get(0).args());
      list.add(
          new ClearedView(part, words.part(part), new ArrayList<>(ids), clearedWhy(ids, text)));
    }
    return list;
  }

  private String clearedWhy(Set<Integer> ids, String rule) {
    List<String> quotes = new ArrayList<>();
    for (int id : ids) {
      Entry0 e = readings.get(id);
      if (e != null) {
        quotes.add(
            phrases.say(
                "cleared.quote",
                words.value(e.check(), e.value()),
                words.place(e.check()),
                Integer.toString(id)));
      }
    }
    return quotes.isEmpty() ? rule : String.join("; ", quotes);
  }

  private List<ReadingView> readingViews() {
    List<ReadingView> list = new ArrayList<>();
    Set<Integer> passing = diagnosis.passing(current());
    for (Entry0 e : readings.values()) {
      if (e.epoch() != epoch) {
        continue;
      }
      List<String> doubts = new ArrayList<>();
      List<String> senses = senses(e.id());
      for (Conclusion c : findings.conclusions()) {
        if (c instanceof Conclusion.Doubt d && d.reading() == e.id()) {
          doubts.add(rules.words(d.rule(), d.key(), d.args()));
        }
      }
      if (findings.odd().getOrDefault(e.id(), 0.0) > 0.3) {
        doubts.add(phrases.say("doubt.odd", Figures.percent(findings.odd().get(e.id()))));
      }
      List<String> clearedHere = new ArrayList<>();
      findings
          .cleared()
          .forEach(
              (part, why) -> {
                if (why.stream().anyMatch(w -> w.readings().contains(e.id()))) {
                  clearedHere.add(part);
                }
              });
      String did = phrases.say("reading.kept");
      if (passing.contains(e.id())) {
        did = phrases.say("reading.passing");
      } else if (!clearedHere.isEmpty()) {
        did = phrases.say("reading.cleared", words.parts(onLoopFirst(clearedHere), 6));
      } else if (!senses.isEmpty()) {
        did = senses.get(0);
      }
      Optional<Band> healthy = healthy(e.check());
      list.add(
          new ReadingView(
              e.id(),
              OwnCheck.of(e.check()),
              words.setting(e.check().setting()),
              words.where(e.check()),
              shown(e),
              Entry.number(e.value()),
              healthy,
              healthyWords(e.check()),
              diagnosis.healthyGives(new Reading(e.id(), e.check(), e.value())),
              did,
              doubts,
              e.at()));
    }
    return list;
  }

  /** What a healthy circuit's meter shows; empty for what is looked at. */
  private Optional<Band> healthy(Check check) {
    return check.kind().metered() ? Optional.of(healthy(diagnosis, check)) : Optional.empty();
  }

  private static Band healthy(Diagnosis diagnosis, Check check) {
    double[] band = diagnosis.healthyBand(check);
    return new Band(band[0], band[1], Figures.unit(check));
  }

  private String healthyWords(Check check) {
    return healthyWords(diagnosis, words, bench.meter(), check);
  }

  /** What a healthy circuit shows in a check, in words. */
  static String healthyWords(Diagnosis diagnosis, Words words, MeterSpec meter, Check check) {
    if (!check.kind().metered()) {
      return words.seen(check, diagnosis.healthySight(check));
    }
    Band band = healthy(diagnosis, check);
    boolean over =
        check.kind() == CheckKind.DIODE
            && Double.isInfinite(band.high())
            && band.low() > NEARLY_OL * meter.fullScale(MeterFunction.DIODE);
    return over ? "OL" : Figures.range(band.low(), band.high(), band.unit());
  }

  /** Share of what the diode test shows at most, from which a band is OL and nothing else. */
  private static final double NEARLY_OL = 0.95;

  private CheckView view(Check check, List<Findings.Outcome> results, String because, double cost) {
    Optional<Band> healthy = healthy(check);
    String question = "";
    List<Seen> choices = List.of();
    if (!check.kind().metered()) {
      question = words.question(check);
      choices = words.choices(check);
    }
    Setting from = standing();
    int asks = (int) readings.values().stream().filter(e -> e.epoch() == epoch).count() + 1;
    return new CheckView(
        check.id(),
        asks,
        check.kind(),
        new SettingView(check.setting(), change(from, check), whole(check)),
        words.red(check),
        check.black().map(this::point),
        words.meter(check),
        check.subject(),
        question,
        choices,
        choices.stream().map(s -> words.seen(check, s)).toList(),
        healthy,
        healthyWords(check),
        outcomes.views(check, results),
        cost > 0 ? cost : diagnosis.minutes(check, last),
        because,
        cautions(check));
  }

  /** What is to be done for a check: what comes out first, then the setting, then what goes in. */
  private List<String> change(Setting from, Check check) {
    List<String> lines = new ArrayList<>(words.hands().out(last, check));
    lines.addAll(words.change(from, stands(check)));
    lines.addAll(words.hands().in(last, check));
    return lines;
  }

  /** All that stands for a check, whatever was before. */
  private List<String> whole(Check check) {
    List<String> lines = new ArrayList<>(words.setting(check.setting()));
    lines.addAll(words.hands().in(Optional.empty(), check));
    return lines;
  }

  private String because(Findings.Proposal p) {
    if (p.forWhat().isPresent()) {
      return phrases.say("because.dead-first");
    }
    List<CheckView.OutcomeView> views = outcomes.views(p.check(), p.outcomes());
    List<CheckView.OutcomeView> top =
        views.stream().filter(v -> !v.leaves().isEmpty()).limit(2).toList();
    if (top.size() < 2) {
      return phrases.say("because.confirm", Figures.minutes(p.minutes()));
    }
    return phrases.say(
        "because.split",
        top.get(0).words(),
        words.listed(top.get(0).leaves(), 3),
        top.get(1).words(),
        words.listed(top.get(1).leaves(), 3),
        Figures.percent(top.get(0).chance()),
        Figures.percent(top.get(1).chance()));
  }

  private List<String> cautions(Check check) {
    List<String> list = new ArrayList<>();
    for (Conclusion c : findings.conclusions()) {
      if (c instanceof Conclusion.Caution k && k.check().equals(check.id())) {
        list.add(rules.words(k.rule(), k.key(), k.args()));
      }
    }
    return list.stream().distinct().toList();
  }

  private List<String> caseCautions() {
    List<String> list = new ArrayList<>();
    for (Conclusion c : findings.conclusions()) {
      if (c instanceof Conclusion.Caution k && k.check().isEmpty()) {
        list.add(rules.words(k.rule(), k.key(), k.args()));
      }
    }
    return list.stream().distinct().toList();
  }

  /** The cautions that are there for the warnings' sake. */
  private List<String> makeSafe() {
    List<String> all = caseCautions();
    if (warnings.isEmpty()) {
      usualCautions = findings == Findings.NONE ? usualCautions : all;
      return List.of();
    }
    return all.stream().filter(c -> !usualCautions.contains(c)).toList();
  }

  /** What lies apart now, even if the next check wants it so: the case may end before it. */
  private List<String> putBack() {
    List<String> lines = new ArrayList<>();
    last.ifPresent(l -> lines.addAll(words.hands().putBack(l)));
    standing().apart().stream().map(words::putBack).forEach(lines::add);
    return lines;
  }

  private RepairView repair(List<SuspectView> suspects) {
    SuspectView answer = suspects.get(0);
    List<SuspectId> top = new ArrayList<>();
    for (Findings.PartBelief p : findings.parts()) {
      if (findings.group().contains(p.part())) {
        p.modes().stream()
            .filter(m -> m.belief() > 0.1 * p.belief())
            .limit(2)
            .forEach(m -> top.add(m.suspect()));
      }
    }
    List<Conclusion> advice = diagnosis.advice(top, findings, telling());
    Map<Conclusion.Stage, Set<String>> stages = new java.util.EnumMap<>(Conclusion.Stage.class);
    Set<String> cautions = new LinkedHashSet<>();
    for (Conclusion c : advice) {
      if (c instanceof Conclusion.Advice a) {
        stages
            .computeIfAbsent(a.stage(), k -> new LinkedHashSet<>())
            .add(rules.words(a.rule(), a.key(), a.args()));
      } else if (c instanceof Conclusion.Caution k && k.check().isEmpty()) {
        cautions.add(rules.words(k.rule(), k.key(), k.args()));
      }
    }
    List<String> proof = new ArrayList<>();
    for (Entry0 e : readings.values()) {
      if (e.epoch() == epoch
          && !diagnosis.healthyGives(new Reading(e.id(), e.check(), e.value()))) {
        proof.add(
            phrases.say(
                "repair.proof",
                Integer.toString(e.id()),
                words.value(e.check(), e.value()),
                words.place(e.check()),
                healthyWords(e.check())));
      }
    }
    List<String> why = new ArrayList<>(stage(stages, Conclusion.Stage.WHY));
    top.stream().findFirst().map(reasons(Optional.empty())::chain).ifPresent(why::addAll);
    return new RepairView(
        answer,
        proof,
        why,
        stage(stages, Conclusion.Stage.INSPECT),
        stage(stages, Conclusion.Stage.REPAIR),
        stage(stages, Conclusion.Stage.PROOF),
        new ArrayList<>(cautions));
  }

  private static List<String> stage(
      Map<Conclusion.Stage, Set<String>> stages, Conclusion.Stage stage) {
    return new ArrayList<>(stages.getOrDefault(stage, Set.of()));
  }

  private LoopView loopView() {
    return diagnosis
        .loop()
        .map(
            l ->
                new LoopViews(vehicle, bench, diagnosis::healthyBand, words, complaint.on())
                    .view(l, circuit.name(), findings, telling()))
        .orElseGet(
            () -> {
              TerminalRef post = vehicle.feedPost();
              return new LoopView(
                  circuit.name(),
                  List.of(),
                  List.of(
                      new LoopView.Stair(
                          post, List.of(), new Band(0, 0, Band.Unit.VOLT), List.of(), true)),
                  List.of());
            });
  }

  private PointView point(TerminalRef at) {
    return words.point(at);
  }

  // ---- explanations -------------------------------------------------------------------------

  @Override
  public List<String> whyStill(String partOrSuspect) throws Problem {
    return reasons().why(suspected(partOrSuspect));
  }

  @Override
  public List<Against> against(String partOrSuspect) throws Problem {
    return reasons().against(suspected(partOrSuspect));
  }

  /** The part or suspect meant. */
  private Reasons.About suspected(String partOrSuspect) throws Problem {
    Reasons.About about = Reasons.About.of(partOrSuspect);
    requirePart(about.part());
    if (about.mode().isPresent() && !titles.containsKey(about.suspect().orElseThrow())) {
      throw new Problem(
          "part",
          partOrSuspect,
          titles.keySet().stream()
              .filter(s -> s.part().equals(about.part()))
              .map(SuspectId::toString)
              .collect(Collectors.joining(", ", phrases.say("problem.suspect") + " ", "")));
    }
    return about;
  }

  private Reasons reasons() {
    return reasons(view.next().map(this::check).filter(c -> c.kind().metered()));
  }

  private Reasons reasons(Optional<Check> next) {
    return new Reasons(
        diagnosis, findings, telling(), rules, words, phrases, this::healthyWords, next);
  }

  @Override
  public List<String> whyNext() {
    List<String> text = new ArrayList<>();
    if (!ownRecord.isEmpty()) {
      text.add(ownRecord);
    }
    view.next()
        .ifPresent(
            n -> {
              text.add(String.join(" ", reasons(n)));
              for (CheckView.OutcomeView o : n.outcomes()) {
                text.add(
                    phrases.say(
                        "why.outcome",
                        o.words(),
                        Figures.percent(o.chance()),
                        o.leaves().isEmpty()
                            ? phrases.say("why.nothing-listed")
                            : words.listed(o.leaves(), 5)));
              }
            });
    return text;
  }

  /** Why a check is next, and what the trade says for asking it early. */
  private List<String> reasons(CheckView check) {
    List<String> reasons = new ArrayList<>(List.of(check.because()));
    for (Conclusion c : findings.conclusions()) {
      if (c instanceof Conclusion.PreferredBy p && p.check().equals(check.id()) && p.weight() > 1) {
        reasons.add(rules.words(p.rule(), p.key(), p.args()));
      }
    }
    return reasons.stream().distinct().toList();
  }

  @Override
  public Outlook outlook(Optional<String> checkId) throws Problem {
    return outlooks().of(checkId, view.next());
  }

  @Override
  public Outlook.Then then(String checkId, int result) throws Problem {
    return outlooks().then(checkId, result);
  }

  @Override
  public Appraisal appraise(OwnCheck own, Optional<OwnCheck> before) throws Problem {
    validate(own);
    Check check = own.check();
    Findings.Proposal p = appraised(check, before.map(OwnCheck::check));
    return new Appraisal(
        words.asked(check),
        p.bits(),
        p.worthAsking(),
        p.minutes(),
        outcomes.views(check, p.outcomes()));
  }

  /** What a check is expected to tell, given the one before it. */
  private Findings.Proposal appraised(Check check, Optional<Check> before) {
    return diagnosis.appraise(check, telling(), circumstances(before));
  }

  @Override
  public Map<String, Double> shows(OwnCheck own) throws Problem {
    validate(own);
    return diagnosis.shows(own.check(), telling(), circumstances(last));
  }

  private Outlooks outlooks() {
    return new Outlooks(
        diagnosis,
        findings,
        telling(),
        check -> circumstances(Optional.of(check)),
        standing(),
        words,
        phrases,
        outcomes);
  }

  @Override
  public List<PointView> points() {
    Set<TerminalRef> all = new LinkedHashSet<>();
    all.add(vehicle.groundedPost());
    all.add(vehicle.feedPost());
    diagnosis
        .loop()
        .ifPresent(
            l ->
                l.all()
                    .forEach(
                        x -> x.nodes().forEach(n -> all.addAll(bench.network().terminals(n)))));
    all.addAll(vehicle.terminals());
    return all.stream().map(this::point).toList();
  }

  @Override
  public List<PartView> parts() {
    return onLoopFirst(vehicle.parts().stream().map(Part::id).toList()).stream()
        .map(vehicle::requirePart)
        .flatMap(words::subjects)
        .toList();
  }

  @Override
  public String title(SuspectId suspect) {
    String mode = titles.getOrDefault(suspect, suspect.mode());
    return vehicle.part(suspect.part()).map(p -> p.title() + ": " + mode).orElse(mode);
  }

  @Override
  public List<SettingView> settings() {
    Set<Setting> all = new LinkedHashSet<>();
    all.add(complaint.on());
    all.add(Setting.REST);
    diagnosis.candidates().forEach(c -> all.add(c.setting()));
    return all.stream()
        .limit(20)
        .map(s -> new SettingView(s, words.change(standing(), s), words.setting(s)))
        .toList();
  }

  @Override
  public void close() {
    if (fresh) {
      tell();
    }
    diagnosis.close();
    if (journal != null) {
      journal.close();
      journal = null;
    }
  }

  /** Ids of checks that were proposed so far, for tests. */
  Set<String> asked() {
    return Collections.unmodifiableSet(asked.keySet());
  }
}
