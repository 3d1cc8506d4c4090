package loopwright.casework;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.SuspectId;
import loopwright.model.Setting;

/** Looks ahead: what the results of a check would leave, and what would be asked then. */
final class Outlooks {

  /** Checks that are named in place of one. */
  private static final int MOST_INSTEAD = 5;

  /** Parts that are named as left. */
  private static final int MOST_LEFT = 6;

  /** Chance below which a part is not named as left. */
  private static final double NAMED = 0.005;

  /** Number of a reading that is only supposed: no real one has it. */
  private static final int SUPPOSED = Integer.MAX_VALUE;

  private final Diagnosis diagnosis;
  private final Findings findings;
  private final List<Reading> readings;
  private final Function<Check, Diagnosis.Circumstances> circumstances;
  private final Setting standing;
  private final Words words;
  private final Phrases phrases;
  private final OutcomeViews outcomes;

  /**
   * For the state of a case.
   *
   * @param readings readings that count
   * @param circumstances what is known besides, once a check has been done
   * @param standing how the vehicle stands now
   */
  Outlooks(
      Diagnosis diagnosis,
      Findings findings,
      List<Reading> readings,
      Function<Check, Diagnosis.Circumstances> circumstances,
      Setting standing,
      Words words,
      Phrases phrases,
      OutcomeViews outcomes) {
    this.diagnosis = diagnosis;
    this.findings = findings;
    this.readings = readings;
    this.circumstances = circumstances;
    this.standing = standing;
    this.words = words;
    this.phrases = phrases;
    this.outcomes = outcomes;
  }

  /** What the results of a check would leave; of the proposed one if none is named. */
  Outlook of(Optional<String> checkId, Optional<CheckView> proposed) throws Problem {
    // A reading taken again and the proof of a repair are asked for, but split nothing.
    Findings.Proposal p = proposal(checkId.or(() -> proposed.map(CheckView::id)).orElse(""));
    Check check = p.check();
    List<Outlook.Branch> branches =
        outcomes.results(check, p.outcomes()).stream()
            .map(r -> new Outlook.Branch(r.shown(), left(r.parts().entrySet().stream())))
            .toList();
    return new Outlook(
        check.id(),
        check.kind(),
        words.asked(check),
        words.change(standing, check.setting()),
        p.minutes(),
        proposed.map(CheckView::id).filter(check.id()::equals).isPresent(),
        p.forWhat().map(f -> phrases.say("outlook.dead-first", words.asked(f))).orElse(""),
        branches,
        choices().stream()
            .filter(c -> !c.check().equals(check))
            .limit(MOST_INSTEAD)
            .map(c -> new Outlook.Choice(c.check().id(), words.asked(c.check()), c.minutes()))
            .toList());
  }

  /** What would follow on one of these results. */
  Outlook.Then then(String checkId, int result) throws Problem {
    Findings.Proposal p = proposal(checkId);
    List<OutcomeViews.Result> results = outcomes.results(p.check(), p.outcomes());
    if (result < 0 || result >= results.size()) {
      throw new Problem(
          "result",
          Integer.toString(result + 1),
          results.isEmpty()
              ? phrases.say("problem.no-outlook")
              : phrases.say("problem.result", Integer.toString(results.size())));
    }
    CheckView.OutcomeView shown = results.get(result).shown();
    Answer answer =
        shown
            .seen()
            .<Answer>map(Answer.Saw::new)
            .orElseGet(() -> new Answer.Within(shown.band().orElseThrow()));
    List<Reading> supposed = new ArrayList<>(readings);
    supposed.add(new Reading(SUPPOSED, p.check(), Entry.understand(p.check().kind(), answer)));
    return then(p.check(), diagnosis.findings(supposed, circumstances.apply(p.check())));
  }

  private Outlook.Then then(Check before, Findings after) {
    List<Outlook.Left> left =
        left(after.parts().stream().map(b -> Map.entry(b.part(), b.belief())));
    return switch (after.status()) {
      case ISOLATED -> end(CaseView.Move.REPAIR, "then.found", left, words.parts(after.group(), 3));
      case HEALTHY -> end(CaseView.Move.END, "then.healthy", left);
      case CONTRADICTION -> end(CaseView.Move.CHECK, "then.odds", left);
      case SEARCHING ->
          after.ranked().stream()
              .findFirst()
              .filter(Findings.Proposal::tells)
              .map(p -> asked(before, p, left))
              .orElseGet(() -> end(CaseView.Move.STUCK, "then.stuck", left));
    };
  }

  private Outlook.Then end(
      CaseView.Move move, String key, List<Outlook.Left> left, Object... args) {
    return new Outlook.Then(
        move, phrases.say(key, args), Optional.empty(), List.of(), 0, left, List.of());
  }

  private Outlook.Then asked(Check before, Findings.Proposal p, List<Outlook.Left> left) {
    return new Outlook.Then(
        CaseView.Move.CHECK,
        words.asked(p.check()),
        Optional.of(p.check().id()),
        words.change(before.setting(), p.check().setting()),
        p.minutes(),
        left,
        outcomes.views(p.check(), p.outcomes()));
  }

  private List<Findings.Proposal> choices() {
    return findings.ranked().stream()
        .filter(p -> p.worthAsking() && p.forWhat().isEmpty())
        .toList();
  }

  private Findings.Proposal proposal(String checkId) throws Problem {
    return findings.ranked().stream()
        .filter(p -> p.check().id().equals(checkId))
        .findFirst()
        .orElseThrow(
            () ->
                new Problem(
                    "check",
                    checkId,
                    choices().isEmpty()
                        ? phrases.say("problem.no-outlook")
                        : choices().stream()
                            .limit(1 + MOST_INSTEAD)
                            .map(p -> p.check().id())
                            .collect(Collectors.joining(", "))));
  }

  /** Parts with their chances, strongest first, as they are named. */
  private List<Outlook.Left> left(Stream<Map.Entry<String, Double>> parts) {
    return parts
        .filter(e -> e.getValue() >= NAMED && !e.getKey().equals(SuspectId.NONE))
        .limit(MOST_LEFT)
        .map(e -> new Outlook.Left(e.getKey(), words.part(e.getKey()), e.getValue()))
        .toList();
  }
}
