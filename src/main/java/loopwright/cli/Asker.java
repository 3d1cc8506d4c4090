package loopwright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Question;
import loopwright.casework.pattern.Question.Choice;
import loopwright.casework.pattern.Question.Form;
import loopwright.casework.pattern.Questionnaire;

/** Asks the questions of patterns in the terminal, one after the other. */
final class Asker {
  /** The person ended it, or the input did. */
  static final class Ended extends Exception {
    private static final long serialVersionUID = 1L;

    Ended() {
      super("ended");
    }
  }

  /** What asks, and then does something with the answers. */
  interface Work {
    ExitCode run() throws Ended, Problem;
  }

  /** Does work; says why where it ends early. */
  static ExitCode run(Page page, Page log, Work work) {
    ExitCode code;
    try {
      code = work.run();
    } catch (Ended e) {
      log.say(Speech.of("ask.stopped"));
      code = ExitCode.USAGE;
    } catch (Problem e) {
      log.say(Speech.of("sentence", Speech.problem(e)));
      code = ExitCode.USAGE;
    }
    page.flush();
    log.flush();
    return code;
  }

  private final BufferedReader in;
  private final Page page;

  Asker(InputStream in, Page page) {
    this.in = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    this.page = page;
  }

  /**
   * Asks all questions. Enter takes what is usual; a number picks a choice; {@code back} goes back
   * one.
   *
   * @param given answers that are not asked for again
   * @throws Ended if the person stops
   */
  Map<String, String> ask(Questionnaire what, Map<String, String> given) throws Ended, Problem {
    Map<String, String> answers = new LinkedHashMap<>(given);
    java.util.Deque<String> asked = new java.util.ArrayDeque<>();
    while (true) {
      Optional<Question> next =
          what.questions(answers).stream().filter(q -> !answers.containsKey(q.id())).findFirst();
      if (next.isEmpty()) {
        // An answer taken back may have left others that are no longer asked for.
        List<String> ids = what.questions(answers).stream().map(Question::id).toList();
        answers.keySet().removeIf(id -> !ids.contains(id) && !given.containsKey(id));
        return answers;
      }
      Question question = next.get();
      if (question.form() instanceof Form.OneOf one && one.choices().size() == 1) {
        answers.put(question.id(), question.usual());
        continue;
      }
      page.gap();
      show(question);
      String line = line(question.usual() + "> ");
      if (Obeyed.says("back", line)) {
        if (!asked.isEmpty()) {
          answers.remove(asked.pop());
        }
        continue;
      }
      String answer = line.isEmpty() ? question.usual() : question.kept(chosen(question, line));
      try {
        what.check(question, answer);
        answers.put(question.id(), answer);
        asked.push(question.id());
      } catch (Problem e) {
        page.say(Speech.of("ask.again", e.value(), e.accepted()));
      }
    }
  }

  private void show(Question question) {
    page.say(question.text());
    if (question.form() instanceof Form.OneOf one) {
      int n = 1;
      for (Choice choice : one.choices()) {
        page.block("  " + n++ + "  ", choice.words() + " (" + choice.id() + ")");
      }
    }
    if (!question.source().isEmpty() && !question.usual().isEmpty()) {
      page.block(
          "  " + Speech.of("ask.usual") + ": ",
          question.usual() + " (" + question.sourceWords() + ")");
    }
  }

  /** The id of a choice that was picked by its number. */
  private static String chosen(Question question, String line) {
    if (question.form() instanceof Form.OneOf one
        && one.choices().stream().noneMatch(c -> c.id().equalsIgnoreCase(line))) {
      try {
        int number = Integer.parseInt(line);
        if (number >= 1 && number <= one.choices().size()) {
          return one.choices().get(number - 1).id();
        }
      } catch (NumberFormatException e) {
        return line;
      }
    }
    return line;
  }

  /**
   * One line.
   *
   * @throws Ended at the end of the input, or on {@code stop}
   */
  String line(String prompt) throws Ended {
    page.prompt(prompt);
    try {
      String line = in.readLine();
      if (line == null || Obeyed.says("stop", line.strip())) {
        throw new Ended();
      }
      return line.strip();
    } catch (IOException e) {
      throw new Ended();
    }
  }
}
