package loopwright.app;

import static loopwright.report.Paper.day;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import loopwright.casework.Phrases;
import loopwright.casework.practise.ClassSheet;
import loopwright.io.OutFile;
import loopwright.report.DrillSheet;
import loopwright.report.PageSize;
import loopwright.ui.practise.ClassSheets;

/** Writes the class sheets that the window makes. */
record ClassSheetFiles(Phrases phrases, Clock clock, Path folder) implements ClassSheets {
  @Override
  public Path write(ClassSheet sheet) throws IOException {
    String date = day(LocalDate.now(clock));
    Path file = folder.resolve("class-sheet-" + sheet.code() + ".pdf").toAbsolutePath();
    OutFile.write(file, "class sheet", DrillSheet.pdf(sheet, PageSize.A4, date, phrases));
    return file;
  }
}
