package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.Appraisal;
import loopwright.casework.Band;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.Entry;
import loopwright.casework.Figures;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Words;
import loopwright.diagnosis.CheckKind;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** What is said in and after a drill. */
final class DrillWords {
  private final Phrases phrases;
  private final Vehicle vehicle;
  private final Words words;

  DrillWords(Phrases phrases, Vehicle vehicle) {
    this.phrases = phrases;
    this.vehicle = vehicle;
    this.words = new Words(vehicle, phrases);
  }

  private String part(String id) {
    return vehicle.requirePart(id).title();
  }

  private String parts(Collection<String> ids) {
    return ids.stream().map(this::part).collect(Collectors.joining(", "));
  }

  String lost(Loss loss) {
    return phrases.say(loss.key());
  }

  String unreachable() {
    return phrases.say("practise.unreachable");
  }

  String unknownPart() {
    return phrases.say("problem.part");
  }

  /** What a check that told nothing could have shown. */
  List<String> couldOnly(Appraisal appraisal) {
    return appraisal.outcomes().stream()
        .limit(1)
        .filter(o -> o.seen().isPresent())
        .map(o -> phrases.say("practise.could-only", o.words(), Figures.percent(o.chance())))
        .toList();
  }

  String amps(TerminalRef red, TerminalRef black) {
    return phrases.say("practise.amps", red.toString(), black.toString());
  }

  String meterFuse() {
    return phrases.say("practise.meter-fuse");
  }

  String sound(String part) {
    return phrases.say("practise.sound", part(part));
  }

  /** Whether the right part had failed in the way that was said. */
  String failure(FaultKind said, boolean so) {
    return phrases.say(
        so ? "practise.failure.right" : "practise.failure.other", phrases.say(said.key()));
  }

  String alsoHeld(Collection<String> parts) {
    return phrases.say("practise.also-held", parts(parts));
  }

  String nowProve() {
    return phrases.say("practise.now-prove");
  }

  String mended(Collection<String> parts) {
    return phrases.say("practise.mended", parts(parts));
  }

  /** What a check showed: a value as on the display, what was seen in words. */
  String shown(OwnCheck check, Answer answer) {
    return answer instanceof Answer.Saw saw
        ? words.seen(check.check(), saw.seen())
        : answer.words();
  }

  // ---- expectations --------------------------------------------------------------------------

  /** How what was expected compares with what came. */
  List<String> compared(Expectation expected, OwnCheck check, Answer answer) {
    List<String> lines = new ArrayList<>();
    as(expected, check.kind(), answer)
        .ifPresent(
            right ->
                lines.add(
                    phrases.say(
                        right ? "practise.as-expected" : "practise.not-as-expected",
                        shown(check, answer))));
    return lines;
  }

  /** How what was said of a check beforehand compares with what it can tell. */
  List<String> foretold(Foretold foretold) {
    List<String> lines = new ArrayList<>();
    if (!foretold.vain().isEmpty()) {
      lines.add(phrases.say("practise.foretold.vain", parts(foretold.vain())));
    }
    if (!foretold.missed().isEmpty()) {
      lines.add(phrases.say("practise.foretold.missed", parts(foretold.missed())));
    }
    if (!foretold.settled().isEmpty()) {
      lines.add(phrases.say("practise.foretold.settled", parts(foretold.settled())));
    }
    if (lines.isEmpty() && foretold.right().right() > 0) {
      lines.add(phrases.say("practise.foretold.right"));
    }
    return lines;
  }

  /** Whether the answer is as expected; empty if nothing was said of it. */
  private static Optional<Boolean> as(Expectation expected, CheckKind kind, Answer answer) {
    if (answer instanceof Answer.Saw saw) {
      return expected.seen().map(s -> s == saw.seen());
    }
    return expected.band().map(band -> within(band, kind, answer));
  }

  private static boolean within(Band band, CheckKind kind, Answer answer) {
    return Entry.value(kind, answer).filter(v -> v >= band.low() && v <= band.high()).isPresent();
  }

  // ---- the end -------------------------------------------------------------------------------

  /** What would have been best where the case stood so. */
  List<String> best(CaseView at, boolean taken) {
    List<String> lines = new ArrayList<>();
    switch (at.move()) {
      case CHECK -> at.next().ifPresent(c -> lines.add(best(c, taken)));
      case REPAIR -> {
        if (!taken) {
          lines.add(phrases.say("practise.best.name", parts(Drilling.answer(at))));
        }
      }
      case PROOF, END -> {
        if (!taken) {
          lines.add(phrases.say("practise.best.prove"));
        }
      }
      default -> lines.add(phrases.say("practise.best.none"));
    }
    return lines;
  }

  private String best(CheckView check, boolean taken) {
    String what = words.asked(check);
    List<CheckView.OutcomeView> top = check.outcomes().stream().limit(2).toList();
    String minutes = Figures.minutes(check.minutes());
    if (top.size() < 2) {
      return phrases.say(taken ? "practise.best.was" : "practise.best.check", what, minutes);
    }
    return phrases.say(
        taken ? "practise.best.was-split" : "practise.best.split",
        what,
        Figures.share(top.get(0).chance()),
        Figures.share(top.get(1).chance()),
        minutes);
  }

  List<String> summary(Way own, Way best) {
    List<String> lines = new ArrayList<>();
    lines.add(
        phrases.say(
            "practise.summary",
            Figures.minutes(own.minutes()),
            own.checks(),
            Figures.minutes(best.minutes()),
            best.checks()));
    for (Loss loss : Loss.values()) {
      int count = own.count(loss);
      if (count > 0) {
        lines.add(
            phrases.say(
                "practise.summary.loss",
                lost(loss),
                Integer.toString(count),
                Integer.toString(loss.points())));
      }
    }
    Tally foretold = own.foretold();
    if (!foretold.equals(Tally.NONE)) {
      lines.add(phrases.say("practise.summary.foretold", foretold.right(), foretold.wrong()));
    }
    if (own.losses().isEmpty()) {
      lines.add(phrases.say("practise.summary.nothing"));
    }
    return lines;
  }
}
