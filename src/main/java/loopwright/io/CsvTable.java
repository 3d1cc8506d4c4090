package loopwright.io;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads tables with a header line, RFC 4180, within the size limit of all files. */
final class CsvTable {
  private static final CsvMapper MAPPER =
      CsvMapper.builder().enable(CsvParser.Feature.WRAP_AS_ARRAY).build();

  /** One row: its cells by column, and its line in the file. */
  record Row(Map<String, String> cells, int line) {
    String text(String column) {
      return cells.getOrDefault(column, "");
    }

    boolean has(String column) {
      return !text(column).isBlank();
    }
  }

  private CsvTable() {}

  /**
   * The rows of a table; notes columns that are missing and rows of another length. An empty cell
   * is an empty text.
   */
  static List<Row> read(byte[] csv, List<String> columns, DefectList defects) {
    List<Row> rows = new ArrayList<>();
    List<String> header = List.of();
    try (MappingIterator<String[]> lines =
        MAPPER.readerFor(String[].class).readValues(new ByteArrayInputStream(csv))) {
      int next = 1;
      while (lines.hasNext()) {
        int line = next;
        String[] cells = lines.next();
        next += 1 + breaks(cells);
        if (header.isEmpty()) {
          header = List.of(cells);
          missing(columns, header, defects);
          continue;
        }
        if (cells.length != header.size()) {
          defects.addAt(
              "",
              line,
              "row",
              FileWords.say("cells", Integer.toString(cells.length)),
              FileWords.say("cells", Integer.toString(header.size())),
              FileWords.say(
                  "cells.bad", Integer.toString(cells.length), Integer.toString(header.size())));
          continue;
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < cells.length; i++) {
          row.put(header.get(i), cells[i]);
        }
        rows.add(new Row(row, line));
      }
    } catch (IOException | RuntimeException e) {
      String reason = JsonValue.shorten(String.valueOf(e.getMessage()));
      defects.addAt(
          "",
          0,
          FileWords.say("table"),
          reason,
          FileWords.say("table.text"),
          FileWords.say("file.unread", reason));
    }
    if (header.isEmpty() && defects.isEmpty()) {
      defects.addAt(
          "",
          0,
          FileWords.say("table"),
          FileWords.say("file.no-text"),
          FileWords.say("table.header"),
          FileWords.say("table.no-header"));
    }
    return rows;
  }

  /** Line breaks inside quoted cells. */
  private static int breaks(String[] cells) {
    int breaks = 0;
    for (String cell : cells) {
      breaks += (int) cell.chars().filter(c -> c == '\n').count();
    }
    return breaks;
  }

  private static void missing(List<String> columns, List<String> header, DefectList defects) {
    for (String column : columns) {
      if (!header.contains(column)) {
        defects.addAt(
            "",
            1,
            FileWords.say("table"),
            FileWords.say("table.no-column", column),
            FileWords.say("table.columns", String.join(", ", columns)),
            FileWords.say("table.lacks", column));
      }
    }
  }

  /** The number in a cell; empty for an empty cell or, with a defect, for one that is no number. */
  static Optional<Double> number(Row row, String column, String object, DefectList defects) {
    if (!row.has(column)) {
      return Optional.empty();
    }
    try {
      double value = Double.parseDouble(row.text(column).trim());
      if (!Double.isNaN(value) && !Double.isInfinite(value)) {
        return Optional.of(value);
      }
    } catch (NumberFormatException e) {
      // Falls through to the defect.
    }
    String shown = JsonValue.quoted(row.text(column));
    defects.addAt(
        column,
        row.line(),
        object,
        shown,
        FileWords.say("number"),
        ObjectReader.bad(column, shown, FileWords.say("number")));
    return Optional.empty();
  }
}
