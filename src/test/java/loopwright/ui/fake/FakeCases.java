package loopwright.ui.fake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.Journals;
import loopwright.ui.cases.CaseFiles;
import loopwright.ui.cases.CaseShelf;

/** Kept cases by hand; notes what is put to them and written of them. */
public final class FakeCases implements CaseArchive {
  public static final List<String> IDS = List.of("case-2", "case-1");

  /** What was done, in order. */
  public final List<String> done = new ArrayList<>();

  /** What the Cases place needs. */
  public CaseShelf shelfIn(Path folder) {
    CaseFiles files =
        (sheet, records, into) -> {
          done.add(sheet + " " + records.stream().map(r -> r.opened().caseId()).toList());
          return into.resolve(sheet.name().toLowerCase(java.util.Locale.ROOT));
        };
    return new CaseShelf(this, files, folder);
  }

  @Override
  public Shelf shelf() {
    return new Shelf(
        List.of(
            Journals.begun("case-2").volts("G4.lug", "12.7 V").found().record(),
            Journals.begun("case-1").stud().record()),
        List.of(new Unread("case-0", "case 'case-0': its first entry is missing.")));
  }

  @Override
  public CaseRecord record(String caseId) throws Problem {
    throw new Problem("case", caseId, "not asked for here");
  }

  @Override
  public void attach(String caseId, Path photo, String caption) throws Problem {
    if (!photo.toString().endsWith(".jpg")) {
      throw new Problem("photo", photo.toString(), "a picture");
    }
    done.add("photo " + photo + " to " + caseId);
  }
}
