package loopwright.casework.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.Figures;
import loopwright.casework.Phrases;
import loopwright.casework.SettingView;
import loopwright.casework.Words;
import loopwright.casework.prove.ProofEvent;
import loopwright.ground.DropProof;
import loopwright.ground.Ground;
import loopwright.ground.Judgement;
import loopwright.ground.Limit;
import loopwright.ground.TwoWireOhms;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Vehicle;

/** Grounds, their proofs and verdicts in words. */
final class GroundWords {
  /** Loads or parts named at most. */
  private static final int MOST_NAMED = 3;

  private final Phrases phrases;
  private final Words words;
  private final MeterSpec meter;

  GroundWords(Vehicle vehicle, Phrases phrases, MeterSpec meter) {
    this.phrases = phrases;
    this.words = new Words(vehicle, phrases);
    this.meter = meter;
  }

  String title(Ground ground) {
    String part = words.part(ground.id());
    return ground.kind().whole() ? phrases.say("ground.title.whole", part) : part;
  }

  /** The same among others whose kind stands beside it. */
  String brief(Ground ground) {
    return words.part(ground.id());
  }

  String own(Ground ground) {
    String ohms = Figures.milliohms(ground.own().low(), ground.own().high());
    String about = Figures.milliohms(ground.own().typical(), ground.own().typical());
    return ground.kind().whole()
        ? phrases.say("ground.own.whole", ohms, about, words.parts(ground.pieces(), MOST_WAY))
        : phrases.say("ground.own." + ground.kind(), ohms, about);
  }

  private static final int MOST_WAY = 9;

  List<String> change(Setting from, Setting to) {
    return words.change(from, to);
  }

  // ---- the proof -----------------------------------------------------------------------------

  GroundView.Proof proof(DropProof proof, Setting stands, List<String> cautions, boolean greater) {
    double finest = meter.ranges(MeterFunction.VOLTS_DC).get(0).step();
    return new GroundView.Proof(
        new SettingView(
            proof.setting(), words.change(stands, proof.setting()), words.setting(proof.setting())),
        works(proof),
        words.point(proof.red()),
        words.point(proof.black()),
        phrases.say("ground.meter", Figures.millivolts(finest)),
        Figures.millivolts(proof.healthy().low(), proof.healthy().high()),
        phrases.say("ground.good", Figures.millivolts(proof.goodBelow())),
        phrases.say("ground.bad", Figures.millivolts(proof.badAbove())),
        limit(proof),
        phrases.say("ground.source." + proof.limit().source()),
        notes(proof),
        cautions,
        greater);
  }

  private String works(DropProof proof) {
    if (proof.cranks()) {
      return phrases.say("ground.works.crank");
    }
    String loads = loads(proof.works());
    return proof.works().size() == 1
        ? phrases.say("ground.works.one", loads, Figures.amps(proof.amps()))
        : phrases.say("ground.works", loads, Figures.amps(proof.amps()));
  }

  private String loads(List<LoadRef> loads) {
    return words.listed(
        loads.stream()
            .map(
                l ->
                    l.filament()
                        .map(f -> phrases.say("mode.at", words.part(l.part()), f))
                        .orElse(words.part(l.part())))
            .toList(),
        MOST_NAMED);
  }

  private String limit(DropProof proof) {
    Limit limit = proof.limit();
    String volts = Figures.millivolts(limit.volts());
    String amps = Figures.amps(limit.amps());
    return limit.measure() == Limit.Measure.VOLTS
        ? phrases.say("ground.limit.volts", volts)
        : phrases.say(
            "ground.limit.ohms", Figures.milliohms(limit.ohms(), limit.ohms()), volts, amps);
  }

  private List<String> notes(DropProof proof) {
    List<String> notes = new ArrayList<>();
    double most = proof.healthy().high();
    if (most > proof.badAbove()) {
      notes.add(phrases.say("ground.spread", Figures.millivolts(most)));
    }
    if (!proof.beside().isEmpty()) {
      String beside = words.parts(proof.beside(), MOST_WAY);
      notes.add(
          phrases.say(
              proof.ground().kind().whole() ? "ground.beside.whole" : "ground.beside", beside));
      proof
          .without()
          .ifPresent(
              volts ->
                  notes.add(
                      phrases.say(
                          volts > proof.badAbove() ? "ground.without" : "ground.without.unseen",
                          words.part(proof.ground().id()),
                          Figures.millivolts(volts))));
    }
    return notes;
  }

  /**
   * Why there is no proof.
   *
   * @param setting the one in which there would be, but for bounds
   */
  String unproven(Optional<Setting> setting) {
    return phrases.say(setting.isPresent() ? "ground.unproven.bounds" : "ground.unproven");
  }

  String ohms(TwoWireOhms ohms) {
    String shows = Figures.ohms(ohms.shows());
    String zero = Figures.range(ohms.zero()[0], ohms.zero()[1], Band.Unit.OHM);
    return ohms.canPass()
        ? phrases.say("ground.ohms.enough", zero, shows)
        : phrases.say("ground.ohms", zero, shows, Figures.milliohms(ohms.limit(), ohms.limit()));
  }

  // ---- the verdict ---------------------------------------------------------------------------

  GroundResult result(DropProof proof, Judgement said, boolean greater) {
    GroundResult.Verdict verdict = GroundResult.Verdict.valueOf(said.verdict().name());
    boolean volts = proof.limit().measure() == Limit.Measure.VOLTS;
    String left =
        volts
            ? Figures.millivolts(said.lowVolts(), said.highVolts())
            : Figures.milliohms(said.lowOhms(), said.highOhms());
    String limit =
        volts
            ? Figures.millivolts(proof.limit().volts())
            : Figures.milliohms(proof.limit().ohms(), proof.limit().ohms());
    String sentence =
        phrases.say("ground.said." + verdict + (volts ? ".volts" : ".ohms"), left, limit);
    return new GroundResult(verdict, sentence, next(proof, said, greater));
  }

  private String next(DropProof proof, Judgement said, boolean greater) {
    List<String> next = new ArrayList<>();
    if (said.turned()) {
      next.add(phrases.say("ground.turned"));
    }
    switch (said.verdict()) {
      case GOOD -> {}
      case BAD ->
          next.add(
              phrases.say(
                  "ground.mend." + proof.ground().kind(),
                  words.parts(proof.ground().pieces(), MOST_WAY)));
      default ->
          next.add(
              said.why() == Judgement.Why.NEAR_LIMIT || said.why() == Judgement.Why.GREATER_LOAD
                  ? phrases.say("ground.why." + said.why() + (greater ? ".greater" : ""))
                  : phrases.say("ground.why." + said.why(), loads(proof.works())));
    }
    return next.stream().collect(Collectors.joining(" "));
  }

  GroundResult result(TwoWireOhms ohms, TwoWireOhms.Shown said) {
    GroundResult.Verdict verdict = GroundResult.Verdict.valueOf(said.verdict().name());
    return new GroundResult(
        verdict,
        phrases.say(
            "ground.said." + verdict + ".ohms",
            Figures.milliohms(said.lowOhms(), said.highOhms()),
            Figures.milliohms(ohms.limit(), ohms.limit())),
        verdict == GroundResult.Verdict.CANT_TELL ? phrases.say("ground.why.OHMS") : "");
  }

  /** A kept proof; what it was held against then isn't kept, only what it said. */
  GroundResult result(Ground ground, ProofEvent.GroundProved kept) {
    GroundResult.Verdict verdict = GroundResult.Verdict.valueOf(kept.verdict().name());
    String read = ((Answer.Text) kept.answer()).text();
    String ohms = Figures.milliohms(kept.lowOhms(), kept.highOhms());
    return new GroundResult(
        verdict,
        ground.kind() == Ground.Kind.LOAD
            ? phrases.say("ground.kept.volts." + verdict, read)
            : phrases.say("ground.kept." + verdict, read, ohms),
        "");
  }

  String since(List<String> changed) {
    return phrases.say("ground.since", words.parts(changed, MOST_NAMED));
  }
}
