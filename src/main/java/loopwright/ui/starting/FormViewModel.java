package loopwright.ui.starting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Question;
import loopwright.casework.pattern.Questionnaire;

/** Questions with their answers; an answer may bring or take questions behind it. */
final class FormViewModel {
  private final Questionnaire what;
  private final List<Runnable> listeners = new ArrayList<>();
  private final Map<String, String> typed = new LinkedHashMap<>();
  private final ReadOnlyObjectWrapper<List<Question>> questions =
      new ReadOnlyObjectWrapper<>(List.of());

  /**
   * Makes a form.
   *
   * @param given answers to begin with
   */
  FormViewModel(Questionnaire what, Map<String, String> given) {
    this.what = what;
    typed.putAll(given);
    ask();
  }

  /** The questions asked now. What has only one answer is not asked. */
  ReadOnlyObjectProperty<List<Question>> questionsProperty() {
    return questions.getReadOnlyProperty();
  }

  /** Runs something after each change. */
  void onChange(Runnable listener) {
    listeners.add(listener);
  }

  private void ask() {
    try {
      questions.set(
          what.questions(given()).stream()
              .filter(
                  q -> !(q.form() instanceof Question.Form.OneOf one) || one.choices().size() > 1)
              .toList());
    } catch (Problem e) {
      questions.set(List.of());
    }
  }

  /** What stands in the field of a question: what was typed, or the usual answer. */
  String shown(Question question) {
    return typed.getOrDefault(question.id(), question.usual());
  }

  /** Takes an answer as far as it is typed. */
  void type(Question question, String text) {
    if (text.equals(shown(question))) {
      return;
    }
    typed.put(question.id(), text);
    ask();
    listeners.forEach(Runnable::run);
  }

  /** What is wrong with the answer to a question, in words. */
  Optional<String> wrong(Question question) {
    try {
      String text = shown(question).strip();
      what.check(question, text.isEmpty() ? question.usual() : question.kept(text));
      return Optional.empty();
    } catch (Problem e) {
      return Optional.of(e.accepted());
    }
  }

  /** The answers that differ from the usual ones, to questions asked now. */
  Map<String, String> given() {
    Map<String, String> given = new LinkedHashMap<>();
    List<Question> asked = questions.get();
    typed.forEach(
        (id, text) -> {
          Optional<Question> of = asked.stream().filter(q -> q.id().equals(id)).findFirst();
          if ((asked.isEmpty() || of.isPresent()) && !text.isBlank()) {
            given.put(id, of.map(q -> q.kept(text)).orElse(text));
          }
        });
    return given;
  }
}
