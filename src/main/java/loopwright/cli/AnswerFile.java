package loopwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.casework.Problem;
import loopwright.casework.pattern.NewVehicle;

/**
 * A file of answers, {@code question = answer} a line. A line {@code add = PATTERN} begins a
 * circuit; the lines below it answer that pattern's questions. Lines that begin with {@code #} are
 * for people.
 *
 * @param answers answers about the vehicle, or about one circuit
 * @param rows the circuits added
 */
record AnswerFile(Map<String, String> answers, List<NewVehicle.Row> rows) {
  private static final int MOST_BYTES = 1_000_000;

  /**
   * Reads a file.
   *
   * @throws Problem if it can't be read, or a line is no answer; it names the line
   */
  static AnswerFile read(Path file) throws Problem {
    List<String> lines;
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new Problem("answers", file.toString(), Speech.of("answers.large"));
      }
      lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new Problem("answers", file.toString(), Speech.of("answers.unread"));
    }
    Map<String, String> answers = new LinkedHashMap<>();
    List<NewVehicle.Row> rows = new ArrayList<>();
    Map<String, String> now = answers;
    String pattern = "";
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      int equals = line.indexOf('=');
      if (equals <= 0) {
        throw new Problem(
            Speech.of("answers.line", file.getFileName(), i + 1), line, Speech.of("answers.how"));
      }
      String key = line.substring(0, equals).strip();
      String value = line.substring(equals + 1).strip();
      if (key.equals("add")) {
        finish(rows, pattern, now);
        pattern = value;
        now = new LinkedHashMap<>();
      } else if (now.put(key, value) != null) {
        throw new Problem(
            Speech.of("answers.line", file.getFileName(), i + 1), key, Speech.of("answers.once"));
      }
    }
    finish(rows, pattern, now);
    return new AnswerFile(answers, rows);
  }

  private static void finish(
      List<NewVehicle.Row> rows, String pattern, Map<String, String> answers) {
    if (!pattern.isEmpty()) {
      rows.add(new NewVehicle.Row(pattern, answers));
    }
  }
}
