package loopwright.io.journal;

import java.nio.file.Path;
import java.util.List;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Problem;

/** Keeps each case in a file of its own, {@code ID.case.jsonl}, in one folder. */
public final class FileCaseStore implements CaseStore {

  /** Largest case file read, in bytes. */
  static final long LARGEST = JournalFolder.LARGEST;

  private final JournalFolder<CaseEvent> cases;

  /**
   * A store in a folder; the folder is made when the first case is.
   *
   * @param folder where the case files are
   */
  public FileCaseStore(Path folder) {
    this(folder, Disk.REAL);
  }

  FileCaseStore(Path folder, Disk disk) {
    cases = new JournalFolder<>(folder, disk, new CaseContents());
  }

  @Override
  public Journal create(String caseId) throws Problem {
    return journal(cases.create(caseId));
  }

  @Override
  public Loaded load(String caseId) throws Problem {
    JournalFolder.Loaded<CaseEvent> loaded = cases.load(caseId);
    return new Loaded(loaded.events(), loaded.missing(), journal(loaded.journal()));
  }

  @Override
  public List<String> ids() {
    return cases.ids();
  }

  private static Journal journal(JournalFolder.Journal<CaseEvent> open) {
    return new Journal() {
      @Override
      public void append(CaseEvent event) throws Problem {
        open.append(event);
      }

      @Override
      public void close() {
        open.close();
      }
    };
  }
}
