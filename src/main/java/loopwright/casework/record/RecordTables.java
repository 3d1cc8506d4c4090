package loopwright.casework.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.Account;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.Phrases;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTable.Column;
import loopwright.casework.list.ListTable.Side;
import loopwright.model.TerminalRef;

/** Kept cases as a table for a spreadsheet. */
public final class RecordTables {
  private static final List<String> COLUMNS =
      List.of(
          "case",
          "opened",
          "vehicle",
          "circuit",
          "load",
          "complaint",
          "state",
          "practice",
          "reading",
          "at",
          "kind",
          "setting",
          "apart",
          "red",
          "black",
          "look",
          "value",
          "entered",
          "counts",
          "healthy",
          "did",
          "mended",
          "proven");

  private RecordTables() {}

  /** A row for every reading of every case; a case without readings has one row. */
  public static ListTable readings(List<CaseRecord> records, Phrases phrases) {
    List<List<String>> rows = new ArrayList<>();
    for (CaseRecord record : records) {
      for (int i = 0; i < record.stages().size(); i++) {
        for (CaseRecord.Taken reading : record.stages().get(i).readings()) {
          rows.add(row(record, i, Optional.of(reading)));
        }
      }
      if (record.readings().isEmpty()) {
        rows.add(row(record, 0, Optional.empty()));
      }
    }
    return new ListTable(
        phrases.say("record.export"),
        List.of(),
        COLUMNS.stream()
            .map(c -> new Column(phrases.say("record.export." + c), 1, Side.LEFT))
            .toList(),
        rows);
  }

  private static List<String> row(CaseRecord record, int stage, Optional<CaseRecord.Taken> taken) {
    CaseEvent.Opened opened = record.opened();
    List<String> cells = new ArrayList<>();
    cells.add(opened.caseId());
    cells.add(opened.at().toString());
    cells.add(opened.vehicleId());
    cells.add(opened.circuit());
    cells.add(opened.load().orElse(""));
    cells.add(opened.kind().words());
    cells.add(record.state().word());
    cells.add(opened.practice() ? "yes" : "no");
    cells.addAll(
        taken
            .map(reading -> cells(record.stages().get(stage), reading))
            .orElse(List.of("", "", "", "", "", "", "", "", "", "", "", "", "")));
    Optional<CaseRecord.Repair> repair =
        stage < record.repairs().size()
            ? Optional.of(record.repairs().get(stage))
            : Optional.empty();
    cells.add(repair.map(r -> r.mend().part()).orElse(""));
    cells.add(repair.map(r -> r.proven() ? "yes" : "no").orElse(""));
    return cells;
  }

  private static List<String> cells(CaseRecord.Stage stage, CaseRecord.Taken reading) {
    Optional<Account.Line> line = stage.line(reading.number());
    String positions =
        reading.check().setting().positions().entrySet().stream()
            .map(e -> e.getKey() + "=" + e.getValue())
            .collect(Collectors.joining(", "));
    return List.of(
        Integer.toString(reading.number()),
        reading.at().toString(),
        reading.check().kind().word(),
        positions,
        String.join(", ", reading.check().setting().apart()),
        reading.check().red().map(TerminalRef::toString).orElse(""),
        reading.check().black().map(TerminalRef::toString).orElse(""),
        reading.check().lookAt().orElse(""),
        reading.answer().words(),
        Stream.concat(reading.corrected().stream(), Stream.of(reading.answer()))
            .map(Answer::words)
            .collect(Collectors.joining(" > ")),
        reading.withdrawn() ? "no" : "yes",
        line.map(Account.Line::healthy).orElse(""),
        line.map(Account.Line::did).orElse(""));
  }
}
