package loopwright.published;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the small tables beside the tests: a heading line, then rows; quotes as usual. */
public final class Csv {

  private Csv() {}

  /** All rows of a table by column name. */
  public static List<Map<String, String>> rows(String resource) {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Csv.class.getResourceAsStream(resource), StandardCharsets.UTF_8))) {
      List<String> heading = split(in.readLine());
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        List<String> cells = split(line);
        if (cells.size() != heading.size()) {
          throw new IllegalStateException(resource + ": " + line);
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < cells.size(); i++) {
          row.put(heading.get(i), cells.get(i));
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Value of a row of the methods table, by its id. */
  public static double method(String id) {
    return Double.parseDouble(methodText(id));
  }

  /** Text of a row of the methods table, by its id. */
  public static String methodText(String id) {
    return rows("/published/published-methods.csv").stream()
        .filter(r -> r.get("id").equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no row " + id))
        .get("value");
  }

  private static List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
