package loopwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.CheckView;
import loopwright.casework.CheckView.OutcomeView;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.io.wire.Fields;

/**
 * What can be typed for an answer.
 *
 * @param kind kind of check
 * @param choices for a look: the answers there are, chosen by their number
 * @param words those answers as the check words them, for instance "does nothing"
 * @param outcomes the results there may be; those of a meter check are chosen by their letter
 */
record Entry(CheckKind kind, List<Seen> choices, List<String> words, List<OutcomeView> outcomes) {
  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)");
  private static final Pattern OVER = Pattern.compile("(?i)o\\.?l\\.?|over( ?range)?");

  static Entry of(CheckView check) {
    return new Entry(
        check.kind(),
        check.choices(),
        check.choiceWords(),
        check.outcomes().stream()
            .filter(o -> check.kind().metered() ? o.band().isPresent() : o.seen().isPresent())
            .toList());
  }

  /** For a reading whose proposed results aren't at hand. */
  static Entry of(CheckKind kind) {
    List<Seen> answers = kind.answers();
    return new Entry(kind, answers, answers.stream().map(Entry::said).toList(), List.of());
  }

  private static String said(Seen seen) {
    return Phrases.inUse().say("seen." + seen.word());
  }

  /** What is seen as the check words it; else the bare word. */
  String words(Seen seen) {
    int i = choices.indexOf(seen);
    return i >= 0 ? words.get(i) : word(seen);
  }

  /** What is seen in a word of the language in use, which may be typed. */
  static String word(Seen seen) {
    return Speech.of("seen." + seen.word());
  }

  static char letter(int index) {
    return (char) ('a' + index);
  }

  /**
   * Reads what was typed.
   *
   * @throws Problem naming what can be typed
   */
  Answer read(String typed) throws Problem {
    String text = typed.strip();
    return kind.metered() ? metered(text) : seen(text);
  }

  private Answer metered(String text) throws Problem {
    if (text.length() == 1 && Character.isLetter(text.charAt(0))) {
      int index = Character.toLowerCase(text.charAt(0)) - 'a';
      if (index >= 0 && index < outcomes.size()) {
        return new Answer.Within(outcomes.get(index).band().orElseThrow());
      }
    }
    if (text.equals("1.")) {
      // A plain meter shows over range by a 1 alone.
      return new Answer.Text(text);
    }
    if (NUMBER.matcher(text).matches()) {
      if (kind == CheckKind.MILLIVOLTS && text.matches("[+-]?0?[.,]\\d*[1-9]\\d*")) {
        throw new Problem("entry", Fields.cut(text), Speech.of("entry.unit"));
      }
      return new Answer.Text(text + " " + Staircase.unit(kind));
    }
    if (OVER.matcher(text).matches()) {
      return new Answer.Text("OL");
    }
    if (text.chars().noneMatch(Character::isDigit)) {
      throw new Problem(
          "entry",
          Fields.cut(text),
          Speech.of(outcomes.isEmpty() ? "entry.value" : "entry.value-or-letter"));
    }
    return new Answer.Text(text);
  }

  private Answer seen(String text) throws Problem {
    Optional<Seen> seen = Optional.empty();
    if (text.matches("\\d{1,2}")) {
      int index = Integer.parseInt(text) - 1;
      if (index >= 0 && index < choices.size()) {
        seen = Optional.of(choices.get(index));
      }
    } else {
      for (Seen s : Seen.values()) {
        if (Stream.of(s.word(), word(s), words(s)).anyMatch(text::equalsIgnoreCase)) {
          seen = Optional.of(s);
        }
      }
    }
    List<String> accepted = new ArrayList<>();
    for (int i = 0; i < choices.size(); i++) {
      accepted.add((i + 1) + " " + words(choices.get(i)));
    }
    return new Answer.Saw(
        seen.orElseThrow(
            () ->
                new Problem(
                    "entry",
                    Fields.cut(text),
                    Speech.of("entry.seen", String.join(", ", accepted)))));
  }
}
