package loopwright.casework.ground;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import loopwright.casework.Answer;
import loopwright.casework.Entry;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.prove.Prints;
import loopwright.casework.prove.ProofEvent;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.ground.DropProof;
import loopwright.ground.DropProofs;
import loopwright.ground.Ground;
import loopwright.ground.Grounds;
import loopwright.ground.Judgement;
import loopwright.ground.TwoWireOhms;
import loopwright.ground.Walk;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Vehicle;

/**
 * The grounds of one vehicle with one meter in hand: which there are, how each is proven, and what
 * the readings said. Used by one thread at a time.
 */
public final class GroundCheck {
  private final Vehicle vehicle;
  private final DropProofs proofs;
  private final Kept kept;
  private final Phrases phrases;
  private final GroundWords words;
  private final Cautions cautions;
  private final Map<String, Walk.Stop> stops = new LinkedHashMap<>();
  private final Map<String, Optional<DropProof>> chosen = new HashMap<>();
  private Setting stands = Setting.REST;

  GroundCheck(
      Vehicle vehicle,
      Knowledge knowledge,
      MeterSpec meter,
      Supplier<RuleBook> rules,
      Kept kept,
      Phrases phrases) {
    this.vehicle = vehicle;
    this.kept = kept;
    this.phrases = phrases;
    this.words = new GroundWords(vehicle, phrases, meter);
    this.cautions = new Cautions(vehicle, rules);
    Grounds grounds = Grounds.of(vehicle, knowledge);
    this.proofs = new DropProofs(grounds, meter);
    Walk.through(grounds.all(), proofs).forEach(s -> stops.put(s.ground().id(), s));
  }

  /**
   * Reads anew what is kept.
   *
   * @throws Problem if it can't be read
   */
  public void read() throws Problem {
    kept.read();
  }

  /** What of the kept proofs can't be read, in words; empty if all can. */
  public String missing() {
    return kept.missing();
  }

  /** The vehicle. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /** All grounds in the order of a walk with few changes of the set-up. */
  public List<GroundRow> rows() {
    return stops.values().stream().map(this::row).toList();
  }

  private GroundRow row(Walk.Stop stop) {
    Ground ground = stop.ground();
    return new GroundRow(
        ground.id(),
        words.brief(ground),
        phrases.say("ground.kind." + ground.kind()),
        stop.setting().isPresent(),
        result(ground),
        since(ground));
  }

  /**
   * Goes on with the walk: the next ground that isn't proven good yet.
   *
   * @param after id of the ground after which to look, whose set-up stands; empty: from the
   *     beginning
   */
  public Optional<String> next(String after) {
    chosen.getOrDefault(after, Optional.empty()).ifPresent(p -> stands = p.setting());
    List<GroundRow> turned = new ArrayList<>(rows());
    Collections.rotate(turned, -1 - turned.stream().map(GroundRow::id).toList().indexOf(after));
    return turned.stream()
        .filter(r -> r.provable() && !r.good() && !r.id().equals(after))
        .map(GroundRow::id)
        .findFirst();
  }

  /** What is to be put back after the last proof, in words; empty if nothing is. */
  public List<String> putBack() {
    return words.change(stands, Setting.REST);
  }

  /**
   * A ground in words, with the proof that was chosen for it.
   *
   * @throws Problem if the vehicle has no such ground
   */
  public GroundView view(String id) throws Problem {
    Ground ground = ground(id);
    Optional<DropProof> proof = proof(ground);
    return new GroundView(
        ground.id(),
        words.title(ground),
        words.own(ground),
        proof.map(p -> words.proof(p, stands, cautions.of(p), proofs.hasGreater(p))),
        proof.isPresent() ? "" : words.unproven(stops.get(ground.id()).setting()),
        words.ohms(ohms(ground, proof)),
        result(ground),
        since(ground));
  }

  /** What the two leads on ohms can show of a ground. */
  private TwoWireOhms ohms(Ground ground, Optional<DropProof> proof) {
    double limit =
        proof.map(p -> p.limit().ohms()).orElse(Math.max(ground.own().high(), UNPROVEN_OHMS));
    return new TwoWireOhms(ground.own(), limit, proofs.meter());
  }

  /** Ohms that are too many for a ground through which next to nothing flows. Common practice. */
  private static final double UNPROVEN_OHMS = 1;

  private Optional<DropProof> proof(Ground ground) {
    return chosen.computeIfAbsent(
        ground.id(),
        id -> {
          Optional<DropProof> here = stops.get(id).setting().flatMap(s -> proofs.proof(ground, s));
          return here.filter(proofs::clear).isPresent() ? here : proofs.best(ground);
        });
  }

  /**
   * Takes the proof of a ground with a greater current than the one shown.
   *
   * @throws Problem if there is no such ground or no greater load
   */
  public GroundView greater(String id) throws Problem {
    Ground ground = ground(id);
    Optional<DropProof> greater = proof(ground).flatMap(proofs::greater);
    if (greater.isEmpty()) {
      throw new Problem("ground", id, phrases.say("ground.problem.greatest"));
    }
    chosen.put(ground.id(), greater);
    return view(id);
  }

  private Ground ground(String id) throws Problem {
    Walk.Stop stop = stops.get(id);
    if (stop == null) {
      stop =
          stops.values().stream()
              .filter(s -> s.ground().id().equalsIgnoreCase(id))
              .findFirst()
              .orElseThrow(
                  () ->
                      new Problem(
                          "ground",
                          id,
                          phrases.say(
                              "ground.problem.unknown", String.join(", ", stops.keySet()))));
    }
    return stop.ground();
  }

  /**
   * Takes the reading of a ground's proof as it stood on the display, with its unit. It counts once
   * it is on disk.
   *
   * @throws Problem if there is no such ground or proof, the text isn't understood, or it can't be
   *     kept
   */
  public GroundResult take(String id, String text) throws Problem {
    Ground ground = ground(id);
    DropProof proof =
        proof(ground)
            .orElseThrow(() -> new Problem("ground", id, phrases.say("ground.problem.no-proof")));
    Answer.Text answer = withUnit(text);
    Reading.Value.Number number = number(answer);
    Judgement judged = Judgement.of(proof, proofs.meter(), number.value(), number.step());
    kept.add(
        new ProofEvent.GroundProved(
            kept.now(),
            ground.id(),
            new OwnCheck(
                CheckKind.MILLIVOLTS,
                Optional.of(proof.red()),
                Optional.of(proof.black()),
                Optional.empty(),
                proof.setting()),
            answer,
            ProofEvent.Verdict.valueOf(judged.verdict().name()),
            judged.lowOhms(),
            judged.highOhms(),
            Prints.of(vehicle, restsOn(proof))));
    stands = proof.setting();
    return words.result(proof, judged, proofs.hasGreater(proof));
  }

  /** The text with its unit in full. Without one nobody knows whether volts or millivolts stood. */
  private Answer.Text withUnit(String text) throws Problem {
    String typed = text.strip();
    if (typed.matches("[+-]?[\\d.,]+")) {
      throw new Problem("value", typed, phrases.say("ground.problem.unit"));
    }
    return new Answer.Text(
        typed
            .replaceFirst("(?i)(?<=[\\d.,\\s])m$", "mV")
            .replaceFirst("(?<=[\\d.,])(?=[a-zA-Z])", " "));
  }

  private Reading.Value.Number number(Answer.Text answer) throws Problem {
    Reading.Value value = Entry.typed(CheckKind.MILLIVOLTS, answer);
    if (value instanceof Reading.Value.Number n) {
      return n;
    }
    throw new Problem("value", answer.text(), phrases.say("ground.problem.over"));
  }

  /** Ids of the parts that a proof rests on: what lies between the leads, and what draws. */
  private static Set<String> restsOn(DropProof proof) {
    Set<String> parts = new TreeSet<>(proof.ground().pieces());
    parts.addAll(proof.beside());
    proof.works().stream().map(LoadRef::part).forEach(parts::add);
    return parts;
  }

  /**
   * Judges an ohms reading across a ground by the leads' own.
   *
   * @param zero ohms with the leads held together, as the display shows it
   * @param shown ohms across the ground, or OL
   * @throws Problem if there is no such ground or a text isn't understood
   */
  public GroundResult ohms(String id, String zero, String shown) throws Problem {
    Ground ground = ground(id);
    TwoWireOhms ohms = ohms(ground, proof(ground));
    Reading.Value leads = Entry.typed(CheckKind.OHMS, new Answer.Text(zero));
    if (!(leads instanceof Reading.Value.Number z)) {
      throw new Problem("value", zero.strip(), phrases.say("ground.problem.leads"));
    }
    Reading.Value across = Entry.typed(CheckKind.OHMS, new Answer.Text(shown));
    TwoWireOhms.Shown judged =
        across instanceof Reading.Value.Number n
            ? ohms.judge(z.value(), z.step(), n.value(), n.step())
            : ohms.judge(z.value(), z.step(), Double.POSITIVE_INFINITY, z.step());
    return words.result(ohms, judged);
  }

  // ---- what is kept --------------------------------------------------------------------------

  private Optional<GroundResult> result(Ground ground) {
    return kept.of(ground.id()).map(k -> words.result(ground, k));
  }

  private String since(Ground ground) {
    return kept.of(ground.id())
        .map(g -> Prints.changed(g.prints(), Prints.of(vehicle, g.prints().keySet())))
        .filter(changed -> !changed.isEmpty())
        .map(changed -> words.since(List.copyOf(changed)))
        .orElse("");
  }
}
