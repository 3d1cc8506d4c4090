package loopwright.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import loopwright.casework.Phrases;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.RecordTables;
import loopwright.casework.record.RecordText;
import loopwright.io.OutFile;
import loopwright.io.journal.CaseExport;
import loopwright.io.sheet.ListSheet;
import loopwright.report.PageSize;
import loopwright.report.Paper;
import loopwright.report.RecordSheet;
import loopwright.ui.cases.CaseFiles;

/** Writes what the window prints and exports of kept cases. */
record KeptCaseFiles(CaseArchive archive, Phrases phrases, Clock clock) implements CaseFiles {
  @Override
  public Path write(Sheet sheet, List<CaseRecord> records, Path folder) throws IOException {
    String name =
        switch (sheet) {
          case RECORD -> records.get(0).opened().caseId() + ".pdf";
          case JSON -> "cases.json";
          case CSV -> "cases.csv";
        };
    byte[] bytes =
        switch (sheet) {
          case RECORD ->
              RecordSheet.pdf(
                  new RecordText(records.get(0), phrases, clock.getZone()),
                  archive::picture,
                  PageSize.A4,
                  Paper.day(LocalDate.now(clock)),
                  phrases);
          case JSON -> CaseExport.json(records, clock.instant());
          case CSV ->
              ListSheet.text(RecordTables.readings(records, phrases))
                  .getBytes(StandardCharsets.UTF_8);
        };
    Path file = folder.resolve(name).toAbsolutePath();
    OutFile.write(file, name, bytes);
    return file;
  }
}
