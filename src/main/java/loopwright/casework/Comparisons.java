package loopwright.casework;

import java.util.List;
import loopwright.diagnosis.Findings;

/** Compares what two checks are expected to tell, in words. */
final class Comparisons {

  /** Share by which two may differ and still be as good as each other. Our own choice. */
  private static final double AS_GOOD = 0.1;

  private final Phrases phrases;
  private final Words words;
  private final OutcomeViews outcomes;

  Comparisons(Phrases phrases, Words words, OutcomeViews outcomes) {
    this.phrases = phrases;
    this.words = words;
    this.outcomes = outcomes;
  }

  /** A check with what it is expected to tell. */
  Comparison.Side side(Findings.Proposal p, List<String> risks) {
    return new Comparison.Side(words.asked(p.check()), tells(p), risks);
  }

  private String tells(Findings.Proposal p) {
    String minutes = Figures.minutes(p.minutes());
    if (!p.tells()) {
      return phrases.say("compare.nothing", minutes);
    }
    String rate = Figures.share(rate(p));
    List<CheckView.OutcomeView> top =
        outcomes.views(p.check(), p.outcomes()).stream().limit(2).toList();
    return top.size() < 2
        ? phrases.say("compare.tells", minutes, rate)
        : phrases.say(
            "compare.split",
            Figures.share(top.get(0).chance()),
            Figures.share(top.get(1).chance()),
            minutes,
            rate);
  }

  /** Expected bits a minute. */
  private static double rate(Findings.Proposal p) {
    return p.bits() / p.minutes();
  }

  /** Which tells more for its minutes. */
  String verdict(Findings.Proposal learners, Findings.Proposal programs) {
    if (learners.check().equals(programs.check())) {
      return phrases.say("compare.same");
    }
    if (!learners.tells()) {
      return phrases.say("compare.none");
    }
    double times = rate(learners) / rate(programs);
    if (Math.abs(times - 1) <= AS_GOOD) {
      return phrases.say("compare.as-good");
    }
    return times > 1
        ? phrases.say("compare.better", Figures.share(times))
        : phrases.say("compare.worse", Figures.share(1 / times));
  }
}
