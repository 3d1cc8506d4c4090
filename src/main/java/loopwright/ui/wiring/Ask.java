package loopwright.ui.wiring;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * A question that is answered by typing a line, or by choosing one.
 *
 * @param question what is asked
 * @param text what stands in the field at first
 * @param sort what is asked for
 * @param options the choices for what was typed; empty where anything may be typed
 * @param answer gets what was typed, or the key of what was chosen
 */
record Ask(
    String question,
    String text,
    Sort sort,
    Optional<Function<String, List<Option>>> options,
    Consumer<String> answer) {

  /** What is asked for. */
  enum Sort {
    LINE,
    CHOICE,
    /** The path of a file, which can be picked too. */
    FILE
  }

  /** Something to choose. */
  record Option(String key, String words) {}

  /** Asks for a line. */
  static Ask line(String question, String text, Consumer<String> answer) {
    return new Ask(question, text, Sort.LINE, Optional.empty(), answer);
  }

  /** Asks for one of some choices. */
  static Ask choice(
      String question, Function<String, List<Option>> options, Consumer<String> answer) {
    return new Ask(question, "", Sort.CHOICE, Optional.of(options), answer);
  }

  /** Asks for a file that there is. */
  static Ask file(String question, Consumer<String> answer) {
    return new Ask(question, "", Sort.FILE, Optional.empty(), answer);
  }
}
