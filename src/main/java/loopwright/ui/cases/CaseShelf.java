package loopwright.ui.cases;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseRecord;

/**
 * What the Cases place needs.
 *
 * @param archive the kept cases
 * @param files writes what is printed and exported of them
 * @param folder where files go until another folder is said
 */
public record CaseShelf(CaseArchive archive, CaseFiles files, Path folder) {
  /** No cases. */
  public static final CaseShelf EMPTY =
      new CaseShelf(
          new CaseArchive() {
            @Override
            public Shelf shelf() {
              return new Shelf(List.of(), List.of());
            }

            @Override
            public CaseRecord record(String caseId) throws Problem {
              throw new Problem("case", caseId, "a kept case");
            }

            @Override
            public void attach(String caseId, Path photo, String caption) throws Problem {
              throw new Problem("case", caseId, "a kept case");
            }
          },
          (sheet, records, folder) -> {
            throw new IOException(folder + ": nothing to write");
          },
          Path.of("."));
}
