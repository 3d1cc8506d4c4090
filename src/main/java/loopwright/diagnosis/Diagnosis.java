package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Context;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.History;
import loopwright.solver.Variant;

/**
 * The diagnosis of one complaint. What is suspected follows from the readings alone: the same
 * readings in any order give the same findings, and a reading taken back leaves no trace.
 *
 * <p>The solver says what each suspect would show; the rules clear, condemn and admit; belief ranks
 * what is held; the planner ranks what is admitted. One thread at a time.
 */
public final class Diagnosis implements AutoCloseable {

  /** Belief at which one part or group counts as the answer. */
  public static final double SURE = 0.99;

  /** Share of complaints in which nothing has failed. Common practice. */
  private static final double MISTAKEN = 0.02;

  /** Share of complaints whose failure no table lists. Common practice. */
  private static final double UNLISTED = 0.01;

  private final Workbench bench;
  private final Vehicle vehicle;
  private final Complaint complaint;
  private final Context context;
  private final Predictor predictor;
  private final Likelihood likelihood;
  private final Clearing clearing;
  private final Ranking ranking;
  private final Finer finer;
  private final Pairs pairs;
  private final Ahead ahead;
  private final HealthyBands bands;
  private final Explainer explainer;
  private final Consequences consequences;
  private final FuseCurrent fuseCurrent;
  private final CheckSource source;
  private final Optional<Loop> loop;
  private final RuleBook.Session session;
  private final List<Hypothesis> inPlay;
  private final Map<Hypothesis, Double> prior;
  private final Set<String> outOfPlay;
  private final Set<String> partsInPlay;
  private final List<Check> candidates;
  private final CaseFacts told;
  private final List<Fact> standing = new ArrayList<>();

  private Diagnosis(
      Workbench bench, RuleBook rules, Complaint complaint, Context context, Step step) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.complaint = complaint;
    this.context = context;
    this.predictor = new Predictor(bench, Optional.of(complaint.load()));
    Likelihood throughout =
        new Likelihood(
            predictor, bench.meter(), vehicle.systemVolts(), bench.knowledge().testSlip());
    this.likelihood =
        complaint.kind() == ComplaintKind.WORKS_SOMETIMES
            ? throughout.comingAndGoing(bench.healthy())
            : throughout;
    this.clearing = new Clearing(predictor, bench.meter());
    this.bands = new HealthyBands(bench, predictor);
    this.fuseCurrent = new FuseCurrent(bench);
    this.loop = Loop.trace(bench, complaint.on(), bench.loadElement(complaint.load()));
    this.source = new CheckSource(bench, complaint, loop);
    this.told = new CaseFacts(bench, predictor, complaint, context, this::explained);
    this.ranking =
        new Ranking(new Planner(predictor, bench.meter()), likelihood, source, told, vehicle);
    Causes complained = new Causes(bench, predictor, complaint, loop);
    this.finer = new Finer(bench, likelihood, complained::chance);
    this.pairs = new Pairs(bench, likelihood, complained::chance, context);
    List<Hypothesis> kept = new ArrayList<>();
    Map<Hypothesis, Double> weights = new IdentityHashMap<>();
    Set<String> out = new TreeSet<>();
    Set<String> in = new LinkedHashSet<>();
    List<Part> parts = vehicle.parts();
    for (int from = 0; from < parts.size(); from += AT_A_TIME) {
      List<Part> some = parts.subList(from, Math.min(parts.size(), from + AT_A_TIME));
      List<List<Causes.Causing>> causing =
          some.parallelStream().map(part -> complained.causing(part, context)).toList();
      for (int i = 0; i < some.size(); i++) {
        (causing.get(i).isEmpty() ? out : in).add(some.get(i).id());
        for (Causes.Causing c : causing.get(i)) {
          kept.add(c.hypothesis());
          weights.put(c.hypothesis(), c.hypothesis().prior() * c.chance());
        }
      }
      keepOnly(kept);
      if (!step.done(0.8 * (from + some.size()) / parts.size())) {
        throw new CancellationException("opening the case was given up");
      }
    }
    double listed = weights.values().stream().mapToDouble(Double::doubleValue).sum();
    kept.add(bench.healthy());
    weights.put(bench.healthy(), MISTAKEN * listed);
    Hypothesis unlisted =
        new Hypothesis(
            SuspectId.UNLISTED,
            List.of(),
            List.of(),
            Optional.empty(),
            Variant.healthy(bench.network()),
            History.NONE,
            UNLISTED * listed);
    kept.add(unlisted);
    weights.put(unlisted, UNLISTED * listed);
    this.inPlay = List.copyOf(kept);
    this.ahead = new Ahead(predictor, finer, inPlay);
    this.prior = weights;
    this.explainer = new Explainer(bench, clearing, bands, likelihood, inPlay, prior);
    this.consequences = new Consequences(bench, complaint);
    this.outOfPlay = out;
    this.partsInPlay = in;
    this.candidates = source.candidates(new Prospects(bench, kept, weights));
    this.session = rules.open();
    standing.add(told.caseFact(""));
    Set<String> pieces = new LinkedHashSet<>(in);
    for (Check check : candidates) {
      check.red().ifPresent(t -> pieces.add(t.part()));
      check.black().ifPresent(t -> pieces.add(t.part()));
      check.subject().map(s -> loopwright.model.LoadRef.parse(s).part()).ifPresent(pieces::add);
      check.handled().ifPresent(pieces::add);
    }
    for (String id : pieces) {
      standing.add(told.piece(vehicle.requirePart(id)));
    }
    warm(step);
  }

  /**
   * Opens a diagnosis.
   *
   * @param step told how far it is; may give up
   * @throws CancellationException if step gave up
   */
  public static Diagnosis open(
      Workbench bench, RuleBook rules, Complaint complaint, Context context, Step step) {
    return new Diagnosis(bench, rules, complaint, context, step);
  }

  /** Solves the setting that nearly every check is taken in. */
  private void warm(Step step) {
    boolean done =
        ahead.each(h -> bench.points(h, complaint.on()), share -> step.done(0.8 + 0.2 * share));
    if (!done) {
      session.close();
      throw new CancellationException("opening the case was given up");
    }
  }

  /** Parts whose failures are looked at between two reports of how far opening is. */
  private static final int AT_A_TIME = 16;

  /** The loop of the load complained of; empty if no current flows there even in health. */
  public Optional<Loop> loop() {
    return loop;
  }

  /** The complaint. */
  public Complaint complaint() {
    return complaint;
  }

  /** Number of suspects in play. */
  public int suspects() {
    return (int) inPlay.stream().map(Hypothesis::suspect).distinct().count();
  }

  /** Ids of the parts in play. */
  public Set<String> partsInPlay() {
    return Collections.unmodifiableSet(partsInPlay);
  }

  /** Every check that could be made of this complaint, before the rules have their say. */
  public List<Check> candidates() {
    return Collections.unmodifiableList(candidates);
  }

  // ---- findings -----------------------------------------------------------------------------

  /**
   * What is known besides readings.
   *
   * @param unreachable points that can't be reached in this case
   * @param refused ids of checks that were refused
   * @param factors factor on the prior of a part, for instance after it was replaced
   * @param last the check done last, for lead positions and set-up
   * @param warnings smoke, heat or fuel reported and not yet gone
   */
  public record Circumstances(
      Set<TerminalRef> unreachable,
      Set<String> refused,
      Map<String, Double> factors,
      Optional<Check> last,
      Set<Warning> warnings) {
    /** Nothing besides. */
    public static final Circumstances NONE =
        new Circumstances(Set.of(), Set.of(), Map.of(), Optional.empty());

    /** Copies the collections. */
    public Circumstances {
      unreachable = Set.copyOf(unreachable);
      refused = Set.copyOf(refused);
      factors = Map.copyOf(factors);
      warnings = Set.copyOf(warnings);
    }

    /** Circumstances without a warning. */
    public Circumstances(
        Set<TerminalRef> unreachable,
        Set<String> refused,
        Map<String, Double> factors,
        Optional<Check> last) {
      this(unreachable, refused, factors, last, Set.of());
    }
  }

  /** Works out where the search stands with these readings. */
  public Findings findings(List<Reading> readings, Circumstances circumstances) {
    List<Fact> facts = new ArrayList<>(standing);
    boolean warned = !circumstances.warnings().isEmpty();
    if (warned) {
      facts.remove(told.caseFact(""));
      circumstances.warnings().forEach(w -> facts.add(told.caseFact(w.word())));
    }
    facts.addAll(told.readingFacts(readings));
    List<Fact.Margin> margins = clearing.margins(inPlay, readings, shownGood(readings));
    facts.addAll(margins);
    Map<String, Check> byId = new LinkedHashMap<>();
    for (Check check : candidates) {
      byId.put(check.id(), check);
      boolean proven = provenDead(check, readings);
      facts.add(told.idea(check, circumstances.unreachable(), proven, warned));
      if (check.kind().drives() && !proven) {
        Fact.CheckIdea i = told.idea(check, circumstances.unreachable(), true, warned);
        facts.add(i.named(i.id() + CaseFacts.SUPPOSED));
      }
    }
    Weighed weighed = weighed(readings, circumstances);
    Map<Hypothesis, Likelihood.Result> evidence = weighed.evidence();
    List<Pairs.Solved> together = weighed.together();
    Belief before = weighed.belief();
    facts.addAll(suspectedFacts(before));
    facts.addAll(conflictFacts(before, readings));
    session.state(facts);
    List<Conclusion> conclusions = session.conclusions();
    Set<SuspectId> clearedSuspects = accepted(conclusions, margins);
    // A clearing that only one reading speaks for may hang on a slip: it is suspended where the
    // likelihood, which knows of slips, keeps the suspect in view.
    Set<SuspectId> firmly = new TreeSet<>(clearedSuspects);
    firmly.retainAll(clearing.outTwice(inPlay, readings));
    clearedSuspects.removeAll(
        doubted(weigh(readings, evidence, circumstances, firmly, List.of()), clearedSuspects));
    Belief belief = weigh(readings, evidence, circumstances, clearedSuspects, together);
    boolean contradiction = belief.of().isEmpty();
    if (contradiction) {
      belief = before;
    }
    return assemble(
        readings,
        circumstances,
        conclusions,
        clearedSuspects,
        byId,
        evidence,
        belief,
        contradiction);
  }

  /** Belief before anything is cleared, with what it rests on. */
  private record Weighed(
      Map<Hypothesis, Likelihood.Result> evidence, List<Pairs.Solved> together, Belief belief) {}

  private Weighed weighed(List<Reading> readings, Circumstances circumstances) {
    Map<Hypothesis, Likelihood.Result> evidence = likelihood.of(inPlay, readings);
    Belief before = weigh(readings, evidence, circumstances, Set.of(), List.of());
    if (readings.stream().anyMatch(r -> r.value() instanceof Reading.Value.Number)) {
      evidence.putAll(Likelihood.each(Finer.worthIt(before.of()), h -> finer.of(h, readings)));
      before = weigh(readings, evidence, circumstances, Set.of(), List.of());
    }
    List<Pairs.Solved> together = List.of();
    if (pairs.wanted(before, readings)) {
      together = pairs.of(inPlay, readings);
      forgetPairsBut(together);
      evidence.putAll(
          likelihood.of(together.stream().map(Pairs.Solved::hypothesis).toList(), readings));
      before = weigh(readings, evidence, circumstances, Set.of(), together);
    }
    return new Weighed(evidence, together, before);
  }

  /**
   * What a check of anybody's choice is expected to tell, whether or not the rules would admit it.
   *
   * @param readings what has been read so far
   * @param circumstances what is known besides; its last check says where leads and set-up are
   */
  public Findings.Proposal appraise(
      Check check, List<Reading> readings, Circumstances circumstances) {
    Weighed weighed = weighed(readings, circumstances);
    return ranking.appraise(
        check, weighed.belief().of(), weighed.evidence(), circumstances, readings);
  }

  /**
   * How far a check would show something else than in health for each part that may still have
   * failed, if it were that: 0 for the same, 1 for nothing in common. Parts that are as good as
   * ruled out are left out.
   *
   * @param readings what has been read so far
   * @param circumstances what is known besides
   */
  public Map<String, Double> shows(
      Check check, List<Reading> readings, Circumstances circumstances) {
    return ranking.shows(
        check, weighed(readings, circumstances).belief().of(), bench.healthy(), readings);
  }

  /** A long case would fill the memory with pairs that are no longer weighed. */
  private void forgetPairsBut(List<Pairs.Solved> together) {
    if (pairs.many()) {
      Set<Hypothesis> both = Pairs.hypotheses(together);
      pairs.forget(both);
      both.addAll(inPlay);
      keepOnly(both);
    }
  }

  /** Forgets what was worked out for all other hypotheses but health. */
  private void keepOnly(Collection<Hypothesis> hypotheses) {
    Set<Hypothesis> keep = Collections.newSetFromMap(new IdentityHashMap<>());
    keep.addAll(hypotheses);
    keep.add(bench.healthy());
    bench.keepOnly(keep);
    predictor.keepOnly(keep);
  }

  private List<Fact> suspectedFacts(Belief belief) {
    Map<SuspectId, Double> sums = new TreeMap<>();
    belief.of().keySet().stream()
        .sorted(Hypothesis.ORDER)
        .forEach(
            h ->
                h.singles().stream()
                    .filter(one -> !one.parts().isEmpty())
                    .forEach(one -> sums.merge(one.suspect(), belief.of(h), Double::sum)));
    List<Fact> facts = new ArrayList<>();
    sums.forEach(
        (id, b) ->
            facts.add(
                new Fact.Suspected(
                    id,
                    vehicle.requirePart(id.part()).kind(),
                    Math.round(b * 100) / 100.0,
                    b > SURE)));
    return facts;
  }

  private static List<Fact> conflictFacts(Belief belief, List<Reading> readings) {
    if (belief.unlisted() <= 0.5 || readings.size() < 2) {
      return List.of();
    }
    Set<Integer> odd = new TreeSet<>();
    belief
        .odd()
        .forEach(
            (id, chance) -> {
              if (chance > 0.2) {
                odd.add(id);
              }
            });
    if (odd.isEmpty()) {
      readings.forEach(r -> odd.add(r.id()));
    }
    return List.of(new Fact.Conflict(odd));
  }

  /** Two keys: the rules clear, and only what the solver finds out of band. */
  private Set<SuspectId> accepted(List<Conclusion> conclusions, List<Fact.Margin> margins) {
    Map<SuspectId, Set<Integer>> out = new HashMap<>();
    for (Fact.Margin m : margins) {
      if (m.standing() == Fact.Standing.OUT) {
        out.put(m.suspect(), m.readings());
      }
    }
    Set<SuspectId> cleared = new TreeSet<>();
    for (Conclusion c : conclusions) {
      if (c instanceof Conclusion.ClearedBy by
          && out.containsKey(by.suspect())
          && by.readings().equals(out.get(by.suspect()))) {
        cleared.add(by.suspect());
      }
    }
    return cleared;
  }

  /** Belief at which a clearing that hangs on one reading is suspended. */
  private static final double DOUBTED = 0.004;

  /** Cleared suspects that a slip would explain better than all others explain the readings. */
  private static Set<SuspectId> doubted(Belief belief, Set<SuspectId> cleared) {
    Map<SuspectId, Double> sums = new LinkedHashMap<>();
    belief
        .of()
        .forEach(
            (h, chance) -> {
              if (cleared.contains(h.suspect())) {
                sums.merge(h.suspect(), chance, Double::sum);
              }
            });
    sums.values().removeIf(sum -> sum < DOUBTED);
    return sums.keySet();
  }

  /** Belief in what is held: all that is in play but the cleared, and pairs. */
  private Belief weigh(
      List<Reading> readings,
      Map<Hypothesis, Likelihood.Result> evidence,
      Circumstances circumstances,
      Set<SuspectId> cleared,
      List<Pairs.Solved> together) {
    Map<Hypothesis, Double> weights = new IdentityHashMap<>(prior);
    List<Hypothesis> held = new ArrayList<>(inPlay);
    held.removeIf(h -> cleared.contains(h.suspect()));
    for (Pairs.Solved pair : together) {
      held.add(pair.hypothesis());
      weights.put(pair.hypothesis(), pair.weight());
    }
    return Belief.weigh(
        held,
        h ->
            h.parts().stream()
                .mapToDouble(part -> circumstances.factors().getOrDefault(part, 1.0))
                .reduce(weights.get(h), (x, y) -> x * y),
        evidence,
        readings);
  }

  private Findings assemble(
      List<Reading> readings,
      Circumstances circumstances,
      List<Conclusion> conclusions,
      Set<SuspectId> cleared,
      Map<String, Check> byId,
      Map<Hypothesis, Likelihood.Result> evidence,
      Belief weighed,
      boolean contradiction) {
    Map<Integer, Double> odd = weighed.odd();
    PartShares shares = new PartShares(weighed, cleared, h -> held(h, readings));
    List<Findings.PartBelief> parts = shares.parts();
    double unlisted = weighed.unlisted();
    double healthy = weighed.healthy();
    List<Findings.Proposal> ranked =
        ranking.rank(weighed.of(), evidence, conclusions, byId, circumstances, readings);
    List<Integer> atOdds = new ArrayList<>();
    Findings.Status status = Findings.Status.SEARCHING;
    List<String> group = List.of();
    if (contradiction || unlisted > 0.5) {
      status = Findings.Status.CONTRADICTION;
      odd.entrySet().stream()
          .filter(e -> e.getValue() > 0.2)
          .sorted(Map.Entry.<Integer, Double>comparingByValue().reversed())
          .limit(2)
          .forEach(e -> atOdds.add(e.getKey()));
      if (atOdds.isEmpty()) {
        readings.forEach(r -> atOdds.add(r.id()));
      }
    } else if (healthy > HEALTHY && seenToWork(readings)) {
      status = Findings.Status.HEALTHY;
    } else if (!parts.isEmpty() && !healthRefuted(readings)) {
      if (parts.get(0).belief() >= SURE) {
        confirm(ranked, byId, readings, circumstances);
      }
    } else if (!parts.isEmpty()) {
      if (shares.bothSure()) {
        group = shares.together().get(0).parts();
        status = Findings.Status.ISOLATED;
      } else if (parts.get(0).belief() >= SURE) {
        group = withCauses(parts.get(0).part(), parts);
        status = Findings.Status.ISOLATED;
      } else {
        boolean asks = ranked.stream().anyMatch(p -> p.bits() >= Ranking.WORTH_ASKING);
        group = asks ? List.of() : shares.inseparable();
        status = group.isEmpty() ? status : Findings.Status.ISOLATED;
      }
    }
    Map<String, List<Conclusion.ClearedBy>> clearedParts =
        clearedParts(conclusions, shares.cleared());
    return new Findings(
        status,
        parts,
        shares.together(),
        group,
        shares.holds(group),
        unlisted,
        healthy,
        clearedParts,
        outOfPlay,
        conclusions,
        ranked,
        odd,
        atOdds);
  }

  /**
   * A part that holds the belief while every reading is one that health gives too is no answer yet:
   * all the volts are right and the load is said not to work. Asks to see that first.
   */
  private void confirm(
      List<Findings.Proposal> ranked,
      Map<String, Check> byId,
      List<Reading> readings,
      Circumstances circumstances) {
    Check look = Check.look(complaint.load().toString(), bench.shows(complaint));
    boolean done = readings.stream().anyMatch(r -> r.check().equals(look));
    if (done
        || !circumstances.warnings().isEmpty()
        || circumstances.refused().contains(look.id())
        || !byId.containsKey(look.id())) {
      return;
    }
    Optional<Findings.Proposal> found =
        ranked.stream().filter(p -> p.check().equals(look)).findFirst();
    found.ifPresent(ranked::remove);
    ranked.add(
        0,
        new Findings.Proposal(
            look,
            Math.max(Ranking.WORTH_ASKING, found.map(Findings.Proposal::bits).orElse(0.0)),
            source.minutes(look, circumstances.last()),
            1,
            found.map(Findings.Proposal::outcomes).orElse(List.of()),
            Optional.empty()));
  }

  /** Belief in health at which a function that was seen to work ends the search. */
  private static final double HEALTHY = 0.9;

  /** Whether the complaint's own function was seen as it should be: lit, or off if it stuck on. */
  private boolean seenToWork(List<Reading> readings) {
    boolean stuck = complaint.kind() == ComplaintKind.STUCK_ON;
    Check look =
        Check.look(complaint.load().toString(), stuck ? bench.shows(complaint) : complaint.on());
    return readings.stream()
        .anyMatch(
            r ->
                r.check().equals(look)
                    && r.value() instanceof Reading.Value.Sight s
                    && s.seen() == (stuck ? Seen.OFF : Seen.ON));
  }

  /** Whether some reading is one that a healthy circuit does not give. */
  private boolean healthRefuted(List<Reading> readings) {
    return !readings.stream().allMatch(this::healthyGives);
  }

  /** Belief down to which what may have blown a fuse is named beside it. */
  private static final double POSSIBLE_CAUSE = 1e-4;

  /**
   * The part, and for a fuse all that is still held and would have blown it: a blown fuse is a
   * victim until what is behind it is ruled out.
   */
  private List<String> withCauses(String part, List<Findings.PartBelief> parts) {
    List<String> group = new ArrayList<>(List.of(part));
    Optional<Integer> link = bench.network().element(part, "link");
    if (link.isEmpty()) {
      return group;
    }
    Set<SuspectId> blowers = blowers(part, link.get());
    for (Findings.PartBelief p : parts) {
      double belief =
          p.modes().stream()
              .filter(m -> blowers.contains(m.suspect()))
              .mapToDouble(Findings.ModeBelief::belief)
              .sum();
      if (!p.part().equals(part) && belief >= POSSIBLE_CAUSE) {
        group.add(p.part());
      }
    }
    return group;
  }

  /** Suspects of other parts that blow this link. */
  private Set<SuspectId> blowers(String fuse, int link) {
    Set<SuspectId> blowers = new TreeSet<>();
    for (Hypothesis h : inPlay) {
      if (h.history().blown().get(link) && !h.part().equals(fuse)) {
        blowers.add(h.suspect());
      }
    }
    return blowers;
  }

  private boolean held(Hypothesis h, List<Reading> readings) {
    return readings.stream().noneMatch(r -> clearing.standing(h, r) == Fact.Standing.OUT);
  }

  private Map<String, List<Conclusion.ClearedBy>> clearedParts(
      List<Conclusion> conclusions, Set<SuspectId> cleared) {
    Map<String, Set<SuspectId>> all = new LinkedHashMap<>();
    for (Hypothesis h : inPlay) {
      if (!h.parts().isEmpty()) {
        all.computeIfAbsent(h.part(), k -> new TreeSet<>()).add(h.suspect());
      }
    }
    Map<String, List<Conclusion.ClearedBy>> parts = new LinkedHashMap<>();
    all.forEach(
        (part, suspects) -> {
          if (cleared.containsAll(suspects)) {
            List<Conclusion.ClearedBy> why = new ArrayList<>();
            for (Conclusion c : conclusions) {
              if (c instanceof Conclusion.ClearedBy by && suspects.contains(by.suspect())) {
                why.add(by);
              }
            }
            parts.put(part, why);
          }
        });
    return parts;
  }

  /** Share of the system's volts across a load from which it surely carries current. */
  private static final double LOADED = 0.2;

  /**
   * Whether current is known to flow through the load complained of in a setting: it was seen to do
   * something, or has volts across it. No volts across a switch show nothing where none flows.
   */
  private boolean currentProven(List<Reading> readings, Setting setting) {
    String load = complaint.load().part();
    for (Reading r : readings) {
      Check check = r.check();
      if (!check.setting().equals(setting)) {
        continue;
      }
      boolean works =
          check.subject().filter(complaint.load().toString()::equals).isPresent()
              && r.value() instanceof Reading.Value.Sight s
              && (s.seen() == Seen.ON || s.seen() == Seen.DIM);
      boolean volts =
          check.red().filter(t -> t.part().equals(load)).isPresent()
              && check.black().filter(t -> t.part().equals(load)).isPresent()
              && r.value() instanceof Reading.Value.Number n
              && Math.abs(n.value()) > LOADED * vehicle.systemVolts();
      if (works || volts) {
        return true;
      }
    }
    return false;
  }

  /** Suspects of parts across which a small drop was read while they carried current. */
  private Set<SuspectId> shownGood(List<Reading> readings) {
    Set<SuspectId> good = new TreeSet<>();
    for (Reading r : readings) {
      if (!currentProven(readings, r.check().setting())) {
        continue;
      }
      Optional<String> part = r.check().acrossPart().filter(p -> !p.equals(vehicle.battery().id()));
      if (part.isPresent()
          && told.powered(r.check().setting())
          && told.loadOn(r.check().setting())) {
        inPlay.stream()
            .filter(h -> h.part().equals(part.get()))
            .filter(h -> clearing.standing(h, r) == Fact.Standing.OUT)
            .forEach(h -> good.add(h.suspect()));
      }
    }
    return good;
  }

  /** Volts between two dead points that still count as none. */
  private static final double NO_VOLTS = 0.05;

  /**
   * Whether no volts stand between a check's points: none were read there in the same setting, or
   * the part is in the hand and has nothing left that could drive it.
   */
  public boolean provenDead(Check check, List<Reading> readings) {
    return check.inHand(vehicle)
        || readings.stream()
            .anyMatch(
                r ->
                    r.check().readsWhere(check)
                        && r.value() instanceof Reading.Value.Number n
                        && Math.abs(n.value()) < NO_VOLTS);
  }

  // ---- planning -------------------------------------------------------------------------------

  /** Least and greatest amperes that a drop across a fuse speaks of; empty for other readings. */
  public Optional<double[]> fuseAmps(Reading reading) {
    return fuseCurrent.amps(reading);
  }

  /** Id of the part that is fitted in another's place for a swap; empty: a spare. */
  public Optional<String> twin(String part) {
    return source.twin(part);
  }

  /** Working time of a check in minutes, given the one before it. */
  public double minutes(Check check, Optional<Check> before) {
    return source.minutes(check, before);
  }

  /**
   * Works out beforehand what a reading of a check will be held against, and remembers it.
   *
   * @param readings what has been read so far, which says what will matter
   * @param goOn asked now and then; false ends it early
   */
  public void prepare(
      Check check, List<Reading> readings, Circumstances circumstances, BooleanSupplier goOn) {
    Belief now =
        weigh(readings, likelihood.of(inPlay, readings), circumstances, Set.of(), List.of());
    ahead.prepare(check, now.of(), candidates, goOn);
  }

  /**
   * The order of checks for all that is in play, before any reading.
   *
   * @param most checks it has at most
   */
  public OrderOfChecks orderOfChecks(int most) {
    double total = prior.values().stream().mapToDouble(Double::doubleValue).sum();
    List<Planner.Weighted> held =
        inPlay.stream()
            .filter(h -> !h.unlisted())
            .map(h -> new Planner.Weighted(h, prior.get(h) / total))
            .toList();
    Sorting sorting = new Sorting(predictor, bench.meter(), clearing, bands);
    return new OrderOfChecks.Growth(sorting, this::findings).grow(held, most);
  }

  /** Whether health or any suspect at all can give this reading. */
  public boolean explained(Reading reading) {
    return inPlay.stream()
        .filter(h -> !h.unlisted())
        .anyMatch(h -> clearing.standing(h, reading) != Fact.Standing.OUT);
  }

  /**
   * Numbers of the readings that tell nothing: a contact that comes and goes only passed through
   * them. None unless the complaint is that it works sometimes.
   */
  public Set<Integer> passing(List<Reading> readings) {
    return complaint.kind() == ComplaintKind.WORKS_SOMETIMES
        ? new Passing(bands, bench.meter()).of(readings)
        : Set.of();
  }

  /** Whether a healthy circuit can give this reading. */
  public boolean healthyGives(Reading reading) {
    if (reading.value() instanceof Reading.Value.Sight s) {
      return predictor.exact(bench.healthy(), reading.check()) instanceof Prediction.Sight p
          && p.chance(s.seen()) >= 0.05;
    }
    return !clearing.odd(bench.healthy(), reading);
  }

  /** The band a healthy circuit shows, the meter's error included. */
  public double[] healthyBand(Check check) {
    return bands.band(check);
  }

  /** What a healthy circuit looks like. */
  public Seen healthySight(Check check) {
    Prediction.Sight s = (Prediction.Sight) predictor.exact(bench.healthy(), check);
    return s.chances().entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  /**
   * The band that a suspect would show, its failure's own range included; empty if there is no such
   * suspect in play.
   */
  public Optional<double[]> suspectBand(SuspectId suspect, Check check) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Hypothesis h : inPlay) {
      if (h.suspect().equals(suspect)) {
        double[] band = bands.band(h, check);
        low = Math.min(low, band[0]);
        high = Math.max(high, band[1]);
      }
    }
    return low <= high ? Optional.of(new double[] {low, high}) : Optional.empty();
  }

  /** The numbers behind what is held and what is cleared. */
  public Explainer explainer() {
    return explainer;
  }

  /**
   * What a suspect brings about elsewhere, at what the readings make likeliest of its range; empty
   * if it isn't in play.
   */
  public List<Consequences.Link> consequences(SuspectId suspect, List<Reading> readings) {
    return inPlay.stream()
        .filter(h -> h.suspect().equals(suspect))
        .max(
            Comparator.comparingDouble(
                h -> Math.log(prior.get(h)) + likelihood.of(h, readings).log()))
        .map(consequences::of)
        .orElse(List.of());
  }

  /**
   * Checks in which a part's failures show that do nothing where they are complained of: looks at
   * what works in the settings in which they spend a fuse.
   */
  public List<Check> elsewhere(String part) {
    return inPlay.stream()
        .filter(h -> h.parts().contains(part))
        .flatMap(h -> h.spentIn().stream())
        .distinct()
        .flatMap(setting -> bench.circuitOn(setting).stream())
        .map(c -> Check.look(c.loads().get(0).toString(), c.onSetting()))
        .toList();
  }

  /** Concludes what to do about the answer: states it to the rules and returns what they advise. */
  public List<Conclusion> advice(
      List<SuspectId> suspects, Findings findings, List<Reading> readings) {
    List<Fact> facts = new ArrayList<>(standing);
    facts.addAll(told.readingFacts(readings));
    for (SuspectId s : suspects) {
      Part part = vehicle.requirePart(s.part());
      facts.add(new Fact.Isolated(s, part.kind()));
      inPlay.stream()
          .filter(h -> h.suspect().equals(s))
          .findFirst()
          .ifPresent(h -> facts.addAll(blownFuses(h, findings)));
    }
    session.state(facts);
    return session.conclusions();
  }

  private List<Fact> blownFuses(Hypothesis h, Findings findings) {
    List<Fact> facts = new ArrayList<>();
    for (int e = 0; e < bench.network().elements().size(); e++) {
      if (h.history().blown().get(e)) {
        facts.add(new Fact.BlownFuse(bench.network().elements().get(e).part(), false));
      }
    }
    if (vehicle.requirePart(h.part()).spec() instanceof PartSpec.Fuse) {
      facts.add(new Fact.BlownFuse(h.part(), shortExcluded(h.part(), findings)));
    }
    return facts;
  }

  /** Belief in shorts behind a fuse up to which they count as excluded. */
  private static final double EXCLUDED = 0.005;

  /** Whether no failure that would have blown the fuse is held any more to speak of. */
  private boolean shortExcluded(String fuse, Findings findings) {
    int link = bench.network().element(fuse, "link").orElseThrow();
    Set<SuspectId> blowers = blowers(fuse, link);
    double left = 0;
    for (Findings.PartBelief p : findings.parts()) {
      for (Findings.ModeBelief m : p.modes()) {
        left += blowers.contains(m.suspect()) ? m.belief() : 0;
      }
    }
    return left < EXCLUDED;
  }

  /** All suspects in play with their titles. */
  public Map<SuspectId, String> titles() {
    Map<SuspectId, String> titles = new LinkedHashMap<>();
    for (Hypothesis h : inPlay) {
      if (!h.failures().isEmpty()) {
        titles.put(h.suspect(), h.failures().get(0).mode().title());
      }
    }
    return titles;
  }

  @Override
  public void close() {
    session.close();
  }
}
