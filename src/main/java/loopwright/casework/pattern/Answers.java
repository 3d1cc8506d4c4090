package loopwright.casework.pattern;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.model.Language;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.Units;

/** Answers that have been found to fit their questions. */
final class Answers {
  private final int systemVolts;
  private final Map<String, String> byQuestion = new LinkedHashMap<>();
  private final Map<String, Question> questions = new LinkedHashMap<>();

  private Answers(int systemVolts) {
    this.systemVolts = systemVolts;
  }

  /**
   * Takes answers; the usual one stands in for what is not answered.
   *
   * @param asker what asks, as a problem names it
   * @throws Problem if one doesn't fit its question, or answers what isn't asked
   */
  static Answers of(
      String asker, List<Question> questions, Map<String, String> given, int systemVolts)
      throws Problem {
    List<String> asked = questions.stream().map(Question::id).toList();
    for (String answered : given.keySet()) {
      if (!asked.contains(answered)) {
        throw new Problem(asker, answered, say("problem.questions", String.join(", ", asked)));
      }
    }
    Answers answers = new Answers(systemVolts);
    for (Question question : questions) {
      String text = given.getOrDefault(question.id(), "").strip();
      String answer = text.isEmpty() ? question.usual() : text;
      answers.questions.put(question.id(), question);
      answers.byQuestion.put(question.id(), fitting(question, answer, systemVolts));
    }
    return answers;
  }

  /**
   * Whether an answer fits, told by what is accepted if not.
   *
   * @return the answer as it is kept
   * @throws Problem if it doesn't fit
   */
  static String fitting(Question question, String answer, int systemVolts) throws Problem {
    Question.Form form = question.form();
    if (form instanceof Question.Form.Words words) {
      if (answer.isBlank() || answer.length() > words.most()) {
        throw new Problem(
            question.id(), answer, say("problem.letters", Integer.toString(words.most())));
      }
      if (answer.strip().codePoints().anyMatch(Character::isISOControl)) {
        throw new Problem(question.id(), answer, say("problem.control"));
      }
      return answer.strip();
    }
    if (form instanceof Question.Form.OneOf one) {
      for (Question.Choice choice : one.choices()) {
        if (choice.id().equalsIgnoreCase(answer) || choice.words().equalsIgnoreCase(answer)) {
          return choice.id();
        }
      }
      throw new Problem(
          question.id(),
          answer,
          say(
              "problem.one-of",
              one.choices().stream().map(Question.Choice::id).collect(Collectors.joining(", "))));
    }
    if (form instanceof Question.Form.Number number) {
      double value = amount(question, answer, number.unit());
      boolean whole = !number.unit().isEmpty() || value == Math.rint(value);
      if (!(value >= number.low() && value <= number.high() && whole)) {
        throw new Problem(
            question.id(), answer, limits(number.low(), number.high(), number.unit()));
      }
      return answer;
    }
    if (form instanceof Question.Form.Length length) {
      double metres = metres(question, answer);
      if (!(metres >= length.low() && metres <= length.high())) {
        throw new Problem(
            question.id(),
            answer,
            Language.range(
                Units.inUse().bareLength(length.low(), 1), Units.inUse().length(length.high(), 0)));
      }
      return answer;
    }
    Question.Form.Power power = (Question.Form.Power) form;
    double amps = amps(question, power, answer, systemVolts);
    if (!(amps >= power.low() && amps <= power.high())) {
      throw new Problem(
          question.id(),
          answer,
          say(
              "problem.power",
              limits(power.low(), power.high(), "A"),
              limits(power.low() * systemVolts, power.high() * systemVolts, "W")));
    }
    return answer;
  }

  private static String say(String key, Object... args) {
    return PatternWords.inUse().say(key, args);
  }

  private static String limits(double low, double high, String unit) {
    return (Language.range(number(low), number(high)) + " " + unit).strip();
  }

  /** A number as a person writes it, to three digits. */
  static String number(double value) {
    java.math.BigDecimal rounded =
        new java.math.BigDecimal(value).round(new java.math.MathContext(3)).stripTrailingZeros();
    return Language.marked(rounded.toPlainString());
  }

  private static double metres(Question question, String answer) throws Problem {
    if (Said.twoWays(answer)) {
      throw new Problem(question.id(), answer, Phrases.inUse().say("problem.two-ways"));
    }
    return Said.amount(answer, Quantity.LENGTH)
        .orElseThrow(() -> new Problem(question.id(), answer, Quantity.LENGTH.accepted()))
        .about();
  }

  private static double amount(Question question, String answer, String unit) throws Problem {
    if (Said.twoWays(answer)) {
      throw new Problem(question.id(), answer, Phrases.inUse().say("problem.two-ways"));
    }
    String bare = answer.strip().toLowerCase(Locale.ROOT).replace(',', '.');
    bare = bare.replaceFirst("^(about|etwa) ", "");
    if (!unit.isEmpty() && bare.endsWith(unit.toLowerCase(Locale.ROOT))) {
      bare = bare.substring(0, bare.length() - unit.length()).strip();
    }
    try {
      return Double.parseDouble(bare);
    } catch (NumberFormatException e) {
      throw new Problem(
          question.id(),
          answer,
          unit.isEmpty() ? say("problem.whole") : say("problem.number", unit, number(1.5)));
    }
  }

  private static double amps(
      Question question, Question.Form.Power power, String answer, int systemVolts) throws Problem {
    String last = answer.strip().toUpperCase(Locale.ROOT);
    boolean watts = last.endsWith("W") || (power.unit().equals("W") && !last.endsWith("A"));
    double value = amount(question, answer, watts ? "W" : "A");
    return watts ? value / systemVolts : value;
  }

  /** Why a value is as it is: where the usual one comes from, or that it was answered. */
  String why(PatternWords words, String question) {
    Question of = questions.get(question);
    String answer = byQuestion.get(question);
    return answer.equals(of.usual())
        ? words.say("why.usual", answer, of.sourceWords())
        : words.say("why.asked", answer);
  }

  /** Words or the id of a choice. */
  String words(String question) {
    return byQuestion.get(question);
  }

  /** Whether the answer to a question is this choice. */
  boolean is(String question, String choice) {
    return choice.equals(byQuestion.get(question));
  }

  /** A number in its question's unit, or metres. */
  double number(String question) throws Problem {
    Question of = questions.get(question);
    if (of.form() instanceof Question.Form.Length) {
      return metres(of, byQuestion.get(question));
    }
    return amount(of, byQuestion.get(question), ((Question.Form.Number) of.form()).unit());
  }

  /** What a load takes, in amperes at the system's volts. */
  double amps(String question) throws Problem {
    Question of = questions.get(question);
    return amps(of, (Question.Form.Power) of.form(), byQuestion.get(question), systemVolts);
  }

  /** What a load takes, in watts at the system's volts. */
  double watts(String question) throws Problem {
    return amps(question) * systemVolts;
  }
}
